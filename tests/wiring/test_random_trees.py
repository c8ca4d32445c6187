"""Random trees of runs with random devices: volts equal one solution of the circuit, and those of plain matrices."""

import random

import numpy as np
import pytest

from hwsched.calc.power.circuit import Load, solve
from hwsched.calc.power.circuit_tree import Run as Wire
from hwsched.calc.power.circuit_tree import network
from tests.rules.scenario import part
from tests.wiring.power_rows import alone, circuit, only, only_circuit, parts, run, supply

GAUGES = {"16 AWG": "solid", "18 AWG": "stranded", "20 AWG": "stranded", "1.5 mm2": "solid"}
MV = 1e-3


def tree(rng, kinds):
    """Runs, openings with a coil of their own kind each, and the loads that these are at rest [in their own units]."""
    count = rng.randint(1, 14)
    nodes = [f"J{i}" if rng.random() < 0.25 else f"o{i}" for i in range(count)]
    gauge = [rng.choice(list(GAUGES)) for _ in nodes]
    runs = [
        run(rng.choice(["supply", *nodes[:i]]), node, rng.uniform(1, 25), gauge=g, stranding=GAUGES[g],
            parallel=rng.choice([None, 1, 2]), extra_ohm=rng.choice([None, 0.05]))
        for i, (node, g) in enumerate(zip(nodes, gauge, strict=True))
    ]  # fmt: skip
    rng.shuffle(runs)
    coils, openings, loads = [], {}, []
    for node in nodes:
        if node[0] == "J":
            continue
        kind, amps = rng.choice(kinds), rng.uniform(0.01, 0.25)
        coils.append(
            part(f"E-{node}", "electromagnetic-lock", supply_v=24.0, holding_a=amps, draws=kind, supply_low_v=5.0,
                 supply_high_v=30.0)
        )  # fmt: skip
        openings[node] = f"E-{node}"
        loads.append(Load(node, kind, {"current": amps, "power": 24 * amps, "resistance": 24 / amps}[kind]))
    cat = parts(add=tuple(coils), PSU={"output_v": 24.0, "output_a": 20.0, "inside_ohm": 0.07})
    return runs, {node: only(node, cat, number) for node, number in openings.items()}, loads, cat


def by_matrices(runs, loads, ohms, source_v, source_ohm):
    """Node voltages by conductances; power loads by repetition from above."""
    names = ["supply", *(r.to_node for r in runs)]
    at = {name: i for i, name in enumerate(names)}
    volts = np.full(len(names), source_v)
    for _ in range(200):
        matrix, right = np.zeros((len(names), len(names))), np.zeros(len(names))
        for r, ohm in zip(runs, ohms, strict=True):
            i, j = at[r.from_node], at[r.to_node]
            matrix[i, i] += 1 / ohm
            matrix[j, j] += 1 / ohm
            matrix[i, j] -= 1 / ohm
            matrix[j, i] -= 1 / ohm
        matrix[0, 0] += 1 / source_ohm
        right[0] += source_v / source_ohm
        for load in loads:
            i = at[load.node]
            if load.kind == "resistance":
                matrix[i, i] += 1 / load.value
            else:
                right[i] -= load.value / (volts[i] if load.kind == "power" else 1.0)
        fresh = np.linalg.solve(matrix, right)
        if np.abs(fresh - volts).max() < 1e-9:
            break
        volts = fresh
    return dict(zip(names, fresh, strict=True))


@pytest.mark.parametrize("kinds", [("current",), ("power",), ("resistance",), ("current", "power", "resistance")])
def test_volts_are_those_of_the_circuit(kinds):
    rng = random.Random(f"trees {kinds}")
    solved = 0
    for _ in range(40):
        runs, openings, loads, cat = tree(rng, kinds)
        found = only_circuit(alone(runs, cat, openings=openings, circuits=[circuit(temperature_c=45.0)],
                                   supplies=[supply()]))  # fmt: skip
        assert found.problems == ()
        wires = [
            Wire(r.from_node, r.to_node, r.length_m, r.gauge, r.stranding, r.parallel or 1, r.extra_ohm or 0.0)
            for r in runs
        ]
        for state, source_v in (("normal", 24.0), ("lowest-mains", 24.0 * 0.95)):
            expected = solve(network(wires, 45.0), loads, source_v, 0.07)
            assert expected.collapsed == (state in found.collapsed)
            if expected.collapsed or min(expected.volts.values()) < 2.0:
                continue
            got = {node.node: node.volts[state] for node in found.nodes}
            assert got == pytest.approx(dict(expected.volts), abs=MV)
            ohm = {(each.from_node, each.to_node): each.ohm for each in found.runs}
            plain = by_matrices(runs, loads, [ohm[r.from_node, r.to_node] for r in runs], source_v, 0.07)
            assert got == pytest.approx(plain, abs=MV)
            # Current is kept: what leaves the supply is what the loads draw.
            drawn = sum(
                {"current": x.value, "power": x.value / got[x.node], "resistance": got[x.node] / x.value}[x.kind]
                for x in loads
            )
            assert found.current_a[state] == pytest.approx(drawn, abs=1e-6)
            solved += 1
    assert solved > 60
