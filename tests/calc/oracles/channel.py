"""A channel followed in small steps, its rim and walls measured at points of the bores' surfaces."""

from math import cos, radians, sin

import numpy as np

RING = np.linspace(0, 2 * np.pi, 181)
STEP = 0.25


def random_input(rng):
    """A leaf with a lock, the hole above or below it, angles that often but not always lead in."""
    thickness = rng.uniform(35, 60)
    width = rng.uniform(12, 30)
    offset = rng.uniform(-1, 1) * (thickness - width) / 2 * 0.95
    top, height = rng.uniform(20, 80), rng.uniform(90, 200)
    drop = rng.uniform(3, 60)
    above = top + drop if rng.random() < 0.7 else top - height - drop
    data = {
        "leaf": {"width_mm": 900, "height_mm": 2100, "thickness_mm": thickness},
        "cylinder": {"x": rng.uniform(30, 80), "y": 1000},
        "case": {
            "height_mm": height,
            "top_above_mm": top,
            "width_mm": width,
            "depth_mm": rng.uniform(80, 120),
            "offset_mm": offset,
        },
        "face": rng.choice(("inside", "key")),
        "hole_above_mm": above,
        "square_mm": rng.uniform(3, thickness * 0.7),
        "angle_deg": rng.uniform(2, 60),
        "diameter_mm": rng.uniform(4, 12),
        "lean_deg": rng.choice((0, 0, rng.uniform(-40, 40))),
        "min_wall_mm": rng.choice((0, 2, 4)),
    }
    if rng.random() < 0.4:
        y = 1000 + above + rng.uniform(-60, 60)
        data["avoid"] = [{"from": [0, y, thickness / 2], "to": [120, y, thickness / 2], "diameter_mm": 8}]
    return data


def lock_box(data):
    """Pocket's low and high corner."""
    given, leaf = data["case"], data["leaf"]
    top = data["cylinder"]["y"] + given["top_above_mm"]
    middle = leaf["thickness_mm"] / 2 + given["offset_mm"]
    half = given["width_mm"] / 2
    return (
        np.array([0, top - given["height_mm"], middle - half]),
        np.array([given["depth_mm"], top, middle + half]),
    )


def geometry(data):
    """Hole, knee and direction: start straight toward the pocket, tilt into the leaf, then turn in its plane."""
    inward = 1.0 if data["face"] == "inside" else -1.0
    hole = np.array(
        [
            data["cylinder"]["x"],
            data["cylinder"]["y"] + data["hole_above_mm"],
            0.0 if inward > 0 else data["leaf"]["thickness_mm"],
        ]
    )
    knee = hole + np.array([0, 0, inward * data["square_mm"]])
    a, lean = radians(data["angle_deg"]), radians(data["lean_deg"])
    toward = -1.0 if data["hole_above_mm"] > 0 else 1.0
    straight = np.array([0, toward, 0])
    tilted = straight * cos(a) + np.array([0, 0, inward]) * sin(a)
    along_y = tilted[1]
    return hole, knee, np.array([-abs(along_y) * sin(lean), along_y * cos(lean), tilted[2]])


def march(data):
    """Distance at which the second bore's axis is first seen in the pocket, and at which it was last in the leaf."""
    _, knee, direction = geometry(data)
    low, high = lock_box(data)
    far = np.array([data["leaf"][k] for k in ("width_mm", "height_mm", "thickness_mm")])
    t = np.arange(0, 2500, STEP)
    points = knee + t[:, None] * direction
    inside = ((points >= 0) & (points <= far)).all(axis=1)
    last = t[inside].max() if inside.all() or not inside[0] else t[int((~inside).argmax()) - 1]
    seen = ((points >= low) & (points <= high)).all(axis=1) & (t <= last)
    return (float(t[seen.argmax()]) if seen.any() else None), float(last)


def _rings(direction, radius):
    helper = np.eye(3)[int(np.abs(direction).argmin())]
    u = np.cross(direction, helper)
    u /= np.linalg.norm(u)
    v = np.cross(direction, u)
    return (np.cos(RING)[:, None] * u + np.sin(RING)[:, None] * v) * radius


def least_wall(data, run, leaves):
    """Least distance of surface points of both bores from the planes, less those they start on or leave by."""
    hole, knee, direction = geometry(data)
    radius = data["diameter_mm"] / 2
    far = np.array([data["leaf"][k] for k in ("width_mm", "height_mm", "thickness_mm")])
    straight = (knee - hole) / np.linalg.norm(knee - hole)
    found = []
    first = np.concatenate([hole + _rings(straight, radius), knee + _rings(straight, radius)])
    second = np.concatenate([knee + _rings(direction, radius), knee + run * direction + _rings(direction, radius)])
    for surface, skip in ((first, data["face"]), (second, leaves)):
        for name, gap in (
            ("lock-edge", surface[:, 0]),
            ("hinge-edge", far[0] - surface[:, 0]),
            ("bottom", surface[:, 1]),
            ("top", far[1] - surface[:, 1]),
            ("inside", surface[:, 2]),
            ("key", far[2] - surface[:, 2]),
        ):
            if name != skip:
                found.append(float(gap.min()))
    return min(found)


def rim_clear(data):
    """Surface lines of the second bore carried to the pocket's top or bottom: least distance from its border."""
    _, knee, direction = geometry(data)
    low, high = lock_box(data)
    plane = high[1] if data["hole_above_mm"] > 0 else low[1]
    surface = knee + _rings(direction, data["diameter_mm"] / 2)
    rim = surface + ((plane - surface[:, 1]) / direction[1])[:, None] * direction
    return float(min(np.minimum(rim[:, axis] - low[axis], high[axis] - rim[:, axis]).min() for axis in (0, 2)))
