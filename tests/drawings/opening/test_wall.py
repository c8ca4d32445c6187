from dataclasses import replace

import pytest

from hwsched.drawings.opening.elevation import elevation
from tests.drawings.measuring import dimensions, named, one, span, words
from tests.drawings.openings import ALL


def test_the_reader_stands_about_its_centre_at_its_height():
    given, fit = ALL["reader"]
    drawing = elevation(given, fit, "key")
    assert span(one(drawing, "reader")) == pytest.approx((-30.0, 971.0, 30.0, 1061.0))
    assert dict(dimensions(drawing))['40"'] == pytest.approx(1016.0)
    assert named(drawing, "reader hole")


def test_the_unit_is_seen_as_placed_from_its_side_and_mirrored_from_the_readers():
    given, fit = ALL["reader"]
    assert span(one(elevation(given, fit, "inside"), "unit"))[:3:2] == pytest.approx((30.0, 76.0))
    assert span(one(elevation(given, fit, "key"), "unit on the other side"))[:3:2] == pytest.approx((-76.0, -30.0))


def test_an_unknown_height_is_said():
    given, fit = ALL["reader"]
    drawing = elevation(replace(given, items=(replace(given.items[0], cylinder_height_mm=None),)), fit, "key")
    assert not drawing.to_scale
    assert "Cylinder above floor" in words(drawing).replace(" | ", " ")


def test_a_reader_without_face_size_is_named():
    given, fit = ALL["reader"]
    part = replace(given.catalogue.parts["FR-22"], attributes={})
    catalogue = type(given.catalogue)({**given.catalogue.parts, "FR-22": part}, "other")
    drawing = elevation(replace(given, catalogue=catalogue), fit, "key")
    assert not named(drawing, "reader")
    assert "needs the face size of part FR-22" in words(drawing)


@pytest.mark.parametrize("aside", [300.0, -300.0])
def test_the_edge_of_the_entrance_stands_on_the_side_that_was_surveyed(aside):
    """As one faces the reader: right of the edge, so the edge is left of it; left of it with a minus."""
    given, fit = ALL["reader"]
    told = replace(given, opening=replace(given.opening, reader_aside_mm=aside))
    drawing = elevation(told, fit, "key")
    assert span(one(drawing, "edge of the entrance"))[:3:2] == pytest.approx((-aside, -aside))
    assert abs(dict(dimensions(drawing))['11 13/16"']) == pytest.approx(300.0)
    # Within the drawing, on the wall; and not among what is seen from the other side.
    x0, _, x1, _ = drawing.bounds
    assert x0 < -aside < x1
    assert not named(elevation(told, fit, "inside"), "edge of the entrance")


def test_where_nobody_told_the_place_sideways_that_is_said():
    given, fit = ALL["reader"]
    drawing = elevation(given, fit, "key")
    assert not named(drawing, "edge of the entrance")
    assert "needs opening: Reader right (minus: left) of the entrance" in " ".join(drawing.notes)
