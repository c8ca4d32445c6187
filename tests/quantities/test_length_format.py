"""What is written reads back."""

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hwsched.quantities import format_feet_inches, format_length, parse_length

INCH = 25.4


@pytest.mark.parametrize(
    ("mm", "style", "text"),
    [
        (914.4, "fraction", '36"'), (44.45, "fraction", '1 3/4"'), (9.525, "fraction", '3/8"'),
        (0.0, "fraction", '0"'),
        ((15 + 63.9 / 64) * INCH, "fraction", '16"'), ((15 + 63.4 / 64) * INCH, "fraction", '15 63/64"'),
        (0.19, "fraction", '0"'), (-0.1, "fraction", '0"'), (-44.45, "fraction", '-1 3/4"'),
        (INCH / 64, "fraction", '1/64"'),
        (44.45, "decimal-inch", '1.75"'), (914.4, "decimal-inch", '36"'), (1.1176, "decimal-inch", '0.044"'),
        (9.525, "decimal-inch", '0.375"'), (-25.4, "decimal-inch", '-1"'), (-1e-9, "decimal-inch", '0"'),
        (915.0, "mm", "915 mm"), (44.45, "mm", "44.5 mm"), (44.44, "mm", "44.4 mm"),
        (876.0000000000001, "mm", "876 mm"),
        (0.04, "mm", "0 mm"), (-0.04, "mm", "0 mm"), (2100.0, "mm", "2100 mm"), (1e6, "mm", "1000000 mm"),
        (-3.25, "mm", "-3.3 mm"),
    ],
)  # fmt: skip
def test_written(mm: float, style: Any, text: str) -> None:
    assert format_length(mm, style) == text


def test_coarser_fractions_for_heights_of_hardware() -> None:
    assert format_length(40.3125 * INCH, "fraction", 16) == '40 5/16"'
    assert format_length((40 + 21 / 64) * INCH, "fraction", 16) == '40 5/16"'
    assert format_length((40 + 31 / 32) * INCH, "fraction", 16) == '41"'
    assert format_length(1.4 * INCH, "fraction", 1) == '1"'


def test_without_unit() -> None:
    assert [format_length(44.45, style, with_unit=False) for style in ("fraction", "decimal-inch", "mm")] == [
        "1 3/4",
        "1.75",
        "44.5",
    ]


@pytest.mark.parametrize(
    ("mm", "text"),
    [
        (914.4, "3'-0\""), (2044.7, "6'-8 1/2\""), (76.2, "0'-3\""), (927.1, "3'-0 1/2\""), (0.0, "0'-0\""),
        ((35 + 63.9 / 64) * INCH, "3'-0\""), (-914.4, "-3'-0\""), (2651.125, "8'-8 3/8\""),
    ],
)  # fmt: skip
def test_feet_and_inches(mm: float, text: str) -> None:
    assert format_feet_inches(mm) == text


def test_a_reckoned_length_is_the_number_that_it_is_typed_as() -> None:
    """69.85 less 40 is 29.849999999999994 in binary: beside a typed 29.85 it would be another number on the sheet."""
    for style in ("mm", "decimal-inch", "fraction"):
        assert format_length(69.85 - 40, style) == format_length(29.85, style)
    assert format_length(69.85 - 40, "mm") == "29.9 mm"
    # 5/64 and a half of it in sixty-fourths.
    assert format_length((5.5 / 64 * 25.4 + 300.1) - 300.1, "fraction") == '3/32"'


def test_refused() -> None:
    for denominator in (0, 3, 10, 128, -16):
        with pytest.raises(ValueError, match="denominator"):
            format_length(1.0, "fraction", denominator)
    for mm in (math.nan, math.inf, -math.inf):
        for write in (lambda mm: format_length(mm, "fraction"), lambda mm: format_length(mm, "mm"), format_feet_inches):
            with pytest.raises(ValueError, match="finite"):
                write(mm)


LENGTHS = st.floats(0, 1e5)


@given(LENGTHS, st.sampled_from([1, 2, 4, 8, 16, 32, 64]))
def test_fractions_read_back_to_half_a_step(mm: float, denominator: int) -> None:
    half = INCH / denominator / 2 + 1e-6
    assert abs(parse_length(format_length(mm, "fraction", denominator), None) - mm) <= half
    assert abs(parse_length(format_feet_inches(mm, denominator), None) - mm) <= half


@given(LENGTHS)
def test_decimals_read_back_to_half_a_step(mm: float) -> None:
    assert abs(parse_length(format_length(mm, "decimal-inch"), None) - mm) <= 0.00005 * INCH + 1e-6
    assert abs(parse_length(format_length(mm, "mm"), None) - mm) <= 0.05 + 1e-6


@given(st.integers(0, 64 * 12 * 20))
def test_what_was_read_is_written_the_same_again(ticks: int) -> None:
    text = format_feet_inches(ticks * INCH / 64)
    assert format_feet_inches(parse_length(text, None)) == text
