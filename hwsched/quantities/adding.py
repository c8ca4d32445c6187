"""Sums of fractions that are the same on every interpreter.

From 3.12 on Python's own ``sum`` carries along what rounding drops: its last digit may be another one than before, and
a project of an office with two interpreters would have two sheets of one type, and packets that are old on one of them.
"""

from collections.abc import Iterable


def added(numbers: Iterable[float]) -> float:
    """Return the sum from the first number to the last, each rounded as binary fractions are.

    Examples
    --------
    >>> added([0.1] * 10), added([])
    (0.9999999999999999, 0.0)
    """
    total = 0.0
    for number in numbers:
        total += number
    return total
