"""Documents as workbooks: a front sheet with what is said in words, and a sheet for every kind of table.

Tables with the same columns share a sheet whose first column names the table, so that they can be filtered as one.
Text stays text: what starts with = + - @ is a string with a text mark and no formula; numbers stay numbers.
"""

import datetime as dt
import math
import re
import textwrap
from collections.abc import Iterator, Mapping, Sequence
from functools import partial
from itertools import takewhile
from pathlib import Path
from typing import Any, Final

from openpyxl import Workbook
from openpyxl.cell import WriteOnlyCell
from openpyxl.styles import Alignment, Border, Font, PatternFill, Side
from openpyxl.utils import get_column_letter

from hwsched.language import phrase
from hwsched.render.blocks import Bullets, Cell, Document, Facts, Heading, Paragraph, SignOff, Steps, Table
from hwsched.render.same_bytes import save_workbook
from hwsched.render.wrap import printable
from hwsched.stopping import asking
from hwsched.writing import replacing, write_archive

_LONGEST_TEXT: Final = 32_000
"""Characters; a cell holds 32,767, what is longer goes on in the row below."""
_UNSAFE_NAME: Final = re.compile(r"[\[\]:*?/\\]")
_WIDEST: Final = 60.0
_FRONT: Final = (30.0, 90.0)
"""Widths of the front sheet's columns: both stand on a page at the size of reading."""
_ROW: Final = 110
"""Characters that stand side by side on the front sheet."""
_PAGE: Final = 200.0
"""Widths of columns that stand on one page before its letters are too small to read: about two thirds of their size."""
_NARROW: Final = 30.0
"""A first column up to this width is repeated on each page of a sheet that is wider than one."""
_UNDATED: Final = dt.datetime(2000, 1, 1)
"""Written as the time of making of a document without a date: the same document gives the same content."""
_LINE_PT: Final = 13.5
_TALL_PT: Final = {16.0: 24.0, 12.0: 18.0}
"""Heights of rows whose letters are larger than those of a table."""
_HIGHEST_PT: Final = 409.0
"""No spreadsheet program makes a row higher."""
_LOOSE: Final = 1.12
"""By how much lines that are broken at spaces hold less than their width, on average."""

_PLAIN: Final = Font(name="Calibri", size=10)
_STRONG: Final = Font(name="Calibri", size=10, bold=True)
_LARGE: Final = Font(name="Calibri", size=16, bold=True, color="214A45")
_MIDDLE: Final = Font(name="Calibri", size=12, bold=True, color="214A45")
_HEAD_FILL: Final = PatternFill("solid", fgColor="E5ECE9")
_WARN_FILL: Final = PatternFill("solid", fgColor="FFE8E6")
_LINE: Final = Border(bottom=Side(style="thin", color="9EA8AD"))
_ALIGN: Final = {
    # Off the number to its left, or both are read as one.
    "left": Alignment(vertical="top", wrap_text=True, horizontal="left", indent=1),
    "right": Alignment(vertical="top", wrap_text=True, horizontal="right"),
    "centre": Alignment(vertical="top", wrap_text=True, horizontal="center"),
    "over": Alignment(vertical="top", wrap_text=False, horizontal="left"),
}


def render_xlsx(document: Document, path: Path) -> None:
    """Write a document as a workbook; the file appears whole or not at all.

    Parameters
    ----------
    document : Document
        Drawings are left out; they are in the PDF.
    path : Path
        Where; an existing file is replaced when the new one is complete.

    Raises
    ------
    OSError
        When the folder cannot be written.
    """
    # Row by row into the file: held in memory, a schedule of ten thousand openings takes several times as much.
    book = Workbook(write_only=True)
    book.properties.creator = "hwsched"
    book.properties.title = printable(document.title)
    # Spreadsheet programs keep this sheet name for themselves, and call a file that uses it damaged.
    taken: set[str] = {"history"}
    front = _sheet_name(document.title or "Front", taken)
    sheets = [(_sheet_name(name, taken), tables) for name, tables in _sheets(document)]
    _front(book, document, front, {id(table): name for name, tables in sheets for table in tables})
    for name, tables in sheets:
        _table_sheet(book, document, name, tables)
    with replacing(Path(path)) as beside:
        write_archive(beside, partial(save_workbook, book, _made(document)))


def _made(document: Document) -> dt.datetime:
    try:
        return dt.datetime.combine(dt.date.fromisoformat(document.date), dt.time())
    except ValueError:
        return _UNDATED


def _blocks(document: Document) -> Iterator[tuple[str, Any]]:
    for section in document.sections:
        for block in section.blocks:
            yield section.mark, block


def _sheets(document: Document) -> list[tuple[str, list[Table]]]:
    """Group tables by the sheet they ask for, else by their columns."""
    groups: dict[tuple[str, tuple[str, ...]], list[Table]] = {}
    for _, block in _blocks(document):
        if isinstance(block, Table) and block.columns:
            key = (block.sheet, tuple(column.title for column in block.columns))
            groups.setdefault(key, []).append(block)
    named = []
    for (sheet, _), tables in groups.items():
        shared = _beginning([table.title for table in tables])
        name = sheet or (shared if len(shared) >= 3 else tables[0].title) or "Table"
        named.append((name, tables))
    return named


def _beginning(titles: list[str]) -> str:
    """Return how all titles begin, as far as whole words go."""
    words = titles[0].split()
    for title in titles[1:]:
        pairs = zip(words, title.split(), strict=False)
        words = [word for word, _ in takewhile(lambda pair: pair[0] == pair[1], pairs)]
    return " ".join(words).strip(" ,;:.-–(/")


def _sheet_name(title: str, taken: set[str]) -> str:
    """Make a sheet's name: at most 31 characters, no sign that is not allowed, none twice in any case of letters."""
    base = _UNSAFE_NAME.sub("-", printable(title).replace("\n", " ")).strip("' ")[:31].strip("' ") or "Table"
    name, number = base, 1
    # Spreadsheet programs do not tell letters by their case in names of sheets.
    while name.casefold() in taken:
        number += 1
        tail = f" {number}"
        name = f"{base[: 31 - len(tail)].rstrip()}{tail}"
    taken.add(name.casefold())
    return name


class _Cells:
    """Makes the cells of a sheet; what they look like is looked up once and then shared."""

    def __init__(self, sheet: Any) -> None:
        self.sheet = sheet
        self._styles: dict[tuple[Any, ...], Any] = {}

    def __call__(
        self,
        value: Cell,
        font: Font = _PLAIN,
        align: str = "left",
        fill: PatternFill | None = None,
        border: Border | None = None,
        places: int | None = None,
    ) -> Any:
        """Make a cell; places: digits behind the point of a number."""
        # Neither infinite nor not a number can stand in a cell; the difference of either with itself is no zero.
        if isinstance(value, float) and value - value != 0:
            value = str(value)
        cell = WriteOnlyCell(self.sheet)
        text = isinstance(value, str)
        marked = False
        # Setting the value would guess its type; a text is a text, whatever it starts with.
        if isinstance(value, str):
            cell._value = printable(value)
            cell.data_type = "s"
            # As text it is no formula here; the mark keeps it a text when a person opens the cell and presses Enter.
            marked = value[:1] in ("=", "+", "-", "@")
        elif value is not None:
            cell.value = value
        # Fonts, fills and borders are the few of this module. To compare what they say, as the library does with
        # each cell, took longer than writing it.
        key = id(font), align, id(fill), id(border), None if text or value is None else places, marked
        style = self._styles.get(key)
        if style is None:
            cell.font, cell.alignment = font, _ALIGN[align]
            if fill is not None:
                cell.fill = fill
            if border is not None:
                cell.border = border
            if key[4] is not None:
                cell.number_format = f"#,##0.{'0' * key[4]}" if key[4] else "#,##0"
            if marked:
                cell.quotePrefix = True
            self._styles[key] = cell._style
        else:
            cell._style = style
        return cell


def _set_up(sheet: Any, document: Document, head_rows: int, widths: Sequence[float]) -> None:
    sheet.page_setup.orientation = "landscape"
    # One page as a rule; of a table that would be shrunk until nobody can read it the rest stands on the pages beside.
    across = math.ceil(sum(widths) / _PAGE)
    sheet.page_setup.fitToWidth = across
    if across > 1:
        sheet.page_setup.pageOrder = "overThenDown"
        if widths[0] <= _NARROW:
            sheet.print_title_cols = "A:A"
    # Nought is as many pages as it takes; one would shrink a long list until nobody can read it.
    sheet.page_setup.fitToHeight = 0
    sheet.sheet_properties.pageSetUpPr.fitToPage = True
    sheet.page_margins.left = sheet.page_margins.right = 0.4
    if head_rows:
        sheet.print_title_rows = f"1:{head_rows}"
        # Of a sheet that is written row by row this must be said before its first row.
        sheet.freeze_panes = f"{'B' if across > 1 and widths[0] <= _NARROW else 'A'}{head_rows + 1}"
    project, title, stamp = (
        # In heads and feet & begins a code, such as that of the page number; doubled it is itself.
        printable(text).replace("\n", " ").replace("&", "&&")[:80]
        for text in (document.project, document.title, f"Revision {document.revision}   {document.date}")
    )
    sheet.oddHeader.left.text = project
    sheet.oddHeader.right.text = title
    sheet.oddFooter.left.text = stamp
    sheet.oddFooter.right.text = "Page &P of &N"


def _front(book: Any, document: Document, name: str, stand: Mapping[int, str]) -> None:
    """Write the front sheet; stand: by the identity of a table the sheet on which it stands."""
    sheet = book.create_sheet(name)
    _set_up(sheet, document, 0, _FRONT)
    sheet.page_setup.orientation = "portrait"
    for letter, width in zip("AB", _FRONT, strict=True):
        sheet.column_dimensions[letter].width = width
    for number, row in enumerate(_front_rows(_Cells(sheet), document, stand), start=1):
        # What runs over its neighbours does not wrap; only a label and its value do.
        values = [cell.value if cell.alignment.wrap_text else None for cell in row]
        high = _TALL_PT.get(row[0].font.size or 0.0, 0.0) if row else 0.0
        _append(sheet, row, values, _FRONT, number, high)


def _front_rows(cells: _Cells, document: Document, stand: Mapping[int, str]) -> Iterator[list[Any]]:
    yield [cells(document.title, _LARGE, "over")]
    if document.subtitle:
        yield [cells(document.subtitle, align="over")]
    for label, value in (("Project", document.project), ("Revision", document.revision), ("Date", document.date)):
        yield [cells(label, _STRONG), cells(value)]
    for mark, block in _blocks(document):
        if isinstance(block, Table):
            # A heading with nothing under it reads as if there were nothing.
            if id(block) in stand:
                yield [cells(phrase("Sheet {name}", name=stand[id(block)]), align="over")]
            continue
        yield from _say(cells, mark, block)
    if document.footer:
        yield []
        yield [cells(document.footer, align="over")]


def _say(cells: _Cells, mark: str, block: Any) -> Iterator[list[Any]]:
    """Yield a block that is words as rows of the front sheet; tables stand on sheets of their own."""
    if isinstance(block, Heading):
        yield []
        words = f"{mark}: {block.text}" if mark and mark not in block.text else block.text
        yield [cells(words, _MIDDLE if block.level < 3 else _STRONG, "over")]
    elif isinstance(block, Paragraph):
        alarming = block.style in ("caution", "stop")
        words = f"{block.style.upper()}: {block.text}" if alarming else block.text
        fill = _WARN_FILL if block.style == "stop" else None
        for line in _rows(words):
            yield [cells(line, _STRONG if alarming else _PLAIN, "over", fill)]
    elif isinstance(block, Bullets):
        for number, item in enumerate(block.items, start=1):
            for line in _rows(f"{number}. {item}" if block.numbered else f"• {item}"):
                yield [cells(line, align="over")]
    elif isinstance(block, Steps):
        for step in block.lines:
            for caution in step.cautions:
                yield [cells(f"CAUTION: {caution}", _STRONG, "over")]
            said = " ".join((step.text, *(f"[{reading}]" for reading in step.readings)))
            for line in _rows(f"{step.number}. {step.where}: {said}"):
                yield [cells(line, align="over")]
    elif isinstance(block, Facts):
        for label, value in block.pairs:
            for part in _parts(value):
                yield [cells(label, _STRONG), cells(part)]
    elif isinstance(block, SignOff):
        for role in block.roles:
            yield [cells(role, _STRONG), cells("Name, signature, date:")]


def _rows(text: str) -> list[str]:
    """Break words that run over the front sheet's columns into rows of a page's width."""
    return [line for part in text.split("\n") for line in textwrap.wrap(part, _ROW) or [""]]


def _parts(text: str) -> list[str]:
    return [text[start : start + _LONGEST_TEXT] for start in range(0, len(text), _LONGEST_TEXT)] or [""]


def _table_sheet(book: Any, document: Document, name: str, tables: list[Table]) -> None:
    sheet = book.create_sheet(name)
    several = len(tables) > 1
    columns = tables[0].columns
    titles = (["List"] if several else []) + [column.title for column in columns]
    aligns = (["left"] if several else []) + [column.align for column in columns]
    digits = ([None] if several else []) + [column.digits for column in columns]
    widths = _widths(tables, titles, several)
    _set_up(sheet, document, 1, widths)
    for number, width in enumerate(widths, start=1):
        sheet.column_dimensions[get_column_letter(number)].width = width
    cell = _Cells(sheet)
    sheet.append([cell(title, _STRONG, align, _HEAD_FILL, _LINE) for title, align in zip(titles, aligns, strict=True)])
    count = 1
    for table in tables:
        for number, row in enumerate(asking(table.rows)):
            values: list[Cell] = [row[n] if n < len(row) else None for n in range(len(columns))]
            if several:
                values.insert(0, table.title)
            font = _STRONG if number in table.strong_rows else _PLAIN
            for line in _fitting(values):
                cells = [
                    cell(value, font, align, places=places)
                    for value, align, places in zip(line, aligns, digits, strict=True)
                ]
                count += 1
                _append(sheet, cells, line, widths, count)
    sheet.auto_filter.ref = f"A1:{get_column_letter(len(titles))}{count}"


def _append(
    sheet: Any, cells: list[Any], values: Sequence[Cell], widths: Sequence[float], number: int, high: float = 0.0
) -> None:
    """Write a row as high as its text needs, or its letters: what has no room is written over its neighbours."""
    tall = max(map(_lines, values, widths), default=1)
    if tall == 1 and not high:
        sheet.append(cells)
        return
    sheet.row_dimensions[number].height = max(min(tall * _LINE_PT, _HIGHEST_PT), high)
    sheet.append(cells)
    # It is in the file now; kept, ten thousand of them would be held to the end.
    del sheet.row_dimensions[number]


def _lines(value: Cell, width: float) -> int:
    if not isinstance(value, str) or (len(value) < width - 1.0 and "\n" not in value):
        return 1
    return sum(math.ceil(max(len(line), 1) * _LOOSE / max(width - 1.0, 1.0)) for line in value.split("\n"))


def _fitting(values: list[Cell]) -> list[list[Cell]]:
    """Return a row as one or, where a text is longer than a cell holds, several rows."""
    if not any(isinstance(value, str) and len(value) > _LONGEST_TEXT for value in values):
        return [values]
    pieces = [_parts(value) if isinstance(value, str) else [value] for value in values]
    return [
        [piece[number] if number < len(piece) else None for piece in pieces] for number in range(max(map(len, pieces)))
    ]


def _widths(tables: list[Table], titles: list[str], several: bool) -> list[float]:
    longest = [float(len(title)) for title in titles]
    for table in tables:
        for row in asking(table.rows):
            cells = (table.title, *row) if several else row
            for number, value in enumerate(cells[: len(longest)]):
                if value is None:
                    continue
                text = value if isinstance(value, str) else f"{value}"
                length = max((len(line) for line in text.split("\n")), default=0) if "\n" in text else len(text)
                if length > longest[number]:
                    longest[number] = float(length)
    return [min(max(length + 2.0, 6.0), _WIDEST) for length in longest]
