"""Every position of the pocket on the edge tried in turn, in whole units."""

import numpy as np

UNIT = 0.5


def random_input(rng):
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


def to_input(given):
    """The same case as the calculator takes it."""
    length, depth, width = (v * UNIT for v in given["size"])
    return {
        "leaf_mm": given["leaf"] * UNIT,
        "leaf_height_mm": given["height"] * UNIT,
        "stile_mm": given["stile"] * UNIT,
        "lock": {"y0": given["lock"][0] * UNIT, "y1": given["lock"][1] * UNIT},
        "pocket": {"length_mm": length, "depth_mm": depth, "width_mm": width},
        "bridge_mm": given["bridge"] * UNIT,
        "hand_mm": given["hand"] * UNIT,
        "lead_from_y": given["lead_from"] * UNIT,
        "lead_mm": None if given["lead"] is None else given["lead"] * UNIT,
        "lead_before_mm": given["before"] * UNIT,
        "connector_mm": given["connector"] * UNIT,
        "offset_mm": given["offset"] * UNIT,
        "side_wall_mm": given["side_wall"] * UNIT,
        "back_wall_mm": given["back_wall"] * UNIT,
        "edge_margin_mm": given["margin"] * UNIT,
        "items": [
            {"name": f"I{i}", "y0": a * UNIT, "y1": b * UNIT, "clearance_mm": c * UNIT}
            for i, (a, b, c) in enumerate(given["items"])
        ],
        "rated": False,
    }


def leads_by_side(given):
    """Least lead, in units, over all free positions above and below the lock; None where there is none."""
    length, depth, _ = given["size"]
    low = np.arange(0, given["height"] + 1)
    high = low + length
    free = (low >= given["margin"]) & (high <= given["height"] - given["margin"])
    for a, b, clearance in given["items"]:
        free &= (high <= a - clearance) | (low >= b + clearance)
    fixed = given["before"] + depth + given["hand"]
    above = free & (low >= given["lock"][1] + given["bridge"])
    below = free & (high <= given["lock"][0] - given["bridge"])
    # the unit is turned so that its connector lies toward the lock
    lead_above = np.abs(low + given["connector"] - given["lead_from"])
    lead_below = np.abs(given["lead_from"] - (high - given["connector"]))
    return {
        "above": int(lead_above[above].min()) + fixed if above.any() else None,
        "below": int(lead_below[below].min()) + fixed if below.any() else None,
    }


def walls(given):
    """Wall to the key face, to the inside face, behind: from the borders of the pocket."""
    _, depth, width = given["size"]
    middle = given["leaf"] // 2 + given["offset"]
    return given["leaf"] - (middle + width // 2), middle - width // 2, given["stile"] - depth
