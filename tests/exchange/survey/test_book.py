"""Reading surveys: spellings, rows that belong together, and everything that must be refused by name."""

import datetime as dt
import zipfile

import pytest
from openpyxl import Workbook

from hwsched.exchange.problems import InputRejected
from hwsched.exchange.survey.book import SurveyOptions, read_survey

HEADER = ["Mark", "Level", "Hand", "Size", "Thickness (in)", "Material", "Lock type", "B/S"]
ROW = ["101", "1", "LH", "3-0 x 7-0", "1 3/4", "HM", "mortise", '2-3/4"']


def book(path, *rows, sheet="Doors", before=()):
    made = Workbook()
    page = made.active
    page.title = sheet
    for row in (*before, *rows):
        page.append(list(row))
        for cell in page[page.max_row]:
            if cell.data_type == "f" and cell.column == 1:
                cell.data_type = "s"
    made.save(path)
    return path


def read(path, **options):
    return read_survey(path, SurveyOptions(**options))


@pytest.fixture
def path(tmp_path):
    return tmp_path / "survey.xlsx"


def test_one_row_an_opening(path):
    found = read(book(path, HEADER, ROW))
    (opening,) = found.openings
    assert opening.mark == "101"
    assert opening.leaves[0].facts == {
        "width_mm": pytest.approx(914.4), "height_mm": pytest.approx(2133.6), "thickness_mm": 44.45,
        "material": "hollow-metal", "position": "single",
    }  # fmt: skip
    assert opening.items[0].facts == {"kind": "lock", "lock_form": "mortise", "backset_mm": 69.85}
    assert opening.origin == "survey.xlsx, Doors, row 2"


def test_the_header_is_found_below_a_title(path):
    found = read(book(path, HEADER, ROW, before=(["Doors of the mill"], [], ["all lengths in inches"])))
    assert found.mapping[0].header_row == 4
    assert len(found.openings) == 1


@pytest.mark.parametrize("mark", ["0012", "9E4", "3-4", "../../x", "=1+1", "M 1/2"])
def test_marks_stay_text(path, mark):
    assert read(book(path, HEADER, [mark, *ROW[1:]])).openings[0].mark == mark


@pytest.mark.parametrize("mark", ["-", "n/a", "--"])
def test_a_stroke_in_place_of_a_mark_is_none_and_no_further_row_of_the_opening_above(path, mark):
    found = read(book(path, HEADER, ROW, [mark, *ROW[1:]]))
    assert [opening.mark for opening in found.openings] == [ROW[0]]
    assert "row 3: has no mark" in found.problems[0].describe()


def test_a_number_as_mark_is_the_number_as_it_is_read(path):
    assert read(book(path, HEADER, [12, *ROW[1:]])).openings[0].mark == "12"


def test_a_mark_that_the_spreadsheet_made_a_date_is_said_so(path):
    found = read(book(path, HEADER, [dt.datetime(2026, 3, 4), *ROW[1:]]))
    assert found.openings == ()
    assert "date" in found.problems[0].describe()
    assert "column A (Mark)" in found.problems[0].describe()


def test_a_fraction_that_became_a_date_is_said_so(path):
    found = read(book(path, HEADER, ["101", "1", "LH", "3-0 x 7-0", dt.datetime(2026, 3, 4), "HM", "mortise", "70"]))
    problem = found.problems[0]
    assert (problem.row, problem.column, problem.header) == (2, "E", "Thickness (in)")
    assert "3-4 or 3/4" in problem.message
    assert found.rejected == ("101",)


def test_rows_of_one_opening_join(path):
    header = [*HEADER, "Existing item", "Side", "From lock edge", "Above floor"]
    rows = (
        [*ROW, None, None, None, None],
        ["101", *[None] * 7, "closer", "inside", "30 in", "80 in"],
        [None, *[None] * 7, "lite", "both", "18 in", "60 in"],
    )
    (opening,) = read(book(path, header, *rows)).openings
    assert [item.facts["kind"] for item in opening.items] == ["lock", "closer", "lite"]
    assert opening.items[1].facts["face"] == "inside"


def test_a_pair_in_two_rows_and_in_one_size(path):
    header = ["Mark", "Type", "Leaf", "Size", "Thickness (in)"]
    rows = (["1", "pair", "active", "3-0 x 7-0", "1.75"], ["1", None, "inactive", "2-0 x 7-0", "1.75"])
    (opening,) = read(book(path, header, *rows)).openings
    assert [(leaf.position, leaf.facts["width_mm"]) for leaf in opening.leaves] == [
        ("active", pytest.approx(914.4)),
        ("inactive", pytest.approx(609.6)),
    ]
    other = book(path.with_name("b.xlsx"), ["Mark", "Type", "Size"], ["1", "pair", "2-3068 DBL"])
    assert [leaf.facts["width_mm"] for leaf in read(other).openings[0].leaves] == [pytest.approx(914.4)] * 2


def test_a_second_row_of_a_mark_that_adds_nothing_is_a_duplicate(path):
    found = read(book(path, HEADER, ROW, ["102", *ROW[1:]], ["101", "1", "LH", *[None] * 5]))
    assert [opening.mark for opening in found.openings] == ["102"]
    assert "row 2 already" in found.problems[0].message
    assert found.problems[0].row == 4


def test_rows_that_contradict_each_other_are_named(path):
    header = [*HEADER, "Existing item"]
    found = read(book(path, header, [*ROW, None], ["101", "1", "RH", *[None] * 5, "closer"]))
    assert found.openings == ()
    assert "hand RH" in found.problems[0].message


def test_a_bare_number_takes_the_columns_unit_and_the_reading_says_so(path):
    found = read(book(path, ["Mark", "Thickness (in)", "Backset"], ["1", 1.75, 70]), bare_unit="mm")
    (opening,) = found.openings
    assert (opening.leaves[0].facts["thickness_mm"], opening.items[0].facts["backset_mm"]) == (44.45, 70)
    said = [assumption.describe() for assumption in found.assumptions]
    assert any("Thickness (in)" in line and "inches (1)" in line for line in said)
    assert any("Backset" in line and "millimetres (1)" in line for line in said)


def test_a_bare_number_without_any_unit_is_refused(path):
    found = read(book(path, ["Mark", "Backset"], ["1", 70]))
    assert found.openings == ()
    assert "unit" in found.problems[0].describe()


def test_a_lost_digit_is_asked_about(path):
    rows = [[f"{n}", 2032] for n in range(6)] + [["x", 203]]
    found = read(book(path, ["Mark", "Leaf height"], *rows), bare_unit="mm")
    assert found.rejected == ("x",)
    assert "digit was lost" in found.problems[0].message
    assert len(read(path, bare_unit="mm", as_typed=True).openings) == 7


def test_columns_without_a_meaning_are_listed(path):
    found = read(book(path, [*HEADER, "Colour of the sky"], [*ROW, "grey"]))
    assert [(u.header, u.filled) for u in found.unmapped] == [("Colour of the sky", 1)]


def test_two_columns_for_one_fact_are_refused(path):
    found = read(book(path, [*HEADER, "Handing"], [*ROW, "RH"]))
    assert any("two columns carry the same fact" in problem.message for problem in found.problems)


def test_formulas_without_a_value_are_named(path):
    found = read(book(path, HEADER, ["101", "1", "LH", "3-0 x 7-0", "=1+0.75", "HM", "mortise", "70"]))
    assert any("formula without a stored value" in problem.message for problem in found.problems)


def test_merged_cells_group_the_header(path):
    made = Workbook()
    page = made.active
    page.append(["Mark", "Leaf", None, "Frame"])
    page.append([None, "Width", "Height", "Material"])
    page.append(["1", "36 in", "84 in", "HM"])
    page.merge_cells("B1:C1")
    made.save(path)
    (opening,) = read(path).openings
    assert opening.leaves[0].facts["width_mm"] == pytest.approx(914.4)
    assert opening.facts["frame_material"] == "hollow-metal"


def test_two_hundred_columns(path):
    found = read(book(path, [*HEADER, *(f"extra {n}" for n in range(200))], [*ROW, *["x"] * 200]))
    assert len(found.openings) == 1
    assert len(found.unmapped) == 200


@pytest.mark.slow
def test_a_million_empty_rows(path):
    made = Workbook()
    page = made.active
    page.append(HEADER)
    page.append(ROW)
    page.cell(1_000_000, 1).value = None
    page.row_dimensions[1_000_000].height = 20
    made.save(path)
    assert len(read(path).openings) == 1


def test_csv_with_semicolons(tmp_path):
    path = tmp_path / "survey.csv"
    path.write_text("Mark;Hand;Leaf width\n0012;LH;91,4 cm\n", encoding="cp1252")
    (opening,) = read(path).openings
    assert (opening.mark, opening.leaves[0].facts["width_mm"]) == ("0012", pytest.approx(914))


def damaged(path):
    book(path, HEADER, ROW)
    data = path.read_bytes()
    path.write_bytes(data[: len(data) // 2])


def no_zip(path):
    path.write_bytes(b"PK\x03\x04 this is no workbook")


def no_workbook(path):
    with zipfile.ZipFile(path, "w") as archive:
        archive.writestr("hello.txt", "hello")


def empty(path):
    path.write_bytes(b"")


def no_header(path):
    book(path, ["a", "b"], ["c", "d"])


def no_mark(path):
    book(path, HEADER[1:], ROW[1:])


@pytest.mark.parametrize("make", [damaged, no_zip, no_workbook, empty, no_header, no_mark])
def test_a_file_that_cannot_be_taken_is_refused_as_a_whole(path, make):
    make(path)
    with pytest.raises(InputRejected) as refused:
        read(path)
    assert "survey.xlsx" in str(refused.value)


def test_a_missing_file_and_a_missing_sheet(path):
    with pytest.raises(InputRejected, match="is not there"):
        read(path)
    with pytest.raises(InputRejected, match="has no sheet Lofts"):
        read(book(path, HEADER, ROW), sheet="Lofts")
