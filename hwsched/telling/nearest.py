"""Names that are nearly what was typed: the one place that looks for them."""

import difflib
from collections.abc import Iterable
from typing import Final

_MOST: Final = 3
_LIKE: Final = 0.6


def nearest(word: str, names: Iterable[str], most: int = _MOST) -> tuple[str, ...]:
    """Return the names that are nearly a word, the nearest first; capital letters count for nothing.

    Examples
    --------
    >>> nearest("mil house", ["Mill House", "Boat Shed"])
    ('Mill House',)
    """
    spelled: dict[str, str] = {}
    for name in names:
        spelled.setdefault(name.casefold(), name)
    near = difflib.get_close_matches(word.casefold(), list(spelled), n=most, cutoff=_LIKE)
    return tuple(spelled[each] for each in near)


def nearest_words(word: str, names: Iterable[str]) -> str:
    """Return what follows a refusal: the nearest name; empty where none is near.

    Examples
    --------
    >>> nearest_words("M1O1", ["M101", "A1"])
    '; nearest: M101'
    """
    near = nearest(word, names, 1)
    return f"; nearest: {near[0]}" if near else ""
