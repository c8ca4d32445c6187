"""How wide the columns of a survey's sheet stand, what runs over several, and which cells are marked in it."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtWidgets import QTableView

from hwsched.desktop.survey.sheet_model import MarkedCell, SheetModel
from hwsched.exchange.problems import Cause, CellProblem
from hwsched.exchange.survey.facts import Question
from hwsched.exchange.survey.outline import SheetOutline

_MEASURED: Final = 200
"""Rows by which the width of a column is measured."""
_BESIDE_TEXT: Final = 24


def fit_columns(table: QTableView, model: SheetModel, sheet: SheetOutline | None) -> None:
    """Give columns the width of what is read in them: a title or a note runs over the cells beside it."""
    if sheet is None or not sheet.columns:
        return
    metrics = table.fontMetrics()
    passed = sheet.passed.keys()
    rows = [row for row in range(sheet.header_first, model.rowCount() + 1) if row not in passed]
    header = table.horizontalHeader()
    for column in range(model.columnCount()):
        texts = [model.index(row - 1, column).data() or "" for row in rows[:_MEASURED]]
        wide = max(map(metrics.horizontalAdvance, texts), default=0) + _BESIDE_TEXT
        least = header.sectionSizeFromContents(column).width()
        table.setColumnWidth(column, min(max(wide, least), table.columnWidth(column)))
    for row in range(min(model.rowCount(), _MEASURED)):
        filled = [column for column in range(model.columnCount()) if model.index(row, column).data()]
        alone = len(filled) == 1 and (row + 1 in passed or row + 1 < sheet.header_first)
        if alone and filled[0] + 1 < model.columnCount():
            table.setSpan(row, filled[0], 1, model.columnCount() - filled[0])


def marked_cells(
    questions: Sequence[Question], refused: Sequence[Cause], sheet: str
) -> dict[tuple[int, str], MarkedCell]:
    """Return what is doubtful, by row as the spreadsheet counts and letters of the column."""
    found: dict[tuple[int, str], MarkedCell] = {}
    for question in questions:
        if question.sheet == sheet:
            found |= dict.fromkeys(
                ((row, question.column) for row in question.rows), MarkedCell("asked", question.describe())
            )
    for cause in refused:
        problem = cause.problem
        if isinstance(problem, CellProblem) and problem.sheet == sheet:
            found |= dict.fromkeys(
                ((row, problem.column) for row in cause.rows), MarkedCell("refused", cause.describe())
            )
    return found
