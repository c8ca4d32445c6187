"""The door trade's digits without marks. Basis: common practice."""

import pytest

from hwsched.quantities.shorthand import is_millimetres_too, side_in_digits, size_in_digits, size_with_slash


@pytest.mark.parametrize(
    ("digits", "width_in", "height_in"),
    [("3068", 36, 80), ("2868", 32, 80), ("3070", 36, 84), ("21068", 34, 80), ("30610", 36, 82)],
)
def test_size(digits: str, width_in: float, height_in: float) -> None:
    sides = size_in_digits(digits)
    assert sides is not None
    assert [side.total_inches for side in sides] == [width_in, height_in]


@pytest.mark.parametrize("digits", ["915", "1015", "2032", "2134", "2790", "3069", "1068", "0668", "306", "30688", ""])
def test_numbers_that_are_no_size(digits: str) -> None:
    assert size_in_digits(digits) is None


def test_sizes_that_are_heights_in_millimetres_too() -> None:
    assert [d for d in ("2070", "2080", "2470", "2068", "2870", "3070", "21070") if is_millimetres_too(d)] == [
        "2070",
        "2080",
        "2470",
    ]


def test_slash_between_two_sides() -> None:
    sides = size_with_slash("30/68")
    assert sides is not None
    assert [str(side) for side in sides] == ["3'-0\"", "6'-8\""]
    assert size_with_slash("6/8") is None


@pytest.mark.parametrize(
    ("text", "inches", "fraction_too"),
    [("3-0", 36.0, False), ("2/8", 32.0, False), ("3/4", 40.0, True), ("2-10", 34.0, False), ("3-0 1/2", 36.5, False)],
)
def test_one_side(text: str, inches: float, fraction_too: bool) -> None:
    side = side_in_digits(text)
    assert side is not None
    assert (side.total_inches, side.is_fraction_too) == (inches, fraction_too)


@pytest.mark.parametrize("text", ["34-48", "3-12", "13-0", "3", "2/8 1/2", "3-0 3/2", "3⁄4", ""])
def test_no_side(text: str) -> None:
    assert side_in_digits(text) is None
