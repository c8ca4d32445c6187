"""How lengths, numbers and integers are read, with and without a unit.

Here belongs what has a size. Words, choices, yes-or-no and dates stand in `values`.
"""

import datetime as dt
import re
from collections.abc import Callable
from decimal import Decimal
from math import isfinite
from typing import Final, NoReturn, cast

from hwsched.attributes.attribute import Attribute, Unit
from hwsched.attributes.cell_error import CellError
from hwsched.attributes.emptiness import is_stroke
from hwsched.attributes.limits import (
    Found,
    accepted_by,
    as_text,
    date_error,
    shown_length,
    within_limits,
)
from hwsched.quantities import (
    BARE_UNITS,
    BareUnit,
    Dimension,
    One,
    Pair,
    PairSize,
    QuantityError,
    ReadingError,
    Size,
    parse_quantity,
    plain_text,
    read_length,
)
from hwsched.quantities.money import MoneyError, exact_decimal
from hwsched.quantities.numerals import NUMERAL, plain_numeral, read_numeral
from hwsched.quantities.readings import Refusal

Reader = Callable[[object], Found]

_NONE: Final = frozenset({"none", "nil"})
_NUMBER: Final = re.compile(rf"([+-]?) ?({NUMERAL})", re.IGNORECASE)
_ABOUT: Final = re.compile(r"(?:~|ca?\.|ca|circa|approx(?:\.|imately)?|about|abt\.?) ?(?=[+-]?[0-9.,])", re.IGNORECASE)
_SHARE: Final = re.compile(r"(.+?) ?(?:%|per ?cent)", re.IGNORECASE)
# What a unit measures, its spelling for the reader of quantities, and how many of it make the unit returned there.
_MEASURES: Final[dict[Unit, tuple[Dimension, str, float]]] = {
    "kg": ("mass", "kg", 1.0),
    "V": ("voltage", "V", 1.0),
    "A": ("current", "A", 1.0),
    "mA": ("current", "mA", 1e3),
    "uA": ("current", "µA", 1e6),
    "mAh": ("charge", "mAh", 1e3),
    "Ah": ("charge", "Ah", 1.0),
    "W": ("power", "W", 1.0),
    "ohm": ("resistance", "ohm", 1.0),
    "degC": ("temperature", "°C", 1.0),
    "s": ("time", "s", 1.0),
    "h": ("time", "h", 1 / 3600),
    "N": ("force", "N", 1.0),
    "deg": ("angle", "deg", 1.0),
}


def length_reader(attribute: Attribute, bare_unit: str | None) -> Reader:
    """Return the reader of lengths [mm]; a bare number is refused where no unit is given for it."""
    if bare_unit is not None and bare_unit not in BARE_UNITS:
        return _wrong_unit(attribute, bare_unit)
    signed = attribute.low is not None and attribute.low < 0

    def read(cell: object) -> Found:
        if is_stroke(cell):
            return None, None, False
        _refuse_none(attribute, cell)
        sign, size = _split_sign(cell) if signed else (1.0, cell)
        try:
            found = read_length(size, bare_unit)
        except ReadingError as error:
            raise _refused(attribute, cell, error.problem, error.suggestion) from None
        if not isinstance(found, One):
            what = {Size: "a size", Pair: "a pair of leaves", PairSize: "a pair of leaves"}.get(type(found), "a range")
            raise CellError(as_text(cell), f"is {what}, and one length is wanted", accepted_by(attribute))
        return _checked(attribute, cell, sign * found.mm), found.assumed_unit, found.approximate

    return read


def _refused(attribute: Attribute, cell: object, problem: str, suggestion: str) -> CellError:
    """Return a refusal of `hwsched.quantities`; the attribute knows better than that floor what is accepted here."""
    special = suggestion.removeprefix("write ") if not suggestion.startswith("accepted are") else ""
    return CellError(as_text(cell), problem, special or accepted_by(attribute))


def _wrong_unit(attribute: Attribute, bare_unit: str) -> Reader:
    def read(cell: object) -> NoReturn:
        raise CellError(as_text(cell), f"the column's unit {bare_unit} measures no length", accepted_by(attribute))

    return read


def _split_sign(cell: object) -> tuple[float, object]:
    if isinstance(cell, str):
        plain = plain_text(cell)
        return (-1.0, plain[1:].lstrip()) if plain.startswith("-") else (1.0, cell)
    if isinstance(cell, int | float) and not isinstance(cell, bool) and cell < 0:
        return -1.0, -cell
    return 1.0, cell


def _refuse_none(attribute: Attribute, cell: object) -> None:
    if isinstance(cell, str) and cell.casefold() in _NONE:
        message = "can mean zero, or that it was not measured"
        raise CellError(cell, message, f"0 for zero, an empty cell where unknown; {accepted_by(attribute)}")


def number_reader(attribute: Attribute, bare_unit: str | None) -> Reader:
    """Return the reader of numbers; a bare one is in `bare_unit`, or in the attribute's own unit."""
    to_own = _conversion(attribute, bare_unit)
    own_unit = bare_unit is None or bare_unit == attribute.unit
    assumed = bare_unit or attribute.unit or None

    def read(cell: object) -> Found:
        if isinstance(cell, str):
            if is_stroke(cell):
                return None, None, False
            _refuse_none(attribute, cell)
            plain = plain_text(cell)
            about = _ABOUT.match(plain)
            plain = plain[about.end() :] if about else plain
            match = _NUMBER.fullmatch(plain)
            value = _numeral(attribute, cell, match) if match and own_unit else to_own(cell, plain)
            return _checked(attribute, cell, value), assumed if match else None, about is not None
        _refuse_dates_and_flags(attribute, cell)
        value = _finite(attribute, cell) if own_unit else to_own(cell, cell)
        return _checked(attribute, cell, value), assumed, False

    return read


def _conversion(attribute: Attribute, bare_unit: str | None) -> Callable[[object, object], float]:
    """Return what reads a number with a unit, or one in the unit that the header names, into the attribute's unit."""
    own = attribute.unit

    def length(cell: object, size: object) -> float:
        try:
            found = read_length(size, cast(BareUnit, bare_unit or own))
        except ReadingError as error:
            raise _refused(attribute, cell, error.problem, error.suggestion) from None
        if not isinstance(found, One):
            raise CellError(as_text(cell), "is more than one length", accepted_by(attribute))
        return float(f"{found.mm / (1000.0 if own == 'm' else 1.0):.12g}")

    def share(cell: object, part: object) -> float:
        match = _SHARE.fullmatch(part) if isinstance(part, str) else None
        number = match[1] if match else part
        hundred = match is not None or bare_unit == "%"
        value = (
            _numeral(attribute, cell, _NUMBER.fullmatch(number))
            if isinstance(number, str)
            else _finite(attribute, number)
        )
        if hundred and match is None and 0 < abs(value) <= 1:
            # A cell in percent format holds 0.8 and shows 80 %.
            message = f"can be {value:g} % or, in a cell in percent format, {value * 100:g} %"
            raise CellError(as_text(cell), message, f"{value:g} % or {value * 100:g} %, as text")
        return float(f"{value / (100.0 if hundred else 1.0):.12g}")

    def measure(cell: object, amount: object) -> float:
        dimension, spelling, factor = _MEASURES[own]
        bare = {"degF": "°F", "degC": "°C", "uA": "µA"}.get(bare_unit or "", bare_unit) or spelling
        try:
            return float(f"{parse_quantity(amount, dimension, bare) * factor:.12g}")
        except QuantityError as error:
            raise _refused(attribute, cell, error.problem, error.suggestion) from None

    def plain(cell: object, _number: object) -> float:
        unit = f" in {bare_unit}" if bare_unit else ""
        raise CellError(as_text(cell), f"is no plain number{unit}", accepted_by(attribute))

    if own in ("m", "mm"):
        return length
    return share if own == "share" else measure if own in _MEASURES else plain


def _finite(attribute: Attribute, cell: object) -> float:
    if not isinstance(cell, int | float):
        raise CellError(as_text(cell), "is neither text nor a number", accepted_by(attribute))
    try:
        value = float(cell)
    except OverflowError:
        value = float("inf")
    if not isfinite(value):
        raise CellError(str(cell)[:40], "is no finite number", accepted_by(attribute))
    return value


def _numeral(attribute: Attribute, cell: object, match: re.Match[str] | None) -> float:
    if match is None:
        raise CellError(as_text(cell), "is no number", accepted_by(attribute))
    try:
        value = read_numeral(match[2].lower())
    except Refusal as refusal:
        raise _refused(attribute, cell, refusal.problem, refusal.suggestion) from None
    return _finite(attribute, -value if match[1] == "-" else value)


def integer_reader(attribute: Attribute, bare_unit: str | None) -> Reader:
    """Return the reader of whole numbers."""
    number = number_reader(attribute, bare_unit)

    def read(cell: object) -> Found:
        value, unit, about = number(cell)
        if value is None:
            return None, None, False
        if not float(value).is_integer():
            raise CellError(as_text(cell), "is no whole number", accepted_by(attribute))
        return int(value), unit, about

    return read


def money_reader(attribute: Attribute, bare_unit: str | None) -> Reader:
    """Return the reader of amounts of money, exact: a number of the spreadsheet by its shortest text."""

    def read(cell: object) -> Found:
        if is_stroke(cell):
            return None, None, False
        _refuse_none(attribute, cell)
        _refuse_dates_and_flags(attribute, cell)
        if bare_unit is not None:
            raise CellError(as_text(cell), f"is no amount of money in {bare_unit}", accepted_by(attribute))
        if isinstance(cell, str):
            match = _NUMBER.fullmatch(plain_text(cell))
            if match is None:
                raise CellError(as_text(cell), "is no amount of money", accepted_by(attribute))
            try:
                written = plain_numeral(match[2].lower())
            except Refusal as refusal:
                raise _refused(attribute, cell, refusal.problem, refusal.suggestion) from None
            amount = _amount(attribute, cell, f"-{written}" if match[1] == "-" else written)
        else:
            amount = _amount(attribute, cell, cell)
        return _checked_amount(attribute, cell, amount), None, False

    return read


def _amount(attribute: Attribute, cell: object, number: object) -> Decimal:
    try:
        return exact_decimal(number)
    except MoneyError:
        message = "is no amount of money, or one of more digits than can be"
        raise CellError(as_text(cell)[:40], message, accepted_by(attribute)) from None


def _checked_amount(attribute: Attribute, cell: object, amount: Decimal) -> Decimal:
    if not within_limits(attribute, amount):
        low = attribute.low is not None and amount < attribute.low
        message = f"{amount:f} is {'less' if low else 'more'} than can be true"
        raise CellError(as_text(cell), message, accepted_by(attribute))
    return abs(amount) if amount == 0 else amount


def _refuse_dates_and_flags(attribute: Attribute, cell: object) -> None:
    if isinstance(cell, bool):
        raise CellError(as_text(cell), "is a yes or no, not a number", accepted_by(attribute))
    if isinstance(cell, dt.date | dt.time | dt.timedelta):
        raise date_error(attribute, cell)


def _checked(attribute: Attribute, cell: object, value: float) -> float:
    if not within_limits(attribute, value):
        low = attribute.low is not None and value < attribute.low
        shown = shown_length(value) if attribute.kind == "length" else f"{value:g} {attribute.unit}".rstrip()
        message = f"{shown} is {'less' if low else 'more'} than can be true"
        raise CellError(as_text(cell), message, accepted_by(attribute))
    return value + 0.0  # never -0.0
