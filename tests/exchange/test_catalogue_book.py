"""The catalogue workbook: every kind survives a round trip; every wrong cell is named."""

import pytest
from openpyxl import load_workbook

from hwsched.cases import Part
from hwsched.catalogue import KINDS
from hwsched.exchange.catalogue_book import KIT_SHEET, read_catalogue, write_catalogue
from hwsched.exchange.problems import InputRejected


def value_of(attribute):
    if attribute.kind == "choice":
        return attribute.choices[-1].value
    if attribute.kind == "flag":
        return True
    if attribute.kind in ("length", "number", "integer"):
        low = attribute.low if attribute.low is not None else 0.0
        high = attribute.high if attribute.high is not None else low + 10
        middle = low + (high - low) / 4
        return int(middle) if attribute.kind == "integer" else round(middle, 3)
    return "0012"


def part_of(kind, number):
    return Part(
        number, kind.name, description=f"=A {kind.label}", supplier="+Somebody", finish="626", unit="EA",
        list_price=12.5, currency="USD",
        attributes={attribute.name: value_of(attribute) for attribute in kind.attributes},
    )  # fmt: skip


@pytest.fixture
def path(tmp_path):
    return tmp_path / "catalogue.xlsx"


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_every_kind_survives_a_round_trip(kind, path):
    part = part_of(kind, "9E4")
    write_catalogue(path, [part])
    read = read_catalogue(path)
    assert read.problems == ()
    assert read.parts == (part,)


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_a_wrong_cell_of_every_kind_is_named(kind, path):
    write_catalogue(path, [part_of(kind, "A1")])
    book = load_workbook(path)
    sheet = book[kind.label]
    column = next(n for n, a in enumerate(kind.attributes) if a.required) + 9
    sheet.cell(2, column).value = None
    book.save(path)
    read = read_catalogue(path)
    assert read.parts == ()
    problem = read.problems[0]
    assert (problem.sheet, problem.row) == (kind.label, 2)
    assert "filled in" in problem.message


def test_kits_supersession_and_numbers_are_checked(path):
    kind = next(kind for kind in KINDS if kind.name == "collar")
    one = part_of(kind, "C1")
    two = Part(**{**{name: getattr(one, name) for name in Part.__slots__}, "number": "C2", "kit": (("C1", 2.0),)})
    write_catalogue(path, [one, two])
    assert {part.number: part.kit for part in read_catalogue(path).parts} == {"C1": (), "C2": (("C1", 2.0),)}
    book = load_workbook(path)
    book[KIT_SHEET].append(["C1", "NOPE", 1])
    book[kind.label].append([cell.value for cell in book[kind.label][2]])
    book[kind.label].cell(3, 8).value = "GONE"
    book.save(path)
    text = "\n".join(problem.describe() for problem in read_catalogue(path).problems)
    assert "'NOPE'; is no part of this book" in text
    assert "'GONE'; is no part of this book" in text
    assert "stands in sheet Collars, row 2 already" in text


def test_units_in_cells_and_headers(path):
    kind = next(kind for kind in KINDS if kind.name == "collar")
    write_catalogue(path, [part_of(kind, "C1")])
    book = load_workbook(path)
    sheet = book[kind.label]
    sheet.cell(1, 9).value = "Height [in]"
    sheet.cell(2, 9).value = 0.25
    sheet.cell(2, 10).value = '1 1/4"'
    book.save(path)
    (part,) = read_catalogue(path).parts
    assert part.attributes["height_mm"] == pytest.approx(6.35)
    assert part.attributes["inner_diameter_mm"] == pytest.approx(31.75)


def test_a_book_without_kinds_is_refused(path):
    from openpyxl import Workbook

    Workbook().save(path)
    with pytest.raises(InputRejected, match="no sheet of a part kind"):
        read_catalogue(path)
