"""Words and headers of sheets made comparable: without case, blanks and punctuation.

Here belongs what headers, choices and sheet names share. Which header means which fact is decided by each importer.
"""

import re
from functools import lru_cache
from typing import Final

from hwsched.quantities import plain_text

_BETWEEN_DIGITS: Final = re.compile(r"(?<=[0-9])[\s\W_]+(?=[0-9])")
_MARKS: Final = re.compile(r"[\W_]+")
# After casefolding: the micro sign has become a mu.
_UNITS: Final[dict[str, str]] = {
    "mm": "mm", "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm",
    "cm": "cm", "centimetre": "cm", "centimetres": "cm", "centimeter": "cm", "centimeters": "cm",
    "m": "m", "metre": "m", "metres": "m", "meter": "m", "meters": "m",
    "in": "in", "in.": "in", "ins": "in", "inch": "in", "inches": "in", '"': "in", "''": "in",
    "ft": "ft", "ft.": "ft", "foot": "ft", "feet": "ft", "'": "ft",
    "v": "V", "volt": "V", "volts": "V", "vdc": "V", "v dc": "V",
    "a": "A", "amp": "A", "amps": "A", "ma": "mA", "ua": "uA", "\u03bca": "uA",
    "mah": "mAh", "ah": "Ah", "w": "W", "ohm": "ohm", "ohms": "ohm", "ω": "ohm",
    "°c": "degC", "c": "degC", "degc": "degC", "deg c": "degC", "celsius": "degC",
    "°f": "degF", "f": "degF", "degf": "degF", "deg f": "degF", "fahrenheit": "degF",
    "s": "s", "sec": "s", "seconds": "s", "h": "h", "hr": "h", "hours": "h", "min": "min", "minutes": "min",
    "n": "N", "lbf": "lbf", "lb": "lbf", "lbs": "lbf", "kg": "kg", "deg": "deg", "°": "deg",
    "share": "share", "%": "%", "per cent": "%", "percent": "%",
}  # fmt: skip
_BRACKETED: Final = re.compile(r"(.*?)\s*[\[(]\s*([^\[\]()]*?)\s*[\])]\s*\*?\s*")


@lru_cache(maxsize=8192)
def normal(text: str) -> str:
    """Return a word or header for comparing: lower case, without blanks and punctuation.

    What stands between two digits stays, since 4.5, 4-5 and 45 are not the same.

    Parameters
    ----------
    text : str
        As typed.

    Returns
    -------
    str
        May be empty where there are only marks.

    Examples
    --------
    >>> normal("Int. / Ext."), normal("Door #"), normal("Mineral-core"), normal("1½ h"), normal("4.5")
    ('intext', 'door', 'mineralcore', '1 1/2h', '4.5')
    """
    plain = plain_text(text).replace("\u2044", "/").casefold().strip()
    pieces = _BETWEEN_DIGITS.split(plain)
    between = _BETWEEN_DIGITS.findall(plain)
    words = [_MARKS.sub("", piece) for piece in pieces]
    kept = [" " if mark.isspace() else mark.strip() for mark in between]
    return words[0] + "".join(mark + word for mark, word in zip(kept, words[1:], strict=True))


def split_unit(header: str) -> tuple[str, str]:
    """Split the unit in brackets off a header.

    Parameters
    ----------
    header : str
        Such as ``Length [mm]`` or ``Thickness (in.)``.

    Returns
    -------
    tuple of str
        The header without it, and the unit's short name; empty where the bracket holds no unit, or there is none.

    Examples
    --------
    >>> split_unit("Length [mm]"), split_unit('Thickness (")'), split_unit("Rating (min. label)")
    (('Length', 'mm'), ('Thickness', 'in'), ('Rating (min. label)', ''))
    """
    match = _BRACKETED.fullmatch(header)
    unit = _UNITS.get(plain_text(match[2]).casefold(), "") if match else ""
    return (match[1], unit) if match and unit else (header, "")
