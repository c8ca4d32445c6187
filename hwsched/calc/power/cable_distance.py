"""Distance along the cable route between a supply's place and an opening, estimated where it was not measured.

Here belongs the estimate. A measured distance always goes before it; what hangs on what is decided in `siting`.
"""

from dataclasses import dataclass

from hwsched.calc.calculator import check_number


@dataclass(frozen=True, slots=True)
class PlanPoint:
    """Where a supply or an opening stands in its building."""

    level_m: float
    """Height of the level's floor over a common zero [m]."""
    x_m: float
    y_m: float
    """On the plan, along the building's axes [m]."""
    rise_m: float
    """From the device up to the cable way of its level [m], 0 or more."""


@dataclass(frozen=True, slots=True)
class Distance:
    """Length of a cable route, one way."""

    metres: float
    measured: bool


def route_distance(
    supply: PlanPoint, opening: PlanPoint, measured_m: float | None = None, detour_factor: float = 1.0
) -> Distance:
    """Length of the cable route between a supply and an opening.

    Parameters
    ----------
    supply, opening : PlanPoint
        In the same building.
    measured_m : float
        As measured on site [m]; taken as it is.
    detour_factor : float
        On the estimate, 1 or more; 1 means along the building's axes without detour.

    Returns
    -------
    Distance
        Rise to the cable way, along the two axes of the building, between the levels, and down again.

    Raises
    ------
    InputError
        Names the value that cannot be taken.

    Notes
    -----
    d = (rise_1 + |dx| + |dy| + |level_1 - level_2| + rise_2) · detour. Common practice for take-off from plans.

    Examples
    --------
    >>> route_distance(PlanPoint(0, 2, 3, 1.5), PlanPoint(4, 22, 8, 1.0))
    Distance(metres=31.5, measured=False)
    """
    if measured_m is not None:
        return Distance(check_number(measured_m, "measured_m", at_least=0), True)
    check_number(detour_factor, "detour_factor", at_least=1)
    for name, place in (("supply", supply), ("opening", opening)):
        check_number(place.rise_m, f"{name}.rise_m", at_least=0)
        for field in ("level_m", "x_m", "y_m"):
            check_number(getattr(place, field), f"{name}.{field}")
    flat = abs(supply.x_m - opening.x_m) + abs(supply.y_m - opening.y_m)
    upright = supply.rise_m + abs(supply.level_m - opening.level_m) + opening.rise_m
    return Distance((flat + upright) * detour_factor, False)
