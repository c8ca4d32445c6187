"""Totals, notes, sections and titles among the rows are no openings; a section's level is that of the rows below it."""

import pytest

from hwsched.exchange.survey.book import SurveyOptions, read_survey
from hwsched.exchange.survey.lines import line_kind
from tests.exchange.surveys import read, said, write

HEADER = ["Mark", "Hand", "Width", "Height"]
DOORS = (["101", "LH", 36, 84], ["102", "RH", 36, 84], ["103A", "LH", 36, 84])


def marks(found):
    assert said(found) == ""
    return [opening.mark for opening in found.openings]


@pytest.mark.parametrize(
    ("row", "kind"),
    [
        (["Grand total: 26"], "total"),
        (["Sub-Totals", "", 3, 252], "total"),
        (["TOTAL", 26], "total"),
        (["Total number of doors", 26], "total"),
        (["", "Total:", 26], "total"),
        (["Level 1: 26"], "total"),
        (["Level 1 (26 doors)"], "total"),
        (["Number of openings: 3"], "total"),
        (["Note: all doors to be verified in the field."], "note"),
        (["Notes"], "note"),
        (["NOTE 1: see sheet A601"], "note"),
        (["1. Contractor to verify all sizes."], "note"),
        (["Prepared by the survey crew", "12 March"], "note"),
        (["Page 1 of 3"], "note"),
        (["* door to remain"], "note"),
        (["LEVEL 2"], "level"),
        (["Second floor"], "level"),
        (["Basement"], "level"),
        (["2nd Floor East"], "level"),
        (["Building A"], "building"),
        (["Exterior doors"], "title"),
        (["Doors that are to be looked at again by whoever comes next"], "title"),
    ],
)
def test_what_a_row_says_of_itself(row, kind):
    found = line_kind([*row, *[""] * 4], 0, below=False, digits=True)
    assert found is not None
    assert found.kind == kind


@pytest.mark.parametrize(
    "row",
    [
        ["101"], [12.0, "LH"], ["GATE 1"], ["Level 2", "LH", 36], ["Roof 1", "LH"], ["Main entrance", "LH", 36],
        ["Total Store", "LH", "wood", "single"], ["Key store", "LH"], ["Notes room 4", "RH", 36],
        ["", "Closer", "inside"], ["B-12"], ["TOTAL1", "LH", "HM"],
    ],
)  # fmt: skip
def test_openings_are_none_of_these(row):
    assert line_kind([*row, *[""] * 3], 0, below=False, digits=True) is None


def test_where_marks_are_words_a_word_alone_is_an_opening(tmp_path):
    rows = (["North", "LH", 36, 84], ["South", "RH", 36, 84], ["West"])
    assert marks(read(tmp_path, HEADER, *rows)) == ["North", "South", "West"]


def test_footers_are_no_openings_and_are_named(tmp_path):
    footer = (
        ["Sub-Totals", None, 3],
        ["Grand total: 3"],
        [],
        ["Note: hands seen from the key side"],
        ["drawn in spring"],
    )
    found = read(tmp_path, HEADER, *DOORS, *footer)
    assert marks(found) == ["101", "102", "103A"]
    assert found.passed_over == (
        "sheet Doors, row 5: a total (Sub-Totals)",
        "sheet Doors, row 6: a total (Grand total: 3)",
        "sheet Doors, row 8: a note (Note: hands seen from the key side)",
        "sheet Doors, row 9: a note (drawn in spring)",
    )


def test_sections_give_their_level_to_the_rows_below(tmp_path):
    rows = (["LEVEL 1"], DOORS[0], ["Level 1: 1"], ["LEVEL 2:"], DOORS[1], DOORS[2], ["Grand total: 3"])
    found = read(tmp_path, HEADER, *rows)
    assert marks(found) == ["101", "102", "103A"]
    assert [opening.facts["level"] for opening in found.openings] == ["LEVEL 1", "LEVEL 2", "LEVEL 2"]
    lines = [assumption.describe() for assumption in found.assumptions]
    assert "sheet Doors: level LEVEL 2 taken from the title above or the sheet's name (2)" in lines


def test_a_row_s_own_level_goes_before_its_section(tmp_path):
    rows = (["Building B", ""], ["Ground floor", ""], ["101", "M"], ["102", ""])
    found = read(tmp_path, ["Mark", "Level"], *rows)
    places = [(opening.facts["building"], opening.facts["level"]) for opening in found.openings]
    assert places == [("Building B", "M"), ("Building B", "Ground floor")]


def test_one_sheet_a_level(tmp_path):
    path = write(tmp_path / "s.xlsx", {"Level 1": [HEADER, DOORS[0]], "Level 2": [HEADER, DOORS[1]]})
    found = read_survey(path, SurveyOptions(bare_unit="in"))
    assert [(opening.mark, opening.facts["level"]) for opening in found.openings] == [
        ("101", "Level 1"), ("102", "Level 2"),
    ]  # fmt: skip


def test_the_table_ends_where_a_person_says(tmp_path):
    found = read(tmp_path, HEADER, *DOORS, ["spare 1", "LH"], last_row=4)
    assert marks(found) == ["101", "102", "103A"]
