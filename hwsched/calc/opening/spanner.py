"""How far round a lever may be swung in a plane: a spanner on its nut, between what stands beside it."""

from collections.abc import Iterable
from math import atan2, degrees, hypot, inf, pi, sqrt

from hwsched.calc.opening.placement import Rect


def widest_swing_deg(x: float, y: float, reach_mm: float, half_wide_mm: float, beside: Iterable[Rect]) -> float:
    """Return the widest angle over which a lever that turns about a point meets nothing.

    Parameters
    ----------
    x, y : float
        The point about which it turns [mm].
    reach_mm : float
        From there to its end [mm].
    half_wide_mm : float
        Half its width [mm]: so far off its middle line it keeps what is beside it, also round a corner.
    beside : iterable of Rect
        What stands in its plane [mm].

    Returns
    -------
    float
        Angle [deg] that its middle line passes through; 360 where nothing is near, 0 where something lies on the point.

    Notes
    -----
    Source: geometry. What lies within reach of a rectangle is convex, and ends seen from the point at a corner, or
    where a side leaves the circle that the end of the lever draws.

    Examples
    --------
    >>> widest_swing_deg(0, 0, 100, 0, [Rect(10, -500, 20, 500)])
    191.478...
    >>> widest_swing_deg(0, 0, 100, 0, [Rect(-500, 10, 500, 20), Rect(-500, -20, 500, -10)])
    11.478...
    """
    taken: list[tuple[float, float]] = []
    for rect in beside:
        a, b = rect.x0 - half_wide_mm - x, rect.x1 + half_wide_mm - x
        c, d = rect.y0 - half_wide_mm - y, rect.y1 + half_wide_mm - y
        if a < 0 < b and c < 0 < d:
            return 0.0
        ends = _ends(a, b, c, d, reach_mm)
        if ends:
            taken.append(_seen(ends))
    return _widest_gap(taken)


def _ends(a: float, b: float, c: float, d: float, reach: float) -> list[tuple[float, float]]:
    """Return the corners of a rectangle within reach, and where its sides leave the circle."""
    found = [(x, y) for x in (a, b) for y in (c, d) if hypot(x, y) <= reach]
    for fixed, low, high, turned in ((a, c, d, False), (b, c, d, False), (c, a, b, True), (d, a, b, True)):
        if abs(fixed) < reach:
            half = sqrt(reach * reach - fixed * fixed)
            crossed = [each for each in (-half, half) if low <= each <= high]
            found += [(each, fixed) if turned else (fixed, each) for each in crossed]
    return found


def _seen(ends: list[tuple[float, float]]) -> tuple[float, float]:
    """Return the first and last angle at which they are seen; no wider than half a turn, as anything convex is."""
    start = atan2(ends[0][1], ends[0][0])
    off = [(atan2(y, x) - start + pi) % (2 * pi) - pi for x, y in ends]
    return start + min(off), start + max(off)


def _widest_gap(taken: list[tuple[float, float]]) -> float:
    if not taken:
        return 360.0
    turns = sorted((low % (2 * pi), low % (2 * pi) + high - low) for low, high in taken)
    # What goes on past a whole turn covers the beginning too.
    reached, widest = max(turns[0][1], *(high - 2 * pi for _, high in turns)), -inf
    for low, high in [*turns[1:], (turns[0][0] + 2 * pi, 0.0)]:
        widest, reached = max(widest, low - reached), max(reached, high)
    return max(degrees(widest), 0.0)
