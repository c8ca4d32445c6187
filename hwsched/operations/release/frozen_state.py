"""Gathering the state of a project as the contents of a revision: all of it, or what has changed since an earlier one.

Nothing is written here. Of an earlier revision as base its contents are taken over for openings that nothing can have
changed; where that cannot be told from the journal, everything is gathered anew. Both ways give the same contents.
"""

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from operator import attrgetter
from typing import Any, Final

from sqlalchemy import Connection, select

from hwsched.model.errors import ChangeError, MissingRowError
from hwsched.model.frozen import RevisionInfo, read_frozen
from hwsched.model.power_queries import read_power
from hwsched.model.project import Project
from hwsched.model.queries import (
    latest_change,
    read_extra,
    read_own_fields,
    read_set_names,
    read_settings,
    read_terms,
)
from hwsched.model.record_queries import read_waivers
from hwsched.model.rooms import in_rooms_touched_since
from hwsched.model.tables import BUILDING, CHANGE_ENTRY, IN_USE, LEVEL, OPENING_TABLE, PART, PROJECT
from hwsched.operations.collector import collector_paused
from hwsched.operations.findings.checked import Checked
from hwsched.operations.findings.checking import Cancelled, Checker, Progress, check_openings
from hwsched.operations.opening.pieces import recorded_pieces
from hwsched.operations.power.power_results import on_same_supplies
from hwsched.operations.project.engine import engine_fingerprint
from hwsched.operations.release.frozen_files import files_of_openings, other_files
from hwsched.operations.release.frozen_power import Entries, others_too, put_power
from hwsched.operations.release.frozen_record import (
    FORMAT,
    POINT_FACTS,
    CatalogueRecord,
    Frozen,
    OpeningRecord,
    PointRecord,
    PowerRecord,
    ProjectRecord,
    Root,
    bits_for,
    chunk_of,
    compact_item,
    compact_leaf,
    compact_opening,
    thawed,
)
from hwsched.operations.release.office import read_declared
from hwsched.operations.survey.deliveries import questions_by_opening
from hwsched.rules import RULEBOOK
from hwsched.values import Catalogue, Fit
from hwsched.values.piece import PieceThen
from hwsched.values.power import PowerFacts
from hwsched.values.revision import FileThen, LevelThen, OwnFieldThen, OwnValueThen, RuleText, Scope

_OWN: Final = frozenset(
    {
        *("opening", "leaf", "existing_item", "lock_point", "chosen_part", "placed_unit", "assigned_part"),
        *("opening_fit", "issued_packet", "attachment", "open_question"),
    }
)
"""Tables whose rows matter to their own opening, and to those that hang on the same supplies."""
_NOT_OF_ONE: Final = frozenset({"attachment", "open_question"})
"""Of them those whose rows may be of no opening: then they matter to none."""
_NOTHING: Final = frozenset(
    {
        *("revision", "import_mapping", "person", "delivery"),
        *("transmittal", "office"),
    }
)
"""Tables of which openings hold nothing. What stands in neither set can matter to any opening."""
_PLACES: Final = frozenset({"building", "level"})
"""A new one matters only to the openings that were put there."""
_POINT = attrgetter(*POINT_FACTS)


class StoppedError(ChangeError):
    """The person stopped it; nothing was frozen."""


@dataclass(frozen=True, slots=True)
class Gathered:
    """A state of the project, ready to be held."""

    change_set: int
    """Latest step of the journal that it holds."""
    root: str
    contents: Frozen
    """Those that the base does not hold; some may be held by other revisions."""
    openings: int


@dataclass(frozen=True, slots=True)
class _Base:
    """An earlier revision of the same scope."""

    key: str
    root: Root
    changed: frozenset[str] | None
    """Openings that may be otherwise since; None: any may be."""


@dataclass(frozen=True, slots=True)
class _Beside:
    """What is held of openings beside what is judged, by their identifiers."""

    files: Mapping[str, tuple[FileThen, ...]]
    pieces: Mapping[str, tuple[PieceThen, ...]]
    asked: Mapping[str, tuple[tuple[int, str], ...]]

    @classmethod
    def of(cls, connection: Connection, ids: Collection[str] | None) -> "_Beside":
        return cls(
            files_of_openings(connection, ids), recorded_pieces(connection, ids), questions_by_opening(connection, ids)
        )


def gather(
    project: Project,
    scope: Scope,
    today: date,
    *,
    base: RevisionInfo | None = None,
    checker: Checker | None = None,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> Gathered:
    """Gather the state of a project.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    scope : Scope
        What of it.
    today : date
        Against which waivers end.
    base : RevisionInfo, optional
        An earlier revision of the same scope, from which is taken what cannot have changed.
    checker : Checker, optional
        Remembers earlier judgements.
    progress, cancelled : callable, optional
        Told how far it is; asked whether to stop.

    Raises
    ------
    MissingRowError
        For a building, level or mark that there is not, or a project without openings.
    StoppedError
        When it was asked to stop.
    """
    with collector_paused():
        return _gathered(project, scope, today, base, checker, progress, cancelled)


def _gathered(
    project: Project,
    scope: Scope,
    today: date,
    base: RevisionInfo | None,
    checker: Checker | None,
    progress: Progress | None,
    cancelled: Cancelled | None,
) -> Gathered:
    made = Frozen()
    with project.reading() as connection:
        change_set = latest_change(connection)
        ids = _ids_in(connection, scope)
        catalogue = project.catalogue.read(connection)
        known = _base_of(connection, base, change_set, today)
        record = _project_record(connection)
        names = read_set_names(connection)
        present = read_power(connection)
        files, office = made.put("files", other_files(connection)), made.put("office", read_declared(connection))
    every = None if scope == Scope() else ids
    held: Mapping[str, Entries] = {}
    engine = made.put("engine", dict(engine_fingerprint()))
    bits = bits_for(len(ids))
    if known is not None and (known.root.engine != engine or known.root.bits != bits or not known.root.files):
        # One of before it held files lacks them at openings that nobody has touched since.
        known = None
    fresh = every
    touched: Collection[str] = ()
    if known is not None and known.changed is not None:
        touched = on_same_supplies(project, known.changed) if present.runs else known.changed
        with project.reading() as connection:
            held = _chunks(connection, known.root, {chunk_of(each, bits) for each in touched})
        if others_too(touched, present, every, held):
            known = None
        else:
            fresh = sorted(set(touched).intersection(ids))
    kept: list[Checked] = []
    if fresh is None and checker is not None:
        kept = _checked_before(project, ids, today, checker, change_set, present)
        known_ids = {each.given.opening.id for each in kept}
        fresh = [each for each in ids if each not in known_ids] if kept else None
    checked = kept + _checked(project, fresh, today, checker, progress, cancelled)
    with project.reading() as connection:
        # Of all at once it is asked without naming each.
        beside = _Beside.of(
            connection, None if len(checked) == len(ids) else [each.given.opening.id for each in checked]
        )
    entries = {each.given.opening.id: (each.given.opening.mark, _put(made, each, names, beside)) for each in checked}
    if known is None or known.changed is None:
        chunks = _put_chunks(made, entries, bits)
        power = put_power(made, project, checked, every, present, {})
        with project.reading() as connection:
            parts = _put_catalogue(made, catalogue, _part_values(connection))
    else:
        chunks = _renewed(made, known, held, entries, touched, bits)
        # Without a word of the journal on supplies, circuits and runs only the fits there can be otherwise.
        power = known.root.power
        connected = present.connected()
        if any(each in connected for each in touched):
            with project.reading() as connection:
                before: PowerRecord = thawed("power", read_frozen(connection, [power])[power])
            power = put_power(made, project, checked, fresh, before.present, before.supplies)
        parts = known.root.catalogue
    root = Root(
        FORMAT, change_set, today.isoformat(), scope.plain(), engine, made.put("project", record), parts,
        _put_rules(made), power, len(ids), bits, chunks, files, office,
    )  # fmt: skip
    return Gathered(change_set, made.put("revision", root), made, len(ids))


def _checked(
    project: Project,
    ids: Sequence[str] | None,
    today: date,
    checker: Checker | None,
    progress: Progress | None,
    cancelled: Cancelled | None,
) -> list[Checked]:
    nothing = ids is not None and not ids
    options: Any = {"checker": checker, "progress": progress, "cancelled": cancelled, "today": today}
    found = [] if nothing else check_openings(project, ids, **options)
    if cancelled is not None and cancelled():
        raise StoppedError("stopped; nothing was frozen")
    return found


def _checked_before(
    project: Project, ids: Collection[str], today: date, checker: Checker, change_set: int, present: PowerFacts
) -> list[Checked]:
    """Return what the last check of the whole project found at openings that nothing can have changed since."""
    found = checker.last.of(project, today)
    if not found or checker.last.change_set > change_set:
        return []
    with project.reading() as connection:
        touched = _changed_since(connection, checker.last.change_set)
    if touched is None or others_too(touched, present, None, {}):
        return []
    changed = on_same_supplies(project, touched) if present.runs and touched else touched
    return [found[each] for each in ids if each in found and each not in changed]


def _ids_in(connection: Connection, scope: Scope) -> list[str]:
    if scope == Scope():
        every = list(connection.execute(select(OPENING_TABLE.c.id).where(IN_USE)).scalars())
        if not every:
            raise MissingRowError("there is nothing to freeze: the project has no opening")
        return every
    query = (
        select(OPENING_TABLE.c.id, OPENING_TABLE.c.mark, BUILDING.c.name, LEVEL.c.name)
        .select_from(OPENING_TABLE)
        .outerjoin(LEVEL, OPENING_TABLE.c.level_id == LEVEL.c.id)
        .outerjoin(BUILDING, LEVEL.c.building_id == BUILDING.c.id)
        .where(IN_USE)
    )
    rows = connection.execute(query).all()
    if missing := set(scope.marks) - {mark for _, mark, _, _ in rows}:
        raise MissingRowError(f"no opening has the mark {', '.join(sorted(missing))}")
    found = [
        row_id
        for row_id, mark, building, level in rows
        if (not scope.marks or mark in scope.marks)
        and (scope.building is None or building == scope.building)
        and (scope.level is None or level == scope.level)
    ]
    if not found:
        raise MissingRowError(f"there is nothing to freeze: no opening in {scope.words}")
    return found


def _base_of(connection: Connection, base: RevisionInfo | None, now: int, today: date) -> _Base | None:
    if base is None:
        return None
    root: Root = thawed("revision", read_frozen(connection, [base.root])[base.root])
    if root.format != FORMAT or root.change_set > now:
        return None
    # Waivers end with a day, and what they covered is then said again.
    if root.day != today.isoformat() and any(waiver.until for waiver in read_waivers(connection)):
        return _Base(base.root, root, None)
    return _Base(base.root, root, _changed_since(connection, root.change_set))


def _changed_since(connection: Connection, number: int) -> frozenset[str] | None:
    """Return the openings that the journal has touched since; None where it touched what may matter to any."""
    query = (
        select(CHANGE_ENTRY.c.entity, CHANGE_ENTRY.c.action, CHANGE_ENTRY.c.opening_id)
        .where(CHANGE_ENTRY.c.change_set > number)
        .distinct()
    )
    found: set[str] = set()
    for entity, action, opening_id in connection.execute(query):
        if entity in _OWN and opening_id is not None:
            found.add(opening_id)
        elif entity not in _NOTHING | _NOT_OF_ONE and not (entity in _PLACES and action == "insert"):
            return None
    # An opening decides with others whether their rooms have a way out.
    return frozenset(found | in_rooms_touched_since(connection, number))


def _chunks(connection: Connection, root: Root, names: Iterable[str]) -> dict[str, Entries]:
    keys = {name: root.openings[name] for name in names if name in root.openings}
    contents = read_frozen(connection, list(keys.values()))
    return {name: thawed("chunk", contents[key]) for name, key in keys.items()}


def _put_chunks(made: Frozen, entries: Entries, bits: int) -> dict[str, str]:
    chunks: dict[str, dict[str, tuple[str, str]]] = {}
    for opening_id, entry in entries.items():
        chunks.setdefault(chunk_of(opening_id, bits), {})[opening_id] = entry
    return {name: made.put("chunk", chunk) for name, chunk in chunks.items()}


def _renewed(
    made: Frozen, base: _Base, held: Mapping[str, Entries], entries: Entries, touched: Collection[str], bits: int
) -> dict[str, str]:
    """Return the chunks with the touched openings as they are now, or without them where they are gone."""
    chunks = dict(base.root.openings)
    for name in {chunk_of(each, bits) for each in touched}:
        kept = {key: entry for key, entry in held.get(name, {}).items() if key not in touched}
        kept |= {key: entry for key, entry in entries.items() if chunk_of(key, bits) == name}
        if kept:
            chunks[name] = made.put("chunk", kept)
        else:
            chunks.pop(name, None)
    return chunks


def _put(made: Frozen, checked: Checked, set_names: Mapping[str, str], beside: _Beside) -> str:
    given = checked.given
    opening_id = given.opening.id
    record = OpeningRecord(
        compact_opening(given.opening),
        tuple(map(compact_leaf, given.leaves)),
        tuple(map(compact_item, given.items)),
        tuple(PointRecord(*_POINT(point.given), _put_fit(made, point.fit)) for point in checked.points),
        made.shared("findings", checked.findings),
        set_names.get(opening_id, ""),
        tuple(
            OwnValueThen(each.entity, each.row_id, each.attribute.name, _plain(each.value))
            for each in checked.own
            if each.value is not None
        ),
        beside.files.get(opening_id, ()),
        beside.pieces.get(opening_id, ()),
        beside.asked.get(opening_id, ()),
    )
    return made.put("opening", record)


def _put_fit(made: Frozen, fit: Fit | None) -> str | None:
    return None if fit is None else made.shared("fit", fit)


def _plain(value: Any) -> str | float | int | bool | None:
    return value if isinstance(value, str | float | int | bool) else str(value)


def _project_record(connection: Connection) -> ProjectRecord:
    row = connection.execute(select(PROJECT.c.id, PROJECT.c.name, PROJECT.c.bare_unit)).one()
    levels = select(BUILDING.c.name, LEVEL.c.name, LEVEL.c.sort, LEVEL.c.height_m).select_from(LEVEL).outerjoin(
        BUILDING, LEVEL.c.building_id == BUILDING.c.id
    )  # fmt: skip
    found = [LevelThen(*level) for level in connection.execute(levels)]
    found.sort(key=lambda each: (each.building or "", each.sort, each.level or ""))
    fields = [OwnFieldThen(f.entity, f.name, f.label, f.kind, f.unit, f.choices) for f in read_own_fields(connection)]
    return ProjectRecord(
        row.id, row.name, row.bare_unit, read_settings(connection), read_terms(connection), tuple(fields), tuple(found)
    )


def _put_catalogue(made: Frozen, catalogue: Catalogue, own: Mapping[str, Mapping[str, Any]]) -> str:
    parts = {number: made.put("part", part) for number, part in catalogue.parts.items()}
    return made.put("catalogue", CatalogueRecord(catalogue.key, catalogue.ranks, parts, own))


def _part_values(connection: Connection) -> dict[str, Mapping[str, Any]]:
    values = read_extra(connection, PART)
    if not values:
        return {}
    numbers = connection.execute(select(PART.c.id, PART.c.number)).all()
    return {number: values[row_id] for row_id, number in numbers if row_id in values}


def _put_rules(made: Frozen) -> str:
    texts = (
        RuleText(
            rule.id, rule.title, rule.discipline, rule.severity, rule.basis, rule.cure,
            tuple((limit.name, limit.value, limit.text, limit.source) for limit in rule.limits), rule.defers,
        )
        for rule in RULEBOOK
    )  # fmt: skip
    return made.put("rules", tuple(texts))
