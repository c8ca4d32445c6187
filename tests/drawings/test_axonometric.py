"""Bodies seen from a corner: what is painted last at a point is what a ray from the eye meets first."""

import random
from math import cos, pi, sin, sqrt

import pytest

from hwsched.calc.opening.bore import Box, Rod
from hwsched.drawings.axonometric import Seen, far_to_near, project, shapes_of_bodies

EYE = (-1.0, 1.0, 1.0)
RIGHT = (1 / sqrt(2), 0.0, 1 / sqrt(2))
UP = (1 / sqrt(6), 2 / sqrt(6), -1 / sqrt(6))
CELL = 40.0


def met(box, point, grown=0.0):
    """From where to where a ray through a point of the picture runs in a box; the nearer end last; None beside it."""
    start = [point[0] * RIGHT[n] + point[1] * UP[n] for n in range(3)]
    ends = []
    for n in range(3):
        a, b = ((side - start[n]) / EYE[n] for side in (box.low[n] - grown, box.high[n] + grown))
        ends.append((min(a, b), max(a, b)))
    low, high = max(a for a, _ in ends), min(b for _, b in ends)
    return (low, high) if low < high else None


def inside(point, corners):
    """Whether a point is in a convex or other simple polygon."""
    x, y = point
    found = False
    for (ax, ay), (bx, by) in zip(corners, (*corners[1:], corners[0]), strict=True):
        if (ay > y) != (by > y) and x < (bx - ax) * (y - ay) / (by - ay) + ax:
            found = not found
    return found


def strewn(draw):
    """Boxes of any size in cells of their own, so that none meets another."""
    cells = draw.sample([(x, y, z) for x in range(3) for y in range(3) for z in range(3)], 6)
    for cell in cells:
        sides = [sorted(draw.uniform(0.0, CELL) for _ in range(2)) for _ in range(3)]
        low, high = zip(*((n * CELL + a, n * CELL + max(b, a + 2.0)) for n, (a, b) in zip(cell, sides, strict=True)),
                        strict=True)  # fmt: skip
        yield Box(low, high)


@pytest.mark.parametrize("seed", range(12))
def test_what_is_nearest_is_seen(seed):
    draw = random.Random(seed)
    boxes = list(strewn(draw))
    bodies = [Seen(box, str(number)) for number, box in enumerate(boxes)]
    painted = shapes_of_bodies(bodies)
    judged = 0
    for _ in range(60):
        box = draw.choice(boxes)
        point = project(tuple(draw.uniform(box.low[n], box.high[n]) for n in range(3)))
        hits = {n: met(each, point) for n, each in enumerate(boxes)}
        # On an outline nobody can tell: it is judged where the ray clearly meets a box or clearly does not.
        clear = all((hit and hit[1] - hit[0] > 1.0) or not met(boxes[n], point, 0.5) for n, hit in hits.items())
        if clear:
            nearest = max((n for n, hit in hits.items() if hit), key=lambda n: hits[n][1])
            seen = [shape.name for shape in painted if inside(point, shape.points)]
            assert seen[-1] == str(nearest)
            judged += 1
    assert judged > 20


def test_axes_are_as_long_as_one_another_and_the_eye_is_before_edge_top_and_key_face():
    lengths = [sum(c * c for c in project(tuple(10.0 * (n == axis) for n in range(3)))) for axis in range(3)]
    # Isometric: each by the root of two thirds (ISO 5456-3, from memory).
    assert lengths == pytest.approx([100.0 * 2 / 3] * 3)
    assert project(EYE) == pytest.approx((0.0, 0.0), abs=1e-12)


@pytest.mark.parametrize(("axis", "near"), [(0, 0), (1, 1), (2, 1)])
def test_a_round_body_shows_its_near_end_and_all_of_its_side(axis, near):
    ends = [[5.0, 6.0, 7.0], [5.0, 6.0, 7.0]]
    ends[1][axis] += 30.0
    side, cap = shapes_of_bodies([Seen(Rod(tuple(ends[0]), tuple(ends[1]), 12.0), "rod")])
    assert (sum(x for x, _ in cap.points) / len(cap.points), sum(y for _, y in cap.points) / len(cap.points)) == (
        pytest.approx(project(tuple(ends[near])))
    )
    one, other = (n for n in range(3) if n != axis)
    middle = [sum(x for x, _ in side.points) / len(side.points), sum(y for _, y in side.points) / len(side.points)]
    for end in ends:
        for step in range(16):
            point = list(end)
            point[one] += 6.0 * cos(step * pi / 8)
            point[other] += 6.0 * sin(step * pi / 8)
            # A little inward of what is on its rim.
            seen = project(tuple(point))
            assert inside([0.98 * s + 0.02 * m for s, m in zip(seen, middle, strict=True)], side.points)


def test_the_order_holds_everything_once_even_where_bodies_hide_each_other_in_a_circle():
    ring = [
        Seen(Box((0, 0, 0), (30, 2, 2)), "a"),
        Seen(Box((0, 2, 1), (2, 4, 30)), "b"),
        Seen(Box((-3, 1, 28), (0, 30, 30)), "c"),
    ]
    assert sorted(each.name for each in far_to_near(ring)) == ["a", "b", "c"]
