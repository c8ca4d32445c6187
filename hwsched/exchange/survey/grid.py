"""A survey file as grids of cells, whatever its format: .xlsx, .xls, .ods, .csv.

Here belongs what differs between the formats. Safe reading of .xlsx stands in `workbook`, which sheets are wanted in
`survey_book`.
"""

import io
import os
import zipfile
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Final

from python_calamine import CalamineError, CalamineSheet, CalamineWorkbook, PasswordError, SheetVisibleEnum

from hwsched.exchange.old_books import OLE, SpanError, check_span
from hwsched.exchange.problems import FileProblem, InputRejected
from hwsched.exchange.second_reader import Sheets, read_again, read_old_again, read_otherwise
from hwsched.exchange.survey.text_table import TextError, read_table
from hwsched.exchange.workbook import MOST_CELLS, Looks, NotReadableError, open_book
from hwsched.stopping import ask_stop

Rows = list[list[object]]
_SHEETS: Final = (".xlsx", ".xlsm")
_OTHER_SHEETS: Final = (".xls", ".ods", ".xlsb")
_MOST_BYTES: Final = 200_000_000
_MOST_UNPACKED: Final = 512_000_000
_TEXTS: Final = (".csv", ".tsv", ".tab", ".txt")
_START: Final = 4096
_PARTS: Final = (("content.xml", ".ods"), ("xl/workbook.bin", ".xlsb"), ("xl/workbook.xml", ".xlsx"))
"""Parts by which an archive is known."""
_NO_TABLES: Final = (b"<", b"%PDF", b"{\\rtf", b"\xef\xbb\xbf<", b"SQLite")


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
    looks: Looks = field(default_factory=Looks)
    """What is hidden, struck out or coloured."""
    notes: tuple[str, ...] = ()
    """How the file was read, where its name or its form says otherwise."""


def read_grids(path: Path, named: str | None = None, encoding: str | None = None) -> list[Grid]:
    """Read the sheets of a survey file.

    Parameters
    ----------
    path : Path
        .xlsx, .xlsm, .xls, .ods or .csv.
    named : str, optional
        A sheet that is read even where it is hidden.
    encoding : str, optional
        Of a text, such as ``cp850``; None finds it.

    Returns
    -------
    list of Grid
        Visible sheets in the file's order; rows and columns are those of the sheet.

    Raises
    ------
    InputRejected
        For a file that is missing, damaged, of another kind, or larger than what is read; for a sheet that is missing.
    """
    ending = path.suffix.casefold()
    # Not as Path asks it: of a name that is longer than the system takes that would raise.
    if not os.path.isfile(path):
        raise _rejected(path, "is not there", "the path of a survey file")
    if ending not in (*_SHEETS, *_OTHER_SHEETS, *_TEXTS):
        raise _rejected(path, f"ends with {ending or 'nothing'}", ".xlsx, .xls, .ods, .csv, .xlsm, .xlsb, .tsv, .txt")
    kind = _kind(path, ending)
    if kind in _TEXTS:
        grids = [_text_grid(path, encoding)]
    else:
        grids = _other_grids(path, kind, named) if kind in _OTHER_SHEETS else _xlsx_grids(path, named)
    if kind != ending and not (kind in _TEXTS and ending in _TEXTS):
        note = f"read as {kind}, which it is, though its name ends with {ending}"
        grids = [replace(grid, notes=(*grid.notes, note)) for grid in grids]
    if named is not None and all(grid.sheet != named for grid in grids):
        sheets = ", ".join(grid.sheet for grid in grids)
        raise _rejected(path, f"has no sheet {named}", f"one of its sheets: {sheets}")
    return grids


def _rejected(path: Path, message: str, accepted: str) -> InputRejected:
    return InputRejected([FileProblem(path.name, message, accepted=accepted)])


def _kind(path: Path, ending: str) -> str:
    """Return the ending that a file's content asks for; programs that export give workbooks the names of others."""
    with path.open("rb") as stream:
        start = stream.read(_START)
    if start.startswith(OLE):
        return ".xls" if ending not in _OTHER_SHEETS else ending
    if start.startswith(b"PK\x03\x04"):
        try:
            with zipfile.ZipFile(path) as archive:
                names = set(archive.namelist())
        except (zipfile.BadZipFile, OSError, ValueError, NotImplementedError):
            return ending if ending not in _TEXTS else ".xlsx"
        found = next((kind for part, kind in _PARTS if part in names), ending)
        return ending if ending in _SHEETS and found == ".xlsx" else ".xlsx" if found in _TEXTS else found
    if (
        ending not in _TEXTS
        and start
        and b"\x00" not in start
        and b"\n" in start
        and not start.lstrip().startswith(_NO_TABLES)
    ):
        return ".csv"
    return ending


def _xlsx_grids(path: Path, named: str | None) -> list[Grid]:
    try:
        return _sheets_of(path, named)
    except NotReadableError:
        found = read_again(path, MOST_CELLS)
        if found is None:
            raise
        return _by_second(path, found, named)


def _by_second(path: Path, found: Sheets, named: str | None) -> list[Grid]:
    note = "read by a second reader, since the first could not; look whether all is there"
    return [Grid(path.name, name, rows, notes=(note,)) for name, hidden, rows in found if not hidden or name == named]


def _sheets_of(path: Path, named: str | None) -> list[Grid]:
    book = open_book(path)
    grids = []
    for sheet in book.sheet_names:
        # What a person hid is seldom meant to be read: lists of words, an older state.
        if sheet in book.hidden and sheet != named:
            continue
        ask_stop()
        merged = frozenset(((m.first_row, m.first_column), (m.last_row, m.last_column)) for m in book.merged(sheet))
        ask_stop()
        grids.append(Grid(path.name, sheet, book.rows(sheet), merged, book.doubtful(sheet), book.looks(sheet)))
    return grids


def _other_grids(path: Path, kind: str, named: str | None) -> list[Grid]:
    try:
        with path.open("rb") as stream:
            # Read whole first, and once: what was measured is what is parsed.
            content = stream.read(_MOST_BYTES + 1)
        if len(content) > _MOST_BYTES:
            raise _rejected(path, "is larger than what is read", "a smaller file")
        if content.startswith(OLE) and "EncryptedPackage".encode("utf-16-le") in content:
            raise _rejected(path, "is protected by a password", "a workbook saved without one")
        check_span(content, kind, MOST_CELLS, _MOST_UNPACKED)
    except SpanError as error:
        raise _rejected(path, str(error), "the same table saved as .xlsx, without what lies far from it") from None
    except OSError as error:
        raise _rejected(path, f"cannot be read: {error}", "a file saved again as .xlsx") from None
    kind = ".xls" if content.startswith(OLE) else kind
    try:
        with CalamineWorkbook.from_filelike(io.BytesIO(content)) as book:
            grids = [
                _other_grid(path, book.get_sheet_by_name(sheet.name))
                for sheet in book.sheets_metadata
                if sheet.visible == SheetVisibleEnum.Visible or sheet.name == named
            ]
        return _compared(grids, content, kind)
    except PasswordError:
        raise _rejected(path, "is protected by a password", "a workbook saved without one") from None
    except (CalamineError, OSError, ValueError, zipfile.BadZipFile) as error:
        refusal = _rejected(path, f"cannot be read: {error}", "a file saved again as .xlsx")
    except BaseException as error:
        # A panic of the reader is no Exception, and must not end the program.
        if type(error).__name__ != "PanicException":
            raise
        refusal = _rejected(path, "cannot be read: it is damaged", "a file saved again as .xlsx")
    found = read_old_again(content, kind)
    if found is None:
        raise refusal
    return _by_second(path, found, named)


def _compared(grids: list[Grid], content: bytes, kind: str) -> list[Grid]:
    """Leave out the numbers that a second reader reads otherwise: they are named, and no guess is taken."""
    otherwise = read_otherwise(content, kind, {grid.sheet: grid.rows for grid in grids})
    for grid in grids:
        for (row, column), readings in otherwise.get(grid.sheet, {}).items():
            message = f"is read as {readings} by two readers; save the file as .xlsx, or say what it holds"
            grid.doubtful[row, column] = message
            if row < len(grid.rows) and column < len(grid.rows[row]):
                grid.rows[row][column] = ""
    return grids


def _other_grid(path: Path, sheet: CalamineSheet) -> Grid:
    if sheet.total_height * sheet.total_width > MOST_CELLS:
        message = f"spans {sheet.total_height:,} rows and {sheet.total_width:,} columns"
        accepted = "the same table, after rows and columns far from it were deleted"
        raise InputRejected([FileProblem(path.name, message, sheet.name, accepted)])
    rows: Rows = [list(row) for row in sheet.to_python(skip_empty_area=False)]
    return Grid(path.name, sheet.name, rows, frozenset(sheet.merged_cell_ranges or ()))


def _text_grid(path: Path, encoding: str | None) -> Grid:
    with path.open("rb") as stream:
        content = stream.read(_MOST_BYTES + 1)
    if len(content) > _MOST_BYTES:
        raise _rejected(path, "is larger than 200 MB", "a smaller file")
    try:
        rows, notes = read_table(content, encoding)
    except TextError as error:
        raise _rejected(path, str(error), error.accepted) from None
    return Grid(path.name, path.stem, rows, notes=notes)
