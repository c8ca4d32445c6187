from dataclasses import replace

import pytest

from hwsched.calc.opening.placement import KeepOut, Rect
from hwsched.drawings.drawing import Circle, Dimension, Line
from hwsched.drawings.handing import HANDS, lock_edge_left
from hwsched.drawings.opening.elevation import elevation
from hwsched.drawings.opening.face_detail import face_detail
from hwsched.quantities import parse_length
from hwsched.rules.reading import stop_side
from hwsched.values import Fit, Hole
from tests.drawings.measuring import dimensions, named, one, span, words
from tests.drawings.openings import ALL, FIT, GIVEN, INCH, ITEMS, LEAF, opening, pair, pair_fit

EMPTY = Fit("to-measure")
FACES = ("inside", "key")


@pytest.mark.parametrize("hand", HANDS)
@pytest.mark.parametrize("face", FACES)
def test_unit_and_cylinder_stand_at_their_distances_from_the_lock_edge(hand, face):
    drawing = elevation(opening(hand=hand), FIT, face)
    left, right = 0.0, 36 * INCH
    x0, y0, x1, y1 = span(named(drawing, "unit" if face == "inside" else "unit on the other face")[0])
    edge_distance = x0 - left if lock_edge_left(hand, face) else right - x1
    assert edge_distance == pytest.approx(40.0)
    assert (y0, y1) == pytest.approx((1120.0, 1300.0))
    cx0, _, cx1, _ = span(one(drawing, "backset line"))
    centre = (cx0 + cx1) / 2
    assert (centre if lock_edge_left(hand, face) else right - centre) == pytest.approx(69.85)


@pytest.mark.parametrize("hand", HANDS)
def test_the_two_faces_are_mirror_images(hand):
    a, b = (elevation(opening(hand=hand), FIT, face) for face in FACES)
    ax0, ay0, ax1, ay1 = span(one(a, "lock case"))
    bx0, by0, bx1, by1 = span(one(b, "lock case"))
    width = 36 * INCH
    assert (ax0, ay0, ax1, ay1) == pytest.approx((width - bx1, by0, width - bx0, by1))


@pytest.mark.parametrize("hand", HANDS)
@pytest.mark.parametrize("face", FACES)
def test_swing_lines_meet_at_the_hinges_and_are_dashed_when_the_leaf_opens_away(hand, face):
    swing = one(elevation(opening(hand=hand), EMPTY, face), "swing")
    apex = swing.points[1][0]
    assert (apex == 0.0) is not lock_edge_left(hand, face)
    toward_key = hand in ("LHR", "RHR")
    assert swing.pen == ("thin" if toward_key == (face == "key") else "hidden")


@pytest.mark.parametrize("hand", HANDS)
def test_the_stop_hides_a_band_on_the_face_that_closes_against_it_and_only_there(hand):
    given = opening(hand=hand)
    for face in FACES:
        bands = named(elevation(given, EMPTY, face), "frame stop")
        assert bool(bands) is (face == stop_side(given))
    bands = named(elevation(given, EMPTY, stop_side(given)), "frame stop")
    assert min(span(band)[2] - span(band)[0] for band in bands) == pytest.approx(15.875)


@pytest.mark.parametrize("style", ["fraction", "decimal-inch", "mm"])
@pytest.mark.parametrize("name", [name for name in ALL if name != "reader"])
def test_dimensions_say_the_length_that_they_span(name, style):
    given, fit = ALL[name]
    for face in FACES:
        drawing = elevation(given, fit, face, style)
        for text, length in dimensions(drawing):
            assert parse_length(text, "mm") == pytest.approx(length, abs=INCH / 32 + 0.01), text


def test_dimensions_of_the_reference_opening():
    found = dict(dimensions(elevation(GIVEN, FIT, "inside")))
    # Cylinder 41 in above the floor, backset 2 3/4 in, unit's lower edge 1120 mm (44 1/16 to 44 1/8 in).
    assert found['41"'] == pytest.approx(41 * INCH, abs=0.01)
    assert found['2 3/4"'] == pytest.approx(69.85)
    assert found['2 1/2"'] == pytest.approx(63.5)


def test_dimension_lines_of_a_side_never_share_an_offset():
    for given, fit in ALL.values():
        for face in FACES:
            seen = set()
            for shape in elevation(given, fit, face).shapes:
                if isinstance(shape, Dimension):
                    key = (shape.axis, shape.x0 if shape.axis == "vertical" else shape.y0, abs(shape.offset))
                    assert key not in seen
                    seen.add(key)


def test_what_stays_is_filled_and_what_goes_away_is_dashed_and_crossed():
    drawing = elevation(GIVEN, FIT, "inside")
    assert one(drawing, "lite").fill == "glass"
    gone = one(drawing, "deadbolt")
    assert (gone.pen, gone.fill) == ("hidden", "none")
    assert len(named(drawing, "deadbolt goes away")) == 2
    assert "Deadbolt: remove" in words(drawing)


@pytest.mark.parametrize(("new", "said"), [("cylinder", "Lock: new cylinder"), ("lock", "Lock: replace")])
def test_of_a_lock_into_which_a_cylinder_comes_it_is_said_that_the_cylinder_is_new(new, said):
    """A survey says replace of a lock that is to be converted; only where a whole lock comes is it replaced."""
    lock = replace(ITEMS[0], kind="lock", disposition="replace", face="both", width_mm=100.0, height_mm=180.0)
    given = replace(GIVEN, items=(replace(lock, x_mm=69.85, y_mm=1016.0), *ITEMS[1:]))
    drawing = elevation(given, replace(FIT, parts=(replace(FIT.part("cylinder"), role=new),)), "key")
    assert [each for each in words(drawing).split(" | ") if each.startswith("Lock:")] == [said]


def test_items_of_one_face_are_not_drawn_on_the_other():
    assert named(elevation(GIVEN, FIT, "key"), "closer")
    assert not named(elevation(GIVEN, FIT, "inside"), "closer")


def test_an_item_with_missing_numbers_is_named_and_not_drawn():
    items = (ITEMS[0], replace(ITEMS[3], width_mm=None))
    drawing = elevation(replace(GIVEN, items=items), EMPTY, "key")
    assert not named(drawing, "lite")
    assert "Lite or vision panel: keep, not drawn: needs" in words(drawing)
    assert "Footprint width" in words(drawing)


@pytest.mark.parametrize("width", [-50.0, 0.0, float("nan"), float("inf")])
def test_an_item_whose_footprint_is_no_size_is_not_drawn(width):
    drawing = elevation(replace(GIVEN, items=(ITEMS[0], replace(ITEMS[3], width_mm=width))), EMPTY, "key")
    assert not named(drawing, "lite")
    assert "not drawn" in words(drawing)


def test_an_item_outside_of_the_leaf_is_said_and_not_drawn():
    drawing = elevation(replace(GIVEN, items=(ITEMS[0], replace(ITEMS[3], x_mm=2000.0))), EMPTY, "key")
    assert not named(drawing, "lite")
    assert "outside of the leaf" in words(drawing)


@pytest.mark.parametrize(
    ("given", "expected"),
    [
        (opening(hand=None), "Hand"),
        (replace(GIVEN, leaves=(replace(LEAF, width_mm=None),)), "Leaf width"),
        (replace(GIVEN, leaves=(replace(LEAF, height_mm=None),)), "Leaf height"),
        (replace(GIVEN, leaves=(replace(LEAF, width_mm=-3.0),)), "no size"),
        (replace(GIVEN, leaves=(replace(LEAF, height_mm=float("nan")),)), "Leaf height"),
        (replace(GIVEN, leaves=()), "the leaf"),
        (replace(pair(), leaves=pair().leaves[:1]), "inactive leaf"),
        (replace(GIVEN, items=(replace(ITEMS[0], backset_mm=2000.0),)), "outside of a leaf"),
        (replace(GIVEN, items=(replace(ITEMS[0], cylinder_height_mm=9000.0),)), "outside of a leaf"),
    ],
)
def test_unknown_or_impossible_facts_give_words_and_no_picture(given, expected):
    for face in FACES:
        drawing = elevation(given, FIT, face)
        assert not drawing.to_scale
        assert expected in words(drawing).replace(" | ", " ")
        assert not any(isinstance(shape, Line) for shape in drawing.shapes)


def test_an_unknown_lock_leaves_the_rest_drawn_and_is_named():
    drawing = elevation(replace(GIVEN, items=(replace(ITEMS[0], backset_mm=None),)), EMPTY, "key")
    assert drawing.to_scale
    assert not named(drawing, "backset line")
    assert "Lock not drawn: needs" in words(drawing)


@pytest.mark.parametrize("hand", HANDS)
@pytest.mark.parametrize("face", FACES)
def test_a_pairs_lock_leaf_has_its_lock_edge_in_the_middle(hand, face):
    drawing = elevation(pair(hand), pair_fit(), face)
    active, inactive = span(one(drawing, "leaf active")), span(one(drawing, "leaf inactive"))
    assert (active[0] < inactive[0]) is not lock_edge_left(hand, face)
    middle = max(active[0], inactive[0])
    x0, _, x1, _ = span(one(drawing, "backset line"))
    assert abs((x0 + x1) / 2 - middle) < 69.85 + 4.0
    assert active[0] <= x0 <= active[2]


def test_a_pairs_stop_leaves_the_meeting_edges_free():
    drawing = elevation(pair("LH"), pair_fit(), "key")
    width = 36 * INCH
    for band in named(drawing, "frame stop"):
        x0, y0, x1, y1 = span(band)
        if y1 - y0 > 1000:  # the upright bands
            assert x1 == pytest.approx(15.875) or x0 == pytest.approx(2 * width + 3.0 - 15.875)


def test_a_through_hole_comes_out_where_its_angles_lead():
    # Facts 8.1: 15 and 10 degrees through 44.45 mm shift by 11.9103 and 7.8377 mm.
    hole = Hole("lead", "single", "inside", 100.0, 1000.0, 10.0, edge_deg=15.0, up_deg=10.0, order=1)
    fit = replace(FIT, holes=(hole,), placement=None)
    for hand in HANDS:
        circle = one(elevation(opening(hand=hand), fit, "key"), "lead")
        x = circle.x if lock_edge_left(hand, "key") else 36 * INCH - circle.x
        assert (x, circle.y) == pytest.approx((100.0 - 11.9103, 1007.8377), abs=1e-4)


def test_screws_taken_from_the_part_are_noted_not_drawn():
    drawing = elevation(GIVEN, FIT, "inside")
    assert not named(drawing, "plate screws")
    assert "marked from the part itself" in words(drawing)


def test_keepouts_are_hatched_with_their_clearance_when_asked():
    keepout = KeepOut("lite", Rect(166.5, 1150.0, 293.5, 1850.0), 5.0)
    drawing = elevation(GIVEN, FIT, "inside", keepouts=(keepout,))
    shape = one(drawing, "keep-out lite")
    assert shape.fill == "keepout"
    assert span(shape) == pytest.approx((161.5, 1145.0, 298.5, 1855.0))
    assert not named(elevation(GIVEN, FIT, "inside"), "keep-out lite")


def test_a_leaf_whose_undercut_is_unknown_is_drawn_to_the_floor_and_says_so():
    drawing = elevation(replace(GIVEN, leaves=(replace(LEAF, undercut_mm=None),)), EMPTY, "key")
    assert span(one(drawing, "leaf single"))[1] == 0.0
    assert "Undercut is not surveyed" in words(drawing)


def test_a_cabinet_that_hangs_at_an_unknown_height_has_neither_floor_nor_ends():
    given, fit = ALL["cabinet"]
    drawing = elevation(given, fit, "inside")
    assert named(drawing, "part of the leaf")
    assert not named(drawing, "finished floor")
    assert "How high the leaf hangs is not surveyed" in words(drawing)
    assert not any(length > 500 for _, length in dimensions(drawing))


def test_gates_have_posts_and_frameless_glass_has_no_frame():
    assert len(named(elevation(*ALL["gate"], "key"), "post")) == 2
    glass = elevation(*ALL["glass"], "key")
    assert not named(glass, "frame")
    assert one(glass, "leaf single").fill == "glass"


def test_the_lock_stile_is_drawn_at_its_width():
    given, fit = ALL["euro-narrow"]
    x0, _, x1, _ = span(one(elevation(given, fit, "inside"), "lock stile"))
    assert x0 == x1 == pytest.approx(60.0)


def test_an_edge_unit_is_a_hidden_pocket_on_both_faces():
    given, fit = ALL["in-edge"]
    for face in FACES:
        x0, y0, x1, y1 = span(one(elevation(given, fit, face), "unit in the edge"))
        assert (x1 - x0, y0, y1) == pytest.approx((46.0, 1160.0, 1509.25))


def test_equal_input_gives_equal_drawings():
    for given, fit in ALL.values():
        for face in FACES:
            assert elevation(given, fit, face) == elevation(given, fit, face)


def test_a_cabinet_door_has_no_jambs_on_the_floor():
    given, fit = ALL["cabinet"]
    assert not named(elevation(given, fit, "inside"), "frame")
    assert named(elevation(GIVEN, FIT, "inside"), "frame")


@pytest.mark.parametrize("hand", HANDS)
@pytest.mark.parametrize("face", ["inside", "key"])
def test_a_lever_s_rose_stands_on_the_backset_line(hand, face):
    """The lever's footprint reaches 35 to 165 mm from the edge; its spindle is the lock's, 69.85 from it."""
    drawing = elevation(opening(hand=hand), FIT, face)
    axis = one(drawing, "backset line").points[0][0]
    (rose,) = [shape for shape in drawing.shapes if isinstance(shape, Circle) and shape.diameter == 55.0]
    assert rose.x == pytest.approx(axis)


def test_lengths_are_rounded_as_on_every_other_drawing():
    """2 1/2 in and a 64th up to the hole: the detail shows 2 33/64, and so does the elevation."""
    place = replace(FIT.placement, hole_y_mm=41 * INCH + (2 + 33 / 64) * INCH)
    hole = replace(FIT.holes[0], y_mm=place.hole_y_mm)
    fit = replace(FIT, placement=place, holes=(hole,))
    for drawing in (elevation(GIVEN, fit, "inside"), face_detail(GIVEN, fit, "inside")):
        assert '2 33/64"' in dict(dimensions(drawing))
