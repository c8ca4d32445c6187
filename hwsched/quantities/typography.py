"""Typed text brought to one alphabet: straight marks, plain spaces, fractions as digits, no transport escapes.

Here belongs what is equal for lengths and all other quantities. What the marks mean is not decided here.
"""

import re
from typing import Final

_REMOVED = "\u200b\u200c\u200d\u200e\u200f\u2060\ufeff\u00ad"
_FEET = "\u2018\u2019\u201b\u2032\u02b9\u02bc\u00b4\uff07"  # curly marks, prime, acute, full width
_INCHES = "\u201c\u201d\u201f\u2033\u02ba\u3003\uff02"
_DASHES = "\u2010\u2011\u2012\u2013\u2014\u2015\u2212\ufe63\uff0d"
_TIMES = "\u00d7\u2715\u2716\u2a2f\uff58\uff38"
_SLASHES = "\u2215\uff0f"
_VULGAR = {
    "¼": "1/4", "½": "1/2", "¾": "3/4", "⅓": "1/3", "⅔": "2/3", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5", "⅘": "4/5",
    "⅙": "1/6", "⅚": "5/6", "⅐": "1/7", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅑": "1/9", "⅒": "1/10",
    "⅟": "1/",
}  # fmt: skip

FRACTION_SLASH: Final = "\u2044"
"""Stands in the digits of a fraction sign: unlike 3/4, the sign ¾ is nothing but a fraction."""

# A fraction sign stands directly behind its whole number (1¾): the space keeps 1 and 3/4 apart.
_TABLE: Final = str.maketrans(
    {
        **dict.fromkeys(_REMOVED, ""),
        **dict.fromkeys(_FEET, "'"),
        **dict.fromkeys(_INCHES, '"'),
        **dict.fromkeys(_DASHES, "-"),
        **dict.fromkeys(_TIMES, "x"),
        **dict.fromkeys(_SLASHES, "/"),
        **{sign: " " + digits.replace("/", FRACTION_SLASH) for sign, digits in _VULGAR.items()},
        **{chr(0xFF10 + digit): str(digit) for digit in range(10)},
        "\uff0c": ",",
        "\uff0e": ".",
        "\u2248": "~",
        "\u223c": "~",
        "\u2026": "...",
        "\u2126": "\u03a9",  # ohm sign to omega
        "\u03bc": "\u00b5",  # mu to micro sign
        "\u00ba": "\u00b0",  # masculine ordinal, typed for a degree sign
        "\u2103": "\u00b0C",
        "\u2109": "\u00b0F",
    }
)
_RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉", "01234567890123456789")
_STACKED = re.compile("([⁰¹²³⁴⁵⁶⁷⁸⁹]+)[/⁄∕]([₀₁₂₃₄₅₆₇₈₉]+)")
# ISO 10303-21: \X2\ and \X4\ open runs of 4 and 8 hex digits a character, \X0\ closes them; \X\ is one 8-bit character.
_STEP_RUN = re.compile(r"\\X([24])\\([0-9A-Fa-f]*)\\X0\\")
_STEP_BYTE = re.compile(r"\\X\\([0-9A-Fa-f]{2})")


def _run_of_characters(match: re.Match[str]) -> str:
    width = 4 if match[1] == "2" else 8
    digits = match[2]
    if len(digits) % width:
        return match[0]
    codes = [int(digits[i : i + width], 16) for i in range(0, len(digits), width)]
    return "".join(map(chr, codes)) if all(code <= 0x10FFFF for code in codes) else match[0]


def plain_text(text: str) -> str:
    r"""Bring typed text to straight marks, single spaces and digits.

    Parameters
    ----------
    text : str
        As typed, or as a spreadsheet or a STEP file holds it.

    Returns
    -------
    str
        Feet mark ``'``, inch mark ``"``, dash ``-``, times ``x``, fraction signs in digits with a space before them.

    Examples
    --------
    >>> plain_text("1¾”")
    '1 3⁄4"'
    >>> plain_text(r"0,90\X2\00D7\X0\2,10")
    '0,90x2,10'
    """
    if "\\" in text:
        text = _STEP_RUN.sub(_run_of_characters, text)
        text = _STEP_BYTE.sub(lambda match: chr(int(match[1], 16)), text)
    if not text.isascii():
        text = _STACKED.sub(
            lambda match: f" {match[1].translate(_RAISED)}{FRACTION_SLASH}{match[2].translate(_RAISED)}", text
        )
    text = text.translate(_TABLE) if not text.isascii() else text
    return " ".join(text.split())
