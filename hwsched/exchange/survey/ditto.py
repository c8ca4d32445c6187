"""Cells that say no more than "as above": a ditto mark, the word for it, a blank below the name of a group.

Here belongs which cells those are and what they come to. An arrow is none: it points as often at something else.
"""

from collections.abc import Iterable, Sequence
from typing import Final

from hwsched.attributes import as_text

_MARKS: Final = frozenset(
    {
        '"', "''", "``", "\u2033", "\u201d", "\u201c", "\u201e", "\u3003", "\u2019\u2019", '-"-', '- " -', "-''-",
        "ditto", "do.", "-do-", "-ditto-", "dto", "dto.",
    }
)  # fmt: skip
_WORDS: Final = frozenset({"do", "same", "as above", "same as above", "see above", "s/a", "idem", "id."})
"""Where the fact is no text, in which they are words like others."""

_FEWEST_GROUPS: Final = 2
_LONGEST: Final = 20


def is_ditto(cell: object, *, in_text: bool) -> bool:
    """Tell whether a cell says "as above".

    Examples
    --------
    >>> [is_ditto(cell, in_text=False) for cell in ('"', "Ditto", "same", '36"', "")]
    [True, True, True, False, False]
    >>> is_ditto("same", in_text=True), is_ditto("ditto", in_text=True)
    (False, True)
    """
    if not isinstance(cell, str) or len(cell) > _LONGEST:
        return False
    text = cell.strip().casefold()
    return text in _MARKS or (not in_text and text in _WORDS)


def as_above(
    cells: Sequence[object], *, in_text: bool, different: Iterable[object] | None = None
) -> tuple[Sequence[object], int]:
    """Return the cells of a column with what stands above in place of dittos, and how many those are.

    One in the first row stays: nothing stands above it. ``different``: each of the cells once, where that is known.

    Examples
    --------
    >>> as_above(["HM", '"', "ditto", "WD"], in_text=False), as_above(['"', "WD"], in_text=False)
    ((['HM', 'HM', 'HM', 'WD'], 2), (['"', 'WD'], 0))
    """
    # Columns repeat themselves, and most have none.
    if not any(is_ditto(cell, in_text=in_text) for cell in (set(cells) if different is None else different)):
        return cells, 0
    told: list[object] = []
    count = 0
    for cell in cells:
        if told and is_ditto(cell, in_text=in_text) and as_text(told[-1]).strip():
            told.append(told[-1])
            count += 1
        else:
            told.append(cell)
    return told, count


def filled_down(cells: Sequence[object]) -> tuple[Sequence[object], int]:
    """Return the cells of a column in which each group's name stands once, in its first row, with all of them filled.

    Where a name stands there again, or the first row has none, a blank is not the group's.

    Examples
    --------
    >>> filled_down(["Level 1", "", "Level 2", ""]), filled_down(["1", "", "1", "2"]), filled_down(["", "1", "", "2"])
    ((['Level 1', 'Level 1', 'Level 2', 'Level 2'], 2), (['1', '', '1', '2'], 0), (['', '1', '', '2'], 0))
    """
    if ("" not in cells and None not in cells) or not as_text(cells[0]).strip():
        return cells, 0
    names = [text for cell in cells if (text := as_text(cell).strip())]
    if len(names) == len(cells) or len(set(names)) < len(names) or len(names) < _FEWEST_GROUPS:
        return cells, 0
    told: list[object] = []
    for cell in cells:
        told.append(cell if as_text(cell).strip() else told[-1])
    return told, len(cells) - len(names)
