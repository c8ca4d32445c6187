"""How wide the columns of a survey's sheet stand, what runs over several, and which cells are marked in it."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtWidgets import QTableView

from hwsched.desktop.survey.sheet_model import MarkedCell, SheetModel
from hwsched.exchange.problems import Cause, CellProblem, column_letter
from hwsched.exchange.survey.facts import Question, SurveyOptions
from hwsched.exchange.survey.outline import SheetOutline
from hwsched.language import phrase, phrase_of_count

_MEASURED: Final = 60
"""Rows below the header by which the width of a column is measured: more than a screen shows."""
_UNREAD: Final = 40
"""Rows by which it is measured where nothing is read in it."""
_BESIDE_TEXT: Final = 24
_NAMED: Final = 12
"""Columns that are named of those that are not read."""


def fit_columns(table: QTableView, model: SheetModel, sheet: SheetOutline | None, most: int) -> None:
    """Give columns the width of what is read in them, up to the most: a title or a note runs over the cells beside it.

    The toolkit would ask for all that is to be said of a thousand rows, and the window stand still meanwhile.
    """
    if sheet is None or not sheet.columns:
        header = table.horizontalHeader()
        held = header.maximumSectionSize()
        header.setMaximumSectionSize(most)
        header.setResizeContentsPrecision(_UNREAD)
        table.resizeColumnsToContents()
        header.setMaximumSectionSize(held)
        return
    metrics = table.fontMetrics()
    passed, width = sheet.passed.keys(), model.columnCount()
    last = min(model.rowCount(), sheet.header_row + _MEASURED)
    first = [[model.text(row, column) for column in range(width)] for row in range(last)]
    read = [line for row, line in enumerate(first, start=1) if row >= sheet.header_first and row not in passed]
    header = table.horizontalHeader()
    for column in range(width):
        texts = {line[column] for line in read}
        wide = max(map(metrics.horizontalAdvance, texts), default=0) + _BESIDE_TEXT
        least = header.sectionSizeFromContents(column).width()
        table.setColumnWidth(column, min(max(wide, least), most))
    for row, line in enumerate(first):
        filled = [column for column, text in enumerate(line) if text]
        alone = len(filled) == 1 and (row + 1 in passed or row + 1 < sheet.header_first)
        if alone and filled[0] + 1 < width:
            table.setSpan(row, filled[0], 1, width - filled[0])


def marked_cells(
    questions: Sequence[Question], refused: Sequence[Cause], sheet: str
) -> dict[tuple[int, str], MarkedCell]:
    """Return what is doubtful, by row as the spreadsheet counts and letters of the column."""
    found: dict[tuple[int, str], MarkedCell] = {}
    for question in questions:
        if question.sheet == sheet:
            found |= dict.fromkeys(
                ((row, question.column) for row in question.rows), MarkedCell("asked", question.said())
            )
    for cause in refused:
        problem = cause.problem
        if isinstance(problem, CellProblem) and problem.sheet == sheet:
            found |= dict.fromkeys(((row, problem.column) for row in cause.rows), MarkedCell("refused", cause.said()))
    return found


def said_of_unread(sheet: SheetOutline | None, options: SurveyOptions) -> str:
    """Return what is said where nothing is asked: which filled columns are left out that nobody said to leave out."""
    columns = [
        column.header or column_letter(column.index)
        for column in (sheet.columns if sheet is not None else ())
        if not column.target
        and column.samples
        and options.columns.get(f"column {column_letter(column.index)}", options.columns.get(column.header)) != ""
    ]
    if not columns:
        return phrase("Nothing is asked of this file.")
    named = ", ".join(columns[:_NAMED]) + (", …" if len(columns) > _NAMED else "")
    return phrase_of_count(
        "{count} column is not read: {named}. Click it and say below what it carries; without that it stays out.",
        "{count} columns are not read: {named}. Click each and say below what it carries; without that they stay out.",
        len(columns),
        named=named,
    )
