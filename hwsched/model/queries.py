"""Reading a project into plain values, in bulk."""

import hashlib
import json
from collections import defaultdict
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, fields
from functools import partial
from itertools import groupby
from typing import Any, Final, TypeVar

from sqlalchemy import Column, ColumnElement, Connection, Select, func, select

from hwsched.fingerprint import Engine
from hwsched.model.bulk import among
from hwsched.model.columns import json_text
from hwsched.model.errors import DamagedProjectError
from hwsched.model.fit_record import COMMON, fit_of, in_place, with_battery
from hwsched.model.lock_points import read_points
from hwsched.model.rooms import closed_rooms
from hwsched.model.state_memory import StateMemory
from hwsched.model.tables import (
    BUILDING,
    CHANGE_SET,
    CHOSEN_PART,
    CIRCUIT_TABLE,
    ENGINE,
    FACTS_READ,
    FIT_CONTENT,
    HARDWARE_SET,
    IMPORT_MAPPING,
    IN_USE,
    ITEM_TABLE,
    KIT_CONTENT,
    LEAF_TABLE,
    LEVEL,
    OPENING_FIT,
    OPENING_TABLE,
    OWN_FIELD,
    PART,
    PLACED_UNIT,
    PROJECT,
    RUN_TABLE,
    SET_LINE,
    SUPPLY_TABLE,
)
from hwsched.quantities.money import exact_decimal
from hwsched.stopping import asking
from hwsched.survey import INHERITED
from hwsched.telling.natural import natural, upward
from hwsched.values import (
    Catalogue,
    Chosen,
    Fit,
    HandPlacement,
    Item,
    Leaf,
    LockPoint,
    Opening,
    OpeningInput,
    Part,
    PointFit,
    Settings,
    SupplyLink,
)
from hwsched.values.earlier_words import in_present_words
from hwsched.values.facts_read import FactsRead
from hwsched.values.lock_points import lock_points, with_beside
from hwsched.values.terms import CostTerms

_Read = TypeVar("_Read")

_PLACE: Final = ("building", "level")
_FACTS: Final = len(fields(Opening))
_opening: Final[Callable[..., Opening]] = Opening
_PART_FACTS: Final = [f.name for f in fields(Part) if f.name not in ("stock", "preferred")]
"""What decides whether a part fits; stock changes daily and only ranks."""
_LEAF_FACTS: Final = [f.name for f in fields(Leaf)]
_ITEM_FACTS: Final = [f.name for f in fields(Item)]


def in_force(name: str) -> ColumnElement[Any]:
    """Return a fact of openings as it holds there: its own, else its level's, else its building's."""
    own = OPENING_TABLE.c[name]
    return func.coalesce(own, LEVEL.c[name], BUILDING.c[name]).label(name) if name in INHERITED else own


def _place_or_fact(name: str) -> ColumnElement[Any]:
    if name in _PLACE:
        return (BUILDING if name == "building" else LEVEL).c.name.label(name)
    return in_force(name)


# Queries of each edit are made once: making them takes as long as the database takes to answer.
_CHOSEN: Final[Select[Any]] = select(
    CHOSEN_PART.c.lock_point_id, CHOSEN_PART.c.role, CHOSEN_PART.c.part, CHOSEN_PART.c.quantity
)
_PLACED: Final[Select[Any]] = select(PLACED_UNIT)
_SET_LINES: Final[Select[Any]] = select(SET_LINE.c.set_id, SET_LINE.c.role, SET_LINE.c.part, SET_LINE.c.quantity)
_FEEDS: Final[Select[Any]] = (
    select(RUN_TABLE.c.opening_id, SUPPLY_TABLE.c.part)
    .join(CIRCUIT_TABLE, RUN_TABLE.c.circuit_id == CIRCUIT_TABLE.c.id)
    .join(SUPPLY_TABLE, CIRCUIT_TABLE.c.supply_id == SUPPLY_TABLE.c.id)
    .where(RUN_TABLE.c.opening_id.is_not(None))
)
_EVERY: Final[Select[Any]] = (
    select(
        *(_place_or_fact(each.name) for each in fields(Opening)),
        LEVEL.c.height_m, LEVEL.c.sort, OPENING_TABLE.c.level_id,
    )
    .select_from(OPENING_TABLE)
    .outerjoin(LEVEL, OPENING_TABLE.c.level_id == LEVEL.c.id)
    .outerjoin(BUILDING, LEVEL.c.building_id == BUILDING.c.id)
)  # fmt: skip
_OPENINGS: Final[Select[Any]] = _EVERY.where(IN_USE)
_RESTING: Final[Select[Any]] = _EVERY.where(~IN_USE)
_STANDS: Final[Select[Any]] = (
    select(OPENING_TABLE.c.id, OPENING_TABLE.c.level_id, LEVEL.c.building_id)
    .select_from(OPENING_TABLE)
    .outerjoin(LEVEL, OPENING_TABLE.c.level_id == LEVEL.c.id)
)
_LEAVES: Final[Select[Any]] = select(
    LEAF_TABLE.c.opening_id, LEAF_TABLE.c.ordinal, *(LEAF_TABLE.c[name] for name in _LEAF_FACTS)
)
_ITEMS: Final[Select[Any]] = select(
    ITEM_TABLE.c.opening_id, ITEM_TABLE.c.ordinal, *(ITEM_TABLE.c[name] for name in _ITEM_FACTS)
)
_POINTERS: Final[Select[Any]] = select(
    *(OPENING_FIT.c[name] for name in ("id", "input_key", "fit_key", "engine", "facts_read", "battery"))
)
_CONTENTS: Final[Select[Any]] = select(FIT_CONTENT.c.key, FIT_CONTENT.c.content)
_ENGINES: Final[Select[Any]] = select(ENGINE.c.key, ENGINE.c.program, ENGINE.c.parts)
_READINGS: Final[Select[Any]] = select(FACTS_READ.c.key, FACTS_READ.c.names)


@dataclass(frozen=True, slots=True)
class StoredFit:
    """A fit and what it was worked out from."""

    input_key: str
    """Hash of what the facts that were read held; of all facts where nothing is known of the reading."""
    fit: Fit
    engine: Engine | None = None
    """The program that worked it out; None for one that did not write itself down."""
    read: FactsRead | None = None
    fit_key: str = ""
    """Key of its content, where it is stored."""
    battery: str | None = None
    """How long its pack lasts, as stored beside its content."""
    shared: Fit | None = None
    """What openings have in common that differ only in how long their packs last, one object; where it is stored."""
    common_key: str = ""
    """Key of what it shares with fits that differ in their places, where it is stored; its own where it has none."""

    @property
    def pointer(self) -> tuple[str | None, ...]:
        """What an opening's row points to; two that are equal say the same."""
        engine, read = self.engine, self.read
        return self.fit_key, self.input_key, engine.key if engine else None, read.key if read else None, self.battery


@dataclass(frozen=True, slots=True)
class OwnField:
    """A field of the project's own."""

    entity: str
    name: str
    label: str
    kind: str
    unit: str
    choices: tuple[str, ...]


def latest_change(connection: Connection) -> int:
    """Return the number of the latest change set; 0 in a new project."""
    return int(connection.execute(select(func.max(CHANGE_SET.c.number))).scalar() or 0)


def opening_ids(connection: Connection) -> dict[str, str]:
    """Return mark to identifier of every opening that the building has."""
    query = select(OPENING_TABLE.c.mark, OPENING_TABLE.c.id).where(IN_USE)
    return {row.mark: row.id for row in connection.execute(query)}


def retired_openings(connection: Connection) -> dict[str, str]:
    """Return mark to identifier of every opening that is retired."""
    query = select(OPENING_TABLE.c.mark, OPENING_TABLE.c.id).where(~IN_USE)
    return {row.mark: row.id for row in connection.execute(query)}


def read_settings(connection: Connection) -> Settings:
    """Return what the project decides."""
    row = connection.execute(select(PROJECT.c.length_style, PROJECT.c.settings)).one()
    held: Mapping[str, Any] = row.settings
    terms: Mapping[str, Any] = held.get("terms", {})
    return Settings(
        length_style=row.length_style,
        limits=held.get("limits", {}),
        rules_off=frozenset(held.get("rules_off", ())),
        prefer=held.get("prefer", "cost"),
        currency=terms.get("currency", ""),
        rates={currency: exact_decimal(rate) for currency, rate in terms.get("rates", {}).items()},
    )


def read_terms(connection: Connection) -> CostTerms:
    """Return what the project pays."""
    held: Mapping[str, Any] = connection.execute(select(PROJECT.c.settings)).scalar_one().get("terms", {})
    return CostTerms(**held)


def read_set_names(connection: Connection) -> dict[str, str]:
    """Return the name of each opening's hardware set."""
    query = select(OPENING_TABLE.c.id, HARDWARE_SET.c.name).join(
        HARDWARE_SET, OPENING_TABLE.c.set_id == HARDWARE_SET.c.id
    )
    return {row[0]: row[1] for row in connection.execute(query)}


def read_catalogue(connection: Connection) -> Catalogue:
    """Return all parts with their kit contents; the key is a hash of their content."""
    kits: dict[str, list[tuple[str, float]]] = defaultdict(list)
    kit_query = select(KIT_CONTENT.c.part_id, KIT_CONTENT.c.number, KIT_CONTENT.c.quantity)
    for part_id, number, quantity in connection.execute(kit_query.order_by(KIT_CONTENT.c.number)):
        kits[part_id].append((number, quantity))
    rows = connection.execute(select(PART).order_by(PART.c.number))
    return catalogue_of(
        Part(
            number=row.number,
            kind=row.kind,
            description=row.description or "",
            supplier=row.supplier or "",
            finish=row.finish or "",
            unit=row.unit or "",
            list_price=row.list_price,
            currency=row.currency or "",
            superseded_by=row.superseded_by or "",
            stock=row.stock,
            preferred=row.preferred,
            attributes=row.attributes,
            kit=tuple(kits.get(row.id, ())),
        )
        for row in rows
    )


def catalogue_of(found: Iterable[Part]) -> Catalogue:
    """Return parts, in the order of their numbers, as a catalogue with the keys of its content."""
    parts: dict[str, Part] = {}
    digest, ranks = hashlib.sha256(), hashlib.sha256()
    for part in found:
        parts[part.number] = part
        # In the order of the numbers, as the caller promises: the same parts in another order would be another
        # catalogue.
        digest.update(json_text([getattr(part, name) for name in _PART_FACTS]).encode())
        if part.stock is not None or part.preferred is not None:
            ranks.update(json_text([part.number, part.stock, part.preferred]).encode())
    return Catalogue(parts, digest.hexdigest(), ranks.hexdigest())


def read_inputs(
    connection: Connection,
    ids: Collection[str] | None = None,
    catalogue: Catalogue | None = None,
    memory: StateMemory | None = None,
    *,
    retired: bool = False,
) -> Iterator[OpeningInput]:
    """Return the inputs of openings, one a lock point, in the order of building, level and entry.

    The points of an opening stand together, in the order in which they are worked out; each after the first knows what
    is stored for the earlier ones.

    Parameters
    ----------
    connection : Connection
        In a transaction.
    ids : collection of str, optional
        Openings that are wanted; all when left out.
    catalogue : Catalogue, optional
        Read already; else it is read here.
    memory : StateMemory, optional
        Of the project, for what seldom changes.
    retired : bool
        Of those that are retired, in place of those that the building has.
    """
    memory = memory or StateMemory()
    catalogue = catalogue or read_catalogue(connection)
    settings = memory.read(connection, read_settings, PROJECT)
    leaves = _children(connection, _LEAVES, LEAF_TABLE.c.opening_id, ids, Leaf)
    items = _children(connection, _ITEMS, ITEM_TABLE.c.opening_id, ids, Item)
    chosen: dict[str, list[Chosen]] = defaultdict(list)
    for point_id, role, part, quantity in among(connection, _CHOSEN, CHOSEN_PART.c.opening_id, ids):
        chosen[point_id].append(Chosen(role, part, quantity))
    of_sets = _sets_of(connection, ids, memory.read(connection, _set_lines, SET_LINE))
    supply_links = _supply_links(connection, ids)
    placed = {
        row.lock_point_id: HandPlacement(row.leaf, row.face, row.pattern, row.x_mm, row.y_mm)
        for row in among(connection, _PLACED, PLACED_UNIT.c.opening_id, ids)
    }
    rows = read_points(connection, ids)
    stored = read_fits(connection, [opening_id for opening_id, points in rows.items() if len(points) > 1], memory)
    openings = _openings(connection, ids, _RESTING if retired else _OPENINGS)
    closed = closed_rooms(connection, openings)
    for opening, _ in asking(openings):
        own_leaves, own_items = tuple(leaves.get(opening.id, ())), tuple(items.get(opening.id, ()))
        done: list[PointFit] = []
        points = lock_points(own_leaves, own_items, rows.get(opening.id) or [(opening.id, None)])
        for point in points:
            own = chosen.get(point.id, [])
            if point.number == 1 and opening.id in of_sets:
                # What was chosen by hand goes before the set's line of that role; a set speaks of the first point.
                roles = {choice.role for choice in own}
                own = [*own, *(line for line in of_sets[opening.id] if line.role not in roles)]
            # A database gives rows in any order, and the key of the input must not hang on it.
            own.sort(key=lambda choice: (choice.role, choice.part))
            given = OpeningInput(
                opening,
                own_leaves,
                own_items,
                catalogue,
                settings,
                tuple(own),
                placed.get(point.id),
                supply_links.get(opening.id),
                point,
                closed_rooms=closed.get(opening.id, ()),
            )
            if len(points) == 1:
                yield given
                continue
            # One lock point after the other: the next one is fitted beside what stands there of the earlier ones.
            yield with_beside(given, done)
            held = stored.get(point.id)
            done.append(PointFit(given, held.fit if held is not None else None))


def points_of_opening(connection: Connection, opening_id: str) -> tuple[LockPoint, ...]:
    """Return the lock points of an opening in their order; empty where it is not there."""
    rows = read_points(connection, [opening_id]).get(opening_id)
    if rows is None:
        return ()
    leaves = _children(connection, _LEAVES, LEAF_TABLE.c.opening_id, [opening_id], Leaf)
    items = _children(connection, _ITEMS, ITEM_TABLE.c.opening_id, [opening_id], Item)
    return lock_points(leaves.get(opening_id, []), items.get(opening_id, []), rows)


def first_points(connection: Connection, ids: Collection[str] | None = None) -> dict[str, str]:
    """Return the first lock point of each opening."""
    rows = read_points(connection, ids)
    return {
        opening_id: points[0][0] if len(points) == 1 else points_of_opening(connection, opening_id)[0].id
        for opening_id, points in rows.items()
    }


def by_opening(inputs: Iterable[OpeningInput]) -> Iterator[tuple[OpeningInput, ...]]:
    """Put the inputs of each opening's lock points together."""
    for _, group in groupby(inputs, key=lambda given: given.opening.id):
        yield tuple(group)


def _set_lines(connection: Connection) -> Mapping[str, Sequence[Chosen]]:
    """Return the lines of each hardware set."""
    lines: dict[str, list[Chosen]] = defaultdict(list)
    for set_id, role, part, quantity in connection.execute(_SET_LINES):
        lines[set_id].append(Chosen(role, part, quantity, "set"))
    return lines


def _sets_of(
    connection: Connection, ids: Collection[str] | None, lines: Mapping[str, Sequence[Chosen]]
) -> dict[str, tuple[Chosen, ...]]:
    """Return the lines of each opening's hardware set."""
    if not lines:
        return {}
    query = select(OPENING_TABLE.c.id, OPENING_TABLE.c.set_id).where(OPENING_TABLE.c.set_id.is_not(None))
    return {
        opening_id: tuple(lines.get(set_id, ()))
        for opening_id, set_id in among(connection, query, OPENING_TABLE.c.id, ids)
    }


def _supply_links(connection: Connection, ids: Collection[str] | None) -> dict[str, SupplyLink]:
    """Return the supply of each opening that is on a circuit."""
    return {opening: SupplyLink(part) for opening, part in among(connection, _FEEDS, RUN_TABLE.c.opening_id, ids)}


def _openings(
    connection: Connection, ids: Collection[str] | None, query: Select[Any]
) -> list[tuple[Opening, str | None]]:
    """Return openings in order, each with the identifier of its level."""
    # By level first: names and heights of levels would be compared as often as openings are, which costs much.
    levels: dict[tuple[Any, ...], list[Opening]] = defaultdict(list)
    for row in among(connection, query, OPENING_TABLE.c.id, ids):
        # In the order of the fields: to name fifty of them costs as much as all.
        levels[row[_FACTS:]].append(_opening(*row[:_FACTS]))
    # Where two levels go by the same name and height, their openings are put in order together.
    placed: dict[tuple[Any, ...], list[tuple[Opening, str | None]]] = defaultdict(list)
    for (height, sort, level_id), openings in levels.items():
        first = openings[0]
        place = (first.building or "", upward(height, sort), first.level or "")
        placed[place] += [(opening, level_id) for opening in openings]
    for each in placed.values():
        each.sort(key=_by_mark)
    return [opening for place in sorted(placed) for opening in placed[place]]


def _by_mark(placed: tuple[Opening, str | None]) -> tuple[Any, ...]:
    return natural(placed[0].mark)


@dataclass(frozen=True, slots=True)
class HeldPlace:
    """What a building or a level says itself of the facts that openings take from it."""

    entity: str
    """building or level."""
    row_id: str
    name: str
    facts: Mapping[str, Any]


def read_places(
    connection: Connection, ids: Collection[str] | None = None, memory: StateMemory | None = None
) -> dict[str, tuple[HeldPlace, ...]]:
    """Return the level and the building on which each opening stands, in the order in which they are asked.

    With the project's memory levels and buildings are read once, and again when one was changed.
    """
    openings = list(among(connection, _STANDS, OPENING_TABLE.c.id, ids))
    if memory is None:
        # Of one opening not all the levels that a campus has.
        wanted = [None if ids is None else {row[column] for row in openings} - {None} for column in (1, 2)]
        rows = _held_places(connection, *wanted)
    else:
        rows = memory.read(connection, _held_places, LEVEL, BUILDING)
    # A file that somebody else wrote to may have lost the row: what it said is then unknown.
    return {opening_id: tuple(rows[each] for each in place if each in rows) for opening_id, *place in openings}


def _held_places(
    connection: Connection, levels: Collection[str] | None = None, buildings: Collection[str] | None = None
) -> dict[str, HeldPlace]:
    """Return levels and buildings by their identifiers, all where none are named."""
    rows: dict[str, HeldPlace] = {}
    for table, wanted in ((LEVEL, levels), (BUILDING, buildings)):
        for held in among(connection, select(table), table.c.id, wanted):
            row = held._mapping
            facts = {name: row[name] for name in INHERITED}
            rows[row["id"]] = HeldPlace(table.name, row["id"], row["name"] or "", facts)
    return rows


def _children(
    connection: Connection, query: Select[Any], column: Column[Any], ids: Collection[str] | None, make: Any
) -> dict[str, list[Any]]:
    grouped: dict[str, list[tuple[int, Any]]] = defaultdict(list)
    for row in among(connection, query, column, ids):
        grouped[row[0]].append((row[1], make(*row[2:])))
    children: dict[str, list[Any]] = {}
    for opening_id, rows in asking(grouped.items()):
        if len(rows) > 1:
            rows.sort(key=lambda pair: (pair[0], pair[1].id))
        children[opening_id] = [child for _, child in rows]
    return children


def read_own_words(connection: Connection, opening_id: str) -> Mapping[str, Any]:
    """Return what an opening says itself of the facts that it would take from its level or building."""
    query = select(*(OPENING_TABLE.c[name] for name in INHERITED)).where(OPENING_TABLE.c.id == opening_id)
    row = connection.execute(query).mappings().first()
    return {} if row is None else dict(row)


def read_fits(
    connection: Connection, ids: Collection[str] | None = None, memory: StateMemory | None = None
) -> dict[str, StoredFit]:
    """Return the stored fits of openings by lock point; each content is decoded once.

    Parameters
    ----------
    connection : Connection
        In a transaction.
    ids : collection of str, optional
        Openings that are wanted; all when left out.
    memory : StateMemory, optional
        Of the project; it keeps which programs made fits and which facts they read.
    """
    contents = {} if memory is None else memory.contents
    rows = list(among(connection, _POINTERS, OPENING_FIT.c.opening_id, ids))
    # Joined, each content would be read as often as openings share it.
    wanted = {row[2] for row in rows}
    decoded, commons = _decoded(connection, wanted)
    engines, readings = {row[3] for row in rows} - {None}, {row[4] for row in rows} - {None}
    contents.update(_engines(connection, engines - contents.keys()))
    contents.update(_readings(connection, readings - contents.keys()))
    whole: dict[tuple[str, str | None], Fit] = {(key, None): fit for key, fit in decoded.items()}
    for row in asking(rows):
        if (row[2], row[5]) not in whole:
            whole[row[2], row[5]] = _sound("opening_fit", row[0], row[5], partial(_with_battery, decoded[row[2]]))
    return {
        point_id: StoredFit(
            *(key_of_input, whole[key, battery], contents.get(made_by), contents.get(read), key, battery, decoded[key]),
            common_key=commons[key],
        )
        for point_id, key_of_input, key, made_by, read, battery in rows
    }


def _decoded(connection: Connection, keys: Collection[str]) -> tuple[dict[str, Fit], dict[str, str]]:
    """Return fits, and the keys of what they share, by the keys of their contents; each content is decoded once."""
    found = {
        key: _sound("fit_content", key, content, _fit)
        for key, content in among(connection, _CONTENTS, FIT_CONTENT.c.key, keys)
    }
    shared = {common for _, common in found.values() if common is not None}
    rest = {
        key: _sound("fit_content", key, content, _fit)[0]
        for key, content in among(connection, _CONTENTS, FIT_CONTENT.c.key, shared)
    }
    decoded = {
        key: own if common is None else in_place(_sound("fit_content", key, common, rest.__getitem__), own)
        for key, (own, common) in found.items()
    }
    return decoded, {key: common or key for key, (_, common) in found.items()}


def _engines(connection: Connection, keys: Collection[str]) -> dict[str, Engine]:
    found = among(connection, _ENGINES, ENGINE.c.key, keys)
    return {row[0]: Engine(row[0], row[1], _sound("engine", row[0], row[2], _parts)) for row in found}


def _readings(connection: Connection, keys: Collection[str]) -> dict[str, FactsRead]:
    found = among(connection, _READINGS, FACTS_READ.c.key, keys)
    return {row[0]: _sound("facts_read", row[0], row[1], lambda text: FactsRead.of(json.loads(text))) for row in found}


def _fit(text: str) -> tuple[Fit, str | None]:
    """Return what a content holds, and the key of the one that holds the rest."""
    content = json.loads(in_present_words(text))
    common = content.pop(COMMON, None) if isinstance(content, dict) else None
    return fit_of(content), common


def _with_battery(fit: Fit, text: str) -> Fit:
    return with_battery(fit, json.loads(text))


def _parts(text: str) -> Mapping[str, str]:
    return dict(json.loads(text).items())


def _sound(table: str, key: str, text: str, read: Callable[[str], _Read]) -> _Read:
    """Read a content; one that another program has made is named with its place."""
    try:
        return read(text)
    except (ValueError, TypeError, AttributeError, LookupError, RecursionError) as error:
        raise DamagedProjectError(
            f"the project is damaged: in table {table}, row {key}, the content is none of ours ({str(error)[:80]}); "
            "take its last good copy"
        ) from error


def read_own_fields(connection: Connection) -> list[OwnField]:
    """Return the fields of the project's own."""
    query = select(OWN_FIELD).order_by(OWN_FIELD.c.entity, OWN_FIELD.c.name)
    return [
        OwnField(row.entity, row.name, row.label, row.kind, row.unit, tuple(row.choices))
        for row in connection.execute(query)
    ]


def read_extra(connection: Connection, table: Any, ids: Collection[str] | None = None) -> dict[str, Mapping[str, Any]]:
    """Return the values of the project's own fields by row; rows without any are left out."""
    query = select(table.c.id, table.c.extra)
    return {row[0]: row[1] for row in among(connection, query, table.c.id, ids) if row[1]}


def read_mapping(connection: Connection, fingerprint: str) -> Mapping[str, Any] | None:
    """Return how a header row was read the last time."""
    query = select(IMPORT_MAPPING.c.mapping).where(IMPORT_MAPPING.c.fingerprint == fingerprint)
    found: Mapping[str, Any] | None = connection.execute(query).scalar()
    return found


def read_levels(connection: Connection) -> dict[tuple[str | None, str | None], str]:
    """Return (building, level) to the level's identifier."""
    query = select(BUILDING.c.name, LEVEL.c.name, LEVEL.c.id).select_from(LEVEL).outerjoin(
        BUILDING, LEVEL.c.building_id == BUILDING.c.id
    )  # fmt: skip
    return {(building, level): id_ for building, level, id_ in connection.execute(query)}


def read_versions(connection: Connection, table: Any, ids: Collection[str]) -> dict[str, int]:
    """Return the version of each row."""
    return {row[0]: row[1] for row in among(connection, select(table.c.id, table.c.version), table.c.id, ids)}
