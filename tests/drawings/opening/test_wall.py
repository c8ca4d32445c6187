from dataclasses import replace

import pytest

from hwsched.drawings import elevation
from tests.drawings.measuring import dimensions, named, one, span, words
from tests.drawings.openings import ALL


def test_the_reader_stands_about_its_centre_at_its_height():
    case, fit = ALL["reader"]
    drawing = elevation(case, fit, "key")
    assert span(one(drawing, "reader")) == pytest.approx((-30.0, 971.0, 30.0, 1061.0))
    assert dict(dimensions(drawing))['40"'] == pytest.approx(1016.0)
    assert named(drawing, "reader hole")


def test_the_unit_is_seen_as_placed_from_its_side_and_mirrored_from_the_readers():
    case, fit = ALL["reader"]
    assert span(one(elevation(case, fit, "secured"), "unit"))[:3:2] == pytest.approx((30.0, 76.0))
    assert span(one(elevation(case, fit, "key"), "unit on the other side"))[:3:2] == pytest.approx((-76.0, -30.0))


def test_an_unknown_height_is_said():
    case, fit = ALL["reader"]
    drawing = elevation(replace(case, items=(replace(case.items[0], cylinder_height_mm=None),)), fit, "key")
    assert not drawing.to_scale
    assert "Cylinder above floor" in words(drawing).replace(" | ", " ")


def test_a_reader_without_face_size_is_named():
    case, fit = ALL["reader"]
    part = replace(case.catalogue.parts["FR-22"], attributes={})
    catalogue = type(case.catalogue)({**case.catalogue.parts, "FR-22": part}, "other")
    drawing = elevation(replace(case, catalogue=catalogue), fit, "key")
    assert not named(drawing, "reader")
    assert "needs the face size of part FR-22" in words(drawing)
