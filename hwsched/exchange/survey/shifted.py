"""Rows whose values stand one column too far: a cell was put in or left out, and everything behind it is another's.

Here belongs how such a row is known: some of its cells cannot be read where they stand, and all can one column further.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from hwsched.attributes import CellError, CellReader, as_text
from hwsched.exchange.problems import CellProblem, column_letter
from hwsched.exchange.survey.column import bare_unit_of
from hwsched.exchange.survey.mapping import SheetMapping, Target
from hwsched.exchange.survey.sheet import SheetFacts
from hwsched.exchange.survey.words import Vocabulary
from hwsched.quantities import ReadingError, read_length

CURE: Final = "shifted"
_FEWEST: Final = 2
"""Filled cells that must fit better where they would be moved to."""
_MOST: Final = 200
"""Rows that are looked at; beyond, the columns are other ones than was thought."""


@dataclass(frozen=True, slots=True)
class Shifted:
    """A row whose values stand one column too far."""

    row: int
    """In the sheet, from 0."""
    first: int
    """Column, from 0, from which on."""
    to_the_right: bool
    line: tuple[object, ...]
    """The row as it would be."""

    def describe(self) -> str:
        """Return what is wrong with it.

        Examples
        --------
        >>> Shifted(4, 2, True, ()).describe()
        'has its values from column C on one column too far to the right'
        """
        way = "right" if self.to_the_right else "left"
        return f"has its values from column {column_letter(self.first)} on one column too far to the {way}"


def find_shifted(
    sheet: SheetFacts, mapping: SheetMapping, vocabulary: Vocabulary, bare_unit: str | None
) -> list[Shifted]:
    """Find the shifted ones among the rows with refused cells."""
    if not sheet.bad or len(sheet.bad) > _MOST:
        return []
    readers = {column.index: _reader(column.target, column.unit or bare_unit, vocabulary) for column in mapping.columns}
    found = (_of_row(sheet.grid.rows[sheet.rows[entry]], sheet.rows[entry], readers) for entry in sorted(sheet.bad))
    return [shifted for shifted in found if shifted is not None]


def name_shifted(sheet: SheetFacts, found: Sequence[Shifted]) -> None:
    """Say of each shifted row that it is one, in place of what is wrong with each of its cells."""
    rows = {shifted.row + 1 for shifted in found}
    sheet.problems = [problem for problem in sheet.problems if problem.row not in rows]
    for shifted in found:
        read = " | ".join(as_text(cell) for cell in sheet.grid.rows[shifted.row])
        sheet.problems.append(
            CellProblem(
                sheet.grid.file, sheet.grid.sheet, shifted.row + 1, "", "", read, shifted.describe(),
                "each value below its heading, or --cure shifted",
            )
        )  # fmt: skip


def _reader(target: Target, unit: str | None, vocabulary: Vocabulary) -> Callable[[object], object]:
    attribute = vocabulary.attribute(target)
    if attribute is None:
        return lambda cell: read_length(cell, bare_unit_of(unit)) if as_text(cell).strip() else None
    return CellReader(attribute, unit if attribute.kind == "length" else None).read


def _of_row(line: Sequence[object], row: int, readers: Mapping[int, Callable[[object], object]]) -> Shifted | None:
    wrong = [index for index, read in readers.items() if not _reads(read, _at(line, index))]
    if not wrong:
        return None
    for first in range(min(wrong), -1, -1):
        left = (*line[:first], *line[first + 1 :]) if not as_text(_at(line, first)).strip() else None
        right = (*line[:first], "", *line[first:])
        for moved, to_the_right in ((left, True), (right, False)):
            if moved is None or first == 0:
                continue
            behind = [index for index in readers if index >= first and as_text(_at(moved, index)).strip()]
            if len(behind) >= _FEWEST and all(_reads(read, _at(moved, index)) for index, read in readers.items()):
                return Shifted(row, first + to_the_right, to_the_right, moved)
    return None


def _at(line: Sequence[object], index: int) -> object:
    return line[index] if index < len(line) else ""


def _reads(read: Callable[[object], object], cell: object) -> bool:
    try:
        read(cell)
    except (CellError, ReadingError):
        return False
    return True
