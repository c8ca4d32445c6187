from dataclasses import replace
from math import atan2, degrees, radians, tan

import pytest

from hwsched.drawings.drawing import Arc
from hwsched.drawings.opening.bore_detail import bore_detail
from hwsched.values import Hole
from tests.drawings.measuring import named, words
from tests.drawings.openings import ALL, FIT, GIVEN, INCH, LEAF

THICK = 1.75 * INCH


def detail(**hole):
    made = Hole("lead", "single", hole.pop("face", "inside"), 100.0, 1000.0, 9.525, order=1, **hole)
    return bore_detail(GIVEN, replace(FIT, holes=(made,)))


@pytest.mark.parametrize("face", ["inside", "key"])
@pytest.mark.parametrize(("up", "edge"), [(45.0, 15.0), (-10.0, 0.0), (0.0, -20.0), (30.0, 5.0)])
def test_axes_lean_by_the_angles_of_the_hole(face, up, edge):
    upright, plan = named(detail(face=face, up_deg=up, edge_deg=edge), "lead axis")
    sign = 1.0 if face == "inside" else -1.0
    for axis, angle in ((upright, up), (plan, -edge)):
        (ax, ay), (bx, by) = axis.points
        assert sign * (bx - ax) > 0
        assert degrees(atan2(by - ay, abs(bx - ax))) == pytest.approx(angle)


def test_a_through_hole_of_fifteen_and_ten_degrees_shifts_as_published():
    # Facts 8.1 (calculated from the two-view picture): 11.9103 and 7.8377 mm through 44.45 mm.
    upright, plan = named(detail(up_deg=10.0, edge_deg=15.0), "lead axis")
    assert upright.points[1][1] - upright.points[0][1] == pytest.approx(7.8377, abs=1e-4)
    assert plan.points[1][1] - plan.points[0][1] == pytest.approx(-11.9103, abs=1e-4)


def test_depth_counts_along_the_axis():
    upright = named(detail(up_deg=30.0, depth_mm=20.0), "lead axis")[0]
    (ax, ay), (bx, by) = upright.points
    assert ((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5 == pytest.approx(20.0)


def test_walls_of_a_slanted_bore_are_a_diameter_apart():
    bore = named(detail(up_deg=45.0), "lead")[0]
    (ax, ay), (bx, by), _, (dx, dy) = bore.points
    slope = radians(45.0)
    assert (dy - ay) * (1 / (1 + tan(slope) ** 2)) ** 0.5 == pytest.approx(9.525)
    assert ax == dx
    assert bx > ax
    assert by > ay


def test_arcs_show_only_angles_that_are_there():
    assert not [s for s in detail().shapes if isinstance(s, Arc)]
    assert len([s for s in detail(up_deg=45.0, edge_deg=15.0).shapes if isinstance(s, Arc)]) == 2


def test_words_say_both_angles():
    given, fit = ALL["bored"]
    assert "45° up, 15° toward the lock edge" in words(bore_detail(given, fit))


def test_without_holes_or_thickness_words_stand_there():
    assert "no hole starts" in words(bore_detail(GIVEN, replace(FIT, holes=())))
    assert "Leaf thickness" in words(bore_detail(replace(GIVEN, leaves=(replace(LEAF, thickness_mm=None),)), FIT))


def test_a_channel_begins_at_the_bottom_of_its_square_hole():
    # Common practice: square for 3/8 in, then 10 degrees to the face; 0.762 in along the slanted bore it
    # enters at 0.507 in from the face.
    upright = named(detail(up_deg=-80.0, from_depth_mm=0.375 * INCH, depth_mm=0.762 * INCH), "lead axis")[0]
    (z0, y0), (z1, y1) = upright.points
    assert z0 == pytest.approx(0.375 * INCH)
    assert z1 == pytest.approx(0.507 * INCH, abs=0.02)
    assert y0 - y1 == pytest.approx(0.75 * INCH, abs=0.02)  # from 2 1/2 to 1 3/4 in above the cylinder
    assert "10° to the leaf's face" in words(detail(up_deg=-80.0, from_depth_mm=9.5, depth_mm=19.0))


@pytest.mark.parametrize("up", [0.0, -45.0, -80.0])
def test_a_blind_end_is_square_to_the_axis_and_a_start_lies_in_its_face(up):
    (_, _), (bx, by), (cx, cy), (dx, _) = named(detail(up_deg=up, depth_mm=15.0), "lead")[0].points
    (ax, ay), (ex, ey) = named(detail(up_deg=up, depth_mm=15.0), "lead axis")[0].points
    assert (cx - bx) * (ex - ax) + (cy - by) * (ey - ay) == pytest.approx(0.0, abs=1e-6)
    assert ((cx - bx) ** 2 + (cy - by) ** 2) ** 0.5 == pytest.approx(9.525)
    assert dx == pytest.approx(ax)
