"""What the planner is told of supplies, openings and wires: by Ohm's law, worked by hand."""

import pytest

from hwsched.operations.power.plan_reading import drawn_of, standing_of
from hwsched.rules.network.circuit_source import SolvingLimits
from hwsched.values import Settings
from hwsched.wiring import ConnectedOpening
from tests.wiring.power_rows import circuit, connected, parts, supply


def standing(cat, **facts):
    return standing_of(supply(**facts), cat.get("PSU"), cat, Settings())


def drawn(opening, cat):
    """What it draws of the usual supply: 12 V less 5 %, 11.4 V; conductors at 20 degC."""
    _, seen, _, least_v = standing(cat)
    return drawn_of(opening, circuit(), seen, least_v, SolvingLimits(20.0, 1, 1.25))


@pytest.mark.parametrize(
    ("changed", "facts", "least_v"),
    [
        # 12 V less 5 %.
        ({}, {}, 11.4),
        # Four fifths of 2.5 A flow through 0.2 ohm inside: 0.4 V less.
        ({"PSU": {"inside_ohm": 0.2}}, {}, 11.0),
        # At the end of its battery.
        ({}, {"battery": "BAT"}, 10.5),
        # A battery of which the end is above what the mains give at the least.
        ({"BAT": {"end_v": 11.8}}, {"battery": "BAT"}, 11.4),
    ],
)
def test_what_a_supply_gives_at_the_least(changed, facts, least_v):
    cat = parts(**changed)
    _, _, used, found = standing(cat, **facts)
    # Common practice: four fifths of what it is rated for.
    assert used == pytest.approx(2.0)
    assert found == pytest.approx(least_v)


@pytest.mark.parametrize(
    ("changed", "facts", "why"),
    [
        ({"PSU": {"output_a": None}}, {}, "unknown: needs part PSU.output_a"),
        ({"PSU": {"tolerance_share": None}}, {}, "unknown: needs part PSU.tolerance_share"),
        ({"PSU": {"current": None}}, {}, "unknown: needs part PSU.current"),
        ({"PSU": {"current": "ac"}}, {}, "PSU gives AC, for which no runs are worked out"),
        # Two of 12 V in a row are 24 V; one of 12 V is not what a supply of 24 V charges.
        ({"PSU": {"standby_v": 24.0}}, {"battery": "BAT"}, "PSU takes a standby battery of 24 V"),
        ({"PSU": {"standby_v": 12.0}}, {"battery": "BAT", "batteries": 2}, "PSU takes a standby battery of 12 V"),
    ],
)
def test_why_a_supply_cannot_be_planned_with(changed, facts, why):
    assert standing(parts(**changed), **facts) == why


@pytest.mark.parametrize(
    ("unit", "amounts"),
    [
        # What a supply holds, what flows at rest and in operation, and the voltage that is needed.
        ({}, (0.4, 0.4, 0.4, 10.0)),
        ({"supply_rest_a": 0.02, "supply_inrush_a": 0.9}, (0.4, 0.02, 0.9, 10.0)),
        # 0.4 A in the middle of 10 to 14 V are 4.8 W: 0.4 A of the supply's 12 V, 0.48 A at the unit's lowest 10 V.
        ({"draws": "power"}, (0.4, 0.48, 0.48, 10.0)),
        # Down to half a volt, 0.4 A in the middle, 7.25 V, are 2.9 W: 5.8 A there.
        ({"draws": "power", "supply_low_v": 0.5}, (2.9 / 12, 5.8, 5.8, 0.5)),
        # And 30 ohm: 0.38 A of 11.4 V.
        ({"draws": "resistance"}, (0.4, 0.38, 0.38, 10.0)),
    ],
)
def test_what_an_opening_draws(unit, amounts):
    cat = parts(UNIT=unit)
    found = drawn(connected("a", cat), cat)
    assert (found.held_a, found.rest_a, found.work_a, found.needed_v) == pytest.approx(amounts)


def test_what_a_door_loop_loses_is_needed_at_the_frame():
    cat = parts()
    # 22 AWG at 20 degC: 52.96 ohm/km (ASTM B258, from memory); 0.5 m there and back 0.053 ohm, 0.021 V at 0.4 A.
    assert drawn(connected("a", cat, without=()), cat).needed_v == pytest.approx(10.0212, abs=0.001)


def test_of_what_is_unknown_or_stands_no_such_voltage_nothing_is_planned():
    cat = parts()
    assert drawn(ConnectedOpening(connected("a", cat).given, None), cat) is None
    # 12 V and 5 % are 12.6 V.
    for high_v, suits in ((12.7, True), (12.5, False)):
        cat = parts(UNIT={"supply_high_v": high_v})
        assert (drawn(connected("a", cat), cat) is not None) == suits
