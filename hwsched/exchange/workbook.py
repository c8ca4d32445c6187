"""Workbooks opened for reading: their sheets as rows of values, safely and fast.

Here belongs what every import needs, whatever the sheets mean: refusals of files that cannot or may not be read, cells
as rows, and the cells that a fast reader does not show as they are. The container stands in `container`, the look at
a sheet's raw text in `sheet_scan`.
"""

import io
import itertools
import re
from dataclasses import dataclass
from pathlib import Path
from typing import Final
from xml.etree import ElementTree
from xml.parsers import expat

from python_calamine import (
    CalamineError,
    CalamineSheet,
    CalamineWorkbook,
    PasswordError,
    SheetTypeEnum,
    SheetVisibleEnum,
)

from hwsched.exchange.container import Container
from hwsched.exchange.problems import InputRejected, column_letter
from hwsched.exchange.sheet_scan import (
    LAST_COLUMN,
    LAST_ROW,
    Glance,
    Inspection,
    cells_of_styles,
    glance,
    inspect,
    last_named_row,
)

MOST_CELLS: Final = 5_000_000
"""Cells in the rectangle that a sheet's contents span: 10,000 openings by 200 columns are 2 million."""
_ZEROS: Final = re.compile(r"0{2,}")


@dataclass(frozen=True, slots=True)
class Merged:
    """Cells merged into one; only the first holds a value. All counted from 0, last ones included."""

    first_row: int
    first_column: int
    last_row: int
    last_column: int

    def describe(self) -> str:
        """Return the range as the spreadsheet names it.

        Examples
        --------
        >>> Merged(4, 0, 5, 2).describe()
        'A5:C6'
        """
        first = f"{column_letter(self.first_column)}{self.first_row + 1}"
        return f"{first}:{column_letter(self.last_column)}{self.last_row + 1}"


@dataclass(frozen=True, slots=True)
class Looks:
    """What a person sees of a sheet beside what its cells hold; all counted from 0."""

    hidden_rows: frozenset[int] = frozenset()
    hidden_columns: frozenset[int] = frozenset()
    struck: frozenset[tuple[int, int]] = frozenset()
    """Cells whose letters are struck out."""
    filled: frozenset[tuple[int, int]] = frozenset()
    """Cells filled with a colour."""


class NotReadableError(InputRejected):
    """The reader of sheets cannot read a workbook whose container is sound; another reader may."""


class Book:
    """A workbook opened for reading.

    Parameters
    ----------
    path : Path
        An .xlsx or .xlsm file. It is read whole at once, so that it cannot change in between, and never written.

    Raises
    ------
    InputRejected
        Where it is no workbook, is damaged, protected, or larger than what is read.
    """

    def __init__(self, path: Path) -> None:
        self._container = container = Container(path)
        self.file = container.file
        """Name without its folder, for messages."""
        self._parts = container.sheet_parts()
        for part in (*container.related_parts("/sharedStrings"), *container.related_parts("/styles")):
            self._check(part)
        self._padded = self._padded_styles()
        self._speaking_styles = self._struck_and_filled()
        self._last: CalamineSheet | None = None
        self._spans: dict[str, int] = {}
        """Cells that the rectangles of the sheets read so far hold."""
        self._glances: dict[str, Glance] = {}
        self._inspections: dict[str, Inspection] = {}
        try:
            # From the bytes that were checked, and not from the path again.
            self._book = CalamineWorkbook.from_filelike(io.BytesIO(container.content))
            sheets = [sheet for sheet in self._book.sheets_metadata if sheet.typ == SheetTypeEnum.WorkSheet]
        except BaseException as error:
            raise self._not_readable(error) from None
        self.sheet_names: tuple[str, ...] = tuple(sheet.name for sheet in sheets if sheet.name in self._parts)
        """Worksheets in the book's order, hidden ones included."""
        self.hidden: frozenset[str] = frozenset(s.name for s in sheets if s.visible != SheetVisibleEnum.Visible)
        if not self.sheet_names:
            raise container.rejected("holds no worksheet", "a workbook with a sheet of data")

    def _check(self, part: str) -> None:
        """Read a part to its end, which finds damage that the spreadsheet reader would not name."""
        for i, chunk in enumerate(self._container.chunks(part)):
            if i == 0:
                self._container.refuse_declarations(part, chunk)

    def _not_readable(self, error: BaseException, sheet: str = "") -> BaseException:
        if isinstance(error, PasswordError):
            return self._container.rejected("is protected by a password", "a workbook saved without one")
        # A panic of the reader is no Exception, and must not end the program.
        if isinstance(error, CalamineError | OSError | ValueError) or type(error).__name__ == "PanicException":
            return NotReadableError(self._container.rejected(f"cannot be read: {error}", sheet=sheet).problems)
        return error

    def _padded_styles(self) -> dict[int, int]:
        """Return the digits of the number formats that are zeros alone (0000), by index of the cell style."""
        padded: dict[int, int] = {}
        for part in self._container.related_parts("/styles"):
            codes: dict[str, int] = {}
            for element in self._container.xml(part).iter():
                name = element.tag.rpartition("}")[2]
                if name == "numFmt" and _ZEROS.fullmatch(element.get("formatCode", "")):
                    codes[element.get("numFmtId", "")] = len(element.get("formatCode", ""))
                elif name == "cellXfs" and codes:
                    styles = [e.get("numFmtId", "") for e in element]
                    padded = {i: codes[code] for i, code in enumerate(styles) if code in codes}
        return padded

    def _struck_and_filled(self) -> tuple[frozenset[int], frozenset[int]]:
        """Return the cell styles with struck letters, and those with a colour behind them."""
        struck: set[int] = set()
        filled: set[int] = set()
        fonts: set[str] = set()
        fills: set[str] = set()
        for part in self._container.related_parts("/styles"):
            for element in self._container.xml(part).iter():
                name = element.tag.rpartition("}")[2]
                if name == "fonts":
                    fonts = {str(i) for i, font in enumerate(element) if any(map(_strikes, font))}
                elif name == "fills":
                    fills = {str(i) for i, fill in enumerate(element) if any(map(_colours, fill))}
                elif name == "cellXfs":
                    styles = [(each.get("fontId"), each.get("fillId")) for each in element]
                    struck |= {i for i, (font, _) in enumerate(styles) if font in fonts}
                    filled |= {i for i, (_, fill) in enumerate(styles) if fill in fills}
        return frozenset(struck), frozenset(filled)

    def rows(self, sheet: str) -> list[list[object]]:
        """Return all cells of a sheet, from A1 to the last that holds something.

        Parameters
        ----------
        sheet : str
            One of `sheet_names`.

        Returns
        -------
        list of list of object
            Text, float, bool, date, datetime, time or timedelta; an empty text where empty. Numbers under a format of
            zeros alone (0012) come as the text that is shown. Row and column counted from 0 are those of the sheet.

        Raises
        ------
        InputRejected
            Where the sheet is missing, damaged, or spans too much.
        """
        self._refuse_too_large(sheet)
        try:
            parsed = self._parsed(sheet)
            # Both count from 0, whatever their names say.
            self._spans[sheet] = ((parsed.total_height or 0) + 1) * ((parsed.total_width or 0) + 1)
            if sum(self._spans.values()) > MOST_CELLS:
                named = f"{sum(self._spans.values()):,} cells in {len(self._spans)} sheets; {MOST_CELLS:,} are read"
                raise self._container.rejected(f"holds {named}", "a workbook with the data alone", sheet)
            rows = _rows_of(parsed)
        except BaseException as error:
            raise self._not_readable(error, sheet) from None
        if self._padded:
            for (row, column), style in self._inspection(sheet).styled.items():
                value = rows[row][column] if row < len(rows) and column < len(rows[row]) else ""
                # calamine gives every number as a float: a mark shown as 0012 by its format comes as 12.0.
                if isinstance(value, float) and value.is_integer() and value >= 0:
                    # As a person sees it: 0012 on the frame and in the file are one mark, 12 is another.
                    rows[row][column] = f"{int(value):0{self._padded[style]}d}"
        return rows

    def doubtful(self, sheet: str) -> dict[tuple[int, int], str]:
        """Return why cells that come back empty from `rows` are not empty, by row and column from 0.

        Parameters
        ----------
        sheet : str
            One of `sheet_names`.

        Returns
        -------
        dict
            The message for each formula without a stored value and each error of the spreadsheet.
        """
        seen = self._glance(sheet)
        if not (seen.formulas or seen.errors or seen.odd):
            return {}
        found = self._inspection(sheet)
        message = "holds a formula without a stored value; open the file in a spreadsheet program and save it again"
        doubts = dict.fromkeys(found.uncalculated, message)
        return doubts | {
            place: f"holds {error or 'an error'}, an error of the spreadsheet" for place, error in found.errors.items()
        }

    def looks(self, sheet: str) -> Looks:
        """Return what is hidden, struck out or filled with a colour in a sheet."""
        seen = self._glance(sheet)
        struck, filled = self._speaking_styles
        chunks = self._container.chunks
        return Looks(
            frozenset(seen.hidden_rows),
            frozenset(seen.hidden_columns),
            frozenset(cells_of_styles(chunks(self._part(sheet)), struck)),
            frozenset(cells_of_styles(chunks(self._part(sheet)), filled)),
        )

    def merged(self, sheet: str) -> tuple[Merged, ...]:
        """Return the merged cells of a sheet, in the order of their first cells."""
        self._refuse_too_large(sheet)
        try:
            ranges = self._parsed(sheet).merged_cell_ranges or []
        except BaseException as error:
            raise self._not_readable(error, sheet) from None
        if sum(last[0] - first[0] + last[1] - first[1] + 2 for first, last in ranges) > MOST_CELLS:
            raise self._container.rejected("has merged cells that lie over each other", sheet=sheet)
        return tuple(
            sorted((Merged(*first, *last) for first, last in ranges), key=lambda m: (m.first_row, m.first_column))
        )

    def _parsed(self, sheet: str) -> CalamineSheet:
        # Cells and merged ranges are asked for one after the other: one parsing serves both.
        if self._last is None or self._last.name != sheet:
            self._last = self._book.get_sheet_by_name(sheet)
        return self._last

    def _part(self, sheet: str) -> str:
        if sheet not in self.sheet_names:
            names = ", ".join(name for name in self.sheet_names if name not in self.hidden)
            raise self._container.rejected(f"has no sheet {sheet}", f"one of its sheets: {names}")
        return self._parts[sheet]

    def _glance(self, sheet: str) -> Glance:
        part = self._part(sheet)
        if sheet not in self._glances:
            chunks = self._container.chunks(part)
            first = next(chunks, b"")
            self._container.refuse_declarations(part, first)
            self._glances[sheet] = glance(itertools.chain([first], chunks))
        return self._glances[sheet]

    def _inspection(self, sheet: str) -> Inspection:
        if sheet not in self._inspections:
            self._glance(sheet)
            try:
                found = inspect(self._container.chunks(self._part(sheet)), frozenset(self._padded))
            except expat.ExpatError as error:
                raise self._container.rejected(f"is damaged: {error}", sheet=sheet) from None
            self._inspections[sheet] = found
        return self._inspections[sheet]

    def _refuse_too_large(self, sheet: str) -> None:
        seen = self._glance(sheet)
        # The cheapest look first; only a sheet that may be too large is looked at more closely.
        if not seen.odd and 10**seen.row_digits * seen.columns <= MOST_CELLS:
            return
        if not seen.odd and last_named_row(self._container.chunks(self._part(sheet))) * seen.columns <= MOST_CELLS:
            return
        # Either cells do not say where they stand, or some stand far out: count those that hold something.
        found = self._inspection(sheet)
        if found.beyond:
            raise self._container.rejected("names a cell that no sheet has", sheet=sheet)
        span = (found.last_row + 1) * (found.last_column + 1)
        if span > MOST_CELLS:
            corner = f"{column_letter(min(found.last_column, LAST_COLUMN - 1))}{min(found.last_row, LAST_ROW - 1) + 1}"
            raise self._container.rejected(
                f"reaches from A1 to {corner}, which are {span:,} cells; {MOST_CELLS:,} are read",
                "the same table, after rows and columns far from it were deleted",
                sheet,
            )


def _rows_of(sheet: CalamineSheet) -> list[list[object]]:
    """Return the cells of a sheet row by row, from A1: else every row and column would be told wrong."""
    # A column repeats its words: each is held once, which takes less room and is quicker to look up afterwards.
    words: dict[str, str] = {}
    rows: list[list[object]] = [
        [words.setdefault(cell, cell) if isinstance(cell, str) else cell for cell in row] for row in sheet.iter_rows()
    ]
    # Rows above the first filled one come along; columns before the first filled one do not.
    if sheet.start is not None and sheet.start[1]:
        before: list[object] = [""] * sheet.start[1]
        rows = [before + row for row in rows]
    return rows


def _strikes(part: ElementTree.Element) -> bool:
    return part.tag.rpartition("}")[2] == "strike" and part.get("val", "1") not in ("0", "false")


def _colours(pattern: ElementTree.Element) -> bool:
    if pattern.get("patternType", "none") in ("none", "gray125"):
        return False
    front = next((each for each in pattern if each.tag.rpartition("}")[2] == "fgColor"), None)
    if front is None:
        return False
    # White, by its number, by the theme's first colour, or as what the system has.
    white = (front.get("rgb", "")[-6:].upper() == "FFFFFF", front.get("indexed") in ("9", "64", "65"))
    return not any(white) and not (front.get("theme") == "0" and not front.get("tint"))


def open_book(path: Path) -> Book:
    """Open a workbook for reading.

    Parameters
    ----------
    path : Path
        An .xlsx or .xlsm file.

    Returns
    -------
    Book
        Its sheets.

    Raises
    ------
    InputRejected
        Where it is no workbook, is damaged, protected, or larger than what is read; the message says which.
    """
    return Book(path)
