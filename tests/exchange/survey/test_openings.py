"""Leaves and items of singles and pairs."""

import pytest

from tests.exchange.surveys import one, read, said

IN = 25.4


def leaves(opening):
    return {
        leaf.position: {n: round(v / IN, 3) for n, v in leaf.facts.items() if n.endswith("_mm")}
        for leaf in opening.leaves
    }


def test_one_measure_of_a_pair_is_that_of_each_leaf_and_said_so(tmp_path):
    found = read(tmp_path, ["Mark", "Type", "Width", "Thickness"], ["1", "pair", 36, 1.75])
    assert leaves(one(found)) == {key: {"width_mm": 36, "thickness_mm": 1.75} for key in ("active", "inactive")}
    assert "each of both leaves (1)" in found.assumptions[-1].describe()


def test_a_wide_pair_is_asked_about(tmp_path):
    found = read(
        tmp_path, ["Mark", "Type", "Width"], ["1", "pair", "6'-0\""], ["2", "pair", "2(3'-0\")"], ["3", "PR", 48]
    )
    assert found.rejected == ("1",)
    assert "which can be one leaf or both together" in said(found)


@pytest.mark.parametrize(
    ("cell", "unit", "mm"),
    [
        ("2 x 915", "mm", 915.0), ("915 x 2", "mm", 915.0), ("2 No. 915", "mm", 915.0), ("2\u00d7915 mm", None, 915.0),
        ("2 x 3'-0\"", None, 914.4), ("2nr 36", "in", 914.4),
    ],
)  # fmt: skip
def test_two_of_a_width_are_two_leaves(tmp_path, cell, unit, mm):
    """As a size it would be 2 wide, which no leaf is."""
    opening = one(read(tmp_path, ["Mark", "Width"], ["1", cell], bare_unit=unit))
    assert opening.facts["form"] == "pair"
    assert [leaf.facts["width_mm"] for leaf in opening.leaves] == [mm, mm]


def test_two_feet_by_seven_are_a_size_and_one_length_is_wanted(tmp_path):
    found = read(tmp_path, ["Mark", "Width"], ["1", "2 x 7"], bare_unit="ft")
    assert "is a size" in said(found)


@pytest.mark.parametrize("size", ["2-3068 DBL", "2(3'-0\" x 6'-8\")", "(2) 3-0 x 6-8"])
def test_a_size_of_two_leaves_makes_a_pair(tmp_path, size):
    found = read(tmp_path, ["Mark", "Size"], ["1", size])
    opening = one(found)
    assert opening.facts["form"] == "pair"
    assert leaves(opening) == {key: {"width_mm": 36, "height_mm": 80} for key in ("active", "inactive")}
    assert "taken as pairs" in found.assumptions[-1].describe()


def test_a_size_of_two_leaves_on_a_single_door_is_refused(tmp_path):
    found = read(tmp_path, ["Mark", "Type", "Width"], ["1", "single", "2(3'-0\")"])
    assert "row 2: speaks of two leaves" in said(found)


def test_leaves_of_a_pair_in_two_rows(tmp_path):
    header = ["Mark", "Type", "Leaf", "Width", "Height"]
    opening = one(read(tmp_path, header, ["1", "pair", "A", 36, 84], ["1", None, "I", 24, 84]))
    assert leaves(opening) == {
        "active": {"width_mm": 36, "height_mm": 84},
        "inactive": {"width_mm": 24, "height_mm": 84},
    }
    assert opening.leaves[1].origin == "survey.xlsx, Doors, row 3"


def test_the_first_row_is_the_other_leaf_where_the_second_says_inactive(tmp_path):
    opening = one(
        read(tmp_path, ["Mark", "Type", "Leaf", "Width"], ["1", "pair", None, 36], ["1", None, "inactive", 24])
    )
    assert leaves(opening) == {"active": {"width_mm": 36}, "inactive": {"width_mm": 24}}


def test_two_rows_of_a_pair_that_do_not_say_which_leaf(tmp_path):
    found = read(tmp_path, ["Mark", "Type", "Width"], ["1", "pair", 36], ["1", "pair", 24])
    assert "does not say which leaf of the pair it is" in said(found)


def test_what_is_said_of_both_leaves_must_agree_with_each(tmp_path):
    header = ["Mark", "Type", "Leaf", "Width", "Thickness"]
    rows = (["1", "pair", None, 36, 1.75], ["1", None, "active", None, 1.75], ["1", None, "inactive", 24, None])
    assert "leaf width 609.6 mm" in said(read(tmp_path, header, *rows))


def test_only_the_inactive_leaf_is_described(tmp_path):
    opening = one(read(tmp_path, ["Mark", "Leaf", "Width"], ["1", "inactive", 24]))
    assert opening.facts["form"] == "pair"
    assert leaves(opening) == {"active": {}, "inactive": {"width_mm": 24}}


def test_single_doors_under_headings_of_two_leaves(tmp_path):
    header = ["Mark", "Active leaf width", "Inactive leaf width"]
    found = read(tmp_path, header, ["1", 36, None], ["2", 36, 24])
    assert [leaves(opening) for opening in found.openings] == [
        {"single": {"width_mm": 36}},
        {"active": {"width_mm": 36}, "inactive": {"width_mm": 24}},
    ]


def test_a_single_door_has_no_inactive_leaf(tmp_path):
    assert "speaks of two leaves" in said(
        read(tmp_path, ["Mark", "Type", "Leaf", "Width"], ["1", "single", "inactive", 36])
    )
    assert "says leaf Single" in said(read(tmp_path, ["Mark", "Type", "Leaf", "Width"], ["1", "pair", "single", 36]))


@pytest.mark.parametrize(
    ("form", "count"), [("lift", 0), ("turnstile", 0), ("gate", 1), ("single", 1), ("pair", 2), (None, 1)]
)
def test_leaves_follow_from_the_form(tmp_path, form, count):
    assert len(one(read(tmp_path, ["Mark", "Type", "Hand"], ["1", form, "LH"])).leaves) == count


def test_the_lock_of_a_pair_is_in_the_active_leaf_and_a_closer_may_be_on_either(tmp_path):
    header = ["Mark", "Type", "Lock type", "Item"]
    found = read(tmp_path, header, ["1", "pair", "mortise", "lever"], ["1", None, None, "closer"])
    lock, lever, closer = one(found).items
    assert (lock.deduced, lever.deduced, closer.deduced) == ({"leaf": "active"}, {"leaf": "active"}, {})
    assert "on the active leaf (1)" in found.assumptions[-1].describe()


def test_two_locks_of_a_pair_stay_where_their_rows_say(tmp_path):
    header = ["Mark", "Type", "Leaf", "Width", "Lock type"]
    opening = one(read(tmp_path, header, ["1", "pair", "active", 36, "mortise"], ["1", None, "inactive", 36, "rim"]))
    assert [(i.facts["lock_form"], i.facts["leaf"]) for i in opening.items] == [
        ("mortise", "active"),
        ("rim", "inactive"),
    ]


def test_items_name_only_leaves_that_are_there(tmp_path):
    header = ["Mark", "Type", "Item", "On leaf"]
    assert "one leaf only" in said(read(tmp_path, header, ["1", "single", "closer", "inactive"]))
    assert "is a pair" in said(read(tmp_path, header, ["1", "pair", "closer", "single"]))
    assert one(read(tmp_path, header, ["1", "single", "closer", "active"])).items[0].facts["leaf"] == "single"


def test_what_is_assumed_of_refused_openings_is_not_counted(tmp_path):
    found = read(tmp_path, ["Mark", "Type", "Width", "Hand"], ["1", "pair", 36, "sideways"], ["2", "pair", 36, "LH"])
    assert found.assumptions[-1].count == 1
