"""The blank survey workbook for the surveyor: openings, existing items, and how to fill them in."""

from pathlib import Path
from typing import Final

from openpyxl import Workbook
from openpyxl.styles import Alignment, Font

from hwsched.attributes import Attribute
from hwsched.exchange.sheet_writing import save, write_header
from hwsched.exchange.survey_words import LOCK_FACTS
from hwsched.quantities.readings import BareUnit
from hwsched.survey import ITEM, LEAF, OPENING

_ITEM_FACTS: Final = ("kind", "leaf", "face", "x_mm", "y_mm", "width_mm", "height_mm", "projection_mm", "disposition")
_HELP: Final = (
    "One row an opening on the sheet Openings; its lock stands in the same row.",
    "A pair has a second row with the same mark: leaf Inactive, its size and material; the first row says Active.",
    "Every other existing item has a row of its own on the sheet Existing items, under the mark of its opening.",
    "Leave blank what was not seen. A blank never erases what the project knows already.",
    "Lengths: as on the tape, 3'-0\", 1 3/4, 70 mm. A number alone takes the unit of the column's header.",
    "Sides: the secured side is the face inside the protected room, the key side the face from which the key is used.",
    "Hand: stand on the key side. Hinges left is LH or LHR, right RH or RHR; R when the leaf swings toward you.",
    "Positions of items: centre of the footprint, from the lock edge of the leaf and above the finished floor.",
    "The rating is read from the labels on leaf and frame, never from memory.",
    "Darker headers must be filled in; every header has a note.",
)


def write_survey_form(
    path: Path, *, bare_unit: BareUnit = "in", own_fields: dict[str, tuple[Attribute, ...]] | None = None
) -> None:
    """Write a blank survey workbook.

    Parameters
    ----------
    path : Path
        Ending .xlsx; an older file is replaced whole.
    bare_unit : {"in", "ft", "mm", "cm", "m"}
        Unit that the headers ask for.
    own_fields : dict, optional
        Fields of the project's own by entity.
    """
    own = own_fields or {}
    book = Workbook()
    openings = book.active
    assert openings is not None
    openings.title = "Openings"
    items = book.create_sheet("Existing items")
    help_ = book.create_sheet("How to fill in")
    lists = book.create_sheet("Words")
    lists.sheet_state = "hidden"
    lock = tuple(attribute for attribute in ITEM.attributes if attribute.name in LOCK_FACTS)
    columns = (*OPENING.attributes, *own.get(OPENING.name, ()), *LEAF.attributes, *lock)
    write_header(openings, 1, columns, bare_unit, lists)
    mark = OPENING.attribute("mark")
    rest = tuple(ITEM.attribute(name) for name in (*_ITEM_FACTS, "item_notes"))
    write_header(items, 1, (mark, *rest, *own.get(ITEM.name, ())), bare_unit, lists)
    for sheet in (openings, items):
        for row in range(2, 400):
            # Marks such as 0012, 9E4 and 3-4 stay as they are typed.
            sheet.cell(row, 1).number_format = "@"
    help_.column_dimensions["A"].width = 110
    help_.cell(1, 1, "How to fill in").font = Font(bold=True, size=14)
    for row, line in enumerate(_HELP, start=3):
        help_.cell(row, 1, line).alignment = Alignment(wrap_text=True)
    save(book, path)
