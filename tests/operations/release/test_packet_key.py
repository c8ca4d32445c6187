"""What makes a packet that went out old: what is drilled and fitted, and no digit that nobody can drill."""

from dataclasses import replace

import pytest

from hwsched.operations.release.packet_key import packet_key
from hwsched.values import PointFit
from hwsched.values.fit import Alternative
from tests.rules.scenario import catalogue, chosen, fit, fp, given, hole, leaf, opening, place

FIXING = {"purpose": "fixing", "by_template": True, "count": 4, "x_mm": 70.0, "y_mm": 1090.0}
"""Pilots through the plate of 80 x 160 mm that begins at (30, 1010), by its middle."""
POCKET = {"purpose": "pocket", "face": "lock-edge", "x_mm": 13.494}
CHANNEL = {"purpose": "channel", "face": "lock-edge", "x_mm": 13.494}


def key(**facts):
    return packet_key([PointFit(given(), fit(**facts))])


def of_hole(**facts):
    return key(holes=(hole(**facts),))


def of_place(**facts):
    return key(placement=replace(place(), **facts))


def elsewhere(x_mm):
    return {"alternatives": (Alternative("above", x_mm, 1200.0, 250.0, 1.0),)}


@pytest.mark.parametrize(
    ("of", "facts", "otherwise"),
    [
        # Less than a thousandth of a millimetre beside the middle of the plate.
        (of_hole, FIXING, {"x_mm": 70.0008, "y_mm": 1089.9992}),
        (of_hole, POCKET, {"x_mm": 13.4938}),
        (of_hole, CHANNEL, {"x_mm": 13.4938}),
        (of_hole, {"edge_deg": 15.0}, {"edge_deg": 15.00004}),
        (of_place, {"x_mm": 30.0}, {"x_mm": 30.00004}),
        (of_place, {"y_mm": 1010.0}, {"y_mm": 1010.00004}),
        (of_place, {"hole_x_mm": 69.85}, {"hole_x_mm": 69.85004}),
        (of_place, {"hole_y_mm": 1030.0}, {"hole_y_mm": 1030.00004}),
        (of_place, elsewhere(20.0), elsewhere(20.0004)),
    ],
)
def test_what_no_packet_shows_makes_none_old(of, facts, otherwise):
    assert of(**facts) == of(**{**facts, **otherwise})


@pytest.mark.parametrize(
    ("of", "facts", "otherwise"),
    [
        (of_hole, FIXING, {"x_mm": 70.002}),
        (of_hole, FIXING, {"y_mm": 1089.998}),
        # Where it is told by its own place, each digit counts: neither a template nor an edge had it rounded.
        (of_hole, {**FIXING, "by_template": False}, {"x_mm": 70.0004}),
        (of_hole, {"purpose": "cable", "x_mm": 69.85}, {"x_mm": 69.8504}),
        (of_hole, {**POCKET, "face": "key"}, {"x_mm": 13.4938}),
        (of_hole, POCKET, {"x_mm": 13.492}),
        (of_hole, CHANNEL, {"y_mm": 1030.002}),
        (of_hole, {"edge_deg": 15.0}, {"edge_deg": 15.001}),
        (of_hole, {"diameter": 12.7}, {"diameter": 13.0}),
        (of_hole, {"depth_mm": 9.5}, {"depth_mm": None}),
        (of_hole, {"face": "inside"}, {"face": "key"}),
        (of_place, {"x_mm": 30.0}, {"x_mm": 30.001}),
        (of_place, {"y_mm": 1010.0}, {"y_mm": 1010.001}),
        (of_place, elsewhere(20.0), elsewhere(20.002)),
        (key, {"placement": place()}, {"placement": None}),
    ],
)
def test_what_is_drilled_or_fitted_otherwise_makes_it_old(of, facts, otherwise):
    assert of(**facts) != of(**{**facts, **otherwise})


def test_who_chose_it_and_what_it_costs_makes_none_old():
    usual = fit()
    other = replace(
        usual,
        parts=tuple(replace(each, source="by-hand", reason="in stock") for each in usual.parts),
        cost=usual.cost + 5,
        currency="EUR",
        cost_needs=("part UNIT.list_price",),
    )
    by_hand = given(chosen=[chosen("unit", "UNIT")])
    assert packet_key([PointFit(given(), usual)]) == packet_key([PointFit(by_hand, other)])


def test_the_mark_the_survey_the_parts_and_the_box_stand_in_a_packet():
    usual = key()
    for facts in ({"mark": "2"}, {"building": "Annex"}, {"level": "9"}, {"room_from": "Attic"}, {"room_to": "Attic"}):
        assert packet_key([PointFit(given(opening(**facts)), fit())]) != usual
    assert packet_key([PointFit(given(lf=leaf(thickness_mm=45.0)), fit())]) != usual
    assert packet_key([PointFit(given(), fit(fp("gasket", "SEAL")))]) != usual
    boxed = catalogue(UNIT={"kit": (("SCREW", 4.0),)})
    assert packet_key([PointFit(given(cat=boxed), fit())]) != usual


def test_there_is_none_while_a_lock_point_has_no_fit():
    point = PointFit(given(), fit())
    assert packet_key([point, PointFit(given(), None)]) == ""
    assert packet_key([point, point]) != packet_key([point])
