"""Where the header stands and which column carries which fact."""

import pytest

from hwsched.exchange.survey.book import SurveyOptions, read_survey
from hwsched.exchange.survey.mapping import RememberedMapping
from tests.exchange.surveys import one, read, said, write

PLAIN = ["Mark", "Width", "Height", "Thickness"]
DOOR = ["1", 36, 84, 1.75]


def targets(found):
    return [column.target.text() for column in found.mapping[0].columns]


def test_a_header_below_many_title_rows_and_empty_rows(tmp_path):
    rows = [["Survey of doors"], *[[]] * 12, ["walked by two people"], [], PLAIN, DOOR]
    found = read(tmp_path, *rows)
    assert found.mapping[0].header_row == 16
    assert one(found).origin == "survey.xlsx, Doors, row 17"


def test_a_row_of_data_is_no_second_header(tmp_path):
    found = read(tmp_path, ["Mark", "Location", "Width"], ["Door", "Exit", 36], ["2", "Lobby", 36])
    assert found.mapping[0].header_row == 1
    assert [opening.mark for opening in found.openings] == ["Door", "2"]


def test_headings_merged_over_columns(tmp_path):
    rows = (
        ["Mark", "Form", "Active leaf", None, "Inactive leaf", None, "Frame"],
        [None, None, "Width", "Height", "Width", "Height", "Material"],
        ["1", "pair", 36, 84, 24, 84, "HM"],
    )
    opening = one(read(tmp_path, *rows, merged=["A1:A2", "B1:B2", "C1:D1", "E1:F1"]))
    assert [leaf.facts["width_mm"] for leaf in opening.leaves] == [pytest.approx(914.4), pytest.approx(609.6)]
    assert opening.facts["frame_material"] == "hollow-metal"


def test_headings_typed_over_the_first_of_their_columns(tmp_path):
    rows = (
        ["Mark", "Lock", None, "Leaf", None],
        [None, "Form", "Backset", "Width", "Height"],
        ["1", "rim", 2.375, 36, 84],
    )
    opening = one(read(tmp_path, *rows))
    assert opening.items[0].facts["backset_mm"] == pytest.approx(60.325)
    assert opening.leaves[0].facts["height_mm"] == pytest.approx(2133.6)


def test_a_row_of_units_below_the_names(tmp_path):
    rows = (["Mark", "Width", "Backset"], [None, "(mm)", "(in)"], ["1", 914, 2.75])
    opening = one(read(tmp_path, *rows))
    assert opening.leaves[0].facts["width_mm"] == 914
    assert opening.items[0].facts["backset_mm"] == pytest.approx(69.85)


def test_width_among_the_columns_of_an_item_is_the_items(tmp_path):
    header = ["Mark", "Width", "Height", "Item", "Face", "X", "Y", "Width", "Height"]
    opening = one(read(tmp_path, header, ["1", 36, 84, "lite", "both", 18, 60, 24, 34]))
    assert opening.leaves[0].facts["width_mm"] == pytest.approx(914.4)
    assert opening.items[0].facts["width_mm"] == pytest.approx(609.6)


def test_two_columns_for_one_fact_name_each_other_and_nothing_is_read(tmp_path):
    found = read(tmp_path, ["Mark", "Hand", "Width", "Swing"], ["1", "LH", 36, "RH"])
    assert "column D (Swing)" in said(found)
    assert "column B (Hand) too" in said(found)
    assert found.openings == ()


def test_a_length_in_kilograms_is_asked_about_and_a_remark_is_not(tmp_path):
    assert "in kg" in said(read(tmp_path, ["Mark", "Width (kg)"], ["1", 36]))
    assert one(read(tmp_path, ["Mark", "Undercut (min)", "Rating (min)"], ["1", 0.5, "45"])).facts["rating"] == "45"


def test_the_user_says_what_a_column_is(tmp_path):
    rows = (["Mark", "Breite", "Notes", "Height"], ["1", 36, "seen", 84])
    found = read(tmp_path, *rows, columns={"breite": "leaf.width_mm", "column C": "", "Height": "leaf.height_mm"})
    assert targets(found) == ["opening.mark", "leaf.width_mm", "leaf.height_mm"]
    assert [(u.column, u.left_out) for u in found.unmapped] == [("C", True)]
    assert "which is no fact" in said(read(tmp_path, *rows, columns={"Breite": "leaf.breadth"}))


def test_a_mapping_is_remembered_by_its_header(tmp_path):
    rows = (["Mark", "Breite", "Notes", "Colour"], ["1", 914, "seen", "red"])
    first = read(tmp_path, *rows, columns={"Breite": "leaf.width_mm", "Notes": ""}, bare_unit="mm")
    kept = {first.mapping[0].fingerprint: first.mapping[0].remembered("mm")}
    assert kept[first.mapping[0].fingerprint] == RememberedMapping(
        {"mark": "opening.mark", "breite": "leaf.width_mm", "notes": ""},
        "mm",
        headers=("mark", "breite", "notes", "colour"),
    )
    again = read(tmp_path, *rows, remembered=kept, bare_unit=None, usual_unit="in")
    assert targets(again) == ["opening.mark", "leaf.width_mm"]
    # The unit of the last import goes before the project's, and one asked for now before both.
    assert "millimetres" in again.assumptions[0].describe()
    assert one(again).leaves[0].facts["width_mm"] == 914
    assert "23215.6 mm" in said(read(tmp_path, *rows, remembered=kept, bare_unit="in"))


def test_several_sheets_of_one_header_are_read_together_and_others_are_named(tmp_path):
    path = write(
        tmp_path / "s.xlsx",
        {
            "East": [PLAIN, DOOR],
            "West": [PLAIN, ["2", *DOOR[1:]]],
            "Old": [["Door no", "Leaf width", "Hand", "Rating"], ["9", 36, "LH", "none"]],
            "Contacts": [["Name", "Telephone"], ["somebody", "1"]],
        },
    )
    found = read_survey(path, SurveyOptions(bare_unit="in"))
    assert [opening.mark for opening in found.openings] == ["1", "2"]
    assert found.passed_over == ("sheet Old: looks like openings too; not read, its header is another one",)
    assert found.other_sheets == ("Contacts",)
    only = read_survey(path, SurveyOptions(bare_unit="in", sheet="Old"))
    assert [opening.mark for opening in only.openings] == ["9"]


def test_a_list_of_items_joins_the_openings_by_mark(tmp_path):
    path = write(
        tmp_path / "s.xlsx",
        {
            "Doors": [[*PLAIN, "Lock type", "Backset"], [*DOOR, "mortise", 2.75], ["2", *DOOR[1:], "rim", 2.375]],
            "Hardware": [
                ["Mark", "Item", "Leaf", "Face", "Width", "Height"],
                ["1", "closer", None, "inside", 10, 3],
                [None, "lite", None, "both", 5, 26],
                ["3", "closer", None, None, None, None],
            ],
        },
    )
    found = read_survey(path, SurveyOptions(bare_unit="in"))
    assert [item.facts["kind"] for item in found.openings[0].items] == ["lock", "closer", "lite"]
    assert found.openings[0].items[2].facts["width_mm"] == pytest.approx(127)
    assert "sheet Hardware, row 4: names the mark 3" in said(found)
    only = read_survey(path, SurveyOptions(bare_unit="in", sheet="Doors"))
    assert only.problems == ()
    assert only.passed_over == ("1 rows in lists of items: their openings stand on another sheet",)


def test_a_hidden_sheet_is_read_only_by_name(tmp_path):
    from openpyxl import load_workbook

    path = write(tmp_path / "s.xlsx", {"Doors": [PLAIN, DOOR], "Draft": [PLAIN, ["2", *DOOR[1:]]]})
    book = load_workbook(path)
    book["Draft"].sheet_state = "hidden"
    book.save(path)
    assert [o.mark for o in read_survey(path, SurveyOptions(bare_unit="in")).openings] == ["1"]
    assert [o.mark for o in read_survey(path, SurveyOptions(bare_unit="in", sheet="Draft")).openings] == ["2"]


def test_a_column_is_the_mark_because_a_person_says_so(tmp_path):
    rows = (["X", "Width", "Height"], ["D-1", 36, 84], ["D-2", 32, 84])
    found = read(tmp_path, *rows, columns={"X": "opening.mark"})
    assert [opening.mark for opening in found.openings] == ["D-1", "D-2"]
    found = read(tmp_path, *rows, columns={"column A": "opening.mark"})
    assert [opening.mark for opening in found.openings] == ["D-1", "D-2"]


def test_a_person_s_word_goes_before_another_heading_of_the_same_fact(tmp_path):
    rows = (["Door no", "X", "Width"], ["a", "D-1", 36], ["b", "D-2", 32])
    found = read(tmp_path, *rows, columns={"X": "opening.mark"})
    assert said(found) == ""
    assert [opening.mark for opening in found.openings] == ["D-1", "D-2"]
    assert [(column.header, column.filled) for column in found.unmapped] == [("Door no", 2)]


def test_a_header_row_is_taken_as_a_person_says(tmp_path):
    rows = (["Door", "Width", "Notes"], ["first floor", "", ""], ["No", "Q", "R"], ["D-1", 36, 84])
    found = read(tmp_path, *rows, header_row=3, columns={"Q": "leaf.width_mm", "column C": "leaf.height_mm"})
    assert found.mapping[0].header_row == 3
    assert one(found).leaves[0].facts["height_mm"] == pytest.approx(2133.6)


@pytest.mark.parametrize("told", [{"columns": {"Widht": "leaf.width_mm"}}, {"dashes": {"Rating": "none"}}])
def test_what_is_said_of_a_column_that_is_not_there_is_refused(tmp_path, told):
    found = read(tmp_path, PLAIN, DOOR, **told)
    (header,) = next(iter(told.values()))
    assert f"has no column {header}, of which something is said; accepted: Mark, Width, Height" in said(found)


def remembered_of(found):
    return {found.mapping[0].fingerprint: found.mapping[0].remembered()}


def test_one_more_column_costs_no_other_its_meaning(tmp_path):
    rows = (["Mark", "Nominal", "Label text"], ["1", 36, "-"], ["2", 32, "90"])
    told = {"columns": {"Nominal": "leaf.width_mm", "Label text": "opening.rating"}, "dashes": {"Label text": "none"}}
    first = read(tmp_path, *rows, **told)
    wider = (["Mark", "Wing", "Nominal", "Colour", "Label text"], ["1", "N", 30, "red", "-"], ["2", "N", 30, "red", 20])
    second = read(tmp_path, *wider, remembered=remembered_of(first))
    assert [opening.facts["rating"] for opening in second.openings] == ["none", "20"]
    assert {opening.leaves[0].facts["width_mm"] for opening in second.openings} == {762}
    lines = [assumption.describe() for assumption in second.assumptions]
    assert "sheet Doors, column C (Nominal): taken as Leaf width, as at an earlier import (2)" in lines


def test_of_two_columns_with_one_heading_each_keeps_its_meaning_when_one_is_added_before(tmp_path):
    told = {"columns": {"column B": "leaf.width_mm", "column D": "leaf.height_mm"}}
    first = read(tmp_path, ["Mark", "Size 1", "Colour", "Size 1"], ["1", 36, "red", 84], **told)
    moved = (["Mark", "Size 1", "Coat", "Size 1", "Colour", "Size 1"], ["1", "big", "no", 36, "red", 84])
    second = read(tmp_path, *moved, remembered=remembered_of(first))
    assert [c.header for c in second.mapping[0].columns] == ["Mark", "Size 1", "Size 1"]
    assert one(second).leaves[0].facts["width_mm"] == pytest.approx(914.4)
    assert one(second).leaves[0].facts["height_mm"] == pytest.approx(2133.6)


def test_a_remembered_column_that_is_gone_is_named(tmp_path):
    first = read(tmp_path, ["Mark", "Nominal", "Height"], ["1", 36, 84], columns={"Nominal": "leaf.width_mm"})
    second = read(tmp_path, ["Mark", "Height", "Level"], ["1", 84, "1"], remembered=remembered_of(first))
    assert "sheet Doors: a column nominal, which an earlier file of this kind had, is not there" in second.passed_over


def test_another_list_takes_nothing_from_memory(tmp_path):
    first = read(tmp_path, ["Mark", "Type", "Height", "Hand"], ["1", 36, 84, "LH"], columns={"Type": "leaf.width_mm"})
    other = (["Mark", "Type", "Wave", "Notes", "Priority"], ["1", "single", "2", "seen", 1])
    assert one(read(tmp_path, *other, remembered=remembered_of(first))).facts["form"] == "single"
