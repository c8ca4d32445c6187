"""Length of a rounded polyline by walking along it in small steps."""

import numpy as np


def random_input(rng):
    """A route with some axis-parallel legs, as cables run, and some free ones."""
    points = [[rng.uniform(0, 100) for _ in range(3)]]
    for _ in range(rng.randint(1, 6)):
        step = [0.0, 0.0, 0.0]
        if rng.random() < 0.5:
            step[rng.randrange(3)] = rng.choice((-1, 1)) * rng.uniform(2, 150)
        else:
            step = [rng.uniform(-80, 80) for _ in range(3)]
        points.append([a + b for a, b in zip(points[-1], step, strict=True)])
    return {
        "points_mm": points,
        "bend_radius_mm": rng.choice((0, rng.uniform(0, 40))),
        "slack_mm": rng.choice((0, rng.uniform(0, 100))),
    }


def walk(data, steps=400):
    """Length and tight corners: centre of each bend on the bisector, arc walked in chords."""
    points = [np.array(p) for p in data["points_mm"]]
    radius, last = data["bend_radius_mm"], len(points) - 1
    bends = [None] * len(points)
    takes = [0.0] * len(points)
    for i in range(1, last):
        back = points[i - 1] - points[i]
        ahead = points[i + 1] - points[i]
        back, ahead = back / np.linalg.norm(back), ahead / np.linalg.norm(ahead)
        bisector = back + ahead
        if radius == 0 or np.linalg.norm(back - ahead) > 2 - 1e-12:
            continue  # nothing to round
        if np.linalg.norm(bisector) < 1e-12:
            takes[i] = np.inf
            continue
        bisector = bisector / np.linalg.norm(bisector)
        half = np.arccos(np.clip(bisector @ back, -1, 1))
        centre = points[i] + bisector * radius / max(np.sin(half), 1e-300)
        # foot of the centre on each leg
        takes[i] = float((centre - points[i]) @ back)
        bends[i] = (centre, points[i] + back * takes[i], points[i] + ahead * takes[i])
    tight = set()
    for i in range(last):
        if np.linalg.norm(points[i + 1] - points[i]) < takes[i] + takes[i + 1]:
            tight |= {j for j in (i, i + 1) if 0 < j < last}
    length, at = data["slack_mm"], points[0]
    for i in range(1, last):
        if i in tight or bends[i] is None:
            length += np.linalg.norm(points[i] - at)
            at = points[i]
            continue
        centre, enter, leave = bends[i]
        length += np.linalg.norm(enter - at)
        chord = enter + np.linspace(0, 1, steps + 1)[:, None] * (leave - enter)
        out = chord - centre
        arc = centre + out / np.linalg.norm(out, axis=1)[:, None] * radius
        length += np.linalg.norm(np.diff(arc, axis=0), axis=1).sum()
        at = leave
    return float(length + np.linalg.norm(points[last] - at)), tight, takes
