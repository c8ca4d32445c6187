"""Every position of the pocket on the edge tried in turn, in whole units."""

import numpy as np

UNIT = 0.5


def random_case(rng):
    """A crowded edge in whole units."""
    height = rng.randint(400, 1200)
    y0 = rng.randint(0, height - 60)
    lock = (y0, rng.randint(y0 + 20, min(height, y0 + 300)))
    length = rng.randint(40, 400)
    items = []
    for _ in range(rng.randint(0, 5)):
        a = rng.randint(-20, height)
        items.append((a, a + rng.randint(1, 150), rng.choice((0, 0, 5, 20))))
    return {
        "leaf": 2 * rng.randint(30, 60),
        "height": height,
        "stile": rng.randint(40, 300),
        "lock": lock,
        "size": (length, rng.randint(40, 120), 2 * rng.randint(8, 30)),
        "bridge": rng.randint(0, 60),
        "hand": rng.randint(0, 150),
        "lead_from": rng.randint(*lock),
        "lead": rng.choice((None, rng.randint(100, 900))),
        "before": rng.choice((0, rng.randint(0, 60))),
        "connector": rng.randint(0, length),
        "offset": rng.randint(-8, 8),
        "side_wall": rng.randint(0, 16),
        "back_wall": rng.randint(0, 30),
        "margin": rng.choice((0, 20)),
        "items": items,
    }


def to_input(case):
    """The same case as the calculator takes it."""
    length, depth, width = (v * UNIT for v in case["size"])
    return {
        "leaf_mm": case["leaf"] * UNIT,
        "leaf_height_mm": case["height"] * UNIT,
        "stile_mm": case["stile"] * UNIT,
        "lock": {"y0": case["lock"][0] * UNIT, "y1": case["lock"][1] * UNIT},
        "pocket": {"length_mm": length, "depth_mm": depth, "width_mm": width},
        "bridge_mm": case["bridge"] * UNIT,
        "hand_mm": case["hand"] * UNIT,
        "lead_from_y": case["lead_from"] * UNIT,
        "lead_mm": None if case["lead"] is None else case["lead"] * UNIT,
        "lead_before_mm": case["before"] * UNIT,
        "connector_mm": case["connector"] * UNIT,
        "offset_mm": case["offset"] * UNIT,
        "side_wall_mm": case["side_wall"] * UNIT,
        "back_wall_mm": case["back_wall"] * UNIT,
        "edge_margin_mm": case["margin"] * UNIT,
        "items": [
            {"name": f"I{i}", "y0": a * UNIT, "y1": b * UNIT, "clearance_mm": c * UNIT}
            for i, (a, b, c) in enumerate(case["items"])
        ],
        "rated": False,
    }


def leads_by_side(case):
    """Least lead, in units, over all free positions above and below the lock; None where there is none."""
    length, depth, _ = case["size"]
    low = np.arange(0, case["height"] + 1)
    high = low + length
    free = (low >= case["margin"]) & (high <= case["height"] - case["margin"])
    for a, b, clearance in case["items"]:
        free &= (high <= a - clearance) | (low >= b + clearance)
    fixed = case["before"] + depth + case["hand"]
    above = free & (low >= case["lock"][1] + case["bridge"])
    below = free & (high <= case["lock"][0] - case["bridge"])
    # the unit is turned so that its connector lies toward the lock
    lead_above = np.abs(low + case["connector"] - case["lead_from"])
    lead_below = np.abs(case["lead_from"] - (high - case["connector"]))
    return {
        "above": int(lead_above[above].min()) + fixed if above.any() else None,
        "below": int(lead_below[below].min()) + fixed if below.any() else None,
    }


def walls(case):
    """Wall to the key face, to the secured face, behind: from the borders of the pocket."""
    _, depth, width = case["size"]
    middle = case["leaf"] // 2 + case["offset"]
    return case["leaf"] - (middle + width // 2), middle - width // 2, case["stile"] - depth
