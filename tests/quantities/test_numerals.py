"""Points, commas and exponents."""

import re

import pytest

from hwsched.quantities.numerals import NUMERAL, read_numeral
from hwsched.quantities.readings import Refusal


@pytest.mark.parametrize(
    ("token", "number"),
    [
        ("0762", 762.0),
        ("50.", 50.0),
        (".5", 0.5),
        (",5", 0.5),
        ("98,5", 98.5),
        ("0,915", 0.915),
        ("1000,500", 1000.5),
        ("1,234.5", 1234.5),
        ("1,234,567", 1234567.0),
        ("1.234,5", 1234.5),
        ("1.234.567", 1234567.0),
        ("1.750", 1.75),
        ("1e3", 1000.0),
        ("2.5e-1", 0.25),
    ],
)
def test_read(token: str, number: float) -> None:
    assert re.fullmatch(NUMERAL, token)
    assert read_numeral(token) == number


def test_three_digits_behind_a_comma() -> None:
    assert read_numeral("1,000", "thousands") == 1000.0
    assert read_numeral("1,000", "decimal") == 1.0
    with pytest.raises(Refusal, match=r"1\.000.*1000"):
        read_numeral("1,000", "ask")


@pytest.mark.parametrize("token", ["1,2,3", "1.2.3", "1,23.4", "1.23,4,5", "", ".", "1,000.000,0", "1,5e3"])
def test_refused(token: str) -> None:
    with pytest.raises(Refusal, match="make no number"):
        read_numeral(token)
