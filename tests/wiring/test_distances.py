"""Distances along the cable route: measured goes first, estimates by hand, what is missing is named."""

import pytest

from hwsched.values.power import PowerFacts, Route
from hwsched.wiring.distances import distance, laid_ways
from tests.rules.scenario import opening
from tests.wiring.power_rows import circuit, run, supply

HEIGHTS = {("Main", "1"): 0.0, ("Main", "2"): 4.0, ("Main", "roof"): None}
PLACE = {"building": "Main", "level": "1", "x_m": 2.0, "y_m": 3.0, "rise_m": 1.5}
DOOR = {"building": "Main", "level": "2", "plan_x_m": 22.0, "plan_y_m": 8.0, "rise_m": 1.0}


def of(place=None, door=None, route=None, **more):
    height = HEIGHTS.get(("Main", (place or {}).get("level", "1")))
    return distance(supply(level_m=height, **{**PLACE, **(place or {})}), opening(**{**DOOR, **(door or {})}), HEIGHTS,
                    route, **more)  # fmt: skip


def test_an_estimate_by_hand():
    # Up 1.5, along 20 and across 5, one level of 4 m up, down 1.0: 31.5 m (common practice for take-off from plans).
    found, needs = of()
    assert (found.metres, found.measured, needs) == (31.5, False, ())
    assert of(detour_factor=1.1)[0].metres == pytest.approx(34.65)


def test_measured_goes_before_everything():
    for door in ({}, {"plan_x_m": None}, {"building": "Annex"}, {"level": "roof"}):
        found, needs = of(door=door, route=Route("o", "s", 44.0))
        assert (found.metres, found.measured, needs) == (44.0, True, ())


def test_a_pin_alone_measures_nothing():
    assert of(route=Route("o", "s", None, True))[0].metres == 31.5


def test_another_building_is_not_estimated():
    assert of(door={"building": "Annex"}) == (None, ())


def test_on_one_level_its_height_does_not_matter():
    found, needs = of(place={"level": "roof"}, door={"level": "roof"})
    assert (found.metres, needs) == (27.5, ())


@pytest.mark.parametrize(
    ("place", "door", "needs"),
    [
        ({"x_m": None}, {}, ("supply.x_m",)),
        ({"y_m": None, "rise_m": None}, {}, ("supply.y_m", "supply.rise_m")),
        ({}, {"plan_x_m": None, "plan_y_m": None}, ("opening.plan_x_m", "opening.plan_y_m")),
        ({}, {"rise_m": None}, ("opening.rise_m",)),
        ({"level": "roof"}, {}, ("level.height_m",)),
        ({}, {"level": "roof"}, ("level.height_m",)),
        ({}, {"level": None}, ("level.height_m",)),
        ({"level": None}, {"level": None}, ("level.height_m",)),
        ({"x_m": None, "level": "roof"}, {"rise_m": None}, ("supply.x_m", "opening.rise_m", "level.height_m")),
    ],
)
def test_what_is_missing_is_named(place, door, needs):
    assert of(place, door) == (None, needs)


def test_a_run_that_lies_goes_before_an_estimate():
    found, needs = of(laid_m=40.0)
    assert (found.metres, found.measured, needs) == (40.0, True, ())
    # It is the only thing that is known.
    assert of(door={"plan_x_m": None}, laid_m=40.0)[0].metres == 40.0
    # What somebody measured goes before it; one as long as the estimate is an estimate.
    assert of(laid_m=40.0, route=Route("o", "s", 44.0))[0].metres == 44.0
    assert of(laid_m=31.5)[0].measured is False


def test_ways_of_runs_that_lie():
    """1 and 2 in a chain, 4 by two runs, 3 behind an unknown one; 5 is led over a junction, by choice."""
    runs = (
        run("supply", "1", 12.0), run("1", "2", 3.5), run("2", "3", None), run("supply", "4", 9.0),
        run("supply", "4", 8.0, of="d"), run("supply", "J1", 10.0), run("J1", "5", 2.0),
    )  # fmt: skip
    found = laid_ways(PowerFacts((supply(),), (circuit(), circuit("d")), runs))
    assert found.supply == {("1", "s"): 12.0, ("4", "s"): 8.0}
    assert found.between == {frozenset("12"): 3.5}
