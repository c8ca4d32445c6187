"""Rows that belong together, and rows that do not."""

import csv

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from hwsched.exchange.problems import InputRejected
from hwsched.exchange.survey.book import SurveyOptions, read_survey
from tests.exchange.surveys import one, read, said

DOOR = ["Mark", "Type", "Width", "Height", "Lock type", "Backset"]
FULL = ["1", "single", 36, 84, "mortise", 2.75]
ITEMS = [*DOOR, "Item", "Side", "X", "Y"]


def kinds(opening):
    return [item.facts["kind"] for item in opening.items]


def test_the_same_mark_on_two_full_rows_is_a_duplicate(tmp_path):
    found = read(tmp_path, DOOR, FULL, ["2", *FULL[1:]], FULL)
    assert [opening.mark for opening in found.openings] == ["2"]
    assert found.rejected == ("1",)
    assert "row 4: is a second row of the mark 1, which stands in row 2 already" in said(found)


@pytest.mark.parametrize(("one_", "two"), [("12", 12), (" 7", "7\u00a0"), ("A-1", "A-1 ")])
def test_marks_that_people_read_as_one_are_one(tmp_path, one_, two):
    assert "second row of the mark" in said(read(tmp_path, DOOR, [one_, *FULL[1:]], [two, *FULL[1:]]))


def test_marks_that_differ_in_noughts_or_case_are_two(tmp_path):
    found = read(tmp_path, DOOR, ["012", *FULL[1:]], ["12", *FULL[1:]], ["a1", *FULL[1:]], ["A1", *FULL[1:]])
    assert [opening.mark for opening in found.openings] == ["012", "12", "a1", "A1"]


def test_one_row_an_item_with_the_opening_repeated(tmp_path):
    rows = ([*FULL, "closer", "in", 30, 80], [*FULL, "kick plate", "out", 18, 6])
    opening = one(read(tmp_path, ITEMS, *rows))
    assert kinds(opening) == ["lock", "closer", "kick-plate"]


def test_one_row_an_item_apart_from_its_opening(tmp_path):
    rows = ([*FULL, *[None] * 4], ["2", *FULL[1:], *[None] * 4], ["1", *[None] * 5, "closer", "in", 30, 80])
    found = read(tmp_path, ITEMS, *rows)
    assert [kinds(opening) for opening in found.openings] == [["lock", "closer"], ["lock"]]
    assert found.openings[0].items[1].origin == "survey.xlsx, Doors, row 4"


def test_a_row_without_mark_goes_on_with_the_row_above_but_not_over_a_gap(tmp_path):
    closer = [None, *[None] * 5, "closer", "in", 30, 80]
    assert kinds(one(read(tmp_path, ITEMS, [*FULL, *[None] * 4], closer))) == ["lock", "closer"]
    assert "row 4: has no mark" in said(read(tmp_path, ITEMS, [*FULL, *[None] * 4], [], closer))
    assert "row 2: has no mark" in said(read(tmp_path, ITEMS, closer, [*FULL, *[None] * 4]))


def test_rows_below_a_refused_mark_are_not_the_opening_before(tmp_path):
    import datetime as dt

    closer = [None, *[None] * 5, "closer", "in", 30, 80]
    odd = [dt.datetime(2026, 3, 4), *FULL[1:], *[None] * 4]
    found = read(tmp_path, ITEMS, [*FULL, *[None] * 4], odd, closer, closer)
    assert kinds(one_of(found, "1")) == ["lock"]
    assert len(found.problems) == 1


def one_of(found, mark):
    return next(opening for opening in found.openings if opening.mark == mark)


def test_rows_that_contradict_each_other_name_both_rows_and_values(tmp_path):
    rows = ([*FULL, "closer", "in", 30, 80], ["1", "gate", 40, None, "rim", None, "viewer", None, None, None])
    text = said(read(tmp_path, ITEMS, *rows))
    assert "row 3: says opening form gate, row 2 of the same mark says single" in text
    assert "row 3: says leaf width 1016 mm, row 2 of the same mark says 914.4 mm" in text
    assert "row 3: says lock form rim, row 2 of the same mark says mortise" in text


def test_a_refused_cell_is_not_followed_by_complaints_that_come_of_it(tmp_path):
    found = read(tmp_path, ITEMS, [*FULL, *[None] * 4], ["1", *[None] * 5, "clozer", "in", 30, 80])
    assert [problem.column for problem in found.problems] == ["G"]
    assert found.rejected == ("1",)


def test_lock_columns_beside_another_item_are_the_openings_lock(tmp_path):
    opening = one(read(tmp_path, ITEMS, [*FULL, "exit device", "in", 20, 40]))
    assert kinds(opening) == ["lock", "exit-device"]
    assert "backset_mm" not in opening.items[1].facts


def test_lock_columns_on_a_row_of_an_item_are_that_items(tmp_path):
    rows = ([*FULL, *[None] * 4], ["1", *[None] * 3, "rim", 2.375, "exit device", "in", 20, 40])
    opening = one(read(tmp_path, ITEMS, *rows))
    assert opening.items[0].facts["lock_form"] == "mortise"
    assert (opening.items[1].facts["kind"], opening.items[1].facts["lock_form"]) == ("exit-device", "rim")


def test_a_row_of_the_lock_gives_its_place_and_another_lock_is_a_second_one(tmp_path):
    place = ["1", *[None] * 5, "lock", "both", 2.75, 40]
    opening = one(read(tmp_path, ITEMS, [*FULL, *[None] * 4], place))
    assert len(opening.items) == 1
    assert (opening.items[0].facts["x_mm"], opening.items[0].facts["lock_form"]) == (pytest.approx(69.85), "mortise")
    second = ["1", *[None] * 3, "rim", 2.375, "lock", "both", 2.375, 60]
    assert kinds(one(read(tmp_path, ITEMS, [*FULL, *[None] * 4], place, second))) == ["lock", "lock"]


def test_an_item_without_a_name_is_asked_about(tmp_path):
    found = read(tmp_path, ["Mark", "Width", "Item", "Side", "X"], ["1", 36, None, "in", 30])
    assert "but not what it is" in said(found)


def test_the_same_item_at_the_same_place_twice_is_named(tmp_path):
    row = ["1", *[None] * 5, "closer", "in", 30, 80]
    assert "is the same existing item as in row 3" in said(read(tmp_path, ITEMS, [*FULL, *[None] * 4], row, row))
    hinge = ["1", *[None] * 5, "hinge", None, None, None]
    assert kinds(one(read(tmp_path, ITEMS, [*FULL, *[None] * 4], hinge, hinge))) == ["lock", "hinge", "hinge"]


def test_items_named_in_the_heading(tmp_path):
    header = ["Mark", "Width", "Lite width", "Lite height", "Closer face"]
    opening = one(read(tmp_path, header, ["1", 36, 5, 26, "in"]))
    assert [(i.facts["kind"], i.facts.get("face")) for i in opening.items] == [("lite", None), ("closer", "inside")]


def test_remarks_of_further_rows_are_kept(tmp_path):
    header = ["Mark", "Width", "Type", "Leaf", "Item", "Remarks"]
    rows = (
        ["1", 36, "pair", "active", None, "sticks"],
        ["1", 24, None, "inactive", None, "rusty"],
        ["1", None, None, None, "closer", "leaks oil"],
    )
    opening = one(read(tmp_path, header, *rows))
    assert opening.facts["notes"] == "sticks; rusty"
    assert opening.items[0].facts["item_notes"] == "leaks oil"


def test_marks_alone_are_openings_of_which_nothing_is_known(tmp_path):
    found = read(tmp_path, ["Mark", "Width"], ["1", None], ["2", None])
    assert [dict(opening.facts) for opening in found.openings] == [{"mark": "1"}, {"mark": "2"}]


def test_one_measure_in_two_spellings_is_no_contradiction(tmp_path):
    header = ["Mark", "Thickness", "Item"]
    opening = one(read(tmp_path, header, ["1", "1 3/4", "closer"], ["1", "44.5 mm", "viewer"]))
    assert opening.leaves[0].facts["thickness_mm"] == pytest.approx(44.45)
    assert "says leaf thickness 45 mm" in said(
        read(tmp_path, header, ["1", "1 3/4", "closer"], ["1", "45 mm", "viewer"])
    )


CELLS = st.sampled_from(
    ["", " ", "?", "-", "1", "2", "A1", "36", '36"', "3-0 x 7-0", "2(3'-0\")", "pair", "single", "active", "inactive",
     "LH", "closer", "lock", "in", "both", "mortise", "yes", "nonsense", "=1+1", "\u200b", "Mark", "Width"]
)  # fmt: skip


@settings(max_examples=200, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    header=st.permutations(["Mark", "Type", "Leaf", "Width", "Size", "Lock type", "Item", "Face", "On leaf", "X"]),
    rows=st.lists(st.lists(CELLS, min_size=1, max_size=11), max_size=8),
)
def test_whatever_is_typed_is_read_or_named(tmp_path, header, rows):
    path = tmp_path / "s.csv"
    with path.open("w", newline="", encoding="utf-8") as file:
        csv.writer(file).writerows([header, *rows])
    try:
        found = read_survey(path, SurveyOptions(bare_unit="in"))
    except InputRejected:
        return
    marks = [opening.mark for opening in found.openings]
    assert len(set(marks)) == len(marks)
    assert not set(marks) & set(found.rejected)
    # Nobody is left out without a word.
    assert bool(found.problems) >= bool(found.rejected)
    for opening in found.openings:
        positions = [leaf.position for leaf in opening.leaves]
        assert positions in ([], ["single"], ["active", "inactive"])
        assert (opening.facts.get("form") == "pair") == (positions == ["active", "inactive"])
        assert all(item.facts["kind"] for item in opening.items)
        assert all(item.facts.get("leaf") in (None, *positions) for item in opening.items)
