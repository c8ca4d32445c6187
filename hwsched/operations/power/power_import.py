"""Taking in a power workbook: what is new by its name is laid, what is known is changed, as one change set or none."""

from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from hwsched.exchange.power.power_book import SHEETS, PowerRead, PowerRow, read_power_book
from hwsched.exchange.problems import CellProblem, InputRejected
from hwsched.model.errors import ValueRefusedError
from hwsched.model.journal.journal import Change
from hwsched.model.journal.touched import touched_since
from hwsched.model.project import Project
from hwsched.model.queries import latest_change
from hwsched.model.tables import (
    BUILDING,
    CIRCUIT_TABLE,
    LEVEL,
    OPENING_TABLE,
    PART,
    ROUTE,
    RUN_TABLE,
    SUPPLY_TABLE,
)
from hwsched.operations.changes import Changes
from hwsched.operations.imports import TakenIn
from hwsched.operations.power.power_editing import check_kinds, check_run_among, node_of
from hwsched.operations.power.power_plan import PowerPlan
from hwsched.operations.prepared import NotReadyError, change_prepared

_COUNTS: Final = {
    "levels": "level_count",
    "buildings": "building_count",
    "places": "place_count",
    "supplies": "supply_count",
    "circuits": "circuit_count",
    "runs": "run_count",
    "routes": "route_count",
}
"""What machines are told of each sheet."""


@dataclass(frozen=True, slots=True)
class PowerImport:
    """What came in."""

    changes: Changes
    rows: Mapping[str, int]
    """Rows by sheet."""
    unread: tuple[str, ...] = ()
    """Names of the sheets that were not read."""


def take_in(project: Project, path: Path, *, who: str, accept: str) -> TakenIn:
    """Take in a power workbook, as `IMPORTS` has it: whole or not at all."""
    done = import_power(project, path, who=who)
    said = "Read " + ", ".join(f"{count} {name}" for name, count in done.rows.items())
    return TakenIn(done.changes, said, {_COUNTS[name]: count for name, count in done.rows.items()}, (), done.unread)


def summary_of(counts: Mapping[str, int]) -> str:
    """Say how much comes in; of each sheet a text of its own, so that each can be said in other languages."""
    n = Counter(counts)
    told = {
        "levels": f"{n['levels']} levels",
        "buildings": f"{n['buildings']} buildings",
        "places": f"{n['places']} places",
        "supplies": f"{n['supplies']} supplies",
        "circuits": f"{n['circuits']} circuits",
        "runs": f"{n['runs']} runs",
        "routes": f"{n['routes']} routes",
    }
    return ", ".join(told[name] for name, count in counts.items() if count)


def import_power(project: Project, path: Path, *, who: str) -> PowerImport:
    """Take in a power workbook.

    Parameters
    ----------
    project : Project
        Open project.
    path : Path
        Workbook with sheets as in `hwsched.exchange.power.power_book.SHEETS`.
    who : str
        For the journal.

    Raises
    ------
    InputRejected
        Names every row that cannot be, with file, sheet, row and column; nothing is changed then.
    """
    read = read_power_book(path)
    counts = {name: len(rows) for name, rows in read.rows.items()}
    twice = list(_twice(read))
    held: list[tuple[int, PowerPlan]] = []

    def look() -> None:
        with project.reading() as connection:
            held[:] = [(latest_change(connection), PowerPlan(connection))]
        problems = [*twice, *_planned(held[0][1], read)]
        if problems:
            raise InputRejected(problems)

    def write(change: Change, last: bool) -> None:
        state, _ = held[0]
        if any(each.entities & _USED for each in touched_since(change.connection, state)):
            if not last:
                raise NotReadyError(look)
            look()
        held[0][1].write(change)

    look()
    said = summary_of(counts)
    change, _ = change_prepared(project, "import-power", f"Import power {path.name}: {said}", who, write)
    return PowerImport(Changes.of(change), counts, read.unread)


_USED: Final = frozenset(
    str(table.name) for table in (OPENING_TABLE, PART, BUILDING, LEVEL, SUPPLY_TABLE, CIRCUIT_TABLE, RUN_TABLE, ROUTE)
)
"""Tables that decide what a workbook means."""


def _planned(plan: PowerPlan, read: PowerRead) -> Iterator[CellProblem]:
    """Note in the plan what the rows say; yields those that cannot be."""
    takers: Mapping[str, Callable[[PowerPlan, PowerRow], None]] = {
        "levels": _level,
        "buildings": _building,
        "places": _place,
        "supplies": _supply,
        "circuits": _circuit,
        "runs": _run,
        "routes": _route,
    }
    for name, take in takers.items():
        for row in read.rows[name]:
            try:
                take(plan, row)
            except CellRefusedError as error:
                yield row.refuse(error.column, error.message, error.accepted)
            except ValueRefusedError as error:
                yield row.refuse(_column_of(name, error.field), error.message)


_KEYS: Final[Mapping[str, tuple[str, ...]]] = {
    "levels": ("building", "level"),
    "buildings": ("building", "level"),
    "places": ("mark",),
    "supplies": ("name",),
    "circuits": ("supply", "name"),
    "routes": ("mark", "supply"),
}
"""What a row of a sheet is known by; runs are refused as fed twice."""


def _twice(read: PowerRead) -> Iterator[CellProblem]:
    """Yield the rows that say something of what an earlier row of their sheet speaks of."""
    for sheet, columns in _KEYS.items():
        first: dict[tuple[object, ...], PowerRow] = {}
        for row in read.rows[sheet]:
            before = first.setdefault(tuple(row.values[name] for name in columns), row)
            if before is not row:
                yield row.refuse(columns[-1], f"stands in row {before.place + 1} already", "one row each")
    kept: dict[object, PowerRow] = {}
    for row in read.rows["routes"]:
        if row.values.get("pinned"):
            before = kept.setdefault(row.values["mark"], row)
            if before is not row:
                message = f"{row.values['mark']} is kept at {before.values['supply']} by row {before.place + 1}"
                yield row.refuse("pinned", message, "one supply that must feed an opening")


class CellRefusedError(Exception):
    """A cell that names what is not there.

    Parameters
    ----------
    column, message, accepted : str
        As of a `CellProblem`.
    """

    def __init__(self, column: str, message: str, accepted: str = "") -> None:
        super().__init__(message)
        self.column, self.message, self.accepted = column, message, accepted


def _column_of(sheet: str, field: str) -> str:
    """Find the column of a sheet that a refusal speaks of; empty where it speaks of the row."""
    return next((each.name for each in SHEETS[sheet][1] if field in (each.label, each.name)), "")


def _level(plan: PowerPlan, row: PowerRow) -> None:
    values = row.values
    height = values["height_m"]
    place = (str(values["building"]), str(values["level"]))
    plan.level(place, float(height) if isinstance(height, int | float) else None, row.where)


def _building(plan: PowerPlan, row: PowerRow) -> None:
    values = dict(row.values)
    place = (str(values.pop("building")), values.pop("level", None))
    # An empty cell erases nothing: a fact may have been typed in since.
    facts = {name: value for name, value in values.items() if value is not None}
    plan.facts_of((place[0], None if place[1] is None else str(place[1])), facts, row.where)


def _place(plan: PowerPlan, row: PowerRow) -> None:
    values = dict(row.values)
    opening = plan.marks.get(str(values.pop("mark")))
    if opening is None:
        raise CellRefusedError("mark", "is no opening of the project")
    plan.edit(OPENING_TABLE, opening, values, row.where)


def _supply(plan: PowerPlan, row: PowerRow) -> None:
    values: dict[str, Any] = dict(row.values)
    if "/" in str(values["name"]):
        raise CellRefusedError("name", "names have no /, it parts supply and circuit")
    held = plan.supply_named.get(values["name"])
    check_kinds(values, plan.kinds.get)
    if held is None or "use" in values:
        values["use"] = values.get("use") or "laid"
    told = {name: values.pop(name) for name in ("building", "level") if name in values}
    if held is None:
        held = plan.insert(SUPPLY_TABLE, values, row.where)
        plan.supply_named[values["name"]] = held
        plan.stand(held, (told.get("building"), told.get("level")))
        return
    if told:
        known = plan.place_of(held)
        plan.stand(held, (told.get("building", known[0]), told.get("level", known[1])))
    plan.edit(SUPPLY_TABLE, held, values, row.where)


def _circuit(plan: PowerPlan, row: PowerRow) -> None:
    values: dict[str, Any] = dict(row.values)
    supply_id = _supply_id(plan, values.pop("supply"))
    if "/" in str(values["name"]):
        raise CellRefusedError("name", "names have no /, it parts supply and circuit")
    check_kinds(values, plan.kinds.get)
    held = plan.circuit_named.get((supply_id, values["name"]))
    if held is None:
        made = plan.insert(CIRCUIT_TABLE, {**values, "supply_id": supply_id}, row.where)
        plan.circuit_named[supply_id, values["name"]] = made
    else:
        plan.edit(CIRCUIT_TABLE, held, values, row.where)


def _run(plan: PowerPlan, row: PowerRow) -> None:
    values: dict[str, Any] = dict(row.values)
    supply, circuit = values.pop("supply"), values.pop("circuit")
    circuit_id = plan.circuit_named.get((_supply_id(plan, supply), circuit))
    if circuit_id is None:
        raise CellRefusedError("circuit", f"is no circuit of {supply}", "a circuit of sheet Circuits")
    said = dict(values)
    here = plan.runs_of(circuit_id)
    # A junction of the circuit goes before an opening that is marked like it.
    if not any(each["to_node"] == values["from_node"] for each in here):
        values["from_node"] = node_of(plan.marks, values["from_node"])
    values["to_node"] = node_of(plan.marks, values["to_node"])
    ends = (values["from_node"], values["to_node"])
    held = next((each for each in here if (each["from_node"], each["to_node"]) == ends), None)
    if held is None:
        values["circuit_id"] = circuit_id
        values["opening_id"] = values["to_node"] if values["to_node"] in plan.openings else None
    whole = {**(held or {}), **values}
    run_id = None if held is None else str(held["id"])
    check_run_among(whole, plan.others(circuit_id, whole["opening_id"], run_id), said, plan.kinds.get)
    plan.run(values if held is None else {**values, "circuit_id": circuit_id}, row.where, run_id)


def _route(plan: PowerPlan, row: PowerRow) -> None:
    values: dict[str, Any] = dict(row.values)
    opening = plan.marks.get(values.pop("mark"))
    if opening is None:
        raise CellRefusedError("mark", "is no opening of the project")
    supply_id = _supply_id(plan, values.pop("supply"))
    length = values.get("length_m")
    if length is not None and not length > 0:
        raise CellRefusedError("length_m", "cannot be", "more than 0 m")
    if "pinned" in values:
        values["pinned"] = bool(values["pinned"])
    if values.get("pinned"):
        # It can be kept at one only.
        for at, route_id in plan.routes.get(opening, {}).items():
            if at != supply_id:
                plan.edit(ROUTE, route_id, {"pinned": False}, None)
    held = plan.routes.get(opening, {}).get(supply_id)
    if held is None:
        made = plan.insert(ROUTE, {"opening_id": opening, "supply_id": supply_id, **values}, row.where)
        plan.routes.setdefault(opening, {})[supply_id] = made
    else:
        plan.edit(ROUTE, held, values, row.where)


def _supply_id(plan: PowerPlan, name: Any) -> str:
    found = plan.supply_named.get(name)
    if found is None:
        raise CellRefusedError("supply", "is no supply of the project or of sheet Supplies")
    return found
