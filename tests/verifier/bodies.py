"""Solids of a finished opening: boxes and round rods in one frame of coordinates, and how far apart they are.

x from the lock edge toward the hinge edge, y up from the finished floor, z from the inside face (0) toward the key
face; millimetres. Distances are those of the convex bodies themselves, found by projecting to and fro between them.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise
from math import acos, hypot, sqrt, tan
from typing import Final

Point = tuple[float, float, float]
TOLERANCE_MM: Final = 0.05
"""Bodies that overlap by less than this touch."""
_ROUNDS: Final = 400


@dataclass(frozen=True)
class Box:
    """A box along the axes."""

    low: Point
    high: Point
    name: str = ""

    def nearest(self, p: Point) -> Point:
        """Return the point of the box that is nearest to another."""
        (a, b, c), (d, e, f) = self.low, self.high
        return (min(max(p[0], a), d), min(max(p[1], b), e), min(max(p[2], c), f))

    @property
    def middle(self) -> Point:
        """The centre."""
        (a, b, c), (d, e, f) = self.low, self.high
        return ((a + d) / 2, (b + e) / 2, (c + f) / 2)

    def bounds(self) -> "Box":
        """Return the box itself."""
        return self

    def shrunk(self, by: float) -> "Box":
        """Return the box without a skin; one that is thinner than two skins keeps its middle plane."""
        low, high = [], []
        for a, b in zip(self.low, self.high, strict=True):
            take = min(by, (b - a) / 2)
            low.append(a + take)
            high.append(b - take)
        return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]), self.name)


@dataclass(frozen=True)
class Rod:
    """A round rod with flat ends: a bore, a screw, a spindle, a shell."""

    start: Point
    end: Point
    radius: float
    name: str = ""

    @property
    def length(self) -> float:
        """Length of its axis."""
        return distance(self.start, self.end)

    @property
    def direction(self) -> Point:
        """Unit vector from start to end; along z for a rod without length."""
        long = self.length
        if long == 0.0:
            return (0.0, 0.0, 1.0)
        a, b = self.start, self.end
        return ((b[0] - a[0]) / long, (b[1] - a[1]) / long, (b[2] - a[2]) / long)

    def nearest(self, p: Point) -> Point:
        """Return the point of the rod that is nearest to another."""
        s, d = self.start, self.direction
        rel = (p[0] - s[0], p[1] - s[1], p[2] - s[2])
        along = rel[0] * d[0] + rel[1] * d[1] + rel[2] * d[2]
        off = (rel[0] - along * d[0], rel[1] - along * d[1], rel[2] - along * d[2])
        out = sqrt(off[0] ** 2 + off[1] ** 2 + off[2] ** 2)
        keep = self.radius / out if out > self.radius else 1.0
        t = min(max(along, 0.0), self.length)
        return (s[0] + t * d[0] + off[0] * keep, s[1] + t * d[1] + off[1] * keep, s[2] + t * d[2] + off[2] * keep)

    @property
    def middle(self) -> Point:
        """Middle of the axis."""
        a, b = self.start, self.end
        return ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2)

    def bounds(self) -> Box:
        """Return the smallest box round it."""
        d, r = self.direction, self.radius
        low, high = [], []
        for i in range(3):
            half = r * sqrt(max(0.0, 1.0 - d[i] * d[i]))
            low.append(min(self.start[i], self.end[i]) - half)
            high.append(max(self.start[i], self.end[i]) + half)
        return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))

    def shrunk(self, by: float) -> "Rod":
        """Return the rod without a skin."""
        d, take = self.direction, min(by, self.length / 2)
        s, e = self.start, self.end
        return Rod(
            (s[0] + take * d[0], s[1] + take * d[1], s[2] + take * d[2]),
            (e[0] - take * d[0], e[1] - take * d[1], e[2] - take * d[2]),
            max(self.radius - by, 0.0),
            self.name,
        )


Body = Box | Rod


def distance(a: Point, b: Point) -> float:
    """Distance of two points."""
    return sqrt((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2 + (a[2] - b[2]) ** 2)


def gap(a: Body, b: Body) -> float:
    """Free distance between two bodies; 0 where they meet.

    >>> gap(Box((0, 0, 0), (1, 1, 1)), Box((4, 5, 0), (6, 6, 1)))
    5.0
    >>> gap(Rod((0, 0, 0), (0, 0, 10), 2), Rod((5, 0, 0), (5, 0, 10), 1))
    2.0
    """
    p = a.nearest(b.middle)
    last = float("inf")
    for _ in range(_ROUNDS):
        q = b.nearest(p)
        p = a.nearest(q)
        now = distance(p, q)
        # Two convex bodies: the steps to and fro come nearer to the shortest way with every round.
        if now == 0.0 or last - now < 1e-9:
            return now
        last = now
    return last


def meet(a: Body, b: Body, clearance: float = 0.0, tolerance: float = TOLERANCE_MM) -> bool:
    """Tell whether two bodies overlap, or stand nearer than a clearance, by more than the tolerance."""
    x, y = a.bounds(), b.bounds()
    for i in range(3):
        if x.low[i] - y.high[i] >= clearance - tolerance or y.low[i] - x.high[i] >= clearance - tolerance:
            return False
    if clearance > 0.0:
        return gap(a, b) < clearance - tolerance
    return gap(a.shrunk(tolerance / 2), b.shrunk(tolerance / 2)) <= 1e-6


def meeting(body: Body, others: Iterable[Body], clearance: float = 0.0) -> list[Body]:
    """List what of others a body meets."""
    return [other for other in others if meet(body, other, clearance)]


def inside(rod: Rod, box: Box, axes: tuple[int, ...] = (0, 1), tolerance: float = TOLERANCE_MM) -> float:
    """By how much a rod reaches out of a box along some axes [mm]; 0 where it lies within."""
    reach = rod.bounds()
    out = 0.0
    for i in axes:
        out = max(out, box.low[i] - reach.low[i], reach.high[i] - box.high[i])
    return out if out > tolerance else 0.0


def path_length(points: list[Point]) -> float:
    """Length of a polyline."""
    return sum(distance(a, b) for a, b in pairwise(points))


def cable_length(points: list[Point], radius: float) -> float:
    """Length of a cable along a polyline whose corners it takes as arcs.

    Two corners share the segment between them; of the first and the last one a corner may take all.

    >>> round(cable_length([(0, 0, 0), (50, 0, 0), (50, 50, 0)], 10), 3)  # 100 - 2 * 10 + 10 * pi / 2
    95.708
    """
    long = path_length(points)
    for i, (a, b, c) in enumerate(zip(points, points[1:], points[2:], strict=False)):
        one, two = distance(a, b), distance(b, c)
        if one == 0.0 or two == 0.0:
            continue
        free_one, free_two = one if i == 0 else one / 2, two if i == len(points) - 3 else two / 2
        cosine = sum((b[i] - a[i]) * (c[i] - b[i]) for i in range(3)) / (one * two)
        turn = min(acos(max(-1.0, min(1.0, cosine))), 2.8)
        tangent = min(radius * tan(turn / 2), free_one, free_two)
        long -= 2 * tangent - tangent / tan(turn / 2) * turn if turn > 1e-6 else 0.0
    return long


def circle_meets(x: float, y: float, radius: float, rect: tuple[float, float, float, float]) -> bool:
    """Tell whether a circle and a rectangle x0, y0, x1, y1 overlap by more than the tolerance."""
    dx = max(rect[0] - x, 0.0, x - rect[2])
    dy = max(rect[1] - y, 0.0, y - rect[3])
    return hypot(dx, dy) < radius - TOLERANCE_MM


def rects_meet(a: tuple[float, float, float, float], b: tuple[float, float, float, float]) -> bool:
    """Tell whether two rectangles overlap by more than the tolerance."""
    return min(a[2], b[2]) - max(a[0], b[0]) > TOLERANCE_MM and min(a[3], b[3]) - max(a[1], b[1]) > TOLERANCE_MM
