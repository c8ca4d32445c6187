"""What becomes of the differences between a delivery and the project, by a person's word on all, a fact, a cell."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from functools import partial
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QComboBox, QHeaderView, QLabel, QTreeWidget, QTreeWidgetItem, QVBoxLayout, QWidget

from hwsched.desktop.looks.tokens import SPACE
from hwsched.desktop.widgets.empty import Empty
from hwsched.desktop.widgets.taken_box import TakenBox
from hwsched.exchange.survey.decisions import BY_NAME, KINDS, DifferenceKind
from hwsched.exchange.survey.difference import Undecided
from hwsched.exchange.survey.facts import ANY, Answer, AnswerKey, Decisions
from hwsched.kept_sentences import kept_error
from hwsched.language import phrase, to_phrase
from hwsched.quantities import LengthStyle

_COLUMNS: Final = (
    to_phrase("Difference"),
    to_phrase("In the project"),
    to_phrase("In the file"),
    to_phrase("Why, or by whom"),
    to_phrase("Decision"),
)
_ANSWER: Final = len(_COLUMNS) - 1
_WHY: Final = _ANSWER - 1
_MOST: Final = 300
"""Rows below one heading; the rest follows what is said of all."""
_FEW: Final = 12
"""Rows of a kind that wants an answer that are shown at once."""
_LETTERS: Final = 24
"""Of an answer that a row shows."""
_WORDS: Final[dict[Answer, str]] = {
    "file": to_phrase("as in the file"),
    "held": to_phrase("stays"),
    "ask": to_phrase("left open"),
}
_KEY: Final = int(Qt.ItemDataRole.UserRole)


class DecidingPage(QWidget):
    """By kind, then by fact or opening, then by cell; and last the openings, each with a word on all of it.

    Parameters
    ----------
    found : sequence of (Undecided, Answer)
        The differences, each with what becomes of it at present.
    decisions : Decisions
        What was said so far.
    unsaid : str
        What becomes of that of which nothing is said; empty: what is usual for its kind.
    style : {"fraction", "decimal-inch", "mm"}
        How lengths are shown.
    """

    said = Signal(object)
    """Decisions as the person says now."""

    def __init__(
        self,
        found: Sequence[tuple[Undecided, Answer]],
        decisions: Decisions,
        parent: QWidget | None = None,
        unsaid: str = "",
        style: LengthStyle = "mm",
    ) -> None:
        super().__init__(parent)
        self.decisions, self._unsaid, self._style = decisions, unsaid, style
        self.boxes: dict[AnswerKey, QComboBox] = {}
        """The boxes of rows that were unfolded, by what they are a word on."""
        self._rows: dict[AnswerKey, QTreeWidgetItem] = {}
        note = QLabel(phrase("A word on a row holds for all rows below it that have none of their own."))
        note.setWordWrap(True)
        note.setContentsMargins(0, SPACE.small, 0, 0)
        self.tree = QTreeWidget()
        self.tree.setAccessibleName(phrase("Differences"))
        self.tree.setHeaderLabels([phrase(each) for each in _COLUMNS])
        self.tree.setAlternatingRowColors(True)
        self.tree.header().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        # A long reason gives way, never the decision: what does not fit is told by the tool tip.
        self.tree.header().setStretchLastSection(False)
        self.tree.header().setSectionResizeMode(_WHY, QHeaderView.ResizeMode.Stretch)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(note)
        layout.addWidget(self.tree, 1)
        words = phrase(
            "Nothing is left to be decided. Where a survey says something else than the project, it is asked here."
        )
        Empty(self.tree, words)
        note.setVisible(bool(found))
        self._fill(found)
        # Thousands of boxes would take seconds: those of a heading are made when it is unfolded.
        self.tree.itemExpanded.connect(self._unfold)
        for kind in KINDS:
            top = self._rows.get((kind.name, "", ""))
            if top is not None and kind.usual == "ask" and top.childCount() <= _FEW:
                top.setExpanded(True)

    def unfolded(self) -> list[AnswerKey]:
        """Return the headings that are unfolded."""
        return [key for key, row in self._rows.items() if row.isExpanded()]

    def unfold(self, keys: Iterable[AnswerKey]) -> None:
        """Unfold headings, and what they stand under; those that are not there any more are passed over."""
        for key in keys:
            row: QTreeWidgetItem | None = self._rows.get(key)
            while row is not None:
                row.setExpanded(True)
                row = row.parent()

    def _fill(self, found: Sequence[tuple[Undecided, Answer]]) -> None:
        for kind in KINDS:
            here = [(each, answer) for each, answer in found if each.kind == kind.name]
            if here:
                top = self._add(
                    self.tree.invisibleRootItem(), (kind.name, "", ""), f"{phrase(kind.title)} ({len(here)})"
                )
                self._box(top, kind)
                self._fill_kind(top, kind, here)
        marks = dict.fromkeys(each.mark for each, _ in found if each.fact is not None)
        if marks:
            top = self._add(
                self.tree.invisibleRootItem(), (ANY, "", ""), phrase("By opening ({count})", count=len(marks))
            )
            for mark in list(marks)[:_MOST]:
                self._add(top, (ANY, mark, ""), mark)
            self._rest(top, len(marks))

    def _fill_kind(self, top: QTreeWidgetItem, kind: DifferenceKind, here: Sequence[tuple[Undecided, Answer]]) -> None:
        by_fact: dict[str, list[Undecided]] = {}
        whole = [each for each, _ in here if each.fact is None]
        for each, _ in here:
            if each.fact is not None:
                by_fact.setdefault(each.fact.attribute, []).append(each)
        for each in whole[:_MOST]:
            row = self._add(top, (kind.name, each.mark, ""), each.mark)
            row.setText(1, each.known)
            row.setText(_WHY, kept_error(each.evidence))
            row.setToolTip(_WHY, kept_error(each.evidence))
        self._rest(top, len(whole))
        for fact, cells in by_fact.items():
            first = cells[0].fact
            label = phrase(first.label) if first is not None else fact
            under = self._add(top, (kind.name, "", fact), f"{label} ({len(cells)})")
            for each in cells[:_MOST]:
                change = each.fact
                if change is None:
                    continue
                row = self._add(
                    under, (kind.name, each.mark, f"{change.where}.{fact}"), f"{each.mark}, {change.place()}"
                )
                row.setText(1, change.said(change.before, self._style))
                row.setText(2, phrase("blank") if kind.name == "blank" else change.said(change.after, self._style))
                row.setText(3, change.source or change.given_said())
            self._rest(under, len(cells))

    def _rest(self, top: QTreeWidgetItem, count: int) -> None:
        if count > _MOST:
            QTreeWidgetItem(top, [phrase("and {count} more", count=count - _MOST)])

    def _add(self, under: QTreeWidgetItem, key: AnswerKey, text: str) -> QTreeWidgetItem:
        row = QTreeWidgetItem(under, [text])
        row.setData(0, _KEY, list(key))
        self._rows[key] = row
        return row

    def _unfold(self, item: QTreeWidgetItem) -> None:
        for place in range(item.childCount()):
            row = item.child(place)
            held = row.data(0, _KEY) if row is not None else None
            if row is not None and held is not None and self.tree.itemWidget(row, _ANSWER) is None:
                self._box(row, BY_NAME.get(held[0]))

    def _box(self, row: QTreeWidgetItem, kind: DifferenceKind | None) -> None:
        name, mark, fact = row.data(0, _KEY)
        key: AnswerKey = (name, mark, fact)
        box = TakenBox()
        box.setAccessibleName(phrase("Decision on {text}", text=row.text(0)))
        usual = phrase("as said above")
        if kind is not None and not mark and not fact:
            usual = self._unsaid or phrase("as usual: {answers}", answers=phrase(kind.answers[kind.usual]))
        box.addItem(usual, None)
        for answer, words in kind.answers.items() if kind is not None else _WORDS.items():
            box.addItem(phrase(words), answer)
        # As wide as most answers; the list that it opens is as wide as the longest.
        box.setMinimumContentsLength(_LETTERS)
        held = self.decisions.answers.get(key)
        box.setCurrentIndex(max(box.findData(held), 0) if held is not None else 0)
        box.activated.connect(partial(self._say, key, box))
        box.fill_cell()
        self.boxes[key] = box
        self.tree.setItemWidget(row, _ANSWER, box)

    def _say(self, key: AnswerKey, box: QComboBox, _place: int) -> None:
        answers = {held: answer for held, answer in self.decisions.answers.items() if held != key}
        answer: Answer | None = box.currentData()
        if answer is not None:
            answers[key] = answer
        if answers != self.decisions.answers:
            self.decisions = replace(self.decisions, answers=answers)
            self.said.emit(self.decisions)
