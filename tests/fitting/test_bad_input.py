"""Facts that cannot be true, contradict each other or are missing: named, never drawn wrong, never a crash."""

from math import inf, nan

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from hwsched.fitting import fit
from hwsched.rules.judging import check
from hwsched.survey import ITEM, LEAF, OPENING
from hwsched.values import Item, Leaf, Opening, OpeningInput, Settings
from tests.fitting.door import USUAL, door, item, leaf, lock, opening, stock


@pytest.mark.parametrize("value", [0.0, -44.45, nan, inf, 4445.0])
def test_a_thickness_that_cannot_be_true_is_put_aside_and_named(value):
    given = door(lf=leaf(thickness_mm=value))
    found = fit(given)
    assert found.status == "to-measure"
    assert [n.fact for n in found.needs] == ["leaf.thickness_mm"]
    said = [f for f in check(given, found) if f.rule == "fact-in-range"]
    assert [(f.severity, f.about) for f in said] == [("error", "leaf.thickness_mm")]


@pytest.mark.parametrize(
    ("given", "fact"),
    [
        (door(lk=lock(backset_mm=-5.0)), "existing_item.backset_mm"),
        (door(lk=lock(cylinder_height_mm=nan)), "existing_item.cylinder_height_mm"),
        (door(items=[item("closer", w=0.0)]), "existing_item.width_mm"),
        (door(opening(operations_per_day=-1.0)), "opening.operations_per_day"),
        (door(opening(hand="LHR", frame_stop_mm=500.0)), "opening.frame_stop_mm"),
    ],
)
def test_each_is_named_with_its_field(given, fact):
    found = fit(given)
    assert found.status == "to-measure"
    assert fact in [n.fact for n in found.needs]
    assert any(f.rule == "fact-in-range" and f.about == fact for f in check(given, found))


def test_a_fact_of_no_use_does_not_stop_the_fit():
    given = door(lk=lock(projection_mm=-3.0))
    found = fit(given)
    assert found.status == "fits"
    assert any(f.rule == "fact-in-range" and f.severity == "error" for f in check(given, found))


def test_items_one_over_the_other_are_named():
    given = door(items=[item("closer", 500.0, 1800.0), item("lite", 500.0, 1780.0)])
    assert any(f.rule == "items-apart" for f in check(given, fit(given)))


def test_a_part_declared_the_wrong_way_round_is_refused():
    found = fit(door(cat=stock(UNIT={"window_x0_mm": 90.0})))
    assert {r.rule for r in found.refused if r.part == "UNIT"} == {"unit-window"}
    lacking = fit(door(cat=stock(UNIT={"connector_x_mm": None}, drop=("NARROW", "SEALED", "EDGE", "BOND"))))
    assert lacking.status == "to-measure"
    assert [n.fact for n in lacking.needs] == ["part UNIT.connector_x_mm"]


def value_of(attribute):
    """Anything that may stand in a field: unknown, true, at the limits, or wrong."""
    if attribute.kind == "choice":
        return st.sampled_from((None, *(choice.value for choice in attribute.choices)))
    if attribute.kind == "flag":
        return st.sampled_from((None, False, True))
    if attribute.kind in ("length", "number"):
        low = attribute.low if attribute.low is not None else 0.0
        high = attribute.high if attribute.high is not None else 5000.0
        usual = st.floats(low, high, allow_nan=False).map(lambda number: round(number, 3))
        return st.one_of(usual, st.sampled_from((None, low, high, 0.0, -1.0, nan, inf)))
    if attribute.kind == "integer":
        return st.sampled_from((None, 1))
    return st.none()


def things(made, entity, /, **fixed):
    return st.builds(
        made,
        **{a.name: value_of(a) for a in entity.attributes if a.name not in fixed},
        **{name: st.just(value) for name, value in fixed.items()},
    )


CASES = st.builds(
    OpeningInput,
    opening=things(Opening, OPENING, id="o", mark="1"),
    leaves=st.lists(things(Leaf, LEAF, id="l"), max_size=2).map(tuple),
    items=st.lists(things(Item, ITEM, id="i"), max_size=4).map(tuple),
    catalogue=st.just(USUAL),
    settings=st.builds(
        Settings,
        length_style=st.sampled_from(("fraction", "decimal-inch", "mm")),
        prefer=st.sampled_from(("cost", "holes")),
    ),
)


@settings(max_examples=300, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(CASES)
def test_anything_at_all_is_answered(given):
    found = fit(given)
    assert found == fit(given)
    said = check(given, found)
    if found.status == "to-measure":
        assert found.needs
    if found.status == "does-not-fit":
        assert found.refused or not given.items
        assert any(f.severity == "error" for f in said)


SOUND = st.builds(
    OpeningInput,
    opening=things(
        Opening,
        OPENING,
        id="o",
        mark="1",
        form="single",
        rating="none",
        exposure="interior",
        operations_per_day=20.0,
        power_wish="battery",
    ),
    leaves=things(Leaf, LEAF, id="l", position="single", width_mm=900.0, height_mm=2100.0, undercut_mm=5.0).map(
        lambda x: (x,)
    ),
    items=st.tuples(
        things(
            Item,
            ITEM,
            id="k",
            kind="lock",
            leaf=None,
            disposition="keep",
            face="edge",
            cylinder_height_mm=1000.0,
            trim_key_mm=0.0,
            cam_form="straight",
        ),
        things(Item, ITEM, id="i", leaf=None),
    ),
    catalogue=st.just(USUAL),
    settings=st.just(Settings(length_style="mm")),
)


@settings(max_examples=300, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(SOUND)
def test_a_door_with_wild_facts_is_answered(given):
    found = fit(given)
    check(given, found)
    if found.status == "does-not-fit":
        assert found.refused
