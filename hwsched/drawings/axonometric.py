"""Boxes and round bodies seen from a corner, near ones over far ones: projection, visible faces, order of painting.

Seen is from the side of the lock edge, the key face and above: x runs to the right and away, y up, z to the right and
nearer. All three axes are shortened alike (isometric projection, ISO 5456-3, from memory).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, pi, sin, sqrt
from typing import Final

from hwsched.calc.opening.bore import Box, Rod, Vector
from hwsched.calc.opening.solid import Solid, bounds
from hwsched.drawings.drawing import Fill, Line, Pen, Shape

Point = tuple[float, float]

_ROUND: Final = 40
"""Corners by which a circle is drawn."""
_TOUCH: Final = 1e-6
"""Bodies that overlap by less stand against each other [mm]."""


@dataclass(frozen=True, slots=True)
class Seen:
    """A body to be drawn."""

    solid: Solid
    name: str
    about: str = ""
    pen: Pen = "new"
    fill: Fill = "new"
    marks: tuple[tuple[Vector, float], ...] = ()
    """Round holes in its face toward the viewer: centre and diameter, on the plane of greatest z."""


def project(point: Vector) -> Point:
    """Return where a point is seen [mm on the drawing].

    Examples
    --------
    >>> project((0.0, 10.0, 0.0))
    (0.0, 8.16496580927726)
    """
    x, y, z = point
    return (x + z) / sqrt(2), (x + 2 * y - z) / sqrt(6)


def in_front(a: Box, b: Box) -> bool:
    """Tell whether a plane parts two boxes of which the first is on the viewer's side: then nothing of it is hidden."""
    return a.low[2] >= b.high[2] - _TOUCH or a.low[1] >= b.high[1] - _TOUCH or a.high[0] <= b.low[0] + _TOUCH


def far_to_near(bodies: Sequence[Seen]) -> tuple[Seen, ...]:
    """Order bodies so that each is painted over what it hides.

    Of two convex bodies that a plane parts, the one on the viewer's side is never hidden by the other. Should more
    of them hide each other in a circle, the farthest of these is painted first.
    """
    boxes = [bounds(each.solid) for each in bodies]
    under: list[set[int]] = [set() for _ in bodies]
    for a in range(len(bodies)):
        for b in range(len(bodies)):
            if a != b and in_front(boxes[a], boxes[b]) and not in_front(boxes[b], boxes[a]):
                under[a].add(b)
    left, order = set(range(len(bodies))), []
    while left:
        free = [each for each in sorted(left) if not under[each] & left]
        at = free[0] if free else min(sorted(left), key=lambda each: _nearness(boxes[each]))
        left.remove(at)
        order.append(bodies[at])
    return tuple(order)


def shapes_of_bodies(bodies: Sequence[Seen]) -> list[Shape]:
    """Return the visible faces of all bodies in the order of painting, with hidden lines painted over."""
    shapes: list[Shape] = []
    for body in far_to_near(bodies):
        for face in _faces(body.solid):
            shapes.append(Line(face, body.pen, True, body.fill, body.name, about=body.about))
        for centre, diameter in body.marks:
            shapes.append(Line(_circle(centre, diameter, 2), "thin", True, "hole", f"hole in the {body.name}"))
    return shapes


def _nearness(box: Box) -> float:
    middle = [(box.low[each] + box.high[each]) / 2 for each in range(3)]
    return -middle[0] + middle[1] + middle[2]


def _faces(solid: Solid) -> tuple[tuple[Point, ...], ...]:
    """Return what is seen of a body as polygons, of which none covers another."""
    return _of_box(solid) if isinstance(solid, Box) else _of_rod(solid)


def _of_box(box: Box) -> tuple[tuple[Point, ...], ...]:
    (x0, y0, z0), (x1, y1, z1) = box
    corners = (
        ((x0, y0, z0), (x0, y1, z0), (x0, y1, z1), (x0, y0, z1)),
        ((x0, y1, z0), (x1, y1, z0), (x1, y1, z1), (x0, y1, z1)),
        ((x0, y0, z1), (x1, y0, z1), (x1, y1, z1), (x0, y1, z1)),
    )
    return tuple(tuple(project(corner) for corner in face) for face in corners)


def _of_rod(rod: Rod) -> tuple[tuple[Point, ...], ...]:
    along = [abs(rod.end[each] - rod.start[each]) for each in range(3)]
    axis = max(range(3), key=lambda each: along[each])
    ends = [_circle(point, rod.diameter_mm, axis) for point in (rod.start, rod.end)]
    # Toward the viewer lie less x, more y, more z.
    toward = (rod.end[axis] - rod.start[axis]) * (-1.0 if axis == 0 else 1.0)
    return _hull([*ends[0], *ends[1]]), ends[1 if toward > 0 else 0]


def _circle(centre: Vector, diameter: float, axis: int) -> tuple[Point, ...]:
    """Return a circle across an axis as it is seen."""
    one, other = (each for each in range(3) if each != axis)
    points = []
    for step in range(_ROUND):
        turn = 2 * pi * step / _ROUND
        point = list(centre)
        point[one] += diameter / 2 * cos(turn)
        point[other] += diameter / 2 * sin(turn)
        points.append(project((point[0], point[1], point[2])))
    return tuple(points)


def _hull(points: Sequence[Point]) -> tuple[Point, ...]:
    """Return the convex hull of points, counter-clockwise."""
    ordered = sorted(set(points))

    def half(way: Sequence[Point]) -> list[Point]:
        found: list[Point] = []
        for point in way:
            while len(found) > 1 and _turn(found[-2], found[-1], point) <= 1e-9:
                found.pop()
            found.append(point)
        return found[:-1]

    return (*half(ordered), *half(ordered[::-1]))


def _turn(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
