"""Node voltages by a dense matrix, and power loads by repeated substitution from above.

Takes the JSON object of `circuit`, with the resistance of each run's loop added as ``loop_ohm``.
"""

import numpy as np


def volts(given: dict, steps: int = 200_000) -> dict[str, float] | None:
    """Highest solution, or None where the substitution falls through zero.

    Each substitution lies between the highest solution and the one before, so that it finds that solution whenever
    there is one, if slowly near the collapse.
    """
    names = ["supply"]
    for run in given["runs"]:
        names += [run[end] for end in ("from", "to") if run[end] not in names]
    place = {name: i for i, name in enumerate(names)}
    count = len(names)
    matrix = np.zeros((count, count))
    drawn, watts = np.zeros(count), np.zeros(count)
    for run in given["runs"]:
        a, b, g = place[run["from"]], place[run["to"]], 1 / run["loop_ohm"]
        matrix[[a, b], [a, b]] += g
        matrix[[a, b], [b, a]] -= g
    for load in given["loads"]:
        at, value = place[load["node"]], load["value"]
        if load["kind"] == "current":
            drawn[at] += value
        elif load["kind"] == "power":
            watts[at] += value
        else:
            matrix[at, at] += 1 / value
    stated = np.zeros(count)
    source_g = 1 / max(given.get("source_ohm", 0), 1e-9)
    matrix[0, 0] += source_g
    stated[0] = source_g * given["source_v"]
    inverse = np.linalg.inv(matrix)
    powered = watts > 0
    v = inverse @ (stated - drawn)
    for _ in range(steps):
        if (v[powered] <= 0).any():
            return None
        new = inverse @ (stated - drawn - np.divide(watts, v, out=np.zeros(count), where=powered))
        moved = float(np.abs(new - v).max())
        v = new
        if moved < 1e-13:
            break
    return dict(zip(names, v.tolist(), strict=True))
