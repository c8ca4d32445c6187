"""Two fits are compared value by value: every field of a fit counts, words do not."""

from dataclasses import fields, is_dataclass, replace
from decimal import Decimal

import pytest

from hwsched.operations.opening.fit_differences import differences, in_words
from hwsched.values import (
    Alternative,
    BatteryLife,
    CablePath,
    Fit,
    FitPart,
    Hole,
    Need,
    Placement,
    Refusal,
    RunnerUp,
    Stack,
)

HOLE = Hole("lead", "single", "inside", 40.0, 1000.0, 19.05, 3.0, 25.0, 1.0, 2.0, (0.0, 10.0), "bit", "jig", 1, 5.0, 2,
            "cable", 4.0, 5.0, 6.0, True)  # fmt: skip
MISS = Refusal("P-9", "unit", "trim-clear", "too near", {"short_mm": 2.0})
FIT = Fit(
    "fits",
    (FitPart("unit", "U-1", "surface-unit", 1.0, "cheapest"), FitPart("fastener", "S-1", "fastener", 4.0, "its")),
    Stack("threaded", 1.0, 0.5, 1, ("R-1",), 2.0, 3.0, 4.0, 5.0),
    Placement("single", "inside", "above", 20.0, 1000.0, 84.0, 164.0, 60.0, 1100.0, "worked-out",
              (Alternative("below", 20.0, 600.0, 250.0, 2.0),), (("lock edge", 20.0),)),
    CablePath(((0.0, 0.0, 0.0), (1.0, 2.0, 3.0)), 280.0, 300.0, 60.0, (("into the leaf", 25.0),)),
    (HOLE, replace(HOLE, name="screws", purpose="fixing", diameter_mm=3.0)),
    "battery",
    BatteryLife(400.0, 4.0, 3000.0, 0.85, 0.7),
    (MISS,),
    (Need("leaf.thickness_mm", "Leaf thickness", "the lock"),),
    Decimal("12.5"),
    "USD",
    ("list price (S-1)",),
    MISS,
    (RunnerUp(("U-2",), "below", "battery", Decimal("13.0"), 2, ("list price (S-1)",)),),
)  # fmt: skip
WORDS = {"reason", "description", "label", "blocks", "name"}
UNSAID = {("parts", "kind")}
"""The kind of a part hangs on its number."""


def otherwise(value):
    if isinstance(value, bool):
        return not value
    if isinstance(value, float | int | Decimal):
        return value + 1
    if isinstance(value, str):
        return value + "x"
    if isinstance(value, dict):
        return {**value, "more_mm": 1.0}
    if isinstance(value, tuple):
        return (*value, value[0])
    return None


def inputs():
    """Every field of a fit, and of every thing in it, changed alone."""
    for field in fields(Fit):
        value = getattr(FIT, field.name)
        yield (field.name, ""), replace(FIT, **{field.name: otherwise(value)})
        held = value[0] if isinstance(value, tuple) else value
        if is_dataclass(held):
            for inner in fields(held):
                changed = replace(held, **{inner.name: otherwise(getattr(held, inner.name))})
                whole = (changed, *value[1:]) if isinstance(value, tuple) else changed
                yield (field.name, inner.name), replace(FIT, **{field.name: whole})


@pytest.mark.parametrize(
    ("where", "other"), list(inputs()), ids=lambda each: "-".join(each) if type(each) is tuple else ""
)
def test_every_value_counts_and_no_word_does(where, other):
    assert other != FIT
    told = differences(FIT, other)
    assert bool(told) == (where[1] not in WORDS and where not in UNSAID)
    assert bool(differences(other, FIT)) == bool(told)
    assert differences(other, other) == ()


def only(before, after):
    (found,) = differences(before, after)
    return found


def test_a_part_less_and_another_quantity():
    found = only(FIT, replace(FIT, parts=FIT.parts[:1]))
    assert (found.what, found.before, found.after) == ("fastener S-1", 4.0, None)
    more = replace(FIT, parts=(FIT.parts[0], replace(FIT.parts[1], quantity=6.0)))
    assert in_words(only(FIT, more), "mm") == ("fastener S-1", "4", "6")


def test_one_part_on_two_lines_is_counted_together():
    two = replace(FIT, parts=(FIT.parts[0], *(replace(FIT.parts[1], quantity=2.0),) * 2))
    assert differences(FIT, two) == ()


def test_a_hole_that_is_new_is_told_whole_and_one_that_moved_by_what_moved():
    bolts = Hole("bolts", "single", "key", 63.5, 914.4, 9.0, count=4, purpose="bolt")
    new = only(FIT, replace(FIT, holes=(*FIT.holes, bolts)))
    assert (new.what, new.before, new.after["diameter_mm"]) == ("key face, bolts", None, 9.0)
    assert in_words(new, "mm") == (
        "key face, bolts", "none", "count 4, diameter 9 mm, x 63.5 mm, y 914.4 mm",
    )  # fmt: skip
    moved = only(FIT, replace(FIT, holes=(replace(HOLE, x_mm=44.45), FIT.holes[1])))
    assert in_words(moved, "fraction")[0] == "inside face, lead: x"
    assert in_words(moved, "mm")[1:] == ("40 mm", "44.5 mm")


def test_what_is_so_or_not_is_said_as_yes_or_no():
    stood = replace(FIT, holes=(replace(HOLE, by_template=False), FIT.holes[1]))
    assert in_words(only(FIT, stood), "mm") == ("inside face, lead: by template", "yes", "no")
    assert in_words(only(stood, FIT), "mm")[1:] == ("no", "yes")


def test_holes_in_another_order_are_the_same_holes():
    assert differences(FIT, replace(FIT, holes=FIT.holes[::-1])) == ()


def test_a_number_that_was_rounded_on_another_way_is_the_same():
    place = FIT.placement
    assert differences(FIT, replace(FIT, placement=replace(place, x_mm=place.x_mm + 1e-9))) == ()
    # An earlier version kept places to 3 or 4 decimals.
    assert differences(FIT, replace(FIT, placement=replace(place, x_mm=place.x_mm + 4.9e-4))) == ()
    found = only(FIT, replace(FIT, placement=replace(place, x_mm=place.x_mm + 0.01)))
    assert (found.what, found.unit) == ("unit: x", "mm")


def test_what_is_no_longer_there_is_told_in_one_line_each():
    told = {each.what: in_words(each, "mm") for each in differences(FIT, Fit("does-not-fit", nearest_miss=MISS))}
    assert told["status"][1:] == ("fits", "does-not-fit")
    assert told["place of the unit"][1:] == ("face inside, pattern above, x 20 mm, y 1000 mm", "none")
    assert told["cable"][1:] == ("length 280 mm, available 300 mm", "none")
    assert told["battery"][1:] == ("days 400", "none")
    assert told["refused P-9 as unit by trim-clear"][1:] == ("values short 2 mm", "none")
    assert told["needs leaf.thickness_mm"][1:] == ("yes", "none")


def test_refusals_of_one_part_by_one_rule_are_compared_together():
    twice = replace(FIT, refused=(MISS, replace(MISS, values={"short_mm": 3.0})))
    found = only(FIT, twice)
    assert found.before == {"values": {"short_mm": 2.0}}
    assert found.after == [{"values": {"short_mm": 2.0}}, {"values": {"short_mm": 3.0}}]


def test_a_cost_of_a_version_that_wrote_no_currency_is_compared_by_its_amount():
    older = replace(FIT, currency="", cost_needs=())
    assert differences(older, FIT) == ()
    told = only(older, replace(FIT, cost=Decimal("13")))
    assert (told.what, told.before, told.after) == ("cost", "12.5", "13")
    paid = only(FIT, replace(FIT, currency="EUR"))
    assert (paid.before, paid.after) == ("12.5 USD", "12.5 EUR")


def test_a_price_that_is_written_otherwise_is_the_same_price():
    assert differences(FIT, replace(FIT, cost=Decimal("12.50"))) == ()


@pytest.mark.parametrize(("up", "edge"), [(45.0, 15.0), (-70.2, -15.7)])
def test_how_a_hole_leans_is_said_by_its_side(up, edge):
    """Nobody reads a sign as a direction: minus seventy degrees up is down."""
    leaning = replace(HOLE, up_deg=up, edge_deg=edge)
    changed = differences(replace(FIT, holes=(HOLE,)), replace(FIT, holes=(leaning,)))
    said = {each.what.rpartition(" ")[2]: in_words(each, "mm")[2] for each in changed}
    assert said["up"] == ("45° up" if up > 0 else "70.2° down")
    assert said["edge"] == ("15° toward the lock edge" if edge > 0 else "15.7° toward the hinge edge")
