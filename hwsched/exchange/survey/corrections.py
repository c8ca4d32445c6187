"""Cells that a person mended on the spot: the file stays as it is, the mend is kept beside it with its author.

A mend is known by its sheet and cell. It is made again in a later delivery as long as the same wrong text stands there.
"""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from hwsched.attributes import as_text
from hwsched.exchange.problems import FileProblem, column_letter
from hwsched.exchange.sheet_scan import column_index
from hwsched.exchange.survey.facts import SurveyOptions
from hwsched.exchange.survey.grid import Grid

_CELL: Final = re.compile(r"(?:(?P<sheet>.*)!)?\$?(?P<letters>[A-Za-z]{1,3})\$?(?P<row>[1-9][0-9]{0,6})")


@dataclass(frozen=True, slots=True)
class Correction:
    """A cell that reads otherwise than it stands."""

    sheet: str
    cell: str
    """Such as ``C7``."""
    was: str
    now: str
    by: str = ""
    """Who mended it at an earlier import; empty: the person at work now."""

    def describe(self) -> str:
        """Return the mend in words.

        Examples
        --------
        >>> Correction("Doors", "C7", "3..6", "36", "ann").describe()
        'Doors C7: "3..6" read as "36", mended by ann'
        """
        author = f", mended by {self.by}" if self.by else ", mended"
        return f'{self.sheet} {self.cell}: "{self.was}" read as "{self.now}"{author}'


def cell_name(row: int, column: int) -> str:
    """Return the name of a cell, both counted from 0.

    Examples
    --------
    >>> cell_name(6, 2)
    'C7'
    """
    return f"{column_letter(column)}{row + 1}"


def mend_cells(grids: Sequence[Grid], options: SurveyOptions, file: str) -> tuple[list[Correction], list[FileProblem]]:
    """Mend the cells that a person mended, now or at an earlier import of such a file."""
    remembered = dict.fromkeys(each for known in options.remembered.values() for each in known.corrections)
    if not options.corrections and not remembered:
        return [], []
    return mend(grids, options.corrections, [Correction(*each) for each in remembered], file)


def mend(
    grids: Iterable[Grid], told: Mapping[str, str], remembered: Iterable[Correction], file: str
) -> tuple[list[Correction], list[FileProblem]]:
    """Mend cells in what was read of a file.

    Parameters
    ----------
    grids : iterable of Grid
        Their cells are replaced.
    told : mapping of str to str
        What a person says of a cell now, by ``Sheet!C7``; by ``C7`` where the file has one sheet alone.
    remembered : iterable of Correction
        Of earlier imports: made where the cell still holds what it held.
    file : str
        Its name.

    Returns
    -------
    tuple
        Mends that were made, and what is wrong with those that were told.
    """
    every = list(grids)
    by_name = {grid.sheet: grid for grid in every}
    made: list[Correction] = []
    problems: list[FileProblem] = []
    mended: set[tuple[str, str]] = set()
    for name, now in told.items():
        match = _CELL.fullmatch(name.strip())
        grid = None if match is None else by_name.get(match["sheet"]) if match["sheet"] else every[0] if every else None
        if match is None or grid is None or (not match["sheet"] and len(every) > 1):
            problems.append(
                FileProblem(file, f"has no cell {name}", accepted="a cell with its sheet, such as Doors!C7")
            )
            continue
        row, column = int(match["row"]) - 1, column_index(match["letters"].upper())
        if row >= len(grid.rows) or column >= max(map(len, grid.rows)):
            problems.append(FileProblem(file, f"has nothing at {name}", grid.sheet, "a cell of the table"))
            continue
        made.append(_put(grid, row, column, now))
        mended.add((grid.sheet, made[-1].cell))
    for old in remembered:
        match, grid = _CELL.fullmatch(old.cell), by_name.get(old.sheet)
        if match is None or grid is None or (old.sheet, old.cell) in mended:
            continue
        row, column = int(match["row"]) - 1, column_index(match["letters"])
        if row < len(grid.rows) and column < len(grid.rows[row]) and as_text(grid.rows[row][column]) == old.was:
            grid.rows[row][column] = old.now
            made.append(old)
    return made, problems


def _put(grid: Grid, row: int, column: int, now: str) -> Correction:
    line = grid.rows[row]
    line += [""] * (column + 1 - len(line))
    was = as_text(line[column])
    line[column] = now
    grid.doubtful.pop((row, column), None)
    return Correction(grid.sheet, cell_name(row, column), was, now)
