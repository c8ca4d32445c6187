"""Openings of which the list says that they are none any more, and marks that name several doors in one row.

Both are taken as they stand and asked about, since either reading is near: a door left out is not ordered, and a door
that is none is. The cure leaves out what is deleted, and makes an opening of each mark that a row names.
"""

import re
from collections.abc import Collection, Sequence
from dataclasses import replace
from typing import Final

from hwsched.exchange.survey.facts import Oddity, SurveyedOpening
from hwsched.exchange.survey.no_doors import said_in_mark, says_so
from hwsched.language import to_phrase
from hwsched.stopping import asking

DELETED: Final = "said-deleted"
SEVERAL: Final = "several-marks"
CURES: Final = (DELETED, SEVERAL)
_ASKED: Final = {
    DELETED: (
        to_phrase("is there no such door in {count}? The list says so in a remark, and what the door is all the same"),
        to_phrase("they are left out"),
    ),
    SEVERAL: (
        to_phrase("does one row stand for several doors in {count}? Its mark names more than one"),
        to_phrase("each mark becomes an opening of its own"),
    ),
}
_LISTED: Final = re.compile(r"\s*(?:,|;|&|\band\b)\s*", re.IGNORECASE)
_THROUGH: Final = re.compile(
    r"(.*?)(\d+)([A-Za-z]?)\s*(?:-|\u2013|\bto\b|\bthru\b|\bthrough\b|\.\.+)\s*(.*?)(\d+)([A-Za-z]?)"
)
_LETTERS: Final = re.compile(r"(.*\d)([A-Z])(?:\s*[/&,+]\s*)([A-Z])")
_MARK: Final = re.compile(r"[\w.#-]*\d[\w.-]*")
_MOST: Final = 60
"""Doors of one row; a longer way from one number to another is no list."""


def marks_named(mark: str) -> tuple[str, ...]:
    """Return the marks that one cell names where it names several; empty where it is one mark.

    A hyphen may stand between two rooms as well: it counts only between numbers that follow each other closely.

    Examples
    --------
    >>> marks_named("105, 106"), marks_named("107 thru 109"), marks_named("201A/B"), marks_named("101-103")
    (('105', '106'), ('107', '108', '109'), ('201A', '201B'), ('101', '102', '103'))
    >>> marks_named("101-1"), marks_named("W1-01"), marks_named("Hall, north"), marks_named("2-10")
    ((), (), (), ())
    """
    text = " ".join(mark.split())
    if match := _LETTERS.fullmatch(text):
        return f"{match[1]}{match[2]}", f"{match[1]}{match[3]}"
    found: list[str] = []
    parts = _LISTED.split(text)
    for part in parts:
        if match := _THROUGH.fullmatch(part):
            found += _between(match)
        elif _MARK.fullmatch(part):
            found.append(part)
        else:
            return ()
    return tuple(dict.fromkeys(found)) if len(found) > 1 and len(found) >= len(parts) else ()


def _between(match: re.Match[str]) -> list[str]:
    before, low, of_low, again, high, of_high = match.groups()
    low_number, high_number = int(low), int(high)
    fits = again in ("", before) and not of_low and not of_high and len(low) == len(high) and len(low) > 1
    if not fits or not 0 < high_number - low_number < _MOST:
        return []
    return [f"{before}{number:0{len(low)}d}" for number in range(low_number, high_number + 1)]


def ask_of_marks(
    openings: Sequence[SurveyedOpening], cured: Collection[str]
) -> tuple[tuple[SurveyedOpening, ...], tuple[Oddity, ...]]:
    """Find such openings among those that were read, and cure what a person said is to be cured.

    Parameters
    ----------
    openings : sequence of SurveyedOpening
        As they were read.
    cured : collection of str
        Identifiers of oddities, the cure of which was asked for.
    """
    held = {opening.mark for opening in openings}
    raised: dict[str, list[str]] = {}
    kept: list[SurveyedOpening] = []
    for opening in asking(openings):
        if says_so(opening.facts.get("notes")) or (not opening.mark.isalnum() and said_in_mark(opening.mark)):
            if DELETED in cured:
                continue
            raised.setdefault(DELETED, []).append(opening.mark)
        # Most marks are a number, and no such sign stands in them.
        marks = () if opening.mark.isalnum() else marks_named(opening.mark)
        # A mark of these that has a row of its own shows that the sign means something else.
        if not marks or not held.isdisjoint(marks):
            kept.append(opening)
        elif SEVERAL in cured:
            kept += [replace(opening, mark=mark, facts={**opening.facts, "mark": mark}) for mark in marks]
            held.update(marks)
        else:
            raised.setdefault(SEVERAL, []).append(opening.mark)
            kept.append(opening)
    return tuple(kept), tuple(Oddity(name, *_ASKED[name], tuple(raised[name])) for name in CURES if name in raised)
