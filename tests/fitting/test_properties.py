"""What must hold of every fit: its rules pass it, equal cases have equal fits, more room is never worse."""

import os
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from hwsched.fitting import fit
from hwsched.fitting.candidate import rank_of
from hwsched.rules import RULES, rule_named
from hwsched.rules.judging import check
from hwsched.values.input_key import input_key
from tests.fitting.door import door, item, leaf, lock, opening, stock

CAT = stock()
LONGER = stock(**{number: {"lead_mm": 328.6} for number in ("CYL", "RIM", "EURO", "HALF", "BORED")})


def number(low, high):
    return st.floats(low, high, allow_nan=False, allow_infinity=False).map(lambda value: round(value, 2))


@st.composite
def items(draw):
    kinds = st.sampled_from(("trim", "thumb-turn", "lever", "closer", "lite", "exit-device", "pull", "label", "other"))
    found = []
    for i in range(draw(st.integers(0, 4))):
        kind = draw(kinds)
        wide, high = draw(number(20, 300)), draw(number(20, 300))
        facts = {"face": draw(st.sampled_from(("inside", "inside", "both", "key")))}
        one = item(kind, draw(number(0, 700)), draw(number(700, 1500)), wide, high, **facts)
        found.append(replace(one, id=f"{kind}-{i}"))
    return found


@st.composite
def inputs(draw, cat=CAT):
    form = draw(st.sampled_from(("mortise", "mortise", "rim", "euro-profile", "bored")))
    thick = draw(st.sampled_from((34.925, 40.0, 44.0, 44.45, 47.6, 50.8)))
    material = draw(st.sampled_from(("wood", "wood", "hollow-metal", "aluminium", "mineral-core")))
    lf = leaf(
        thickness_mm=thick,
        material=material,
        width_mm=draw(number(500, 1200)),
        construction=draw(st.sampled_from(("flush", "flush", "narrow-stile"))),
        stile_mm=draw(number(50, 200)),
        undercut_mm=draw(st.sampled_from((None, 0.0, 10.0))),
    )
    lk = lock(
        form,
        backset_mm=69.85 if form == "bored" else draw(number(25, 90)),
        cylinder_height_mm=draw(number(850, 1200)),
        trim_key_mm=draw(st.sampled_from((0.0, 0.0, 3.175, 6.0))),
        case_above_mm=draw(number(30, 120)) if form != "bored" else None,
        thumb_turn=form == "euro-profile",
    )
    o = opening(
        hand=draw(st.sampled_from(("LH", "RH", "LHR", "RHR"))),
        rating=draw(st.sampled_from(("none", "none", "45"))),
        frame_stop_mm=draw(st.sampled_from((0.0, 12.7, 15.875))),
        operations_per_day=draw(number(0, 400)),
        supply_distance_m=draw(st.sampled_from((None, 10.0))),
    )
    return door(o, lf, lk, draw(items()), cat)


EXAMPLES = max(60, int(os.environ.get("HWSCHED_FUZZ", "0")) // 100)
"""Other ones in each run."""
FAST = settings(max_examples=EXAMPLES, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@FAST
@given(inputs())
def test_the_rules_that_built_a_fit_pass_it(given):
    found = fit(given)
    assert found.status in ("fits", "does-not-fit", "to-measure")
    ids = {rule.id for rule in RULES}
    assert {r.rule for r in found.refused} <= ids
    assert all(r.reason for r in found.refused)
    if found.status == "fits":
        wrong = [f for f in check(given, found) if f.severity == "error" and rule_named(f.rule).slot != "whole"]
        assert not wrong
        assert found.cable.available_mm >= found.cable.length_mm
        assert not found.needs
    elif found.status == "does-not-fit":
        assert found.refused
        assert found.nearest_miss is not None
        assert not found.parts
    else:
        assert found.needs


@FAST
@given(inputs())
def test_equal_cases_have_equal_fits_and_name_no_opening(given):
    found = fit(given)
    again = replace(
        given,
        opening=replace(given.opening, id="other", mark="Z-99", building="B", level="3", room_from="x", priority=4),
        leaves=tuple(replace(each, id="other-leaf") for each in given.leaves),
        items=tuple(replace(each, id=f"other-{i}") for i, each in enumerate(given.items)),
    )
    assert input_key(again) == input_key(given)
    assert fit(again) == found
    assert check(again, found) == check(given, found)


@FAST
@given(inputs())
def test_a_longer_lead_never_makes_a_reach_worse(given):
    found = fit(given)
    longer = fit(replace(given, catalogue=LONGER))
    if found.status == "fits":
        assert longer.status == "fits"
        assert rank_of(given, longer) <= rank_of(given, found)
    short = {r.part for r in found.refused if r.rule == "lead-reaches"}
    assert {r.part for r in longer.refused if r.rule == "lead-reaches"} <= short


@FAST
@given(inputs(), st.data())
def test_removing_an_item_never_makes_a_place_worse(given, data):
    # An exit device that goes leaves the rim lock's own case in its place, which may stand more in the way.
    others = [each for each in given.items if each.kind not in ("lock", "exit-device")]
    if not others:
        return
    gone = data.draw(st.sampled_from(others))
    # The lock stands in the edge, so that no other item has to describe what stands round it on the face.
    bare = replace(given, items=tuple(replace(i, face="edge") if i.kind == "lock" else i for i in given.items))
    fewer = replace(bare, items=tuple(i for i in bare.items if i.id != gone.id))
    before, after = fit(bare), fit(fewer)
    # One that fits with an error is no better than a dearer one without.
    if before.status == "fits" and not any(found.severity == "error" for found in check(bare, before)):
        assert after.status == "fits"
        assert rank_of(bare, after) <= rank_of(bare, before)


class _Forgetful(dict):
    """Holds nothing for anybody."""

    def get(self, _key, default=None):
        return default


def _each_its_own(**facts):
    """Makers who say other distances in their templates, each its own."""
    units = ("NARROW", "UNIT", "SEALED")
    return {number: {name: value + 3.0 * at for name, value in facts.items()} for at, number in enumerate(units)}


@FAST
@given(inputs(cat=stock(**_each_its_own(hole_from_cylinder_mm=60.0, channel_entry_mm=9.0, channel_angle_deg=10.0))))
def test_what_is_kept_of_the_last_question_changes_no_fit(given):
    """By a key that leaves something out a unit would get the ways that lead to another one."""
    kept = fit(given)
    with pytest.MonkeyPatch.context() as patched:
        patched.setattr("hwsched.rules.last._held", _Forgetful())
        assert fit(given) == kept
