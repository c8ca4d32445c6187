"""Sums from the first number to the last, as binary fractions are rounded: the IEEE 754 additions one by one."""

from functools import reduce
from operator import add

from hypothesis import given
from hypothesis import strategies as st

from hwsched.quantities.adding import added


def test_what_rounding_drops_stays_dropped() -> None:
    """1 is lost beside 1e16 in each addition; from Python 3.12 on its own sum would bring it back."""
    assert added([1e16, 1.0, -1e16]) == 0.0
    assert added([0.1] * 10) == 0.9999999999999999
    assert added(iter(())) == 0.0


@given(st.lists(st.floats(-1e9, 1e9)))
def test_each_addition_is_that_of_two_numbers(numbers: list[float]) -> None:
    assert added(numbers) == reduce(add, numbers, 0.0)
