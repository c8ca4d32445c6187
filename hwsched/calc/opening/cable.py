"""Length of a cable along its route, with its corners rounded to the bend radius.

Here belongs the length of a polyline. Which points the cable passes, what slack the handling needs and whether the
lead is long enough is decided above.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import atan2, dist, fsum, hypot, isfinite, tan
from typing import Any

from hwsched.calc.calculator import Calculator, Field, InputError, Reader, check_number, check_point

_TOUCH_MM = 1e-9
"""A segment short by less than this is long enough."""

Point = Sequence[float]
"""x, y, z [mm]."""


@dataclass(frozen=True)
class CableRoute:
    """Cable needed for one route."""

    length_mm: float
    """Rounded polyline plus slack [mm]."""
    tight_bends: tuple[int, ...]
    """Indices of the corners that cannot take the bend radius; they count unrounded."""


def route(points_mm: Sequence[Point], bend_radius_mm: float, slack_mm: float = 0.0) -> CableRoute:
    """Cable along a polyline whose corners are rounded by arcs tangent to both their segments.

    Parameters
    ----------
    points_mm : sequence of points
        At least two points x, y, z [mm]; neighbours apart from each other.
    bend_radius_mm : float
        Radius of the cable's centre line in a bend [mm], 0 or more.
    slack_mm : float
        Added to the length [mm], 0 or more.

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
    _check(points_mm, bend_radius_mm, slack_mm)
    count = len(points_mm)
    segments = [dist(points_mm[i], points_mm[i + 1]) for i in range(count - 1)]
    for i, segment in enumerate(segments):
        if segment <= _TOUCH_MM:
            raise InputError(f"points_mm[{i + 1}]", "lies on the point before it")
    angles = [0.0] * count
    for i in range(1, count - 1):
        angles[i] = turn_rad(points_mm[i - 1], points_mm[i], points_mm[i + 1])
    tangents = [bend_radius_mm * tan(angle / 2) if bend_radius_mm else 0.0 for angle in angles]
    tight: set[int] = set()
    for i, segment in enumerate(segments):
        if segment < tangents[i] + tangents[i + 1] - _TOUCH_MM:
            tight.update(j for j in (i, i + 1) if 0 < j < count - 1)
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
    return atan2(across, ux * vx + uy * vy + uz * vz)


def _check(points_mm: Sequence[Point], bend_radius_mm: float, slack_mm: float) -> None:
    if len(points_mm) < 2:
        raise InputError("points_mm", "a route needs at least two points")
    for i, point in enumerate(points_mm):
        if len(point) != 3 or not all(map(isfinite, point)):
            check_point(point, f"points_mm[{i}]", 3)
    check_number(bend_radius_mm, "bend_radius_mm", at_least=0)
    check_number(slack_mm, "slack_mm", at_least=0)


def _run(data: Mapping[str, Any]) -> dict[str, Any]:
    reader = Reader(data)
    points = [check_point(p, f"points_mm[{i}]", 3) for i, p in enumerate(reader.items("points_mm"))]
    result = route(points, reader.number("bend_radius_mm"), reader.number("slack_mm"))
    return {"length_mm": result.length_mm, "tight_bends": list(result.tight_bends)}


CABLE = Calculator(
    name="cable",
    title="Cable along its route",
    basis="geometry",
    inputs=(
        Field("points_mm", "list", "Points [x, y, z] that the cable passes, at least two."),
        Field("bend_radius_mm", "number", "Radius of the cable's centre line in a bend; 0 for sharp corners."),
        Field("slack_mm", "number", "What handling needs on top."),
    ),
    outputs=(
        Field("length_mm", "number", "Length with rounded corners, slack included."),
        Field(
            "tight_bends",
            "list",
            "Indices of corners next to a segment too short for the radius; they count unrounded.",
        ),
    ),
    example={
        "points_mm": [[70, 1000, 22.2], [70, 1063.5, 22.2], [70, 1063.5, 0], [70, 1150, 0]],
        "bend_radius_mm": 9.5,
        "slack_mm": 50,
    },
    run=_run,
)
