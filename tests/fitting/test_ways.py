"""Ways for the lead: every angled bore that they drill enters the lock's hollow and stays in the leaf."""

import math
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hwsched.calc.opening.bore import Box, LeafSize, bore
from hwsched.fitting import fit
from hwsched.fitting.ways import ABOVE, BELOW, BESIDE, STRAIGHT, _channel_angle, holes_of, run_points, ways
from hwsched.rules.solid.bores import angled, as_bore
from hwsched.rules.solid.cavity import Cavity, cavity, way_kinds
from hwsched.values import Catalogue, Fit, Hole
from tests.fitting.door import door, leaf, lock, opening
from tests.rules.scenario import fp

ROLE = {
    "CYL": "cylinder",
    "RIM": "cylinder",
    "EURO": "cylinder",
    "HALF": "cylinder",
    "BORED": "lock",
    "CAB": "lock",
    "GATE": "lock",
    "READ": "reader",
}


def with_lock(number):
    return Fit("to-measure", parts=(fp(ROLE[number], number),))


@pytest.mark.parametrize(
    ("form", "part", "material", "kinds"),
    [
        ("mortise", "CYL", "wood", ("square", "channel")),
        ("mortise", "CYL", "mineral-core", ("square", "channel")),
        ("mortise", "CYL", "hollow-metal", ("square", "hollow")),
        ("mortise", "CYL", "aluminium", ("square", "hollow")),
        ("mortise", "CYL", "glass", ("surface",)),
        ("euro-profile", "EURO", "wood", ("channel",)),
        ("euro-profile", "HALF", "wood", ("square", "channel")),
        ("rim", "RIM", "wood", ("channel",)),
        ("rim", "RIM", "hollow-metal", ("hollow",)),
        ("bored", "BORED", "wood", ("slanted",)),
        ("bored", "BORED", "hollow-metal", ("hollow",)),
        ("bored", "BORED", "glass", ()),
        ("cabinet", "CAB", "wood", ("surface",)),
        ("gate", "GATE", "steel-gate", ("hollow",)),
        ("gate", "GATE", "wood", ("surface",)),
        ("reader", "READ", "composite", ("square", "channel")),
    ],
)
def test_which_ways_there_are(form, part, material, kinds):
    assert way_kinds(door(lf=leaf(material=material), lk=lock(form)), with_lock(part)) == kinds


def test_without_the_case_s_height_nothing_is_drilled_below_it():
    given = door(lk=lock(case_height_mm=None))
    base = with_lock("CYL")
    found = ways(given, base, given.leaves[0], cavity(given, base), "inside")
    assert {w.pattern for w in found} == {STRAIGHT, ABOVE}


def test_a_hollow_leaf_offers_no_way_to_a_lock_that_is_not_chosen_yet():
    given = door(lf=leaf(material="hollow-metal"), lk=lock("rim"))
    at = cavity(given, with_lock("RIM"))
    assert ways(given, Fit("to-measure"), given.leaves[0], at, "inside") == ()


def test_lead_starts_where_the_cylinder_ends():
    # Rear of the shell: T/2 + o - k p; here two turns beyond the centre.
    from hwsched.values import Stack

    given = door()
    base = Fit("to-measure", parts=(fp("cylinder", "CYL"),), stack=Stack("threaded", 4.7625, 0.0, 2))
    assert cavity(given, base).lead_z == pytest.approx(44.45 / 2 - 2 * 25.4 / 32)
    rim = door(lk=lock("rim", trim_key_mm=3.0))
    assert cavity(rim, with_lock("RIM")).lead_z == pytest.approx(44.45 - 25.4 + 3.0)


@settings(max_examples=200, deadline=None)
@given(
    st.sampled_from((("mortise", "CYL"), ("rim", "RIM"), ("euro-profile", "EURO"), ("bored", "BORED"))),
    st.floats(40.0, 60.0),
    st.floats(30.0, 90.0),
    st.floats(0.0, 1.0),
)
def test_an_angled_bore_enters_the_lock_s_hollow(kind, thick, backset, share):
    form, part = kind
    given = door(opening(), leaf(thickness_mm=thick), lock(form, backset_mm=69.85 if form == "bored" else backset))
    base = with_lock(part)
    lf = given.leaves[0]
    at = cavity(given, base)
    for way in ways(given, base, lf, at, "inside"):
        spot = (way.hole.x0, way.hole.y0 + share * (way.hole.y1 - way.hole.y0))
        holes = holes_of(given, base, way, lf, at, spot)
        points = run_points(given, base, way, lf, at, spot, holes)
        assert points[0] == (at.x, at.y, at.lead_z)
        assert points[-1] == (spot[0], spot[1], 0.0)
        for hole in angled(Fit("to-measure", holes=holes)):
            size = LeafSize(lf.width_mm, 2200.0, thick)
            found = bore(as_bore(hole, size, at.box))
            if way.kind == "slanted" and found.exit is not None:
                continue  # too far off for this leaf: the rule on walls refuses it
            assert found.enters_target, (way, hole)
            assert found.length_mm <= hole.depth_mm + 0.02


def test_below_mirrors_above():
    given = door(lk=lock(case_height_mm=88.9, case_above_mm=44.45))
    base = with_lock("CYL")
    at = cavity(given, base)
    found = {w.pattern: w for w in ways(given, base, given.leaves[0], at, "inside") if w.kind == "channel"}
    up, down = found[ABOVE].hole, found[BELOW].hole
    assert up.y0 - at.y == pytest.approx(at.y - down.y1)
    assert up.y1 - at.y == pytest.approx(at.y - down.y0)
    _, channel = holes_of(given, base, found[BELOW], given.leaves[0], at, (down.x0, down.y1))
    assert channel.up_deg == pytest.approx(80.0)
    assert math.isclose(found[ABOVE].base_mm, found[BELOW].base_mm)


def test_an_angled_bore_is_told_as_long_as_it_must_be_and_no_longer():
    """Down from 1063.5 to the case's top at 1044.45 at 10 degrees to the face: 19.05 / cos 10; slanted by 45 and 15."""
    given = door()
    base, lf = with_lock("CYL"), given.leaves[0]
    at = cavity(given, base)
    (way,) = [w for w in ways(given, base, lf, at, "inside") if (w.kind, w.pattern) == ("channel", ABOVE)]
    _, channel = holes_of(given, base, way, lf, at, (69.85, 1063.5))
    long = 19.05 / math.cos(math.radians(10.0))
    assert long < channel.depth_mm < long + 0.02
    # Into the bore of 53.975 at 1000 from a hole 20 above its upper end, whose hollow is as high as the circle 3 aside.
    given = door(lk=lock("bored"))
    base, lf = with_lock("BORED"), given.leaves[0]
    at = cavity(given, base)
    (way,) = [w for w in ways(given, base, lf, at, "inside") if w.pattern == ABOVE]
    (hole,) = holes_of(given, base, way, lf, at, (way.hole.x0, at.top + 20.0))
    long = math.hypot(20.0, 20.0, 69.85 - way.hole.x0)
    assert long < hole.depth_mm < long + 0.02


@pytest.mark.parametrize("material", ["hollow-metal", "steel-gate"])
def test_a_hole_into_a_hollow_leaf_keeps_off_the_lock_s_case(material):
    """Half of the 1/2 in hole and 1/8 in between: 6.35 + 3.175 from the case, above it and below it (practice).

    The case goes from 44.45 above the cylinder to 150 - 44.45 = 105.55 below.
    """
    given = door(
        lf=leaf(material=material), lk=lock(cylinder_height_mm=1000.0, case_above_mm=44.45, case_height_mm=150.0)
    )
    base = with_lock("CYL")
    found = {w.pattern: w.hole for w in ways(given, base, given.leaves[0], cavity(given, base), "inside")}
    assert found[ABOVE].y0 == pytest.approx(1000 + 44.45 + 6.35 + 3.175)
    assert found[BELOW].y1 == pytest.approx(1000 - 105.55 - 6.35 - 3.175)


def test_behind_a_gate_lock_the_case_itself_is_kept_off():
    # GATE is 150 high: 75 to either side of its middle.
    given = door(lf=leaf(material="steel-gate", construction=None), lk=lock("gate"))
    base = with_lock("GATE")
    found = {w.pattern: w.hole for w in ways(given, base, given.leaves[0], cavity(given, base), "inside")}
    assert found[ABOVE].y0 == pytest.approx(1000 + 75 + 6.35 + 3.175)
    assert found[BELOW].y1 == pytest.approx(1000 - 75 - 6.35 - 3.175)


@pytest.mark.parametrize(
    ("form", "number", "material", "drilled"),
    [
        # Through the sheet; behind a gate lock's case besides; straight; square and leaning; slantwise.
        ("mortise", "CYL", "hollow-metal", {"square": 1, "hollow": 1}),
        ("rim", "RIM", "aluminium", {"hollow": 1}),
        ("gate", "GATE", "steel-gate", {"hollow": 2}),
        ("mortise", "CYL", "wood", {"square": 1, "channel": 2}),
        ("bored", "BORED", "wood", {"slanted": 1}),
        ("cabinet", "CAB", "wood", {"surface": 0}),
    ],
)
def test_how_many_holes_a_way_costs(form, number, material, drilled):
    given = door(lf=leaf(material=material), lk=lock(form))
    base, lf = with_lock(number), given.leaves[0]
    at = cavity(given, base)
    found = ways(given, base, lf, at, "inside")
    assert {way.kind: way.drilled for way in found} == drilled
    for way in found:
        spot = (way.hole.x0, way.hole.y0)
        assert len(holes_of(given, base, way, lf, at, spot)) == way.drilled


@pytest.mark.parametrize(("pattern", "end", "hole"), [(ABOVE, 1044.45 + 1.25, 1060.0), (BELOW, 894.45 - 1.25, 880.0)])
def test_in_a_hollow_leaf_the_lead_goes_round_the_case_and_over_its_end(pattern, end, hole):
    """The case fills the leaf from 9.525 to 34.925 behind the inside face; a lead of 2.5 lies 1.25 beside it.

    Out of the cylinder in the middle of 44.45, to the key side of the case, along it to its end at 44.45 above or
    105.55 below the cylinder, over that to the inside, and out through the sheet.
    """
    given = door(lf=leaf(material="hollow-metal"))
    base, lf = with_lock("CYL"), given.leaves[0]
    at = cavity(given, base)
    (way,) = [w for w in ways(given, base, lf, at, "inside") if w.pattern == pattern]
    holes = holes_of(given, base, way, lf, at, (69.85, hole))
    points = run_points(given, base, way, lf, at, (69.85, hole), holes)
    expected = [(1000.0, 22.225), (1000.0, 36.175), (end, 36.175), (end, 8.275), (hole, 0.0)]
    assert [(x, pytest.approx(y), pytest.approx(z)) for x, y, z in points] == [(69.85, y, z) for y, z in expected]


def test_a_bored_lock_has_no_case_to_go_round():
    given = door(lf=leaf(material="hollow-metal"), lk=lock("bored"))
    base, lf = with_lock("BORED"), given.leaves[0]
    at = cavity(given, base)
    (way,) = [w for w in ways(given, base, lf, at, "inside") if w.pattern == ABOVE]
    points = run_points(given, base, way, lf, at, (69.85, 1060.0), holes_of(given, base, way, lf, at, (69.85, 1060.0)))
    # Up in the middle of the leaf, then out.
    assert points == [(69.85, 1000.0, 22.225), (69.85, 1060.0, 22.225), (69.85, 1060.0, 0.0)]


@pytest.mark.parametrize(
    ("pattern", "hole", "base", "edge"),
    [
        (ABOVE, (69.85, 1050.0, 69.85, 1050.0 + 203.2), 1050.0 - 1000.0, (69.85, 1050.0)),
        (BELOW, (69.85, 930.0 - 203.2, 69.85, 930.0), 1000.0 - 930.0, (69.85, 930.0)),
        (BESIDE, (110.0, 1000.0, 110.0 + 203.2, 1000.0), 110.0 - 69.85, (110.0, 1000.0)),
    ],
)
def test_along_glass_the_lead_goes_from_the_patch_s_edge(pattern, hole, base, edge):
    """A patch from 10 to 110 and from 930 to 1050 round a cylinder at 69.85 and 1000, whose lead ends in the middle.

    Inside the patch it goes to its edge, there 6.35 out to the face, and up to 8 in along it (from memory).
    """
    patch = lock(x_mm=60.0, y_mm=990.0, width_mm=100.0, height_mm=120.0)
    given = door(lf=leaf(material="glass", thickness_mm=12.7), lk=patch)
    base_fit, lf = with_lock("CYL"), given.leaves[0]
    at = cavity(given, base_fit)
    (way,) = [w for w in ways(given, base_fit, lf, at, "inside") if w.pattern == pattern]
    assert tuple(way.hole) == pytest.approx(hole)
    assert (way.base_mm, way.drilled) == (pytest.approx(base + 6.35), 0)
    spot = (way.hole.x1, way.hole.y0)
    assert holes_of(given, base_fit, way, lf, at, spot) == ()
    points = run_points(given, base_fit, way, lf, at, spot, ())
    assert points == [(69.85, 1000.0, pytest.approx(6.35)), (*edge, pytest.approx(6.35)), (*edge, 0.0), (*spot, 0.0)]


def test_out_of_a_gate_lock_the_lead_goes_up_in_the_middle_of_the_tube():
    """From behind the case on the key side, 44.45, into the tube's middle, 22.225, up there and out by the hole."""
    given = door(lf=leaf(material="steel-gate", construction=None), lk=lock("gate"))
    base, lf = with_lock("GATE"), given.leaves[0]
    at = cavity(given, base)
    (way,) = [w for w in ways(given, base, lf, at, "inside") if w.pattern == ABOVE]
    assert way.base_mm == pytest.approx(75.0 + 6.35 + 3.175 + 44.45)
    points = run_points(given, base, way, lf, at, (69.85, 1090.0), holes_of(given, base, way, lf, at, (69.85, 1090.0)))
    assert points == [
        (69.85, 1000.0, 44.45), (69.85, 1000.0, 22.225), (69.85, 1090.0, 22.225), (69.85, 1090.0, 0.0),
    ]  # fmt: skip


def test_a_slanted_hole_s_slot_is_as_long_as_its_section_in_the_face():
    """3/8 in, at 45 degrees up and some aside: half of it over the sine of its angle to the face, to each side."""
    given = door(lk=lock("bored"))
    base, lf = with_lock("BORED"), given.leaves[0]
    at = cavity(given, base)
    (way,) = [w for w in ways(given, base, lf, at, "inside") if w.pattern == ABOVE]
    spot = (way.hole.x0, way.hole.y1)
    (hole,) = holes_of(given, base, way, lf, at, spot)
    # Along the axis it goes 1 in, 1 up, and tan 15 aside, give or take 2 degrees (practice): its angle to the face.
    assert abs(hole.edge_deg) == pytest.approx(15, abs=2 + 1e-9)
    long = math.hypot(1.0, 1.0, math.tan(math.radians(hole.edge_deg)))
    assert hole.slot_mm == pytest.approx(4.7625 * long, abs=1e-3)


def test_a_slanted_hole_may_end_before_the_far_face():
    """A jig that leans 20 degrees, give or take 2, in a leaf of 1 3/8 in.

    The bore that leans 18 through the whole leaf begins 34.925 tan 18 = 11.348 aside; at 22 from there it goes
    11.348 / tan 22 = 28.087 deep, and with half of 3/8 in across leaves less than 1/8 in of the far face. One that
    begins nearer, at the same slope, ends before it.
    """
    given = door(lf=leaf(thickness_mm=34.925), lk=lock("bored"))
    parts = dict(given.catalogue.parts)
    told = {**parts["BORED"].attributes, "lead_hole_edge_deg": 20.0, "lead_hole_up_deg": 50.0}
    parts["BORED"] = replace(parts["BORED"], attributes=told)
    found = fit(replace(given, catalogue=Catalogue(parts, "told")))
    assert found.status == "fits"
    (hole,) = [each for each in found.holes if each.purpose == "cable"]
    assert abs(hole.up_deg) == 50.0
    assert abs(hole.edge_deg) == pytest.approx(20, abs=2 + 1e-9)
    deep = (69.85 - hole.x_mm) / math.tan(math.radians(abs(hole.edge_deg)))
    assert deep < 28.087
    long = math.hypot(1.0, math.tan(math.radians(50.0)), math.tan(math.radians(hole.edge_deg)))
    steep = (long**2 - 1.0) ** 0.5 / long
    assert 34.925 - deep - 4.7625 * steep >= 3.175 - 0.05


@pytest.mark.parametrize(
    ("facts", "above", "below"),
    [
        # 2 1/2 in above and below the cylinder, or 3/8 in past the case, which ends at 1044.45 and 894.45.
        ({}, 1063.5, 894.45 - 9.525),
        # A case that ends 100 above the cylinder: 1100 + 9.525; it is 150 high.
        ({"case_above_mm": 100.0}, 1109.525, 936.5),
        # 10 thick its face is 17.225 deep: past a square bore of 9.525 the other, at 30 degrees at the most, comes down
        # (17.225 - 9.525) / tan 30 = 13.337.
        ({"case_above_mm": 100.0, "case_width_mm": 10.0}, 1113.337, 936.5),
        ({"case_width_mm": 10.0}, 1063.5, 894.45 - 13.337),
    ],
)
def test_a_channel_begins_where_its_second_bore_comes_down_into_the_case(facts, above, below):
    given = door(lk=lock(**facts))
    base = with_lock("CYL")
    found = {
        w.pattern: w for w in ways(given, base, given.leaves[0], cavity(given, base), "inside") if w.kind == "channel"
    }
    assert found[ABOVE].hole.y0 == pytest.approx(above, abs=0.001)
    assert found[BELOW].hole.y1 == pytest.approx(below, abs=0.001)
    # From the cylinder's centre up or down to the hole, and from where the lead leaves it to the face.
    assert found[ABOVE].base_mm == pytest.approx(above - 1000.0 + 22.225, abs=0.001)
    assert found[BELOW].base_mm == pytest.approx(1000.0 - below + 22.225, abs=0.001)


@pytest.mark.parametrize(
    ("far", "angle"),
    [
        # A case from 20 to 34 deep, 47.7625 below the hole: half of the bit off its near face, (20 + 4.7625 - 9.525)
        # in 47.7625, 17.694 degrees up to the next hundredth.
        (34.0, 17.70),
        # One too narrow for the whole bit: no steeper than it takes to reach it, (20 - 9.525) in 47.7625, 12.370.
        (27.0, 12.37),
        # The usual angle leads to 9.525 + 47.7625 tan 10 = 17.947: nothing is changed where that is in the case.
        (None, 10.0),
    ],
)
def test_a_channel_that_cannot_lean_as_usual_is_aimed_where_the_whole_bit_comes_in(far, angle):
    near = 20.0 if far is not None else 15.0
    box = Box((0.0, 900.0, near), (105.0, 1096.0, far or 34.0))
    hole = Hole("access", "single", "inside", 55.0, 1143.7625, 9.525)
    at = Cavity(55.0, 1040.0, 27.0, box)
    assert _channel_angle(10.0, "usual", hole, leaf(thickness_mm=54.0), at, 9.525, 9.525) == pytest.approx(angle)


def test_a_bore_below_a_face_leans_to_the_side_that_its_hole_says():
    """Toward the lock edge is toward zero, whichever face it starts in."""
    hole = Hole("lead", "single", "inside", 60.0, 1000.0, 9.5, depth_mm=30.0, edge_deg=15.0, from_depth_mm=9.5)
    found = bore(as_bore(hole, LeafSize(914.4, 2133.6, 44.45)))
    assert found.end[0] == pytest.approx(60.0 - (found.end[2] - 9.5) * math.tan(math.radians(15.0)))
    assert found.end[0] < 60.0
