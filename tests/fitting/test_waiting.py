"""What only waits for a fact is asked for it, never refused: in every slot, whatever else is refused beside it.

Lengths in mm. A gate may hang up to 300 above the floor while nobody measured its undercut, any other leaf up to 60:
common practice.
"""

from dataclasses import fields, replace

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from hwsched.fitting import fit
from tests.fitting.door import door, item, leaf, lock, opening, stock
from tests.fitting.test_gate import GATE, gate
from tests.fitting.test_properties import inputs

_WHICH = ("id", "mark", "opening_id", "leaf_id", "position", "kind", "lock_form", "form", "on_leaf", "disposition")
"""Facts that say which thing it is."""


def told(thing):
    return [each.name for each in fields(thing) if each.name not in _WHICH and _is_told(getattr(thing, each.name))]


def _is_told(value):
    return value is not None and value != () and not isinstance(value, dict)


def blanked(data, there):
    """The opening with some facts left out, of anything that was surveyed."""
    for _ in range(data.draw(st.integers(1, 3))):
        things = [("opening", there.opening), *(("leaves", each) for each in there.leaves)]
        things += [("items", each) for each in there.items]
        where, thing = data.draw(st.sampled_from(things))
        names = told(thing)
        if not names:
            continue
        less = replace(thing, **{data.draw(st.sampled_from(names)): None})
        if where == "opening":
            there = replace(there, opening=less)
        else:
            there = replace(there, **{where: tuple(less if e is thing else e for e in getattr(there, where))})
    return there


@settings(max_examples=100, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much])
@given(inputs(), st.data())
def test_what_fits_is_not_refused_with_a_fact_less(there, data):
    assume(fit(there).status == "fits")
    less = blanked(data, there)
    found = fit(less)
    assert found.status != "does-not-fit", found.nearest_miss


def needs(found):
    return found.status, [need.fact for need in found.needs]


def test_where_a_leaf_may_reach_a_unit_waits_for_its_undercut():
    """1000 high, a gate surely reaches from 300 to 1000 and perhaps to 1300: its lock at 1150 may be on it."""
    hung = replace(GATE, height_mm=1000.0)
    at = lock("gate", case_width_mm=None, cylinder_height_mm=1150.0)
    # At 1150 the unit reaches to 1300 or so: only a leaf that hangs high enough has it.
    found = fit(gate(lf=replace(hung, undercut_mm=None), lk=at))
    assert needs(found) == ("to-measure", ["leaf.undercut_mm"])
    assert fit(gate(lf=replace(hung, undercut_mm=300.0), lk=at)).status == "fits"
    # A lock that is on none of them is a slip.
    off = replace(at, cylinder_height_mm=1301.0)
    assert fit(gate(lf=replace(hung, undercut_mm=None), lk=off)).status == "does-not-fit"


def test_a_unit_under_the_frame_s_stop_waits_for_the_undercut():
    """Of a leaf 1150 high the stop hides 1134 to 1150, or to 1210: a plate from 1010 to 1170 is under one or on it."""
    facts = {"height_mm": 1150.0, "width_mm": 900.0}
    cat = stock(drop=("EDGE", "NARROW"))
    keen = opening(hand="LHR", frame_stop_mm=15.875)
    low = lock(cylinder_height_mm=1020.0, case_above_mm=44.45)
    found = {under: fit(door(keen, leaf(**facts, undercut_mm=under), low, cat=cat)) for under in (None, 0.0, 60.0)}
    assert found[60.0].status == "fits"
    assert found[None].status != "does-not-fit"


@pytest.mark.parametrize("high", [900.0, 1400.0, 1420.0, 1450.0, 1480.0])
def test_a_pocket_in_the_edge_waits_for_the_undercut(high):
    """Whatever the leaf's height, a unit in its edge is refused only where no undercut up to 60 leaves it room."""
    cat = stock(drop=("UNIT", "NARROW", "BOND", "SEALED"))

    def of(under):
        return fit(door(lf=leaf(height_mm=high, undercut_mm=under), cat=cat)).status

    assert (of(None) == "does-not-fit") == all(of(under) == "does-not-fit" for under in (0.0, 20.0, 40.0, 60.0))


def test_two_things_in_one_place_wait_for_the_face_that_nobody_told():
    label = item("label", 200.0, 1200.0, 60.0, 30.0, face="inside")
    pull = item("closer", 200.0, 1200.0, 60.0, 60.0, face=None)
    assert needs(fit(door(items=[label, pull]))) == ("to-measure", ["existing_item.face"])
    # On both faces it is in the same place, whichever face the other is on.
    for face, other in (("inside", "inside"), ("both", None)):
        found = fit(door(items=[replace(label, face=other), replace(pull, face=face)]))
        assert found.status == "does-not-fit"
    assert fit(door(items=[label, replace(pull, face="key")])).status == "fits"


def test_a_case_that_only_a_patch_on_glass_takes_waits_for_the_leaf_s_material():
    """The usual case is 80 deep or more: no stile of 60 holds it, and a leaf of glass has none that would."""
    narrow = {"construction": "stile-and-rail", "stile_mm": 60.0}
    status, asked = needs(fit(door(lf=leaf(material=None, **narrow))))
    assert (status, "leaf.material" in asked) == ("to-measure", True)
    assert fit(door(lf=leaf(material="wood", **narrow))).status == "does-not-fit"
