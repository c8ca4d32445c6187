"""When something was, as people read it on the screen: the day in words, the minute, without a machine's offset."""

from datetime import date, datetime
from typing import Final

from hwsched.language import phrase, to_phrase

_MONTHS: Final = (
    to_phrase("Jan"),
    to_phrase("Feb"),
    to_phrase("Mar"),
    to_phrase("Apr"),
    to_phrase("May"),
    to_phrase("Jun"),
    to_phrase("Jul"),
    to_phrase("Aug"),
    to_phrase("Sep"),
    to_phrase("Oct"),
    to_phrase("Nov"),
    to_phrase("Dec"),
)


def day_said(day: date) -> str:
    """Return a day in words.

    Examples
    --------
    >>> day_said(date(2031, 2, 3))
    '3 Feb 2031'
    """
    return phrase("{day} {month} {year}", day=day.day, month=phrase(_MONTHS[day.month - 1]), year=day.year)


def moment_said(when: str) -> str:
    """Return a moment by the clock of the project, to the minute.

    Parameters
    ----------
    when : str
        ISO 8601, in the project's zone. Where this machine's clock shows another hour than the project's, the offset is
        told too; elsewhere it would only be noise.

    Examples
    --------
    >>> moment_said(datetime(2031, 2, 3, 14, 5, 9).astimezone().isoformat())
    '3 Feb 2031, 14:05'
    """
    moment = datetime.fromisoformat(when)
    said = phrase(
        "{day} {month} {year}, {time}",
        day=moment.day,
        month=phrase(_MONTHS[moment.month - 1]),
        year=moment.year,
        time=f"{moment:%H:%M}",
    )
    if moment.utcoffset() == moment.astimezone().utcoffset():
        return said
    return phrase("{moment} (UTC{offset})", moment=said, offset=when[-6:])
