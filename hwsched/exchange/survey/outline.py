"""What a survey file looks like before anything is made of it: its sheets, their columns, and what each would carry.

Here belongs what a person needs to say how a file is to be read, also where it cannot be read yet.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Final

from hwsched.attributes import as_text
from hwsched.exchange.problems import InputRejected
from hwsched.exchange.survey.corrections import mend_cells
from hwsched.exchange.survey.facts import SurveyOptions
from hwsched.exchange.survey.grid import Grid
from hwsched.exchange.survey.header import Header, find_header, map_columns
from hwsched.exchange.survey.mapping import MARK, SheetMapping
from hwsched.exchange.survey.memory import bare_unit_of, recall
from hwsched.exchange.survey.sheet import rows_with_content
from hwsched.exchange.survey.sheets import choose_sheets
from hwsched.exchange.survey.turning import TURNED, open_grids
from hwsched.exchange.survey.words import Vocabulary
from hwsched.quantities import BareUnit

_ROWS: Final = 400
"""Rows below the header from which samples are taken."""
_SAMPLES: Final = 4
_SEARCHED: Final = 30


@dataclass(frozen=True, slots=True)
class ColumnOutline:
    """A column of a sheet."""

    index: int
    """From 0."""
    header: str
    samples: tuple[str, ...]
    """Some of its different cells."""
    target: str
    """The fact that it would carry, such as ``leaf.width_mm``; empty for none."""
    unit: str
    """That its header names, or that was given."""


@dataclass(frozen=True, slots=True)
class SheetOutline:
    """A sheet of a file."""

    name: str
    header_row: int
    """Lowest row of the header, as the spreadsheet counts: found, said, or the first row with most texts."""
    columns: tuple[ColumnOutline, ...]
    rows: Sequence[Sequence[object]] = field(default=(), repr=False, compare=False)
    """All cells of the sheet."""
    header_first: int = 1
    """Topmost row of the header, as the spreadsheet counts."""
    passed: Mapping[int, str] = field(default_factory=dict)
    """Rows below the header that are no openings, as the spreadsheet counts, each with what it is."""
    has_mark: bool = False
    bare_unit: BareUnit | None = None
    """What a number without a unit is taken in, where its column names none."""


def outline(path: Path, options: SurveyOptions) -> tuple[SheetOutline, ...]:
    """Look at the sheets of a file; raises InputRejected for a file that is none.

    Parameters
    ----------
    path : Path
        As for `read_survey`.
    options : SurveyOptions
        What was said of it so far.
    """
    vocabulary = Vocabulary(options.own_fields)
    # Without the sheet that was chosen: a person who chose a wrong one has to see the others.
    grids, asked = open_grids(path, replace(options, sheet=None), vocabulary)
    named = options.sheet.removesuffix(TURNED) if options.sheet is not None else None
    if any(grid.sheet == f"{named}{TURNED}" for grid in grids):
        named = f"{named}{TURNED}"
    options = replace(asked, sheet=named)
    mend_cells(grids, options, path.name)
    try:
        chosen = choose_sheets(grids, vocabulary, options, path.name)
    except InputRejected:
        # Nothing is read of it yet; a person looks at it to say what it is.
        headers: dict[str, list[Header]] = {}
    else:
        headers = {}
        # Openings in blocks beside each other have a header each.
        for grid, header in (*chosen.openings, *chosen.lists, *chosen.types):
            headers.setdefault(grid.sheet, []).append(header)
    return tuple(_of_sheet(grid, headers.get(grid.sheet, []), vocabulary, options) for grid in grids)


def _of_sheet(grid: Grid, read: Sequence[Header], vocabulary: Vocabulary, options: SurveyOptions) -> SheetOutline:
    header = next(iter(read), None) or find_header(grid, vocabulary, options) or _likely(grid, vocabulary)
    if header is None:
        return SheetOutline(grid.sheet, options.header_row or 1, (), grid.rows)
    mappings = [map_columns(grid, each, vocabulary, options)[0] for each in read or [header]]
    carried = {column.index: column for mapping in mappings for column in mapping.columns}
    headings = [
        next(filter(None, texts), "") for texts in zip(*(each.headings for each in read or [header]), strict=True)
    ]
    below = grid.rows[header.last + 1 : header.last + 1 + _ROWS]
    return SheetOutline(
        grid.sheet,
        header.last + 1,
        tuple(
            ColumnOutline(
                index,
                text,
                _samples(below, index),
                carried[index].target.text() if index in carried else "",
                carried[index].unit if index in carried else "",
            )
            for index, text in enumerate(headings)
        ),
        grid.rows,
        header.first + 1,
        _passed(grid, mappings[0], options),
        header.has_mark,
        bare_unit_of(options, recall(options.remembered, header.headings, options.plan)),
    )


def _passed(grid: Grid, mapping: SheetMapping, options: SurveyOptions) -> dict[int, str]:
    """Return the rows below the header that are read as no openings."""
    if all(column.target != MARK for column in mapping.columns):
        return {}
    passed = {row + 1: what for row, what in rows_with_content(grid, mapping, options.last_row).passed.items()}
    if options.last_row is not None:
        passed |= dict.fromkeys(range(options.last_row + 1, len(grid.rows) + 1), "below the last row that is read")
    return passed


def _likely(grid: Grid, vocabulary: Vocabulary) -> Header | None:
    """Return the row that would be a header if its words were understood: the first of those with most texts."""
    best: tuple[int, Header] | None = None
    for index, row in enumerate(grid.rows[:_SEARCHED]):
        texts = tuple(" ".join(as_text(cell).split()) for cell in row)
        count = sum(1 for cell, text in zip(row, texts, strict=True) if text and isinstance(cell, str))
        if count and (best is None or count > best[0]):
            best = count, Header(index, index, texts, tuple(vocabulary.meaning(text) for text in texts))
    return best[1] if best else None


def _samples(rows: Sequence[Sequence[object]], index: int) -> tuple[str, ...]:
    found: dict[str, None] = {}
    for row in rows:
        if index < len(row) and (text := as_text(row[index]).strip()):
            found[text] = None
            if len(found) == _SAMPLES:
                break
    return tuple(found)
