"""Layers, things and lines of drawings: what is switched off is gone, what is chosen is all of it, and nothing else."""

import pytest

from hwsched.drawings.drawing import Callout, Circle, Dimension, Line
from hwsched.drawings.layers import LAYERS, LEAD, UNIT, layer_of, on_layers
from hwsched.drawings.opening.elevation import elevation
from hwsched.drawings.opening.scene import views_of
from hwsched.drawings.things import Lines, box_of, lines_for, next_line, shapes_of, snapped, thing_at
from tests.drawings.openings import ALL, FIT, GIVEN

INSIDE = views_of(GIVEN, FIT)[0].drawing


def test_each_layer_holds_what_its_name_says():
    held = {layer: [each for each in INSIDE.shapes if layer_of(each) == layer] for layer in LAYERS}
    assert {getattr(each, "name", "") for each in held["lead"]} == {"cable"}
    assert "cable hole" in {getattr(each, "name", "") for each in held["holes"]}
    assert any(isinstance(each, Callout) and each.text.startswith("Hole 1") for each in held["holes"])
    assert all(isinstance(each, Dimension) for each in held["dimensions"])
    assert {getattr(each, "name", "") for each in held["new"]} >= {"unit"}
    assert {getattr(each, "name", "") for each in held["stands"]} >= {"leaf single", "frame", "lever", "deadbolt"}
    assert any("keep-out" in each.name for each in held["keep-outs"])
    assert sum(len(each) for each in held.values()) == len(INSIDE.shapes)


def test_a_layer_that_is_off_leaves_the_rest_where_it_was():
    without = on_layers(INSIDE, [each for each in LAYERS if each != "holes"])
    assert without.bounds == INSIDE.bounds
    assert not any(getattr(each, "name", "") == "cable hole" for each in without.shapes)
    assert shapes_of(without, UNIT) == shapes_of(INSIDE, UNIT)


@pytest.mark.parametrize("name", sorted(ALL))
def test_every_new_line_of_every_opening_belongs_to_a_layer_of_the_new(name):
    given, fit = ALL[name]
    for view in views_of(given, fit):
        for shape in view.drawing.shapes:
            if isinstance(shape, Line | Circle) and shape.pen == "new":
                assert layer_of(shape) in ("new", "holes"), shape


def test_a_point_finds_the_smallest_thing_over_it():
    # The plate of FIT: 40 to 130 from the lock edge, 1120 to 1300 above the floor; seen from inside the lock edge of
    # a left-hand leaf, which is hinged left from the key side, is on the left.
    sheet_x = {thing: box_of(shapes_of(INSIDE, thing)) for thing in (UNIT, LEAD)}
    x0, y0, x1, y1 = sheet_x[UNIT]
    assert (x1 - x0, y0, y1) == pytest.approx((90.0, 1120.0, 1300.0))
    assert thing_at(INSIDE, x0 + 5, 1130.0) == UNIT
    assert thing_at(INSIDE, (x0 + x1) / 2, 1700.0) == ""
    hole = next(each for each in INSIDE.shapes if isinstance(each, Circle) and each.name == "cable hole")
    assert thing_at(INSIDE, hole.x, hole.y) == "hole 1"


def test_what_is_moved_keeps_to_centre_lines_and_heights_of_what_stands_but_not_to_itself():
    lines = lines_for(INSIDE, UNIT)
    names = {name for _, name in (*lines.xs, *lines.ys)}
    assert {"backset line", "cylinder centre line", "middle of the leaf", "upper edge of the lever"} <= names
    assert not any("unit" in name or "hole" in name for name in names)
    # The lever: centre 960 above the floor, 55 high.
    assert 987.5 in [y for y, name in lines.ys if name == "upper edge of the lever"]
    level = next(y for y, name in lines.ys if name == "cylinder centre line")
    assert level == pytest.approx(1041.4)
    snap = snapped((300.0, 1043.0, 400.0, 1143.0), Lines((), ((level, "cylinder centre line"),)), 3.0)
    assert snap.dy == pytest.approx(-1.6)
    assert snapped((300.0, 1046.0, 400.0, 1146.0), Lines((), ((level, "x"),)), 3.0).level is None


def test_the_next_line_lies_on_the_way_asked_for():
    lines = Lines(((0.0, "a"), (50.0, "b"), (200.0, "c")), ())
    assert next_line((60.0, 0.0, 80.0, 1.0), lines, (1, 0)).dx == 120.0
    assert next_line((60.0, 0.0, 80.0, 1.0), lines, (-1, 0)).dx == -10.0
    assert next_line((60.0, 0.0, 80.0, 1.0), lines, (0, 1)) == (0.0, 0.0, None, None)


def test_faces_without_keepouts_are_drawn_as_before():
    plain = elevation(GIVEN, FIT, "inside")
    assert [each for each in INSIDE.shapes if layer_of(each) != "keep-outs"] == list(plain.shapes)
