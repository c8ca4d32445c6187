"""How far apart two solids of an opening are: boxes along the axes, and round bodies with flat ends.

Here belongs geometry alone. Which bodies stand in an opening, and which of them must be apart, is said by the rules.
"""

from math import hypot
from typing import Final, TypeAlias

from hwsched.calc.opening.bore import Box, Rod, Vector, segment_to_box_mm, segment_to_segment_mm

Solid: TypeAlias = Box | Rod

_ALONG: Final = 1e-9
"""Up to so much across its axis a rod runs along an axis [mm]."""


def apart_mm(a: Solid, b: Solid) -> float:
    """Least distance between two solids; negative where they overlap.

    Parameters
    ----------
    a, b : Box or Rod
        Solids [mm]. A rod that runs along one of the axes has flat ends; any other one counts with rounded ends, half a
        diameter longer at each. Two rods across each other are never told farther apart than they are.

    Returns
    -------
    float
        Distance [mm]; below zero by how far one would have to move along the axis on which that is least, for rods
        across their axis at least by the depth of their centre lines.

    Notes
    -----
    Source: geometry.

    Examples
    --------
    >>> apart_mm(Box((0, 0, 0), (1, 1, 1)), Box((4, 5, 0), (5, 6, 1)))
    5.0
    >>> apart_mm(Rod((0, 0, 0), (0, 0, 10), 4), Box((-5, -5, 12.0), (5, 5, 20)))
    2.0
    >>> apart_mm(Rod((0, 0, 0), (0, 0, 10), 4), Rod((5, 0, 0), (5, 0, 10), 4))
    1.0
    """
    if isinstance(a, Box):
        return _boxes(a, b) if isinstance(b, Box) else _rod_and_box(b, a)
    if isinstance(b, Box):
        return _rod_and_box(a, b)
    return _rods(a, b)


def bounds(solid: Solid) -> Box:
    """Return the smallest box along the axes that holds a solid; of a slanted rod with its rounded ends."""
    if isinstance(solid, Box):
        return solid
    axis, half = _axis(solid), solid.diameter_mm / 2
    (ax, ay, az), (bx, by, bz) = solid.start, solid.end
    # Flat at its ends, round about its axis.
    x, y, z = (0.0 if each == axis else half for each in range(3))
    low = min(ax, bx) - x, min(ay, by) - y, min(az, bz) - z
    return Box(low, (max(ax, bx) + x, max(ay, by) + y, max(az, bz) + z))


def shrunk(solid: Solid, by: Vector) -> Solid:
    """Return a solid with so much less on each of its sides, at the least its middle.

    Parameters
    ----------
    solid : Box or Rod
        A round body loses across its axis what it loses on the axis where that is most.
    by : (float, float, float)
        On each axis [mm].

    Examples
    --------
    >>> shrunk(Box((0, 0, 0), (10, 4, 2)), (1, 3, 0))
    Box(low=(1, 2.0, 0), high=(9, 2.0, 2))
    >>> shrunk(Rod((0, 0, 0), (0, 0, 10), 4), (1, 0, 2))
    Rod(start=(0, 0, 2), end=(0, 0, 8), diameter_mm=2)
    """
    if isinstance(solid, Box):
        less = [min(by[each], (solid.high[each] - solid.low[each]) / 2) for each in range(3)]
        low = [a + b for a, b in zip(solid.low, less, strict=True)]
        high = [a - b for a, b in zip(solid.high, less, strict=True)]
        return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))
    axis = _axis(solid)
    across = max(by[each] for each in range(3) if each != axis)
    start, end = list(solid.start), list(solid.end)
    if axis is not None:
        half = (end[axis] - start[axis]) / 2
        off = min(by[axis], abs(half))
        start[axis] += off if half > 0 else -off
        end[axis] -= off if half > 0 else -off
    wide = max(solid.diameter_mm - 2 * across, 0.0)
    return Rod((start[0], start[1], start[2]), (end[0], end[1], end[2]), wide)


def within_mm(inner: Solid, outer: Box) -> float:
    """Least distance of a solid inside a box from the box's sides [mm]; negative by how far it sticks out.

    Examples
    --------
    >>> within_mm(Rod((5, 5, 0), (5, 5, 3), 4), Box((0, 0, 0), (10, 20, 3)))
    0.0
    >>> within_mm(Rod((1, 5, 0), (1, 5, 3), 4), Box((0, 0, 0), (10, 20, 3)))
    -1.0
    """
    held = bounds(inner)
    return min(min(held.low[each] - outer.low[each], outer.high[each] - held.high[each]) for each in range(3))


def _axis(rod: Rod) -> int | None:
    """Return the axis along which a rod runs; None for a slanted one."""
    (x, y, z), (end_x, end_y, end_z) = rod.start, rod.end
    x, y, z = abs(end_x - x), abs(end_y - y), abs(end_z - z)
    if x >= y and x >= z:
        return 0 if y <= _ALONG and z <= _ALONG else None
    if y >= z:
        return 1 if x <= _ALONG and z <= _ALONG else None
    return 2 if x <= _ALONG and y <= _ALONG else None


def _gaps(a: Box, b: Box) -> list[float]:
    return [max(b.low[each] - a.high[each], a.low[each] - b.high[each]) for each in range(3)]


def _boxes(a: Box, b: Box) -> float:
    gaps = _gaps(a, b)
    free = [gap for gap in gaps if gap > 0]
    return hypot(*free) if free else max(gaps)


def _rod_and_box(rod: Rod, box: Box) -> float:
    axis = _axis(rod)
    if axis is None:
        return segment_to_box_mm(rod.start, rod.end, box) - rod.diameter_mm / 2
    low, high = sorted((rod.start[axis], rod.end[axis]))
    along = max(box.low[axis] - high, low - box.high[axis])
    across = _point_to_box([each for each in range(3) if each != axis], rod.start, box) - rod.diameter_mm / 2
    return _together(along, across)


def _point_to_box(axes: list[int], point: Vector, box: Box) -> float:
    """Distance of a point from a box on two axes; negative by how deep it lies inside."""
    gaps = [max(box.low[each] - point[each], point[each] - box.high[each]) for each in axes]
    free = [gap for gap in gaps if gap > 0]
    return hypot(*free) if free else max(gaps)


def _rods(a: Rod, b: Rod) -> float:
    axis = _axis(a)
    if axis is not None and axis == _axis(b):
        (low, high), (start, end) = (sorted((rod.start[axis], rod.end[axis])) for rod in (a, b))
        across = hypot(*(a.start[each] - b.start[each] for each in range(3) if each != axis))
        return _together(max(start - high, low - end), across - (a.diameter_mm + b.diameter_mm) / 2)
    rounded = segment_to_segment_mm(a.start, a.end, b.start, b.end) - (a.diameter_mm + b.diameter_mm) / 2
    # Neither is more than the distance: rounded ends are too long, boxes too wide.
    return max(rounded, _boxes(bounds(a), bounds(b)))


def _together(along: float, across: float) -> float:
    """Put together the distances along and across an axis."""
    if along > 0 and across > 0:
        return hypot(along, across)
    return max(along, across)
