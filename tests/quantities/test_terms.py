"""One length: its parts, its unit, its refusals."""

import pytest

from hwsched.quantities.readings import Refusal
from hwsched.quantities.terms import check_fraction, is_rule_fraction, read_term, to_mm


@pytest.mark.parametrize(
    ("text", "value", "unit", "shape"),
    [
        ("36", 36.0, None, "number"),
        ('36"', 36.0, "in", "number"),
        ("3 1/2'", 3.5, "ft", "mixed"),
        ("1-3/4", 1.75, None, "mixed"),
        ("3/8", 0.375, None, "fraction"),
        ("13/16", 0.8125, None, "fraction"),
        ("1'5/8\"", 12.625, "in", "number"),
        ("2 100", 2100.0, None, "spaced"),
        ("2 100 mm", 2100.0, "mm", "spaced"),
        ("2 metres", 2.0, "m", "number"),
        ("3 millimeters", 3.0, "mm", "number"),
        ("4 centimetres", 4.0, "cm", "number"),
    ],
)
def test_read(text: str, value: float, unit: str | None, shape: str) -> None:
    term = read_term(text)
    assert term is not None
    assert (term.value, term.unit, term.shape) == (value, unit, shape)


@pytest.mark.parametrize(
    "text", ["", "x", "36 yd", '3"6"', "3'6'", "1 1/2 1/2", "30 68", "3-4", "3..35", "1`", "m", "2 m 5"]
)
def test_something_else(text: str) -> None:
    assert read_term(text) is None


def test_feet_with_inches_are_no_unit_to_share() -> None:
    compound, plain = read_term("3'-0\""), read_term("3'")
    assert compound is not None
    assert compound.compound
    assert plain is not None
    assert not plain.compound


def test_likely_unit_decides_what_a_comma_means() -> None:
    term = read_term("2,100", "mm")
    assert term is not None
    assert term.value == 2100.0
    with pytest.raises(Refusal):
        read_term("2,100")


def test_fractions_of_an_inch_rule() -> None:
    assert all(is_rule_fraction(top, bottom) for top, bottom in [(3, 4), (1, 64), (1, 2), (31, 32)])
    others = [(6, 8), (4, 3), (1, 3), (1, 128), (0, 4), (3, 0), (4, 4)]
    assert not any(is_rule_fraction(top, bottom) for top, bottom in others)


def test_check_fraction() -> None:
    check_fraction(1, 128)
    check_fraction(6, 8)
    for top, bottom, said in [
        (1, 0, "no fraction"),
        (1, 129, "finer"),
        (4, 4, "can be 1"),
        (23, 4, "2 3/4"),
        (20, 4, "can be 5"),
    ]:
        with pytest.raises(Refusal, match=said):
            check_fraction(top, bottom)


def test_to_mm() -> None:
    assert [to_mm(1.0, unit) for unit in ("in", "ft", "mm", "cm", "m")] == [25.4, 304.8, 1.0, 10.0, 1000.0]
    assert to_mm(876.0000000000001, "mm") == 876.0
    with pytest.raises(Refusal):
        to_mm(1e308, "m")
