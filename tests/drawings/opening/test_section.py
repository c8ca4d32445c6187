from dataclasses import replace

import pytest

from hwsched.drawings import bore_detail, edge_view, section
from hwsched.drawings.handing import HANDS
from hwsched.values import Fit
from tests.drawings.measuring import dimensions, named, one, span, words
from tests.drawings.openings import ALL, FIT, GIVEN, INCH, LEAF, LOCK, opening

THICK = 1.75 * INCH


def test_a_threaded_cylinder_stands_as_its_stack_says():
    # Length 31.75, head 6.35 proud of 3 mm trim: the shell ends 6.35 + 3 - 31.75 from the key face.
    drawing = section(GIVEN, FIT)
    _, y0, _, y1 = span(one(drawing, "cylinder"))
    front, rear = -y0, -y1
    assert front == pytest.approx(THICK + 3.0 + 6.35)
    assert front - rear == pytest.approx(31.75)
    _, y0, _, y1 = span(one(drawing, "collar and rings"))
    assert y1 - y0 == pytest.approx(6.35 - 0.35)


def test_the_cam_plane_lies_at_its_offset_from_the_rear():
    drawing = section(GIVEN, FIT)
    _, _, _, rear = span(one(drawing, "cylinder"))
    assert one(drawing, "cam plane").points[0][1] == pytest.approx(rear)  # offset 0


@pytest.mark.parametrize("hand", HANDS)
def test_lock_edge_is_where_somebody_on_the_key_side_sees_it(hand):
    x0, _, x1, _ = span(one(section(opening(hand=hand), FIT), "lock case"))
    assert (x0, x1) == pytest.approx((-105.0, 0.0) if hand in ("LH", "LHR") else (0.0, 105.0))


def test_the_inside_side_is_above():
    drawing = section(GIVEN, FIT)
    assert span(one(drawing, "unit"))[1] == pytest.approx(0.0)
    assert span(one(drawing, "trim, key side"))[3] == pytest.approx(-THICK)


def test_backset_and_thickness_are_dimensioned():
    found = dict(dimensions(section(GIVEN, FIT)))
    assert found['2 3/4"'] == pytest.approx(69.85)
    assert found['1 3/4"'] == pytest.approx(THICK)


def test_euro_halves_count_from_the_cam_in_the_middle_of_the_case():
    given, fit = ALL["euro-narrow"]
    _, y0, _, y1 = span(one(section(given, fit), "cylinder"))
    assert (-y1, -y0) == pytest.approx((THICK / 2 - 30.0, THICK / 2 + 40.0))


def test_a_unit_above_the_section_is_hidden_lines_and_named_so():
    drawing = section(GIVEN, FIT)
    assert one(drawing, "unit").pen == "hidden"
    assert "above this section" in words(drawing)


def test_a_cylinder_without_stack_is_not_drawn_and_said():
    drawing = section(GIVEN, replace(FIT, stack=None))
    assert not named(drawing, "cylinder")
    assert "Cylinder not drawn" in words(drawing)


def test_unknown_facts_give_words():
    drawing = section(replace(GIVEN, leaves=(replace(LEAF, thickness_mm=None),)), Fit("to-measure"))
    assert not drawing.to_scale
    assert "Leaf thickness" in words(drawing)


@pytest.mark.parametrize("name", list(ALL))
def test_every_kind_of_opening_has_a_section_or_words(name):
    drawing = section(*ALL[name])
    assert drawing.to_scale is (name != "reader")


@pytest.mark.parametrize("view", [section, edge_view, bore_detail])
def test_a_case_that_the_leaf_cannot_hold_is_said_and_not_drawn(view):
    drawing = view(replace(GIVEN, items=(replace(LOCK, case_width_mm=50.0),)), FIT)
    assert not drawing.to_scale
    assert "does not stand inside" in words(drawing).replace(" | ", " ")
