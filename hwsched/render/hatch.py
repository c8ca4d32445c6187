"""Hatching: parallel lines at 45 degrees inside a polygon, by what is cut through."""

import math
from collections.abc import Mapping
from typing import Final

from hwsched.drawings.drawing import Hatch

Point = tuple[float, float]

_WIDE: Final = 3.6
_NARROW: Final = 1.6
_PATTERNS: Final[Mapping[Hatch, tuple[tuple[float, bool, float], ...]]] = {
    "wood": ((_WIDE, True, 0.0),),
    "metal": ((_WIDE, True, 0.0), (_WIDE, True, 1.0)),
    "aluminium": ((_WIDE, False, 0.0), (_WIDE, False, 1.0)),
    "glass": ((2 * _WIDE, True, 0.0), (2 * _WIDE, True, 1.0), (2 * _WIDE, True, 2.0)),
    "other": ((_NARROW, False, 0.0),),
}
"""Distance of lines, whether they rise to the right, and how far they are shifted [paper mm]. A legend says what each
means: of the many published patterns none is every draftsman's (common practice)."""


def cut_lines(points: tuple[Point, ...], what: Hatch) -> list[tuple[Point, Point]]:
    """Return the lines by which a polygon is shown as cut through.

    Examples
    --------
    >>> square = ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0))
    >>> len(cut_lines(square, "metal")) > len(cut_lines(square, "wood"))
    True
    """
    lines: list[tuple[Point, Point]] = []
    for spacing, rising, shift in _PATTERNS.get(what, ()):
        sign = 1.0 if rising else -1.0
        # Falling lines are rising ones seen in a mirror.
        turned = tuple((sign * x, y - shift) for x, y in points)
        lines += [((sign * ax, ay + shift), (sign * bx, by + shift)) for (ax, ay), (bx, by) in hatch(turned, spacing)]
    return lines


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
