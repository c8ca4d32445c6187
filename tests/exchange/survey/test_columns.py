"""Cells read into facts: what is assumed, asked about, filled down, refused."""

import datetime as dt

import pytest

from hwsched.attributes import Attribute
from tests.exchange.surveys import one, read, said

OWN = {"opening": (Attribute("guarded", "Guarded", "flag"), Attribute("visits", "Visits", "number"))}


def widths(found):
    return {opening.mark: opening.leaves[0].facts.get("width_mm") for opening in found.openings}


def test_true_and_one_are_not_mixed_up(tmp_path):
    found = read(tmp_path, ["Mark", "Guarded", "Visits"], ["1", True, 1], ["2", 1, 0], ["3", False, 2], own_fields=OWN)
    assert [opening.facts["guarded"] for opening in found.openings] == [True, True, False]
    assert [opening.facts["visits"] for opening in found.openings] == [1, 0, 2]
    mixed = read(tmp_path, ["Mark", "Width"], ["1", 1], ["2", True], bare_unit="m")
    assert widths(mixed) == {"1": 1000}
    assert "read 'TRUE'" in said(mixed)


def test_unknown_cells_are_blank_whatever_they_say(tmp_path):
    rows = [[f"{n}", word, word] for n, word in enumerate(("?", "unknown", "TBD", "n/a", "-", " ", ""))]
    found = read(tmp_path, ["Mark", "Width", "Size"], *rows)
    assert found.problems == ()
    assert set(widths(found).values()) == {None}


def test_the_unit_assumed_and_the_number_of_cells_are_said(tmp_path):
    rows = ([1, "36", "3-0 x 7-0"], [2, 36, "3'-0\" x 7'-0\""], [3, '36"', None], [4, "914 mm", "3070"])
    found = read(tmp_path, ["Mark", "Backset (mm)", "Width", "Size"], *([m, 70, w, s] for m, w, s in rows))
    lines = [assumption.describe() for assumption in found.assumptions]
    assert "sheet Doors, column B (Backset (mm)): numbers without a unit taken as millimetres (4)" in lines
    assert "sheet Doors, column C (Width): numbers without a unit taken as inches (2)" in lines
    feet = "digits read as the door trade's feet and inches, such as 3-0 or 3068"
    assert f"sheet Doors, column D (Size): {feet} (2)" in lines
    assert found.problems == ()


def test_about_is_taken_and_said(tmp_path):
    found = read(tmp_path, ["Mark", "Width"], ["1", "~36 in"], ["2", "approx. 36 in"], ["3", "36 in"])
    assert found.assumptions[0].describe().endswith("approximate taken as they are (2)")


def test_a_size_agrees_with_a_width_or_is_refused(tmp_path):
    found = read(tmp_path, ["Mark", "Size", "Width"], ["1", "3-0 x 7-0", 36], ["2", "3-0 x 7-0", 40], ["3", None, 32])
    assert widths(found) == {"1": pytest.approx(914.4), "3": pytest.approx(812.8)}
    assert "row 3, column C (Width): read '40'; does not agree" in said(found)


@pytest.mark.parametrize(
    "size", ["36", "34 - 48", "1 x 2", "3-0 x 7-0 x 9-0", "3 x 7 x 1 x 2", "big", dt.datetime(2026, 3, 4)]
)
def test_sizes_that_are_none(tmp_path, size):
    found = read(tmp_path, ["Mark", "Size"], ["1", size], ["2", "3-0 x 7-0"])
    assert found.rejected == ("1",)
    assert "column B (Size)" in said(found)


def test_two_leaves_of_two_widths_in_one_cell(tmp_path):
    header = ["Mark", "Width", "Height"]
    found = read(tmp_path, header, ["1", "36 + 20", 84], ["2", '20" + 36"', 84], ["3", 36, 84], ["4", "36 + 1", 84])
    leaves = {
        each.mark: [(leaf.position, round(leaf.facts["width_mm"] / 25.4)) for leaf in each.leaves]
        for each in found.openings
    }
    pair = [("active", 36), ("inactive", 20)]
    assert leaves == {"1": pair, "2": pair, "3": [("single", 36)]}
    assert all(leaf.facts["height_mm"] == 2133.6 for each in found.openings for leaf in each.leaves)
    assert "read '36 + 1'" in said(found)


def test_two_leaves_of_two_widths_in_a_size(tmp_path):
    found = read(
        tmp_path, ["Mark", "Size (mm)"], ["1", "926+426 x 2040 x 54"], ["2", "426 + 926 x 2040"], ["3", "926 x 2040"]
    )
    first, second, third = found.openings
    for each in (first, second):
        assert [(leaf.facts["width_mm"], leaf.facts["height_mm"]) for leaf in each.leaves] == [(926, 2040), (426, 2040)]
    assert {leaf.facts["thickness_mm"] for leaf in first.leaves} == {54.0}
    assert [leaf.facts["width_mm"] for leaf in third.leaves] == [926.0]


def test_a_third_measure_of_a_size_is_the_thickness_where_it_can_be(tmp_path):
    header = ["Mark", "Size", "Thickness"]
    rows = (["1", "3-0 x 7-0 x 1 3/4", ""], ["2", "3-0 x 7-0 x 1 3/4", 1.75], ["3", "3-0 x 7-0 x 1 3/4", 2])
    found = read(tmp_path, header, *rows)
    assert {each.mark: each.leaves[0].facts["thickness_mm"] for each in found.openings} == {"1": 44.45, "2": 44.45}
    assert widths(found) == {"1": pytest.approx(914.4), "2": pytest.approx(914.4)}
    assert "row 4, column C (Thickness): read '2'; does not agree" in said(found)


# A leaf is 150 to 3000 mm wide (survey): 5 7/8 in is 149.2, 6 in 152.4, 9'-10" 2997.2, 9'-10 1/4" 3003.6.
@pytest.mark.parametrize(
    ("width", "leaf_mm"), [('2(6")', 152.4), ('2(5 7/8")', None), ("2(9'-10\")", 2997.2), ("2(9'-10 1/4\")", None)]
)
def test_a_leaf_of_a_pair_is_as_wide_as_a_leaf_can_be(tmp_path, width, leaf_mm):
    found = read(tmp_path, ["Mark", "Width"], ["1", width], ["2", "36"])
    if leaf_mm is None:
        assert found.rejected == ("1",)
        assert "column B (Width)" in said(found)
    else:
        pair = next(opening for opening in found.openings if opening.mark == "1")
        assert [leaf.facts["width_mm"] for leaf in pair.leaves] == [pytest.approx(leaf_mm)] * 2


def test_a_digit_lost_is_asked_about_unless_its_unit_is_typed(tmp_path):
    backsets = [70, 70, 65, 60, 70, 9, "9 mm"]
    found = read(tmp_path, ["Mark", "Backset"], *([f"{n}", b] for n, b in enumerate(backsets)), bare_unit="mm")
    assert found.rejected == ("5",)
    assert "row 7, column B (Backset): read '9'; stands far apart" in said(found)
    assert len(read(tmp_path, ["Mark", "Backset"], ["1", 9], ["2", 70], bare_unit="mm").openings) == 2


def test_items_of_all_sizes_are_not_asked_about(tmp_path):
    rows = [["1", "closer", 10], *[["1", "viewer", 0.5]], ["1", "kick plate", 34], ["1", "exit device", 33]]
    assert len(one(read(tmp_path, ["Mark", "Item", "Item W"], *rows)).items) == 4


def test_a_cell_merged_over_rows_is_each_rows(tmp_path):
    rows = (["Mark", "Building", "Width"], ["1", "Mill", 36], ["2", None, 36], [None, None, None], ["3", None, 36])
    found = read(tmp_path, *rows, merged=["B2:B5"])
    assert [opening.facts["building"] for opening in found.openings] == ["Mill"] * 3
    assert "a cell merged over rows taken for each of them (2)" in found.assumptions[0].describe()


def test_a_merged_mark_goes_on(tmp_path):
    rows = (["Mark", "Width", "Item"], ["1", 36, "closer"], [None, None, "viewer"])
    assert len(one(read(tmp_path, *rows, merged=["A2:A3"])).items) == 2


def test_a_cell_merged_over_two_facts_is_asked_about(tmp_path):
    found = read(tmp_path, ["Mark", "Width", "Height"], ["1", 36, None], ["2", 36, 84], merged=["B2:C2"])
    assert list(widths(found)) == ["2"]
    assert "is merged over columns B to C" in said(found)


def test_titles_and_repeated_headers_are_passed_over_and_said(tmp_path):
    header = ["Mark", "Building", "Width"]
    rows = (header, ["LEVEL 1", None, None], ["1", "A", 36], header, ["2", "A", 36])
    found = read(tmp_path, *rows, merged=["A2:C2"])
    assert list(widths(found)) == ["1", "2"]
    assert found.passed_over == ("sheet Doors, row 2: a title (LEVEL 1)", "sheet Doors, row 4: the header again")


def test_columns_without_meaning_and_without_header_are_counted(tmp_path):
    found = read(
        tmp_path, ["Mark", "Width", "Colour", None, "Empty"], ["1", 36, "red", "x", None], ["2", 36, None, "y", None]
    )
    assert [(u.column, u.header, u.filled) for u in found.unmapped] == [
        ("C", "Colour", 1),
        ("D", "", 2),
        ("E", "Empty", 0),
    ]


def test_every_refused_cell_says_what_is_accepted(tmp_path):
    found = read(tmp_path, ["Mark", "Hand", "Width", "Stair", "Ops/day"], ["1", "sideways", "wide", "perhaps", "many"])
    assert [problem.column for problem in found.problems] == ["B", "C", "D", "E"]
    assert all(problem.row == 2 and problem.accepted and problem.read for problem in found.problems)
    assert found.rejected == ("1",)
