"""The order in which people count marks, levels and other names."""

import re
from functools import lru_cache
from typing import Final

_DIGITS: Final = re.compile("([0-9]+)")


def natural(mark: str) -> tuple[tuple[int, int, str], ...]:
    """Return a key by which marks sort as people count: M2 before M10.

    Examples
    --------
    >>> sorted(["M10", "M2", "0012"], key=natural)
    ['0012', 'M2', 'M10']
    """
    parts: list[tuple[int, int, str]] = []
    for place, piece in enumerate(_DIGITS.split(mark)):
        if place % 2:
            # By length and then by text is by number, without making one of a thousand digits.
            number = piece.lstrip("0")
            parts.append((0, len(number), number))
        else:
            parts += _letters(piece)
    # What is left decides between marks such as 012 and 12, and ends before any longer mark.
    parts.append((-1, 0, mark))
    return tuple(parts)


@lru_cache(4096)
def _letters(piece: str) -> tuple[tuple[int, int, str], ...]:
    """Return what lies between digits; thousands of marks have the same."""
    return tuple((1, 0, character.casefold()) for character in piece)


def upward(height_m: float | None, sort: int | None) -> tuple[bool, float, int]:
    """Return what levels of a building are put in order by: their height where it is known, as one walks.

    By its name the ground floor would come after the third.
    """
    return height_m is None, height_m or 0.0, sort or 0
