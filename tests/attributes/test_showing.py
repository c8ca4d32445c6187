"""What is shown is what was held, and reads back."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hwsched.attributes import Attribute, Choice, accepted_by, read_value, show_value, shown_unit
from hwsched.attributes.limits import within_limits

LENGTH = Attribute("backset_mm", "Backset", "length", "mm")
FORM = Attribute("form", "Form", "choice", choices=(Choice("mortise", "Mortise, threaded"),))


@pytest.mark.parametrize(
    ("attribute", "value", "style", "expected"),
    [
        (LENGTH, 69.85, "fraction", '2 3/4"'),
        (LENGTH, 69.85, "decimal-inch", '2.75"'),
        (LENGTH, 70.0, "mm", "70 mm"),
        (FORM, "mortise", "mm", "Mortise, threaded"),
        (FORM, "gone", "mm", "gone"),
        (Attribute("mark", "Mark"), "0012", "mm", "0012"),
        (Attribute("stair", "Stair", "flag"), True, "mm", "yes"),
        (Attribute("stair", "Stair", "flag"), False, "mm", "no"),
        (Attribute("a", "A", "number", "uA"), 45.0, "mm", "45 µA"),
        (Attribute("a", "A", "number", "degC"), -10.5, "mm", "-10.5 °C"),
        (Attribute("a", "A", "number", "share"), 0.85, "mm", "85 %"),
        (Attribute("a", "A", "number", "deg"), 30.0, "mm", "30°"),
        (Attribute("a", "A", "number"), 12.0, "mm", "12"),
        (Attribute("a", "A", "integer"), 4, "mm", "4"),
        (Attribute("a", "A", "date"), "2031-03-04", "mm", "2031-03-04"),
        (Attribute("list_price", "List price", "money"), Decimal("12.10"), "mm", "12.1"),
        (LENGTH, None, "mm", ""),
    ],
)
def test_show(attribute, value, style, expected):
    assert show_value(attribute, value, style) == expected


def test_the_unit_can_stand_in_the_heading():
    assert show_value(LENGTH, 69.85, "fraction", with_unit=False) == "2 3/4"
    assert show_value(Attribute("a", "A", "number", "V"), 12.0, with_unit=False) == "12"
    assert shown_unit(LENGTH, "fraction") == "in"
    assert shown_unit(LENGTH) == "mm"
    assert shown_unit(Attribute("a", "A", "number", "share")) == "%"


def test_unknown_is_said_as_the_caller_wants():
    assert show_value(LENGTH, None, unknown="not measured") == "not measured"


@given(
    st.integers(-(10**6), 10**6), st.sampled_from(["V", "A", "mA", "uA", "mAh", "Ah", "degC", "h", "s", "share", ""])
)
def test_a_shown_number_reads_back(thousandths, unit):
    value = thousandths / 1000
    if unit in ("A", "mA", "uA", "mAh", "Ah", "h", "s") or (unit == "degC" and value < -273):
        value = abs(value)
    attribute = Attribute("a", "A", "number", unit)
    assert read_value(attribute, show_value(attribute, value)).value == pytest.approx(value, rel=1e-9, abs=1e-12)


@given(st.floats(0, 5000), st.sampled_from(["fraction", "decimal-inch", "mm"]))
def test_a_shown_length_reads_back_to_half_a_step(mm, style):
    # Half of the last step shown: 1/64 in, 0.0001 in, 0.1 mm.
    step = {"fraction": 25.4 / 64, "decimal-inch": 0.00254, "mm": 0.1}[style]
    assert read_value(LENGTH, show_value(LENGTH, mm, style)).value == pytest.approx(mm, abs=step / 2 + 1e-6)


@pytest.mark.parametrize(
    ("attribute", "expected"),
    [
        (Attribute("a", "A", "length", "mm", low=25.4), 'at least 25.4 mm (1")'),
        (Attribute("a", "A", "number", "V", high=60), "a number [V], at most 60"),
        (Attribute("a", "A", "number", low=0, high=1), "a number from 0 to 1"),
        (Attribute("a", "A", "flag"), "yes or no"),
        (FORM, "Mortise, threaded"),
    ],
)
def test_what_is_accepted_is_said(attribute, expected):
    assert accepted_by(attribute).endswith(expected)


def test_limits_leave_room_for_the_last_digit_only():
    attribute = Attribute("a", "A", "length", "mm", low=0.3, high=25.4)
    assert within_limits(attribute, 0.1 + 0.2)
    assert within_limits(attribute, 25.400000000000002)
    assert not within_limits(attribute, 25.41)
    assert not within_limits(attribute, 0.29)
