"""What a column of lengths says about its single values: a digit lost or doubled, or another unit.

Only a suspicion is raised here; a value is never changed.
"""

from collections.abc import Sequence
from math import isfinite, log10
from typing import Final

_FEWEST: Final = 3
"""With fewer values there is no column to differ from."""
_LEAST_FACTOR: Final = 4.0
"""A lost or doubled digit and every mix-up of units is a factor of 10 or more; doors of one survey differ by less."""
_SPREADS: Final = 3.5
_SIGMA_OF_MAD: Final = 1.4826
"""Standard deviation of a normal distribution in median absolute deviations."""


def suspicious_in_column(values_mm: Sequence[float | None]) -> tuple[int, ...]:
    """Find lengths that stand apart from their column, as 94 does among 915, 762 and 940.

    Parameters
    ----------
    values_mm : sequence of float or None
        The column [mm] in its order; None and what is not finite is passed over.

    Returns
    -------
    tuple of int
        Indices of the values to be asked about.

    Notes
    -----
    In logarithms, since mistakes of typing are factors: a value is suspected when it lies more than 3.5 standard
    deviations (estimated from the median absolute deviation) and more than a factor of 4 from the median. Basis: common
    practice of robust statistics; the factor is our own choice. A zero in a column of lengths is suspected too.

    Examples
    --------
    >>> suspicious_in_column([915, 762, 940, 94])
    (3,)
    """
    known = [(i, value) for i, value in enumerate(values_mm) if value is not None and isfinite(value)]
    # By their logarithms: a lost digit and a mixed-up unit are factors, and stand equally far off above and below.
    sizes = [(i, log10(value)) for i, value in known if value > 0]
    if len(sizes) < _FEWEST:
        return ()
    middle = _median([size for _, size in sizes])
    # Medians, because the very values that are looked for would pull mean and deviation after them.
    spread = _median([abs(size - middle) for _, size in sizes]) * _SIGMA_OF_MAD
    # In a column of equal doors the spread is nothing, and every other door would stand out.
    limit = max(log10(_LEAST_FACTOR), _SPREADS * spread)
    found = [i for i, size in sizes if abs(size - middle) > limit]
    found += [i for i, value in known if value <= 0]
    return tuple(sorted(found))


def _median(numbers: list[float]) -> float:
    # Not from `statistics`: its import takes as long as that of all the rest of this package.
    ordered = sorted(numbers)
    half = len(ordered) // 2
    return ordered[half] if len(ordered) % 2 else (ordered[half - 1] + ordered[half]) / 2.0
