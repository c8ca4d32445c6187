"""The page of an opening's past: its steps with the values that were seen; one is taken back, or done again."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QToolButton,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.looks.moments import moment_said
from hwsched.desktop.looks.tokens import SPACE
from hwsched.desktop.widgets.empty import Empty
from hwsched.desktop.widgets.wrapping import Wrapped
from hwsched.language import phrase, phrase_of_count
from hwsched.operations.opening.past import PastStep
from hwsched.operations.step_titles import step_said

_STEP: Final = int(Qt.ItemDataRole.UserRole)


class PastPage(QWidget):
    """Steps, the latest on top, with each fact before and after."""

    wants_back = Signal(int)
    """Number of the step to be taken back."""
    wants_again = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.tree = QTreeWidget()
        self.tree.setAccessibleName(phrase("History of the opening"))
        self.tree.setHeaderLabels([phrase("Fact"), phrase("Was"), phrase("Became")])
        self.tree.setAlternatingRowColors(True)
        self.tree.setItemDelegate(Wrapped(self.tree))
        Empty(self.tree, phrase("Steps that changed the chosen opening stand here."))
        header = self.tree.header()
        header.setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        self.tree.currentItemChanged.connect(lambda *_: self._enable())
        self.back, self.again = QToolButton(), QToolButton()
        self.back.setText(phrase("Take this step back"))
        self.back.setToolTip(phrase("Only this step; what depends on it is named where it cannot be"))
        self.back.clicked.connect(lambda _checked=False: self._ask(self.wants_back))
        self.again.setText(phrase("Do it again"))
        self.again.clicked.connect(lambda _checked=False: self._ask(self.wants_again))
        self.note = QLabel()
        self.note.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        row = QHBoxLayout()
        row.setContentsMargins(SPACE.hair, 0, SPACE.hair, SPACE.hair)
        row.addWidget(self.back)
        row.addWidget(self.again)
        row.addWidget(self.note, 1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(SPACE.hair)
        layout.addWidget(self.tree, 1)
        layout.addLayout(row)
        self._steps: dict[int, PastStep] = {}
        self._enable()

    def show_past(self, steps: Sequence[PastStep]) -> None:
        """Show these steps; the chosen one stays chosen."""
        before = self._chosen()
        self._steps = {each.number: each for each in steps}
        self.tree.clear()
        for step in steps:
            state = phrase(", taken back") if step.undone else ""
            when = f"{step.who}, {moment_said(step.when)}"
            # What was done comes first, and who did it below: in a narrow pane one line would be cut.
            head = QTreeWidgetItem([f"{step_said(step.summary)}{state}\n{when}"])
            head.setToolTip(0, f"{phrase('Step {number}', number=step.number)}\n{head.text(0)}")
            head.setData(0, _STEP, step.number)
            font = head.font(0)
            font.setItalic(step.undone)
            font.setBold(not step.undone)
            head.setFont(0, font)
            self.tree.addTopLevelItem(head)
            head.setFirstColumnSpanned(True)
            for fact in step.facts:
                words = f"{fact.where}: {fact.label}" if fact.label else fact.where
                line = QTreeWidgetItem([words, fact.before, fact.after])
                line.setData(0, _STEP, step.number)
                for column, text in enumerate((words, fact.before, fact.after)):
                    line.setToolTip(column, text)
                head.addChild(line)
            # A survey that was taken in has everything in it.
            head.setExpanded(len(step.facts) <= 12)
            if before is not None and before.number == step.number:
                self.tree.setCurrentItem(head)
        self.note.setText(phrase_of_count("{count} step", "{count} steps", len(steps)))
        self._enable()

    def _chosen(self) -> PastStep | None:
        item = self.tree.currentItem()
        number = item.data(0, _STEP) if item is not None else None
        return self._steps.get(number) if isinstance(number, int) else None

    def _enable(self) -> None:
        step = self._chosen()
        edit = step is not None and step.kind == "edit"
        self.back.setEnabled(edit and step is not None and not step.undone)
        self.again.setEnabled(edit and step is not None and step.undone)

    def _ask(self, signal: object) -> None:
        step = self._chosen()
        if step is not None:
            signal.emit(step.number)  # type: ignore[attr-defined]
