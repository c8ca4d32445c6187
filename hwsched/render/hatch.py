"""Hatching: parallel lines at 45 degrees inside a polygon."""

import math

Point = tuple[float, float]


def hatch(points: tuple[Point, ...], spacing: float) -> list[tuple[Point, Point]]:
    """Return the lines that hatch a polygon.

    Parameters
    ----------
    points : tuple of (float, float)
        Corners of a simple polygon in order.
    spacing : float
        Distance of the lines [mm], over 0.

    Returns
    -------
    list of pairs of points
        Lines rising to the right; they hang on the origin, not on the polygon, so that neighbours' lines meet.

    Examples
    --------
    >>> len(hatch(((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)), 5.0))
    3
    """
    step = spacing * math.sqrt(2.0)
    levels = [y - x for x, y in points]
    edges = list(zip(points, (*points[1:], points[0]), strict=True))
    lines: list[tuple[Point, Point]] = []
    for number in range(math.ceil(min(levels) / step), math.floor(max(levels) / step) + 1):
        level = number * step
        cuts = []
        for (ax, ay), (bx, by) in edges:
            a, b = ay - ax - level, by - bx - level
            if (a < 0.0) != (b < 0.0):
                share = a / (a - b)
                cuts.append((ax + share * (bx - ax), ay + share * (by - ay)))
        cuts.sort()
        lines.extend((start, end) for start, end in zip(cuts[::2], cuts[1::2], strict=False) if start != end)
    return lines
