"""With every fact given each opening is proved or failed: nothing is left as not proved."""

import random

import pytest

from tests.calc.oracles import case_count
from tests.rules.scenario import part
from tests.wiring.power_rows import circuit, only, parts, run, supply, work

CASES = min(case_count(2), 500)


@pytest.mark.fuzz
def test_with_every_fact_given_nothing_is_not_proved():
    rng = random.Random("every fact")
    standings = {"proved": 0, "failed": 0}
    for _ in range(CASES):
        coils, openings, runs, circuits = [], {}, [], []
        for c in range(rng.randint(1, 6)):
            count = rng.randint(1, 8)
            circuits.append(
                circuit(f"c{c}", at_once=rng.randint(0, 4), limiter_a=5.0, temperature_c=rng.uniform(20, 60))
            )
            nodes = [f"J{c}{i}" if i + 1 < count and rng.random() < 0.2 else f"o{c}x{i}" for i in range(count)]
            runs += [
                run(rng.choice(("supply", *nodes[:i])), node, rng.uniform(2, 25), of=f"c{c}")
                for i, node in enumerate(nodes)
            ]
            for node in nodes:
                if node[0] == "J":
                    continue
                amps = rng.uniform(0.02, 0.3)
                coils.append(
                    part(f"E-{node}", "electromagnetic-lock", supply_v=24.0, holding_a=amps, rest_a=amps * rng.random(),
                         inrush_a=amps * rng.uniform(1, 4), draws=rng.choice(("current", "power", "resistance")),
                         supply_low_v=rng.uniform(19.0, 22.6), supply_high_v=30.0, fail="fail-safe", current="dc")
                )  # fmt: skip
                openings[node] = f"E-{node}"
        cat = parts(add=tuple(coils), PSU={"output_v": 24.0, "output_a": 20.0, "inside_ohm": rng.uniform(0.0, 0.3)})
        hung = {node: only(node, cat, number) for node, number in openings.items()}
        found = work(runs, hung, cat, supplies=[supply()], circuits=circuits)
        for each in (each for s in found.supplies for each in s.circuits):
            assert not [p for p in each.problems if p.kind == "unknown"]
            for proof in each.proofs:
                assert proof.standing in standings, proof
                standings[proof.standing] += 1
    print(f"{CASES} supplies: {standings}")
    assert min(standings.values()) > 0
