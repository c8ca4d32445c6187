"""Which unit a number takes, and that the reading says so."""

from typing import Any

import pytest

from hwsched.quantities import LengthError, One, Size, read_length


@pytest.mark.parametrize(
    ("text", "unit", "assumed"),
    [
        ("70", "mm", "mm"), ("70", "in", "in"), ("70", "ft", "ft"), ("70", "cm", "cm"), ("70", "m", "m"),
        ("70 mm", "in", None),
        ("1 3/4", None, "in"), ("1 3/4", "mm", "in"), ("1 3/4", "m", "in"), ("1 3/4", "ft", "ft"),
        ("5/16", "mm", "in"),
        ("3068", None, "ft-in"), ("3068", "in", "ft-in"), ("3068", "ft", "ft-in"), ("3068", "mm", "mm"),
        ("3068", "cm", "cm"),
        ("36 x 80", "in", "in"), ("36 x 80 in", "mm", None), ("3-0 x 6-8", "mm", "ft-in"), ("34-48", "in", "in"),
        ("2(915)", "mm", "mm"), ("3'-0\" x 80", "in", "in"), ("~3", "m", "m"),
    ],
)  # fmt: skip
def test_assumed_unit_is_said(text: str, unit: Any, assumed: str | None) -> None:
    assert read_length(text, unit).assumed_unit == assumed


def test_a_size_in_digits_that_is_a_height_too_is_asked_about_only_without_unit() -> None:
    assert read_length("2070", "mm") == One(2070.0, "mm")
    assert read_length("2070", "in") == Size(609.6, 2133.6, "ft-in")
    with pytest.raises(LengthError, match="2070 mm"):
        read_length("2070", None)


def test_fraction_and_millimetres_do_not_share_a_unit() -> None:
    with pytest.raises(LengthError, match="mixes fractions and mm"):
        read_length("3/4 x 20 mm", None)
