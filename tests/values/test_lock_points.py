"""Which places of an opening are locked, how they are named, and what one lock point means to the next."""

from dataclasses import replace

import pytest

from hwsched.values import (
    Alternative,
    Catalogue,
    Fit,
    FitPart,
    Hole,
    Item,
    Leaf,
    LockPoint,
    Opening,
    OpeningInput,
    Placement,
    PointFit,
    Refusal,
)
from hwsched.values.fit import together
from hwsched.values.input_key import input_key, survey_key
from hwsched.values.lock_points import is_lock, lock_item, lock_items, lock_points, point_names, with_beside

SINGLE = (Leaf("l", "single"),)
PAIR = (Leaf("a", "active"), Leaf("i", "inactive"))


def item(name, kind="lock", leaf=None, disposition=None, form="mortise", **facts):
    return Item(name, kind, leaf, disposition=disposition, lock_form=form, **facts)


def found(leaves, *items):
    return [each.id for each in lock_items(leaves, items)]


def test_what_is_a_lock():
    """Kinds by hand: a lock, an exit device and a deadbolt lock; anything else of which a form of lock is known too."""
    for kind in ("lock", "exit-device", "deadbolt"):
        assert is_lock(item("k", kind, form=None))
    for kind in ("closer", "flush-bolt", "electric-strike", "trim", None):
        assert not is_lock(item("k", kind, form=None))
        assert is_lock(item("k", kind, form="rim"))


def test_the_lock_of_a_point_is_its_own_where_there_are_several_and_else_the_first():
    upper, lower = item("u"), item("d", "deadbolt", disposition="replace")
    items = (item("c", "closer", form=None), upper, lower)

    def at(point, items=items):
        return lock_item(OpeningInput(Opening("o", "1"), SINGLE, items, Catalogue({}, ""), point=point))

    assert at(LockPoint("p")) is upper
    # Of a single point the facts decide, whatever its row says of it.
    assert at(LockPoint("p", "d")) is upper
    assert at(LockPoint("p", "d", 2, "deadbolt", ("u",))) is lower
    assert at(LockPoint("p", None, 2, "", ("u",))) is None
    assert at(LockPoint("p"), items[:1]) is None


def test_an_opening_without_a_lock_has_none():
    assert found(SINGLE) == []
    assert found(SINGLE, item("c", "closer", form=None)) == []
    assert found(SINGLE, item("k", disposition="remove")) == []


def test_the_first_is_the_opening_s_lock_as_ever():
    """Its form known if any is, locks before exit devices before deadbolts, those to be replaced before others."""
    assert found(SINGLE, item("d", "deadbolt"), item("k")) == ["k"]
    assert found(SINGLE, item("k", form=None), item("d", "deadbolt")) == ["d"]
    assert found(SINGLE, item("k", disposition="keep")) == ["k"]
    assert found(PAIR, item("k", leaf="inactive")) == []


@pytest.mark.parametrize(
    ("disposition", "points"),
    [("replace", ["k", "d"]), ("keep", ["k"]), ("remove", ["k"]), ("move", ["k"]), (None, ["k"])],
)
def test_a_deadbolt_above_a_latch_is_converted_where_the_survey_says_that_it_is_replaced(disposition, points):
    assert found(SINGLE, item("k"), item("d", "deadbolt", disposition=disposition)) == points
    assert found(SINGLE, item("d", "deadbolt", "single", disposition), item("k", leaf="single")) == points


def test_a_lock_to_be_replaced_whose_form_nobody_saw_is_one_all_the_same():
    assert found(SINGLE, item("k"), item("d", "deadbolt", disposition="replace", form=None)) == ["k", "d"]


def test_a_lock_in_each_leaf_of_a_pair():
    active = item("k", leaf="active")
    assert found(PAIR, active, item("o", leaf="inactive")) == ["k", "o"]
    assert found(PAIR, item("o", leaf="inactive"), active) == ["k", "o"]
    # The lock of the active leaf is taken to be there while nobody says where it is.
    assert found(PAIR, item("k"), item("o", leaf="inactive")) == ["k", "o"]
    assert found(PAIR, active, item("o", leaf="inactive", disposition="keep")) == ["k"]
    # Without a form it says nothing: bolts hold inactive leaves too.
    assert found(PAIR, active, item("o", leaf="inactive", form=None)) == ["k"]
    assert found(PAIR, active, item("o", "flush-bolt", "inactive", "replace", form=None)) == ["k"]
    # A single door has no inactive leaf.
    assert found(SINGLE, item("k"), item("o", leaf="inactive")) == ["k"]


def test_an_exit_device_and_the_lock_that_its_cylinder_works_are_one():
    rim = item("k", form="rim")
    assert found(SINGLE, rim, item("x", "exit-device", disposition="replace", form=None)) == ["k"]
    assert found(SINGLE, rim, item("x", "exit-device", disposition="replace", form="rim")) == ["k"]
    assert found(SINGLE, rim, item("x", "exit-device", disposition="replace", form="mortise")) == ["k", "x"]
    assert found(SINGLE, item("x", "exit-device", form="rim"), item("k", form=None, disposition="replace")) == ["x"]
    # In another leaf it is a device of its own.
    assert found(PAIR, item("k", leaf="active", form="rim"), item("x", "exit-device", "inactive", form="rim")) == [
        "k",
        "x",
    ]


def test_names_tell_the_points_of_an_opening_apart():
    assert point_names(SINGLE, (item("k"),)) == ("",)
    assert point_names(SINGLE, (item("k"), item("x", "exit-device"))) == ("lock", "exit device")
    assert point_names(PAIR, (item("k"), item("o", leaf="inactive"))) == ("active leaf", "inactive leaf")
    three = (item("k", leaf="active"), item("d", "deadbolt", "active"), item("o", leaf="inactive"))
    assert point_names(PAIR, three) == ("lock, active leaf", "deadbolt, active leaf", "lock, inactive leaf")
    low, high = item("k", cylinder_height_mm=900.0), item("o", cylinder_height_mm=1400.0)
    assert point_names(SINGLE, (low, high)) == ("lower lock", "upper lock")
    assert point_names(SINGLE, (item("k"), item("o"))) == ("first lock", "second lock")


def test_points_stand_in_the_order_in_which_they_are_worked_out_whatever_the_order_of_their_rows():
    items = [item("d", "deadbolt", disposition="replace"), item("k")]
    first, second = lock_points(SINGLE, items, [("p2", "d"), ("p1", "k")])
    assert (first.id, first.item_id, first.number, first.name, first.others) == ("p1", "k", 1, "lock", ("d",))
    assert (second.id, second.item_id, second.number, second.name, second.others) == ("p2", "d", 2, "deadbolt", ("k",))
    assert lock_points(SINGLE, items[1:], [("p1", "k")]) == (LockPoint("p1", "k"),)
    assert lock_points(SINGLE, [], [("p1", None)]) == (LockPoint("p1"),)


# --- one point and the next -------------------------------------------------------------------------------------------

ITEMS = (item("k"), item("d", "deadbolt", disposition="replace"))
FIRST, SECOND = lock_points(SINGLE, ITEMS, [("p1", "k"), ("p2", "d")])
GIVEN = OpeningInput(Opening("o", "1"), SINGLE, ITEMS, Catalogue({}, "c"))
WORK = Fit(
    "fits",
    (
        FitPart("cylinder", "CYL", "mortise-cylinder", 1.0, "since it fits"),
        FitPart("unit", "UNIT", "surface-unit", 1.0, "since it fits", "a unit"),
        FitPart("fastener", "SCREW", "fastener", 4.0, "four of them"),
        FitPart("supply", "PSU", "power-supply", 1.0, "12 V"),
    ),
    placement=Placement("single", "inside", "straight", 30.0, 940.0, 80.0, 160.0, 70.0, 1000.0,
                        alternatives=(Alternative("above", 30.0, 1200.0, 150.0, 1.0),),
                        clearances=(("lock edge", 30.0),)),
    holes=(Hole("access hole", "single", "inside", 70.0, 1000.0, 12.7),),
    power="supply",
    refused=(Refusal("X", "unit", "item-clear", "too near"),),
)  # fmt: skip


def second(work=WORK, items=ITEMS, leaves=SINGLE, points=(FIRST, SECOND)):
    given = replace(GIVEN, items=items, leaves=leaves)
    return with_beside(replace(given, point=points[1]), [PointFit(replace(given, point=points[0]), work)])


def test_the_first_point_meets_nothing_and_keeps_the_key_of_an_opening_with_one():
    assert with_beside(GIVEN, []) is GIVEN
    alone = replace(GIVEN, items=ITEMS[:1], point=LockPoint("p1", "k"))
    assert input_key(alone) == input_key(replace(alone, point=LockPoint()))


def test_the_next_point_meets_what_stands_and_what_feeds_and_no_more():
    (met,) = second().beside
    assert met.point == FIRST
    assert [part.role for part in met.fit.parts] == ["cylinder", "unit", "supply"]
    assert (met.fit.placement.x_mm, met.fit.holes, met.fit.power) == (30.0, WORK.holes, "supply")
    assert (met.fit.refused, met.fit.placement.alternatives) == ((), ())


def test_on_another_leaf_only_what_feeds_is_met():
    items = (item("k", leaf="active"), item("o", leaf="inactive"))
    points = lock_points(PAIR, items, [("p1", "k"), ("p2", "o")])
    (met,) = second(items=items, leaves=PAIR, points=points).beside
    assert [part.role for part in met.fit.parts] == ["unit", "supply"]
    assert (met.fit.placement, met.fit.holes) == (None, ())


def test_the_key_of_the_next_point_follows_what_stands_at_the_first():
    key = input_key(second())
    assert key != input_key(replace(GIVEN, point=FIRST)) != input_key(GIVEN)
    moved = replace(WORK, placement=replace(WORK.placement, y_mm=941.0))
    drilled = replace(WORK, holes=(replace(WORK.holes[0], diameter_mm=13.0),))
    other = replace(WORK, parts=(replace(WORK.parts[0], part="CYL-2"), *WORK.parts[1:]))
    assert len({key, *(input_key(second(each)) for each in (moved, drilled, other, None))}) == 5
    # Why it was chosen, what was refused and how it is screwed on is met by nobody.
    told = replace(WORK, refused=(), parts=tuple(replace(p, reason="r", source="set") for p in WORK.parts))
    screwed = replace(WORK, parts=tuple(replace(p, quantity=6.0) if p.role == "fastener" else p for p in WORK.parts))
    assert {input_key(second(each)) for each in (told, screwed)} == {key}


def test_keys_name_no_identifiers():
    other = tuple(replace(each, id=f"{each.id}x") for each in ITEMS)
    points = lock_points(SINGLE, other, [("q1", "kx"), ("q2", "dx")])
    assert input_key(second()) == input_key(second(items=other, points=points))
    assert survey_key(replace(GIVEN, point=FIRST)) != survey_key(replace(GIVEN, point=SECOND))


# --- the points of an opening together --------------------------------------------------------------------------------


def test_an_opening_with_one_point_is_that_point():
    assert together([WORK]) is WORK
    assert together([None]) is None
    assert together([WORK, None]) is None


@pytest.mark.parametrize(
    ("statuses", "whole"),
    [
        (("fits", "fits"), "fits"),
        (("fits", "to-measure"), "to-measure"),
        (("to-measure", "does-not-fit"), "does-not-fit"),
        (("fits", "does-not-fit"), "does-not-fit"),
    ],
)
def test_an_opening_fits_when_all_its_points_fit(statuses, whole):
    assert together([Fit(status) for status in statuses]).status == whole


def test_equal_parts_are_added_up_and_tools_are_brought_once():
    jig = FitPart("tool", "JIG", "tool", 1.0, "keeps the bit true")
    one, two = replace(WORK, parts=(*WORK.parts, jig)), Fit("fits", (WORK.parts[0], WORK.parts[2], jig))
    whole = together([one, two])
    assert {(p.role, p.part): p.quantity for p in whole.parts} == {
        ("cylinder", "CYL"): 2.0,
        ("unit", "UNIT"): 1.0,
        ("fastener", "SCREW"): 8.0,
        ("supply", "PSU"): 1.0,
        ("tool", "JIG"): 1.0,
    }
    assert whole.placement is None
    assert (whole.power, len(whole.holes), len(whole.refused)) == ("supply", 1, 1)
