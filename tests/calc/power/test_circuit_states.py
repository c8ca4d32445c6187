"""Four states of a circuit: voltages of each, and the worst operations against every choice of them."""

import doctest
import random
from itertools import combinations, pairwise

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.power import circuit_states
from hwsched.calc.power.circuit import Load, solve
from hwsched.calc.power.circuit_states import STATES, Device, Source, shared_ohm, states
from hwsched.calc.power.circuit_tree import Run, network

SOURCE = Source(24.0, 22.8, 21.0, 0.05, 0.1)


def chain(count, length_m=10.0):
    names = ["supply", *(f"n{i}" for i in range(count))]
    return network([Run(a, b, length_m, "18 AWG", "stranded") for a, b in pairwise(names)], 50)


def random_tree(rng, count):
    runs = [
        Run("supply" if i == 0 else f"n{rng.randrange(i)}", f"n{i}", rng.uniform(2, 30), "18 AWG", "solid")
        for i in range(count)
    ]
    return network(runs, 50)


def first_moment(device):
    return device.peak if device.inrush is None else device.inrush


def with_operating(devices, chosen):
    return [
        Load(d.node, d.kind, first_moment(d) if i in chosen else d.holding, d.minimum_v, d.maximum_v)
        for i, d in enumerate(devices)
    ]


def test_docs():
    assert doctest.testmod(circuit_states).failed == 0


def test_states_are_the_circuit_at_their_voltages():
    tree = chain(3)
    devices = [Device(f"n{i}", kind, 0.1, 0.4, 0.9) for i, kind in enumerate(("current", "power", "current"))]
    found = states(tree, devices, SOURCE, 1)
    # No upper tolerance is stated, so nothing is asked at it.
    assert tuple(s.name for s in found) == tuple(name for name in STATES if name != "highest-mains")
    resting = with_operating(devices, ())
    for state, volts, ohm in zip(found, (24.0, 22.8, 21.0), (0.05, 0.05, 0.1), strict=False):
        assert state.source_v == volts
        assert state.solution.volts == pytest.approx(solve(tree, resting, volts, ohm).volts, abs=1e-9)
    peak = found[3]
    assert peak.operating == (2,)
    expected = solve(tree, with_operating(devices, (2,)), 21.0, 0.1)
    assert peak.solution.volts == pytest.approx(expected.volts, abs=1e-9)


def test_at_the_upper_tolerance_only_what_is_surely_drawn_lowers_the_voltage():
    tree = chain(1)
    (ohm,) = tree.ohm[1:]
    silent, drawing = (Device("n0", "current", 0.4, 1.0, maximum_v=12.5, least=each) for each in (None, 0.4))
    source = Source(12.0, 11.4, highest_v=12.6)
    found = {s.name: s for s in states(tree, [silent], source, 1)}
    assert (found["highest-mains"].source_v, found["highest-mains"].solution.volts["n0"]) == (12.6, 12.6)
    assert found["highest-mains"].high == ("n0",)
    assert found["normal"].high == ()
    lowered = {s.name: s for s in states(tree, [drawing], source, 1)}["highest-mains"]
    assert lowered.solution.volts["n0"] == pytest.approx(12.6 - 0.4 * ohm, abs=1e-9)
    with pytest.raises(InputError, match="highest_v"):
        states(tree, [silent], Source(12.0, 11.4, highest_v=11.9), 1)


def test_without_battery_the_peak_is_at_the_lowest_mains():
    found = states(chain(1), [Device("n0", "current", 0.1, 1)], Source(12, 11.4, None, 0.2), 1)
    assert [(s.name, s.source_v) for s in found] == [("normal", 12), ("lowest-mains", 11.4), ("peak", 11.4)]


def test_peak_voltage_can_be_chosen():
    found = states(chain(1), [Device("n0", "current", 0.1, 1)], SOURCE, 1, peak_v=24)
    assert found[3].source_v == 24
    assert found[3].solution.volts["supply"] == pytest.approx(24 - 0.1)


def test_peak_counts_where_no_inrush_is_stated_and_says_so():
    devices = [Device("n0", "current", 0.1, 0.5), Device("n1", "current", 0.1, 0.5, 1.0)]
    peak = states(chain(2), devices, SOURCE, 2)[3]
    assert peak.operating == (0, 1)
    assert peak.inrush_assumed == (0,)
    assert peak.solution.source_a == pytest.approx(1.5)


def test_a_device_that_drops_out_is_no_operation():
    """An electromagnetic lock that is released draws less: it never belongs to the worst set."""
    devices = [Device("n0", "current", 0.5, 0.0), Device("n1", "current", 0.0, 0.3, 1.0)]
    assert states(chain(2), devices, SOURCE, 2)[3].operating == (1,)


def test_an_open_resistance_is_not_connected():
    devices = [Device("n0", "resistance", float("inf"), 48.0, 24.0)]
    found = states(chain(1), devices, SOURCE, 1)
    assert found[0].solution.source_a == 0
    assert found[3].solution.source_a == pytest.approx(found[3].solution.volts["n0"] / 24)


@pytest.mark.parametrize("kind", ["current", "power", "resistance"])
def test_worst_operations_against_every_choice(kind):
    rng = random.Random(f"worst {kind}")
    differences = []
    for _ in range(60):
        count = rng.randint(2, 8)
        tree = random_tree(rng, count)
        devices = []
        for i in range(count):
            holding, peak, inrush = sorted((rng.uniform(0, 0.2), rng.uniform(0.1, 0.6), rng.uniform(0.2, 1.2)))
            if kind == "power":
                holding, peak, inrush = 12 * holding, 12 * peak, 12 * inrush
            elif kind == "resistance":
                holding, peak, inrush = 20 / (holding + 0.01), 20 / peak, 20 / inrush
            devices.append(
                Device(f"n{i}", kind, holding, peak, rng.choice((inrush, None)), rng.choice((18.0, 20.0, None)))
            )
        at_once = rng.randint(0, count)
        peak_state = states(tree, devices, SOURCE, at_once)[3]
        if peak_state.solution.collapsed:
            continue
        least_room, lows = float("inf"), set()
        for chosen in combinations(range(count), at_once):
            volts = solve(tree, with_operating(devices, chosen), 21.0, 0.1).volts
            for d in devices:
                room_v = volts[d.node] - (d.minimum_v or 0.0) if volts else -float("inf")
                least_room = min(least_room, room_v)
                if d.minimum_v is not None and room_v < -1e-9:
                    lows.add(d.node)
        room_v = min(peak_state.solution.volts[d.node] - (d.minimum_v or 0.0) for d in devices)
        differences.append(room_v - least_room)
        if kind == "current":
            assert set(peak_state.low) == lows
    assert len(differences) > 40
    if kind == "current":
        assert max(differences) < 1e-9
    else:
        # The choice is made at the resting voltages; it is the worst one or next to it.
        assert sum(d < 1e-6 for d in differences) > 0.9 * len(differences)
        assert max(differences) < 0.2


def test_the_largest_of_several_devices_at_one_node_is_found_wherever_it_stands():
    """4 V lost by the last of three at one end, 3 V by the one at the other: 58 m of 1 mm² out and back are 2 ohm."""
    runs = [Run("supply", node, 58, "1 mm2", "solid") for node in ("a", "b")]
    devices = [Device("a", "current", 0.0, peak) for peak in (0.1, 0.2, 2.0)] + [Device("b", "current", 0.0, 1.5)]
    peak = states(network(runs, 20), devices, Source(24, 24), 1)[2]
    assert peak.operating == (2,)
    assert peak.solution.volts["a"] == pytest.approx(20)


def test_other_operations_that_bring_another_device_low_are_told():
    """Two far ends that cannot both be in a set of one."""
    runs = [Run("supply", "a", 60, "18 AWG", "solid"), Run("supply", "b", 60, "18 AWG", "solid")]
    devices = [Device(node, "current", 0.1, 1.0, inrush, 20.0) for node, inrush in (("a", 2.0), ("b", 1.9))]
    peak = states(network(runs, 50), devices, Source(24, 24), 1)[2]
    assert peak.operating == (0,)
    assert peak.low == ("a", "b")
    assert dict(peak.others_low)["b"] == pytest.approx(
        solve(network(runs, 50), with_operating(devices, (1,)), 24).volts["b"]
    )


def test_collapse_is_told_in_every_state():
    found = states(chain(4, 200), [Device("n3", "power", 50, 60)], SOURCE, 1)
    assert all(s.solution.collapsed for s in found)
    found = states(chain(4, 50), [Device("n3", "power", 5, 40)], SOURCE, 1)
    assert [s.solution.collapsed for s in found] == [False, False, False, True]


def test_nothing_connected():
    found = states(chain(1), [], SOURCE, 3)
    assert all(s.solution.source_a == 0 for s in found)


def test_shared_resistance_is_that_of_the_common_way():
    tree = random_tree(random.Random(1), 12)
    for node in range(12):
        shared = shared_ohm(tree, node, 0.3)
        ways = [set(tree.path(name)) for name in tree.names]
        ohm = {tree.run[i]: tree.ohm[i] for i in range(1, len(tree.names))}
        for other, way in enumerate(ways):
            assert shared[other] == pytest.approx(0.3 + sum(ohm[r] for r in way & ways[node]))


@pytest.mark.parametrize(
    ("source", "at_once", "field"),
    [
        (Source(0, 0), 1, "normal_v"),
        (Source(24, 25), 1, "lowest_v"),
        (Source(24, 22, 0), 1, "battery_end_v"),
        (Source(24, 22, ohm=-1), 1, "source_ohm"),
        (SOURCE, -1, "operations_at_once"),
    ],
)
def test_bad_input(source, at_once, field):
    with pytest.raises(InputError) as caught:
        states(chain(1), [Device("n0", "current", 0.1, 1)], source, at_once)
    assert caught.value.field == field


def test_bad_device_is_named():
    with pytest.raises(InputError, match=r"loads\[1\].node"):
        states(chain(1), [Device("n0", "current", 0.1, 1), Device("n9", "current", 0.1, 1)], SOURCE, 1)


def test_what_only_the_resistance_inside_the_source_brings_low_is_told_too():
    """29 m of 1 mm2 are 1 ohm at 20 °C, both wires (IEC 60228 by the calculator's example); 1 ohm is in the source.

    A operates with 2.0 A: A has 24 - 2 x 2.0 = 20.0 V, B has 24 - 1 x 2.0 = 22.0 V. B operates with 1.9 A: B has
    24 - 2 x 1.9 = 20.2 V. Both want 21 V; the run of B alone would leave it 24 - 1.9 = 22.1 V, and that is enough.
    """
    runs = [Run("supply", node, 29, "1 mm2", "solid") for node in ("a", "b")]
    devices = [
        Device("a", "current", 0.0, 1.0, 2.0, minimum_v=21.0, name="a"),
        Device("b", "current", 0.0, 1.0, 1.9, minimum_v=21.0, name="b"),
    ]
    peak = states(network(runs, 20), devices, Source(24.0, 24.0, None, 1.0), 1)[2]
    assert peak.operating == (0,)
    assert dict(peak.solution.volts) == pytest.approx({"supply": 22.0, "a": 20.0, "b": 22.0}, abs=0.01)
    assert peak.low == ("a", "b")
    assert dict(peak.others_low) == {"b": pytest.approx(20.2, abs=0.01)}
