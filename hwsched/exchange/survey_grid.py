"""A survey file as grids of cells, whatever its format: .xlsx, .xls, .ods, .csv."""

import csv
import io
from dataclasses import dataclass, field
from pathlib import Path
from typing import Final

from python_calamine import CalamineError, CalamineWorkbook

from hwsched.exchange.problems import FileProblem, InputRejected
from hwsched.exchange.workbook import open_book

Rows = list[list[object]]
_SHEETS: Final = (".xlsx", ".xlsm")
_OTHER_SHEETS: Final = (".xls", ".ods")
_MOST_BYTES: Final = 200_000_000


@dataclass(frozen=True, slots=True)
class Grid:
    """One sheet."""

    file: str
    sheet: str
    rows: Rows
    merged: frozenset[tuple[tuple[int, int], tuple[int, int]]] = frozenset()
    """First and last (row, column) of merged cells, from 0."""
    doubtful: dict[tuple[int, int], str] = field(default_factory=dict)
    """Why cells that come back empty are not empty."""


def read_grids(path: Path) -> list[Grid]:
    """Read all sheets of a survey file.

    Raises
    ------
    InputRejected
        For a file that is missing, damaged, of another kind, or larger than what is read.
    """
    ending = path.suffix.casefold()
    if not path.is_file():
        raise InputRejected([FileProblem(path.name, "is not there", accepted="the path of a survey file")])
    if ending == ".csv":
        return [_csv_grid(path)]
    if ending in _OTHER_SHEETS:
        return _other_grids(path)
    if ending not in _SHEETS:
        raise InputRejected(
            [FileProblem(path.name, f"ends with {ending or 'nothing'}", accepted=".xlsx, .xls, .ods, .csv")]
        )
    book = open_book(path)
    grids = []
    for sheet in book.sheet_names:
        if sheet in book.hidden:
            continue
        merged = frozenset(((m.first_row, m.first_column), (m.last_row, m.last_column)) for m in book.merged(sheet))
        grids.append(Grid(path.name, sheet, book.rows(sheet), merged, book.doubtful(sheet)))
    return grids


def _other_grids(path: Path) -> list[Grid]:
    try:
        book = CalamineWorkbook.from_path(str(path))
        return [
            Grid(path.name, name, [list(r) for r in book.get_sheet_by_name(name).to_python(skip_empty_area=False)])
            for name in book.sheet_names
        ]
    except (CalamineError, OSError, ValueError) as error:
        raise InputRejected(
            [FileProblem(path.name, f"cannot be read: {error}", accepted="a file saved again as .xlsx")]
        ) from None


def _csv_grid(path: Path) -> Grid:
    if path.stat().st_size > _MOST_BYTES:
        raise InputRejected([FileProblem(path.name, "is larger than 200 MB", accepted="a smaller file")])
    data = path.read_bytes()
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        text = data.decode("cp1252", "replace")
    if "\x00" in text:
        raise InputRejected([FileProblem(path.name, "is no text", accepted="comma-separated text")])
    try:
        dialect: type[csv.Dialect] | csv.Dialect = csv.Sniffer().sniff(text[:8192], ",;\t|")
    except csv.Error:
        dialect = csv.excel
    rows: Rows = [list(row) for row in csv.reader(io.StringIO(text), dialect)]
    return Grid(path.name, path.stem[:31], rows)
