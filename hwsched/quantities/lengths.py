"""Lengths as people type them and as spreadsheets hold them.

Here belong the two ways in, `parse_length` and `read_length`, and what is made of single lengths: sizes, pairs of
leaves, ranges. The single length stands in `terms`, the door trade's digits without marks in `shorthand`, dates in
place of fractions in `spreadsheet_dates`. No general unit parser is used: those read feet and fractions wrongly and say
nothing.

Where a text can be read in two ways that a survey really contains, it is refused and both are named.
"""

import datetime as dt
import re
from dataclasses import replace
from functools import lru_cache
from math import isfinite
from typing import Final

from hwsched.quantities.open_units import bare_number, unit_for
from hwsched.quantities.ranges import read_range
from hwsched.quantities.readings import (
    BareUnit,
    LengthError,
    One,
    Pair,
    PairSize,
    Range,
    Reading,
    Refusal,
    Size,
)
from hwsched.quantities.shorthand import size_in_digits
from hwsched.quantities.sizes import read_size
from hwsched.quantities.spreadsheet_dates import date_in_text, explain_date, explain_time
from hwsched.quantities.terms import read_term, to_mm
from hwsched.quantities.typography import plain_text

ACCEPTED_LENGTHS: Final = '3\'-0", 36", 1 3/4", 914 mm, 91,4 cm, 0.914 m, 3\'-0" x 7\'-0", 34"-48", 2(3\'-0")'
"""Examples of what is read, for messages and help."""

_LONGEST_TEXT = 80
# Most cells of an import are a number with or without a plain unit; the rest takes the long way.
_PLAIN = re.compile(r" *([0-9]{1,15}(?:\.[0-9]{1,20})?) *(mm|cm|m|in|ft|\"|')? *")
_PLAIN_UNIT = {"mm": "mm", "cm": "cm", "m": "m", "in": "in", "ft": "ft", '"': "in", "'": "ft"}
# Behind a measure: it is to be verified in the field, or more or less so.
_TO_VERIFY = re.compile(
    r"(.*[0-9\"'a-z])[ ,;]*(?:\((?:v\.? ?i\.? ?f\.?|verify(?: in field)?)\)"
    r"|\bv\.? ?i\.? ?f\.?|\bverify(?: in field)?|\+ ?/ ?-|\u00b1|\bapprox(?:\.|imately)?|\babout)"
)
_APPROXIMATE = re.compile(r"(?:~|ca?\.|ca|circa|approx(?:\.|imately)?|about|abt\.?) ?(?=[0-9.,])")
_PAIR = re.compile(
    r"(?:(?P<count>[0-9]+) ?\( ?(?P<inner>.+?) ?\)|\( ?(?P<count_2>[0-9]+) ?\) ?(?P<inner_2>.+?)"
    r"|(?P<count_3>[0-9]+) ?@ ?(?P<inner_3>.+?)|(?P<count_4>2) ?- ?(?P<inner_4>[0-9]{4,5}))"
    r"(?: ?(?:dbl|double|pr|pair)\.?)?"
)
_COUNTED_WIDTH = re.compile(r"(?P<count>[12]) ?\( ?(?P<width>[^()]+?) ?\) ?(?:x|by|×) ?(?P<height>[^()]+)")
"""The width alone is counted, as in 2(3'-0") x 7'-0": the height is that of both leaves."""
_PAIR_WORD = re.compile(
    r"(?:(?P<count>[0-9]+) ?[-x/] ?)?(?P<inner>.+?) ?\b(?:dbl|double|pr|pair)\.?"
    r"|(?:dbl|double|pr|pair)\.? ?(?P<only>.+)"
)
_LENGTH_WITHIN = re.compile(r"[0-9][0-9.,]*(?:[ -]?[0-9]+/[0-9]+)? ?(?:mm|cm|m|in|ft|\"|')(?![a-z0-9])", re.IGNORECASE)


def parse_length(text: str, bare_unit: BareUnit | None) -> float:
    r"""Millimetres of one length as typed.

    Parameters
    ----------
    text : str
        Such as ``3'-0"``, ``1 3/4``, ``0,91 m``.
    bare_unit : BareUnit or None
        Unit of a number that carries none; None refuses such a number.

    Returns
    -------
    float
        Length [mm], zero or more.

    Raises
    ------
    LengthError
        Where the text is no length, is more than one, or can be read in two ways.

    Examples
    --------
    >>> parse_length("6'-8 1/2\"", None)
    2044.7
    >>> parse_length("70", "mm")
    70.0
    """
    reading = read_length(text, bare_unit)
    if isinstance(reading, One):
        return reading.mm
    kind = {Size: "a size", Pair: "a pair of leaves", PairSize: "a pair of leaves", Range: "a range"}[type(reading)]
    raise LengthError(_shown(text), f"is {kind}; one length is wanted here", _digits_as_number(text))


def _digits_as_number(text: str) -> str:
    digits = text.strip()
    return f"write {digits} mm if a number of millimetres is meant" if digits.isdigit() else ""


def read_length(value: object, bare_unit: BareUnit | None) -> Reading:
    """Read a cell that holds a length, a size, a range, or the width or size of a pair of leaves.

    Parameters
    ----------
    value : object
        Text, or a number, date or time as a spreadsheet reader delivers it.
    bare_unit : BareUnit or None
        Unit of a number that carries none; None refuses such a number. Fractions without a mark (1 3/4) are inches
        whatever the column's unit (feet in a column of feet), since nobody writes fractions of a millimetre. Four or
        five digits of a door size (3068) are that size unless the unit is metric.

    Returns
    -------
    Reading
        Lengths [mm], with the unit that was assumed, if any.

    Raises
    ------
    LengthError
        Where it is no length or can be read in two ways; the message says what to write instead.

    Notes
    -----
    Basis: common practice of North American and metric door schedules; the inch is 25.4 mm exactly.

    Examples
    --------
    >>> read_length("36 x 80", "in")
    Size(width_mm=914.4, height_mm=2032.0, assumed_unit='in', approximate=False)
    >>> read_length(915, "mm")
    One(mm=915.0, assumed_unit='mm', approximate=False)
    """
    if type(value) is str:
        return _read_text(value, bare_unit)
    # Before numbers: in Python a yes is the number 1, and would pass as a length of one.
    if isinstance(value, bool):
        raise LengthError(str(value).upper(), "is a yes or no, not a length", f"accepted are {ACCEPTED_LENGTHS}")
    if isinstance(value, int | float):
        return _read_number(value, bare_unit)
    if isinstance(value, str):
        return _read_text(str(value), bare_unit)
    # A spreadsheet has made a date of what was typed: 3-4 and 3/4 become 4 March. What it was is not in the cell any
    # more.
    if isinstance(value, dt.date):
        raise LengthError(value.isoformat()[:10], *explain_date(value))
    if isinstance(value, dt.time | dt.timedelta):
        raise LengthError(str(value), *explain_time(value))
    if value is None:
        raise LengthError("empty", "there is no length", f"accepted are {ACCEPTED_LENGTHS}")
    raise LengthError(type(value).__name__, "is neither text nor a number", f"accepted are {ACCEPTED_LENGTHS}")


def _read_number(value: float, bare_unit: BareUnit | None) -> Reading:
    try:
        number = float(value)
    except OverflowError:
        number = float("inf")
    if not isfinite(number):
        raise LengthError(str(value)[:_LONGEST_TEXT], "is no finite number")
    try:
        # Not taken by its amount: what the sign was meant to say nobody here can know.
        if number < 0:
            raise _negative()
        digits = str(int(number)) if number == int(number) else ""
        return bare_number(digits, number, bare_unit)
    except Refusal as refusal:
        raise LengthError(f"{value}", refusal.problem, refusal.suggestion) from None


@lru_cache(maxsize=65536)
def _read_text(text: str, bare_unit: BareUnit | None) -> Reading:
    try:
        plain = _PLAIN.fullmatch(text)
        if plain is None:
            return _read_long(text, bare_unit)
        number, mark = plain[1], plain[2]
        if mark is not None:
            return One(to_mm(float(number), _PLAIN_UNIT[mark]))
        return bare_number(number, float(number), bare_unit)
    except Refusal as refusal:
        raise LengthError(_shown(text), refusal.problem, refusal.suggestion) from None


def _shown(text: str) -> str:
    return f"“{text}”" if len(text) <= _LONGEST_TEXT else f"“{text[:_LONGEST_TEXT]}…”"


def _read_long(text: str, bare_unit: BareUnit | None) -> Reading:
    if len(text) > _LONGEST_TEXT:
        raise Refusal("is too long for a length", f"accepted are {ACCEPTED_LENGTHS}")
    plain = plain_text(text).lower().replace("''", '"').replace('""', '"')
    about = _APPROXIMATE.match(plain)
    if about:
        plain = plain[about.end() :]
    elif about := _TO_VERIFY.fullmatch(plain):
        plain = about[1]
    reading = _read_plain(plain, bare_unit)
    if reading is None and (figures := _in_figures(plain)) != plain:
        reading = _read_plain(figures, bare_unit)
    if reading is None:
        raise _no_length(plain)
    return replace(reading, approximate=True) if about else reading


def _in_figures(plain: str) -> str:
    """Return a measure in words with its numbers in figures, and without the words that say which way it goes.

    Examples
    --------
    >>> _in_figures("three foot by seven foot"), _in_figures("36 in wide x 84 in high")
    ('3 foot x 7 foot', '36 in x 84 in')
    """
    text = _WAYS.sub("", _BY.sub(" x ", plain)).strip()
    return _NUMBER_WORDS.sub(lambda found: str(_FIGURES.index(found[0])), text)


_FIGURES: Final = (
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
)  # fmt: skip
_NUMBER_WORDS: Final = re.compile(rf"\b(?:{'|'.join(_FIGURES)})\b")
_WAYS: Final = re.compile(r"\s*\b(?:wide|high|tall)\b")
_BY: Final = re.compile(r"\s+by\s+")


def _read_plain(plain: str, bare_unit: BareUnit | None) -> Reading | None:
    if plain.startswith("-"):
        raise _negative() if plain[1:].strip()[:1].isdigit() else _no_length(plain)
    simple = _PLAIN.fullmatch(plain)
    if simple and simple[2] is None:
        return bare_number(simple[1], float(simple[1]), bare_unit)
    term = read_term(plain, bare_unit)
    if term is not None:
        unit, assumed = unit_for(term, None, bare_unit)
        return One(to_mm(term.value, unit), assumed)
    # Each gives None where the text has not its form, and refuses where it has but says nothing certain.
    return _pair(plain, bare_unit) or read_size(plain, bare_unit) or read_range(plain, bare_unit)


def _pair(plain: str, bare_unit: BareUnit | None) -> Reading | None:
    if match := _COUNTED_WIDTH.fullmatch(plain):
        count, inner = match["count"], f"{match['width']} x {match['height']}"
    elif match := _PAIR.fullmatch(plain):
        count = match["count"] or match["count_2"] or match["count_3"] or match["count_4"]
        inner = match["inner"] or match["inner_2"] or match["inner_3"] or match["inner_4"]
    elif match := _PAIR_WORD.fullmatch(plain):
        count, inner = match["count"], match["inner"] or match["only"]
        if count is None:
            raise Refusal(
                "a pair, but the measure can be one leaf or the whole opening",
                f"write 2({inner}) with the measure of one leaf",
            )
    else:
        return None
    if int(count) == 1:
        return _read_plain(inner, bare_unit)
    if int(count) != 2:
        raise Refusal(f"{count} leaves: an opening has one leaf or a pair of two", f"write {inner} or 2({inner})")
    # Behind a count of leaves, digits of a door size are that size in a metric column too: no leaf is 3068 mm wide.
    in_digits = "(" not in plain and size_in_digits(inner) is not None
    leaf = _read_plain(inner, "in" if in_digits else bare_unit)
    if isinstance(leaf, One):
        return Pair(leaf.mm, 2, leaf.assumed_unit)
    if isinstance(leaf, Size):
        return PairSize(leaf.width_mm, leaf.height_mm, 2, leaf.assumed_unit)
    raise Refusal(f"{inner} is not the width or size of a leaf", "write 2(3'-0\") or 2(3'-0\" x 7'-0\")")


def _negative() -> Refusal:
    return Refusal("is negative", "a length is zero or more")


def _no_length(plain: str) -> Refusal:
    date = date_in_text(plain)
    if date:
        return Refusal(*date)
    if not plain:
        return Refusal("there is no length", f"accepted are {ACCEPTED_LENGTHS}")
    if "`" in plain:
        return Refusal("a backtick is no unit mark", "write ' for feet or \" for inches")
    within = _LENGTH_WITHIN.findall(plain)
    if len(within) == 1 and any(character.isalpha() for character in plain.replace(within[0], "")):
        return Refusal("there are words around the length", f"write only {within[0]} if that is meant")
    return Refusal("is not read as a length", f"accepted are {ACCEPTED_LENGTHS}")
