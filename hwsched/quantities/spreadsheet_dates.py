"""Dates that a spreadsheet made of fractions and ranges, and what was probably typed.

Here belongs the guess from the date back to the digits; that a date is no length is said in `lengths`.
"""

import datetime as dt
import re
from typing import Final

_MONTHS: Final = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip
_SHORT: Final = tuple(month[:3].lower() for month in _MONTHS)
_MONTH = "(" + "|".join(f"{month[:3]}(?:{month[3:]})?" for month in map(str.lower, _MONTHS)) + "|sept)"
# As a spreadsheet shows such a cell, and as it is then saved to text: 4-Mar, Mar-68, 2024-03-04 00:00:00.
_DAY_MONTH = re.compile(rf"([0-9]{{1,2}})[-. /]+{_MONTH}\.?(?:[-. /]+[0-9]{{2,4}})?")
_MONTH_NUMBER = re.compile(rf"{_MONTH}\.?[-. /]+([0-9]{{1,2}})(?:,? [0-9]{{4}})?")
_ISO = re.compile(r"([0-9]{4})-([0-9]{2})-([0-9]{2})(?:[ t][0-9:.]+)?")


def explain_date(value: dt.date) -> tuple[str, str]:
    """Say what a date in a length column was before the spreadsheet changed it.

    Parameters
    ----------
    value : datetime.date
        The cell (a datetime is a date too).

    Returns
    -------
    tuple of str
        The problem, and what to do.

    Examples
    --------
    >>> explain_date(dt.date(2024, 3, 4))[0]
    'is a date: a spreadsheet turned 3-4 or 3/4 (or 4-3 or 4/3, where the day comes first) into 4 March'
    """
    month, day, name = value.month, value.day, _MONTHS[value.month - 1]
    if day == 1:
        # Where the second number can be no day (3-68), a year was made of it, and the day is 1.
        year = value.year % 100
        problem = (
            f"is a date: a spreadsheet turned {month}-1 or {month}/1 into 1 {name}, "
            f"or {month}-{year:02d} or {month}/{year:02d} into {name} {value.year}"
        )
    else:
        other = f" (or {day}-{month} or {day}/{month}, where the day comes first)" if day != month else ""
        problem = f"is a date: a spreadsheet turned {month}-{day} or {month}/{day}{other} into {day} {name}"
    return problem, _CURE


_CURE = 'format the column as text and type the length again with its marks, such as 3\'-4" or 3/4"'


def explain_time(value: dt.time | dt.timedelta) -> tuple[str, str]:
    """Say that a time of day in a length column was something with a colon or decimals."""
    return f"is a time ({value}): a spreadsheet turned what was typed into it", _CURE


def date_in_text(text: str) -> tuple[str, str] | None:
    """Explain a date that stands as text, or None where the text is none.

    Examples
    --------
    >>> date_in_text("4-mar")[0]
    'is a date: a spreadsheet turned 3-4 or 3/4 (or 4-3 or 4/3, where the day comes first) into 4 March'
    """
    if match := _DAY_MONTH.fullmatch(text):
        day, month = int(match[1]), _month(match[2])
    elif match := _MONTH_NUMBER.fullmatch(text):
        day, month = int(match[2]), _month(match[1])
    elif match := _ISO.fullmatch(text):
        try:
            return explain_date(dt.date(int(match[1]), int(match[2]), int(match[3])))
        except ValueError:
            return "looks like a date", _CURE
    else:
        return None
    try:
        return explain_date(dt.date(2000, month, day))  # a leap year: 29 February stands
    except ValueError:
        return f"looks like a date: a spreadsheet may have turned {month}-{day} or {month}/{day} into it", _CURE


def _month(name: str) -> int:
    return _SHORT.index(name[:3]) + 1
