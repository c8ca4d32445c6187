"""Laying what feeds openings: supplies, circuits and runs.

Hanging openings on them stands in `hanging`, what is worked out from it in `powering`, where supplies should go in
`siting`.
"""

from collections.abc import Callable, Iterable, Mapping
from math import isfinite
from typing import Any, Final

from sqlalchemy import Table, or_, select

from hwsched.attributes import CellError, read_value
from hwsched.calc.calculator import InputError
from hwsched.calc.power.circuit_tree import SUPPLY as AT_SUPPLY
from hwsched.calc.power.conductor import gauge_of
from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.journal.journal import Change
from hwsched.model.levels import levels_for
from hwsched.model.power_queries import read_power
from hwsched.model.project import Project
from hwsched.model.queries import opening_ids
from hwsched.model.tables import (
    BUILDING,
    CIRCUIT_TABLE,
    LEVEL,
    PART,
    RUN_TABLE,
    SUPPLY_TABLE,
)
from hwsched.operations.changes import Changes
from hwsched.operations.power.known_buildings import check_building
from hwsched.operations.survey.accepted_values import accepted, row_there
from hwsched.survey import CIRCUIT, RUN, SUPPLY, Entity

POWER_ENTITIES: Final[Mapping[str, tuple[Entity, Table]]] = {
    SUPPLY.name: (SUPPLY, SUPPLY_TABLE),
    CIRCUIT.name: (CIRCUIT, CIRCUIT_TABLE),
    RUN.name: (RUN, RUN_TABLE),
}
_KINDS: Final = {
    "part": "power-supply",
    "battery": "standby-battery",
    "wire": "wire",
    "cabinet": "enclosure",
    "limiter": "limiter",
}
"""Facts that name a part, and of which kind it must be."""


def add_supply(
    project: Project, facts: Mapping[str, Any], *, who: str, new_building: bool = True
) -> tuple[Changes, str]:
    """Lay a supply, or name a place where one may stand.

    Parameters
    ----------
    project : Project
        Open project.
    facts : mapping
        Values by attribute of `hwsched.survey.power.SUPPLY`; a name at least.
    who : str
        For the journal.
    new_building : bool
        Whether its building may be one that the project does not have yet.

    Returns
    -------
    changes : Changes
        What was touched.
    supply_id : str
        The new supply.

    Raises
    ------
    ValueRefusedError, DuplicateValueError
        And nothing is changed.
    """
    held = _held(SUPPLY, facts)
    _check_name(held.get("name"), "Supply")
    with project.change("lay-supply", f"Lay supply {held['name']}", who) as change:
        if not new_building and held.get("building"):
            check_building(change.connection, held["building"])
        row_id = insert_supply(change, held)
    return Changes.of(change), row_id


def insert_supply(change: Change, held: Mapping[str, Any], origin: str | None = None) -> str:
    """Write a supply whose facts are accepted, and its level where it is new."""
    check_parts(change, held)
    row = dict(held)
    place = (row.pop("building", None), row.pop("level", None))
    row["level_id"] = levels_for(change, {place})[place]
    # What a person enters stands already, unless it is said to be a place that may take one.
    row["use"] = row.get("use") or "laid"
    return change.insert(SUPPLY_TABLE, [row], [origin])[0]


def add_circuit(project: Project, supply_id: str, facts: Mapping[str, Any], *, who: str) -> tuple[Changes, str]:
    """Lay a circuit of a supply; as `add_supply` otherwise; raises MissingRowError too."""
    held = _held(CIRCUIT, facts)
    _check_name(held.get("name"), "Circuit")
    with project.change("lay-circuit", f"Lay circuit {held['name']}", who) as change:
        supply = row_there(change, SUPPLY_TABLE, supply_id)
        change.summary = f"Lay circuit {held['name']} of {supply.name}"
        check_parts(change, held)
        row_id = change.insert(CIRCUIT_TABLE, [{**held, "supply_id": supply_id}])[0]
    return Changes.of(change), row_id


def add_run(project: Project, circuit_id: str, facts: Mapping[str, Any], *, who: str) -> tuple[Changes, str]:
    """Lay a run of a circuit.

    Parameters
    ----------
    project : Project
        Open project.
    circuit_id : str
        Of which circuit.
    facts : mapping
        Values by attribute of `hwsched.survey.power.RUN`; its ends as people name them: "supply", a junction, a mark.
    who : str
        For the journal.

    Raises
    ------
    ValueRefusedError
        For a length that is not above zero, an unknown gauge, a run that closes a loop, an opening that is fed already.
    MissingRowError
        For a circuit that is not there.
    """
    held = _held(RUN, facts)
    with project.change("lay-run", "Lay a run", who) as change:
        circuit = row_there(change, CIRCUIT_TABLE, circuit_id)
        change.summary = f"Lay a run from {held['from_node']} to {held['to_node']} of circuit {circuit.name}"
        row_id = insert_run(change, circuit_id, held)
    return Changes.of(change), row_id


def insert_run(change: Change, circuit_id: str, held: Mapping[str, Any], origin: str | None = None) -> str:
    """Write a run whose facts are accepted, its ends as people name them."""
    marks = marks_of(change)
    row: dict[str, Any] = {**held, "circuit_id": circuit_id}
    row["from_node"] = begin_of(change, marks, circuit_id, held["from_node"])
    row["to_node"] = node_of(marks, held["to_node"])
    row["opening_id"] = row["to_node"] if row["to_node"] in marks.values() else None
    check_run(change, row, None, held)
    return change.insert(RUN_TABLE, [row], [origin])[0]


def edit_power_row(
    project: Project,
    entity: str,
    row_id: str,
    values: Mapping[str, Any],
    *,
    who: str,
    base: int | None = None,
    new_building: bool = True,
) -> Changes:
    """Set facts of a supply, circuit or run; takes `new_building` and raises as the verb that lays it.

    ConflictError is raised for what others changed at these facts since ``base``, the newest change set that was seen.
    """
    declared, table = _declared(entity)
    held = _held(declared, values, partial=True)
    if entity != RUN.name:
        _check_name(held.get("name"), declared.label)
    labels = ", ".join(declared.attribute(name).label.lower() for name in held)
    with project.change("edit-laid", f"Edit {labels}", who, base=base) as change:
        row = row_there(change, table, row_id)
        name = row.name if entity != RUN.name else f"a run of circuit {_name_of(change, CIRCUIT_TABLE, row.circuit_id)}"
        change.summary = f"Edit {labels} of {name}"
        check_parts(change, held)
        if entity == SUPPLY.name and {"building", "level"} & held.keys():
            place = place_of(change, row.level_id)
            if not new_building and held.get("building"):
                check_building(change.connection, held["building"])
            wanted = (held.pop("building", place[0]), held.pop("level", place[1]))
            held["level_id"] = levels_for(change, {wanted})[wanted]
        if entity == RUN.name:
            marks = marks_of(change)
            named = {row_id: mark for mark, row_id in marks.items()}
            ends = {end: named.get(row._mapping[end], row._mapping[end]) for end in ("from_node", "to_node")}
            said = {**ends, **held}
            for end in ("from_node", "to_node"):
                if end in held:
                    at_begin = end == "from_node"
                    held[end] = (
                        begin_of(change, marks, row.circuit_id, held[end]) if at_begin else node_of(marks, held[end])
                    )
            if "to_node" in held:
                held["opening_id"] = held["to_node"] if held["to_node"] in marks.values() else None
            check_run(change, {**row._mapping, **held}, row_id, said)
        change.update(table, [(row_id, held)])
    return Changes.of(change)


def edit_power_text(
    project: Project, entity: str, row_id: str, texts: Mapping[str, str], *, who: str, base: int | None = None
) -> Changes:
    """Set facts from what a person typed; empty text means unknown; raises as `edit_power_row`."""
    return edit_power_row(project, entity, row_id, typed_power_fact(entity, texts), who=who, base=base)


def typed_power_fact(entity: str, texts: Mapping[str, str]) -> dict[str, Any]:
    """Read facts of a supply, circuit or run that a person typed; raises ValueRefusedError."""
    declared = _declared(entity)[0]
    found: dict[str, Any] = {}
    for name, text in texts.items():
        try:
            attribute = declared.attribute(name)
        except KeyError:
            known = ", ".join(each.name for each in declared.attributes)
            raise ValueRefusedError(name, f"{declared.label.lower()} has no such fact; accepted: {known}") from None
        try:
            # A number without a unit is in the fact's own; what is laid has no length in millimetres.
            found[name] = read_value(attribute, text, bare_unit="mm" if attribute.kind == "length" else None).value
        except CellError as error:
            wanted = f"; accepted: {error.accepted}" if error.accepted else ""
            raise ValueRefusedError(attribute.label, f"'{text}' {error.message}{wanted}") from error
    return found


def remove_power_row(project: Project, entity: str, row_id: str, *, who: str, base: int | None = None) -> Changes:
    """Take away a supply with its circuits, a circuit with its runs, or a run.

    Raises MissingRowError, and ConflictError for what others changed since ``base`` at anything that would go.
    """
    declared, table = _declared(entity)
    with project.change("lift", f"Take away a {declared.label.lower()}", who, base=base) as change:
        row = row_there(change, table, row_id)
        if entity != RUN.name:
            change.summary = f"Take away {declared.label.lower()} {row.name}"
        change.delete(table, [row_id])
    return Changes.of(change)


def power_row_named(project: Project, name: str) -> tuple[str, str]:
    """Find what a person names: a supply, or a circuit as ``SUPPLY/CIRCUIT``; returns entity and identifier.

    Raises
    ------
    MissingRowError
        Says what there is.
    """
    with project.reading() as connection:
        facts = read_power(connection)
    names = {supply.name: (SUPPLY.name, supply.id) for supply in facts.supplies}
    of_supply = {supply.id: supply.name for supply in facts.supplies}
    names |= {f"{of_supply[c.supply_id]}/{c.name}": (CIRCUIT.name, c.id) for c in facts.circuits}
    if name not in names:
        raise MissingRowError(f"nothing is laid under '{name}'; there is {', '.join(names) or 'nothing yet'}")
    return names[name]


def is_power_row(project: Project, name: str) -> bool:
    """Tell whether a supply, or a circuit as ``SUPPLY/CIRCUIT``, is there under a name."""
    try:
        power_row_named(project, name)
    except MissingRowError:
        return False
    return True


def run_to(project: Project, circuit_id: str, node: str) -> tuple[str, str]:
    """Find the run of a circuit that ends at a junction or a mark; returns entity and identifier.

    Raises
    ------
    MissingRowError
        When there is none.
    """
    with project.reading() as connection:
        marks = opening_ids(connection)
        for run in read_power(connection).runs:
            if run.circuit_id == circuit_id and run.to_node == node_of(marks, node):
                return RUN.name, run.id
    raise MissingRowError(f"no run of this circuit ends at {node}")


def _declared(entity: str) -> tuple[Entity, Table]:
    if entity not in POWER_ENTITIES:
        raise ValueRefusedError("entity", f"there is no '{entity}' to lay; accepted: {', '.join(POWER_ENTITIES)}")
    return POWER_ENTITIES[entity]


def _held(declared: Entity, values: Mapping[str, Any], *, partial: bool = False) -> dict[str, Any]:
    held: dict[str, Any] = {}
    for name, value in values.items():
        try:
            attribute = declared.attribute(name)
        except KeyError:
            near = declared.nearest(name)
            raise ValueRefusedError(name, f"{declared.label.lower()} has no such fact{near}") from None
        held[name] = accepted(attribute, value)
    if not partial:
        for attribute in declared.attributes:
            if attribute.required and not held.get(attribute.name):
                raise ValueRefusedError(attribute.label, f"a {declared.label.lower()} needs it")
    return held


def _check_name(name: object, what: str) -> None:
    if isinstance(name, str) and "/" in name:
        raise ValueRefusedError("Name", f"'{name}': {what.lower()} names have no /, it parts supply and circuit")


def checked_length(length_m: float) -> float:
    """Return the length of a run; raises ValueRefusedError."""
    if not isfinite(length_m) or length_m <= 0:
        raise ValueRefusedError("Length, one way", f"{length_m:g} m cannot be; accepted: more than 0 m")
    return float(length_m)


def check_parts(change: Change, held: Mapping[str, Any]) -> None:
    """See that what names a part names one of its kind; raises ValueRefusedError."""
    check_kinds(held, lambda number: _kind_of(change, number))


def _kind_of(change: Change, number: str) -> str | None:
    found: str | None = change.connection.execute(select(PART.c.kind).where(PART.c.number == number)).scalar()
    return found


def check_kinds(held: Mapping[str, Any], kind_of: Callable[[str], str | None]) -> None:
    """See that what names a part names one of its kind, as the catalogue tells it; raises ValueRefusedError."""
    for name, kind in _KINDS.items():
        number = held.get(name)
        if number is None:
            continue
        found = kind_of(number)
        if found is None:
            raise ValueRefusedError(name, f"the catalogue has no part '{number}'")
        if found != kind:
            raise ValueRefusedError(name, f"'{number}' is a {found}; accepted: a {kind} of the catalogue")


def check_run(change: Change, row: Mapping[str, Any], row_id: str | None, said: Mapping[str, Any]) -> None:
    """Refuse a run that cannot be; raises ValueRefusedError."""
    query = select(RUN_TABLE).where(
        or_(RUN_TABLE.c.circuit_id == row["circuit_id"], RUN_TABLE.c.to_node == row.get("opening_id"))
    )
    others = [dict(each._mapping) for each in change.connection.execute(query) if each.id != row_id]
    check_run_among(row, others, said, lambda number: _kind_of(change, number))


def check_run_among(
    row: Mapping[str, Any],
    others: Iterable[Mapping[str, Any]],
    said: Mapping[str, Any],
    kind_of: Callable[[str], str | None],
) -> None:
    """Refuse a run that cannot be.

    Parameters
    ----------
    row : mapping
        As it would stand.
    others : iterable of mapping
        The other runs of its circuit, and those that end at its opening.
    said : mapping
        Its ends as people name them.
    kind_of : callable
        Tells the kind of a part by its number.

    Raises
    ------
    ValueRefusedError
        Says what cannot be.
    """
    ends = f"run from {said['from_node']} to {said['to_node']}"
    if row.get("length_m") is not None and not row["length_m"] > 0:
        raise ValueRefusedError(
            "Length, one way", f"{row['length_m']:g} m of the {ends} cannot be; accepted: above 0 m"
        )
    if row.get("gauge") is not None:
        try:
            gauge_of(row["gauge"])
        except InputError as error:
            raise ValueRefusedError("Gauge", f"of the {ends}: {error.message}") from None
    check_kinds({"wire": row.get("wire")}, kind_of)
    if row["to_node"] == AT_SUPPLY:
        raise ValueRefusedError("To", f"the {ends} ends at the supply; runs lead away from it")
    if row["from_node"] == row["to_node"]:
        raise ValueRefusedError("To", f"the {ends} ends where it begins")
    others = list(others)
    # On whichever circuit: an opening fed twice joins two outputs, which must not be joined unless listed for it (NEC
    # 725.124, secondary copy).
    if row.get("opening_id") is not None and any(each["to_node"] == row["opening_id"] for each in others):
        raise ValueRefusedError("To", f"opening {said['to_node']} is fed already; take it off its circuit first")
    feeder = {each["to_node"]: each["from_node"] for each in others if each["circuit_id"] == row["circuit_id"]}
    if row["to_node"] in feeder:
        raise ValueRefusedError("To", f"{said['to_node']} is fed already by a run of this circuit; that closes a loop")
    feeder[row["to_node"]] = row["from_node"]
    at, seen = row["from_node"], {row["to_node"]}
    while at in feeder:
        if at in seen:
            raise ValueRefusedError("From", f"the {ends} closes a loop; a circuit is a tree from its supply")
        seen.add(at)
        at = feeder[at]
    if at in seen:
        raise ValueRefusedError("From", f"the {ends} closes a loop; a circuit is a tree from its supply")


def marks_of(change: Change) -> dict[str, str]:
    """Return mark to identifier of every opening."""
    return opening_ids(change.connection)


def node_of(marks: Mapping[str, str], said: str) -> str:
    """Return the node that a person names: the supply goes before a mark, and a mark before a junction."""
    return said if said == AT_SUPPLY else marks.get(said, said)


def begin_of(change: Change, marks: Mapping[str, str], circuit_id: str, said: str) -> str:
    """Return the node of a circuit that a person names; its own junction goes before an opening marked like it."""
    query = select(RUN_TABLE.c.id).where(RUN_TABLE.c.circuit_id == circuit_id, RUN_TABLE.c.to_node == said)
    return said if change.connection.execute(query).first() is not None else node_of(marks, said)


def _name_of(change: Change, table: Table, row_id: str) -> str:
    return str(change.connection.execute(select(table.c.name).where(table.c.id == row_id)).scalar())


def place_of(change: Change, level_id: str | None) -> tuple[str | None, str | None]:
    """Return building and level of a level's row."""
    query = (
        select(BUILDING.c.name, LEVEL.c.name)
        .select_from(LEVEL)
        .outerjoin(BUILDING, LEVEL.c.building_id == BUILDING.c.id)
        .where(LEVEL.c.id == level_id)
    )
    row = change.connection.execute(query).first()
    return (None, None) if row is None else (row[0], row[1])
