"""The door trade's digits without marks: 3068, 2/8, 3-0, feet and inches run together.

Here belongs what such digits mean and when they can mean something else as well. Basis: common practice in North
America; leaves and openings go in steps of 2 in, which is what tells 3068 from a number.
"""

import re
from typing import NamedTuple

from hwsched.quantities.length_format import format_feet_inches
from hwsched.quantities.readings import MM_PER_INCH
from hwsched.quantities.terms import is_rule_fraction

# Feet and inches of the width (2'-0" to 9'-10"), then of the height (6'-0" to 9'-10"), in steps of 2 in. Narrower
# leaves exist, but are as easily a number of millimetres.
_SIZE = re.compile(r"([2-9])(0|2|4|6|8|10)([6-9])(0|2|4|6|8|10)")
_SIDE = re.compile(r"([1-9]|1[0-2]) ?([-/]) ?([0-9]|1[01])(?: ([0-9]+) ?/ ?([0-9]+))?")
_SIZE_WITH_SLASH = re.compile(r"([1-9])([0-9])/([1-9])([0-9])")


class Feet(NamedTuple):
    """Feet and inches that digits stand for."""

    feet: int
    inches: float
    separator: str = ""
    is_fraction_too: bool = False
    """The digits are also a fraction as read off an inch rule, such as 3/4."""

    @property
    def total_inches(self) -> float:
        """Both together in inches."""
        return self.feet * 12 + self.inches

    def __str__(self) -> str:
        return format_feet_inches(self.total_inches * MM_PER_INCH)


def size_in_digits(digits: str) -> tuple[Feet, Feet] | None:
    r"""Door size that four or five digits stand for, or None.

    Examples
    --------
    >>> [str(side) for side in size_in_digits("3068")]
    ['3\'-0"', '6\'-8"']
    >>> size_in_digits("2032") is None
    True
    """
    match = _SIZE.fullmatch(digits)
    if match is None:
        return None
    return Feet(int(match[1]), int(match[2])), Feet(int(match[3]), int(match[4]))


def is_millimetres_too(digits: str) -> bool:
    """Whether digits that stand for a door size are as likely a door's height in mm, as 2070 is."""
    return len(digits) == 4 and 1900 <= int(digits) <= 2500 and digits[-1] in "05"


def size_with_slash(text: str) -> tuple[Feet, Feet] | None:
    """Door size that 30/68 stands for, or None."""
    match = _SIZE_WITH_SLASH.fullmatch(text)
    if match is None:
        return None
    return Feet(int(match[1]), int(match[2])), Feet(int(match[3]), int(match[4]))


def side_in_digits(text: str) -> Feet | None:
    """Feet and inches that 3-0, 2/8 or 3-0 1/2 stand for beside another side, or None."""
    match = _SIDE.fullmatch(text)
    if match is None:
        return None
    feet, inches = int(match[1]), int(match[3])
    separator = match[2]
    if match[4]:
        top, bottom = int(match[4]), int(match[5])
        if separator == "/" or not is_rule_fraction(top, bottom):
            return None
        return Feet(feet, inches + top / bottom, separator)
    return Feet(feet, inches, separator, separator == "/" and is_rule_fraction(feet, inches))
