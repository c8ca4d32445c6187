"""Plate positions tried one by one: borders of keep-outs for what is possible, dense and closer sampling for cable."""

from itertools import combinations, product
from math import hypot

import numpy as np

UNIT = 0.25
"""Sizes are multiples of a binary fraction, so that touching is exact."""


def _rect(rng, x_low, x_high, y_low, y_high, largest, smallest=1):
    x0 = rng.randint(x_low, x_high)
    y0 = rng.randint(y_low, y_high)
    return {
        "x0": x0 * UNIT,
        "y0": y0 * UNIT,
        "x1": (x0 + rng.randint(smallest, largest)) * UNIT,
        "y1": (y0 + rng.randint(smallest, largest)) * UNIT,
    }


def random_input(rng):
    """A crowded face: small leaf, so that touching, degenerate and impossible cases are common."""
    width, height = rng.randint(60, 200), rng.randint(60, 300)
    plate_w, plate_h = rng.randint(8, 60), rng.randint(8, 60)
    keepouts = []
    for i in range(rng.randint(0, 7)):
        keepout = _rect(rng, -20, width, -20, height, 90)
        if keepouts and rng.random() < 0.3:  # leave exactly one plate's width beside the one before
            last = keepouts[-1]
            gap = plate_w * UNIT + last["clearance_mm"]
            keepout = {**last, "x0": last["x1"] + gap, "x1": last["x1"] + gap + rng.randint(1, 60) * UNIT}
        keepout["clearance_mm"] = rng.choice((0, 0, 1, 2, 4)) * UNIT
        if keepouts and keepout["x0"] > keepouts[-1]["x1"]:
            keepout["x0"] += keepout["clearance_mm"]
            keepout["x1"] += keepout["clearance_mm"]
        keepout["name"] = f"k{i}"
        keepouts.append(keepout)
    wx0, wy0 = rng.randint(0, plate_w), rng.randint(0, plate_h)
    window = {
        "x0": wx0 * UNIT,
        "y0": wy0 * UNIT,
        "x1": rng.randint(wx0, plate_w) * UNIT,
        "y1": rng.randint(wy0, plate_h) * UNIT,
    }
    patterns = []
    for i in range(rng.randint(1, 3)):
        hole = _rect(rng, -10, width, -10, height, rng.choice((0, 20, 120)) + 1, 0)
        patterns.append({"name": f"p{i}", "hole": hole, "base_mm": rng.randint(0, 200), "cost": rng.choice((1, 2))})
    return {
        "leaf": {"width_mm": width * UNIT, "height_mm": height * UNIT},
        "edge_margin_mm": rng.choice((0, 2, 8)) * UNIT,
        "keepouts": keepouts,
        "plate": {"width_mm": plate_w * UNIT, "height_mm": plate_h * UNIT},
        "window": window,
        "connector": {"x": rng.randint(0, plate_w) * UNIT, "y": rng.randint(0, plate_h) * UNIT},
        "cylinder": {"x": rng.randint(0, width) * UNIT, "y": rng.randint(0, height) * UNIT},
        "patterns": patterns,
    }


def _bounds(data, pattern):
    """Where the corner may be for leaf, margin, window and hole rectangle, keep-outs left aside."""
    m, plate, window, hole = data["edge_margin_mm"], data["plate"], data["window"], pattern["hole"]
    return (
        max(m, hole["x0"] - window["x1"]),
        min(data["leaf"]["width_mm"] - m - plate["width_mm"], hole["x1"] - window["x0"]),
        max(m, hole["y0"] - window["y1"]),
        min(data["leaf"]["height_mm"] - m - plate["height_mm"], hole["y1"] - window["y0"]),
    )


def _enters(data, keepout, x, y):
    """Plates, by their corners, whose inside meets the inside of a grown keep-out."""
    c, plate = keepout["clearance_mm"], data["plate"]
    return (
        (x < keepout["x1"] + c)
        & (x + plate["width_mm"] > keepout["x0"] - c)
        & (y < keepout["y1"] + c)
        & (y + plate["height_mm"] > keepout["y0"] - c)
    )


def _critical(data, pattern):
    """Every corner at which plate borders meet the borders of keep-outs or of its bounds."""
    x0, x1, y0, y1 = _bounds(data, pattern)
    if x0 > x1 or y0 > y1:
        return None
    plate = data["plate"]
    xs, ys = {x0, x1}, {y0, y1}
    for k in data["keepouts"]:
        c = k["clearance_mm"]
        xs.update((k["x1"] + c, k["x0"] - c - plate["width_mm"]))
        ys.update((k["y1"] + c, k["y0"] - c - plate["height_mm"]))
    return (
        np.array(sorted(x for x in xs if x0 <= x <= x1)),
        np.array(sorted(y for y in ys if y0 <= y <= y1)),
    )


def possible(data, pattern, without=()):
    """True when some corner at crossing borders is free; the free region's lower left corners are among them."""
    corners = _critical(data, pattern)
    if corners is None:
        return False
    x, y = np.meshgrid(*corners)
    free = np.ones(x.shape, bool)
    for i, keepout in enumerate(data["keepouts"]):
        if i not in without:
            free &= ~_enters(data, keepout, x, y)
    return bool(free.any())


def smallest_blockers(data):
    """Size of the smallest set of at most two keep-outs in the way, or None."""
    count = len(data["keepouts"])
    for size in (1, 2):
        for without in combinations(range(count), size):
            if any(possible(data, p, without) for p in data["patterns"]):
                return size
    return None


def breaks(data, found):
    """What is wrong with a place, by the text of the task; empty when it works."""
    pattern = next(p for p in data["patterns"] if p["name"] == found["pattern"])
    (px, py), (hx, hy) = ((found[k]["x"], found[k]["y"]) for k in ("plate", "hole"))
    plate, window, hole, m, eps = data["plate"], data["window"], pattern["hole"], data["edge_margin_mm"], 1e-7
    wrong = []
    if px < m - eps or py < m - eps:
        wrong.append("low margin")
    if px + plate["width_mm"] > data["leaf"]["width_mm"] - m + eps:
        wrong.append("hinge margin")
    if py + plate["height_mm"] > data["leaf"]["height_mm"] - m + eps:
        wrong.append("top margin")
    for k in data["keepouts"]:
        c = k["clearance_mm"] - eps
        if (
            px < k["x1"] + c
            and px + plate["width_mm"] > k["x0"] - c
            and py < k["y1"] + c
            and py + plate["height_mm"] > k["y0"] - c
        ):
            wrong.append(k["name"])
    if not (hole["x0"] - eps <= hx <= hole["x1"] + eps and hole["y0"] - eps <= hy <= hole["y1"] + eps):
        wrong.append("hole outside its rectangle")
    if not (
        px + window["x0"] - eps <= hx <= px + window["x1"] + eps
        and py + window["y0"] - eps <= hy <= py + window["y1"] + eps
    ):
        wrong.append("hole outside the window")
    cable = cable_mm(data, pattern, px, py, hx, hy)
    if abs(cable - found["cable_mm"]) > 1e-6:
        wrong.append(f"cable {cable}")
    return wrong


def cable_mm(data, pattern, px, py, hx, hy):
    """Cable of one place."""
    hole, cylinder, connector = pattern["hole"], data["cylinder"], data["connector"]
    ax = sorted((hole["x0"], cylinder["x"], hole["x1"]))[1]
    ay = sorted((hole["y0"], cylinder["y"], hole["y1"]))[1]
    return pattern["base_mm"] + hypot(hx - ax, hy - ay) + hypot(hx - px - connector["x"], hy - py - connector["y"])


def shortest_sampled(data, pattern, cells=10, levels=5):
    """Shortest cable over sampled corners, drawing closer around the best; None when no sample is free."""
    corners = _critical(data, pattern)
    if corners is None:
        return None
    x0, x1, y0, y1 = _bounds(data, pattern)
    xs = np.union1d(corners[0], np.linspace(x0, x1, cells))
    ys = np.union1d(corners[1], np.linspace(y0, y1, cells))
    best, step_x, step_y = None, (x1 - x0) / (cells - 1), (y1 - y0) / (cells - 1)
    for _ in range(levels):
        x, y = (a.ravel() for a in np.meshgrid(xs, ys))
        free = np.ones(x.shape, bool)
        for keepout in data["keepouts"]:
            free &= ~_enters(data, keepout, x, y)
        if free.any():
            x, y = x[free], y[free]
            bars = _bars(data, pattern, x, y)
            i = int(bars.argmin())
            if best is None or bars[i] < best[0]:
                best = (float(bars[i]), float(x[i]), float(y[i]))
        if best is None:
            return None
        xs = np.clip(np.append(best[1] + step_x * np.linspace(-1, 1, 7), best[1]), x0, x1)
        ys = np.clip(np.append(best[2] + step_y * np.linspace(-1, 1, 7), best[2]), y0, y1)
        step_x, step_y = step_x / 3, step_y / 3
    return pattern["base_mm"] + best[0]


def _bars(data, pattern, x, y):
    """Least |hole - a| + |hole - connector| of each corner: a mirror at each side of the holes allowed."""
    hole, window = pattern["hole"], data["window"]
    ax = sorted((hole["x0"], data["cylinder"]["x"], hole["x1"]))[1]
    ay = sorted((hole["y0"], data["cylinder"]["y"], hole["y1"]))[1]
    qx, qy = x + data["connector"]["x"], y + data["connector"]["y"]
    bx0, bx1 = np.maximum(hole["x0"], x + window["x0"]), np.minimum(hole["x1"], x + window["x1"])
    by0, by1 = np.maximum(hole["y0"], y + window["y0"]), np.minimum(hole["y1"], y + window["y1"])
    best = np.full(x.shape, np.inf)
    # a or the connector itself may be the hole
    for hx, hy in ((np.clip(ax, bx0, bx1), np.clip(ay, by0, by1)), (np.clip(qx, bx0, bx1), np.clip(qy, by0, by1))):
        best = np.minimum(best, np.hypot(hx - ax, hy - ay) + np.hypot(hx - qx, hy - qy))
    for side in (bx0, bx1):
        hy = np.clip(_mirror(ax - side, ay, qx - side, qy), by0, by1)
        best = np.minimum(best, np.hypot(side - ax, hy - ay) + np.hypot(side - qx, hy - qy))
    for side in (by0, by1):
        hx = np.clip(_mirror(ay - side, ax, qy - side, qx), bx0, bx1)
        best = np.minimum(best, np.hypot(hx - ax, side - ay) + np.hypot(hx - qx, side - qy))
    return best


def _mirror(off_a, along_a, off_q, along_q):
    """Where the straight line between a point and the other's image meets the side."""
    total = np.abs(off_a) + np.abs(off_q)
    share = np.divide(np.abs(off_a), total, out=np.zeros_like(total), where=total > 0)
    return along_a + share * (along_q - along_a)


def shortest_by_grid(data, pattern, x, y, cells=400):
    """Least bars of one corner by trying holes on a grid: an oracle for the oracle's mirror."""
    hole, window = pattern["hole"], data["window"]
    hxs = np.linspace(max(hole["x0"], x + window["x0"]), min(hole["x1"], x + window["x1"]), cells)
    hys = np.linspace(max(hole["y0"], y + window["y0"]), min(hole["y1"], y + window["y1"]), cells)
    return min(cable_mm(data, pattern, x, y, hx, hy) for hx, hy in product(hxs, hys))
