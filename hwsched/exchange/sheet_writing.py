"""Writing sheets that people fill in: headers with notes, drop-down lists, text that stays text."""

from collections.abc import Sequence
from pathlib import Path
from typing import Any, Final

from openpyxl import Workbook
from openpyxl.comments import Comment
from openpyxl.styles import Alignment, Font, PatternFill
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.properties import PageSetupProperties
from openpyxl.worksheet.worksheet import Worksheet

from hwsched.attributes import Attribute, accepted_by
from hwsched.render.cell_text import safe_text
from hwsched.writing import check_ending, replacing, write_archive

_HEAD: Final = PatternFill("solid", fgColor="E4DED0")
_NEEDED: Final = PatternFill("solid", fgColor="F0D9B0")
_MOST_ROWS: Final = 2000
"""Rows to which a drop-down list reaches."""


def header(attribute: Attribute, length_unit: str) -> str:
    """Return a column's header with its unit, such as ``Backset [in]``."""
    if attribute.kind == "length":
        return f"{attribute.label} [{length_unit}]"
    if attribute.unit in ("", "mm"):
        return attribute.label
    return f"{attribute.label} [{attribute.unit}]"


def write_header(
    sheet: Worksheet, row: int, attributes: Sequence[Attribute], length_unit: str, lists: Worksheet
) -> None:
    """Write headers with notes as comments, and drop-down lists below them.

    Parameters
    ----------
    sheet : Worksheet
        The sheet.
    row : int
        Row of the headers, from 1.
    attributes : sequence of Attribute
        One a column.
    length_unit : str
        Unit of lengths without one.
    lists : Worksheet
        Hidden sheet that holds the words of the lists.
    """
    for column, attribute in enumerate(attributes, start=1):
        cell = sheet.cell(row, column, header(attribute, length_unit))
        cell.font = Font(bold=True)
        cell.fill = _NEEDED if attribute.required else _HEAD
        cell.alignment = Alignment(wrap_text=True, vertical="top")
        note = _note(attribute)
        cell.comment = Comment(safe_text(note), "hwsched", height=60 + len(note) // 2, width=260)
        letter = get_column_letter(column)
        sheet.column_dimensions[letter].width = min(max(len(attribute.label) * 0.8 + 4, 11), 26)
        words = [c.label for c in attribute.choices] if attribute.kind == "choice" else []
        words = ["yes", "no"] if attribute.kind == "flag" else words
        if words:
            reach = f"{letter}{row + 1}:{letter}{row + _MOST_ROWS}"
            # Words are offered, not forced: what a surveyor types otherwise is asked about when it is read.
            validation = DataValidation(
                "list", formula1=_listed(lists, words), allow_blank=True, showErrorMessage=False
            )
            validation.add(reach)
            sheet.add_data_validation(validation)
    sheet.row_dimensions[row].height = 46
    sheet.freeze_panes = sheet.cell(row + 1, 2)
    sheet.page_setup.orientation = "landscape"
    sheet.page_setup.fitToHeight = 0
    # Without this flag spreadsheet programs pass over the numbers of pages that are asked for above.
    sheet.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
    sheet.print_title_rows = f"{row}:{row}"


def write_cell(sheet: Worksheet, row: int, column: int, value: Any) -> None:
    """Write a value; text stays text whatever it begins with."""
    cell = sheet.cell(row, column)
    if isinstance(value, str):
        cell.value = safe_text(value)
        # openpyxl takes a text that begins with = for a formula, and one that looks like an error for an error.
        cell.data_type = "s"
        cell.number_format = "@"
    elif isinstance(value, bool):
        # TRUE and FALSE are shown in the language of the spreadsheet program, and not every reader knows all of them.
        cell.value = "yes" if value else "no"
    elif value is not None:
        cell.value = value
        # A style of its own: without one the cell takes its column's, and as text a number is shown with all digits.
        cell.alignment = Alignment(horizontal="right")


def save(book: Workbook, path: Path) -> None:
    """Save a workbook whole or not at all; raises UnwritableError, also for a name that does not end .xlsx."""
    check_ending(path, ".xlsx", "a workbook")
    with replacing(path) as partial:
        write_archive(partial, book.save)


def _note(attribute: Attribute) -> str:
    """Return what stands behind a header: what it means, what is accepted, and whether it may stay empty."""
    accepted = accepted_by(attribute)
    accepted = f"One of: {accepted}." if attribute.kind == "choice" else f"{accepted[:1].upper()}{accepted[1:]}."
    needed = "Must be filled in." if attribute.required else ""
    return "\n".join(line for line in (attribute.note, accepted, needed) if line)


def _listed(lists: Worksheet, words: list[str]) -> str:
    for column in range(1, lists.max_column + 1):
        # A list in the formula itself may have 255 characters only; on a sheet it may be as long as it is.
        held = [lists.cell(row + 1, column).value for row in range(len(words))]
        if held == words and lists.cell(len(words) + 1, column).value is None:
            break
    else:
        column = lists.max_column + (1 if lists.cell(1, 1).value is not None else 0)
        for row, word in enumerate(words, start=1):
            lists.cell(row, column, word)
    letter = get_column_letter(column)
    return f"'{lists.title}'!${letter}$1:${letter}${len(words)}"
