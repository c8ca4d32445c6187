from dataclasses import replace

import pytest

from hwsched.drawings.handing import HANDS
from hwsched.drawings.opening.edge_view import edge_view
from tests.drawings.measuring import dimensions, named, one, span, words
from tests.drawings.openings import ALL, FIT, GIVEN, INCH, LEAF, LOCK, opening

THICK = 1.75 * INCH


@pytest.mark.parametrize("hand", HANDS)
def test_the_unit_stands_proud_of_the_inside_face_on_the_side_that_the_hand_says(hand):
    # Looking at the lock edge of a leaf hinged left from the key side, the key side is on the left.
    x0, _, x1, _ = span(one(edge_view(opening(hand=hand), FIT), "unit"))
    if hand in ("LH", "LHR"):
        assert (x0, x1) == pytest.approx((THICK, THICK + 32.0))
    else:
        assert (x0, x1) == pytest.approx((-32.0, 0.0))


@pytest.mark.parametrize("hand", HANDS)
def test_a_case_off_centre_moves_toward_the_key_side(hand):
    lock = replace(LOCK, case_offset_mm=5.0)
    x0, _, x1, _ = span(one(edge_view(replace(opening(hand=hand), items=(lock,)), FIT), "lock case"))
    middle = (x0 + x1) / 2
    assert middle - THICK / 2 == pytest.approx(-5.0 if hand in ("LH", "LHR") else 5.0)
    assert x1 - x0 == pytest.approx(25.4)


def test_pocket_and_bridge_of_an_edge_unit_are_dimensioned():
    given, fit = ALL["in-edge"]
    drawing = edge_view(given, fit)
    x0, y0, x1, y1 = span(one(drawing, "unit pocket"))
    assert (x1 - x0, y1 - y0) == pytest.approx((17.5, 349.25))
    top_of_case = 41 * INCH + 44.45
    found = dict(dimensions(drawing))
    assert found['13 3/4"'] == pytest.approx(349.25)  # clear edge length, common practice
    assert y0 - top_of_case in [pytest.approx(length, abs=0.01) for length in found.values()]


def test_a_bore_in_the_edge_stands_at_its_distance_from_the_inside_face():
    given, fit = ALL["in-edge"]
    circle = one(edge_view(given, fit), "channel")
    assert circle.x == pytest.approx(THICK - 22.2)


def test_an_edge_bore_is_drawn_in_the_middle():
    given, fit = ALL["bored"]
    circle = one(edge_view(given, fit), "edge bore")
    assert (circle.x, circle.diameter) == pytest.approx((THICK / 2, 25.4))


@pytest.mark.parametrize(
    ("given", "expected"),
    [
        (opening(hand=None), "Hand"),
        (replace(GIVEN, leaves=(replace(LEAF, thickness_mm=None),)), "Leaf thickness"),
        (replace(GIVEN, leaves=(replace(LEAF, thickness_mm=0.0),)), "no size"),
        (replace(GIVEN, items=()), "existing lock"),
        (ALL["reader"][0], "no leaf"),
    ],
)
def test_unknown_facts_give_words(given, expected):
    drawing = edge_view(given, FIT)
    assert not drawing.to_scale
    assert expected in words(drawing)


def test_a_unit_of_unknown_depth_is_a_line():
    part = replace(GIVEN.catalogue.parts["SU-W"], attributes={})
    catalogue = type(GIVEN.catalogue)({**GIVEN.catalogue.parts, "SU-W": part}, "other")
    drawing = edge_view(replace(GIVEN, catalogue=catalogue), FIT)
    assert not named(drawing, "unit")
    assert named(drawing, "unit, depth unknown")
