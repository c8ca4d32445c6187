"""The catalogue workbook: a sheet a part kind, generated from the kind's declaration, and the kit contents."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Final

from openpyxl import Workbook
from openpyxl.styles import Alignment, Font
from openpyxl.worksheet.worksheet import Worksheet

from hwsched.attributes import Attribute, CellError, CellReader, normal, split_unit
from hwsched.cases import Part
from hwsched.catalogue import KINDS, PartKind
from hwsched.catalogue.traits.entry import ENTRY, NUMBER
from hwsched.exchange.problems import CellProblem, FileProblem, InputRejected, column_letter, problem_of
from hwsched.exchange.sheet_writing import save, write_cell, write_header
from hwsched.exchange.workbook import Book, open_book

KIT_SHEET: Final = "Kit contents"
_KIT: Final = (
    Attribute("number", "Part number", synonyms=NUMBER.synonyms, required=True, note="The part whose box it is."),
    Attribute("contained", "Contains", synonyms=("contained", "contained number", "contents"), required=True),
    Attribute("quantity", "Quantity", "number", synonyms=("qty",), low=0.0001, high=100000, required=True),
)
_ABOUT: Final = (
    "One sheet a part kind; one row a part. Darker headers must be filled in, every header has a note.",
    'A length without a unit takes the unit of its header; other units can be written: 1 3/4", 44.5 mm.',
    "Part numbers are text, stand once in the whole book, and are what documents and kits refer to.",
)


@dataclass(frozen=True, slots=True)
class CatalogueRead:
    """What a catalogue workbook holds."""

    parts: tuple[Part, ...]
    """Those without a problem."""
    problems: tuple[CellProblem, ...]


@dataclass
class _Reading:
    parts: dict[str, Part] = field(default_factory=dict)
    where: dict[str, tuple[str, int]] = field(default_factory=dict)
    kits: dict[str, list[tuple[str, float]]] = field(default_factory=dict)
    problems: list[CellProblem] = field(default_factory=list)
    bad: set[str] = field(default_factory=set)


def write_catalogue(path: Path, parts: Iterable[Part]) -> None:
    """Write parts as a catalogue workbook, lengths in mm; an older file is replaced whole."""
    by_kind: dict[str, list[Part]] = {}
    for part in parts:
        by_kind.setdefault(part.kind, []).append(part)
    book = Workbook()
    about = book.active
    assert about is not None
    about.title = "About"
    about.column_dimensions["A"].width = 110
    about.cell(1, 1, "Catalogue").font = Font(bold=True, size=14)
    for row, line in enumerate(_ABOUT, start=3):
        about.cell(row, 1, line).alignment = Alignment(wrap_text=True)
    lists = book.create_sheet("Words")
    lists.sheet_state = "hidden"
    kits: list[tuple[str, str, float]] = []
    for kind in KINDS:
        sheet = book.create_sheet(kind.label)
        columns = (*ENTRY, *kind.attributes)
        write_header(sheet, 1, columns, "mm", lists)
        for row, part in enumerate(sorted(by_kind.get(kind.name, ()), key=lambda p: p.number), start=2):
            for column, attribute in enumerate(columns, start=1):
                write_cell(sheet, row, column, _cell(part, attribute, column <= len(ENTRY)))
            kits += [(part.number, number, quantity) for number, quantity in part.kit]
    _write_kits(book.create_sheet(KIT_SHEET), lists, kits)
    save(book, path)


def _cell(part: Part, attribute: Attribute, common: bool) -> Any:
    value = getattr(part, attribute.name) if common else part.attributes.get(attribute.name)
    if isinstance(value, str):
        choice = attribute.choice(value)
        return choice.label if choice else (value or None)
    return value


def _write_kits(sheet: Worksheet, lists: Worksheet, kits: Sequence[tuple[str, str, float]]) -> None:
    write_header(sheet, 1, _KIT, "mm", lists)
    for row, line in enumerate(kits, start=2):
        for column, value in enumerate(line, start=1):
            write_cell(sheet, row, column, value)


def read_catalogue(path: Path) -> CatalogueRead:
    """Read a catalogue workbook.

    Returns
    -------
    CatalogueRead
        Parts without a problem, and every refused cell by file, sheet, row and column.

    Raises
    ------
    InputRejected
        When the file cannot be read, or has no sheet of a part kind.
    """
    if not path.is_file():
        raise InputRejected([FileProblem(path.name, "is not there", accepted="the path of a catalogue workbook")])
    book = open_book(path)
    by_sheet = {normal(name): kind for kind in KINDS for name in (kind.label, kind.name)}
    known = [(name, by_sheet[normal(name)]) for name in book.sheet_names if normal(name) in by_sheet]
    if not known:
        labels = ", ".join(kind.label for kind in KINDS)
        raise InputRejected([FileProblem(path.name, "has no sheet of a part kind", accepted=f"sheets named {labels}")])
    reading = _Reading()
    for sheet, kind in known:
        _read_kind(book, sheet, kind, reading)
    kit_sheet = next((name for name in book.sheet_names if normal(name) == normal(KIT_SHEET)), None)
    if kit_sheet is not None:
        _read_kits(book, kit_sheet, reading)
    _check_references(book.file, reading)
    parts = tuple(
        _with_kit(part, reading.kits.get(number, []))
        for number, part in reading.parts.items()
        if number not in reading.bad
    )
    return CatalogueRead(parts, tuple(reading.problems))


def _with_kit(part: Part, kit: list[tuple[str, float]]) -> Part:
    return Part(
        part.number, part.kind, part.description, part.supplier, part.finish, part.unit, part.list_price, part.currency,
        part.superseded_by, part.attributes, tuple(sorted(kit)),
    )  # fmt: skip


def _table(
    book: Book, sheet: str, attributes: Sequence[Attribute], reading: _Reading
) -> list[tuple[int, dict[str, Any], bool]]:
    """Read the rows of a sheet: its row from 0, values by attribute, and whether a cell was refused."""
    rows = book.rows(sheet)
    head = next((n for n, row in enumerate(rows[:30]) if sum(bool(c) for c in row) >= 2), None)
    if head is None:
        return []
    words = {
        normal(word): attribute for attribute in reversed(attributes)
        for word in (*reversed(attribute.synonyms), attribute.name, attribute.label)
    }  # fmt: skip
    readers: dict[int, CellReader] = {}
    for column, cell in enumerate(rows[head]):
        text = str(cell).strip()
        name, unit = split_unit(text)
        found = words.get(normal(text)) or words.get(normal(name))
        if found is None or any(reader.attribute is found for reader in readers.values()):
            if text:
                message = "is no column of this sheet" if found is None else "stands twice"
                accepted = ", ".join(a.label for a in attributes)
                reading.problems.append(
                    CellProblem(book.file, sheet, head + 1, column_letter(column), text, text, message, accepted)
                )
            continue
        bare = (unit or "mm") if found.kind == "length" else (unit or None)
        readers[column] = CellReader(found, bare)
    missing = [a.label for a in attributes if a.required and all(r.attribute is not a for r in readers.values())]
    if missing and any(any(row) for row in rows[head + 1 :]):
        reading.problems.append(
            CellProblem(
                book.file, sheet, head + 1, "", "", "", f"has no column {', '.join(missing)}", "all darker columns"
            )
        )
        return []
    return _rows(book, sheet, rows, head, readers, reading)


def _rows(
    book: Book,
    sheet: str,
    rows: list[list[object]],
    head: int,
    readers: dict[int, CellReader],
    reading: _Reading,
) -> list[tuple[int, dict[str, Any], bool]]:
    doubtful = book.doubtful(sheet)
    found = []
    for place in range(head + 1, len(rows)):
        row = rows[place]
        if not any(cell not in ("", None) for cell in row) and not any((place, c) in doubtful for c in readers):
            continue
        values: dict[str, Any] = {}
        bad = False
        for column, reader in readers.items():
            cell = row[column] if column < len(row) else ""
            title = str(rows[head][column])
            if (place, column) in doubtful:
                problem = CellProblem(
                    book.file, sheet, place + 1, column_letter(column), title, "", doubtful[place, column]
                )
                reading.problems.append(problem)
                bad = True
                continue
            try:
                values[reader.attribute.name] = value = reader(cell)
                if value is None and reader.attribute.required:
                    raise CellError("", "must be filled in", reader.attribute.note or reader.attribute.label)
            except CellError as error:
                reading.problems.append(
                    problem_of(error, file=book.file, sheet=sheet, row=place + 1, column=column, header=title)
                )
                bad = True
        found.append((place, values, bad))
    return found


def _read_kind(book: Book, sheet: str, kind: PartKind, reading: _Reading) -> None:
    for place, values, bad in _table(book, sheet, (*ENTRY, *kind.attributes), reading):
        number = values.get("number")
        if not isinstance(number, str) or not number:
            continue
        if number in reading.where:
            other, row = reading.where[number]
            message = f"stands in sheet {other}, row {row + 1} already"
            problem = CellProblem(book.file, sheet, place + 1, "", NUMBER.label, number, message, "a number of its own")
            reading.problems.append(problem)
            reading.bad.add(number)
            continue
        reading.where[number] = (sheet, place)
        if bad:
            reading.bad.add(number)
        reading.parts[number] = Part(
            number=number,
            kind=kind.name,
            description=values.get("description") or "",
            supplier=values.get("supplier") or "",
            finish=values.get("finish") or "",
            unit=values.get("unit") or "EA",
            list_price=values.get("list_price"),
            currency=values.get("currency") or "",
            superseded_by=values.get("superseded_by") or "",
            attributes={a.name: v for a in kind.attributes if (v := values.get(a.name)) is not None},
        )


def _read_kits(book: Book, sheet: str, reading: _Reading) -> None:
    for place, values, bad in _table(book, sheet, _KIT, reading):
        number, contained, quantity = values.get("number"), values.get("contained"), values.get("quantity")
        for name, value in (("Part number", number), ("Contains", contained)):
            if value is not None and value not in reading.parts:
                message = "is no part of this book"
                problem = CellProblem(book.file, sheet, place + 1, "", name, str(value), message, "a part number of it")
                reading.problems.append(problem)
                bad = True
        if bad:
            if number is not None:
                reading.bad.add(str(number))
            continue
        reading.kits.setdefault(str(number), []).append((str(contained), float(quantity or 0)))


def _check_references(file: str, reading: _Reading) -> None:
    for number, part in reading.parts.items():
        if part.superseded_by and part.superseded_by not in reading.parts:
            sheet, place = reading.where[number]
            message = "is no part of this book"
            reading.problems.append(
                CellProblem(
                    file, sheet, place + 1, "", "Superseded by", part.superseded_by, message, "a part number of it"
                )
            )
            reading.bad.add(number)
