"""The catalogue workbook read back: parts, their kit contents, and every cell that is refused.

Here belongs what rows mean and what parts say of each other. A sheet as rows stands in `catalogue_rows`, writing in
`catalogue_sheets`.
"""

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from decimal import Decimal
from pathlib import Path
from typing import Final

from hwsched.attributes import Attribute, Value, normal
from hwsched.catalogue import KINDS, PartKind
from hwsched.catalogue.traits.entry import ENTRY, ON_HAND
from hwsched.catalogue.validation import problems_of
from hwsched.exchange.parts.catalogue_rows import Table, read_table
from hwsched.exchange.parts.catalogue_sheets import ABOUT_SHEET, KIT, KIT_SHEET, write_catalogue
from hwsched.exchange.problems import CellProblem, FileProblem, InputRejected
from hwsched.exchange.workbook import open_book
from hwsched.values import Part

__all__ = ["KIT_SHEET", "CatalogueRead", "read_catalogue", "write_catalogue"]

_UNIT: Final = "EA"
"""Order unit of a part where none is written; the header's note says so."""
_LIKE_A_KIND: Final = 3
"""Columns of every part that a sheet must have to be taken for one of parts: a list of names and numbers is none."""
_UNKNOWN: Final = "is no part of this book"


@dataclass(frozen=True, slots=True)
class CatalogueRead:
    """What a catalogue workbook holds."""

    parts: tuple[Part, ...]
    """Those without a problem, in the book's order; unknown attributes are left out."""
    problems: tuple[CellProblem, ...]
    extra: Mapping[str, Mapping[str, Value]] = field(default_factory=dict)
    """Values of the project's own fields by part number."""
    unread: tuple[str, ...] = ()
    """Names of the visible sheets that hold something and are no sheet of parts."""


@dataclass(slots=True)
class _Reading:
    own_fields: Sequence[Attribute]
    known: Collection[str]
    parts: dict[str, Part] = field(default_factory=dict)
    where: dict[str, tuple[Table, int]] = field(default_factory=dict)
    """Sheet and row from 0, by part number."""
    extra: dict[str, dict[str, Value]] = field(default_factory=dict)
    kits: dict[str, dict[str, tuple[float, int]]] = field(default_factory=dict)
    """Quantity and row from 0 of what is contained, by part number."""
    boxes: dict[str, tuple[Table, int]] = field(default_factory=dict)
    """Sheet and row from 0 of the first line of a kit, by part number."""
    problems: list[CellProblem] = field(default_factory=list)
    bad: set[str] = field(default_factory=set)

    def refuse(self, number: str, problem: CellProblem) -> None:
        """Keep a problem, and leave out the part that it concerns."""
        self.problems.append(problem)
        self.bad.add(number)


def read_catalogue(
    path: Path, *, own_fields: Sequence[Attribute] = (), known: Collection[str] = frozenset()
) -> CatalogueRead:
    """Read a catalogue workbook.

    Parameters
    ----------
    path : Path
        An .xlsx file; it is left alone.
    own_fields : sequence of Attribute
        Fields of the project's own on parts, which sheets may carry as further columns.
    known : collection of str
        Part numbers outside the book to which kits and successors may refer.

    Returns
    -------
    CatalogueRead
        Parts without a problem, and every refused cell by file, sheet, row and column.

    Raises
    ------
    InputRejected
        When the file cannot be read, or has no sheet of a part kind.
    """
    book = open_book(path)
    sheets = {normal(name): name for name in reversed(book.sheet_names)}
    by_word = {normal(word): kind for kind in KINDS for word in (kind.label, kind.name)}
    if not any(word in sheets for word in by_word):
        labels = ", ".join(kind.label for kind in KINDS)
        raise InputRejected([FileProblem(book.file, "has no sheet of a part kind", accepted=f"sheets named {labels}")])
    reading = _Reading(own_fields, known)
    unread: list[str] = []
    for sheet in book.sheet_names:
        kind = by_word.get(normal(sheet))
        if kind is not None:
            _read_kind(read_table(book, sheet, (*ENTRY, *kind.attributes, *ON_HAND, *own_fields)), kind, reading)
        elif sheet not in book.hidden and normal(sheet) not in (normal(KIT_SHEET), normal(ABOUT_SHEET)):
            if any(cell not in ("", None) for row in book.rows(sheet) for cell in row):
                unread.append(sheet)
            _refuse_lost_parts(read_table(book, sheet, ENTRY), reading)
    for sheet in book.sheet_names:
        if normal(sheet) == normal(KIT_SHEET):
            _read_kits(read_table(book, sheet, KIT), reading)
    _check_successors(reading)
    _check_circles(reading)
    return CatalogueRead(
        tuple(_with_kit(part, reading) for number, part in reading.parts.items() if number not in reading.bad),
        tuple(reading.problems),
        {number: extra for number, extra in reading.extra.items() if extra and number not in reading.bad},
        tuple(unread),
    )


def _with_kit(part: Part, reading: _Reading) -> Part:
    kit = reading.kits.get(part.number, {})
    return replace(part, kit=tuple((number, quantity) for number, (quantity, _) in sorted(kit.items())))


def _refuse_lost_parts(table: Table, reading: _Reading) -> None:
    """Say so where a sheet under another name looks like one of parts: it would be passed over in silence."""
    if "number" in table.headers and len(table.headers) >= _LIKE_A_KIND and (table.rows or table.problems):
        message = "holds part numbers, but its name is none of a part kind's sheet"
        accepted = ", ".join(kind.label for kind in KINDS)
        reading.problems.append(table.problem(table.header_row, "number", table.sheet, message, accepted))


def _read_kind(table: Table, kind: PartKind, reading: _Reading) -> None:
    reading.problems += table.problems
    for row in table.rows:
        number = row.values.get("number")
        if not isinstance(number, str) or not number:
            continue  # named already: a part number must be filled in
        if number in reading.where:
            other, place = reading.where[number]
            message = f"stands in sheet {other.sheet}, row {place + 1} already"
            reading.refuse(number, table.problem(row.place, "number", number, message, "a number of its own"))
            continue
        reading.where[number] = table, row.place
        values = row.values
        attributes = {
            a.name: value
            for a in kind.attributes
            if (value := values.get(a.name)) not in (None, "") and not isinstance(value, Decimal)
        }
        reading.extra[number] = {
            a.name: value for a in reading.own_fields if (value := values.get(a.name)) not in (None, "")
        }
        if row.refused:
            reading.bad.add(number)
        else:
            for problem in problems_of(attributes, kind):
                read = values.get(problem.attribute)
                reading.refuse(
                    number, table.problem(row.place, problem.attribute, read, problem.message, problem.accepted)
                )
        price, stock, preferred = (values.get(name) for name in ("list_price", "stock", "preferred"))
        reading.parts[number] = Part(
            number=number,
            kind=kind.name,
            description=_text(values, "description"),
            supplier=_text(values, "supplier"),
            finish=_text(values, "finish"),
            unit=_text(values, "unit") or _UNIT,
            list_price=price if isinstance(price, Decimal) else None,
            currency=_text(values, "currency"),
            superseded_by=_text(values, "superseded_by"),
            stock=float(stock) if isinstance(stock, int | float) else None,
            preferred=int(preferred) if isinstance(preferred, int) else None,
            attributes=attributes,
        )


def _text(values: Mapping[str, Value], name: str) -> str:
    value = values.get(name)
    return value if isinstance(value, str) else ""


def _read_kits(table: Table, reading: _Reading) -> None:
    reading.problems += table.problems
    for row in table.rows:
        number, contained = _text(row.values, "number"), _text(row.values, "contained")
        quantity = row.values.get("quantity")
        if row.refused:
            reading.bad.add(number)
            continue
        kit = reading.kits.setdefault(number, {})
        if number not in reading.parts:
            reading.refuse(number, table.problem(row.place, "number", number, _UNKNOWN, "a part number of it"))
        elif contained not in reading.parts and contained not in reading.known:
            reading.refuse(number, table.problem(row.place, "contained", contained, _UNKNOWN, "a part number of it"))
        elif contained in kit:
            message = f"is named for {number} in row {kit[contained][1] + 1} already"
            reading.refuse(number, table.problem(row.place, "contained", contained, message, "one row with the sum"))
        elif isinstance(quantity, int | float):
            kit[contained] = float(quantity), row.place
            reading.boxes.setdefault(number, (table, row.place))


def _check_successors(reading: _Reading) -> None:
    for number, part in reading.parts.items():
        successor = part.superseded_by
        if successor and successor not in reading.parts and successor not in reading.known:
            table, place = reading.where[number]
            problem = table.problem(place, "superseded_by", successor, _UNKNOWN, "a part number of it")
            reading.refuse(number, problem)


def _check_circles(reading: _Reading) -> None:
    """Refuse kits that contain themselves and parts that succeed themselves, directly or through others."""
    kits = {number: list(kit) for number, kit in reading.kits.items()}
    for number in _in_circles(kits):
        table, place = reading.boxes[number]
        message = "contains itself, directly or through what it contains"
        reading.refuse(number, table.problem(place, "number", number, message, "a kit without itself in it"))
    successors = {number: [part.superseded_by] for number, part in reading.parts.items() if part.superseded_by}
    for number in _in_circles(successors):
        table, place = reading.where[number]
        message = "is superseded by itself, directly or through its successors"
        successor = reading.parts[number].superseded_by
        reading.refuse(number, table.problem(place, "superseded_by", successor, message, "a later part"))


def _in_circles(links: Mapping[str, Iterable[str]]) -> list[str]:
    """Return the numbers from which links lead back to themselves."""
    found = []
    for start in links:
        seen: set[str] = set()
        ahead = list(links[start])
        while ahead and start not in seen:
            number = ahead.pop()
            if number not in seen:
                seen.add(number)
                ahead += links.get(number, ())
        if start in seen:
            found.append(start)
    return found
