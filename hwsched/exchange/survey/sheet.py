"""A survey sheet while it is read: the rows that hold something, and what is said of its cells.

Here belong titles and repeated headers among the rows, merged cells, and the wording of refusals and assumptions. How
cells become facts stands in `survey_columns`.
"""

import re
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import Any, Final

from hwsched.attributes import CellError, as_text
from hwsched.exchange.problems import CellProblem, column_letter, problem_of, row_ranges
from hwsched.exchange.survey.another_table import heads_another
from hwsched.exchange.survey.facts import Assumption, Question, QuestionKind
from hwsched.exchange.survey.grid import Grid
from hwsched.exchange.survey.lines import Line, line_kind, mostly_digits
from hwsched.exchange.survey.mapping import MARK, MappedColumn, SheetMapping, Target, plain_word
from hwsched.exchange.survey.no_doors import measured_in, says_no_door
from hwsched.exchange.survey.title_block import places_above

_PLACE: Final = ("building", "level")
_TITLE_COLUMNS: Final = 3
"""Over so many columns, and alone in its row, a merged cell is a title among the openings."""


@dataclass
class SheetFacts:
    """The facts of a sheet: lists of equal length, one entry a row that holds something."""

    grid: Grid
    rows: list[int]
    """Row in the sheet, from 0, of each entry."""
    columns: dict[Target, list[Any]] = field(default_factory=dict)
    """Value of each fact by entry; None where unknown."""
    bad: set[int] = field(default_factory=set)
    """Entries in which a cell is refused."""
    no_mark: set[int] = field(default_factory=set)
    """Entries whose mark is refused, so that nobody knows to which opening they belong."""
    places: list[tuple[str | None, str | None]] = field(default_factory=list)
    """Building and level that the titles above each entry, or the sheet's name, say."""
    counts: dict[int, int] = field(default_factory=dict)
    """Doors for which an entry stands, where a person said what becomes of them."""
    apart: set[int] = field(default_factory=set)
    """Entries that stand below an empty row: they do not go on with what stands above it."""
    problems: list[CellProblem] = field(default_factory=list)
    assumptions: list[Assumption] = field(default_factory=list)
    passed_over: list[str] = field(default_factory=list)
    passed: dict[int, str] = field(default_factory=dict)
    """Rows, from 0, that are no openings, with what they are."""
    questions: list[Question] = field(default_factory=list)

    def pass_over(self, row: int, what: str) -> None:
        """Note down that a row, from 0, is no opening."""
        self.passed[row] = what
        self.passed_over.append(f"sheet {self.grid.sheet}, row {row + 1}: {what}")


def rows_with_content(grid: Grid, mapping: SheetMapping, last_row: int | None = None) -> SheetFacts:
    """Find the rows that hold something; pass over titles, totals and notes among them, and headers that are repeated.

    Parameters
    ----------
    grid : Grid
        The sheet.
    mapping : SheetMapping
        Where its header stands, and which column is the mark.
    last_row : int or None
        Last row of the table, as the spreadsheet counts; None finds it.
    """
    sheet = SheetFacts(grid, [])
    titles = {r0 for (r0, c0), (r1, c1) in grid.merged if r0 == r1 and c1 - c0 + 1 >= _TITLE_COLUMNS}
    doubtful = {row for row, _ in grid.doubtful}
    mark = next((c for c in mapping.columns if c.target == MARK), None)
    heading = plain_word(mark.header) if mark else ""
    header = [plain_word(as_text(cell)) for cell in grid.rows[mapping.header_row - 1]]
    apart = below = False
    at = mark.index if mark else None
    digits = at is not None and mostly_digits([row[at] for row in grid.rows[mapping.header_row :] if at < len(row)])
    building, level = _of_sheet_name(grid.sheet.removesuffix(", turned"))
    told = places_above(grid.rows[: max(mapping.header_row - 1, 0)])
    building, level = told.get("building", building), told.get("level", level)
    measures = measured_in(mapping)
    above = grid.rows[: max(mapping.header_row - 1, 0)]
    titles_above = {_without_numbers(row) for row in above} - {""}
    begin = {_NO_LETTERS.sub("", _first(row)) for row in above}
    another: list[int] = []
    for row in range(mapping.header_row, min(len(grid.rows), last_row or len(grid.rows))):
        line = grid.rows[row]
        if another or (apart and digits and sheet.rows and heads_another(line)):
            if [plain_word(as_text(cell)) for cell in line] != header:
                another.append(row)
                continue
            _pass_over_table(sheet, another)
        if not _filled(line) and row not in doubtful:
            apart = True
        # Merged and alone in its row it is a title, such as a level's name; as a row it would be an opening without
        # facts.
        elif found := _no_opening(line, at, merged=row in titles, below=below, digits=digits):
            sheet.pass_over(row, _passed_as(found))
            apart = True
            below = below or (
                found.kind == "note" or (found.kind == "total" and not found.text.lower().startswith("sub"))
            )
            if found.kind == "level":
                level, below = found.text, False
            elif found.kind == "building":
                building, level, below = found.text, None, False
        elif titles_above and _NO_LETTERS.sub("", _first(line)) in begin and _without_numbers(line) in titles_above:
            sheet.pass_over(row, f"a title again ({_first(line)})")
            apart = True
        elif mark is not None and (word := says_no_door(line, mark.index, measures)):
            sheet.pass_over(row, f"{as_text(line[mark.index])}, {word.lower()}")
        elif (
            mark is not None
            and mark.index < len(line)
            and isinstance(line[mark.index], str)
            and plain_word(str(line[mark.index])) == heading
            and [plain_word(as_text(cell)) for cell in line] == header
        ):
            sheet.pass_over(row, "the header again")
            apart = True
        else:
            if apart:
                sheet.apart.add(len(sheet.rows))
            sheet.rows.append(row)
            sheet.places.append((building, level))
            apart = False
    _pass_over_table(sheet, another)
    return sheet


def _passed_as(line: Line) -> str:
    """Say what a row is that is no opening; a sentence for each, so that each can be said in other languages."""
    if line.kind == "total":
        return f"a total ({line.text})"
    if line.kind == "note":
        return f"a note ({line.text})"
    return f"a rule ({line.text})" if line.kind == "rule" else f"a title ({line.text})"


def _pass_over_table(sheet: SheetFacts, rows: list[int]) -> None:
    """Note down the rows, from 0, of another table below the openings; then there are none left."""
    filled = [row for row in rows if _filled(sheet.grid.rows[row])]
    if filled:
        what = f"another table ({_first(sheet.grid.rows[filled[0]])})"
        sheet.passed |= dict.fromkeys(filled, what)
        ranges = row_ranges([row + 1 for row in filled])
        sheet.passed_over.append(f"sheet {sheet.grid.sheet}, rows {ranges}: {what}, not read")
    rows.clear()


def _no_opening(line: Sequence[object], mark: int | None, *, merged: bool, below: bool, digits: bool) -> Line | None:
    if mark is None:
        return None
    found = line_kind(line, mark, below=below, digits=digits)
    if found is None and merged and sum(cell not in ("", None) for cell in line) == 1:
        return Line("title", _first(line))
    return found


def _of_sheet_name(name: str) -> tuple[str | None, str | None]:
    """Return the building and the level that a sheet's name says: one sheet for each of them is common practice."""
    found = line_kind([name], 0, below=False, digits=False)
    if _BUILDING.fullmatch(name.strip()) or (found is not None and found.kind == "building"):
        return name.strip(), None
    return None, found.text if found is not None and found.kind == "level" else None


_BUILDING: Final = re.compile(r"\S.*\b(?:building|bldg\.?|block|wing|tower)", re.IGNORECASE)


def fill_places(sheet: SheetFacts) -> None:
    """Give rows whose own cells say nothing of their building and level those of the title above them."""
    for place, name in enumerate(_PLACE):
        told = [each[place] for each in sheet.places]
        if not any(told):
            continue
        target = Target("opening", name)
        held = sheet.columns.get(target) or [None] * len(sheet.rows)
        sheet.columns[target] = [own if own is not None else above for own, above in zip(held, told, strict=True)]
        filled = Counter(above for own, above in zip(held, told, strict=True) if own is None and above is not None)
        sheet.assumptions += [
            Assumption(
                sheet.grid.sheet,
                "",
                "",
                f"building {above} taken from the title above or the sheet's name"
                if name == "building"
                else f"level {above} taken from the title above or the sheet's name",
                count,
            )
            for above, count in filled.items()
        ]


def _without_numbers(line: Sequence[object]) -> str:
    """Return the words of a row without numbers, by which a page's heading is known again on the next."""
    words = [word for cell in line if (word := _NO_LETTERS.sub("", as_text(cell).casefold()))]
    return " ".join(words) if sum(map(len, words)) >= _FEWEST_LETTERS else ""


_NO_LETTERS: Final = re.compile(r"[\W\d_]+")
_FEWEST_LETTERS: Final = 6


def _filled(line: Sequence[object]) -> bool:
    # Nearly every row answers at its first cell, which is the mark.
    return any(cell.strip() if isinstance(cell, str) else cell is not None for cell in line)


def _first(line: Sequence[object]) -> str:
    return next((as_text(cell) for cell in line if cell not in ("", None)), "")


def fill_merged(sheet: SheetFacts, mapping: SheetMapping, cells: list[tuple[object, ...]]) -> None:
    """Give the value of a cell merged over rows to each of them; ask about one merged over several facts."""
    mapped = {column.index: column for column in mapping.columns}
    entry_of = {row: entry for entry, row in enumerate(sheet.rows)}
    filled: dict[int, list[object]] = {}
    counts: Counter[int] = Counter()
    for (r0, c0), (r1, c1) in sorted(sheet.grid.merged):
        first = entry_of.get(r0)
        over = [index for index in range(c0, c1 + 1) if index in mapped]
        if first is None or not over or c0 >= len(cells):
            continue
        if len(over) > 1:
            if cells[c0][first] not in ("", None):
                letters = f"{column_letter(c0)} to {column_letter(c1)}"
                message = f"is merged over columns {letters}, so that nobody knows which fact it is"
                refuse(sheet, first, mapped[over[0]], cells[c0][first], message, "each fact in a cell of its own")
        # A mark merged over rows stays in the first: the rows below go on with that opening, and would else be second
        # rows of it.
        elif over[0] == c0 and mapped[c0].target != MARK:
            values = filled.setdefault(c0, list(cells[c0]))
            for row in range(r0 + 1, r1 + 1):
                if (entry := entry_of.get(row)) is not None:
                    values[entry] = cells[c0][first]
                    counts[c0] += 1
    for index, values in filled.items():
        cells[index] = tuple(values)
        if counts[index]:
            assume(sheet, mapped[index], "a cell merged over rows taken for each of them", counts[index])


def refuse_doubtful(sheet: SheetFacts, mapping: SheetMapping) -> None:
    """Refuse the cells that come back empty and are not: formulas without a stored value, errors."""
    if not sheet.grid.doubtful:
        return
    mapped = {column.index: column for column in mapping.columns}
    entry_of = {row: entry for entry, row in enumerate(sheet.rows)}
    for (row, index), message in sorted(sheet.grid.doubtful.items()):
        if index in mapped and (entry := entry_of.get(row)) is not None:
            refuse(sheet, entry, mapped[index], "", message, "")


def unread(sheet: SheetFacts, indices: Iterable[int]) -> dict[int, int]:
    """Count the filled cells of columns that carry no fact."""
    lines = [sheet.grid.rows[row] for row in sheet.rows]
    return {index: sum(1 for line in lines if index < len(line) and line[index] not in ("", None)) for index in indices}


def refuse_cell(sheet: SheetFacts, entry: int, column: MappedColumn, error: CellError) -> None:
    """Refuse a cell for the reason that its reader gives."""
    place = sheet.grid.file, sheet.grid.sheet
    problem = problem_of(
        error, file=place[0], sheet=place[1], row=sheet.rows[entry] + 1, column=column.index, header=column.header
    )
    _note(sheet, entry, column, problem)


def refuse(sheet: SheetFacts, entry: int, column: MappedColumn, cell: object, message: str, accepted: str) -> None:
    """Refuse a cell for a reason that lies outside it, such as the rest of its column."""
    letter = column_letter(column.index)
    row = sheet.rows[entry] + 1
    problem = CellProblem(
        sheet.grid.file, sheet.grid.sheet, row, letter, column.header, as_text(cell), message, accepted
    )
    _note(sheet, entry, column, problem)


def refuse_header(sheet: SheetFacts, column: MappedColumn, error: CellError) -> None:
    """Refuse what was said of a column as a whole."""
    letter = column_letter(column.index)
    message = f"what was said of this column {error.message}"
    sheet.problems.append(
        CellProblem(sheet.grid.file, sheet.grid.sheet, 0, letter, column.header, error.read, message, error.accepted)
    )


def _note(sheet: SheetFacts, entry: int, column: MappedColumn, problem: CellProblem) -> None:
    sheet.problems.append(problem)
    sheet.bad.add(entry)
    if column.target == MARK:
        sheet.no_mark.add(entry)


def assume(sheet: SheetFacts, column: MappedColumn, text: str, count: int) -> None:
    """Note down what was assumed for cells of a column."""
    sheet.assumptions.append(Assumption(sheet.grid.sheet, column_letter(column.index), column.header, text, count))


def ask(
    sheet: SheetFacts,
    column: MappedColumn,
    read: str,
    entries: Iterable[int],
    answers: tuple[str, ...],
    kind: QuestionKind = "dash",
    word: str = "",
) -> None:
    """Note down what only a person can say of cells of a column."""
    rows = tuple(sheet.rows[entry] + 1 for entry in entries)
    letter = column_letter(column.index)
    sheet.questions.append(Question(sheet.grid.sheet, letter, column.header, read, rows, answers, kind, word))
