"""Bores compared as outlines: points on circles instead of formulae between their centres."""

import numpy as np

MEASURE = 0.1
"""What a survey cannot measure, as the calculator states it."""
RING = np.linspace(0, 2 * np.pi, 720, endpoint=False)
CIRCLE = np.stack([np.cos(RING), np.sin(RING)], axis=1)


class TooNearError(Exception):
    """A size within the sampling's error of a limit: either answer is right."""


def random_input(rng):
    """Sizes of the trade, some of them off, some unknown."""
    cross, edge = rng.choice((53.975, 38.1, 54.0)), rng.choice((25.4, 22.225))
    wanted = {
        "cross_bore_mm": cross,
        "edge_bore_mm": edge,
        "leaf_low_mm": rng.choice((34.925, 41)),
        "leaf_high_mm": rng.choice((44.45, 50)),
        "latches": [
            {
                "part": f"L{i}",
                "backset_low_mm": low,
                "backset_high_mm": low + rng.choice((0, 0, 9.525)),
                "length_mm": rng.choice((None, rng.uniform(20, 110))),
            }
            for i, low in enumerate(rng.sample((60.325, 69.85, 127.0), rng.randint(1, 2)))
        ],
        "bolt_holes": [_hole(rng) for _ in range(rng.randint(0, 3))],
        "cross_bore_max_mm": rng.choice((None, cross + 4)),
        "edge_bore_max_mm": rng.choice((None, edge + 1)),
    }
    found = {
        "leaf_mm": rng.choice((None, 34.925, 44.45, 44.45, 52)),
        "cross_bore_mm": rng.choice((None, 0, 38.1, 53.975, 53.975, 57.15)),
        "edge_bore_mm": rng.choice((None, 0, 22.225, 25.4, 25.4, 28.575)),
        "backset_mm": rng.choice((None, 60.325, 69.85, 69.85, rng.uniform(50, 130))),
        "bolt_holes": rng.choice((None, [], 1)),
    }
    if found["bolt_holes"] == 1:
        found["bolt_holes"] = [_near(rng, h) for h in wanted["bolt_holes"]] + [_hole(rng)]
    return {"wanted": wanted, "found": found, "min_edge_wall_mm": rng.choice((0, 6, 9.525))}


def _hole(rng):
    return {
        "x_mm": rng.uniform(-45, 45),
        "y_mm": rng.choice((-1, 1)) * rng.uniform(10, 50),
        "diameter_mm": rng.choice((6.35, 7.9375, 12.7)),
    }


def _near(rng, hole):
    off = rng.choice((0, 0, 1, 4, 15))
    return {
        "x_mm": hole["x_mm"] + rng.uniform(-off, off),
        "y_mm": hole["y_mm"] + rng.uniform(-off, off),
        "diameter_mm": rng.choice((hole["diameter_mm"], 6.35, 9.525)),
    }


def _outline(hole):
    centre = np.array([hole["x_mm"], hole["y_mm"]])
    return centre, centre + CIRCLE * hole["diameter_mm"] / 2


def _clear(value, limit, error=0.02):
    """True when a value is over a limit; TooNearError when sampling cannot tell."""
    if abs(value - limit) < error:
        raise TooNearError
    return value > limit


def judge(data, tolerance=25.4 / 16):
    """Items that cannot be cured, work as (item, action), missing facts, holes left over."""
    wanted, found = data["wanted"], data["found"]
    cannot, work, needs, left_over = set(), set(), set(), set()
    leaf = found["leaf_mm"]
    if leaf is None:
        needs.add("leaf_mm")
    elif leaf < wanted["leaf_low_mm"] - MEASURE or leaf > wanted["leaf_high_mm"] + MEASURE:
        cannot.add("leaf thickness")
    finished = {}
    for item, key in (("cross bore", "cross_bore_mm"), ("edge bore", "edge_bore_mm")):
        have, want = found[key], wanted[key]
        most = wanted[key.replace("_mm", "_max_mm")]
        if have is None:
            needs.add(key)
            continue
        finished[item] = max(have, want)
        if have > (want + tolerance if most is None else most) + MEASURE:
            cannot.add(item)
        elif have == 0:
            work.add((item, "drill"))
        elif have < want - MEASURE:
            work.add((item, "enlarge"))
    latch, backset = _latch(wanted, found, tolerance, needs, cannot)
    if "cross bore" in finished and backset is not None:
        near, far = backset - finished["cross bore"] / 2, backset + finished["cross bore"] / 2
        if near <= 0:
            cannot.add("cross bore")
        if latch and latch["length_mm"] is not None:
            if latch["length_mm"] < near - MEASURE:
                cannot.add("latch")
            elif latch["length_mm"] > far + MEASURE:
                work.add(("edge bore", "deepen"))
    if leaf is not None and "edge bore" in finished:
        wall = (leaf - finished["edge bore"]) / 2
        if wall < data["min_edge_wall_mm"] - MEASURE:
            cannot.add("edge bore")
    if found["bolt_holes"] is None:
        if wanted["bolt_holes"]:
            needs.add("bolt_holes")
    elif "cross bore" in finished:
        left_over = _bolts(wanted["bolt_holes"], found["bolt_holes"], finished["cross bore"], tolerance, work, cannot)
    return cannot, work, needs, left_over


def _latch(wanted, found, tolerance, needs, cannot):
    backset = found["backset_mm"]
    if found["cross_bore_mm"] == 0:
        first = wanted["latches"][0]
        if backset is not None and first["backset_low_mm"] <= backset <= first["backset_high_mm"]:
            return first, backset
        return first, first["backset_low_mm"]
    if backset is None:
        needs.add("backset_mm")
        return None, None
    off = [max(0, x["backset_low_mm"] - backset, backset - x["backset_high_mm"]) for x in wanted["latches"]]
    if min(off) > tolerance + MEASURE:
        cannot.add("backset")
        return None, backset
    return wanted["latches"][off.index(min(off))], backset


def _bolts(wanted, found, cross, tolerance, work, cannot):
    touched = set()
    for i, hole in enumerate(wanted):
        centre, ring = _outline(hole)
        if not _clear(float(np.hypot(*ring.T).max()), cross / 2 + MEASURE):
            continue
        whole = broken = False
        overhang = 0.0
        for j, old in enumerate(found):
            old_centre, old_ring = _outline(old)
            apart = float(np.hypot(*(centre - old_centre)))
            if not _clear(hole["diameter_mm"] / 2 + old["diameter_mm"] / 2, apart):
                continue
            touched.add(j)
            broken = True
            overhang = max(overhang, float(np.hypot(*(old_ring - centre).T).max()) - hole["diameter_mm"] / 2)
            whole |= not _clear(float(np.hypot(*(ring - old_centre).T).max()), old["diameter_mm"] / 2 + MEASURE)
        item = f"bolt hole {i + 1}"
        if _clear(overhang, tolerance + MEASURE):
            cannot.add(item)
        elif not whole:
            work.add((item, "enlarge" if broken else "drill"))
    return {
        j
        for j, old in enumerate(found)
        if j not in touched and _clear(float(np.hypot(*_outline(old)[1].T).max()), cross / 2 + MEASURE)
    }
