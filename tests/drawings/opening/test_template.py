from dataclasses import replace

import pytest

from hwsched.drawings.handing import HANDS, lock_edge_left
from hwsched.drawings.opening.template import template
from hwsched.values import Hole
from tests.drawings.measuring import named, one, span, words
from tests.drawings.openings import ALL, FIT, GIVEN, INCH, opening

FACES = ("inside", "key")


@pytest.mark.parametrize("hand", HANDS)
@pytest.mark.parametrize("face", FACES)
def test_the_fold_is_at_the_lock_edge_and_holes_at_their_distance_from_it(hand, face):
    hole = Hole("lead", "single", face, 69.85, 1104.9, 9.525, 6.35, order=1)
    drawing = template(opening(hand=hand), replace(FIT, holes=(hole,)), face)
    fold = one(drawing, "fold at the lock edge").points[0][0]
    circle = one(drawing, "lead")
    way = 1.0 if lock_edge_left(hand, face) else -1.0
    assert circle.x - fold == pytest.approx(way * 69.85)
    assert circle.y == pytest.approx(63.5)  # from the cylinder's centre
    assert one(drawing, "pilot of lead").diameter == pytest.approx(6.35)


@pytest.mark.parametrize("face", FACES)
def test_a_bore_in_the_edge_stands_on_the_folded_part(face):
    hole = Hole("channel", "single", "lock-edge", 20.0, 1041.4, 9.525, order=1)
    drawing = template(GIVEN, replace(FIT, holes=(hole,)), face)
    way = 1.0 if lock_edge_left("LH", face) else -1.0
    # 20 mm from the inside face, 44.45 - 20 from the key face; the fold is at the face the template lies on.
    expected = 20.0 if face == "inside" else 1.75 * INCH - 20.0
    assert one(drawing, "channel").x == pytest.approx(-way * expected)


def test_check_rules_are_a_hundred_millimetres_and_four_inches():
    drawing = template(GIVEN, FIT, "inside")
    for name, length in (("check rule 100 mm", 100.0), ("check rule 4 in", 101.6)):
        x0, y0, x1, y1 = span(one(drawing, name))
        assert (x1 - x0, y1 - y0) == pytest.approx((length, 0.0))


def test_words_name_marks_sizes_pilots_and_angles():
    given, fit = ALL["bored"]
    said = words(template(given, fit, "inside", ("B/1", "B/2")))
    assert "Holds for: B/1, B/2." in said
    assert '3/8"' in said
    assert "45° up" in said
    assert "15° toward the lock edge" in said
    assert 'pilot 1/4"' in words(template(GIVEN, FIT, "inside"))
    assert "FOLD AT THE LOCK EDGE" in said


def test_a_leaning_hole_has_an_arrow_that_points_where_it_leads():
    given, fit = ALL["bored"]
    (ax, ay), (bx, by) = one(template(given, fit, "inside"), "leans this way").points
    assert by > ay  # 45 degrees up
    assert bx < ax  # 15 degrees toward the lock edge, which is on the left of this face (LH)


def test_holes_of_the_other_face_are_left_out():
    assert not named(template(GIVEN, FIT, "inside"), "cylinder hole")
    assert named(template(GIVEN, FIT, "key"), "cylinder hole")


def test_unknown_facts_give_words():
    assert not template(opening(hand=None), FIT, "inside").to_scale
    assert not template(*ALL["reader"], "inside").to_scale
