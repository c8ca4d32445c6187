"""A calculator's answer: sentences first, then tables, and what it is based on."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QScrollArea, QVBoxLayout, QWidget

from hwsched.desktop.project.calculator_answers import Told
from hwsched.desktop.widgets.lines import Lines
from hwsched.language import phrase

_MOST: Final = 50
"""Rows of a table that are shown; the rest is counted."""
_SEEN: Final = 8
"""Rows that are seen at once."""


class AnswerPage(QScrollArea):
    """The answer of a calculator, or why there is none."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWidgetResizable(True)
        self.said = QLabel(textFormat=Qt.TextFormat.PlainText, wordWrap=True)
        self.said.setAccessibleName(phrase("Answer"))
        self.said.setTextInteractionFlags(
            Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
        )
        self.basis = QLabel(textFormat=Qt.TextFormat.PlainText, wordWrap=True)
        self.tables: list[Lines] = []
        place = QWidget()
        self._rows = QVBoxLayout(place)
        self._rows.addWidget(self.said)
        self._rows.addWidget(self.basis)
        self._rows.addStretch(1)
        self._shown: list[QWidget] = []
        self.setWidget(place)

    def refuse(self, words: str) -> None:
        """Say why there is no answer."""
        self._clear()
        self.said.setText(words)
        self.basis.clear()

    def show_answer(self, answer: Told, basis: str) -> None:
        """Show an answer."""
        self._clear()
        self.said.setText("\n".join(answer.sentences) or phrase("Nothing comes of it."))
        self.basis.setText(phrase("Basis: {basis}", basis=phrase(basis)))
        for title, headings, rows in answer.tables:
            self._table(title, headings, rows)

    def _table(self, title: str, headings: Sequence[str], rows: Sequence[Sequence[str]]) -> None:
        more = phrase(" (the first {most} of {count})", most=_MOST, count=len(rows)) if len(rows) > _MOST else ""
        heading = QLabel(f"{title}{more}", textFormat=Qt.TextFormat.PlainText, wordWrap=True)
        table = Lines(headings, max(len(headings) - 1, 0))
        table.setAccessibleName(title)
        table.show_rows(rows[:_MOST])
        lines = min(len(rows), _SEEN) + 1
        table.setMinimumHeight(lines * table.verticalHeader().defaultSectionSize())
        for each in (heading, table):
            self._rows.insertWidget(self._rows.count() - 2, each)
            self._shown.append(each)
        self.tables.append(table)

    def _clear(self) -> None:
        for each in self._shown:
            self._rows.removeWidget(each)
            each.setParent(None)
            each.deleteLater()
        self._shown, self.tables = [], []
