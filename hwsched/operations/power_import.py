"""Taking in a power workbook: what is new by its name is laid, what is known is changed, as one change set or none."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from sqlalchemy import select

from hwsched.exchange.power_book import SHEETS, PowerRead, PowerRow, read_power_book
from hwsched.exchange.problems import CellProblem, InputRejected
from hwsched.model.errors import ChangeError, ValueRefusedError
from hwsched.model.journal import Change
from hwsched.model.placing import levels_for
from hwsched.model.project import Project
from hwsched.model.tables import CIRCUIT_TABLE, OPENING_TABLE, ROUTE, RUN_TABLE, SUPPLY_TABLE
from hwsched.operations.changes import Changes
from hwsched.operations.hanging import loosen, set_height
from hwsched.operations.laying import (
    begin_of,
    check_parts,
    check_run,
    insert_run,
    insert_supply,
    marks_of,
    node_of,
    place_of,
)


@dataclass(frozen=True, slots=True)
class PowerImport:
    """What came in."""

    changes: Changes
    rows: Mapping[str, int]
    """Rows by sheet."""


class _RefusedError(Exception):
    """Ends the transaction, so that nothing is half done."""


def import_power(project: Project, path: Path, *, who: str) -> PowerImport:
    """Take in a power workbook.

    Parameters
    ----------
    project : Project
        Open project.
    path : Path
        Workbook with sheets as in `hwsched.exchange.power_book.SHEETS`.
    who : str
        For the journal.

    Raises
    ------
    InputRejected
        Names every row that cannot be, with file, sheet, row and column; nothing is changed then.
    """
    read = read_power_book(path)
    counts = {name: len(rows) for name, rows in read.rows.items()}
    problems: list[CellProblem] = list(_twice(read))
    takers: Mapping[str, Callable[[Change, PowerRow], None]] = {
        "levels": _level,
        "places": _place,
        "supplies": _supply,
        "circuits": _circuit,
        "runs": _run,
        "routes": _route,
    }
    try:
        with project.change("import-power", f"Import power {path.name}", who) as change:
            for name, take in takers.items():
                for row in read.rows[name]:
                    try:
                        take(change, row)
                    except CellRefusedError as error:
                        problems.append(row.refuse(error.column, error.message, error.accepted))
                    except ChangeError as error:
                        column = _column_of(name, error)
                        said_of_it = error.message if column and isinstance(error, ValueRefusedError) else str(error)
                        problems.append(row.refuse(column, said_of_it))
            said = ", ".join(f"{count} {name}" for name, count in counts.items() if count)
            change.summary = f"Import power {path.name}: {said}"
            if problems:
                raise _RefusedError
    except _RefusedError:
        raise InputRejected(problems) from None
    return PowerImport(Changes.of(change), counts)


_KEYS: Final[Mapping[str, tuple[str, ...]]] = {
    "levels": ("building", "level"),
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
                yield row.refuse("pinned", message, "one supply that an opening must hang on")


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


def _column_of(sheet: str, error: ChangeError) -> str:
    """Find the column of a sheet that a refusal speaks of."""
    if not isinstance(error, ValueRefusedError):
        return ""
    return next((each.name for each in SHEETS[sheet][1] if error.field in (each.label, each.name)), "")


def _level(change: Change, row: PowerRow) -> None:
    values = row.values
    place = (str(values["building"]), str(values["level"]))
    levels_for(change, {place})
    height = values["height_m"]
    set_height(change, *place, float(height) if isinstance(height, int | float) else None, row.where)


def _place(change: Change, row: PowerRow) -> None:
    values = dict(row.values)
    opening = marks_of(change).get(str(values.pop("mark")))
    if opening is None:
        raise CellRefusedError("mark", "is no opening of the project")
    change.update(OPENING_TABLE, [(opening, values)], [row.where])


def _supply(change: Change, row: PowerRow) -> None:
    values: dict[str, Any] = dict(row.values)
    if "/" in str(values["name"]):
        raise CellRefusedError("name", "names have no /, it parts supply and circuit")
    query = select(SUPPLY_TABLE.c.id, SUPPLY_TABLE.c.level_id).where(SUPPLY_TABLE.c.name == values["name"])
    held = change.connection.execute(query).first()
    if held is None:
        insert_supply(change, values, row.where)
        return
    check_parts(change, values)
    if "use" in values:
        values["use"] = values["use"] or "laid"
    if {"building", "level"} & values.keys():
        known = place_of(change, held.level_id)
        place = (values.pop("building", known[0]), values.pop("level", known[1]))
        values["level_id"] = levels_for(change, {place})[place]
    change.update(SUPPLY_TABLE, [(held.id, values)], [row.where])


def _circuit(change: Change, row: PowerRow) -> None:
    values: dict[str, Any] = dict(row.values)
    supply_id = _supply_id(change, values.pop("supply"))
    if "/" in str(values["name"]):
        raise CellRefusedError("name", "names have no /, it parts supply and circuit")
    check_parts(change, values)
    held = _circuit_id(change, supply_id, values["name"])
    if held is None:
        change.insert(CIRCUIT_TABLE, [{**values, "supply_id": supply_id}], [row.where])
    else:
        change.update(CIRCUIT_TABLE, [(held, values)], [row.where])


def _run(change: Change, row: PowerRow) -> None:
    values: dict[str, Any] = dict(row.values)
    supply, circuit = values.pop("supply"), values.pop("circuit")
    circuit_id = _circuit_id(change, _supply_id(change, supply), circuit)
    if circuit_id is None:
        raise CellRefusedError("circuit", f"is no circuit of {supply}", "a circuit of sheet Circuits")
    marks = marks_of(change)
    ends = [begin_of(change, marks, circuit_id, values["from_node"]), node_of(marks, values["to_node"])]
    query = select(RUN_TABLE).where(
        RUN_TABLE.c.circuit_id == circuit_id, RUN_TABLE.c.from_node == ends[0], RUN_TABLE.c.to_node == ends[1]
    )
    held = change.connection.execute(query).first()
    if held is None:
        insert_run(change, circuit_id, values, row.where)
        return
    said = dict(values)
    values.update(from_node=ends[0], to_node=ends[1])
    check_run(change, {**held._mapping, **values}, held.id, said)
    change.update(RUN_TABLE, [(held.id, values)], [row.where])


def _route(change: Change, row: PowerRow) -> None:
    values: dict[str, Any] = dict(row.values)
    opening = marks_of(change).get(values.pop("mark"))
    if opening is None:
        raise CellRefusedError("mark", "is no opening of the project")
    supply_id = _supply_id(change, values.pop("supply"))
    length = values.get("length_m")
    if length is not None and not length > 0:
        raise CellRefusedError("length_m", "cannot be", "more than 0 m")
    if "pinned" in values:
        values["pinned"] = bool(values["pinned"])
        if values["pinned"]:
            loosen(change, opening, supply_id)
    query = select(ROUTE.c.id).where(ROUTE.c.opening_id == opening, ROUTE.c.supply_id == supply_id)
    held = change.connection.execute(query).scalar()
    if held is None:
        change.insert(ROUTE, [{"opening_id": opening, "supply_id": supply_id, **values}], [row.where])
    else:
        change.update(ROUTE, [(held, values)], [row.where])


def _supply_id(change: Change, name: Any) -> str:
    found = change.connection.execute(select(SUPPLY_TABLE.c.id).where(SUPPLY_TABLE.c.name == name)).scalar()
    if found is None:
        raise CellRefusedError("supply", "is no supply of the project or of sheet Supplies")
    return str(found)


def _circuit_id(change: Change, supply_id: str, name: Any) -> str | None:
    query = select(CIRCUIT_TABLE.c.id).where(CIRCUIT_TABLE.c.supply_id == supply_id, CIRCUIT_TABLE.c.name == name)
    found = change.connection.execute(query).scalar()
    return None if found is None else str(found)
