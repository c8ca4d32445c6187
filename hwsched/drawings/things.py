"""Things in a drawing: where each stands, which one lies under a point, to which lines and points others keep.

Pure geometry over neutral shapes; which thing a shape belongs to it says itself (`about`).
"""

import math
from collections.abc import Iterable, Sequence
from typing import Final, NamedTuple

from hwsched.drawings.drawing import Arc, Circle, Drawing, Line, Shape

Box = tuple[float, float, float, float]
"""x0, y0, x1, y1 [mm]."""
Point = tuple[float, float]

_SAME_MM: Final = 0.05


class Lines(NamedTuple):
    """Upright and level lines to which what is moved keeps, each with what it is."""

    xs: tuple[tuple[float, str], ...]
    ys: tuple[tuple[float, str], ...]


class Snap(NamedTuple):
    """How far what is moved goes on until it stands on lines, and what these are."""

    dx: float
    dy: float
    upright: tuple[float, str] | None
    level: tuple[float, str] | None


def box_of(shapes: Iterable[Shape]) -> Box | None:
    """Return the box about shapes, words and dimensions left out; None where nothing is left.

    Examples
    --------
    >>> box_of([Circle(10.0, 5.0, 4.0), Line(((0.0, 0.0), (9.0, 1.0)))])
    (0.0, 0.0, 12.0, 7.0)
    """
    xs: list[float] = []
    ys: list[float] = []
    for shape in shapes:
        if isinstance(shape, Line):
            xs += [x for x, _ in shape.points]
            ys += [y for _, y in shape.points]
        elif isinstance(shape, Circle | Arc):
            half = shape.diameter / 2 if isinstance(shape, Circle) else shape.radius
            xs += [shape.x - half, shape.x + half]
            ys += [shape.y - half, shape.y + half]
    return (min(xs), min(ys), max(xs), max(ys)) if xs else None


def shapes_of(drawing: Drawing, thing: str) -> tuple[Shape, ...]:
    """Return all shapes of a thing."""
    return tuple(each for each in drawing.shapes if getattr(each, "about", "") == thing)


def things_of(drawing: Drawing) -> tuple[str, ...]:
    """Return the things of a drawing, in the order in which they are drawn."""
    found = [getattr(each, "about", "") for each in drawing.shapes]
    return tuple(dict.fromkeys(each for each in found if each))


def thing_at(drawing: Drawing, x: float, y: float, reach: float = 0.0) -> str:
    """Return the smallest thing under a point, or so near to it [mm]; empty for none."""
    found: list[tuple[float, str]] = []
    for thing in things_of(drawing):
        box = box_of(shapes_of(drawing, thing))
        if box is not None and box[0] - reach <= x <= box[2] + reach and box[1] - reach <= y <= box[3] + reach:
            found.append(((box[2] - box[0]) * (box[3] - box[1]), thing))
    return min(found, default=(0.0, ""))[1]


def corners_of(drawing: Drawing) -> tuple[Point, ...]:
    """Return the points between which people measure: ends and corners of lines, centres of circles."""
    found: dict[Point, None] = {}
    for shape in drawing.shapes:
        if isinstance(shape, Line):
            found.update(dict.fromkeys(shape.points))
        elif isinstance(shape, Circle | Arc):
            found[(shape.x, shape.y)] = None
    return tuple(found)


def nearest(points: Sequence[Point], x: float, y: float, reach: float) -> Point | None:
    """Return the point nearest to a place, unless it is farther off than a reach [mm].

    Examples
    --------
    >>> nearest([(0.0, 0.0), (10.0, 0.0)], 8.0, 1.0, 5.0)
    (10.0, 0.0)
    >>> nearest([(0.0, 0.0)], 8.0, 1.0, 5.0) is None
    True
    """
    best = min(points, key=lambda each: math.dist(each, (x, y)), default=None)
    return best if best is not None and math.dist(best, (x, y)) <= reach else None


def lines_for(drawing: Drawing, thing: str) -> Lines:
    """Return the lines to which a thing keeps when it is moved: centre lines, and edges and middles of what stands.

    Parameters
    ----------
    drawing : Drawing
        A face.
    thing : str
        What is moved: its own lines are none of them, nor are those of what moves along, holes and the lead.
    """
    xs: list[tuple[float, str]] = []
    ys: list[tuple[float, str]] = []
    for shape in drawing.shapes:
        if isinstance(shape, Line) and shape.name in ("backset line", "reader centre line", "cylinder centre line"):
            (x0, y0), (x1, y1) = shape.points[0], shape.points[-1]
            if abs(x0 - x1) < _SAME_MM:
                xs.append((x0, shape.name))
            elif abs(y0 - y1) < _SAME_MM:
                ys.append((y0, shape.name))
        elif isinstance(shape, Line) and shape.name == "lock stile":
            xs.append((shape.points[0][0], "edge of the stile"))
        elif isinstance(shape, Line) and (shape.name == "leaf" or shape.name.startswith("leaf ")) and shape.closed:
            box = box_of([shape])
            if box is not None:
                xs.append(((box[0] + box[2]) / 2, "middle of the leaf"))
    for other in things_of(drawing):
        if other == thing or other == "lead" or other.startswith("hole ") or other in ("unit", "new lock"):
            continue
        shapes = shapes_of(drawing, other)
        box, name = box_of(shapes), next((each.name for each in shapes if isinstance(each, Line)), "")
        if box is None or not name:
            continue
        words = name.replace("-", " ")
        xs += [(box[0], f"edge of the {words}"), (box[2], f"edge of the {words}")]
        ys += [(box[1], f"lower edge of the {words}"), (box[3], f"upper edge of the {words}")]
        xs.append(((box[0] + box[2]) / 2, f"middle of the {words}"))
        ys.append(((box[1] + box[3]) / 2, f"middle of the {words}"))
    return Lines(tuple(xs), tuple(ys))


def snapped(box: Box, lines: Lines, reach: float) -> Snap:
    """Move a box on to the lines that its edges or its middle are nearest to, within a reach [mm].

    Examples
    --------
    >>> snapped((0.0, 0.0, 10.0, 20.0), Lines(((6.0, "backset line"),), ()), 2.0)
    Snap(dx=1.0, dy=0.0, upright=(6.0, 'backset line'), level=None)
    """
    dx, upright = _on(((box[0] + box[2]) / 2, box[0], box[2]), lines.xs, reach)
    dy, level = _on(((box[1] + box[3]) / 2, box[1], box[3]), lines.ys, reach)
    return Snap(dx, dy, upright, level)


def next_line(box: Box, lines: Lines, way: tuple[int, int]) -> Snap:
    """Move a box on in one way until its middle or an edge stands on the next line; by nothing where there is none."""
    across = way[0] != 0
    sign = way[0] or way[1]
    of = lines.xs if across else lines.ys
    marks = (box[0], (box[0] + box[2]) / 2, box[2]) if across else (box[1], (box[1] + box[3]) / 2, box[3])
    steps = [(line - mark, (line, name)) for line, name in of for mark in marks if (line - mark) * sign > _SAME_MM]
    by, line = min(steps, key=lambda each: abs(each[0]), default=(0.0, None))
    return Snap(by, 0.0, line, None) if across else Snap(0.0, by, None, line)


def _on(
    marks: tuple[float, ...], lines: tuple[tuple[float, str], ...], reach: float
) -> tuple[float, tuple[float, str] | None]:
    steps = [(line - mark, (line, name)) for line, name in lines for mark in marks]
    by, line = min(steps, key=lambda each: abs(each[0]), default=(0.0, None))
    return (by, line) if line is not None and abs(by) <= reach else (0.0, None)
