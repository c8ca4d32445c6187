"""Another table that stands below the openings of a sheet: sets of hardware, types of frames, a legend.

Here belongs by what its heading is known; its rows are no openings, whatever their first cells hold.
"""

import re
from collections.abc import Sequence
from typing import Final

from hwsched.attributes import as_text
from hwsched.exchange.survey.mapping import plain_word

_WORDS: Final = frozenset(
    map(
        plain_word,
        (
            "set", "hw set", "hardware set", "group", "item", "items", "qty", "quantity", "pcs", "no", "nr",
            "number", "mark", "symbol", "code", "abbreviation", "abbr", "meaning", "description", "legend", "type",
            "frame type", "door type", "glass type", "finish", "manufacturer", "maker", "model", "supplier",
            "catalog no", "catalogue no", "part", "part no", "unit", "price", "remarks", "remark", "notes", "note",
            "comments", "material", "width", "height", "thickness", "size", "depth", "elevation", "detail", "glass",
            "function", "key", "keying", "name", "date", "revision", "rev", "by", "door", "doors", "opening", "room",
            "level", "rating", "hand",
        ),
    )
)  # fmt: skip
"""Headings of the tables that stand below door lists: common practice."""
_FEWEST: Final = 3
_SHARE: Final = 0.6
_DIGIT: Final = re.compile(r"\d")


def heads_another(line: Sequence[object]) -> bool:
    """Tell whether a row is the heading of a table: words alone, most of them such as stand over columns.

    Examples
    --------
    >>> heads_another(["Set", "Item", "Qty", "Finish"]), heads_another(["North", "Hall", "Set", "HM"])
    (True, False)
    """
    texts = [text for cell in line if (text := as_text(cell).strip())]
    if len(texts) < _FEWEST or any(map(_DIGIT.search, texts)):
        return False
    return sum(plain_word(text) in _WORDS for text in texts) >= _SHARE * len(texts)


def end_of(rows: Sequence[Sequence[object]], first: int) -> int:
    """Return the row, from 0, at which another table begins below that whose rows begin at ``first``, else the end."""
    apart = False
    for place in range(first, len(rows)):
        if apart and heads_another(rows[place]):
            return place
        # Below an empty row, or a title alone in its row.
        filled = (cell for cell in rows[place] if cell not in ("", None))
        apart = next(filled, None) is None or next(filled, None) is None
    return len(rows)
