from dataclasses import replace
from itertools import combinations

import pytest

from hwsched.drawings.handing import HANDS
from hwsched.drawings.opening.bore_detail import bore_detail
from hwsched.drawings.opening.edge_view import edge_view
from hwsched.drawings.opening.elevation import elevation
from hwsched.drawings.opening.section import section
from hwsched.render.fonts import text_width_mm
from hwsched.render.lower import Letters, lower
from hwsched.values import Catalogue, Fit, FitPart, Part, Stack
from tests.drawings.measuring import dimensions, named, one, span, words
from tests.drawings.openings import ALL, FIT, GIVEN, INCH, LEAF, LOCK, fit_part, opening


def letters_box(each):
    """Return what upright letters take on the paper [mm]."""
    wide = text_width_mm(each.text, each.height_mm)
    left = each.x - {"left": 0.0, "centre": wide / 2, "right": wide}[each.anchor]
    if each.angle_deg:
        return (each.x - each.height_mm, each.y - wide / 2, each.x, each.y + wide / 2)
    return (left, each.y, left + wide, each.y + each.height_mm)


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


RIM = replace(LOCK, lock_form="rim", case_width_mm=50.0)
RIM_FIT = replace(FIT, parts=(fit_part("cylinder", "RC-10"), fit_part("unit", "SU-W")), stack=Stack("rim", 3.0))


def test_the_case_of_a_rim_lock_stands_on_the_inside_face():
    """50 mm thick on a leaf of 44.45: it is no pocket's case, and nothing about it is wrong."""
    drawing = section(replace(GIVEN, items=(RIM,)), RIM_FIT)
    assert drawing.to_scale
    body = one(drawing, "lock case")
    assert span(body)[1::2] == pytest.approx((0.0, 50.0))  # inside is above, the face at 0
    assert body.fill == "existing"
    x0, _, x1, _ = span(one(edge_view(replace(GIVEN, items=(RIM,)), RIM_FIT), "lock case"))
    assert (x0, x1) == pytest.approx((THICK, THICK + 50.0))  # hinged left: the inside is on the right
    assert bore_detail(replace(GIVEN, items=(RIM,)), RIM_FIT).to_scale


def test_the_head_of_a_rim_cylinder_lies_on_the_trim():
    """Trim of 3 mm: the head's front is 3 mm off the face, and nothing is proud of the trim."""
    drawing = section(replace(GIVEN, items=(RIM,)), RIM_FIT)
    _, y0, _, _ = span(one(drawing, "cylinder"))
    assert -y0 == pytest.approx(THICK + 3.0)
    assert "proud of the trim" not in words(drawing)
    assert not named(drawing, "collar and rings")


def test_a_lock_that_clasps_a_pane_is_thicker_than_the_glass():
    pane = replace(LEAF, material="glass", construction="frameless", thickness_mm=12.0)
    given = replace(GIVEN, leaves=(pane,), items=(replace(LOCK, case_width_mm=40.0),))
    fit = replace(FIT, stack=None, holes=())
    body = one(section(given, fit), "lock case")
    assert span(body)[1::2] == pytest.approx((-26.0, 14.0))  # 40 about the middle of 12
    assert edge_view(given, fit).to_scale


def test_a_gate_lock_is_drawn_on_the_key_side():
    part = Part("GL-1", "gate-lock", attributes={"case_width_mm": 90.0, "case_height_mm": 150.0, "case_depth_mm": 30.0})
    given, _ = ALL["gate"]
    given = replace(given, catalogue=Catalogue({"GL-1": part}, "test"))
    fit = Fit("fits", (FitPart("lock", "GL-1", "gate-lock", 1, "for the test"),))
    x0, y0, x1, y1 = span(one(section(given, fit), "gate lock"))
    assert (y0, y1) == pytest.approx((-50.8 - 30.0, -50.8))
    assert x1 - x0 == pytest.approx(90.0)
    x0, y0, x1, y1 = span(one(edge_view(given, fit), "gate lock"))
    assert (y0, y1) == pytest.approx((914.4 - 75.0, 914.4 + 75.0))
    assert x1 - x0 == pytest.approx(30.0)
    seen = span(one(elevation(given, fit, "key"), "gate lock"))
    assert seen[3] - seen[1] == pytest.approx(150.0)
    assert "axis only" not in words(section(given, fit))


@pytest.mark.parametrize("name", [name for name in ALL if name != "reader"])
def test_no_words_of_a_section_stand_on_others(name):
    """At the scale at which a packet shows it: letters as wide and high as the fonts say."""
    given, fit = ALL[name]
    drawing = section(given, fit)
    if not drawing.to_scale:
        return
    for scale in (1 / 2, 1 / 4, 1 / 5):
        boxes = [
            (each.text, letters_box(each))
            for each in lower(drawing, scale).primitives
            if isinstance(each, Letters) and each.text in ("Inside", "Key side", "Lock edge")
        ]
        for (first, a), (second, b) in combinations(boxes, 2):
            apart = a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1]
            assert apart, (first, second, scale)
