"""Units, results and refusals."""

import dataclasses

import pytest

from hwsched.quantities import BARE_UNITS, LengthError, One, Pair, PairSize, QuantityError, Range, ReadingError, Size
from hwsched.quantities.readings import MM_PER_UNIT


def test_units() -> None:
    # International yard and pound agreement, 1959: 1 in = 25.4 mm exactly.
    assert MM_PER_UNIT == {"in": 25.4, "ft": 304.8, "mm": 1.0, "cm": 10.0, "m": 1000.0}
    assert set(BARE_UNITS) == set(MM_PER_UNIT)


def test_results_are_frozen() -> None:
    for result in (One(1.0), Size(1.0, 2.0), Pair(1.0), PairSize(1.0, 2.0), Range(1.0, 2.0)):
        with pytest.raises(dataclasses.FrozenInstanceError):
            result.assumed_unit = "mm"  # type: ignore[misc]


def test_refusals_carry_what_was_read_why_and_what_to_write() -> None:
    for kind in (LengthError, QuantityError):
        error = kind("“6/8”", "can be two things", "write one")
        assert isinstance(error, ReadingError)
        assert error.message == str(error) == "“6/8”: can be two things; write one"
        assert kind("x", "is none").message == "x: is none"
