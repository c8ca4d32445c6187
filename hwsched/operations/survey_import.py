"""Taking in a survey: preview as differences, then one change set with every row's origin."""

import gc
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any, Final

from sqlalchemy import Table, select

from hwsched.attributes import Attribute
from hwsched.exchange.problems import CellProblem, FileProblem, InputRejected
from hwsched.exchange.survey_book import SurveyOptions, SurveyRead, read_survey
from hwsched.exchange.survey_difference import OpeningChange, Preview, difference
from hwsched.exchange.survey_mapping import RememberedMapping, SheetMapping
from hwsched.model.journal import Change
from hwsched.model.placing import levels_for
from hwsched.model.project import Project
from hwsched.model.queries import by_opening, read_cases, read_extra, read_own_fields
from hwsched.model.tables import IMPORT_MAPPING, ITEM_TABLE, LEAF_TABLE, OPENING_TABLE
from hwsched.operations.changes import Changes
from hwsched.operations.own_fields import attribute_of
from hwsched.quantities import BARE_UNITS

Problem = CellProblem | FileProblem
_TABLES: Final[Mapping[str, Table]] = {"opening": OPENING_TABLE, "leaf": LEAF_TABLE, "existing_item": ITEM_TABLE}
_PLACE: Final = ("building", "level")


@dataclass(frozen=True, slots=True)
class PreviewResult:
    """What a file would change, and what is wrong with it."""

    preview: Preview
    problems: tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class ImportResult:
    """What a file did change."""

    changes: Changes
    preview: Preview
    problems: tuple[Problem, ...]


def preview_survey(project: Project, path: Path, options: SurveyOptions) -> PreviewResult:
    """Read a survey and say what it would change; nothing is written.

    Raises
    ------
    InputRejected
        When the file as a whole cannot be read.
    """
    with _collector_paused():
        read, preview = _look(project, path, options)
    return PreviewResult(preview, read.problems)


def import_survey(
    project: Project,
    path: Path,
    options: SurveyOptions,
    *,
    who: str,
    accept: str = "all",
    progress: Callable[[int, int], None] | None = None,
) -> ImportResult:
    """Take in a survey as one change set; the same file twice changes nothing.

    Parameters
    ----------
    project : Project
        Open project.
    path : Path
        .xlsx, .xls, .ods or .csv.
    options : SurveyOptions
        What the file does not say.
    who : str
        For the journal.
    accept : {"all", "good-rows"}
        With "all" one refused cell refuses the file; with "good-rows" its opening is left out.
    progress : callable, optional
        Told how far it is.

    Raises
    ------
    InputRejected
        And nothing is changed.
    """
    told = progress or (lambda _done, _total: None)
    with _collector_paused():
        read, preview = _look(project, path, options)
        told(1, 3)
        if read.problems and (accept == "all" or not read.openings):
            raise InputRejected(read.problems)
        summary = f"Take in survey {path.name}: {len(preview.new)} new, {len(preview.changed)} changed"
        with project.change("import-survey", summary, who) as change:
            _write_new(change, preview)
            told(2, 3)
            _write_changed(change, preview.changed)
            for mapping in read.mapping:
                _remember(change, mapping, options)
    told(3, 3)
    return ImportResult(Changes.of(change), preview, read.problems)


@contextmanager
def _collector_paused() -> Iterator[None]:
    """Hold the garbage collector while many plain values are made: it finds nothing and costs a quarter of the time."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()


def _look(project: Project, path: Path, options: SurveyOptions) -> tuple[SurveyRead, Preview]:
    with project.reading() as connection:
        own: dict[str, list[Attribute]] = {}
        for made in read_own_fields(connection):
            attribute = attribute_of(made)
            own.setdefault(made.entity, []).append(attribute)
        remembered = {
            row.fingerprint: RememberedMapping(row.mapping.get("columns", {}), row.mapping.get("bare_unit", ""))
            for row in connection.execute(select(IMPORT_MAPPING))
        }
        bare = next((unit for unit in BARE_UNITS if unit == project.bare_unit), None)
        asked = replace(
            options,
            own_fields={**{name: tuple(found) for name, found in own.items()}, **options.own_fields},
            remembered={**remembered, **options.remembered},
            usual_unit=options.usual_unit or bare,
        )
        read = read_survey(path, asked)
        extra = {**read_extra(connection, OPENING_TABLE), **read_extra(connection, ITEM_TABLE)} if own else {}
        preview = difference(read, read_cases(connection, None, project.catalogue.read(connection)), extra)
    return read, preview


def _write_new(change: Change, preview: Preview) -> None:
    if not preview.new:
        return
    places = {_place_of(opening.facts) for opening in preview.new}
    levels = levels_for(change, places)
    rows = []
    for opening in preview.new:
        row = _row(opening.facts, OPENING_TABLE)
        row["level_id"] = levels[_place_of(opening.facts)]
        for name in _PLACE:
            row.pop(name, None)
        rows.append(row)
    ids = change.insert(OPENING_TABLE, rows, [opening.origin for opening in preview.new])
    leaves, leaf_origins, items, item_origins = [], [], [], []
    for opening_id, opening in zip(ids, preview.new, strict=True):
        for ordinal, leaf in enumerate(opening.leaves):
            leaves.append({"opening_id": opening_id, "ordinal": ordinal, **leaf.facts})
            leaf_origins.append(leaf.origin)
        for ordinal, item in enumerate(opening.items):
            row = _row({**item.deduced, **item.facts}, ITEM_TABLE)
            items.append({"opening_id": opening_id, "ordinal": ordinal, **row})
            item_origins.append(item.origin)
    change.insert(LEAF_TABLE, leaves, leaf_origins)
    change.insert(ITEM_TABLE, items, item_origins)


def _place_of(facts: Mapping[str, Any]) -> tuple[str | None, str | None]:
    return facts.get("building"), facts.get("level")


def _row(facts: Mapping[str, Any], table: Table) -> dict[str, Any]:
    """Split facts into columns and the project's own fields."""
    row = {name: value for name, value in facts.items() if name in table.c or name in _PLACE}
    own = {name: value for name, value in facts.items() if name not in row}
    if own:
        row["extra"] = own
    return row


def _write_changed(change: Change, openings: tuple[OpeningChange, ...]) -> None:
    edits: dict[str, dict[str, dict[str, Any]]] = {}
    origins: dict[tuple[str, str], str] = {}
    for opening in openings:
        for fact in opening.facts:
            edits.setdefault(fact.entity, {}).setdefault(fact.row_id, {})[fact.attribute] = fact.after
            origins[fact.entity, fact.row_id] = fact.origin
    _move(change, edits.get("opening", {}))
    for entity, rows in edits.items():
        table = _TABLES[entity]
        told = {row_id: _row(facts, table) for row_id, facts in rows.items()}
        own = [row_id for row_id, row in told.items() if "extra" in row]
        held = read_extra(change.connection, table, own) if own else {}
        for row_id in own:
            told[row_id]["extra"] = {**held.get(row_id, {}), **told[row_id]["extra"]}
        change.update(table, told.items(), [origins[entity, row_id] for row_id in told])
    leaves = [(o.opening_id, o.leaves + n, leaf) for o in openings for n, leaf in enumerate(o.new_leaves)]
    change.insert(
        LEAF_TABLE,
        [{"opening_id": opening_id, "ordinal": ordinal, **leaf.facts} for opening_id, ordinal, leaf in leaves],
        [leaf.origin for _, _, leaf in leaves],
    )
    items = [(o.opening_id, o.items + n, item) for o in openings for n, item in enumerate(o.new_items)]
    change.insert(
        ITEM_TABLE,
        [
            {"opening_id": opening_id, "ordinal": ordinal, **_row({**item.deduced, **item.facts}, ITEM_TABLE)}
            for opening_id, ordinal, item in items
        ],
        [item.origin for _, _, item in items],
    )


def _move(change: Change, rows: dict[str, dict[str, Any]]) -> None:
    """Turn changed buildings and levels into the levels' rows."""
    moved = {row_id: facts for row_id, facts in rows.items() if "building" in facts or "level" in facts}
    if not moved:
        return
    places = {
        case.opening.id: (
            moved[case.opening.id].pop("building", case.opening.building),
            moved[case.opening.id].pop("level", case.opening.level),
        )
        for case, *_ in by_opening(read_cases(change.connection, list(moved)))
    }
    levels = levels_for(change, set(places.values()))
    for row_id, place in places.items():
        moved[row_id]["level_id"] = levels[place]


def _remember(change: Change, mapping: SheetMapping, options: SurveyOptions) -> None:
    """Keep how a header was read; an import that changes nothing else keeps it only where the user said it anew."""
    row = change.connection.execute(
        select(IMPORT_MAPPING).where(IMPORT_MAPPING.c.fingerprint == mapping.fingerprint)
    ).first()
    kept = mapping.remembered(options.bare_unit or (row.mapping.get("bare_unit", "") if row else ""))
    content = {"columns": dict(kept.columns), "bare_unit": kept.bare_unit}
    if row is None:
        if change.number is not None or options.columns:
            change.insert(
                IMPORT_MAPPING, [{"fingerprint": mapping.fingerprint, "name": mapping.sheet, "mapping": content}]
            )
    elif dict(row.mapping) != content and (change.number is not None or options.columns or options.bare_unit):
        change.update(IMPORT_MAPPING, [(row.id, {"mapping": content})])
