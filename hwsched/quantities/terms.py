"""The grammar of one length: a number, mixed number or fraction with its unit, or feet with inches.

Here belongs what stands in one term, and how a term without a unit gets one. Sizes, ranges and pairs, which are made
of terms, stand in `lengths`; the door trade's digits without marks in `shorthand`.
"""

import re
from math import gcd, isfinite
from typing import Final, Literal, NamedTuple

from hwsched.quantities.numerals import NUMERAL, ThreeDigits, read_numeral
from hwsched.quantities.readings import MM_PER_UNIT, Refusal
from hwsched.quantities.typography import FRACTION_SLASH

FINEST_DENOMINATOR: Final = 128
"""Finer fractions of an inch are no reading of a rule."""

_INCH = r"\"|in(?:ch(?:es)?|s)?\.?"
_FOOT = r"'|feet|foot|ft\.?"
_METRIC = (
    r"mm\.?|millimet(?:er|re)s?\.?|cm\.?|centimet(?:er|re)s?\.?|m(?:et(?:er|re)s?)?\.?"  # mm before m: longest first
)
_FRACTION = rf"(?P<{{0}}top>[0-9]+) ?[/{FRACTION_SLASH}] ?(?P<{{0}}bottom>[0-9]+)"
_AMOUNT = (
    rf"(?:(?P<{{0}}whole>{NUMERAL.replace('{', '{{').replace('}', '}}')})"
    rf"(?:(?: ?- ?| (?:and )?){_FRACTION.format('{0}')})?"
    r"|(?P<{0}alone_top>[0-9]+) ?[/⁄] ?(?P<{0}alone_bottom>[0-9]+))"
)
_TERM = re.compile(
    rf"{_AMOUNT.format('')}(?: ?(?P<unit>{_INCH}|{_FOOT}|{_METRIC})"
    rf"(?: ?[-,]? ?(?:and )?{_AMOUNT.format('in_')} ?(?P<in_mark>{_INCH})?)?)?"
)
_SPACED_THOUSANDS = re.compile(r"([0-9]{1,3}(?: [0-9]{3})+) ?(mm)?")

_UNIT_OF = {'"': "in", "i": "in", "'": "ft", "f": "ft", "c": "cm"}
# 1,000' is a thousand feet and 2,100 mm a door height; 1,750 in and 2,100 m are typed with a decimal comma too.
_THREE_DIGITS: dict[str, ThreeDigits] = {"mm": "thousands", "ft": "thousands"}

Shape = Literal["number", "spaced", "mixed", "fraction"]
"""A number; one with spaces between thousands (2 100); a whole number with a fraction; a fraction alone."""


class Term(NamedTuple):
    """One length as written."""

    text: str
    value: float
    """In `unit`; for feet with inches, in inches."""
    unit: str | None
    """in, ft, mm, cm, m, or None where the text says none."""
    shape: Shape = "number"
    top: int = 0
    bottom: int = 0
    compound: bool = False
    """Feet with inches: not a unit that a neighbour without one could share."""


def _unit_of(mark: str) -> str:
    unit = _UNIT_OF.get(mark[0])
    if unit is None:
        unit = "mm" if mark.startswith(("mm", "mi")) else "m"
    return unit


def _amount(match: re.Match[str], prefix: str, three_digits: ThreeDigits) -> tuple[float, Shape, int, int]:
    whole = match[prefix + "whole"]
    top, bottom = match[prefix + "top"], match[prefix + "bottom"]
    if whole is None:
        top, bottom = match[prefix + "alone_top"], match[prefix + "alone_bottom"]
        return _fraction(0, int(top), int(bottom), check=False), "fraction", int(top), int(bottom)
    if top is None:
        return read_numeral(whole, three_digits), "number", 0, 0
    if not whole.isdigit():
        raise Refusal(f"{whole} has decimals and a fraction", "write one or the other")
    return _fraction(int(whole), int(top), int(bottom)), "mixed", int(top), int(bottom)


def _fraction(whole: int, top: int, bottom: int, *, check: bool = True) -> float:
    """Value of a mixed number; a fraction standing alone is checked only once it is known to be one."""
    if check:
        check_fraction(top, bottom)
    # Over zero is refused later, once it is known whether it was meant as a fraction at all.
    return whole + top / bottom if bottom else 0.0


def check_fraction(top: int, bottom: int) -> None:
    """Refuse what is no proper fraction: it most often lost the space behind its whole number."""
    if bottom == 0:
        raise Refusal(f"{top}/0 is no fraction")
    if bottom > FINEST_DENOMINATOR:
        raise Refusal(f"{top}/{bottom} is finer than 1/{FINEST_DENOMINATOR}", "write decimals")
    # 13/4 has most often lost the space of 1 3/4: read as it stands it would be 3 1/4.
    if top >= bottom:
        digits = str(top)
        split = f"{digits[:-1]} {digits[-1]}/{bottom}" if len(digits) > 1 and int(digits[-1]) else ""
        raise Refusal(
            f"{top}/{bottom} can be {split + ' with its space lost, or ' if split else ''}{top / bottom:g}",
            f"write {split or 'the whole number apart'} or {top / bottom:g}",
        )


def is_rule_fraction(top: int, bottom: int) -> bool:
    """Whether a fraction is one that is read off an inch rule: proper, in lowest terms, halves down to 64ths."""
    return 0 < top < bottom <= 64 and bottom & (bottom - 1) == 0 and gcd(top, bottom) == 1


def read_term(text: str, likely_unit: str | None = None) -> Term | None:
    """Read one length as written, or None where the text is something else.

    Parameters
    ----------
    text : str
        Plain text (see `typography.plain_text`) in lower case.
    likely_unit : str or None
        Unit that a number without one will take; decides what 2,100 means.

    Returns
    -------
    Term or None
        The term, its unit perhaps still open.

    Raises
    ------
    Refusal
        Where the text has the form of a length but cannot be one, such as 3'-48".
    """
    match = _TERM.fullmatch(text)
    if match is None:
        return _spaced_thousands(text)
    mark = match["unit"]
    if match["in_whole"] is not None or match["in_alone_top"] is not None:
        return _feet_and_inches(text, match)
    unit = _unit_of(mark) if mark else None
    value, shape, top, bottom = _amount(match, "", _THREE_DIGITS.get(unit or likely_unit or "", "ask"))
    if unit and shape != "number":
        if unit not in ("in", "ft"):
            raise Refusal(f"fractions are read in inches and feet, not in {unit}", "write decimals")
        check_fraction(top, bottom)
    return Term(text, value, unit, shape, top, bottom)


def _feet_and_inches(text: str, match: re.Match[str]) -> Term | None:
    if _unit_of(match["unit"]) != "ft":
        return None
    feet, feet_shape, _, _ = _amount(match, "", "thousands")
    inches, shape, top, bottom = _amount(match, "in_", "ask")
    if shape == "fraction":
        check_fraction(top, bottom)
    if feet_shape != "number" or feet != int(feet):
        raise Refusal("the feet have a fraction of their own beside the inches", "write whole feet")
    if inches >= 12:
        raise Refusal(
            f"{inches:g} inches beside feet are a foot or more",
            f"write {int(feet + inches // 12)}'-{inches % 12:g}\" if they are meant to be added",
        )
    return Term(text, feet * 12 + inches, "in", compound=True)


def _spaced_thousands(text: str) -> Term | None:
    match = _SPACED_THOUSANDS.fullmatch(text)
    if match is None:
        return None
    return Term(text, float(match[1].replace(" ", "")), match[2], "spaced")


def to_mm(value: float, unit: str) -> float:
    """Length in mm, freed of the noise that unit conversion leaves far behind the decimal point."""
    mm = value * MM_PER_UNIT[unit]
    if not isfinite(mm):
        raise Refusal("the number is beyond all measure")
    return round(mm, 6) + 0.0  # a zero without sign
