"""The power workbook: levels, buildings, supplies, circuits, runs and measured routes as sheets, read row by row.

What the rows mean for a project is decided by the operation that takes them in.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from hwsched.attributes import Attribute, Value, normal
from hwsched.exchange.parts.catalogue_rows import Table, read_table
from hwsched.exchange.problems import CellProblem, FileProblem, InputRejected
from hwsched.exchange.workbook import Book, open_book
from hwsched.survey import CIRCUIT, OPENING, RUN, SUPPLY
from hwsched.survey.place import PLACE_FACTS

_OF_SUPPLY: Final = Attribute("supply", "Supply", required=True, note="Name of the supply.")
_LEVEL: Final = (
    Attribute("building", "Building", required=True),
    Attribute("level", "Level", required=True),
    Attribute("height_m", "Height of the floor", "number", "m", required=True, low=-200, high=1000),
)
_BUILDING: Final = (
    Attribute("building", "Building", required=True),
    Attribute("level", "Level", note="Empty: for the whole building."),
    *PLACE_FACTS,
)
_ROUTE: Final = (
    Attribute("mark", "Mark", required=True),
    _OF_SUPPLY,
    Attribute("length_m", "Length, one way", "number", "m", note="Measured along the cable route."),
    Attribute("pinned", "Must be fed by it", "flag", synonyms=("Must hang on it",)),
)
_PLACE: Final = (
    Attribute("mark", "Mark", required=True),
    *(OPENING.attribute(name) for name in ("plan_x_m", "plan_y_m", "rise_m")),
)
SHEETS: Final[Mapping[str, tuple[str, Sequence[Attribute]]]] = {
    "levels": ("Levels", _LEVEL),
    "buildings": ("Buildings", _BUILDING),
    "places": ("Places", _PLACE),
    "supplies": ("Supplies", SUPPLY.attributes),
    "circuits": ("Circuits", (_OF_SUPPLY, *CIRCUIT.attributes)),
    "runs": ("Runs", (_OF_SUPPLY, Attribute("circuit", "Circuit", required=True), *RUN.attributes)),
    "routes": ("Routes", _ROUTE),
}
"""Title and columns of each sheet, in the order in which they are taken in."""

_LIKE_ONE: Final = 3
"""Columns of a sheet that another must have, with all that must be there, to be taken for it."""


@dataclass(frozen=True, slots=True)
class PowerRow:
    """One row, and where it stands."""

    values: Mapping[str, Value]
    where: str
    """For the journal: file, sheet and row."""
    table: Table
    place: int

    def refuse(self, column: str, message: str, accepted: str = "") -> CellProblem:
        """Return the refusal of one of its cells."""
        return self.table.problem(self.place, column, self.values.get(column), message, accepted)


@dataclass(frozen=True, slots=True)
class PowerRead:
    """What a power workbook holds."""

    rows: Mapping[str, tuple[PowerRow, ...]]
    """By name of the sheet, as in `SHEETS`."""
    unread: tuple[str, ...] = ()
    """Names of the visible sheets that hold something and are none of these."""


def read_power_book(path: Path) -> PowerRead:
    """Read a power workbook.

    Parameters
    ----------
    path : Path
        An .xlsx file; it is left alone.

    Returns
    -------
    PowerRead
        Its rows; a sheet that is not there has none.

    Raises
    ------
    InputRejected
        When the file cannot be read, has none of the sheets or no row in them, has one under a name that is nearly
        right, or a cell is refused.
    """
    book = open_book(path)
    by_name = {normal(name): name for name in book.sheet_names}
    found = {name: by_name[normal(title)] for name, (title, _) in SHEETS.items() if normal(title) in by_name}
    if not found:
        titles = ", ".join(title for title, _ in SHEETS.values())
        raise InputRejected([FileProblem(book.file, "has none of the sheets of a power workbook", accepted=titles)])
    unread, problems = _other_sheets(book, frozenset(found.values()))
    rows: dict[str, tuple[PowerRow, ...]] = {}
    for name, (_, attributes) in SHEETS.items():
        if name not in found:
            rows[name] = ()
            continue
        table = read_table(book, found[name], attributes)
        problems += table.problems
        rows[name] = tuple(
            PowerRow(row.values, f"{book.file}, {found[name]}, row {row.place + 1}", table, row.place)
            for row in table.rows
        )
    if not problems and not any(rows.values()):
        named = ", ".join(found.values())
        problems.append(FileProblem(book.file, f"holds no row in {named}", accepted="rows below the headers"))
    if problems:
        raise InputRejected(problems)
    return PowerRead(rows, unread)


def _other_sheets(book: Book, read: frozenset[str]) -> tuple[tuple[str, ...], list[CellProblem | FileProblem]]:
    """Return the visible sheets that are not read, and refuse those that are one of ours under another name.

    A copy that a spreadsheet program calls "Supplies (2)" may be the one that somebody filled in.
    """
    others = [name for name in book.sheet_names if name not in read and name not in book.hidden]
    unread = tuple(name for name in others if any(cell not in ("", None) for row in book.rows(name) for cell in row))
    problems: list[CellProblem | FileProblem] = []
    for name in unread:
        likely = next((title for title, attributes in SHEETS.values() if _is_like(book, name, title, attributes)), None)
        if likely is not None:
            message = f"looks like a sheet {likely} and would not be read under this name"
            accepted = f"all rows in one sheet {likely}; or hide what is not to be read"
            problems.append(FileProblem(book.file, message, name, accepted))
    return unread, problems


def _is_like(book: Book, name: str, title: str, attributes: Sequence[Attribute]) -> bool:
    if normal(name).startswith(normal(title)):
        return True
    headers = read_table(book, name, attributes).headers
    return len(headers) >= _LIKE_ONE and all(a.name in headers for a in attributes if a.required)
