"""Quantities read and written."""

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hwsched.quantities import (
    QuantityError,
    Voltage,
    convert_quantity,
    format_quantity,
    parse_quantity,
    parse_voltage,
)


@pytest.mark.parametrize(
    ("text", "dimension", "value"),
    [
        ("350 mA", "current", 0.35), ("350mA", "current", 0.35), ("0,35 A", "current", 0.35),
        ("50 µA", "current", 5e-5),
        ("50 uA", "current", 5e-5), ("50 \u03bcA", "current", 5e-5), ("500 MA", "current", 0.5),
        ("0.5 A DC", "current", 0.5),
        ("12 V", "voltage", 12.0), ("12VDC", "voltage", 12.0), ("12 V DC", "voltage", 12.0),
        ("24 Vac", "voltage", 24.0),
        ("DC 12 V", "voltage", 12.0), ("24 V (AC)", "voltage", 24.0), ("-5 V", "voltage", -5.0),
        ("24 volts", "voltage", 24.0),
        ("2600 mAh", "charge", 2.6), ("7 Ah", "charge", 7.0), ("3600 C", "charge", 1.0), ("3 A·h", "charge", 3.0),
        ("3 A*h", "charge", 3.0),
        ("96 VA", "power", 96.0), ("1.5 kW", "power", 1500.0), ("4 kΩ", "resistance", 4000.0),
        ("24 ohms", "resistance", 24.0),
        ("24 \u2126", "resistance", 24.0), ("3 MΩ", "resistance", 3e6), ("3 mΩ", "resistance", 3e-3),
        ("20 °C", "temperature", 20.0), ("-10°C", "temperature", -10.0), ("−10 C", "temperature", -10.0),
        ("68 °F", "temperature", 20.0),
        ("293.15 K", "temperature", 20.0), ("20 deg C", "temperature", 20.0), ("20 ℃", "temperature", 20.0),
        ("5 s", "time", 5.0), ("4 min", "time", 240.0), ("24 h", "time", 86400.0),
        ("2 years", "time", 63115200.0), ("500 ms", "time", 0.5),
        ("45 kg", "mass", 45.0), ("100 lb", "mass", 45.359237), ("50 N", "force", 50.0),
        ("5 lbf", "force", 22.2411080763),
        ("1200 lb", "force", 5337.86593831), ("45°", "angle", 45.0), ("10 degrees", "angle", 10.0),
        ("1e2 mA", "current", 0.1),
    ],
)  # fmt: skip
def test_read(text: str, dimension: Any, value: float) -> None:
    assert parse_quantity(text, dimension, None) == pytest.approx(value, rel=1e-11)


def test_numbers_take_the_unit_that_is_given() -> None:
    assert parse_quantity(350, "current", "mA") == 0.35
    assert parse_quantity("350", "current", "mA") == 0.35
    assert parse_quantity(12.0, "voltage", "V") == 12.0
    assert parse_quantity("350 mA", "current", "A") == 0.35
    for value in (350, "350"):
        with pytest.raises(QuantityError, match="no unit"):
            parse_quantity(value, "current", None)


# What is refused names what was read and what is accepted.
@pytest.mark.parametrize(
    ("value", "dimension", "named"),
    [
        ("12 mm", "current", ["12 mm", "a length", "current is wanted", "mA"]), ("5 m", "time", ["a length"]),
        ("3 A", "charge", ["a current", "mAh"]), ("5 kg", "force", ["a mass", "lbf"]),
        ("12 V", "angle", ["V", "deg"]),
        ("50 %", "angle", ["%"]), ("3 counts", "angle", ["counts"]), ("10 foo", "mass", ["foo", "kg"]),
        ("12/24 VDC", "voltage", ["more than one"]),
        ("12-24 V", "voltage", ["more than one"]), ("12 to 24 V", "voltage", ["more than one"]),
        ("1/2 W", "power", ["more than one"]),
        ("1,500 mA", "current", ["1.500", "1500"]), ("-3 A", "current", ["less than can be"]),
        ("-300 °C", "temperature", ["-273.15"]),
        ("abc", "current", ["abc"]), ("", "current", []), ("A", "current", []),
        ("1e999 A", "current", ["finite"]), ("1e308 kW", "power", ["beyond"]), ("9" * 99, "mass", []),
        ("2**9 A", "current", []), ("3 __import__", "mass", []), (True, "voltage", ["TRUE"]),
        (None, "mass", ["empty"]), (math.nan, "mass", ["finite"]),
        (math.inf, "mass", ["finite"]), (10**400, "mass", ["finite"]), ([1], "mass", []),
    ],
)  # fmt: skip
def test_refused(value: object, dimension: Any, named: list[str]) -> None:
    with pytest.raises(QuantityError) as refused:
        parse_quantity(value, dimension, "kg" if dimension == "mass" else None)
    for name in named:
        assert name.lower() in refused.value.message.lower()


@pytest.mark.parametrize(
    ("text", "voltage"),
    [
        ("12 V DC", Voltage(12.0, "DC")), ("12VDC", Voltage(12.0, "DC")), ("24 vac", Voltage(24.0, "AC")),
        ("DC 12 V", Voltage(12.0, "DC")),
        ("24 V AC/DC", Voltage(24.0, "AC/DC")), ("12 V", Voltage(12.0)), ("12", Voltage(12.0)),
        ("12 DC", Voltage(12.0, "DC")),
    ],
)  # fmt: skip
def test_voltage_with_its_kind(text: str, voltage: Voltage) -> None:
    assert parse_voltage(text, "V") == voltage


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (0.35, "A", "350 mA"), (5e-5, "A", "50 µA"), (2.5, "A", "2.5 A"), (0.99999, "A", "1 A"),
        (0.0, "A", "0 A"), (1e-9, "A", "0.001 µA"),
        (1500.0, "Ω", "1.5 kΩ"), (12.0, "V", "12 V"), (-0.5, "V", "-500 mV"), (2.6, "Ah", "2.6 Ah"),
        (45.0, "°", "45°"), (20.0, "°C", "20 °C"),
        (12345.678, "kg", "12346 kg"), (99.996, "kg", "100 kg"), (-0.0, "V", "0 V"), (0.25, "kg", "0.25 kg"),
        (1000.0, "s", "1000 s"),
    ],
)  # fmt: skip
def test_written(value: float, unit: str, text: str) -> None:
    assert format_quantity(value, unit) == text


def test_written_without_prefix_or_refused() -> None:
    assert format_quantity(0.35, "A", prefix=False) == "0.35 A"
    assert format_quantity(10 / 3, "V", digits=3) == "3.33 V"
    with pytest.raises(ValueError, match="finite"):
        format_quantity(math.nan, "A")


@given(
    st.floats(1e-6, 9e5),
    st.sampled_from([("A", "current"), ("V", "voltage"), ("Ω", "resistance"), ("W", "power"), ("Ah", "charge")]),
)
def test_what_is_written_reads_back(value: float, kind: tuple[str, Any]) -> None:
    unit, dimension = kind
    assert parse_quantity(format_quantity(value, unit), dimension, None) == pytest.approx(value, rel=6e-4)


@given(st.floats(-200, 200))
def test_converting_there_and_back(celsius: float) -> None:
    shown = convert_quantity(celsius, "temperature", "°F")
    assert parse_quantity(shown, "temperature", "°F") == pytest.approx(celsius, abs=1e-9)


def test_converting_into_something_else_is_refused() -> None:
    assert convert_quantity(1.0, "mass", "lb") == pytest.approx(2.20462262185)
    with pytest.raises(QuantityError, match="a length"):
        convert_quantity(1.0, "mass", "mm")


@given(
    st.text(alphabet="0123456789.,-/ mVAWkg°Ω²*^()~eDC%_\\", max_size=10), st.sampled_from(["current", "mass", "angle"])
)
def test_any_text_is_read_or_refused(text: str, dimension: Any) -> None:
    try:
        value = parse_quantity(text, dimension, None)
    except QuantityError:
        return
    assert math.isfinite(value)
