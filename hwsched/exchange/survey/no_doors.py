"""Rows with a mark that say there is no such door: not used, deleted, void.

Here belongs what such a row looks like. One that gives sizes all the same is an opening, and asked about: see
`said_of_marks`.
"""

import re
from collections.abc import Sequence
from typing import Final

from hwsched.attributes import as_text, normal
from hwsched.attributes.emptiness import is_stroke
from hwsched.exchange.survey.mapping import SheetMapping

_WORDS: Final = frozenset(
    map(
        normal,
        (
            "not used", "unused", "number not used", "no. not used", "mark not used", "not in use", "deleted",
            "door deleted", "opening deleted", "delete", "void", "voided", "omit", "omitted", "door omitted", "removed",
            "door removed", "cancelled", "canceled", "not in contract", "n.i.c.", "nic", "no door", "does not exist",
            "skipped", "reserved",
        ),
    )
)  # fmt: skip
"""Common practice of door schedules."""
_BEHIND: Final = re.compile(r".*\S\s*[(\[\u2013-]\s*([A-Za-z. ]+)[)\]]?\s*")
_BESIDE: Final = frozenset({"building", "level", "room_from", "room_to", "notes", "wave", "mark"})


def says_so(cell: object) -> bool:
    """Tell whether a cell says that there is no such door, and nothing else.

    Examples
    --------
    >>> says_so("NOT USED"), says_so("(Deleted)"), says_so("closer removed")
    (True, True, False)
    """
    return isinstance(cell, str) and len(cell) < 30 and normal(cell) in _WORDS


def said_in_mark(mark: str) -> str:
    """Return the words behind a mark that say that there is no such door; empty where there are none.

    Examples
    --------
    >>> said_in_mark("103 (deleted)"), said_in_mark("104 - NOT USED"), said_in_mark("105A")
    ('deleted', 'NOT USED', '')
    """
    match = _BEHIND.fullmatch(mark)
    return match[1].strip() if match and says_so(match[1]) else ""


def measured_in(mapping: SheetMapping) -> tuple[int, ...]:
    """Return the columns of facts that say what an opening is; of the others, only where it is and what is remarked."""
    return tuple(column.index for column in mapping.columns if column.target.attribute not in _BESIDE)


def says_no_door(line: Sequence[object], mark: int, measures: Sequence[int]) -> str:
    """Return the words by which a row with a mark says that there is no such door; empty where it does not.

    Parameters
    ----------
    line : sequence
        Its cells.
    mark : int
        Column of the marks, from 0.
    measures : sequence of int
        Columns that say what the opening is.
    """
    if mark >= len(line) or line[mark] in ("", None):
        return ""
    # Nearly every row answers at its first measure.
    for index in measures:
        cell = line[index] if index < len(line) and index != mark else None
        if cell in ("", None) or is_stroke(cell) or says_so(cell):
            continue
        return ""
    said = next((as_text(cell).strip() for index, cell in enumerate(line) if index != mark and says_so(cell)), "")
    return said or said_in_mark(as_text(line[mark]))
