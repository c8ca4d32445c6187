"""Tables that say how many doors of each type there are on each level: types down and levels across, or the other way.

Here belongs where such a table stands and what its cells say; which facts a type has stands in `types`, how marks are
made of the counts in `counts`.
"""

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from hwsched.attributes import as_text
from hwsched.attributes.emptiness import marks_emptiness
from hwsched.exchange.survey.counts import count_of
from hwsched.exchange.survey.grid import Grid
from hwsched.exchange.survey.lines import line_kind
from hwsched.exchange.survey.mapping import plain_word

_SEARCHED: Final = 30
_SHARE: Final = 0.6
"""Of the cells beside or above the counts that are types."""
_TOTALS: Final = frozenset({"total", "totals", "sum", "qty", "quantity", "grandtotal", "totalqty", "count", "all"})


@dataclass(frozen=True, slots=True)
class Counted:
    """A cell that says how many doors of a type there are at a place."""

    row: int
    """In the sheet, from 0."""
    of_type: str
    place: str
    """Level, as it is headed."""
    count: int


@dataclass(frozen=True, slots=True)
class CountTable:
    """Such a table."""

    grid: Grid
    header_row: int
    """As the spreadsheet counts."""
    cells: tuple[Counted, ...]
    totals: tuple[str, ...]
    """Types of which a column of totals says another number than the cells of the row."""


def find_counts(grid: Grid, types: Collection[str]) -> CountTable | None:
    """Find a table of counts in a sheet.

    Parameters
    ----------
    grid : Grid
        The sheet.
    types : collection of str
        Names of the known types in plain form.
    """
    if not types:
        return None
    for index, row in enumerate(grid.rows[:_SEARCHED]):
        headings = [" ".join(as_text(cell).split()) for cell in row]
        if sum(1 for text in headings if text) < 2:
            continue
        found = _types_down(grid, index, headings, types) or _types_across(grid, index, headings, types)
        if found is not None:
            return found
    return None


def levels_beside(
    grid: Grid,
    header_row: int,
    headings: Sequence[str],
    key: int,
    carried: Collection[int],
    quantity: int | None,
) -> CountTable | None:
    """Return the counts that stand in a table of types itself: in columns headed as levels, or in one of all."""
    columns = {
        index: text
        for index, text in enumerate(headings)
        if index not in carried
        and text
        and (kind := line_kind([text], 0, below=False, digits=False))
        and kind.kind == "level"
    }
    if not columns and quantity is not None:
        columns = {quantity: ""}
    return _table(grid, header_row, key, columns, headings) if columns else None


def _types_down(grid: Grid, header: int, headings: Sequence[str], types: Collection[str]) -> CountTable | None:
    below = grid.rows[header + 1 :]
    for key in range(min(3, len(headings))):
        names = [plain_word(as_text(line[key])) for line in below if key < len(line) and as_text(line[key]).strip()]
        if not names or sum(name in types for name in names) < _SHARE * len(names):
            continue
        columns = {
            index: text
            for index, text in enumerate(headings)
            if index > key and text and plain_word(text) not in _TOTALS and _holds_counts(below, index)
        }
        return _table(grid, header + 1, key, columns, headings) if columns else None
    return None


def _table(
    grid: Grid, header_row: int, key: int, columns: dict[int, str], headings: Sequence[str]
) -> CountTable | None:
    cells: list[Counted] = []
    off: list[str] = []
    total = next((i for i, text in enumerate(headings) if plain_word(text) in _TOTALS and i not in columns), None)
    for index, line in enumerate(grid.rows[header_row:], header_row):
        name = as_text(line[key]).strip() if key < len(line) else ""
        if not name or plain_word(name) in _TOTALS or line_kind(line, key, below=False, digits=False) is not None:
            continue
        found = [
            Counted(index, name, place, count)
            for column, place in columns.items()
            if column < len(line) and (count := count_of(line[column]))
        ]
        told = count_of(line[total]) if total is not None and total < len(line) else None
        if told is not None and told != sum(cell.count for cell in found):
            off.append(name)
        cells += found
    return CountTable(grid, header_row, tuple(cells), tuple(off)) if cells else None


def _types_across(grid: Grid, header: int, headings: Sequence[str], types: Collection[str]) -> CountTable | None:
    named = {i: text for i, text in enumerate(headings) if i and text and plain_word(text) not in _TOTALS}
    known = {i: text for i, text in named.items() if plain_word(text) in types}
    if len(known) < 2 or len(known) < _SHARE * len(named):
        return None
    if not any(_holds_counts(grid.rows[header + 1 :], index) for index in known):
        return None
    # A type that no table has is counted too: it is named, not passed over.
    counted = {index: text for index, text in named.items() if _holds_counts(grid.rows[header + 1 :], index)}
    cells = tuple(_across(grid, header, counted))
    return CountTable(grid, header + 1, cells, ()) if cells else None


def _across(grid: Grid, header: int, known: dict[int, str]) -> Iterator[Counted]:
    for index, line in enumerate(grid.rows[header + 1 :], header + 1):
        place = as_text(line[0]).strip() if line else ""
        if not place or plain_word(place) in _TOTALS:
            continue
        found = line_kind(line, 0, below=False, digits=False)
        if found is not None and found.kind == "total":
            continue
        for column, of_type in known.items():
            if column < len(line) and (count := count_of(line[column])):
                yield Counted(index, of_type, place, count)


def _holds_counts(below: Sequence[Sequence[object]], index: int) -> bool:
    cells = [line[index] for line in below if index < len(line) and as_text(line[index]).strip()]
    return any(count_of(cell) for cell in cells) and all(
        count_of(cell) is not None or marks_emptiness(cell) for cell in cells
    )
