"""Masses, electrical values, temperatures, times, forces and angles: read from text or cells, and written for people.

Here belong reading and writing; spellings stand in `dimensions`, conversion in `registry`, lengths in `lengths`, wire
sizes in `gauge`. Values come back as floats in the unit that `DIMENSIONS` names: no quantity object leaves this floor.
"""

import re
from dataclasses import dataclass
from functools import lru_cache
from math import floor, isfinite, log10
from typing import Final, Literal

from hwsched.quantities.dimensions import DIMENSIONS, Dimension, DimensionFacts
from hwsched.quantities.numerals import NUMERAL, read_numeral
from hwsched.quantities.readings import QuantityError, Refusal
from hwsched.quantities.typography import plain_text

Supply = Literal["DC", "AC", "AC/DC"]
"""Kind of voltage or current that a text names."""

_LONGEST_TEXT = 60
_QUANTITY = re.compile(rf"(?:(?P<before>dc|ac) ?)?(?P<sign>[+-]? ?)(?P<number>{NUMERAL}) ?(?P<unit>.*)", re.IGNORECASE)
_SUPPLY = re.compile(r"(?P<unit>.*?)[ .(]*(?P<supply>ac ?/ ?dc|dc ?/ ?ac|dc|ac)\)?", re.IGNORECASE)
_WORD = r"[A-Za-zµ°Ω]{1,20}(?:\^?[23²³])?"
_UNIT_NAME = re.compile(rf"{_WORD}(?: ?[·*/] ?{_WORD}){{0,3}}")
_SECOND_VALUE = re.compile(r"(?:-|/|to|\.\.+)? ?[0-9]")
_PREFIXES: Final = ((1e3, "k"), (1.0, ""), (1e-3, "m"), (1e-6, "µ"))
_PREFIXED: Final = ("V", "A", "Ah", "W", "Ω")


@dataclass(frozen=True, slots=True)
class Voltage:
    """A voltage and, where the text says it, whether it is direct or alternating."""

    volts: float
    supply: Supply | None = None


def parse_quantity(value: object, dimension: Dimension, bare_unit: str | None) -> float:
    """Read a quantity of one kind from text or a cell.

    Parameters
    ----------
    value : object
        Text such as ``350 mA``, ``12 VDC``, ``-10 °C``, or a number.
    dimension : Dimension
        What is wanted.
    bare_unit : str or None
        Unit of a number that carries none; None refuses such a number.

    Returns
    -------
    float
        Value in the unit of `DIMENSIONS`: kg, V, A, Ah, W, Ω, °C, s, N, °.

    Raises
    ------
    QuantityError
        Where it is no number with unit, or the unit measures something else; the message names what was read and what
        is accepted.

    Examples
    --------
    >>> parse_quantity("350 mA", "current", None), parse_quantity("12 V DC", "voltage", None)
    (0.35, 12.0)
    >>> parse_quantity(2600, "charge", "mAh")
    2.6
    """
    return _read(value, dimension, bare_unit)[0]


def parse_voltage(value: object, bare_unit: str | None) -> Voltage:
    """Read a voltage together with DC or AC, as in ``24 VAC``.

    Parameters
    ----------
    value : object
        Text or a number.
    bare_unit : str or None
        Unit of a number that carries none; None refuses such a number.

    Returns
    -------
    Voltage
        Volts, and the kind of supply where it is said.

    Raises
    ------
    QuantityError
        As `parse_quantity`.

    Examples
    --------
    >>> parse_voltage("24VAC", None)
    Voltage(volts=24.0, supply='AC')
    """
    return Voltage(*_read(value, "voltage", bare_unit))


def _read(value: object, dimension: Dimension, bare_unit: str | None) -> tuple[float, Supply | None]:
    facts = DIMENSIONS[dimension]
    if isinstance(value, str):
        return _read_text(value, dimension, bare_unit)
    shown = "empty" if value is None else str(value)[:_LONGEST_TEXT]
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise QuantityError(shown, f"is no {dimension}", _accepted(facts))
    try:
        number = float(value)
        return _in_unit(number, bare_unit, dimension), None
    except Refusal as refusal:
        raise QuantityError(shown, refusal.problem, refusal.suggestion) from None
    except OverflowError:
        raise QuantityError(shown, "is no finite number") from None


@lru_cache(maxsize=16384)
def _read_text(text: str, dimension: Dimension, bare_unit: str | None) -> tuple[float, Supply | None]:
    facts = DIMENSIONS[dimension]
    shown = f"“{text[:_LONGEST_TEXT]}”"
    plain = plain_text(text) if len(text) <= _LONGEST_TEXT else ""
    match = _QUANTITY.fullmatch(plain)
    if match is None:
        raise QuantityError(shown, f"is no {dimension}", _accepted(facts))
    unit, supply = match["unit"], match["before"]
    if dimension in ("voltage", "current") and (named := _SUPPLY.fullmatch(unit)):
        unit, supply = named["unit"], named["supply"]
    # DC in front of anything but a voltage or current says nothing of it.
    elif supply:
        supply = supply if dimension in ("voltage", "current") else None
    try:
        # 12-24 V is a range: its first number alone would be taken for the voltage.
        if _SECOND_VALUE.match(unit):
            raise Refusal("holds more than one value", f"write one, such as {facts.example}")
        number = read_numeral(match["number"].lower())
        number = -number if "-" in match["sign"] else number
        return _in_unit(number, unit or bare_unit, dimension), _supply(supply)
    except Refusal as refusal:
        raise QuantityError(shown, refusal.problem, refusal.suggestion) from None


def _supply(text: str | None) -> Supply | None:
    if not text:
        return None
    if "/" in text:
        return "AC/DC"
    return "DC" if text.lower() == "dc" else "AC"


def _in_unit(number: float, unit: str | None, dimension: Dimension) -> float:
    facts = DIMENSIONS[dimension]
    if not isfinite(number):
        raise Refusal("is no finite number")
    if unit is None:
        raise Refusal(f"{number:g} has no unit, and none is given for it", _accepted(facts))
    factor, offset = _conversion(unit, dimension)
    result = float(f"{number * factor + offset:.12g}")  # conversion leaves noise behind the twelfth digit
    if not isfinite(result):
        raise Refusal("the number is beyond all measure")
    if facts.least is not None and result < facts.least:
        raise Refusal(f"{number:g} {unit} is less than can be", f"the least is {facts.least:g} {facts.unit}")
    return result


def _conversion(unit: str, dimension: Dimension) -> tuple[float, float]:
    """Factor and offset into the program's unit; what is in that unit already needs no registry."""
    facts = DIMENSIONS[dimension]
    name = facts.spellings.get(unit.strip().lower())
    if name == facts.registry_unit:
        return 1.0, 0.0
    # Loading pint and building its registry takes 0.27 s (measured), against 0.04 s for importing all of this package;
    # most starts of the command line never convert a unit.
    from hwsched.quantities.registry import OtherDimensionError, UnknownUnitError, conversion  # noqa: PLC0415

    article = "an" if dimension[0] in "aeiou" else "a"
    try:
        if name is None and not _UNIT_NAME.fullmatch(unit):
            raise UnknownUnitError(unit)
        # The registry takes an angle for a plain number, so that any unit would pass for one.
        if name is None and facts.only_listed:
            raise UnknownUnitError(unit)
        return conversion(name or unit, facts.registry_unit)
    except UnknownUnitError:
        raise Refusal(f"{unit} is not known as a unit of {dimension}", _accepted(facts)) from None
    except OtherDimensionError as other:
        raise Refusal(f"{unit} measures {other}, and {article} {dimension} is wanted", _accepted(facts)) from None


def _accepted(facts: DimensionFacts) -> str:
    return f"accepted are {facts.accepted}, such as {facts.example}"


def format_quantity(value: float, unit: str, *, prefix: bool = True, digits: int = 4) -> str:
    """Write a quantity for people.

    Parameters
    ----------
    value : float
        Number in `unit`.
    unit : str
        As it is to stand, such as ``A``, ``kg``, ``°C``.
    prefix : bool
        Whether V, A, Ah, W and Ω take milli, micro or kilo where that reads better.
    digits : int
        Significant digits; whole digits are never rounded away.

    Returns
    -------
    str
        Number and unit, without zeros that say nothing.

    Raises
    ------
    ValueError
        Where the value is not finite.

    Examples
    --------
    >>> format_quantity(0.35, "A"), format_quantity(12.0, "V"), format_quantity(45.0, "°")
    ('350 mA', '12 V', '45°')
    """
    if not isfinite(value):
        raise ValueError(f"no finite quantity: {value}")
    shown = ""
    if prefix and unit in _PREFIXED and value:
        size = float(f"{abs(value):.{digits - 1}e}")  # rounded first: 0.99999 A is 1 A, not 1000 mA
        scale, shown = next(((s, p) for s, p in _PREFIXES if size >= s), _PREFIXES[-1])
        value = value / scale
    space = "" if unit == "°" else " "
    return f"{_significant(value, digits)}{space}{shown}{unit}"


def _significant(value: float, digits: int) -> str:
    if not value:
        return "0"
    decimals = max(0, digits - 1 - floor(log10(abs(value))))
    text = f"{value:.{decimals}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text


def convert_quantity(value: float, dimension: Dimension, unit: str) -> float:
    """Turn a value in the program's unit into the unit that a project shows, such as kg into lb.

    Parameters
    ----------
    value : float
        Value in the unit of `DIMENSIONS`.
    dimension : Dimension
        What it measures.
    unit : str
        Unit to show.

    Returns
    -------
    float
        The number in that unit.

    Raises
    ------
    QuantityError
        Where the unit measures something else.

    Examples
    --------
    >>> round(convert_quantity(20.0, "temperature", "°F"), 6)
    68.0
    """
    try:
        factor, offset = _conversion(unit, dimension)
    except Refusal as refusal:
        raise QuantityError(unit, refusal.problem, refusal.suggestion) from None
    # Twelve digits, as in reading: a value that is shown and typed again must come back as itself.
    return float(f"{(value - offset) / factor:.12g}")
