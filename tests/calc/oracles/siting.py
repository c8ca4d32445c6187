"""Siting by trying every way: which supply each opening hangs on."""

from itertools import product


def best(given: dict) -> tuple[int, float] | None:
    """Fewest supplies and the least wire with so many, or None where there is no way."""
    supplies, openings, distances = given["supplies"], given["openings"], given["distances_m"]
    place = {s["id"]: j for j, s in enumerate(supplies)}
    must = {place[name] for name in given.get("fixed_supplies", [])}
    fixed = given.get("fixed_pairs", {})
    ways = []
    for i, o in enumerate(openings):
        limits = [m for m in (given.get("maximum_m"), o.get("maximum_m")) if m is not None]
        ways.append(
            [
                j
                for j, metres in enumerate(distances[i])
                if metres is not None
                and all(metres <= m for m in limits)
                and (o["id"] not in fixed or place[fixed[o["id"]]] == j)
            ]
        )
    found = None
    for choice in product(*ways):
        load = [0.0] * len(supplies)
        for i, j in enumerate(choice):
            load[j] += openings[i]["amps"]
        if any(a > s["amps"] + 1e-9 for a, s in zip(load, supplies, strict=True)):
            continue
        answer = (len(must | set(choice)), sum(distances[i][j] for i, j in enumerate(choice)))
        if found is None or answer < found:
            found = answer
    return found
