"""How marks are made where no cell holds one whole: out of several columns, or counted where a row stands for several.

A pattern is a text with places in braces, such as ``{Level}-{No}`` or ``{mark}-{n}``. Here belongs what a pattern says;
which columns or counts fill it stands in `header`, `counts` and `types`.
"""

import re
from collections.abc import Callable, Mapping
from typing import Final

from hwsched.exchange.problems import column_letter

_PLACE: Final = re.compile(r"\{([^{}]*)\}")
COUNTED: Final = ("n", "nn", "letter")
"""Places that count: 1, 2, 3; 01, 02, 03; A, B, C."""
OF_ROWS: Final = ("mark", "type", "level", "building")
"""Places that the row of several doors fills."""


def places(pattern: str) -> tuple[str, ...]:
    """Return the names in a pattern's braces, in their order; none where it is no pattern.

    Examples
    --------
    >>> places("{Level}-{No}"), places("{mark}{letter}"), places("one"), places("{a"), places("{}")
    (('Level', 'No'), ('mark', 'letter'), (), (), ())
    """
    found = tuple(name.strip() for name in _PLACE.findall(pattern))
    rest = _PLACE.sub("", pattern)
    return () if "{" in rest or "}" in rest or not all(found) else found


def filled(pattern: str, of: Callable[[str], str]) -> str:
    """Fill a pattern.

    Examples
    --------
    >>> filled("{Level}-{No}", {"Level": "2", "No": "14"}.__getitem__)
    '2-14'
    """
    return _PLACE.sub(lambda match: of(match[1].strip()), pattern)


def is_counting(pattern: str) -> bool:
    """Tell whether a pattern makes marks of a row that stands for several doors: it counts, and names only its row.

    Examples
    --------
    >>> [is_counting(text) for text in ("{mark}-{n}", "{type}-{level}-{nn}", "{mark}", "{Qty}-{n}", "one")]
    [True, True, False, False, False]
    """
    names = places(pattern)
    return any(name in COUNTED for name in names) and all(name in (*COUNTED, *OF_ROWS) for name in names)


class Numbering:
    """Counts the doors of one pattern: each mark that it makes is made once.

    Parameters
    ----------
    pattern : str
        For which `is_counting` holds.

    Examples
    --------
    >>> numbering = Numbering("{type}-{n}")
    >>> [numbering.next({"type": of}) for of in ("A", "A", "B")]
    ['A-1', 'A-2', 'B-1']
    """

    def __init__(self, pattern: str) -> None:
        self.pattern = pattern
        self._counts: dict[str, int] = {}

    def next(self, of: Mapping[str, str]) -> str:
        """Return the next mark of a row that says this of itself."""
        group = filled(self.pattern, lambda name: "" if name in COUNTED else of.get(name, ""))
        count = self._counts[group] = self._counts.get(group, 0) + 1
        numbers = {"n": str(count), "nn": f"{count:02}", "letter": column_letter(count - 1)}
        return filled(self.pattern, lambda name: numbers[name] if name in numbers else of.get(name, ""))
