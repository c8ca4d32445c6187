"""What is said of a file that cannot be taken in: of a cell, of a sheet, of the file as a whole.

Here belong the values and their one-line wording. Who finds them, and what is done about them, stands elsewhere.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from hwsched.attributes import CellError

_LONGEST: Final = 80


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
    """As the spreadsheet counts, from 1."""
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
        return f"{self.file}, sheet {self.sheet}, row {self.row}{column}{header}: {read}{self.message}{accepted}"


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


class InputRejected(Exception):  # noqa: N818 (a decision, not a fault of the program)
    """A file is not taken in, and nothing was changed.

    Parameters
    ----------
    problems : Sequence[CellProblem | FileProblem]
        Why, at least one.
    """

    def __init__(self, problems: Sequence[CellProblem | FileProblem]) -> None:
        self.problems = tuple(problems)
        super().__init__("\n".join(problem.describe() for problem in self.problems))


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
