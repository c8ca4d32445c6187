"""What is said of a file that cannot be taken in: of a cell, of a sheet, of the file as a whole.

Here belong the values and their one-line wording. Who finds them, and what is done about them, stands elsewhere.
`said` is for people, in the language in force; what a cell, a file or a heading holds stays in it as it stands.
`describe` is the same in English, which is kept, compared and sent to machines.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from hwsched.attributes import CellError
from hwsched.kept_sentences import kept_error
from hwsched.language import english, phrase, phrase_of_count

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


def column_said(column: str, header: str) -> str:
    r"""Return a column as it stands behind the name of its sheet: its letters and its heading; nothing where none is.

    Examples
    --------
    >>> column_said("F", "Leaf\nthickness"), column_said("", "")
    (', column F (Leaf thickness)', '')
    """
    return f"{phrase(', column {column}', column=column) if column else ''}{heading_said(header)}"


def heading_said(header: str) -> str:
    """Return a heading as it stands behind the letters of its column."""
    return f" ({' '.join(header.split())})" if header else ""


def _accepted(text: str) -> str:
    return phrase("; accepted: {accepted}", accepted=kept_error(text)) if text else ""


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
        return english(self.said)

    def said(self, rows: Sequence[int] = (), others: int = 0) -> str:
        """Return it in one line for people; with all rows that it concerns, and how many other texts stand in them."""
        place = phrase("{file}, sheet {sheet}", file=self.file, sheet=self.sheet)
        return f"{place}{self._where(rows)}: {self.why(others)}"

    def said_in_sheet(self, rows: Sequence[int] = (), others: int = 0) -> str:
        """Return it for people who look at the sheet: with its rows and column, without file and sheet.

        Examples
        --------
        >>> CellProblem("survey.xlsx", "Doors", 7, "F", "Thickness", "3..35", "is no length", "70 mm").said_in_sheet()
        "Row 7, column F (Thickness): read '3..35'; is no length; accepted: 70 mm"
        """
        where = begun(self._where(rows).removeprefix(", "))
        return f"{where}: {self.why(others)}" if where else self.why(others)

    def _where(self, rows: Sequence[int]) -> str:
        row = phrase(", row {row}", row=self.row) if self.row else ""
        if row and len(rows) > 1:
            ranges = row_ranges(rows)
            row = phrase_of_count(", {count} row ({rows})", ", {count} rows ({rows})", len(rows), rows=ranges)
        return f"{row}{column_said(self.column, self.header)}"

    def why(self, others: int = 0) -> str:
        """Return for people what stands there, what is wrong with it, and what can stand there instead."""
        if self.read and others:
            read = phrase_of_count(
                "read {read} and {count} other; ", "read {read} and {count} others; ", others, read=_quoted(self.read)
            )
        elif self.read:
            read = phrase("read {read}; ", read=_quoted(self.read))
        else:
            read = phrase("empty; ") if self.column else ""
        return f"{read}{kept_error(self.message)}{_accepted(self.accepted)}"


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
        return english(self.said)

    def said(self) -> str:
        """Return it in one line for people."""
        place = phrase("{file}, sheet {sheet}", file=self.file, sheet=self.sheet) if self.sheet else self.file
        return f"{place}: {kept_error(self.message)}{_accepted(self.accepted)}"


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
        return english(self.said)

    def said(self) -> str:
        """Return it in one line for people."""
        problem = self.problem
        return problem.said(self.rows, self.others) if isinstance(problem, CellProblem) else problem.said()

    def said_in_sheet(self) -> str:
        """Return it for people who look at the sheet."""
        problem = self.problem
        return problem.said_in_sheet(self.rows, self.others) if isinstance(problem, CellProblem) else problem.said()


def begun(said: str) -> str:
    """Begin a sentence with a capital."""
    return said[:1].upper() + said[1:]


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

    def said(self) -> str:
        """Return why, for people, a line for each cause."""
        return "\n".join(cause.said() for cause in causes(self.problems))


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
