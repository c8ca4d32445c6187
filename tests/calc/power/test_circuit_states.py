"""Four states of a circuit: voltages of each, and the worst operations against every choice of them."""

import doctest
import random
from itertools import combinations, pairwise, permutations, product

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.power import circuit_states, many_solutions, worst_operations
from hwsched.calc.power.circuit import Load, solve
from hwsched.calc.power.circuit_states import STATES, Device, FedCircuit, Source, states, supply_states
from hwsched.calc.power.circuit_tree import Run, joined, network
from hwsched.calc.power.many_solutions import shared_ohms

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


@pytest.mark.parametrize("module", [circuit_states, many_solutions, worst_operations])
def test_docs(module):
    assert doctest.testmod(module).failed == 0


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


def test_what_draws_in_operation_as_at_rest_is_no_operation():
    """However many may operate at one time."""
    devices = [Device("n0", "current", 0.5, 0.5), Device("n1", "current", 0.1, 0.3)]
    for at_once in (1, 2, 5):
        assert states(chain(2), devices, SOURCE, at_once)[3].operating == (1,)


def test_a_device_that_drops_out_is_no_operation():
    """An electromagnetic lock that is released draws less: it never belongs to the worst set."""
    devices = [Device("n0", "current", 0.5, 0.0), Device("n1", "current", 0.0, 0.3, 1.0)]
    assert states(chain(2), devices, SOURCE, 2)[3].operating == (1,)


def test_an_open_resistance_is_not_connected():
    devices = [Device("n0", "resistance", float("inf"), 48.0, 24.0)]
    found = states(chain(1), devices, SOURCE, 1)
    assert found[0].solution.source_a == 0
    assert found[3].solution.source_a == pytest.approx(found[3].solution.volts["n0"] / 24)


def random_devices(rng, count, kind, openings):
    """Devices at the nodes n0, n1, ... of a tree; those of an opening operate together, and some then draw less."""
    devices = []
    for i in range(count):
        own = rng.choice(("current", "power", "resistance")) if kind == "mixed" else kind
        holding, peak, inrush = sorted((rng.uniform(0, 0.2), rng.uniform(0.1, 0.6), rng.uniform(0.2, 1.2)))
        if rng.random() < 0.15:
            # An electromagnetic lock that lets go.
            holding, peak, inrush = peak, 0.01, None
        if own == "power":
            holding, peak, inrush = 12 * holding, 12 * peak, inrush and 12 * inrush
        elif own == "resistance":
            holding, peak, inrush = 20 / (holding + 0.01), 20 / peak, inrush and 20 / inrush
        devices.append(
            Device(f"n{i}", own, holding, peak, rng.choice((inrush, None)), rng.choice((18.0, 20.0, None)),
                   group=f"door {i // 2}" if openings else "")
        )  # fmt: skip
    return devices


def groups_of(devices):
    found = {}
    for i, device in enumerate(devices):
        found.setdefault(device.group or i, []).append(i)
    return list(found.values())


def every_choice(devices, at_once):
    """Devices by index, of every set of at most so many groups."""
    groups = groups_of(devices)
    for size in range(min(at_once, len(groups)) + 1):
        for chosen in combinations(groups, size):
            yield {i for group in chosen for i in group}


def least_volts(tree, devices, source_v, ohm, at_once):
    """By brute force: least voltage at each device's node over every choice; -inf where one has no solution."""
    least = {d.node: float("inf") for d in devices}
    for chosen in every_choice(devices, at_once):
        volts = solve(tree, with_operating(devices, chosen), source_v, ohm).volts
        least = {node: min(v, volts.get(node, -float("inf"))) for node, v in least.items()}
    return least


@pytest.mark.parametrize("openings", [False, True])
@pytest.mark.parametrize("kind", ["current", "power", "resistance", "mixed"])
def test_every_place_has_its_own_worst_of_all_choices(kind, openings, monkeypatch):
    """Once with all sets solved, once by the bounds alone, against every choice solved one by one."""
    rng = random.Random(f"worst {kind} {openings}")
    compared = 0
    for round_ in range(24):
        monkeypatch.setattr(worst_operations, "_FEW", 1000 if round_ % 2 else 0)
        count = rng.randint(2, 8)
        tree, devices = random_tree(rng, count), random_devices(rng, count, kind, openings)
        at_once = rng.randint(0, count)
        peak = states(tree, devices, SOURCE, at_once)[3]
        expected = least_volts(tree, devices, 21.0, 0.1, at_once)
        got = {node: worst.volts for node, worst in peak.worst.items()}
        assert got == pytest.approx(expected, abs=1e-6)
        assert {node: worst.bound_v for node, worst in peak.worst.items()} == pytest.approx(got, abs=2e-6)
        if not peak.solution.collapsed:
            assert set(peak.low) == {d.node for d in devices if d.minimum_v and expected[d.node] < d.minimum_v - 1e-9}
            # What is said to operate does bring it there.
            for node, worst in peak.worst.items():
                volts = solve(tree, with_operating(devices, worst.operating), 21.0, 0.1).volts
                assert volts[node] == pytest.approx(worst.volts, abs=1e-6)
        compared += len(got)
    assert compared > 60


@pytest.mark.parametrize("kind", ["current", "power", "mixed"])
def test_circuits_of_a_supply_share_the_resistance_inside_it(kind):
    rng = random.Random(f"one network {kind}")
    source, compared = Source(24.0, 23.0, ohm=0.4), 0
    for _ in range(12):
        circuits = [
            FedCircuit(random_tree(rng, count), random_devices(rng, count, kind, True), rng.randint(0, 2))
            for count in (rng.randint(1, 5), rng.randint(1, 5), rng.randint(1, 4))
        ]
        tree = joined([each.tree for each in circuits])
        found = supply_states(circuits, source)
        least = [{d.node: float("inf") for d in each.devices} for each in circuits]
        for chosen in product(*(list(every_choice(each.devices, each.at_once)) for each in circuits)):
            loads = [
                Load(f"{c}:{load.node}", load.kind, load.value)
                for c, (each, own) in enumerate(zip(circuits, chosen, strict=True))
                for load in with_operating(each.devices, own)
            ]
            volts = solve(tree, loads, 23.0, 0.4).volts
            for c, own in enumerate(least):
                own.update({node: min(v, volts.get(f"{c}:{node}", -float("inf"))) for node, v in own.items()})
        for own, of_circuit in zip(least, found, strict=True):
            got = {node: worst.volts for node, worst in of_circuit[-1].worst.items()}
            assert got == pytest.approx(own, abs=1e-6)
            compared += len(own)
        resting = [
            Load(f"{c}:{load.node}", load.kind, load.value)
            for c, each in enumerate(circuits)
            for load in with_operating(each.devices, ())
        ]
        whole = solve(tree, resting, 24.0, 0.4)
        for c, of_circuit in enumerate(found):
            normal = of_circuit[0].solution
            assert normal.collapsed == whole.collapsed
            for node, volts in normal.volts.items():
                assert volts == pytest.approx(whole.volts[node if node == "supply" else f"{c}:{node}"], abs=1e-6)
        if not whole.collapsed:
            assert sum(of_circuit[0].solution.source_a for of_circuit in found) == pytest.approx(whole.source_a)
    assert compared > 80


def test_where_all_operate_at_once_each_circuit_names_its_own_devices_and_those_of_the_others():
    """Three devices of 0.4 A while they operate; what draws the same at rest operates for nobody."""
    idle = Device("n0", "current", 0.3, 0.3, minimum_v=10.0)
    one, two = (Device(f"n{i}", "current", 0.1, 0.4, minimum_v=10.0) for i in range(2))
    circuits = [FedCircuit(chain(2), [idle, two], 2), FedCircuit(chain(2), [one, two], 2)]
    peaks = [of_circuit[-1] for of_circuit in supply_states(circuits, Source(24.0, 22.0, ohm=0.5))]
    assert [peak.operating for peak in peaks] == [(1,), (0, 1)]
    assert [peak.elsewhere for peak in peaks] == [((1, 0), (1, 1)), ((0, 1),)]
    # 0.3 + 3 x 0.4 A through half an ohm inside the supply.
    assert [peak.solution.volts["supply"] for peak in peaks] == [pytest.approx(22.0 - 0.5 * 1.5)] * 2


@pytest.mark.parametrize(
    ("kind", "held", "released"), [("current", 0.6, 0.1), ("power", 12.0, 2.0), ("resistance", 40.0, 240.0)]
)
def test_a_lock_that_draws_less_as_it_is_released_is_worst_held(kind, held, released):
    """Both may operate at one time: whatever hangs behind the magnet finds least while that is held."""
    magnet = Device("n0", kind, held, released, minimum_v=10.0)
    for behind, operating in (
        (Device("n1", "current", 0.1, 0.4, minimum_v=10.0), (1,)),
        (Device("n1", kind, held, released, minimum_v=10.0), ()),
    ):
        peak = states(chain(2), [magnet, behind], Source(24.0, 22.0), 2)[-1]
        assert peak.worst["n1"].operating == operating
        loads = with_operating([magnet, behind], operating)
        assert peak.worst["n1"].volts == pytest.approx(solve(chain(2), loads, 22.0).volts["n1"])


def test_a_circuit_that_collapses_takes_no_other_along_unless_the_source_joins_them():
    def solved(ohm):
        heavy = FedCircuit(chain(4, 200), [Device("n3", "power", 50, 60, minimum_v=10.0)], 1)
        light = FedCircuit(chain(1), [Device("n0", "current", 0.1, 0.2, minimum_v=10.0)], 1)
        return [[s.solution.collapsed for s in of] for of in supply_states([heavy, light], Source(24, 22.8, ohm=ohm))]

    assert solved(0.0) == [[True] * 3, [False] * 3]
    assert solved(0.1) == [[True] * 3, [True] * 3]


def test_the_peak_is_asked_of_both_sources_where_neither_is_the_worse_at_every_load():
    """Mains of 22 V behind 2 ohm, a battery of 21 V behind none; 29 m of 1 mm2 are 1 ohm at 20 °C, both wires.

    0.1 A: 22 - 0.1 x 3 = 21.7 V by mains, 21 - 0.1 = 20.9 V by battery. 2 A: 22 - 6 = 16 V and 21 - 2 = 19 V.
    """
    tree = network([Run("supply", "a", 29, "1 mm2", "solid")], 20)
    for peak_a, least_v in ((0.1, 20.9), (2.0, 16.0)):
        devices = [Device("a", "current", 0.0, peak_a, minimum_v=10.0)]
        peak = states(tree, devices, Source(24.0, 22.0, 21.0, 2.0, 0.0), 1)[-1]
        assert peak.worst["a"].volts == pytest.approx(least_v, abs=0.01)


def test_what_is_left_unsolved_is_told_as_a_bound(monkeypatch):
    """Ten equal doors, four at one time, home runs behind one resistance: very many sets come nearly as low."""
    monkeypatch.setattr(worst_operations, "_FEW", 0)
    monkeypatch.setattr(worst_operations, "_MOST", 20)
    rng = random.Random("gap")
    runs = [Run("supply", f"n{i}", rng.uniform(20, 21), "18 AWG", "solid") for i in range(10)]
    devices = [Device(f"n{i}", "power", 1.0, rng.uniform(9, 9.1), minimum_v=18.0) for i in range(10)]
    tree = network(runs, 50)
    peak = states(tree, devices, Source(24.0, 24.0, ohm=0.5), 4)[-1]
    expected = least_volts(tree, devices, 24.0, 0.5, 4)
    open_ = 0
    for node, worst in peak.worst.items():
        assert worst.bound_v <= expected[node] + 1e-6
        assert expected[node] <= worst.volts + 1e-6
        open_ += worst.bound_v < worst.volts
    assert open_


@pytest.mark.parametrize("few", [100, 0])
@pytest.mark.parametrize("at_once", [1, 2, 3])
@pytest.mark.parametrize(
    ("kind", "rest", "more", "less"),
    [("current", 0.2, 0.5, 0.1), ("power", 2.0, 6.0, 1.0), ("resistance", 100.0, 40.0, 200.0)],
)
def test_only_what_draws_more_as_it_operates_is_said_to_operate(monkeypatch, kind, rest, more, less, at_once, few):
    """Of three doors one draws as much as at rest, and one less: they harm nobody, and nobody is to look at them."""
    monkeypatch.setattr(worst_operations, "_FEW", few)
    for doors in permutations([("more", more), ("same", rest), ("less", less)]):
        devices = [Device(f"n{i}", kind, rest, working, group=name) for i, (name, working) in enumerate(doors)]
        peak = states(chain(3), devices, SOURCE, at_once)[3]
        which = next(i for i, (name, _) in enumerate(doors) if name == "more")
        assert {each.operating for each in peak.worst.values()} == {(which,)}


@pytest.mark.parametrize("at_once", [1, 2])
@pytest.mark.parametrize(("rest", "more"), [(2.0, 6.0), (0.5, 20.0)])
def test_a_door_that_draws_the_same_is_not_named_beside_one_that_draws_more(rest, more, at_once):
    devices = [Device("n0", "power", rest, rest, group="same"), Device("n1", "power", rest, more, group="more")]
    peak = states(chain(2), devices, SOURCE, at_once)[3]
    assert {each.operating for each in peak.worst.values()} == {(1,)}


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
    assert peak.worst["b"].operating == (1,)
    assert peak.worst["b"].volts == pytest.approx(
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
        shared = shared_ohms(tree, 0.3)[node]
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
    assert {node: worst.volts for node, worst in peak.worst.items()} == pytest.approx({"a": 20.0, "b": 20.2}, abs=0.01)
