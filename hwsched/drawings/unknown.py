"""What is drawn while a fact is missing or contradicts another: words, never a shape that may be wrong."""

import math
from typing import TypeGuard

from hwsched.language import phrase
from hwsched.rules.saying import label_said


def known(value: float | None) -> TypeGuard[float]:
    """Tell whether a number was surveyed and is one: None, NaN and infinity are not.

    Examples
    --------
    >>> known(12.5), known(None), known(float("nan"))
    (True, False, False)
    """
    return value is not None and math.isfinite(value)


def positive(value: float | None) -> TypeGuard[float]:
    """Tell whether a number is known and can be a size."""
    return known(value) and value > 0


def size_problem(fact: str, value: float | None) -> str | None:
    """Say what is wrong with a size: missing, or no size at all; None when it can be drawn.

    Examples
    --------
    >>> size_problem("leaf.width_mm", None)
    'unknown: needs leaf: Leaf width'
    >>> size_problem("leaf.width_mm", -3.0)
    'leaf: Leaf width of -3 mm is no size'
    """
    if not known(value):
        return phrase("unknown: needs {label_of}", label_of=label_said(fact))
    return (
        None if value > 0 else phrase("{label_of} of {value:g} mm is no size", label_of=label_said(fact), value=value)
    )
