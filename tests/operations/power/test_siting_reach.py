"""How far a supply feeds an opening, and what is left of a supply and of a limiter: by Ohm's law, worked by hand."""

from math import inf

import pytest

from hwsched.calc.power.circuit_tree import Run
from hwsched.operations.power.siting_reach import CandidatePlace, Demanded, held_a, limiter_left_a, reach_m
from hwsched.operations.power.supply_siting import taken_a
from hwsched.values import Settings
from hwsched.values.power import Device
from hwsched.wiring import ConnectedOpening
from tests.rules.scenario import part
from tests.wiring.power_rows import circuit, connected, parts, run, supply, work

PLACE = CandidatePlace(2.0, 12.0, 11.4, "dc", 20.0)
OHM_PER_KM = 20.0
"""Of a made-up wire: a metre of both conductors has 0.04 ohm."""


def device(kind="current", holding=0.1, peak=0.5, inrush=None, minimum_v=10.2, role="strike"):
    return Device("o", "1", "STRIKE", role, kind, holding, peak, inrush, minimum_v, 14.0)


def reach(*devices, place=PLACE, transfer=None):
    return reach_m(Demanded(devices, transfer), place, parts(), OHM_PER_KM)


@pytest.mark.parametrize(
    ("devices", "metres"),
    [
        # 11.4 - 10.2 = 1.2 V may be lost; at 0.5 A each metre loses 0.02 V.
        ([device()], 60.0),
        # Its first moment is what counts where it is stated: 0.04 V a metre.
        ([device(inrush=1.0)], 30.0),
        # More at rest than in operation: a lock that is released by taking its current away.
        ([device(holding=0.6, peak=0.0)], 50.0),
        # 5.1 W at 10.2 V are 0.5 A; at the supply's 11.4 V it would be less, and the reach too long.
        ([device("power", holding=1.0, peak=5.1)], 60.0),
        # 22.8 ohm at 11.4 V: 0.5 A.
        ([device("resistance", holding=inf, peak=22.8)], 60.0),
        # The higher of both voltages, and both currents: 1.0 V / (0.75 A * 0.04 ohm/m).
        ([device(), device(peak=0.25, minimum_v=10.4)], 100.0 / 3.0),
        ([device(holding=0.0, peak=0.0)], inf),
        # At its lowest voltage already beside the supply, and below it.
        ([device(minimum_v=11.4)], 0.0),
        ([device(minimum_v=11.5)], 0.0),
        ([device(holding=0.0, peak=0.0, minimum_v=11.4)], 0.0),
    ],
)
def test_how_far_a_supply_feeds(devices, metres):
    assert reach(*devices) == pytest.approx(metres)


def test_a_door_loop_takes_of_the_reach_of_what_hangs_behind_it():
    loop = Run("frame", "leaf", 0.5, "18 AWG", "solid", extra_ohm=1.0)
    # 18 AWG solid at 20 degC: 6.385 ohm/kft = 20.95 ohm/km (ASTM B258, from memory), 0.02095 ohm for 0.5 m and back.
    # With 1 ohm at its ends it loses 0.5 A * 1.02095 ohm = 0.5105 V of 1.2 V; 0.6895 V at 0.02 V a metre.
    assert reach(device(role="unit"), transfer=loop) == pytest.approx(34.48, abs=0.02)
    # Two on the leaf share it: 1 A loses 1.02095 V, 0.17905 V are left at 0.04 V a metre.
    assert reach(device(role="unit"), device(role="lock"), transfer=loop) == pytest.approx(4.476, abs=0.02)
    # What stands in the frame is before it.
    assert reach(device(), transfer=loop) == pytest.approx(60.0)


def test_what_an_opening_holds_of_a_supply_at_its_normal_voltage():
    # 0.5 A; 6 W / 12 V = 0.5 A; 12 V / 48 ohm = 0.25 A: the larger of rest and operation of each.
    found = held_a(Demanded((device(), device("power", 6.0, 3.0), device("resistance", inf, 48.0)), None), 12.0)
    assert found == pytest.approx(1.25)


def laid():
    """Two units of 0.4 A on a circuit whose limiter of 1 A carries 1 A / 1.25 = 0.8 A."""
    cat = parts(add=[part("F-1", "limiter", rating_a=1.0)])
    own = circuit(limiter="F-1", limiter_a=1.0)
    openings = {name: connected(name, cat) for name in "ab"}
    return work([run("supply", "a"), run("supply", "b")], openings, cat, circuits=[own]), own, cat


@pytest.mark.parametrize(("demanded", "left"), [("ab", 0.8), ("a", 0.4), ("", 0.0)])
def test_what_may_still_hang_on_a_chosen_limiter(demanded, left):
    before, own, cat = laid()
    assert limiter_left_a(before, own, set(demanded), cat, Settings()) == pytest.approx(left)
    # Of another circuit nothing is taken.
    other = circuit("d", limiter="F-1", limiter_a=1.0)
    assert limiter_left_a(before, other, set(demanded), cat, Settings()) == pytest.approx(0.8)


def test_without_a_chosen_limiter_nothing_bounds_a_circuit():
    before, _, cat = laid()
    assert limiter_left_a(before, None, set(), cat, Settings()) == inf
    assert limiter_left_a(before, circuit(), set(), cat, Settings()) == inf


def test_what_is_not_known_of_an_opening_is_taken_as_drawn():
    """B has no fit: of this catalogue it may get a unit of 0.4 A and a magnet of 0.5 A; A holds its 0.4 A."""
    cat = parts(add=[part("F-2", "limiter", rating_a=2.0)])
    own = circuit(limiter="F-2", limiter_a=2.0)
    openings = {"a": connected("a", cat), "b": ConnectedOpening(connected("b", cat).given, None)}
    before = work([run("supply", "a"), run("supply", "b")], openings, cat, circuits=[own])
    assert limiter_left_a(before, own, {"b"}, cat, Settings()) == pytest.approx(2.0 / 1.25 - 0.4 - 0.9)
    assert taken_a(before, supply(), {"b"}) == pytest.approx(0.4 + 0.9)


@pytest.mark.parametrize(("demanded", "taken"), [("ab", 0.0), ("a", 0.4), ("", 0.8)])
def test_what_stays_on_a_supply_is_taken_of_it(demanded, taken):
    before, _, _ = laid()
    assert taken_a(before, supply(), set(demanded)) == pytest.approx(taken)
    assert taken_a(before, supply("other"), set(demanded)) == 0.0
