"""The drawing without a screen: where one looks, what is chosen, what is measured, how far something is moved."""

from dataclasses import replace

import pytest

from hwsched.desktop.opening.drawing_camera import whole_of
from hwsched.desktop.opening.drawing_move import Move
from hwsched.desktop.opening.drawing_state import DrawingState, Measured, Thing, known_things
from hwsched.desktop.opening.opening_scene import cost_words, item_centre, scene_of, stands_at, unit_corner
from hwsched.drawings.layers import UNIT
from hwsched.drawings.opening.scene import views_of
from hwsched.drawings.things import Lines
from hwsched.operations.findings.checked import Checked
from hwsched.operations.opening.trial_placement import PlaceCosts
from hwsched.values import Fit, PointFit
from tests.drawings.openings import FIT, GIVEN, LEAF, opening, pair, pair_fit

ENDS = (0.0, -100.0, 2000.0, 2200.0)
CAMERA = whole_of(ENDS, 0.1, 800.0, 600.0, 3.0)


@pytest.fixture(scope="module")
def views():
    return views_of(GIVEN, FIT)


@pytest.fixture
def state(views):
    made = DrawingState()
    things = known_things(views, {UNIT: Thing(UNIT, "Unit SU-W", "inside")})
    made.fit_room(300.0, 180.0)
    made.show(views, things, "fraction", keep_places=False)
    return made


def test_what_is_under_the_pointer_stays_under_it():
    place = CAMERA.to_scene(200.0, 450.0)
    for ways in (1.25, 5.0):
        nearer = CAMERA.zoomed(ways, 200.0, 450.0)
        assert nearer.to_screen(*place) == pytest.approx((200.0, 450.0))
        assert nearer.factor == pytest.approx(CAMERA.factor * ways)


def test_nobody_goes_farther_than_all_of_it_and_sees_it_from_the_middle():
    away = CAMERA.zoomed(4.0, 10.0, 10.0).zoomed(1 / 100.0)
    assert away.whole
    assert (away.x_mm, away.y_mm) == (1000.0, 1050.0)


def test_one_moves_along_no_farther_than_to_where_it_ends():
    near = CAMERA.zoomed(8.0).moved(1e6, -1e6)
    assert (near.x_mm, near.y_mm) == (2000.0, -100.0)
    x0, y0, x1, y1 = near.region
    # 800 x 600 px at 0.8 x 3 px a millimetre.
    assert (x1 - x0, y1 - y0) == pytest.approx((800 / 2.4, 600 / 2.4))


def test_a_region_is_looked_at_whole():
    x0, y0, x1, y1 = CAMERA.at((500.0, 900.0, 700.0, 1100.0)).region
    assert x0 < 500.0 < 700.0 < x1
    assert y0 < 900.0 < 1100.0 < y1


def test_a_thing_is_chosen_by_its_place_and_marked_in_each_view(state, qtbot):
    inside = state.scene.standing("inside")
    box = next(box for each, box in state.boxes(UNIT) if each is inside)
    with qtbot.waitSignal(state.chose) as told:
        state.choose(state.thing_at(box[0] + 3.0, box[1] + 3.0, 0.0))
    assert told.args == [UNIT]
    # Both faces, the edge and the section show the unit.
    assert {each.view.name for each, _ in state.boxes(UNIT)} == {"inside", "key", "edge", "section"}
    state.switch("new", False)
    assert state.thing_at(box[0] + 3.0, box[1] + 3.0, 0.0) != UNIT, "what is not seen is not chosen"


def test_another_opening_without_the_thing_has_nothing_chosen(state, views):
    state.choose(UNIT)
    state.show(views, known_things(views, {}), "fraction", keep_places=False)
    assert state.chosen == UNIT
    state.show((), (), "fraction", keep_places=False)
    assert state.chosen == ""


def test_points_go_on_to_corners_and_are_measured_in_the_projects_lengths(state):
    inside = state.scene.standing("inside")
    state.measure(True)
    # The leaf is 36 in wide and stands 12 mm above the floor, 84 in high.
    state.measure_point(inside.dx_mm + 1.0, 13.0, 3.0)
    state.measure_point(inside.dx_mm + 913.0, 13.0, 3.0)
    assert state.measured().words("fraction") == '36" apart: 36" across, 0" up'
    state.measure_point(inside.dx_mm + 1.0, 12.0 + 84 * 25.4 - 1.0, 3.0)
    assert state.measured() is None, "a third point begins anew"
    assert len(state.points) == 1


def test_between_two_views_only_heights_are_compared():
    words = Measured((0.0, 100.0), (1500.0, 150.8), level=False).words("fraction")
    assert words.startswith('2" up')
    assert "across" not in words


def test_steps_add_up_and_lines_catch_only_within_reach():
    move = Move(UNIT, "inside", (100.0, 100.0, 190.0, 300.0), Lines(((150.0, "backset line"),), ()))
    move.step(1.0, 0.0)
    move.step(10.0, -1.0)
    assert (move.dx, move.dy) == (11.0, -1.0)
    move.to(4.0, 0.0, 2.0)
    assert (move.dx, move.upright) == (5.0, (150.0, "backset line"))
    assert move.words() == "on the backset line"
    move.to(20.0, 0.0, 2.0)
    assert (move.dx, move.upright) == (20.0, None)
    move.on((-1, 0))
    assert move.dx == 5.0


@pytest.mark.parametrize(("hand", "view", "sign"), [("LH", "inside", 1.0), ("RH", "inside", -1.0), ("LH", "key", -1.0)])
def test_right_on_the_screen_is_toward_the_hinges_or_the_lock_as_the_hand_has_it(hand, view, sign):
    """A left-hand leaf is hinged on the left from the key side, so its lock edge is on the left from inside."""
    given = opening(hand=hand)
    at = PointFit(given, replace(FIT, placement=replace(FIT.placement, face=view)))
    corner = unit_corner(at, Move(UNIT, view, (0.0,) * 4, Lines((), ()), 5.0, 7.0))
    assert corner == (40.0 + sign * 5.0, 1120.0 + 7.0)
    assert unit_corner(at, Move(UNIT, "key" if view == "inside" else "inside", (0.0,) * 4, Lines((), ()))) is None
    # The closer stands on the key side, 760 from the lock edge.
    moved = item_centre(at, Move("i3", "key", (0.0,) * 4, Lines((), ()), 5.0, 0.0))
    assert moved[0] == 760.0 + (-5.0 if hand == "LH" else 5.0)


def test_on_the_other_leaf_of_a_pair_right_is_the_other_way():
    at = PointFit(pair("LH"), pair_fit())
    active, inactive = (
        item_centre(at, Move(item, "inside", (0.0,) * 4, Lines((), ()), 5.0, 0.0))[0] - x
        for item, x in (("i6", 70.0), ("i9", 25.0))
    )
    assert active == -inactive != 0.0


def test_only_what_has_a_surveyed_place_is_moved_and_the_rest_says_why_not():
    checked = Checked(GIVEN, FIT, ())
    _, things = scene_of(checked, 1, "fraction")
    by_name = {each.name: each for each in things}
    assert by_name[UNIT].movable
    assert by_name["i3"].view == "key"
    assert not by_name["i1"].movable
    assert "backset" in by_name["i1"].why_not
    assert "follows" in by_name["hole 1"].why_not
    assert stands_at(checked.point(1), UNIT) == (40.0, 1120.0)
    assert stands_at(checked.point(1), "i3") == (760.0, 2060.0)
    assert stands_at(checked.point(1), "hole 1") is None
    assert LEAF.position == FIT.placement.leaf


def test_costs_say_what_changes():
    before = PlaceCosts(254.0, 50.8, 6, 0, 1)
    now = PlaceCosts(304.8, -25.4, 6, 1, 2, ("lever", 25.4), "too far")
    assert cost_words(now, before, "fraction").splitlines() == [
        'Lead: 12", 1" short (now 10", 2" to spare)',
        "Holes: 6",
        "Findings: 1 error, 2 warnings (now 1 warning)",
        'Nearest: lever, 1" free',
    ]
    assert cost_words(before, before, "fraction").splitlines()[-1] == "Findings: 1 warning"
    assert "Lead: none" in cost_words(PlaceCosts(None, None, 0, 0, 0), None, "mm")
    assert Fit("to-measure").placement is None
