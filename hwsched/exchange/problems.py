"""What is said of a file that cannot be taken in: of a cell, of a sheet, of the file as a whole.

Here belong the values and their one-line wording. Who finds them, and what is done about them, stands elsewhere.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from hwsched.attributes import CellError

_LONGEST: Final = 80
_RANGES: Final = 8
"""Ranges of rows that a line names."""


def column_letter(index: int) -> str:
    """Return the spreadsheet's letters of a column.

    Parameters
    ----------
    index : int
        Column counted from 0.

    Examples
    --------
    >>> column_letter(0), column_letter(25), column_letter(26), column_letter(16383)
    ('A', 'Z', 'AA', 'XFD')
    """
    letters = ""
    count = index + 1
    while count > 0:
        count, rest = divmod(count - 1, 26)
        letters = chr(65 + rest) + letters
    return letters


def _quoted(text: str) -> str:
    line = " ".join(text.split())
    return f"'{line}'" if len(line) <= _LONGEST else f"'{line[: _LONGEST - 3]}...'"


@dataclass(frozen=True, slots=True)
class CellProblem:
    """A cell that is refused, named so that a person finds it."""

    file: str
    """Name of the file, without its folder."""
    sheet: str
    row: int
    """As the spreadsheet counts, from 1; 0 where a column as a whole is meant."""
    column: str
    """Letters; empty where the row as a whole is meant."""
    header: str
    """The column's header as it stands; empty where there is none."""
    read: str
    """What the cell holds; empty where it is empty."""
    message: str
    accepted: str = ""
    """What can stand here instead."""

    def describe(self) -> str:
        """Return the problem in one line.

        Examples
        --------
        >>> CellProblem("survey.xlsx", "Doors", 7, "F", "Leaf thickness", "3..35", "is no length", "70 mm").describe()
        "survey.xlsx, sheet Doors, row 7, column F (Leaf thickness): read '3..35'; is no length; accepted: 70 mm"
        """
        column = f", column {self.column}" if self.column else ""
        header = f" ({' '.join(self.header.split())})" if self.header else ""
        read = f"read {_quoted(self.read)}; " if self.read else "empty; " if self.column else ""
        accepted = f"; accepted: {self.accepted}" if self.accepted else ""
        row = f", row {self.row}" if self.row else ""
        return f"{self.file}, sheet {self.sheet}{row}{column}{header}: {read}{self.message}{accepted}"


@dataclass(frozen=True, slots=True)
class FileProblem:
    """A file or a sheet that is refused as a whole."""

    file: str
    message: str
    sheet: str = ""
    accepted: str = ""
    """What would be taken, or what to do."""

    def describe(self) -> str:
        """Return the problem in one line.

        Examples
        --------
        >>> FileProblem("survey.xlsx", "is damaged", accepted="a workbook saved again as .xlsx").describe()
        'survey.xlsx: is damaged; accepted: a workbook saved again as .xlsx'
        """
        sheet = f", sheet {self.sheet}" if self.sheet else ""
        accepted = f"; accepted: {self.accepted}" if self.accepted else ""
        return f"{self.file}{sheet}: {self.message}{accepted}"


Problem = CellProblem | FileProblem


WITHOUT_UNIT: Final = "has no unit, and none is given for its column"
"""Why numbers of a column are refused all together."""


@dataclass(frozen=True, slots=True)
class Cause:
    """One reason for refusals, however many cells it refuses: an unknown word of a column, a unit that is missing."""

    problem: Problem
    """The first of them."""
    rows: tuple[int, ...]
    """Of all of them, as the spreadsheet counts; empty for a file as a whole."""
    others: int = 0
    """Other texts than that of the first that are refused for the same reason."""

    def describe(self) -> str:
        """Return the cause in one line, with its rows.

        Examples
        --------
        >>> problem = CellProblem("survey.xlsx", "Doors", 7, "F", "Core", "honey", "is no core", "Solid")
        >>> Cause(problem, (7, 8, 9, 14)).describe()
        "survey.xlsx, sheet Doors, 4 rows (7-9, 14), column F (Core): read 'honey'; is no core; accepted: Solid"
        """
        said = self.problem.describe()
        if self.others and isinstance(self.problem, CellProblem):
            read = f"read {_quoted(self.problem.read)}"
            said = said.replace(read, f"{read} and {self.others} other{'s' if self.others > 1 else ''}", 1)
        if len(self.rows) < 2 or isinstance(self.problem, FileProblem):
            return said
        return said.replace(f", row {self.problem.row}", f", {len(self.rows)} rows ({row_ranges(self.rows)})", 1)


def row_ranges(rows: Sequence[int]) -> str:
    """Return rows as ranges, the first of them.

    Examples
    --------
    >>> row_ranges([2, 3, 4, 9]), row_ranges(range(1, 60, 2))
    ('2-4, 9', '1, 3, 5, 7, 9, 11, 13, 15, ...')
    """
    ranges: list[list[int]] = []
    for row in sorted(rows):
        if ranges and row == ranges[-1][1] + 1:
            ranges[-1][1] = row
        else:
            ranges.append([row, row])
    named = [f"{first}-{last}" if last > first else f"{first}" for first, last in ranges[:_RANGES]]
    return ", ".join([*named, "..."] if len(ranges) > _RANGES else named)


def causes(problems: Iterable[Problem]) -> list[Cause]:
    """Return one cause for all cells of a column that are refused for one reason, in the order of the first of them."""
    found: dict[object, tuple[Problem, list[int], set[str]]] = {}
    for problem in problems:
        key: object = problem
        if isinstance(problem, CellProblem):
            # What lacks the unit of its column lacks it whatever it says.
            read = "" if problem.message == WITHOUT_UNIT else problem.read.casefold()
            key = (problem.file, problem.sheet, problem.column, problem.header, read, problem.message, problem.accepted)
        _, rows, reads = found.setdefault(key, (problem, [], set()))
        if isinstance(problem, CellProblem):
            rows.append(problem.row)
            reads.add(problem.read.casefold())
    return [Cause(problem, tuple(rows), max(len(reads) - 1, 0)) for problem, rows, reads in found.values()]


class InputRejected(Exception):  # noqa: N818 (a decision, not a fault of the program)
    """A file is not taken in, and nothing was changed.

    Parameters
    ----------
    problems : Sequence[CellProblem | FileProblem]
        Why, at least one.
    """

    def __init__(self, problems: Sequence[CellProblem | FileProblem]) -> None:
        self.problems = tuple(problems)
        super().__init__("\n".join(cause.describe() for cause in causes(self.problems)))


def problem_of(error: CellError, *, file: str, sheet: str, row: int, column: int, header: str) -> CellProblem:
    """Return the refusal of a cell together with where it stands.

    Parameters
    ----------
    error : CellError
        From reading the cell.
    file, sheet, header : str
        Name of the file, of the sheet, and the column's header as it stands.
    row : int
        As the spreadsheet counts, from 1.
    column : int
        From 0.
    """
    return CellProblem(file, sheet, row, column_letter(column), header, error.read, error.message, error.accepted)
