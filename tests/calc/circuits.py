"""Random circuits as JSON objects of the calculator `circuit`."""

import random

GAUGES = ("18 AWG", "16 AWG", "22 AWG")
VALUES = {"current": (0.0, 0.4), "power": (0.0, 5.0), "resistance": (30.0, 1000.0)}


def random_circuit(rng: random.Random, kind: str, most_runs: int = 14) -> dict:
    """Tree of runs in random order and direction; loads of one kind, or of all with ``mixed``."""
    runs, loads = [], []
    for i in range(rng.randint(1, most_runs)):
        ends = ["supply" if i == 0 else rng.choice(["supply", *(f"n{j}" for j in range(i))]), f"n{i}"]
        if rng.random() < 0.3:
            ends.reverse()
        runs.append(
            {
                "from": ends[0],
                "to": ends[1],
                "length_m": rng.uniform(1, 20),
                "gauge": rng.choice(GAUGES),
                "stranding": rng.choice(("solid", "stranded")),
                "conductors_in_parallel": rng.choice((1, 1, 2)),
            }
        )
        for _ in range(rng.choice((0, 1, 1, 1, 2))):
            what = rng.choice(list(VALUES)) if kind == "mixed" else kind
            loads.append({"node": f"n{i}", "kind": what, "value": rng.uniform(*VALUES[what])})
    rng.shuffle(runs)
    return {
        "source_v": rng.choice((12.0, 24.0)),
        "source_ohm": rng.choice((0.0, 0.2)),
        "temperature_c": rng.choice((20.0, 50.0, 75.0)),
        "runs": runs,
        "loads": loads,
    }
