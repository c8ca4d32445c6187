from dataclasses import replace

import pytest

from hwsched.drawings.opening.face_detail import face_detail
from tests.drawings.measuring import dimensions, named, span, words
from tests.drawings.openings import ALL, FIT, GIVEN, LEAF


def test_holes_are_dimensioned_from_the_cylinder_and_the_lock_edge():
    found = dict(dimensions(face_detail(GIVEN, FIT, "inside")))
    assert found['2 1/2"'] == pytest.approx(63.5)
    assert found['2 3/4"'] == pytest.approx(69.85)


@pytest.mark.parametrize("name", [name for name in ALL if name != "reader"])
@pytest.mark.parametrize("face", ["inside", "key"])
def test_nothing_reaches_past_the_part_that_is_shown(name, face):
    drawing = face_detail(*ALL[name], face)
    x0, y0, x1, y1 = drawing.bounds
    for item in ("lever", "lite", "kick-plate", "closer", "lock case", "unit"):
        for shape in named(drawing, item):
            a, b, c, d = span(shape)
            assert x0 - 1e-6 <= a
            assert c <= x1 + 1e-6
            assert y0 - 1e-6 <= b
            assert d <= y1 + 1e-6


def test_unknown_facts_give_words():
    drawing = face_detail(replace(GIVEN, leaves=(replace(LEAF, width_mm=None),)), FIT, "key")
    assert not drawing.to_scale
    assert "Leaf width" in words(drawing)
