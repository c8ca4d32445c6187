"""The page of a rule as it is read on the screen: its title, its facts in two columns, its paragraphs."""

from typing import TYPE_CHECKING, Final

from PySide6.QtGui import (
    QTextBlockFormat,
    QTextCharFormat,
    QTextCursor,
    QTextDocument,
    QTextFrameFormat,
    QTextTableCellFormat,
    QTextTableFormat,
)

from hwsched.desktop.looks.tokens import SPACE, font, scaled

if TYPE_CHECKING:
    from hwsched.rules.page import RulePage

_INDENT: Final = SPACE.hair
"""How far a line stands in for each space that it begins with [px at 100 % text]."""


def write_rule(document: QTextDocument, page: "RulePage") -> None:
    """Set the page of a rule into an empty or another document; its words are words, never markup."""
    document.clear()
    document.setDefaultFont(font())
    cursor = QTextCursor(document)
    cursor.setBlockFormat(_apart())
    cursor.insertText(page.title, _letters(title=True))
    cursor.insertBlock(QTextBlockFormat(), _letters())
    look = QTextTableFormat()
    look.setBorderStyle(QTextFrameFormat.BorderStyle.BorderStyle_None)
    look.setCellSpacing(0)
    look.setBorder(0)
    look.setCellPadding(0)
    apart = QTextTableCellFormat()
    apart.setRightPadding(scaled(SPACE.middle))
    apart.setBottomPadding(scaled(SPACE.hair))
    table = cursor.insertTable(len(page.facts), 2, look)
    for row, words in enumerate(page.facts):
        for column, text in enumerate(words):
            cell = table.cellAt(row, column)
            cell.setFormat(apart)
            cell.firstCursorPosition().insertText(text, _letters(bold=column == 0))
    cursor.movePosition(QTextCursor.MoveOperation.End)
    for lines in page.paragraphs:
        for line in lines:
            cursor.insertBlock(_apart(len(line) - len(line.lstrip()), first=line is lines[0]), _letters())
            cursor.insertText(line.lstrip())


def _letters(*, title: bool = False, bold: bool = False) -> QTextCharFormat:
    made = QTextCharFormat()
    made.setFont(font("title" if title else "normal", bold=title or bold))
    return made


def _apart(spaces: int = 0, *, first: bool = True) -> QTextBlockFormat:
    made = QTextBlockFormat()
    made.setTopMargin(scaled(SPACE.small) if first else 0)
    made.setLeftMargin(scaled(spaces * _INDENT))
    return made
