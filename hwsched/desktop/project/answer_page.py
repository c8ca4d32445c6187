"""A calculator's answer: sentences first, then tables, and what it is based on."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QScrollArea, QVBoxLayout, QWidget

from hwsched.desktop.looks.tokens import SPACE
from hwsched.desktop.project.calculator_answers import Told
from hwsched.desktop.widgets.lines import Lines
from hwsched.language import phrase

_MOST: Final = 50
"""Rows of a table that are shown; the rest is counted."""
_SEEN: Final = 8
"""Rows that are seen at once."""


class _Table(Lines):
    """A table as high as its titles and its first rows need; farther down it is scrolled."""

    def __init__(self, headings: Sequence[str], rows: int) -> None:
        super().__init__(headings, max(len(headings) - 1, 0))
        self._seen = min(rows, _SEEN) * self.verticalHeader().defaultSectionSize()
        self.horizontalHeader().geometriesChanged.connect(self.grow)
        self.horizontalScrollBar().rangeChanged.connect(self.grow)
        self.grow()

    def grow(self) -> None:
        """Have the room that it needs."""
        bar = self.horizontalScrollBar()
        scrolled = bar.sizeHint().height() if bar.maximum() else 0
        titles = self.horizontalHeader().sizeHint().height()
        self.setMinimumHeight(titles + self._seen + scrolled + SPACE.hair)


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
        table = _Table(headings, len(rows))
        table.setAccessibleName(title)
        table.show_rows(rows[:_MOST])
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
