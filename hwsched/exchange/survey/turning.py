"""Tables on their side: an opening in each column and a fact in each row, its headings one below the other.

They are turned before anything else is made of them: from there on they are tables like any other, and their cells are
called by where they stand once turned, in a sheet whose name says so.
"""

from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import zip_longest
from pathlib import Path
from typing import Final, Literal

from hwsched.attributes import as_text
from hwsched.exchange.survey.facts import SurveyOptions
from hwsched.exchange.survey.grid import Grid, read_grids
from hwsched.exchange.survey.header import Header, find_header
from hwsched.exchange.survey.mapping import MARK, header_keys, plain_word
from hwsched.exchange.survey.words import Vocabulary
from hwsched.exchange.workbook import Looks

OPENINGS_IN: Final[tuple[Literal["rows", "columns"], ...]] = ("rows", "columns")
"""Where an opening stands, as a person says it."""
TURNED: Final = ", turned"
"""Behind the name of a sheet that was turned."""
_FEWEST_DOWN: Final = 3
_COLUMNS_LOOKED_AT, _ROWS_LOOKED_AT, _TOP = 2, 60, 6
"""Where headings that stand below each other are looked for, and where that of the marks is."""
_SHORTEST_HEADING: Final = 4
"""Letters of a heading that is no cell of a table: no, x, y stand in many."""
_SHARE: Final = 0.6
"""Of the headings of an earlier list on its side that must stand below each other again."""


def open_grids(path: Path, options: SurveyOptions, vocabulary: Vocabulary) -> tuple[list[Grid], SurveyOptions]:
    """Read the sheets of a survey file, those on their side turned.

    Parameters
    ----------
    path : Path
        As for `read_grids`.
    options : SurveyOptions
        What the file does not say; the sheet that it names may be called as before it was turned, or as after.
    vocabulary : Vocabulary
        Headings that are understood.

    Returns
    -------
    tuple
        The sheets, and the options with the sheet's name as it is now.

    Raises
    ------
    InputRejected
        As `read_grids` does.
    """
    named = options.sheet.removesuffix(TURNED) if options.sheet else None
    grids = read_grids(path, named, options.encoding)
    on_side = _on_their_side(grids, replace(options, sheet=named), vocabulary)
    turned = [_turned(grid) if grid.sheet in on_side else grid for grid in grids]
    return turned, replace(options, sheet=f"{named}{TURNED}" if named in on_side else named)


def _on_their_side(grids: Sequence[Grid], options: SurveyOptions, vocabulary: Vocabulary) -> set[str]:
    """Return the names of the sheets that hold an opening in each column."""
    said = options.openings_in or (options.plan.openings_in if options.plan is not None else "")
    if said == "rows":
        return set()
    if said == "columns":
        return {grid.sheet for grid in grids if options.sheet in (None, grid.sheet)}
    told = {plain_word(heading): fact for heading, fact in options.columns.items() if fact}

    def fact(heading: str) -> str:
        target = vocabulary.meaning(heading).target
        return told.get(plain_word(heading)) or (target.text() if target is not None else "")

    found: list[tuple[Grid, Header | None]] = []
    for grid in grids:
        remembered = _remembered(grid, options)
        if remembered == "columns":
            return {grid.sheet}
        if remembered is None and _has_headings_down(grid, _FEWEST_DOWN, fact):
            found.append((grid, find_header(grid, vocabulary, options)))
    marked = {grid.sheet for grid, header in found if header is not None and header.has_mark}
    sure = {
        grid.sheet
        for grid, header in found
        if header is not None and header.has_mark and _has_headings_down(grid, len(header.targets) + 1, fact)
    }
    if sure or marked:
        return sure
    others = (grid for grid in grids if grid.sheet not in {each.sheet for each, _ in found})
    headers = (find_header(grid, vocabulary, options) for grid in others) if found else ()
    return set() if any(header is not None and header.has_mark for header in headers) else {g.sheet for g, _ in found}


def _remembered(grid: Grid, options: SurveyOptions) -> str | None:
    """Return what was said of such a sheet at an earlier import; None where nothing was."""
    for known in options.remembered.values():
        if not known.openings_in:
            continue
        lines = [_down(grid, index) for index in range(_COLUMNS_LOOKED_AT)]
        if known.openings_in == "rows":
            lines = [[as_text(cell).strip() for cell in row] for row in grid.rows[:_ROWS_LOOKED_AT]]
        wanted = set(known.columns)
        if wanted and any(len(wanted & set(header_keys(line))) >= _SHARE * len(wanted) for line in lines):
            return known.openings_in
    return None


def _has_headings_down(grid: Grid, most: int, fact: Callable[[str], str]) -> bool:
    """Tell whether so many headings of facts, that of the marks among them, stand below each other."""
    mark = MARK.text()
    for index in range(_COLUMNS_LOOKED_AT):
        texts = [text for text in _down(grid, index) if text]
        if not any(fact(text) == mark for text in texts[:_TOP]):
            continue
        down = {fact(text) for text in texts if len(text) >= _SHORTEST_HEADING} - {""}
        if len(down | {mark}) >= max(_FEWEST_DOWN, most):
            return True
    return False


def _down(grid: Grid, index: int) -> list[str]:
    rows = grid.rows[:_ROWS_LOOKED_AT]
    return [as_text(row[index]).strip() if index < len(row) else "" for row in rows]


def _turned(grid: Grid) -> Grid:
    looks = grid.looks
    note = "an opening in each column: read turned, so that column C and row 2 here are row 3 and column B of the file"
    return replace(
        grid,
        sheet=f"{grid.sheet}{TURNED}",
        rows=[list(row) for row in zip_longest(*grid.rows, fillvalue="")],
        merged=frozenset(((c0, r0), (c1, r1)) for (r0, c0), (r1, c1) in grid.merged),
        doubtful={(column, row): why for (row, column), why in grid.doubtful.items()},
        looks=Looks(
            looks.hidden_columns,
            looks.hidden_rows,
            frozenset((column, row) for row, column in looks.struck),
            frozenset((column, row) for row, column in looks.filled),
        ),
        notes=(*grid.notes, note),
    )
