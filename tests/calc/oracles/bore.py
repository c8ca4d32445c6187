"""A bore followed in small steps, its walls measured at points of its surface."""

from math import atan2, cos, degrees, radians, sin, tan

import numpy as np

INWARD = {
    "inside": (2, 1.0),
    "key": (2, -1.0),
    "lock-edge": (0, 1.0),
    "hinge-edge": (0, -1.0),
    "top": (1, -1.0),
    "bottom": (1, 1.0),
}
"""Axis of each plane's normal and the sign that leads into the leaf."""

RING = np.linspace(0, 2 * np.pi, 181)
STEPS = 600


def random_input(rng):
    """A small leaf with a pocket and things to avoid, near enough to be met often."""
    leaf = {
        "width_mm": rng.uniform(60, 200),
        "height_mm": rng.uniform(60, 200),
        "thickness_mm": rng.uniform(20, 60),
    }
    far = [leaf["width_mm"], leaf["height_mm"], leaf["thickness_mm"]]
    face = rng.choice(("inside", "inside", "key", "key", "lock-edge", "hinge-edge", "top", "bottom", None))
    start = [rng.uniform(0, f) for f in far]
    data = {
        "leaf": leaf,
        "start": start,
        "face": face,
        "diameter_mm": rng.uniform(2, 16),
        "min_wall_mm": rng.choice((0, 0, 2, 4)),
        "avoid": [_item(rng, far) for _ in range(rng.randint(0, 3))],
    }
    if face is not None:
        axis, sign = INWARD[face]
        start[axis] = 0.0 if sign > 0 else far[axis]
    if rng.random() < 0.6:
        data["target"] = _box(rng, far)
    goal = _goal(rng, data)
    if face in ("inside", "key") and goal and rng.random() < 0.6:
        deep = abs(goal[2] - start[2]) + 1e-3
        data["up_deg"] = degrees(atan2(goal[1] - start[1], deep))
        data["edge_deg"] = degrees(atan2(start[0] - goal[0], deep))
    elif face in ("inside", "key"):
        data["up_deg"] = rng.choice((0, rng.uniform(-60, 60)))
        data["edge_deg"] = rng.choice((0, rng.uniform(-60, 60)))
    else:
        direction = [rng.uniform(-1, 1) for _ in range(3)]
        if goal and rng.random() < 0.6:
            direction = [(g - s) / 50 for g, s in zip(goal, start, strict=True)]
        if face is not None:
            direction[axis] = sign * (abs(direction[axis]) + 0.1)
        data["direction"] = direction
    if rng.random() < 0.5:
        data["depth_mm"] = rng.uniform(1, 80)
    else:
        data["through"] = True
    return data


def _goal(rng, data):
    """A point in the target or in something to avoid, so that bores do not mostly miss."""
    item = data.get("target") or (data["avoid"] and data["avoid"][0])
    if not item:
        return None
    low, high = (item["min"], item["max"]) if "min" in item else (item["from"], item["to"])
    return [rng.uniform(a, b) for a, b in zip(low, high, strict=True)]


def _box(rng, far):
    low = [rng.uniform(0, f * 0.8) for f in far]
    return {"min": low, "max": [a + rng.uniform(0.05, 1) * (f - a) for a, f in zip(low, far, strict=True)]}


def _item(rng, far):
    if rng.random() < 0.5:
        low = [rng.uniform(-10, f) for f in far]
        return {"min": low, "max": [a + rng.uniform(1, 40) for a in low]}
    start = [rng.uniform(-10, f) for f in far]
    end = list(start)
    if rng.random() < 0.5:
        end[rng.randrange(3)] += rng.uniform(5, 60)
    else:
        end = [e + rng.uniform(-40, 40) for e in end]
    return {"from": start, "to": end, "diameter_mm": rng.uniform(2, 12)}


def aim(data):
    """Unit vector, by turning the normal in the two views."""
    if "direction" in data:
        vector = np.array(data["direction"], float)
    else:
        axis, sign = INWARD[data["face"]]
        vector = np.zeros(3)
        vector[axis] = sign
        # seen from the side and from above, one unit of depth goes with these shifts
        vector[1] += sin(radians(data["up_deg"])) / cos(radians(data["up_deg"]))
        vector[0] -= tan(radians(data["edge_deg"]))
    return vector / np.sqrt((vector**2).sum())


def march(data):
    """Points on the axis from the start to outside the leaf, and whether each lies in the leaf and in the target."""
    far = np.array([data["leaf"][k] for k in ("width_mm", "height_mm", "thickness_mm")])
    length = float(np.sqrt((far**2).sum())) + 1
    t = np.linspace(0, length, STEPS)
    points = np.array(data["start"]) + t[:, None] * aim(data)
    inside = ((points >= -1e-9) & (points <= far + 1e-9)).all(axis=1)
    target = np.zeros(STEPS, bool)
    if data.get("target"):
        target = ((points >= data["target"]["min"]) & (points <= data["target"]["max"])).all(axis=1)
    return t, points, inside, target


def wall(data, ends, without):
    """Least distance from surface points of the bore's two end rings to the planes of the leaf."""
    direction = aim(data)
    helper = np.eye(3)[int(np.abs(direction).argmin())]
    u = np.cross(direction, helper)
    u /= np.sqrt((u**2).sum())
    v = np.cross(direction, u)
    ring = (np.cos(RING)[:, None] * u + np.sin(RING)[:, None] * v) * data["diameter_mm"] / 2
    surface = np.concatenate([np.array(end) + ring for end in ends])
    far = [data["leaf"][k] for k in ("width_mm", "height_mm", "thickness_mm")]
    return min(
        float((surface[:, axis] if sign > 0 else far[axis] - surface[:, axis]).min())
        for face, (axis, sign) in INWARD.items()
        if face not in without
    )


def distance(item, start, end):
    """Least distance between sampled points of an axis and a box or a round solid's axis, and the sampling step."""
    points = np.array(start) + np.linspace(0, 1, STEPS)[:, None] * (np.array(end) - np.array(start))
    step = float(np.sqrt(((np.array(end) - np.array(start)) ** 2).sum())) / (STEPS - 1)
    if "min" in item:
        off = np.maximum(np.maximum(np.array(item["min"]) - points, points - np.array(item["max"])), 0)
    else:
        a, run = np.array(item["from"]), np.array(item["to"]) - np.array(item["from"])
        share = np.clip(((points - a) @ run) / (run @ run), 0, 1)
        off = points - (a + share[:, None] * run)
    return float(np.sqrt((off**2).sum(axis=1)).min()), step
