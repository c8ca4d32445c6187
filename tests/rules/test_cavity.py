"""The hollow round a lock, by each form: where the lead leaves the new part, and what a bore may enter.

The leaf is 44.45 thick, the lock's centre 69.85 from the edge and 1000 up; a case is 150 high, 44.45 of it above
the cylinder, 105 deep and 25.4 thick. A cylinder's hole is 1 1/4 in, 31.75 (shared facts 3.3).
"""

import pytest

from hwsched.rules.solid.bores import as_rod
from hwsched.rules.solid.cavity import cavity, existing_hole_top, lock_body, way_kinds
from hwsched.values import Stack
from tests.rules.scenario import catalogue, fit, given, hole, leaf, lock

X, Y, T = 69.85, 1000.0, 44.45


def of(form, number, role="cylinder", cat=None, stack=None, **facts):
    found = fit(lock_number=number, role=role, without=() if number == "CYL" else ("cam", "collar"), stack=stack)
    return cavity(given(lk=lock(form, **facts), cat=cat), found)


@pytest.mark.parametrize(
    ("changed", "low", "high"),
    [
        # 1000 + 44.45 - 150 = 894.45; in the middle of the leaf (44.45 - 25.4) / 2 = 9.525 are left on each side.
        ({}, (0.0, 894.45, 9.525), (105.0, 1044.45, 34.925)),
        # A case set off toward the key face.
        ({"case_offset_mm": 2.0}, (0.0, 894.45, 11.525), (105.0, 1044.45, 36.925)),
        # Nobody told its height: it surely holds the cylinder, whose hole ends 15.875 below.
        ({"case_height_mm": None}, (0.0, 1000.0 - 15.875, 9.525), (105.0, 1044.45, 34.925)),
        # Nor its depth, or one that cannot be: 69.85 + 15.875.
        ({"case_depth_mm": None}, (0.0, 894.45, 9.525), (85.725, 1044.45, 34.925)),
        ({"case_depth_mm": 60.0}, (0.0, 894.45, 9.525), (85.725, 1044.45, 34.925)),
    ],
)
def test_a_case_is_what_was_measured_and_holds_its_cylinder(changed, low, high):
    for form, number in (("mortise", "CYL"), ("euro-profile", "EURO")):
        box = of(form, number, **{"case_width_mm": 25.4, **changed}).box
        assert (*box.low, *box.high) == pytest.approx((*low, *high)), form


def test_without_its_upper_end_or_its_thickness_a_case_is_unknown():
    for fact in ("case_above_mm", "case_width_mm"):
        assert of("mortise", "CYL", **{fact: None}) is None


def test_a_gate_lock_s_case_stands_about_the_cylinder_and_its_lead_leaves_on_the_key_side():
    found = of("gate", "GATE", "lock")
    assert (*found.box.low, *found.box.high) == pytest.approx((X - 45.0, 925.0, 0.0, X + 45.0, 1075.0, T))
    assert found.lead_z == T
    assert of("gate", "GATE", "lock", catalogue(GATE={"case_height_mm": None})) is None
    assert of("gate", "GATE", "lock", catalogue(GATE={"case_width_mm": None})) is None


@pytest.mark.parametrize(
    ("form", "number", "across", "ends", "lead_z"),
    [
        # 1 in of body behind trim of nothing: 44.45 - 25.4 from the inside face.
        ("rim", "RIM", 31.75, (0.0, 19.05), 19.05),
        # 32 deep from the key face.
        ("reader", "READ", 28.0, (0.0, 12.45), 12.45),
        ("bored", "BORED", 53.975, (0.0, T), T / 2),
        # Through the leaf, its lead on the inside.
        ("cabinet", "CAB", 19.05, (0.0, T), 0.0),
    ],
)
def test_a_round_hole_has_a_narrow_box_laid_into_it(form, number, across, ends, lead_z):
    """6 wide, and as high as the circle is there: 2 sqrt((d / 2)^2 - 3^2)."""
    found = of(form, number, "lock" if form in ("bored", "cabinet", "reader") else "cylinder")
    half = ((across / 2) ** 2 - 9.0) ** 0.5
    assert (*found.box.low, *found.box.high) == pytest.approx((X - 3.0, Y - half, ends[0], X + 3.0, Y + half, ends[1]))
    assert found.lead_z == pytest.approx(lead_z)
    assert (found.bottom, found.top) == pytest.approx((Y - half, Y + half))


def test_the_lead_of_a_threaded_cylinder_is_carried_in_by_each_turn():
    """The cam plane is in the middle, 22.225; a turn is 25.4 / 32 = 0.79375; a rear 2 before that plane: 24.225."""
    assert of("mortise", "CYL", stack=Stack("threaded", 3.175, 0.0)).lead_z == pytest.approx(22.225)
    turned = Stack("threaded", 3.175, 0.0, turns=2)
    assert of("mortise", "CYL", stack=turned).lead_z == pytest.approx(22.225 - 1.5875)
    ahead = catalogue(CYL={"cam_offset_mm": 2.0})
    assert of("mortise", "CYL", cat=ahead, stack=turned).lead_z == pytest.approx(24.225 - 1.5875)


def test_what_an_existing_lock_takes_by_the_survey_alone():
    box = lock_body(lock(), T)
    assert (*box.low, *box.high) == pytest.approx((0.0, 894.45, 9.525, 105.0, 1044.45, 34.925))
    bored, rim = lock_body(lock("bored"), T), lock_body(lock("rim"), T)
    assert (bored.start, bored.end, bored.diameter_mm) == ((X, Y, 0.0), (X, Y, T), 53.975)
    assert (rim.start, rim.end, rim.diameter_mm) == ((X, Y, 0.0), (X, Y, T), 31.75)
    assert lock_body(lock("gate"), T) is None
    for fact in ("case_above_mm", "case_height_mm", "case_depth_mm", "case_width_mm", "backset_mm"):
        assert lock_body(lock(**{fact: None}), T) is None


def test_the_old_hole_ends_half_its_diameter_above_its_centre():
    assert existing_hole_top(given(), leaf()) == pytest.approx(1015.875)
    assert existing_hole_top(given(lk=lock(cylinder_height_mm=None)), leaf()) is None


@pytest.mark.parametrize(
    ("form", "number", "material", "kinds"),
    [
        # In what is solid the lead is led through bores, behind a sheet inside it, along glass where a patch stands.
        ("mortise", "CYL", "wood", ("square", "channel")),
        ("mortise", "CYL", "aluminium", ("square", "hollow")),
        ("mortise", "CYL", "glass", ("surface",)),
        ("rim", "RIM", "composite", ("channel",)),
        ("rim", "RIM", "glass", ("surface",)),
        ("euro-profile", "EURO", "wood", ("channel",)),
        ("euro-profile", "HALF", "wood", ("square", "channel")),
        ("euro-profile", "HALF", "glass", ("surface",)),
        ("reader", "READ", "hollow-metal", ("square", "hollow")),
        ("reader", "READ", "glass", ()),
        ("bored", "BORED", "mineral-core", ("slanted",)),
        ("bored", "BORED", "steel-gate", ("hollow",)),
        ("bored", "BORED", "glass", ()),
        ("cabinet", "CAB", "wood", ("surface",)),
        ("gate", "GATE", "steel-gate", ("hollow",)),
        ("gate", "GATE", "wood", ("surface",)),
        ("mortise", "CYL", None, ()),
        (None, "CYL", "wood", ()),
    ],
)
def test_the_ways_for_a_lead_by_form_and_material(form, number, material, kinds):
    role = {"BORED": "lock", "CAB": "lock", "GATE": "lock", "READ": "reader"}.get(number, "cylinder")
    there = given(lf=leaf(material=material), lk=lock(form) if form else lock(lock_form=None))
    assert way_kinds(there, fit(lock_number=number, role=role)) == kinds


@pytest.mark.parametrize(
    ("inside_half", "square"), [(10.0, True), (9.0, True), (10.5, False), (30.0, False), (None, False)]
)
def test_behind_a_half_cylinder_the_leaf_is_free(inside_half, square):
    """Its blind side is 10 mm (DIN 18252 as quoted in trade)."""
    there = given(lk=lock("euro-profile"), cat=catalogue(HALF={"inside_half_mm": inside_half}))
    assert ("square" in way_kinds(there, fit(lock_number="HALF"))) is square


@pytest.mark.parametrize(
    ("facts", "start", "end"),
    [
        # Square from either face: as deep as it is told, through where it is not.
        ({"depth_mm": 9.5}, (X, 1030.0, 0.0), (X, 1030.0, 9.5)),
        ({"depth_mm": None}, (X, 1030.0, 0.0), (X, 1030.0, T)),
        ({"face": "key", "depth_mm": 9.5}, (X, 1030.0, T), (X, 1030.0, T - 9.5)),
        ({"face": "key", "depth_mm": None}, (X, 1030.0, T), (X, 1030.0, 0.0)),
        # No deeper than the leaf is thick, and from where it begins.
        ({"depth_mm": 90.0}, (X, 1030.0, 0.0), (X, 1030.0, T)),
        ({"face": "key", "from_depth_mm": 10.0, "depth_mm": None}, (X, 1030.0, T - 10.0), (X, 1030.0, 0.0)),
        ({"from_depth_mm": 10.0, "depth_mm": 5.0}, (X, 1030.0, 10.0), (X, 1030.0, 15.0)),
        # At 45 degrees down a depth of 20 along its axis goes 14.142 in and down; aside too it goes 11.547 each way.
        ({"up_deg": -45.0, "depth_mm": 20.0}, (X, 1030.0, 0.0), (X, 1030.0 - 14.142, 14.142)),
        (
            {"up_deg": -45.0, "edge_deg": -45.0, "depth_mm": 20.0},
            (X, 1030.0, 0.0),
            (X + 11.547, 1030.0 - 11.547, 11.547),
        ),
        ({"up_deg": 45.0, "edge_deg": 45.0, "depth_mm": 20.0}, (X, 1030.0, 0.0), (X - 11.547, 1030.0 + 11.547, 11.547)),
    ],
)
def test_a_hole_as_the_round_body_that_it_takes(facts, start, end):
    rod = as_rod(hole(**facts), T)
    assert (rod.start, rod.end, rod.diameter_mm) == (pytest.approx(start), pytest.approx(end, abs=0.001), 12.7)
