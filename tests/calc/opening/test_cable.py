"""Cable: closed cases, tight bends, limits, bad input, numeric arc length."""

import doctest
import json
import random
from math import dist, hypot, pi, tan

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.opening import cable
from hwsched.calc.opening.cable import CABLE, route, turn_rad
from tests.calc.oracles import cable as oracle
from tests.calc.oracles import case_count

CORNER = [(0, 0, 0), (100, 0, 0), (100, 80, 0)]


def test_docs():
    assert doctest.testmod(cable).failed == 0


def test_straight_cable():
    assert route([(0, 0, 0), (3, 4, 12)], 50, 2).length_mm == 15


def test_right_angle_saves_two_radii_less_a_quarter_turn():
    assert route(CORNER, 20).length_mm == pytest.approx(180 - 2 * 20 + pi / 2 * 20)


def test_published_bend_radius():  # ANSI/TIA-568.0-D as quoted in facts 8.2: 4 x 0.25 in = 1.0 in
    radius = 4 * 0.25 * 25.4
    assert radius == 25.4
    assert route(CORNER, radius).tight_bends == ()


def test_door_loop_points_from_facts():  # facts 8.2, own arithmetic: 30 and 40 mm arms, 90 degrees apart
    assert route([(30, 0, 0), (0, 40, 0)], 10).length_mm == hypot(30, 40) == 50


def test_radius_zero_is_the_polyline():
    assert route(CORNER, 0) == cable.CableRoute(180, ())


def test_straight_through_point_changes_nothing():
    assert route([(0, 0, 0), (10, 0, 0), (90, 0, 0)], 30).length_mm == pytest.approx(90)
    assert route([(0, 0, 0), (10, 0, 0), (90, 0, 0)], 30).tight_bends == ()


def test_bend_that_just_fits_and_that_does_not():
    assert route([(0, 0, 0), (20, 0, 0), (20, 20, 0)], 20).tight_bends == ()
    got = route([(0, 0, 0), (20, 0, 0), (20, 19.999, 0)], 20)
    assert got.tight_bends == (1,)
    assert got.length_mm == pytest.approx(39.999, abs=1e-9)


def test_two_bends_share_a_segment():
    points = [(0, 0, 0), (100, 0, 0), (100, 39, 0), (200, 39, 0)]
    assert route(points, 19.5).tight_bends == ()
    assert route(points, 19.6).tight_bends == (1, 2)
    assert route(points, 19.6).length_mm == pytest.approx(239)


def test_tight_corner_leaves_others_rounded():
    points = [(0, 0, 0), (5, 0, 0), (5, 100, 0), (100, 100, 0)]
    got = route(points, 10)
    assert got.tight_bends == (1,)
    assert got.length_mm == pytest.approx(200 - 20 + 5 * pi)


def test_straight_back_is_tight():
    got = route([(0, 0, 0), (100, 0, 0), (0, 0, 0)], 1)
    assert got == cable.CableRoute(200, (1,))


def test_turns():
    assert turn_rad((0, 0, 0), (1, 0, 0), (2, 0, 0)) == 0
    assert turn_rad((0, 0, 0), (1, 0, 0), (0, 0, 0)) == pytest.approx(pi)
    got = route([(0, 0, 0), (100, 0, 0), (150, 50, 0)], 10)
    assert got.length_mm == pytest.approx(100 + hypot(50, 50) - 20 * tan(pi / 8) + 10 * pi / 4)


BAD = [
    ({"points_mm": [[0, 0, 0]]}, "points_mm"),
    ({"points_mm": [[0, 0, 0], [0, 0]]}, "points_mm[1]"),
    ({"points_mm": [[0, 0, 0], [0, float("nan"), 1]]}, "points_mm[1][1]"),
    ({"points_mm": [[0, 0, 0], [1, 0, 0], [1, 0, 0]]}, "points_mm[2]"),
    ({"points_mm": None}, "points_mm"),
    ({"bend_radius_mm": -1}, "bend_radius_mm"),
    ({"slack_mm": -1}, "slack_mm"),
    ({"slack_mm": True}, "slack_mm"),
]


@pytest.mark.parametrize(("change", "field"), BAD)
def test_bad_input_names_its_field(change, field):
    with pytest.raises(InputError) as caught:
        CABLE.run({**CABLE.example, **change})
    assert caught.value.field == field


def test_points_from_python_are_checked_too():
    with pytest.raises(InputError, match=r"points_mm\[1\]\[0\]"):
        route([(0, 0, 0), (float("inf"), 0, 0)], 1)


def test_calculator_declares_what_it_gives():
    out = CABLE.run(json.loads(json.dumps(CABLE.example)))
    assert [f.name for f in CABLE.outputs] == list(json.loads(json.dumps(out, allow_nan=False)))
    assert {f.name for f in CABLE.inputs} == set(CABLE.example)


@pytest.mark.fuzz
def test_agrees_with_numeric_arc_length():
    rng = random.Random(303)
    rounded = tight_cases = 0
    for _ in range(case_count()):
        data = oracle.random_input(rng)
        out = CABLE.run(data)
        length, tight, takes = oracle.walk(data)
        points = data["points_mm"]
        for i in range(len(points) - 1):  # within rounding of just fitting either answer is right
            segment = dist(points[i], points[i + 1])
            if abs(segment - takes[i] - takes[i + 1]) < 1e-7 * max(1.0, takes[i]):
                break
        else:
            assert set(out["tight_bends"]) == tight, data
            assert out["length_mm"] == pytest.approx(length, abs=2e-3)
            assert out["length_mm"] >= length - 1e-6  # chords are never longer than the arc
            tight_cases += bool(tight)
            rounded += len(tight) < len(points) - 2 and data["bend_radius_mm"] > 0
    assert min(rounded, tight_cases) > case_count() / 10
