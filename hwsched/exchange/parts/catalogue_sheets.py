"""Writing the catalogue workbook: a sheet a part kind, generated from the kind's declaration, and the kit contents.

Here belongs which value stands in which cell, so that it is read back as exactly the same. Headers, notes and
drop-down lists stand in `sheet_writing`.
"""

from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal
from pathlib import Path
from typing import Final

from openpyxl import Workbook
from openpyxl.styles import Alignment, Font
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.properties import PageSetupProperties
from openpyxl.worksheet.worksheet import Worksheet

from hwsched.attributes import Attribute, CellError, Value, accepted_by, read_value
from hwsched.catalogue import KINDS
from hwsched.catalogue.traits.entry import ENTRY, NUMBER, ON_HAND
from hwsched.exchange.sheet_writing import header, save, write_cell, write_header
from hwsched.quantities import MM_PER_INCH, LengthStyle, format_length
from hwsched.quantities.money import decimal_text
from hwsched.render.cell_text import safe_text
from hwsched.values import Part

KIT_SHEET: Final = "Kit contents"
ABOUT_SHEET: Final = "About"
KIT: Final[tuple[Attribute, ...]] = (
    Attribute("number", "Part number", synonyms=NUMBER.synonyms, required=True, note="The part whose box it is."),
    Attribute(
        "contained",
        "Contains",
        synonyms=("contained", "contained number", "contents", "contained part"),
        required=True,
        note="Number of a part in that box.",
    ),
    Attribute("quantity", "Quantity", "number", synonyms=("qty",), low=0.0001, high=100000, required=True),
)
_FINEST_MM: Final = 1e-6
"""Lengths are read to a millionth of a millimetre; what is finer has no spelling of its own."""
_WIDE: Final = {"number": 18, "description": 52, "supplier": 26}
_ABOUT: Final = (
    "One sheet a part kind; one row a part. Darker headers must be filled in, and every header has a note.",
    'A length without a unit takes the unit of its header; other units can be written: 1 3/4", 44.5 mm, 3\'-0".',
    "An empty cell, ? and unknown mean that nobody knows; 0 and no are answers.",
    "Part numbers are text and stand once in the whole book; kits and successors refer to them.",
    "Text may begin with = + - @: it stays text. Write no formulas and merge no cells.",
    "Bring the book back with: hwsched parts import. A wrong cell is named, and nothing is changed in silence.",
)


def write_catalogue(
    path: Path,
    parts: Iterable[Part],
    length_style: LengthStyle = "mm",
    *,
    own_fields: Sequence[Attribute] = (),
    extra: Mapping[str, Mapping[str, Value]] | None = None,
) -> None:
    """Write parts as a catalogue workbook; an older file is replaced whole.

    Parameters
    ----------
    path : Path
        Ending .xlsx.
    parts : iterable of Part
        Of declared kinds, each number once.
    length_style : LengthStyle
        Headers in mm or inches; lengths that have no exact spelling in inches are written with their millimetres.
    own_fields : sequence of Attribute
        Fields of the project's own on parts; columns behind those of each kind.
    extra : mapping, optional
        Values of these fields by part number.

    Raises
    ------
    ValueError
        Where a part's kind or one of its attributes is not declared, or a text would be read back as another: it would
        be lost in silence. A value that its attribute accepts no more is written, and named when the book is read.
    """
    by_kind: dict[str, list[Part]] = {kind.name: [] for kind in KINDS}
    for part in parts:
        if part.kind not in by_kind:
            raise ValueError(f"part {part.number}: kind {part.kind} is not declared")
        by_kind[part.kind].append(part)
    unit = "mm" if length_style == "mm" else "in"
    book = Workbook()
    about = book.active
    assert about is not None
    about.title = ABOUT_SHEET
    lists = book.create_sheet("Words")
    lists.sheet_state = "hidden"
    counts: list[tuple[str, str, int]] = []
    kits: list[tuple[str, str, float]] = []
    for kind in KINDS:
        sheet = book.create_sheet(kind.label)
        columns = (*ENTRY, *kind.attributes, *ON_HAND, *own_fields)
        write_header(sheet, 1, columns, unit, lists)
        _keep_as_typed(sheet, columns)
        found = sorted(by_kind[kind.name], key=lambda part: part.number)
        for row, part in enumerate(found, start=2):
            values = _values(part, columns, (extra or {}).get(part.number, {}))
            for column, attribute in enumerate(columns, start=1):
                write_cell(sheet, row, column, _exact(part.number, attribute, values.get(attribute.name), length_style))
            kits += [(part.number, number, quantity) for number, quantity in part.kit]
        counts.append((kind.label, kind.note, len(found)))
    sheet = book.create_sheet(KIT_SHEET)
    write_header(sheet, 1, KIT, unit, lists)
    _keep_as_typed(sheet, KIT)
    for row, (number, contained, quantity) in enumerate(kits, start=2):
        line: tuple[Value, ...] = (number, contained, quantity)
        for column, (attribute, value) in enumerate(zip(KIT, line, strict=True), start=1):
            write_cell(sheet, row, column, _exact(number, attribute, value, length_style))
    _write_about(about, counts)
    save(book, path)


def _keep_as_typed(sheet: Worksheet, columns: Sequence[Attribute]) -> None:
    """Give columns the format of text: 0012, 9E4 and 3-4 stay as they are typed, and 3/4 is not made 4 March."""
    for column, attribute in enumerate(columns, start=1):
        if attribute.name in _WIDE:
            sheet.column_dimensions[get_column_letter(column)].width = _WIDE[attribute.name]
        if attribute.kind in ("text", "length", "choice"):
            sheet.column_dimensions[get_column_letter(column)].number_format = "@"


def _values(part: Part, columns: Sequence[Attribute], extra: Mapping[str, Value]) -> dict[str, Value]:
    values: dict[str, Value] = {attribute.name: getattr(part, attribute.name) for attribute in (*ENTRY, *ON_HAND)}
    values |= part.attributes
    values |= extra
    lost = [name for name, value in values.items() if value is not None and all(a.name != name for a in columns)]
    if lost:
        raise ValueError(f"part {part.number}: {', '.join(lost)} not declared for kind {part.kind}")
    return values


def _exact(
    number: str, attribute: Attribute, value: Value, length_style: LengthStyle
) -> str | float | int | bool | None:
    """Return the first spelling of a value that is read back as the same."""
    if value is None or value == "":
        return None
    unit = ("mm" if length_style == "mm" else "in") if attribute.kind == "length" else None
    nearest: str | float | bool | None = None
    refused: str | float | bool | None = None
    for spelling in _spellings(attribute, value, length_style):
        # A workbook keeps 16 digits of a number.
        held = float(f"{spelling:.16g}") if isinstance(spelling, float) else spelling
        try:
            read = read_value(attribute, held, bare_unit=unit).value
        except CellError:
            # Held, but no longer possible (limits change): the cell is named when the book is read.
            if not isinstance(spelling, str) or safe_text(spelling) == spelling:
                refused = spelling
            continue
        if read == value:
            return spelling
        if isinstance(read, float) and isinstance(value, int | float) and abs(read - value) <= _FINEST_MM:
            nearest = spelling
    found = nearest if nearest is not None else refused
    if found is None:
        raise ValueError(f"part {number}: {attribute.label} cannot be {value!r}; accepted: {accepted_by(attribute)}")
    return found


def _spellings(attribute: Attribute, value: Value, length_style: LengthStyle) -> list[str | float | bool]:
    if isinstance(value, bool):
        return [value]
    if isinstance(value, str):
        choice = attribute.choice(value)
        return [choice.label] if choice else [value]
    if value is None:
        return []
    if isinstance(value, Decimal):
        return [float(value), decimal_text(value)]
    in_mm = f"{float(value)!r} mm"
    if attribute.kind == "length" and length_style == "fraction":
        return [format_length(float(value), "fraction"), in_mm]
    if attribute.kind == "length" and length_style == "decimal-inch":
        return [round(float(value) / MM_PER_INCH, 4), in_mm]
    return [value, in_mm if attribute.kind == "length" else repr(value)]


def _write_about(sheet: Worksheet, counts: Sequence[tuple[str, str, int]]) -> None:
    sheet.column_dimensions["A"].width = 30
    sheet.column_dimensions["B"].width = 84
    sheet.column_dimensions["C"].width = 10
    sheet.page_setup.orientation = "landscape"
    sheet.page_setup.fitToHeight = 0
    sheet.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
    sheet.cell(1, 1, "Catalogue").font = Font(bold=True, size=14)
    row = 3
    for line in _ABOUT:
        sheet.cell(row, 1, line).alignment = Alignment(wrap_text=True, vertical="top")
        sheet.merge_cells(start_row=row, start_column=1, end_row=row, end_column=3)
        row += 1
    row += 1
    for column, title in enumerate(("Sheet", "What stands there", "Parts"), start=1):
        sheet.cell(row, column, title).font = Font(bold=True)
    for label, note, count in counts:
        row += 1
        for column, value in enumerate((label, note, count), start=1):
            sheet.cell(row, column, value)
        sheet.cell(row, 1).hyperlink = f"#'{label}'!A1"
    row += 1
    sheet.cell(row, 1, KIT_SHEET).hyperlink = f"#'{KIT_SHEET}'!A1"
    sheet.cell(row, 2, f"What is in a part's box: {', '.join(header(attribute, 'mm') for attribute in KIT)}.")
