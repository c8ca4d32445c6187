"""The catalogue workbook: every kind survives a round trip; every wrong cell is named."""

import datetime as dt
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest
from openpyxl import Workbook, load_workbook

from hwsched.attributes import Attribute, Choice
from hwsched.catalogue import KINDS, kind_of
from hwsched.catalogue.traits.entry import ENTRY, ON_HAND
from hwsched.exchange.parts.catalogue_book import KIT_SHEET, read_catalogue, write_catalogue
from hwsched.exchange.problems import InputRejected, column_letter
from hwsched.paths import SAMPLE
from hwsched.quantities import LENGTH_STYLES
from hwsched.values import Part

COLLAR = kind_of("collar")
OWN = (
    Attribute("shelf", "Shelf"),
    Attribute("counted", "Counted", "date"),
    Attribute("grade", "Grade", "choice", choices=(Choice("one", "Grade one"), Choice("two", "Grade two"))),
)


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


def values_of(kind):
    found = {attribute.name: value_of(attribute) for attribute in kind.attributes}
    if "screw_places" in found:
        # One for each screw.
        found["screw_places"] = "; ".join(f"6, {6 + 10 * count}" for count in range(found["screws"]))
    return found


def part_of(kind, number, **changed):
    return Part(
        **{
            "number": number, "kind": kind.name, "description": f"=A {kind.label}", "supplier": "+Somebody",
            "finish": "626", "unit": "EA", "list_price": 12.5, "currency": "USD",
            "attributes": values_of(kind), **changed,
        }
    )  # fmt: skip


def column_of(kind, name):
    return [attribute.name for attribute in (*ENTRY, *kind.attributes)].index(name) + 1


def edit(path, change):
    """Change the workbook as a person would, in place."""
    book = load_workbook(path)
    change(book)
    book.save(path)


def said(path, **options):
    return [problem.describe().partition(", sheet ")[2] for problem in read_catalogue(path, **options).problems]


@pytest.fixture
def path(tmp_path):
    return tmp_path / "catalogue.xlsx"


@pytest.fixture(scope="module")
def few_sheets(tmp_path_factory):
    """Return a workbook of three collars, without the sheets of other kinds: it opens faster."""
    path = tmp_path_factory.mktemp("few") / "catalogue.xlsx"
    write_catalogue(path, [part_of(COLLAR, number) for number in ("C1", "C2", "C3")])
    book = load_workbook(path)
    for kind in KINDS:
        if kind.name not in ("collar", "ring"):
            del book[kind.label]
    book.save(path)
    return path.read_bytes()


@pytest.fixture
def collars(path, few_sheets):
    path.write_bytes(few_sheets)
    return path


def bare(part):
    """Return the same part with nothing but what must be known."""
    known = {a.name: part.attributes[a.name] for a in kind_of(part.kind).attributes if a.required}
    return replace(
        part, number=f"{part.number}-bare", supplier="", finish="", list_price=None, currency="", attributes=known
    )


WHOLE = {kind.name: part_of(kind, f"9E{n}") for n, kind in enumerate(KINDS)}


@pytest.fixture(scope="module")
def round_trips(tmp_path_factory):
    """Return, by length style, all kinds as they come back, and as they come back from what was written of that."""
    folder = tmp_path_factory.mktemp("trips")
    trips = {}
    for style in LENGTH_STYLES:
        first, again = folder / f"{style}.xlsx", folder / f"{style}-again.xlsx"
        write_catalogue(first, [one for part in WHOLE.values() for one in (part, bare(part))], style)
        before = first.read_bytes()
        read = read_catalogue(first)
        assert first.read_bytes() == before
        write_catalogue(again, read.parts, style)
        trips[style] = read, read_catalogue(again)
    return trips


@pytest.fixture(scope="module")
def spoilt(tmp_path_factory):
    """Return what is read of a book with every fact of each first part missing, and every fact of each second wrong."""
    path = tmp_path_factory.mktemp("spoilt") / "catalogue.xlsx"
    write_catalogue(path, [part_of(kind, f"{n}-{kind.name}") for kind in KINDS for n in (1, 2, 3)])
    book = load_workbook(path)
    for kind in KINDS:
        for attribute in kind.attributes:
            book[kind.label].cell(2, column_of(kind, attribute.name)).value = None
            if attribute.kind != "text":
                book[kind.label].cell(3, column_of(kind, attribute.name)).value = "no such thing"
    book.save(path)
    return read_catalogue(path)


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
class TestEveryKind:
    @pytest.mark.parametrize("style", LENGTH_STYLES)
    def test_it_survives_a_round_trip(self, kind, style, round_trips):
        first, again = round_trips[style]
        assert first.problems == again.problems == ()
        for read in (first, again):
            found = [part for part in read.parts if part.kind == kind.name]
            assert found == [WHOLE[kind.name], bare(WHOLE[kind.name])]

    def test_each_missing_fact_is_named_by_its_cell(self, kind, spoilt):
        found = [
            (p.column, p.header.partition(" [")[0]) for p in spoilt.problems if (p.sheet, p.row) == (kind.label, 2)
        ]
        required = [a for a in kind.attributes if a.required]
        assert found == [(column_letter(column_of(kind, a.name) - 1), a.label) for a in required]

    def test_each_impossible_cell_is_named(self, kind, spoilt):
        found = [p for p in spoilt.problems if (p.sheet, p.row) == (kind.label, 3)]
        assert [p.header.partition(" [")[0] for p in found] == [a.label for a in kind.attributes if a.kind != "text"]
        assert all(p.read == "no such thing" and p.message and p.accepted for p in found)

    def test_rows_beside_them_come_in(self, kind, spoilt):
        left_out = {p.row - 1 for p in spoilt.problems if p.sheet == kind.label}
        kept = [part.number for part in spoilt.parts if part.kind == kind.name]
        assert kept == [f"{n}-{kind.name}" for n in (1, 2, 3) if n not in left_out]
        assert kept[-1].startswith("3")


def test_the_sample_comes_back_as_it_was(path):
    read = read_catalogue(SAMPLE / "catalogue.xlsx")
    assert len(read.parts) >= 80  # asked for by the main job
    assert read.problems == ()
    for style in LENGTH_STYLES:
        write_catalogue(path, read.parts, style)
        assert read_catalogue(path) == read


@pytest.mark.parametrize("style", LENGTH_STYLES)
def test_lengths_come_back_to_their_last_digit(path, style):
    lengths = [44.45, 0.3, 0.396875, 12.7, 50.0, 33.333333, 0.000001, 0.0, 12, 59.999999]
    parts = [part_of(COLLAR, f"C{n:02d}", attributes={"height_mm": mm}) for n, mm in enumerate(lengths)]
    write_catalogue(path, parts, style)
    assert read_catalogue(path).parts == tuple(parts)


@pytest.mark.parametrize("style", LENGTH_STYLES)
def test_what_is_finer_than_lengths_are_read_comes_back_to_a_millionth(path, style):
    lengths = [0.1 + 0.2, 1 / 3, 25.4 / 3, 59.99999999999999]
    parts = [part_of(COLLAR, f"C{n:02d}", attributes={"height_mm": mm}) for n, mm in enumerate(lengths)]
    write_catalogue(path, parts, style)
    read = [part.attributes["height_mm"] for part in read_catalogue(path).parts]
    assert read == pytest.approx(lengths, abs=1e-6, rel=0)


def test_numbers_come_back_to_their_last_digit(path):
    kind = kind_of("power-supply")
    part = part_of(kind, "P1", list_price=0.1 + 0.2, attributes={"output_v": 0.1 + 11.0 + 0.2, "output_a": 10 / 3})
    write_catalogue(path, [part])
    assert read_catalogue(path).parts == (part,)


def priced(path, *cells):
    """Prices read from a sheet whose cells hold these."""
    write_catalogue(path, [part_of(COLLAR, f"C{n:02d}", list_price=None) for n in range(len(cells))])
    column = column_of(COLLAR, "list_price")

    def change(book):
        for row, cell in enumerate(cells, start=2):
            book[COLLAR.label].cell(row, column, cell)

    edit(path, change)
    return read_catalogue(path)


def test_prices_are_exact(path):
    """Numbers of the spreadsheet by their shortest text, text digit for digit."""
    read = priced(path, 12.1, 0.1 + 0.2, 12, "12.10", "1,234.5", "0.1234567890123456789012345", "98,5", 0)
    assert read.problems == ()
    assert [part.list_price for part in read.parts] == [
        Decimal(text)
        for text in (
            "12.1", "0.3000000000000000", "12", "12.1", "1234.5", "0.1234567890123456789012345", "98.5", "0",
        )
    ]  # fmt: skip
    assert all(type(part.list_price) is Decimal for part in read.parts)


@pytest.mark.parametrize("cell", ["dear", "1e13", 1e13, "0." + "1" * 101, -1, "-0.01", True, "12.50 USD", "1,000"])
def test_a_price_that_cannot_be_is_named(path, cell):
    read = priced(path, cell)
    assert read.parts == ()
    assert [(p.row, p.header) for p in read.problems] == [(2, "List price")]
    assert read.problems[0].accepted


def test_prices_come_back_to_their_last_digit(path):
    prices = ["12.1", "0.30000000000000004", "0.1234567890123456789012345", "999999999999.99", "0.00", "1E+3"]
    parts = [part_of(COLLAR, f"C{n}", list_price=Decimal(price)) for n, price in enumerate(prices)]
    write_catalogue(path, parts)
    assert read_catalogue(path).parts == tuple(parts)


def test_part_numbers_stay_as_they_are(path):
    numbers = sorted(["0012", "12", "9E4", "3-4", "=1+1", "-", "@a", "../../x", "A/B:C", "日本 ½", "n/a", "TRUE"])
    parts = [
        part_of(COLLAR, number, description="first\nsecond", superseded_by="0012" if number != "0012" else "",
                kit=(("=1+1", 0.5),) if number != "=1+1" else ())
        for number in numbers
    ]  # fmt: skip
    write_catalogue(path, parts)
    assert read_catalogue(path).parts == tuple(parts)


def test_sheets_follow_from_the_declaration(path):
    write_catalogue(path, [])
    book = load_workbook(path)
    assert book.sheetnames == ["About", "Words", *(kind.label for kind in KINDS), KIT_SHEET]
    assert book["Words"].sheet_state == "hidden"
    for kind in KINDS:
        sheet = book[kind.label]
        assert len([c for c in sheet[1] if c.value]) == len(ENTRY) + len(kind.attributes) + len(ON_HAND)
        assert all(cell.comment for cell in sheet[1])
        assert sheet.freeze_panes == "B2"
        lists = sum(a.kind in ("choice", "flag") for a in (*ENTRY, *kind.attributes, *ON_HAND))
        assert len(sheet.data_validations.dataValidation) == lists
    assert read_catalogue(path).parts == ()
    assert read_catalogue(path).problems == ()


def test_headers_by_name_synonym_order_and_unit(path):
    book = Workbook()
    book.active.title = "COLLAR"
    for row in (
        ["Parts of this year"],
        [],
        ["Outer_Diameter_mm", "Height (in.)", "DESC", "Cat. No."],
        ['1 1/4"', 0.25, "Collar", 12],
        [None, "7 mm", "Collar", "0013"],
    ):
        book.active.append(row)
    book.save(path)
    one, two = read_catalogue(path).parts
    assert (one.number, one.unit, two.number) == ("12", "EA", "0013")
    assert one.attributes == {"height_mm": pytest.approx(6.35), "outer_diameter_mm": pytest.approx(31.75)}
    assert two.attributes == {"height_mm": 7.0}


def test_units_of_other_numbers(path):
    kind = kind_of("surface-unit")
    write_catalogue(path, [part_of(kind, "U1")])

    def change(book):
        sheet, column = book[kind.label], column_of(kind, "standing_ua")
        sheet.cell(1, column).value = "Standing current [mA]"
        sheet.cell(2, column).value = 0.045
        sheet.cell(2, column_of(kind, "operation_ma")).value = "0.12 A"
        sheet.cell(2, column_of(kind, "temperature_low_c")).value = "14 °F"

    edit(path, change)
    (part,) = read_catalogue(path).parts
    assert [part.attributes[n] for n in ("standing_ua", "operation_ma", "temperature_low_c")] == [45.0, 120.0, -10.0]


class TestNumbersAndReferences:
    def test_one_number_twice_in_a_sheet_and_in_the_book(self, collars):
        def change(book):
            book["Collars"].cell(3, 1).value = "C1"
            book["Blocking rings"].append(["C1", "Ring", *[None] * 6, 3])

        edit(collars, change)
        accepted = "stands in sheet Collars, row 2 already; accepted: a number of its own"
        assert said(collars) == [
            f"Collars, row 3, column A (Part number): read 'C1'; {accepted}",
            f"Blocking rings, row 2, column A (Part number): read 'C1'; {accepted}",
        ]
        assert [part.number for part in read_catalogue(collars).parts] == ["C3"]

    def test_kits_come_back(self, path):
        parts = [part_of(COLLAR, "C1"), part_of(COLLAR, "C2", kit=(("C1", 2.0), ("C3", 0.5))), part_of(COLLAR, "C3")]
        write_catalogue(path, parts)
        assert read_catalogue(path).parts == tuple(parts)

    @pytest.mark.parametrize(
        ("line", "problem"),
        [
            (["C1", "NOPE", 1], "column B (Contains): read 'NOPE'; is no part of this book; accepted: a part"),
            (["NOPE", "C1", 1], "column A (Part number): read 'NOPE'; is no part of this book; accepted: a part"),
            (["C1", "C1", 1], "column A (Part number): read 'C1'; contains itself, directly or through what it"),
            (["C1", "C2", "some"], "column C (Quantity): read 'some'; is no plain number"),
            (["C1", "C2", 0], "column C (Quantity): read '0'; 0 is less than can be true"),
            (["C1", None, 1], "column B (Contains): empty; must be filled in"),
        ],
    )  # fmt: skip
    def test_a_wrong_line_of_a_kit(self, collars, line, problem):
        edit(collars, lambda book: book[KIT_SHEET].append(line))
        (found,) = said(collars)
        assert found.startswith(f"Kit contents, row 2, {problem}")
        kept = {part.number for part in read_catalogue(collars).parts}
        assert kept == {"C1", "C2", "C3"} - {line[0]}

    def test_a_kit_line_twice(self, collars):
        def change(book):
            book[KIT_SHEET].append(["C1", "C2", 1])
            book[KIT_SHEET].append(["C1", "C2", 3])

        edit(collars, change)
        (found,) = said(collars)
        assert "is named for C1 in row 2 already" in found

    def test_kits_in_a_circle(self, collars):
        def change(book):
            for line in (["C1", "C2", 1], ["C2", "C3", 1], ["C3", "C1", 1]):
                book[KIT_SHEET].append(line)

        edit(collars, change)
        assert len(said(collars)) == 3
        assert read_catalogue(collars).parts == ()

    def test_successors(self, collars):
        def change(book):
            for row, successor in enumerate(("C2", "GONE", "C3"), start=2):
                book["Collars"].cell(row, 8).value = successor

        edit(collars, change)
        assert said(collars) == [
            "Collars, row 3, column H (Superseded by): read 'GONE'; is no part of this book; "
            "accepted: a part number of it",
            "Collars, row 4, column H (Superseded by): read 'C3'; is superseded by itself, directly or through its "
            "successors; accepted: a later part",
        ]
        (part,) = read_catalogue(collars).parts
        assert (part.number, part.superseded_by) == ("C1", "C2")

    def test_what_the_project_knows_may_be_referred_to(self, collars):
        def change(book):
            book["Collars"].cell(2, 8).value = "KNOWN"
            book[KIT_SHEET].append(["C2", "KNOWN", 1])

        edit(collars, change)
        assert len(said(collars)) == 2
        assert said(collars, known={"KNOWN"}) == []


class TestOddSheets:
    def test_an_unknown_column_is_named_with_the_nearest(self, collars):
        def change(book):
            book["Collars"].cell(1, column_of(COLLAR, "outer_diameter_mm")).value = "Outer diametre [mm]"

        edit(collars, change)
        (found,) = said(collars)
        assert found == (
            "Collars, row 1, column K (Outer diametre [mm]): read 'Outer diametre [mm]'; is no column of this sheet; "
            "accepted: Outer diameter"
        )

    def test_an_empty_column_more_is_nothing(self, collars):
        edit(collars, lambda book: setattr(book["Collars"].cell(1, 12), "value", "Remarks"))
        assert said(collars) == []

    def test_a_value_without_a_header(self, collars):
        edit(collars, lambda book: setattr(book["Collars"].cell(3, 14), "value", "hello"))
        (found,) = said(collars)
        assert found.startswith("Collars, row 3, column N: read 'hello'; has no header above it")

    def test_a_column_twice(self, collars):
        edit(collars, lambda book: setattr(book["Collars"].cell(1, 12), "value", "height"))
        assert "column L (height): read 'height'; stands twice" in said(collars)[0]

    def test_a_column_that_is_missing(self, collars):
        edit(collars, lambda book: book["Collars"].delete_cols(column_of(COLLAR, "height_mm")))
        (found,) = said(collars)
        assert found == "Collars, row 1: has no column Height; accepted: every column that must be filled in"

    def test_a_sheet_without_headers(self, collars):
        edit(collars, lambda book: book["Collars"].delete_rows(1))
        (found,) = said(collars)
        assert found.startswith("Collars, row 1: has no row of headers that are known; accepted: headers Part number")

    def test_a_row_without_a_number(self, collars):
        edit(collars, lambda book: setattr(book["Collars"].cell(3, 1), "value", None))
        (found,) = said(collars)
        assert found.startswith("Collars, row 3, column A (Part number): empty; must be filled in")
        assert [part.number for part in read_catalogue(collars).parts] == ["C1", "C3"]

    def test_empty_rows_between_are_nothing(self, collars):
        edit(collars, lambda book: book["Collars"].insert_rows(3, 4))
        assert said(collars) == []
        assert len(read_catalogue(collars).parts) == 3

    def test_formulas_without_value_and_errors(self, collars):
        def change(book):
            book["Collars"].cell(2, 9).value = "=1+1"
            book["Collars"].cell(3, 9).value = "#N/A"
            book["Collars"].cell(3, 9).data_type = "e"

        edit(collars, change)
        one, two = said(collars)
        assert one.startswith("Collars, row 2, column I (Height [mm]): empty; holds a formula without a stored value")
        assert two.startswith("Collars, row 3, column I (Height [mm]): empty; holds #N/A")
        assert [part.number for part in read_catalogue(collars).parts] == ["C3"]

    def test_dates_in_place_of_fractions(self, collars):
        edit(collars, lambda book: setattr(book["Collars"].cell(2, 9), "value", dt.date(2024, 3, 4)))
        (found,) = said(collars)
        assert "read '2024-03-04'; is a date: a spreadsheet turned 3-4 or 3/4" in found

    def test_merged_cells(self, collars):
        edit(collars, lambda book: book["Collars"].merge_cells("B3:B4"))
        (found, *more) = said(collars)
        assert found.startswith("Collars, row 3, column B (Description): empty; is merged (B3:B4)")
        assert "row 4, column B (Description): empty; must be filled in" in more[0]
        assert [part.number for part in read_catalogue(collars).parts] == ["C1"]

    def test_parts_on_a_sheet_of_another_name_are_not_passed_over(self, collars):
        edit(collars, lambda book: setattr(book["Collars"], "title", "Collars new"))
        (found,) = said(collars)
        assert "read 'Collars new'; holds part numbers, but its name is none of a part kind's sheet" in found

    def test_other_sheets_are_left_alone(self, collars):
        edit(collars, lambda book: book.create_sheet("Phone list").append(["Name", "Number"]))
        assert said(collars) == []

    def test_attributes_that_contradict(self, path):
        kind = kind_of("bored-lever-lock")
        write_catalogue(path, [part_of(kind, "B1")])
        edit(path, lambda book: setattr(book[kind.label].cell(2, column_of(kind, "leaf_high_mm")), "value", 20))
        (found,) = said(path)
        assert "(Greatest leaf thickness [mm]): read '20'; Greatest leaf thickness (20 mm) is less than" in found


class TestOwnFields:
    def test_they_travel_with_the_parts(self, path):
        part = part_of(COLLAR, "C1")
        extra = {"C1": {"shelf": "A-12", "counted": "2031-03-04", "grade": "two"}}
        write_catalogue(path, [part], own_fields=OWN, extra=extra)
        read = read_catalogue(path, own_fields=OWN)
        assert read.problems == ()
        assert read.parts == (part,)
        assert read.extra == extra

    def test_without_their_declaration_they_are_named(self, path):
        write_catalogue(path, [part_of(COLLAR, "C1")], own_fields=OWN, extra={"C1": {"shelf": "A-12"}})
        (found,) = said(path)
        assert "column N (Shelf): read 'Shelf'; is no column of this sheet" in found


class TestWritingRefuses:
    @pytest.mark.parametrize(
        ("changed", "says"),
        [
            ({"kind": "trapdoor"}, "kind trapdoor is not declared"),
            ({"attributes": {"height_mm": 5.0, "colour": "red"}}, "colour not declared"),
            ({"number": " C1"}, "Part number cannot be ' C1'"),
            ({"description": "unknown"}, "Description cannot be 'unknown'"),
            ({"description": "a\x07b"}, "Description cannot be"),
        ],
    )
    def test_what_would_be_lost(self, path, changed, says):
        with pytest.raises(ValueError, match=says):
            write_catalogue(path, [replace(part_of(COLLAR, "C1"), **changed)])
        assert not path.exists()

    @pytest.mark.parametrize("style", LENGTH_STYLES)
    def test_but_not_what_is_accepted_no_more(self, path, style):
        write_catalogue(path, [part_of(COLLAR, "C1", attributes={"height_mm": 5080.0})], style)
        (found,) = said(path)
        assert '5080 mm (200") is more than can be true' in found


class TestFiles:
    def test_a_book_without_kinds(self, path):
        Workbook().save(path)
        with pytest.raises(InputRejected, match="no sheet of a part kind; accepted: sheets named Mortise cylinders"):
            read_catalogue(path)

    def test_a_missing_file(self):
        with pytest.raises(InputRejected, match="does not exist"):
            read_catalogue(Path("/nowhere/catalogue.xlsx"))

    @pytest.mark.parametrize("share", [0.3, 0.95])
    def test_a_damaged_one(self, collars, share):
        collars.write_bytes(collars.read_bytes()[: int(collars.stat().st_size * share)])
        with pytest.raises(InputRejected, match="is damaged"):
            read_catalogue(collars)


def test_sheets_that_are_not_read_are_named(tmp_path):
    path = tmp_path / "c.xlsx"
    write_catalogue(path, [part_of(COLLAR, "C1")])
    book = load_workbook(path)
    book.create_sheet("Prices of last year").append(["asked for", 12.5])
    book.save(path)
    assert read_catalogue(path).unread == ("Prices of last year",)
