"""Circuit: closed cases, published drops, collapse, Kirchhoff's laws, another method, properties, bad input."""

import copy
import doctest
import json
import random
from math import sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hwsched.calc.calculator import InputError
from hwsched.calc.power import circuit as module
from hwsched.calc.power.circuit import CIRCUIT, Load, outside_limits, solve, solve_draw
from hwsched.calc.power.circuit_tree import Run, network
from hwsched.calc.power.conductor import M_PER_FOOT, conductor, loop_ohm
from tests.calc.circuits import random_circuit
from tests.calc.oracles import circuit as oracle


def run(a, b, length_m=58.0, **more):
    """Run of 1 mm² at 20 °C: 58 m, out and back, are 2 ohm."""
    return {"from": a, "to": b, "length_m": length_m, "gauge": "1 mm2", "stranding": "solid"} | more


def circuit_of(runs, loads, source_v=12.0, **more):
    return {"source_v": source_v, "temperature_c": 20, "runs": runs, "loads": loads} | more


def load(node, kind, value, **more):
    return {"node": node, "kind": kind, "value": value} | more


def with_loop_ohm(data):
    data = copy.deepcopy(data)
    for each in data["runs"]:
        wire = conductor(each["gauge"], each["stranding"], data["temperature_c"])
        each["loop_ohm"] = loop_ohm(
            each["length_m"], wire.resistance_ohm_per_km, each.get("conductors_in_parallel", 1)
        ) + each.get("extra_ohm", 0)
    return data


def test_docs():
    assert doctest.testmod(module).failed == 0


def test_published_drop_of_a_lock():  # facts 1.5: 12 V, 0.5 A, 150 ft of 18 AWG stranded: 10.8075 V by Table 8
    length_m = 150 * M_PER_FOOT
    data = circuit_of(
        [run("supply", "lock", length_m, gauge="18 AWG", stranding="stranded")],
        [load("lock", "current", 0.5)],
        temperature_c=75,
    )
    # The formula is 0.37 % under the table's resistance.
    assert CIRCUIT.run(data)["volts"]["lock"] == pytest.approx(12 - 1.1925 * 7.920 / 7.95, abs=5e-4)
    assert CIRCUIT.run(data)["volts"]["lock"] == pytest.approx(10.8075, abs=5e-3)


def test_each_kind_of_load_at_the_end_of_one_run():
    def end(kind, value):
        return CIRCUIT.run(circuit_of([run("supply", "a")], [load("a", kind, value)]))

    assert end("current", 1.5)["volts"] == pytest.approx({"supply": 12, "a": 9})
    assert end("resistance", 4)["volts"] == pytest.approx({"supply": 12, "a": 8})
    # v = 12 - 2 * 16 / v has the solutions 8 and 4; the higher one counts.
    found = end("power", 16)
    assert found["volts"] == pytest.approx({"supply": 12, "a": 8})
    assert found["run_a"] == pytest.approx([2])
    assert found["source_a"] == pytest.approx(2)
    assert found["loss_w"] == pytest.approx(8)


def test_source_resistance_and_a_load_at_the_supply():
    found = CIRCUIT.run(
        circuit_of([run("supply", "a")], [load("a", "current", 1), load("supply", "current", 2)], source_ohm=0.5)
    )
    assert found["volts"] == pytest.approx({"supply": 10.5, "a": 8.5})
    assert found["source_a"] == pytest.approx(3)
    assert (found["collapsed"], found["reason"]) == (False, None)
    assert found["loss_w"] == pytest.approx(2)  # in the run; not inside the source


def test_loads_without_any_run():
    found = CIRCUIT.run(circuit_of([], [load("supply", "power", 24)]))
    assert found["volts"] == {"supply": 12}
    assert found["source_a"] == pytest.approx(2)
    assert found["run_a"] == []


def test_no_loads():
    assert CIRCUIT.run(circuit_of([run("supply", "a")], []))["volts"] == {"supply": 12, "a": 12}


def test_several_loads_at_a_node_add():
    apart = CIRCUIT.run(circuit_of([run("supply", "a")], [load("a", "current", 0.5), load("a", "power", 4)] * 2))
    sums = CIRCUIT.run(circuit_of([run("supply", "a")], [load("a", "current", 1), load("a", "power", 8)]))
    assert apart["volts"] == pytest.approx(sums["volts"])


def test_branches_and_currents_in_the_order_and_direction_of_the_runs():
    found = CIRCUIT.run(
        circuit_of(
            [run("b", "a"), run("a", "c"), run("a", "supply"), run("supply", "d")],
            [load("b", "current", 0.5), load("c", "current", 0.25), load("d", "current", 1)],
        )
    )
    assert found["volts"] == pytest.approx({"supply": 12, "a": 10.5, "b": 9.5, "c": 10, "d": 10})
    assert found["run_a"] == pytest.approx([-0.5, 0.25, -0.75, 1])
    assert found["source_a"] == pytest.approx(1.75)


def test_conductors_in_parallel_and_terminations():
    found = CIRCUIT.run(
        circuit_of([run("supply", "a", conductors_in_parallel=2, extra_ohm=0.5)], [load("a", "current", 2)])
    )
    assert found["volts"]["a"] == pytest.approx(12 - 2 * 1.5)


def test_low_and_high_nodes():
    data = circuit_of(
        [run("supply", "a"), run("a", "b")],
        [
            load("b", "current", 1, minimum_v=8.0),
            load("a", "current", 0.5, minimum_v=9.01),
            load("a", "current", 0, minimum_v=9.0),
            load("b", "current", 0, minimum_v=7.0, maximum_v=6.5),
            load("supply", "current", 0, maximum_v=12),
        ],
    )
    found = CIRCUIT.run(data)
    assert found["volts"] == pytest.approx({"supply": 12, "a": 9, "b": 7})
    # Exactly at a limit is within it, whatever the rounding.
    assert (found["low"], found["high"]) == (["b", "a"], ["b"])


def test_the_nose_of_the_curve():
    """The most that 12 V can give through 2 ohm is 12² / (4 · 2) = 18 W, at 6 V."""

    def at(watts):
        return CIRCUIT.run(circuit_of([run("supply", "a")], [load("a", "power", watts)]))

    for short_w in (1e-1, 1e-3, 1e-6, 1e-9):
        found = at(18 - short_w)
        assert not found["collapsed"]
        assert found["volts"]["a"] == pytest.approx(6 + sqrt(36 - 2 * (18 - short_w)), abs=1e-6)
    for over_w in (1e-9, 1e-6, 1e-3, 1e-1, 1, 1e3, 1e8):
        found = at(18 + over_w)
        assert found["collapsed"]
        assert "18" in found["reason"] or over_w >= 1
        assert found["volts"] == {}
        assert found["run_a"] == []
        assert found["source_a"] is None
        assert found["loss_w"] is None
    assert at(18)["collapsed"] or at(18)["volts"]["a"] == pytest.approx(6, abs=1e-3)


def test_collapse_inside_the_source():
    found = CIRCUIT.run(circuit_of([], [load("supply", "power", 19)], source_ohm=2))
    assert found["collapsed"]
    assert "'supply'" in found["reason"]


def test_currents_that_cannot_be_carried_are_said_to_be_so():
    found = CIRCUIT.run(circuit_of([run("supply", "a")], [load("a", "current", 7)]))
    assert found["volts"]["a"] == pytest.approx(-2)
    assert not found["collapsed"]
    assert "below zero" in found["reason"]
    # A power load there has no solution at all.
    assert CIRCUIT.run(circuit_of([run("supply", "a")], [load("a", "current", 7), load("a", "power", 1)]))["collapsed"]


@pytest.mark.parametrize("kind", ["current", "power", "resistance", "mixed"])
def test_against_a_dense_matrix(kind):
    rng = random.Random(kind)
    for _ in range(100):
        data = random_circuit(rng, kind)
        found = CIRCUIT.run(data)
        expected = oracle.volts(with_loop_ohm(data))
        assert found["collapsed"] == (expected is None)
        if expected is not None:
            assert found["volts"] == pytest.approx(expected, abs=1e-6, rel=0)


def test_collapse_against_repeated_substitution():
    """Loads scaled to just below and just above where the other method finds the end."""
    rng = random.Random(4)
    for _ in range(15):
        data = random_circuit(rng, "power")
        if not data["loads"]:
            continue
        plain = with_loop_ohm(data)
        low, high = 0.0, 1.0

        def scaled(share, data=data):
            return data | {"loads": [x | {"value": x["value"] * share} for x in data["loads"]]}

        while not CIRCUIT.run(scaled(high))["collapsed"]:
            low, high = high, 2 * high
        for _ in range(40):
            middle = (low + high) / 2
            low, high = (low, middle) if CIRCUIT.run(scaled(middle))["collapsed"] else (middle, high)
        for share in (low * 0.999, low * 1.001):
            expected = oracle.volts(plain | {"loads": scaled(share)["loads"]})
            found = CIRCUIT.run(scaled(share))
            assert found["collapsed"] == (expected is None) == (share > low)
            if expected is not None:
                assert found["volts"] == pytest.approx(expected, abs=1e-6)


@pytest.mark.parametrize("kind", ["current", "power", "resistance", "mixed"])
def test_kirchhoff(kind):
    rng = random.Random(f"laws {kind}")
    for _ in range(50):
        data = random_circuit(rng, kind, 40)
        found = CIRCUIT.run(data)
        if found["collapsed"]:
            continue
        volts, balance = found["volts"], dict.fromkeys(found["volts"], 0.0)
        loss_w = 0.0
        for each, amps in zip(with_loop_ohm(data)["runs"], found["run_a"], strict=True):
            assert volts[each["from"]] - volts[each["to"]] == pytest.approx(amps * each["loop_ohm"], abs=1e-9)
            balance[each["from"]] -= amps
            balance[each["to"]] += amps
            loss_w += amps**2 * each["loop_ohm"]
        for each in data["loads"]:
            v, value = volts[each["node"]], each["value"]
            balance[each["node"]] -= {"current": value, "power": value / v, "resistance": v / value}[each["kind"]]
        balance["supply"] += found["source_a"]
        assert balance == pytest.approx(dict.fromkeys(balance, 0.0), abs=1e-9)
        assert found["loss_w"] == pytest.approx(loss_w)
        assert volts["supply"] == pytest.approx(data["source_v"] - data["source_ohm"] * found["source_a"], abs=1e-9)


def test_a_near_solution_only_saves_time():
    tree = network([Run("supply", "a", 58, "1 mm2", "solid"), Run("a", "b", 58, "1 mm2", "solid")], 20)
    loads = [Load("a", "power", 3), Load("b", "power", 2), Load("b", "current", 0.5)]
    drawn = module.draw(tree, loads)
    for near_v in (11.0, 12.0, 30.0):
        near = solve(tree, loads, near_v)
        assert not near.collapsed
        for source_v in (10.5, 11, 12, 24):
            assert solve_draw(tree, drawn, source_v, 0, near).volts == pytest.approx(
                solve(tree, loads, source_v).volts, abs=1e-9
            )
    assert solve_draw(tree, drawn, 3, 0, solve(tree, loads, 12)).collapsed


def test_long_and_wide_circuits():
    chain = [run("supply" if i == 0 else f"n{i - 1}", f"n{i}", 1) for i in range(5000)]
    found = CIRCUIT.run(circuit_of(chain, [load("n4999", "power", 0.1)]))
    ohm = 5000 * 2 / 58
    assert found["volts"]["n4999"] == pytest.approx(6 + sqrt(36 - ohm * 0.1))
    star = [run("supply", f"n{i}", 58) for i in range(5000)]
    found = CIRCUIT.run(circuit_of(star, [load(f"n{i}", "power", 16) for i in range(5000)]))
    assert found["volts"]["n77"] == pytest.approx(8)
    assert found["source_a"] == pytest.approx(10_000)


CIRCUITS = st.builds(
    lambda seed, kind: random_circuit(random.Random(seed), kind),
    st.integers(0, 10**9),
    st.sampled_from(["current", "power", "resistance", "mixed"]),
)


def beyond(data, changed):
    """Nodes that a run feeds."""
    left = network_of([each for each in data["runs"] if each is not changed])
    return {each[end] for each in data["runs"] for end in ("from", "to")} - left


def network_of(runs):
    """Nodes that are fed from the supply by these runs."""
    connected, grown = {"supply"}, True
    while grown:
        more = {
            n for each in runs if {each["from"], each["to"]} & connected for n in (each["from"], each["to"])
        } - connected
        connected |= more
        grown = bool(more)
    return connected


@given(CIRCUITS, st.data())
@settings(max_examples=200, deadline=None)
def test_a_better_run_never_lowers_a_voltage(data, pick):
    before = CIRCUIT.run(data)
    better = copy.deepcopy(data)
    changed = pick.draw(st.sampled_from(better["runs"]))
    change = pick.draw(st.sampled_from(["thicker", "shorter", "parallel"]))
    if change == "thicker":
        changed["gauge"] = "14 AWG"
    elif change == "shorter":
        changed["length_m"] *= 0.8
    else:
        changed["conductors_in_parallel"] += 1
    after = CIRCUIT.run(better)
    assert before["collapsed"] or not after["collapsed"]
    # A resistance that finds more voltage draws more current, and so costs the nodes that its run does not feed.
    resistive = any(each["kind"] == "resistance" for each in data["loads"])
    held = beyond(better, changed) if resistive else set(before["volts"])
    for node in held & set(before["volts"]):
        assert after["volts"][node] >= before["volts"][node] - 1e-8


@given(CIRCUITS, st.sampled_from(["stiffer", "higher"]))
@settings(max_examples=100, deadline=None)
def test_a_better_source_never_lowers_a_voltage(data, change):
    before = CIRCUIT.run(data)
    after = CIRCUIT.run(data | ({"source_ohm": 0.0} if change == "stiffer" else {"source_v": data["source_v"] + 1}))
    assert before["collapsed"] or not after["collapsed"]
    for node, volts in before["volts"].items():
        assert after["volts"][node] >= volts - 1e-8


@given(CIRCUITS, st.data())
@settings(max_examples=150, deadline=None)
def test_one_more_load_never_raises_a_voltage(data, pick):
    before = CIRCUIT.run(data)
    node = pick.draw(st.sampled_from([each["to"] for each in data["runs"]]))
    kind = pick.draw(st.sampled_from(["current", "power", "resistance"]))
    after = CIRCUIT.run(data | {"loads": [*data["loads"], load(node, kind, 50 if kind == "resistance" else 0.5)]})
    assert after["collapsed"] or not before["collapsed"]
    for name, volts in after["volts"].items():
        assert volts <= before["volts"][name] + 1e-8


@given(CIRCUITS)
@settings(max_examples=60, deadline=None)
def test_the_order_of_runs_and_loads_does_not_matter(data):
    turned = data | {"runs": data["runs"][::-1], "loads": data["loads"][::-1]}
    one, other = CIRCUIT.run(data), CIRCUIT.run(turned)
    assert one["volts"] == pytest.approx(other["volts"], abs=1e-8)
    assert one["run_a"] == pytest.approx(other["run_a"][::-1], abs=1e-8)


def test_outputs_are_the_described_ones_and_json():
    found = CIRCUIT.run(CIRCUIT.example)
    assert set(found) == {f.name for f in CIRCUIT.outputs}
    json.dumps(found, allow_nan=False)


GOOD = circuit_of([run("supply", "a"), run("a", "b")], [load("b", "current", 0.5)])


@pytest.mark.parametrize(
    ("path", "value", "field"),
    [
        (("source_v",), 0, "source_v"),
        (("source_v",), -12, "source_v"),
        (("source_v",), None, "source_v"),
        (("source_v",), "12 VAC", "source_v"),
        (("source_v",), 1e308, "source_v"),
        (("source_ohm",), -1, "source_ohm"),
        (("temperature_c",), None, "temperature_c"),
        (("temperature_c",), float("nan"), "temperature_c"),
        (("temperature_c",), 5000, "temperature_c"),
        (("runs",), None, "runs"),
        (("runs",), {}, "runs"),
        (("runs", 1), 7, "runs[1]"),
        (("runs", 1, "length_m"), 0, "runs[1].length_m"),
        (("runs", 1, "length_m"), -3, "runs[1].length_m"),
        (("runs", 1, "length_m"), float("inf"), "runs[1].length_m"),
        (("runs", 1, "length_m"), None, "runs[1].length_m"),
        (("runs", 1, "gauge"), "18", "runs[1].gauge"),
        (("runs", 1, "gauge"), "99 AWG", "runs[1].gauge"),
        (("runs", 1, "gauge"), None, "runs[1].gauge"),
        (("runs", 1, "stranding"), "loose", "runs[1].stranding"),
        (("runs", 1, "conductors_in_parallel"), 0, "runs[1].conductors_in_parallel"),
        (("runs", 1, "conductors_in_parallel"), 1.5, "runs[1].conductors_in_parallel"),
        (("runs", 1, "extra_ohm"), -0.1, "runs[1].extra_ohm"),
        (("runs", 1, "from"), None, "runs[1].from"),
        (("runs", 1, "from"), "x", "runs[1].from"),  # not fed
        (("runs", 1, "to"), "supply", "runs[1].to"),  # a loop
        (("runs", 1, "to"), "a", "runs[1].to"),  # a loop of one run
        (("loads", 0, "node"), "c", "loads[0].node"),
        (("loads", 0, "kind"), "magnet", "loads[0].kind"),
        (("loads", 0, "kind"), None, "loads[0].kind"),
        (("loads", 0, "value"), None, "loads[0].value"),  # no current data
        (("loads", 0, "value"), -0.5, "loads[0].value"),
        (("loads", 0, "value"), True, "loads[0].value"),
        (("loads", 0, "value"), 1e30, "loads[0].value"),
        (("loads", 0, "minimum_v"), -1, "loads[0].minimum_v"),
        (("loads", 0, "minimum_v"), "low", "loads[0].minimum_v"),
    ],
)
def test_bad_input(path, value, field):
    data = copy.deepcopy(GOOD)
    at = data
    for key in path[:-1]:
        at = at[key]
    at[path[-1]] = value
    with pytest.raises(InputError) as caught:
        CIRCUIT.run(data)
    assert caught.value.field == field
    assert caught.value.message


@pytest.mark.parametrize("value", [0, 1e-300])
def test_a_short_circuit_is_refused(value):
    with pytest.raises(InputError, match=r"loads\[0\].value"):
        CIRCUIT.run(circuit_of([run("supply", "a")], [load("a", "resistance", value)]))


def test_bad_loads_given_as_values():
    tree = network([Run("supply", "a", 1, "18 AWG", "solid")], 20)
    for bad, field in (
        (Load("a", "current", float("nan")), r"loads\[0\].value"),
        (Load("a", "power", -1), r"loads\[0\].value"),
        (Load("a", "motor", 1), r"loads\[0\].kind"),
        (Load("b", "power", 1), r"loads\[0\].node"),
    ):
        with pytest.raises(InputError, match=field):
            solve(tree, [bad], 12)
    with pytest.raises(InputError, match="source_v"):
        solve(tree, [], float("nan"))


def test_limits_without_solution():
    tree = network([Run("supply", "a", 58, "1 mm2", "solid")], 20)
    loads = [Load("a", "power", 100, 10, 14)]
    assert outside_limits(solve(tree, loads, 12), loads) == ((), ())


def test_a_load_where_no_volts_are_known_hides_no_other():
    """12 V arrive all but whole over a metre: a load that needs 13 V is low, one that takes 11 V is high."""
    tree = network([Run("supply", "a", 1, "12 AWG", "solid")], 20)
    loads = [Load("a", "current", 0.01, minimum_v=13.0), Load("a", "current", 0.01, maximum_v=11.0)]
    found = solve(tree, loads, 12)
    elsewhere = Load("elsewhere", "current", 0.01, minimum_v=99.0)
    assert outside_limits(found, [elsewhere, *loads]) == outside_limits(found, [*loads, elsewhere]) == (("a",), ("a",))
