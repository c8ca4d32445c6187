"""What stands above the header of a survey sheet and holds for all its rows: building and level.

Here belongs a label with its value, such as Building: East Hall, in one cell or in two, and a title that names a level.
"""

import re
from collections.abc import Sequence
from typing import Final

from hwsched.attributes import as_text
from hwsched.exchange.survey.lines import line_kind

_LABELS: Final = (
    ("building", re.compile(r"(?:building|bldg\.?|block)(?:\s+name)?\s*([:=])?\s*(.*)", re.IGNORECASE)),
    ("level", re.compile(r"(?:level|floor|storey|story|flr\.?)\s*([:=])?\s*(.*)", re.IGNORECASE)),
)
_NEAR: Final = 4
"""Rows directly above the header in which a title names a level."""
_HIGHEST: Final = 15
_PAIR: Final = 2


def places_above(rows: Sequence[Sequence[object]]) -> dict[str, str]:
    """Return the building and the level that the rows above a header say; the lowest goes before the others.

    Examples
    --------
    >>> places_above([["Building:", "East Hall"], ["Floor: 2"], ["Date", "3 May"]])
    {'building': 'East Hall', 'level': '2'}
    >>> places_above([["LEVEL 1"]]), places_above([["Floor plan", "A-101"]])
    ({'level': 'LEVEL 1'}, {})
    """
    found: dict[str, str] = {}
    for row in rows[-_HIGHEST:]:
        cells = [text for cell in row if (text := " ".join(as_text(cell).split()))]
        for index, text in enumerate(cells):
            beside = cells[index + 1] if index + 1 < len(cells) else ""
            for name, label in _LABELS:
                match = label.fullmatch(text)
                # Without a colon only a row of nothing else: in a header of two rows Floor stands beside Width.
                value = _value(match[1], match[2], beside if match[1] or len(cells) == _PAIR else "") if match else ""
                if value:
                    found[name] = value
    for row in rows[-_NEAR:]:
        line = line_kind(row, 0, below=False, digits=False)
        if line is not None and line.kind == "level" and ":" not in line.text:
            found["level"] = line.text
    return found


def _value(colon: str | None, rest: str, beside: str) -> str:
    if rest:
        # Without a colon it is a title, or other words that begin so.
        return rest if colon else ""
    return beside if not beside.endswith(":") else ""
