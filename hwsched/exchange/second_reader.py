"""A second reader of workbooks: it is tried where the usual one cannot, and held against it where both can.

What may be dangerous is refused before: the container is checked, and so is each part, by how far it reaches and
whether it defines entities. Here belong only the second reading, and what it reads otherwise than the first.
"""

import io
import math
import struct
import warnings
import zipfile
import zlib
from collections.abc import Callable, Iterator, Mapping
from datetime import date, time, timedelta
from pathlib import Path
from typing import Any, Final
from xml.etree.ElementTree import ParseError
from xml.parsers import expat

import xlrd
from openpyxl import load_workbook
from openpyxl.utils.exceptions import InvalidFileException
from pyxlsb import open_workbook as open_binary_workbook
from pyxlsb.handlers import CellHandler
from pyxlsb.reader import BIFF12Reader
from xlrd.compdoc import CompDocError

from hwsched.exchange.container import Container
from hwsched.exchange.problems import InputRejected
from hwsched.exchange.sheet_scan import LAST_COLUMN, inspect

Rows = list[list[object]]
Sheets = list[tuple[str, bool, Rows]]
"""Name, whether it is hidden, and cells of each sheet."""
_NOT_COMPARED: Final = object()
"""What the one reader tells otherwise than the other by its nature: a date, yes or no, an error."""
_DAMAGE: Final = (
    # Damage shows in these libraries as whatever their lines come to; what our own faults raise is not among them.
    ArithmeticError, AssertionError, AttributeError, EOFError, LookupError, NotImplementedError, OSError, TypeError,
    ValueError, zipfile.BadZipFile, zlib.error, struct.error, ParseError, expat.ExpatError, xlrd.XLRDError,
    CompDocError, InvalidFileException,
)  # fmt: skip
_CHUNK: Final = 1 << 20
_NEAR: Final = 1e-9
"""Share by which two readings of one number may differ: of the last bits they are free."""
_MOST_MADE: Final = 5_000_000
"""Cells that the reader of .xlsb may make."""
LARGEST_COMPARED: Final = 20_000_000
"""Bytes of a workbook whose numbers are read twice."""


def read_again(path: Path, most_cells: int) -> Sheets | None:
    """Read the sheets of a workbook a second way.

    Parameters
    ----------
    path : Path
        An .xlsx or .xlsm file.
    most_cells : int
        Cells in the rectangles of all sheets together.

    Returns
    -------
    list of tuple or None
        Name, whether it is hidden, and cells of each sheet; None where this reader cannot read it either.

    Raises
    ------
    InputRejected
        For a file that may be dangerous.
    """
    container = Container(path)
    span = 0
    for name in container.names():
        if name.endswith((".xml", ".rels")):
            container.refuse_declarations(name, next(container.chunks(name), b""))
    try:
        for part in container.sheet_parts().values():
            seen = inspect(container.chunks(part))
            span += (seen.last_row + 1) * (seen.last_column + 1)
            if seen.beyond or span > most_cells:
                raise container.rejected(f"reaches over {span:,} cells; {most_cells:,} are read")
        with warnings.catch_warnings():
            # It warns of what it leaves out, such as lists to choose from: of no interest for the cells.
            warnings.simplefilter("ignore")
            # Whole, not row by row: a part without its stated size would then read as empty.
            book = load_workbook(io.BytesIO(container.content), data_only=True)
    except InputRejected:
        raise
    except _DAMAGE:
        return None
    return [
        (
            sheet.title,
            sheet.sheet_state != "visible",
            [[_cell(cell) for cell in row] for row in sheet.iter_rows(values_only=True)],
        )
        for sheet in book.worksheets
    ]


def read_old_again(content: bytes, kind: str) -> Sheets | None:
    """Read the sheets of a workbook that is no .xlsx a second way.

    Parameters
    ----------
    content : bytes
        The whole file, of which was looked how far it reaches.
    kind : str
        ``.ods``, ``.xlsb`` or ``.xls``.

    Returns
    -------
    list of tuple or None
        As `read_again`. A date is left as this reader tells it; whether a sheet is hidden is not told of an .ods or
        .xlsb.
    """
    found = _sheets(content, kind)
    if found is None:
        return None
    return [
        (name, hidden, [["" if cell is _NOT_COMPARED else cell for cell in row] for row in rows])
        for name, hidden, rows in found
    ]


def _sheets(content: bytes, kind: str) -> Sheets | None:
    with warnings.catch_warnings():
        # What is left open where a file is damaged is closed as the failure is forgotten, which is in here.
        warnings.simplefilter("ignore")
        try:
            # A damaged name is none: it only has to be told from the others.
            return [
                (name or f"sheet {number}", hidden, rows)
                for number, (name, hidden, rows) in enumerate(_READERS[kind](content), 1)
            ]
        except _DAMAGE:
            return None


def read_otherwise(content: bytes, kind: str, first: Mapping[str, Rows]) -> dict[str, dict[tuple[int, int], str]]:
    """Return the cells whose number the second reader reads otherwise, by sheet, with both readings in words.

    Parameters
    ----------
    content : bytes
        The whole file, of which was looked how far it reaches.
    kind : str
        ``.ods``, ``.xlsb`` or ``.xls``.
    first : mapping of str to list
        Cells that the first reader reads, by sheet; row and column from 0.
    """
    if len(content) > LARGEST_COMPARED:
        return {}
    # Where only one can read it there is nothing to compare.
    second = _sheets(content, kind) or []
    found = {name: _different(first[name], rows) for name, _, rows in second if name in first}
    return {name: cells for name, cells in found.items() if cells}


def _different(first: Rows, second: Rows) -> dict[tuple[int, int], str]:
    found = {}
    for row in range(max(len(first), len(second))):
        ours, theirs = (rows[row] if row < len(rows) else [] for rows in (first, second))
        if ours == theirs:
            continue
        for column in range(max(len(ours), len(theirs))):
            one, other = (cells[column] if column < len(cells) else "" for cells in (ours, theirs))
            if one != other and _is_otherwise(one, other):
                found[row, column] = f"{_shown(one)} and {_shown(other)}"
    return found


def _is_otherwise(one: object, other: object) -> bool:
    if other is _NOT_COMPARED or any(isinstance(each, bool | date | time | timedelta) for each in (one, other)):
        return False
    if isinstance(one, int | float) and isinstance(other, int | float):
        return not math.isclose(one, other, rel_tol=_NEAR, abs_tol=_NEAR)
    return isinstance(one, int | float) or isinstance(other, int | float)


def _shown(cell: object) -> str:
    if isinstance(cell, int | float):
        return f"{cell:.10g}"
    return f'"{cell}"' if cell not in ("", None) else "nothing"


def _old_sheets(content: bytes) -> Iterator[tuple[str, bool, Rows]]:
    """Yield the sheets of an .xls."""
    with xlrd.open_workbook(file_contents=content, logfile=io.StringIO(), ragged_rows=True) as book:
        for sheet in book.sheets():
            rows = [
                [
                    value if kind in _PLAIN else "" if kind in _BLANK else _NOT_COMPARED
                    for kind, value in zip(sheet.row_types(row), sheet.row_values(row), strict=True)
                ]
                for row in range(sheet.nrows)
            ]
            yield sheet.name, sheet.visibility != 0, rows


_PLAIN: Final = frozenset({xlrd.XL_CELL_TEXT, xlrd.XL_CELL_NUMBER})
_BLANK: Final = frozenset({xlrd.XL_CELL_EMPTY, xlrd.XL_CELL_BLANK})


def _binary_sheets(content: bytes) -> Iterator[tuple[str, bool, Rows]]:
    """Yield the sheets of an .xlsb."""
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        for name in archive.namelist():
            if name.endswith((".xml", ".rels")) and b"<!" in archive.read(name):
                raise ValueError("a part that defines entities of its own")
    with open_binary_workbook(io.BytesIO(content)) as book:
        for number, name in enumerate(book.sheets, 1):
            with book.get_sheet(number) as sheet:
                if sheet.dimension is None or sheet.dimension.c + sheet.dimension.w > LAST_COLUMN:
                    raise ValueError("a sheet that says it is wider than any")
                rows: Rows = []
                made = 0
                for cells in sheet.rows(sparse=True):
                    # The library makes each row as wide as the sheet says it is, however little stands in it.
                    made += len(cells)
                    if made > _MOST_MADE:
                        raise ValueError("more cells than its records hold")
                    told = [_of_binary(cell.v) for cell in cells]
                    if any(cell != "" for cell in told):
                        # As far down as cells reach, which was looked at before; a row alone may say any number.
                        rows += [[] for _ in range(cells[0].r - len(rows))]
                        rows.append(told)
            yield name, False, rows


class _TextInPlace(CellHandler):  # type: ignore[misc]
    """A cell whose text stands in it, not in the table of texts; the library passes it over."""

    def read(self, reader: Any, _recid: int, _reclen: int) -> Any:
        column, style = reader.read_int(), reader.read_int()
        return self.cls(column, reader.read_string(), None, style)


BIFF12Reader.handlers.setdefault(0x0006, _TextInPlace())


def _of_binary(value: object) -> object:
    # An error comes as a text that begins as a number of the machine's does.
    is_error = isinstance(value, str) and value.startswith("0x")
    return "" if value is None else _NOT_COMPARED if is_error else value


class _OpenDocument:
    """Reads the tables of an OpenDocument file as they stream past."""

    def __init__(self) -> None:
        self.sheets: Sheets = []
        self._rows: Rows = []
        self._row: list[object] = []
        self._value: object = ""
        self._text: list[str] | None = None
        self._lines: list[str] = []
        self._many = self._often = 1
        self._empty = 0
        """Empty rows since the last that holds something: often all that a sheet can have."""

    def start(self, name: str, attributes: Mapping[str, str]) -> None:
        """Take the start of an element."""
        name = name.rpartition(":")[2]
        if name == "table":
            self._rows, self._empty = [], 0
            self.sheets.append((attributes.get("table:name", ""), False, self._rows))
        elif name == "table-row":
            self._row, self._often = [], _repeated(attributes, "rows")
        elif name in _CELLS:
            self._many, self._lines = _repeated(attributes, "columns"), []
            kind = attributes.get("office:value-type", "")
            told = attributes.get("office:value")
            self._value = (
                float(told) if told is not None and kind in _NUMBERS else None if kind in _TEXTS else _NOT_COMPARED
            )
        elif name == "p":
            self._text = []
        elif name == "s" and self._text is not None:
            self._text.append(" ")

    def text(self, text: str) -> None:
        """Take a piece of text."""
        if self._text is not None:
            self._text.append(text)

    def end(self, name: str) -> None:
        """Take the end of an element."""
        name = name.rpartition(":")[2]
        if name == "p" and self._text is not None:
            self._lines.append("".join(self._text))
            self._text = None
        elif name in _CELLS:
            cell = "\n".join(self._lines) if self._value is None else self._value
            # What is empty to the end of the row, or of the sheet, is said to be there millions of times.
            self._row += [cell] * (self._many if cell != "" else min(self._many, LAST_COLUMN - len(self._row)))
        elif name == "table-row":
            while self._row and self._row[-1] == "":
                del self._row[-1]
            if not self._row:
                self._empty += self._often
                return
            self._rows += [[] for _ in range(self._empty)]
            self._rows += [list(self._row) for _ in range(self._often)]
            self._empty = 0


_CELLS: Final = frozenset({"table-cell", "covered-table-cell"})
_NUMBERS: Final = frozenset({"float", "percentage", "currency"})
_TEXTS: Final = frozenset({"", "string"})


def _repeated(attributes: Mapping[str, str], of: str) -> int:
    return int(attributes.get(f"table:number-{of}-repeated", "1"))


def _open_sheets(content: bytes) -> Iterator[tuple[str, bool, Rows]]:
    """Yield the sheets of an .ods."""
    found = _OpenDocument()
    parser = expat.ParserCreate()
    parser.buffer_text = True
    parser.StartElementHandler = found.start
    parser.EndElementHandler = found.end
    parser.CharacterDataHandler = found.text
    with zipfile.ZipFile(io.BytesIO(content)) as archive, archive.open("content.xml") as stream:
        while chunk := stream.read(_CHUNK):
            parser.Parse(chunk, False)
    parser.Parse(b"", True)
    yield from found.sheets


_READERS: Final[Mapping[str, Callable[[bytes], Iterator[tuple[str, bool, Rows]]]]] = {
    ".xls": _old_sheets,
    ".xlsb": _binary_sheets,
    ".ods": _open_sheets,
}


def _cell(cell: Any) -> object:
    # As the first reader delivers them: no cell is None, and each number a float.
    if cell is None:
        return ""
    return float(cell) if isinstance(cell, int) and not isinstance(cell, bool) else cell
