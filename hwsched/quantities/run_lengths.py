"""Lengths of cable runs: metres where the project shows millimetres, else feet; never both on one page."""

from typing import Final

from hwsched.quantities.length_format import LengthStyle

METRES_PER_FOOT: Final = 0.3048
"""Exact (international foot)."""


def run_unit(style: LengthStyle) -> str:
    """Return the unit in which a project shows runs.

    Examples
    --------
    >>> run_unit("mm"), run_unit("fraction"), run_unit("decimal-inch")
    ('m', 'ft', 'ft')
    """
    return "m" if style == "mm" else "ft"


def in_run_unit(length_m: float, style: LengthStyle) -> float:
    """Return the length of a run [m] in the unit in which the project shows it.

    Examples
    --------
    >>> in_run_unit(30.48, "mm"), round(in_run_unit(30.48, "fraction"), 9)
    (30.48, 100.0)
    """
    return length_m if style == "mm" else length_m / METRES_PER_FOOT
