"""Length of a cable along its route, with its corners rounded to the bend radius.

Here belongs the length of a polyline. Which points the cable passes, what slack the handling needs and whether the
lead is long enough is decided above.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import atan2, dist, fsum, hypot, tan
from typing import Annotated

from hwsched.calc.calculator import Calculator, InputError, Said, check_arguments
from hwsched.calc.limits import NotNegative

_TOUCH_MM = 1e-9
"""A segment short by less than this is long enough."""

Point = tuple[float, float, float]
"""x, y, z [mm]."""


@dataclass(frozen=True)
class CableRoute:
    """Cable needed for one route."""

    length_mm: Annotated[float, Said("Length with rounded corners, slack included.")]
    tight_bends: Annotated[
        tuple[int, ...], Said("Indices of corners next to a segment too short for the radius; they count unrounded.")
    ]


def route(
    points_mm: Annotated[Sequence[Point], Said("Points [x, y, z] that the cable passes, at least two, each apart.")],
    bend_radius_mm: Annotated[NotNegative, Said("Radius of the cable's centre line in a bend; 0 for sharp corners.")],
    slack_mm: Annotated[NotNegative, Said("What handling needs on top.", needed=True)] = 0.0,
) -> CableRoute:
    """Cable along a polyline whose corners are rounded by arcs tangent to both their segments.

    Returns
    -------
    CableRoute
        A corner that turns by the angle t takes ``r * tan(t/2)`` of each of its segments and gives back ``r * t``. A
        segment shorter than what its two ends together take makes the corners at its ends tight; the polyline's own
        ends take nothing.

    Raises
    ------
    InputError
        Names the value that cannot be taken.

    Notes
    -----
    Source: geometry. Bend radii by cable: ANSI/TIA-568.0-D for four-pair cable (4 times the outside diameter),
    else the cable maker's.

    Examples
    --------
    >>> got = route([(0, 0, 0), (100, 0, 0), (100, 100, 0)], 10, 25)
    >>> round(got.length_mm, 4), got.tight_bends
    (220.708, ())
    >>> route([(0, 0, 0), (100, 0, 0), (100, 9, 0)], 10)
    CableRoute(length_mm=109.0, tight_bends=(1,))
    """
    if len(points_mm) < 2:
        raise InputError("points_mm", "a route needs at least two points")
    check_arguments(route, locals())
    count = len(points_mm)
    segments = [dist(points_mm[i], points_mm[i + 1]) for i in range(count - 1)]
    for i, segment in enumerate(segments):
        if segment <= _TOUCH_MM:
            raise InputError(f"points_mm[{i + 1}]", "lies on the point before it")
    # The route's own ends turn nowhere: what the cable does at its connectors is the slack's affair.
    angles = [0.0] * count
    for i in range(1, count - 1):
        angles[i] = turn_rad(points_mm[i - 1], points_mm[i], points_mm[i + 1])
    tangents = [bend_radius_mm * tan(angle / 2) if bend_radius_mm else 0.0 for angle in angles]
    tight: set[int] = set()
    for i, segment in enumerate(segments):
        # Both arcs want their part of the one segment between them.
        if segment < tangents[i] + tangents[i + 1] - _TOUCH_MM:
            tight.update(j for j in (i, i + 1) if 0 < j < count - 1)
    # Tight corners count at full length: rounding them would shorten a cable that cannot take the short cut.
    rounded = (bend_radius_mm * angles[i] - 2 * tangents[i] for i in range(1, count - 1) if i not in tight)
    return CableRoute(fsum((*segments, *rounded, slack_mm)), tuple(sorted(tight)))


def turn_rad(before: Point, corner: Point, after: Point) -> float:
    """Angle by which a line turns at a corner.

    Parameters
    ----------
    before, corner, after : point
        x, y, z [mm], each apart from the next.

    Returns
    -------
    float
        From 0 (straight on) to pi (straight back) [rad].

    Examples
    --------
    >>> round(turn_rad((0, 0, 0), (1, 0, 0), (1, 1, 0)), 6)
    1.570796
    """
    ux, uy, uz = (b - a for a, b in zip(before, corner, strict=True))
    vx, vy, vz = (b - a for a, b in zip(corner, after, strict=True))
    across = hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx)
    # Not by the arc cosine: it loses half its digits near straight on, and rounding can carry it outside its range.
    return atan2(across, ux * vx + uy * vy + uz * vz)


CABLE = Calculator(
    name="cable",
    title="Cable along its route",
    basis="geometry",
    work=route,
    example={
        "points_mm": [[70, 1000, 22.2], [70, 1063.5, 22.2], [70, 1063.5, 0], [70, 1150, 0]],
        "bend_radius_mm": 9.5,
        "slack_mm": 50,
    },
)
