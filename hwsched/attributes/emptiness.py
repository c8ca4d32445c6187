"""Marks with which people fill a cell that says nothing: a dash, a zero, a dot, n/a.

Here belongs what such a mark is. What it means in a column only the person knows who filled it in: as a value it is
unknown, and where another reading is near it is asked.
"""

from typing import Final

from hwsched.attributes.attribute import Attribute

NOT_APPLICABLE: Final = frozenset({"n/a", "na", "n.a.", "n.a", "n / a", "#n/a#", "not applicable", "n.appl."})
"""Words that say that a fact does not apply; for the fact itself nothing follows from them."""
_STROKES: Final = frozenset("-\u2010\u2011\u2012\u2013\u2014\u2015\u2212\uff0d/\\|._*\u00b7\u2022\u2026~\u2205\u00d8 ")
_LETTERS: Final = frozenset({"0", "x", "\u00d7", "\u2717", "\u2718", "\u00f8", "nil."})
_LONGEST: Final = 16
UNKNOWN: Final = "unknown"
"""The answer to what such a mark means that is taken until somebody gives another."""


def is_stroke(cell: object) -> bool:
    """Tell whether a cell holds only dashes, slashes or dots, or a word for "not applicable".

    Examples
    --------
    >>> [is_stroke(cell) for cell in ("-", "\u2014", " / ", "...", "N/A", "0", "x", "2-1", "", 0.0)]
    [True, True, True, True, True, False, False, False, False, False]
    """
    if not isinstance(cell, str):
        return False
    text = cell.strip().casefold()
    return 0 < len(text) <= _LONGEST and (text in NOT_APPLICABLE or _STROKES.issuperset(text))


def marks_emptiness(cell: object) -> bool:
    """Tell whether a cell may be filled in to say that there is nothing to say: also by a zero, a cross, an empty box.

    Examples
    --------
    >>> [marks_emptiness(cell) for cell in ("-", "0", 0.0, "x", "none", False, 1, "")]
    [True, True, True, True, False, False, False, False]
    """
    if isinstance(cell, str):
        return is_stroke(cell) or cell.strip().casefold() in _LETTERS
    return isinstance(cell, int | float) and not isinstance(cell, bool) and cell == 0


def other_meanings(attribute: Attribute) -> tuple[str, ...]:
    """Return what else than unknown a mark of emptiness may well mean for a fact; none where nothing else is near.

    Examples
    --------
    >>> other_meanings(Attribute("stair", "Stair door", "flag")), other_meanings(Attribute("mark", "Mark"))
    (('no',), ())
    """
    if attribute.kind == "flag":
        return ("no",)
    if attribute.kind != "choice":
        return ()
    return tuple(choice.value for choice in attribute.choices if choice.value in ("none", "any"))
