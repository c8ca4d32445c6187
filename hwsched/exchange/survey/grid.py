"""A survey file as grids of cells, whatever its format: .xlsx, .xls, .ods, .csv.

Here belongs what differs between the formats. Safe reading of .xlsx stands in `workbook`, which sheets are wanted in
`survey_book`.
"""

import csv
import io
import os
import re
import zipfile
from codecs import BOM_UTF16_BE, BOM_UTF16_LE
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Final

from python_calamine import CalamineError, CalamineSheet, CalamineWorkbook, PasswordError, SheetVisibleEnum

from hwsched.exchange.old_books import OLE, SpanError, check_span
from hwsched.exchange.problems import FileProblem, InputRejected
from hwsched.exchange.workbook import MOST_CELLS, open_book

Rows = list[list[object]]
_SHEETS: Final = (".xlsx", ".xlsm")
_OTHER_SHEETS: Final = (".xls", ".ods", ".xlsb")
_MOST_BYTES: Final = 200_000_000
_MOST_UNPACKED: Final = 512_000_000
_TEXTS: Final = (".csv", ".tsv", ".tab", ".txt")
_DELIMITERS: Final = ",;\t|"
_LONGEST_NOTE: Final = 5_000
"""Characters over several lines that a person types into one cell; beyond, a quotation mark was never closed."""


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


def read_grids(path: Path, named: str | None = None) -> list[Grid]:
    """Read the sheets of a survey file.

    Parameters
    ----------
    path : Path
        .xlsx, .xlsm, .xls, .ods or .csv.
    named : str, optional
        A sheet that is read even where it is hidden.

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
    if ending in _TEXTS:
        return [_csv_grid(path)]
    if ending not in (*_SHEETS, *_OTHER_SHEETS):
        raise _rejected(path, f"ends with {ending or 'nothing'}", ".xlsx, .xls, .ods, .csv, .xlsm, .xlsb, .tsv, .txt")
    grids = _other_grids(path, named) if ending in _OTHER_SHEETS else _xlsx_grids(path, named)
    if named is not None and all(grid.sheet != named for grid in grids):
        sheets = ", ".join(grid.sheet for grid in grids)
        raise _rejected(path, f"has no sheet {named}", f"one of its sheets: {sheets}")
    return grids


def _rejected(path: Path, message: str, accepted: str) -> InputRejected:
    return InputRejected([FileProblem(path.name, message, accepted=accepted)])


def _xlsx_grids(path: Path, named: str | None) -> list[Grid]:
    book = open_book(path)
    grids = []
    for sheet in book.sheet_names:
        # What a person hid is seldom meant to be read: lists of words, an older state.
        if sheet in book.hidden and sheet != named:
            continue
        merged = frozenset(((m.first_row, m.first_column), (m.last_row, m.last_column)) for m in book.merged(sheet))
        grids.append(Grid(path.name, sheet, book.rows(sheet), merged, book.doubtful(sheet)))
    return grids


def _other_grids(path: Path, named: str | None) -> list[Grid]:
    try:
        with path.open("rb") as stream:
            # Read whole first, and once: what was measured is what is parsed.
            content = stream.read(_MOST_BYTES + 1)
        if len(content) > _MOST_BYTES:
            raise _rejected(path, "is larger than what is read", "a smaller file")
        if content.startswith(OLE) and "EncryptedPackage".encode("utf-16-le") in content:
            raise _rejected(path, "is protected by a password", "a workbook saved without one")
        check_span(content, path.suffix.casefold(), MOST_CELLS, _MOST_UNPACKED)
        with CalamineWorkbook.from_filelike(io.BytesIO(content)) as book:
            return [
                _other_grid(path, book.get_sheet_by_name(sheet.name))
                for sheet in book.sheets_metadata
                if sheet.visible == SheetVisibleEnum.Visible or sheet.name == named
            ]
    except SpanError as error:
        raise _rejected(path, str(error), "the same table saved as .xlsx, without what lies far from it") from None
    except PasswordError:
        raise _rejected(path, "is protected by a password", "a workbook saved without one") from None
    except (CalamineError, OSError, ValueError, zipfile.BadZipFile) as error:
        raise _rejected(path, f"cannot be read: {error}", "a file saved again as .xlsx") from None
    except BaseException as error:
        # A panic of the reader is no Exception, and must not end the program.
        if type(error).__name__ == "PanicException":
            raise _rejected(path, "cannot be read: it is damaged", "a file saved again as .xlsx") from None
        raise


def _other_grid(path: Path, sheet: CalamineSheet) -> Grid:
    if sheet.total_height * sheet.total_width > MOST_CELLS:
        message = f"spans {sheet.total_height:,} rows and {sheet.total_width:,} columns"
        accepted = "the same table, after rows and columns far from it were deleted"
        raise InputRejected([FileProblem(path.name, message, sheet.name, accepted)])
    rows: Rows = [list(row) for row in sheet.to_python(skip_empty_area=False)]
    return Grid(path.name, sheet.name, rows, frozenset(sheet.merged_cell_ranges or ()))


def _csv_grid(path: Path) -> Grid:
    if path.stat().st_size > _MOST_BYTES:
        raise _rejected(path, "is larger than 200 MB", "a smaller file")
    text = _decoded(path)
    delimiter = ""
    if text[:4].casefold() == "sep=" and text[4:5] in tuple(_DELIMITERS):
        # Spreadsheet programs write such a first line; it stays as an empty row, so that rows keep their numbers.
        delimiter, text = text[4], text[5:]
    rows: Rows = []
    mark = delimiter or _delimiter(text)
    if (loose := _loose_rows(text, mark)) is not None:
        return Grid(path.name, path.stem, loose)
    try:
        for row in _csv_rows(text, mark):
            rows.append(list(row))
            # An inch mark at the beginning of a cell opens a quotation that swallows the rows after it without an
            # error.
            if any(len(cell) > _LONGEST_NOTE and "\n" in cell for cell in row):
                raise csv.Error("a quotation mark is opened and not closed")
    except csv.Error as error:
        raise _rejected(path, f"cannot be read from row {len(rows)} on: {error}", "comma-separated text") from None
    return Grid(path.name, path.stem, rows)


def _decoded(path: Path) -> str:
    data = path.read_bytes()
    try:
        # "Unicode text" of spreadsheet programs is UTF-16; their CSV in UTF-8 begins with a byte order mark, which
        # would become part of the first header.
        text = data.decode("utf-16" if data.startswith((BOM_UTF16_LE, BOM_UTF16_BE)) else "utf-8-sig")
    except UnicodeDecodeError:
        # What spreadsheet programs of western Europe and America wrote before they wrote UTF-8.
        text = data.decode("cp1252", "replace")
    if "\x00" in text:
        raise _rejected(path, "is no text", "comma-separated text")
    return text


def _csv_rows(text: str, delimiter: str) -> Iterator[list[str]]:
    # No guessing of quotation marks: 3'-0" and 36" would be taken for some.
    return csv.reader(io.StringIO(text, newline=""), delimiter=delimiter)


def _loose_rows(text: str, mark: str) -> Rows | None:
    """Return the rows line by line, where inch marks were written without quoting them; None where the file is sound.

    An inch mark at the end of a cell, or one that opens it, swallows what comes after it; read line by line, such a
    file has rows of one width, and read by the rules it has not.
    """
    if '"' not in text:
        return None
    lines = text.splitlines()
    try:
        strict = [len(row) for row in _csv_rows(text, mark) if row]
    except csv.Error:
        strict = []
    loose: Rows = [[_unquoted(cell) for cell in _cells(line, mark)] for line in lines]
    widths = [len(row) for row, line in zip(loose, lines, strict=True) if line.strip()]
    # A row of several lines counts by its lines: that they fall apart shows only there.
    return loose if _usual_share(widths, len(widths)) > _usual_share(strict, len(widths)) else None


def _usual_share(widths: list[int], lines: int) -> float:
    usual = max(set(widths), key=widths.count, default=0)
    return sum(1 for width in widths if width == usual) / max(lines, 1) if usual > 1 else 0.0


def _cells(line: str, mark: str) -> list[str]:
    """Cut a line at its marks; a cell is quoted only where a quotation ends just before the next mark."""
    quoted = re.compile(rf'".*?"(?={re.escape(mark)}|$)')
    cells, place = [], 0
    while True:
        match = quoted.match(line, place)
        end = match.end() if match else line.find(mark, place)
        end = len(line) if end < 0 else end
        cells.append(line[place:end])
        if end >= len(line):
            return cells
        place = end + 1


def _unquoted(cell: str) -> str:
    text = cell.strip()
    if len(text) > 1 and text[0] == text[-1] == '"':
        return text[1:-1].replace('""', '"')
    # A quotation that was opened and never closed.
    return text[1:] if text.startswith('"') else text


def _delimiter(text: str) -> str:
    """Return the mark that cuts the first lines into most cells, the same number in most lines."""
    head = "\n".join(text[:65536].splitlines()[:40])
    best, most = ",", 0
    for mark in _DELIMITERS:
        widths = [len(row) for row in _csv_rows(head, mark) if any(row)]
        # Title lines above the table have other widths: the width that most lines share is the table's.
        usual = max(set(widths), key=lambda width: (widths.count(width), width), default=1)
        cells = widths.count(usual) * (usual - 1)
        if cells > most:
            best, most = mark, cells
    return best
