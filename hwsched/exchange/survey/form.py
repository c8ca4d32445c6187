"""The survey workbook for the surveyor: openings, existing items, and how to fill them in.

Here belongs the layout: what a surveyor sees. What stands in it of openings that are known already comes from
`survey_form_rows`; whatever is filled in is read by `survey_book`.
"""

from collections.abc import Collection, Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any, Final

from openpyxl import Workbook
from openpyxl.styles import Alignment, Border, Font, PatternFill, Side
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.worksheet import Worksheet

from hwsched.attributes import Attribute
from hwsched.exchange.sheet_writing import save, write_cell, write_header
from hwsched.exchange.survey.facts import HELP_SHEET
from hwsched.exchange.survey.form_rows import Row, item_rows, opening_rows, spelled
from hwsched.exchange.survey.words import LOCK_FACTS
from hwsched.quantities import BareUnit
from hwsched.survey import ITEM, LEAF, OPENING
from hwsched.survey.asked import ASKED, IDLE, OF_KINDS, asked_of, asked_of_device, asked_of_lock, decides
from hwsched.values import OpeningInput

Group = tuple[str, tuple[Attribute, ...]]

_HEADER_ROW: Final = 2
_PLAIN: Final = tuple(a for a in ITEM.attributes if a.name not in LOCK_FACTS)
_LOCK: Final = tuple(a for a in ITEM.attributes if a.name in LOCK_FACTS)
_BAND: Final = PatternFill("solid", fgColor="C9D3CB")
_UNASKED: Final = PatternFill("lightUp", fgColor="C9D3CB")
_EDGE: Final = Border(left=Side("medium", color="5C6B60"))
_EXAMPLE: Final = Font(italic=True, color="5C6B60")
_HELP: Final = (
    "One row an opening on the sheet Openings; its lock stands in the same row.",
    "A pair has a second row with the same mark: leaf Inactive, with its size and material; the first row says Active. "
    "Where the inactive leaf has a lock too, it stands in that row.",
    "A further lock on a leaf, such as a deadlock above a latch, is a row on the sheet Existing items: the item "
    "Deadbolt or Lock with its own columns of the lock, and Replace where it shall be converted as well.",
    "A lock that shall stay as it is has a row there too: the item, its leaf, and Keep.",
    "Every other existing item has a row of its own on the sheet Existing items, under the mark of its opening.",
    "Where the lock itself stands on the leaf is a row of the kind Lock there.",
    "Nothing is asked where a cell is hatched: it is known of the level or building, or decides nothing here.",
    "Leave blank what was not seen. A blank never erases what the project knows already.",
    "Lengths: as on the tape. A number alone takes the unit in the column's header.",
    "Sides: the inside is the face inside the protected room, the key side the face from which the key is used.",
    "Hand: stand on the key side. Hinges left is LH or LHR, right RH or RHR; R when the leaf swings toward you.",
    "Positions of items: centre of the footprint, from the lock edge of the leaf and above the finished floor.",
    "The rating is read from the labels on leaf and frame, never from memory.",
    "Darker headers must be filled in; point at a header to read its note.",
)
_EXAMPLES: Final = (
    ("A mark, typed as on the frame", "0012"),
    ("A width", "3'-0\""),
    ("A thickness", "1 3/4"),
    ("A backset measured in millimetres", "70 mm"),
    ("The width of each leaf of a pair of equal leaves", "2(3'-0\")"),
    ("An item on both faces", "Both faces"),
    ("Not known", "leave blank, or ?"),
)


def write_survey_form(
    path: Path,
    *,
    openings: Sequence[OpeningInput] | None = None,
    extra: Mapping[str, Mapping[str, Any]] | None = None,
    bare_unit: BareUnit = "in",
    own_fields: Mapping[str, tuple[Attribute, ...]] | None = None,
    taken: Mapping[str, Collection[str]] | None = None,
) -> None:
    """Write a survey workbook: blank, or with what is known of some openings for a return visit.

    Parameters
    ----------
    path : Path
        Ending .xlsx; an older file is replaced whole.
    openings : sequence of OpeningInput, optional
        Openings to visit again; what is known of them is filled in.
    extra : mapping, optional
        Values of the project's own fields by identifier of opening or item.
    bare_unit : {"in", "ft", "mm", "cm", "m"}
        Unit that the headers ask for.
    own_fields : mapping, optional
        Fields of the project's own by entity.
    taken : mapping, optional
        By identifier of the opening, the facts that it takes from its level or building: they are asked there.
    """
    own = own_fields or {}
    held = extra or {}
    book = Workbook()
    sheet = book.active
    assert sheet is not None
    sheet.title = "Openings"
    items = book.create_sheet("Existing items")
    _write_help(book.create_sheet(HELP_SHEET))
    words = book.create_sheet("Words")
    words.sheet_state = "hidden"
    mark = (OPENING.attribute("mark"),)
    of_opening: tuple[Group, ...] = (
        ("Opening", (*OPENING.attributes, *own.get(OPENING.name, ()))),
        ("Leaf", LEAF.attributes),
        ("Lock", _LOCK),
    )
    of_items: tuple[Group, ...] = (
        ("Opening", mark),
        ("Existing item", (*_PLAIN, *own.get(ITEM.name, ()))),
        ("Lock", _LOCK),
    )
    inputs = openings or ()
    quiet = {
        each.opening.mark: frozenset(_not_asked(each)) | {*(taken or {}).get(each.opening.id, ())} for each in inputs
    }
    _write_sheet(sheet, of_opening, bare_unit, words, opening_rows(inputs, held, taken), quiet)
    _write_sheet(items, of_items, bare_unit, words, item_rows(inputs, held), quiet)
    save(book, path)


def _not_asked(given: OpeningInput) -> Iterator[str]:
    """Yield the facts that no rule reads of an opening of that form, or that decide nothing there."""
    yield from (name for name in ASKED if not asked_of(name, given.opening.form))
    yield from (name for name in IDLE if not decides(name, given.opening))


def _write_sheet(
    sheet: Worksheet,
    groups: tuple[Group, ...],
    bare_unit: BareUnit,
    words: Worksheet,
    rows: list[Row],
    quiet: Mapping[str, Collection[str]],
) -> None:
    attributes = [attribute for _, group in groups for attribute in group]
    write_header(sheet, _HEADER_ROW, attributes, bare_unit, words)
    # The longest header stands in three lines above its column.
    sheet.row_dimensions[_HEADER_ROW].height = 48
    column = 1
    keys = []
    for title, group in groups:
        last = column + len(group) - 1
        cell = sheet.cell(1, column, title)
        cell.font = Font(bold=True)
        for at in range(column, last + 1):
            sheet.cell(1, at).fill = _BAND
        cell.alignment = Alignment(horizontal="left")
        if last > column:
            sheet.merge_cells(start_row=1, start_column=column, end_row=1, end_column=last)
        sheet.cell(_HEADER_ROW, column).border = _EDGE
        keys += [(title, attribute.name) for attribute in group]
        column = last + 1
    for at, attribute in enumerate(attributes, start=1):
        if attribute.kind in ("text", "length", "choice"):
            # As text 0012, 9E4 and 3-4 stay as they are typed, and 3/4 is not made 4 March.
            sheet.column_dimensions[get_column_letter(at)].number_format = "@"
    for number, row in enumerate(rows, start=_HEADER_ROW + 1):
        unasked = quiet.get(str(row["Opening", "mark"]), ())
        kind = row.get(("Existing item", "kind"))
        lock = row.get(("Lock", "lock_form"))
        device = row.get(("Existing item", "device_form"))
        for at, (key, attribute) in enumerate(zip(keys, attributes, strict=True), start=1):
            if (value := row.get(key)) is not None:
                write_cell(sheet, number, at, spelled(attribute, value, bare_unit))
            elif (
                attribute.name in unasked
                or (key[0] == "Existing item" and kind not in OF_KINDS.get(attribute.name, (kind,)))
                or (key[0] == "Existing item" and not asked_of_device(attribute.name, device))
                or (key[0] == "Lock" and not asked_of_lock(attribute.name, lock))
            ):
                sheet.cell(number, at).fill = _UNASKED


def _write_help(sheet: Worksheet) -> None:
    sheet.column_dimensions["A"].width = 52
    sheet.column_dimensions["B"].width = 58
    sheet.cell(1, 1, HELP_SHEET).font = Font(bold=True, size=14)
    row = 3
    for line in _HELP:
        sheet.cell(row, 1, line).alignment = Alignment(wrap_text=True, vertical="top")
        sheet.merge_cells(start_row=row, start_column=1, end_row=row, end_column=2)
        row += 1
    row += 1
    sheet.cell(row, 1, "Examples of single cells").font = Font(bold=True)
    for what, example in _EXAMPLES:
        row += 1
        sheet.cell(row, 1, what)
        write_cell(sheet, row, 2, example)
        sheet.cell(row, 2).font = _EXAMPLE
