"""What an attribute accepts, said for people, and whether a value can be true.

Here belongs what reading and checking share: the text of a cell, limits, and the wording of what is accepted.
"""

import datetime as dt
from decimal import Decimal
from typing import Final

from hwsched.attributes.attribute import Attribute
from hwsched.attributes.cell_error import CellError
from hwsched.quantities import format_length

Value = str | float | int | bool | Decimal | None
"""What an attribute holds; None is unknown."""
Found = tuple[Value, str | None, bool]
"""The value, the unit assumed, and whether the cell said "about"."""

LENGTH_EXAMPLES: Final = '70 mm, 1 3/4", 3\'-0"'


_ABSURD_MM: Final = 1e9
"""From a thousand kilometres on a slip is shown with few digits."""
_ROUNDING: Final = 1e-9
"""Share by which a value may pass a limit, for what conversion leaves behind the twelfth digit."""


def as_text(cell: object) -> str:
    """Return what a cell holds as a person sees it, as far as the reader of the sheet left it.

    Examples
    --------
    >>> as_text(12.0), as_text(0.5), as_text(True), as_text(None)
    ('12', '0.5', 'TRUE', '')
    """
    if isinstance(cell, str):
        return cell
    if isinstance(cell, bool):
        return "TRUE" if cell else "FALSE"
    if isinstance(cell, float):
        return str(int(cell)) if cell.is_integer() and abs(cell) < 1e15 else repr(cell)
    if isinstance(cell, dt.datetime) and cell.time() == dt.time():
        return cell.date().isoformat()
    return "" if cell is None else str(cell)


def within_limits(attribute: Attribute, value: float | Decimal) -> bool:
    """Tell whether a number lies within the limits that its attribute declares."""
    if isinstance(value, Decimal):
        return (attribute.low is None or value >= attribute.low) and (attribute.high is None or value <= attribute.high)
    room = _ROUNDING * max(1.0, abs(value))
    return (attribute.low is None or value >= attribute.low - room) and (
        attribute.high is None or value <= attribute.high + room
    )


def accepted_by(attribute: Attribute) -> str:
    """Say what an attribute accepts, for messages and notes.

    Examples
    --------
    >>> accepted_by(Attribute("screws", "Screws", "integer", low=0, high=24))
    'a whole number from 0 to 24'
    """
    if attribute.kind == "choice":
        return "; ".join(choice.label for choice in attribute.choices)
    kinds = {
        "text": "text",
        "flag": "yes or no",
        "date": "a date such as 2031-12-24",
        "length": f"a length such as {LENGTH_EXAMPLES}",
        "integer": "a whole number",
        "money": "an amount such as 12.50",
        "number": f"a number [{attribute.unit}]" if attribute.unit else "a number",
    }
    return kinds[attribute.kind] + _limits(attribute)


def _limits(attribute: Attribute) -> str:
    show = shown_length if attribute.kind == "length" else (lambda v: f"{v:g}")
    if attribute.low is not None and attribute.high is not None:
        return f" from {show(attribute.low)} to {show(attribute.high)}"
    if attribute.low is not None:
        return f", at least {show(attribute.low)}"
    return f", at most {show(attribute.high)}" if attribute.high is not None else ""


def shown_length(mm: float) -> str:
    """Return a length in both systems, since the reader of a message may think in either."""
    if abs(mm) >= _ABSURD_MM:
        return f"{mm:g} mm"
    return f"{format_length(mm, 'mm')} ({format_length(mm, 'fraction', 16)})"


def date_error(attribute: Attribute, cell: dt.date | dt.time | dt.timedelta) -> CellError:
    """Return the refusal of a date or time that stands in place of something else."""
    what = "a date" if isinstance(cell, dt.date) else "a time"
    was = f" (perhaps {cell.month}-{cell.day} or {cell.month}/{cell.day})" if isinstance(cell, dt.date) else ""
    message = f"is {what}: the spreadsheet made it of what was typed{was}"
    return CellError(as_text(cell), message, f"{accepted_by(attribute)}; format the column as text and type it again")
