"""Distances along the cable route: by hand, measured before estimated, bad input."""

import doctest
import random
from dataclasses import replace

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.power import cable_distance
from hwsched.calc.power.cable_distance import Distance, PlanPoint, route_distance

CLOSET, DOOR = PlanPoint(0, 10, 5, 1.2), PlanPoint(8, 40, 25, 1.8)


def test_docs():
    assert doctest.testmod(cable_distance).failed == 0


def test_by_hand():
    assert route_distance(CLOSET, DOOR).metres == pytest.approx(1.2 + 30 + 20 + 8 + 1.8)
    assert route_distance(CLOSET, DOOR, detour_factor=1.1).metres == pytest.approx(61 * 1.1)
    assert route_distance(CLOSET, DOOR, measured_m=70).metres == 70
    assert route_distance(CLOSET, DOOR, measured_m=70).measured
    assert not route_distance(CLOSET, DOOR).measured


def test_never_shorter_than_the_straight_line_and_the_same_both_ways():
    rng = random.Random(2)
    for _ in range(100):
        a, b = (
            PlanPoint(rng.uniform(0, 20), rng.uniform(-50, 50), rng.uniform(-50, 50), rng.uniform(0, 3)) for _ in "ab"
        )
        straight = ((a.level_m - b.level_m) ** 2 + (a.x_m - b.x_m) ** 2 + (a.y_m - b.y_m) ** 2) ** 0.5
        assert route_distance(a, b).metres >= straight
        assert route_distance(a, b).metres == pytest.approx(route_distance(b, a).metres)


def test_bad_input():
    with pytest.raises(InputError, match=r"supply\.rise_m"):
        route_distance(replace(CLOSET, rise_m=-1), DOOR)
    with pytest.raises(InputError, match=r"opening\.x_m"):
        route_distance(CLOSET, replace(DOOR, x_m=float("nan")))
    with pytest.raises(InputError, match="detour_factor"):
        route_distance(CLOSET, DOOR, detour_factor=0.9)
    with pytest.raises(InputError, match="measured_m"):
        route_distance(CLOSET, DOOR, measured_m=-1)


@pytest.mark.parametrize("metres", [0, 0.25, 1])
def test_every_measured_length_from_nothing_on_is_taken_as_it_is(metres):
    assert route_distance(CLOSET, DOOR, measured_m=metres) == Distance(metres, True)


def test_every_rise_from_nothing_on_and_every_detour_from_one_on_is_taken():
    """On one level, one metre along: with no rise that is all; half a metre up and down adds one."""
    here, there = PlanPoint(0, 0, 0, 0), PlanPoint(0, 1, 0, 0)
    assert route_distance(here, there).metres == 1
    assert route_distance(replace(here, rise_m=0.5), replace(there, rise_m=0.5)).metres == 2
    assert route_distance(here, there, detour_factor=1.0).metres == 1
    assert route_distance(here, there, detour_factor=1.5).metres == 1.5
    # Below the building's zero a level is as far as above it.
    assert route_distance(replace(here, level_m=-3), there).metres == 4
