"""Dashes: ranges, and what is asked about. Values stand in test_lengths."""

import pytest

from hwsched.quantities.ranges import read_range
from hwsched.quantities.readings import Range, Refusal


@pytest.mark.parametrize("text", ["36", "-", "to", "34-", "-48", "a to b", "1-2-3"])
def test_no_range(text: str) -> None:
    assert read_range(text, "in") is None


def test_equal_ends_are_a_range() -> None:
    assert read_range('36" to 36"', None) == Range(914.4, 914.4)


@pytest.mark.parametrize(
    ("text", "said"), [("3-4", "a range from 3 to 4"), ("3-2", "is perhaps 3'-2\""), ("8-11", "8'-11\"")]
)
def test_feet_and_inches_or_a_range(text: str, said: str) -> None:
    for unit in (None, "in", "mm"):
        with pytest.raises(Refusal, match=said):
            read_range(text, unit)
