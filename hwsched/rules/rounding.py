"""How exactly the survey tells a length: what a fit may owe to the rounding of how it was written.

A length in inches is a nominal one, and exact: 1 3/4 in is 44.45 mm. Who measures the same leaf in millimetres writes
44.5 mm, and that is up to half of its last digit off. Where parts are made in inches, such a length carries that half
digit: nothing is refused for less, and the rule that would have refused says what to measure more exactly. Whether
a length was written in millimetres is told by its value: no whole number of sixty-fourths of an inch.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from hwsched.quantities.adding import added
from hwsched.rules.carried import Carried, between
from hwsched.rules.rule import Verdict
from hwsched.rules.wording import label_of, length
from hwsched.values import OpeningInput

EQUAL_MM: Final = 1e-3
"""Lengths closer than this are equal: sums of inches in millimetres miss by less, and nothing is made as exactly."""
MEASURE_MM: Final = 0.05
"""What a survey in tenths of a millimetre cannot tell [mm]: a fit that owes less to it ranks as any other."""
_SIXTY_FOURTH_MM: Final = 25.4 / 64
_FINEST: Final = 3
"""Decimals from which on a length in millimetres is no reading, but comes out of a calculation."""


@dataclass(frozen=True, slots=True)
class Allowance:
    """What a sum of lengths of the survey may be off by the rounding of how they were written."""

    mm: float
    facts: tuple[tuple[str, float], ...] = ()
    """Those that carry a rounding, as ``entity.attribute``, each with half its last digit [mm]."""


_NO_ALLOWANCE: Final = Allowance(0.0)


# Sizes of parts and doors are few, and each is asked about by every candidate.
@lru_cache(4096)
def in_inches(mm: float) -> bool:
    """Tell whether a length is a whole number of sixty-fourths of an inch.

    Examples
    --------
    >>> in_inches(44.45), in_inches(44.5), in_inches(0.0)
    (True, False, True)
    """
    return abs(mm / _SIXTY_FOURTH_MM - round(mm / _SIXTY_FOURTH_MM)) * _SIXTY_FOURTH_MM < 1e-6


@lru_cache(4096)
def rounding_mm(mm: float) -> float:
    """Return half of the last digit of a length in millimetres; 0 for one in inches.

    Examples
    --------
    >>> rounding_mm(44.5), rounding_mm(44.0), rounding_mm(44.45)
    (0.05, 0.5, 0.0)
    """
    if in_inches(mm):
        return 0.0
    digits = len(f"{mm:.{_FINEST}f}".rstrip("0").partition(".")[2])
    return 0.0 if digits >= _FINEST else 0.5 * 10.0**-digits


def allowance(facts: Iterable[tuple[str, float | None, float]], made: Iterable[float | None]) -> Allowance:
    """Return what a sum of surveyed lengths may be off.

    Parameters
    ----------
    facts : iterable of (str, float or None, float)
        ``entity.attribute``, its value [mm], and the factor with which it enters the sum.
    made : iterable of float or None
        Sizes of the parts against which the sum is held [mm]: only where all are of inches is a length in millimetres
        one of the other system.
    """
    for size in made:
        if size is not None and not in_inches(size):
            return _NO_ALLOWANCE
    carried = [
        (fact, half, abs(factor)) for fact, value, factor in facts if value is not None and (half := rounding_mm(value))
    ]
    if not carried:
        return _NO_ALLOWANCE
    return Allowance(
        added(half * factor for _, half, factor in carried), tuple((fact, half) for fact, half, _ in carried)
    )


Axes = tuple[Allowance, Allowance, Allowance]
"""What rounding leaves open across the leaf, up it, and through it."""
_ALONG: Final = ((0,), (1,), (2,), (0, 1, 2))


def half_unit(facts: Iterable[tuple[str, float | None, float]], made: Iterable[float | None]) -> Allowance:
    """Return by how much a distance may be off for the rounding of the one fact that counts most, as `allowance`.

    What stands where is told by many facts: that all of them were rounded the one way is nothing to drill by.
    """
    carried = allowance(facts, made)
    most = max((half for _, half in carried.facts), default=0.0)
    return Allowance(min(carried.mm, most), carried.facts)


def apart_allowances(a: Carried, b: Carried, made: Iterable[float | None]) -> Axes:
    """Return by how much two things may stand farther apart than the survey says, on each axis."""
    sizes = tuple(made)
    return (
        half_unit(between(a.across, b.across), sizes),
        half_unit(between(a.up, b.up), sizes),
        half_unit(between(a.deep, b.deep), sizes),
    )


def least_excuse(axes: Axes, keeps: Callable[[tuple[float, float, float]], bool]) -> Allowance | None:
    """Return the roundings by which a distance is kept, of one axis where one is enough; None where none is.

    Parameters
    ----------
    axes : (Allowance, Allowance, Allowance)
        What rounding leaves open on each axis.
    keeps : callable
        Tells whether the distance is kept with so much more room on each axis.
    """
    for along in _ALONG:
        x, y, z = (axes[each] if each in along else _NO_ALLOWANCE for each in range(3))
        if (x.mm or y.mm or z.mm) and keeps((x.mm, y.mm, z.mm)):
            return Allowance(x.mm + y.mm + z.mm, (*x.facts, *y.facts, *z.facts))
    return None


def by_rounding(given: OpeningInput, allowed: Allowance, off_mm: float, about: str) -> Verdict:
    """Say that something is right only by the rounding of the survey, and what is to be measured how exactly."""
    # One digit more than was written tells it.
    told = "; ".join(f"{label_of(fact)}: measure this to {half / 5:g} mm, or in inches" for fact, half in allowed.facts)
    return Verdict(
        f"It is right only by the rounding of what the survey has in millimetres: {off_mm:.3f} mm off, and "
        f"{allowed.mm:.3f} mm is what the rounding leaves open ({length(given, off_mm)}).",
        f"{told}.",
        values={"off_mm": off_mm, "rounding_mm": allowed.mm},
        about=about,
        severity="note",
    )
