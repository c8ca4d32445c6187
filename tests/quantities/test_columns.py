"""Values that stand apart from their column."""

import math
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hwsched.quantities import suspicious_in_column


@pytest.mark.parametrize(
    ("column", "found"),
    [
        ([915, 762, 940, 94], (3,)),  # the case of the collected list: a digit of 940 was lost
        ([915, 762, 940, 9150], (3,)),  # a digit doubled
        ([915, 762, 940, 36], (3,)),  # inches among millimetres
        ([36, 32, 34, 36, 915], (4,)),
        ([915, None, 762, math.nan, 940, 94], (5,)),
        ([915, 762, 940, 0], (3,)),
        ([915, 762, 940, 1830, 610, 305], ()),  # a pair's opening, a narrow leaf and a sidelight are no mistakes
        ([915, 915, 915, 915, 94], (4,)),
        ([915, 94], ()),
        ([], ()),
        ([3, 12.7, 25.4, 54, 6.35], ()),  # holes differ by more than doors
    ],
)
def test_columns(column: list[float | None], found: tuple[int, ...]) -> None:
    assert suspicious_in_column(column) == found


def test_every_lost_digit_in_a_large_column_and_nothing_else() -> None:
    chance = random.Random(4)
    column: list[float | None] = [chance.choice([610, 762, 813, 864, 915, 1015, 1067, 1220]) for _ in range(10_000)]
    wrong = sorted(chance.sample(range(10_000), 50))
    for i in wrong:
        column[i] = (column[i] or 0) // 10
    assert suspicious_in_column(column) == tuple(wrong)


@given(st.lists(st.floats(400, 1500), min_size=3, max_size=40), st.floats(0.01, 100))
def test_the_unit_of_a_column_does_not_matter(column: list[float], factor: float) -> None:
    assert suspicious_in_column(column) == suspicious_in_column([value * factor for value in column]) == ()
