"""Two tables in one sheet: types with what they are, above, below or beside the openings that refer to them.

They are known by their content: each has a header of its own, and the names of the one stand in a column of types of
the other. Whether the one is read as types is asked; what it is not taken for is never read as openings.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from typing import Final, Literal

from hwsched.exchange.problems import column_letter
from hwsched.exchange.survey.facts import Question
from hwsched.exchange.survey.grid import Grid
from hwsched.language import to_phrase

TABLES: Final[tuple[Literal["left-out", "types"], ...]] = (to_phrase("left-out"), to_phrase("types"))
"""What becomes of the other table of a sheet; the first where nobody says."""
_MOST_GAPS: Final = 12
"""Blank rows, or blank columns, at which a sheet is tried to be cut."""
_SHOWN: Final = 6


def cuts(grid: Grid) -> Iterator[tuple[Grid, Grid]]:
    """Yield a sheet cut in two at each blank row, then at each blank column; cells keep their places."""
    filled = [any(cell not in ("", None) for cell in row) for row in grid.rows]
    first = next((index for index, full in enumerate(filled) if full), len(filled))
    gaps = [index for index in range(first + 2, len(filled)) if filled[index] and not filled[index - 1]]
    for gap in gaps[:_MOST_GAPS]:
        yield _rows(grid, 0, gap), _rows(grid, gap, len(grid.rows))
    for gap in _blank_columns(grid, first)[:_MOST_GAPS]:
        yield _columns(grid, lambda index, gap=gap: index < gap), _columns(grid, lambda index, gap=gap: index > gap)  # type: ignore[misc]


def _blank_columns(grid: Grid, first: int) -> list[int]:
    """Return the columns without anything in them that have something on both sides, each run of them once."""
    width = max(map(len, grid.rows), default=0)
    # Most sheets have no such column, and their first rows tell it.
    blank = {index for index in range(width) if not any(_at(row, index) for row in grid.rows[first : first + 8])}
    blank = {index for index in blank if not any(_at(row, index) for row in grid.rows)}
    return [
        index
        for index in sorted(blank)
        if index - 1 not in blank and index > 0 and any(each not in blank for each in range(index + 1, width))
    ]


def _at(row: Sequence[object], index: int) -> bool:
    return index < len(row) and row[index] not in ("", None)


def _rows(grid: Grid, first: int, end: int) -> Grid:
    rows = [row if first <= index < end else [] for index, row in enumerate(grid.rows)]
    merged = frozenset(each for each in grid.merged if first <= each[0][0] and each[1][0] < end)
    return replace(grid, rows=rows, merged=merged)


def _columns(grid: Grid, wanted: Callable[[int], bool]) -> Grid:
    rows = [[cell if wanted(index) else "" for index, cell in enumerate(row)] for row in grid.rows]
    merged = frozenset(each for each in grid.merged if wanted(each[0][1]) and wanted(each[1][1]))
    return replace(grid, rows=rows, merged=merged)


def place_of(table: Grid) -> str:
    """Return where in its sheet a table stands, as the spreadsheet counts.

    Examples
    --------
    >>> place_of(Grid("f", "s", [[], ["", "Type", "W"], ["", "A", 3]]))
    'B2:C3'
    """
    places = [(r, c) for r, row in enumerate(table.rows) for c in range(len(row)) if _at(row, c)]
    rows, columns = [r for r, _ in places], [c for _, c in places]
    corners = ((min(columns), min(rows)), (max(columns), max(rows)))
    return ":".join(f"{column_letter(column)}{row + 1}" for column, row in corners)


def question(table: Grid, names: Sequence[str], header: int) -> Question:
    """Return what is asked of a table of which the names stand in a column of the openings.

    Parameters
    ----------
    table : Grid
        The sheet with nothing but it.
    names : sequence of str
        Of its rows.
    header : int
        Lowest row of its header, from 0.
    """
    rows = tuple(index + 1 for index, row in enumerate(table.rows) if index > header and any(row))
    shown = ", ".join(names[:_SHOWN]) + (" ..." if len(names) > _SHOWN else "")
    return Question(table.sheet, "", "", f"{place_of(table)} ({shown})", rows, TABLES, "table")
