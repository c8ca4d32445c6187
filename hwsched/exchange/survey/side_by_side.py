"""Openings in several blocks of the same columns beside each other, as lists are printed that shall fill a page.

Here belongs where the blocks are; each is read as a sheet with nothing but it, its cells at their places.
"""

from dataclasses import replace

from hwsched.exchange.survey.grid import Grid
from hwsched.exchange.survey.header import Header
from hwsched.exchange.survey.mapping import MARK, plain_word
from hwsched.exchange.survey.words import Meaning

_FEWEST = 2
"""Headings of a block."""


def blocks_of(grid: Grid, header: Header) -> list[tuple[Grid, Header]]:
    """Return the blocks of a sheet, each with its part of the header; the sheet itself where it is one block.

    Parameters
    ----------
    grid : Grid
        The sheet.
    header : Header
        Its header, over all of it.
    """
    marks = [index for index, meaning in enumerate(header.meanings) if meaning.target == MARK]
    if len(marks) < 2 or header.mark:
        return [(grid, header)]
    before = marks[0] - next(index for index, text in enumerate(header.texts) if text)
    starts = [index - before for index in marks]
    bounds = list(zip(starts, [*starts[1:], len(header.texts)], strict=True))
    headings = [_trimmed(header.texts[first:end]) for first, end in bounds]
    if len(headings[0]) < _FEWEST or any(each != headings[0] for each in headings):
        return [(grid, header)]
    return [(_part(grid, first, end), _of_header(header, first, end)) for first, end in bounds]


def _trimmed(texts: tuple[str, ...]) -> list[str]:
    words = [plain_word(text) for text in texts]
    while words and not words[-1]:
        del words[-1]
    return words


def _part(grid: Grid, first: int, end: int) -> Grid:
    rows = [[cell if first <= index < end else "" for index, cell in enumerate(row)] for row in grid.rows]
    merged = frozenset(each for each in grid.merged if first <= each[0][1] and each[1][1] < end)
    doubtful = {place: why for place, why in grid.doubtful.items() if first <= place[1] < end}
    return replace(grid, rows=rows, merged=merged, doubtful=doubtful)


def _of_header(header: Header, first: int, end: int) -> Header:
    inside = range(first, end)
    return replace(
        header,
        texts=tuple(text if index in inside else "" for index, text in enumerate(header.texts)),
        meanings=tuple(each if index in inside else Meaning(None) for index, each in enumerate(header.meanings)),
        read=tuple(each if index in inside else Meaning(None) for index, each in enumerate(header.read)),
    )
