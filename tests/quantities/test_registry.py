"""Conversion against defined values, and refusal of what measures something else."""

import pytest

from hwsched.quantities.registry import OtherDimensionError, UnknownUnitError, conversion


@pytest.mark.parametrize(
    ("unit", "target", "factor", "offset"),
    [
        ("pound", "kilogram", 0.45359237, 0.0),  # yard and pound agreement, 1959, exact
        ("pound_force", "newton", 4.4482216152605, 0.0),  # the same with standard gravity 9.80665 m/s², exact
        ("degree_Fahrenheit", "degree_Celsius", 5 / 9, -160 / 9),  # definition
        ("kelvin", "degree_Celsius", 1.0, -273.15),  # SI brochure, 9th ed., 2.3.1
        ("ampere_hour", "coulomb", 3600.0, 0.0),
        ("year", "day", 365.25, 0.0),
    ],
)
def test_conversion(unit: str, target: str, factor: float, offset: float) -> None:
    assert conversion(unit, target) == pytest.approx((factor, offset), rel=1e-12)


@pytest.mark.parametrize(
    ("unit", "said"),
    [("mm", "a length"), ("kg", "a mass"), ("V", "a voltage"), ("mm^2", "an area"), ("bit/mm", "length")],
)
def test_other_dimension(unit: str, said: str) -> None:
    with pytest.raises(OtherDimensionError, match=said):
        conversion(unit, "ampere")


@pytest.mark.parametrize("unit", ["furlongish", "//", "*", "A^", "A-", "-"])
def test_unknown(unit: str) -> None:
    with pytest.raises(UnknownUnitError):
        conversion(unit, "ampere")
