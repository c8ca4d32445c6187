"""Putting openings on circuits and taking them off; measured routes, heights of levels.

Supplies, circuits and runs themselves are laid in `laying`.
"""

from collections.abc import Iterable, Mapping, Sequence
from math import isfinite
from typing import Any, Final

from sqlalchemy import select

from hwsched.calc.power.circuit_tree import SUPPLY as AT_SUPPLY
from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.journal.journal import Change
from hwsched.model.power_queries import level_heights, read_power
from hwsched.model.project import Project
from hwsched.model.queries import read_inputs
from hwsched.model.tables import BUILDING, CIRCUIT_TABLE, IN_USE, LEVEL, OPENING_TABLE, ROUTE, RUN_TABLE, SUPPLY_TABLE
from hwsched.operations.changes import Changes
from hwsched.operations.power.power_editing import begin_of, checked_length, marks_of
from hwsched.operations.survey.accepted_values import mark_of, row_there
from hwsched.telling.natural import natural
from hwsched.values.power import Supply
from hwsched.wiring.distances import distance

_LOWEST_M: Final = -200.0
_HIGHEST_M: Final = 1000.0


def connect_openings(
    project: Project,
    circuit_id: str,
    opening_ids: Sequence[str],
    *,
    who: str,
    from_node: str = AT_SUPPLY,
    length_m: float | None = None,
    base: int | None = None,
) -> Changes:
    """Put openings on a circuit, each by a run of its own; what was on another is moved.

    Parameters
    ----------
    project : Project
        Open project.
    circuit_id : str
        Circuit.
    opening_ids : sequence of str
        Openings; wire that went on past one to others stays, with the lengths added.
    who : str
        For the journal.
    from_node : str
        Where the runs begin: "supply", a junction or a mark of this circuit.
    length_m : float, optional
        Of each run; else as measured, or as estimated from level, plan and rise; else unknown.
    base : int, optional
        The newest change set that was seen; another circuit on which others put them since is a conflict.

    Raises
    ------
    MissingRowError, ValueRefusedError, ConflictError
        And nothing is changed.
    """
    if length_m is not None:
        checked_length(length_m)
    summary = f"Connect {len(opening_ids)} openings" if len(opening_ids) != 1 else "Connect 1 opening"
    with project.change("hang", summary, who, base=base) as change:
        circuit = row_there(change, CIRCUIT_TABLE, circuit_id)
        supply = next(s for s in read_power(change.connection).supplies if s.id == circuit.supply_id)
        named = mark_of(change, opening_ids[0]) if len(opening_ids) == 1 else f"{len(opening_ids)} openings"
        change.summary = f"Connect {named} to circuit {circuit.name} of {supply.name}"
        begin = begin_of(change, marks_of(change), circuit_id, from_node)
        _check_begin(change, circuit, begin, from_node, opening_ids)
        lengths = (
            dict.fromkeys(opening_ids, length_m)
            if length_m is not None or begin != AT_SUPPLY
            else _lengths(change, project, supply, opening_ids)
        )
        connect_to(change, circuit_id, {each: lengths[each] for each in opening_ids}, begin)
    return Changes.of(change)


def _check_begin(change: Change, circuit: Any, begin: str, said: str, opening_ids: Sequence[str]) -> None:
    """See that runs begin at the supply or at a node that stays on the circuit."""
    if begin == AT_SUPPLY:
        return
    # Openings that are moved are taken off first, and their node would be gone when the runs begin at it.
    if begin in opening_ids:
        raise ValueRefusedError("From", f"{said} cannot be fed from itself")
    query = select(RUN_TABLE.c.to_node).where(RUN_TABLE.c.circuit_id == circuit.id)
    nodes = set(change.connection.execute(query).scalars())
    if begin not in nodes:
        named = {row_id: mark for mark, row_id in marks_of(change).items()}
        there = ", ".join([AT_SUPPLY, *sorted((named.get(node, node) for node in nodes), key=natural)])
        raise ValueRefusedError("From", f"circuit {circuit.name} has no {said}; accepted: {there}")


def connect_to(
    change: Change,
    circuit_id: str,
    lengths: Mapping[str, float | None],
    begin: str = AT_SUPPLY,
    wire: str | None = None,
) -> None:
    """Move openings onto a circuit, with the lengths of their runs."""
    take_off(change, list(lengths))
    known = {row.id for row in change.connection.execute(select(OPENING_TABLE.c.id).where(IN_USE))}
    for opening_id in lengths:
        if opening_id not in known:
            raise MissingRowError("this opening is not in the project any more")
    rows = [
        {
            "circuit_id": circuit_id,
            "from_node": begin,
            "to_node": opening_id,
            "opening_id": opening_id,
            "length_m": length,
            "wire": wire,
        }
        for opening_id, length in lengths.items()
    ]
    change.insert(RUN_TABLE, rows)


def disconnect_openings(project: Project, opening_ids: Sequence[str], *, who: str, base: int | None = None) -> Changes:
    """Take openings off their circuits; wire that went on past one to others stays, with the lengths added.

    Raises MissingRowError, and ConflictError for what others changed at it since ``base``.
    """
    many = len(opening_ids) != 1
    summary = f"Take {len(opening_ids)} openings off their circuits" if many else "Take 1 opening off its circuit"
    with project.change("unhang", summary, who, base=base) as change:
        if len(opening_ids) == 1:
            change.summary = f"Take {mark_of(change, opening_ids[0])} off its circuit"
        take_off(change, opening_ids)
    return Changes.of(change)


def set_route(
    project: Project,
    opening_id: str,
    supply_id: str,
    *,
    who: str,
    length_m: float | None = None,
    pinned: bool | None = None,
    base: int | None = None,
) -> Changes:
    """Say how long the cable route between an opening and a supply is, and whether the siting must keep the pair.

    What is left out stays; raises MissingRowError, ValueRefusedError, and ConflictError for what others said since
    ``base``.
    """
    values: dict[str, Any] = {}
    if length_m is not None:
        values["length_m"] = checked_length(length_m)
    if pinned is not None:
        values["pinned"] = pinned
    if not values:
        raise ValueRefusedError("Length, one way", "give how long the route is, or whether the siting keeps the pair")
    with project.change("set-route", "Set a cable route", who, base=base) as change:
        supply = row_there(change, SUPPLY_TABLE, supply_id)
        change.summary = f"Set the cable route from {supply.name} to {mark_of(change, opening_id)}"
        query = select(ROUTE.c.id).where(ROUTE.c.opening_id == opening_id, ROUTE.c.supply_id == supply_id)
        held = change.connection.execute(query).scalar()
        if pinned:
            loosen(change, opening_id, supply_id)
        if held is None:
            change.insert(ROUTE, [{"opening_id": opening_id, "supply_id": supply_id, **values}])
        else:
            change.update(ROUTE, [(held, values)])
    return Changes.of(change)


def loosen(change: Change, opening_id: str, supply_id: str) -> None:
    """Part an opening from all supplies but one: it can be kept at one only."""
    others = select(ROUTE.c.id).where(ROUTE.c.opening_id == opening_id, ROUTE.c.supply_id != supply_id)
    change.update(ROUTE, [(each, {"pinned": False}) for each in change.connection.execute(others).scalars().all()])


def set_level_height(project: Project, building: str, level: str, height_m: float | None, *, who: str) -> Changes:
    """Say how high a level's floor lies over the building's zero [m]; raises MissingRowError, ValueRefusedError."""
    if height_m is not None and not (isfinite(height_m) and _LOWEST_M <= height_m <= _HIGHEST_M):
        accepted = f"{_LOWEST_M:g} to {_HIGHEST_M:g} m"
        raise ValueRefusedError("Height of the floor", f"{height_m:g} m cannot be; accepted: {accepted}")
    with project.change("set-level-height", f"Set the height of level {level} of {building}", who) as change:
        set_height(change, building, level, height_m)
    return Changes.of(change)


def set_height(change: Change, building: str, level: str, height_m: float | None, origin: str | None = None) -> None:
    """Write the height of a level that is there; raises MissingRowError."""
    query = (
        select(LEVEL.c.id)
        .join(BUILDING, LEVEL.c.building_id == BUILDING.c.id)
        .where(BUILDING.c.name == building, LEVEL.c.name == level)
    )
    found = change.connection.execute(query).scalar()
    if found is None:
        raise MissingRowError(f"{building} has no level {level}")
    change.update(LEVEL, [(found, {"height_m": height_m})], [origin])


def take_off(change: Change, opening_ids: Sequence[str]) -> None:
    """Take openings off their circuits; wire that went on past one to others stays, with the lengths added."""
    runs = change.connection.execute(select(RUN_TABLE)).all()
    moved = beyond(runs, opening_ids)
    # Before the runs go: what hangs beyond them must at no moment begin at a node that nothing feeds.
    change.update(RUN_TABLE, [(row, {"from_node": at, "length_m": length}) for row, (at, length) in moved.items()])
    wanted = set(opening_ids)
    change.delete(RUN_TABLE, [row.id for row in runs if row.opening_id in wanted])


def beyond(runs: Iterable[Any], opening_ids: Iterable[str]) -> dict[str, tuple[str, float | None]]:
    """Say where wire that went on past openings begins once they are taken off, and how long it is then [m].

    Parameters
    ----------
    runs : iterable
        Rows or runs of all circuits.
    opening_ids : iterable of str
        Openings that are taken off.

    Returns
    -------
    dict
        Run to its new first node and its length; None while a length is unknown.
    """
    wanted = set(opening_ids)
    runs = list(runs)
    ending = {run.to_node: run for run in runs if run.opening_id in wanted}
    found: dict[str, tuple[str, float | None]] = {}
    for run in runs:
        if run.from_node not in ending or run.opening_id in wanted:
            continue
        length, at, seen = run.length_m, run.from_node, set[str]()
        # Runs drawn in a circle would be followed for ever; that they are one is another rule's word.
        while at in ending and at not in seen:
            seen.add(at)
            near = ending[at]
            # Unknown and known make unknown: a sum with a gap would pass for a measured length.
            length = None if length is None or near.length_m is None else length + near.length_m
            at = near.from_node
        found[run.id] = at, length
    return found


def _lengths(change: Change, project: Project, supply: Supply, opening_ids: Sequence[str]) -> dict[str, float | None]:
    connection = change.connection
    routes = {(r.opening_id, r.supply_id): r for r in read_power(connection).routes}
    heights = level_heights(connection)
    found: dict[str, float | None] = dict.fromkeys(opening_ids)
    for given in read_inputs(connection, list(opening_ids), project.catalogue.read(connection)):
        route = routes.get((given.opening.id, supply.id))
        measured, _ = distance(supply, given.opening, heights, route)
        # A run of no length cannot be; what stands beside its supply has its few metres measured by hand.
        found[given.opening.id] = measured.metres if measured is not None and measured.metres > 0 else None
    return found
