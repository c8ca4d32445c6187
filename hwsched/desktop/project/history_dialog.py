"""The steps of the journal: who, when, what; any step can be taken back when nothing depends on it, and done again."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QDialog,
    QHBoxLayout,
    QHeaderView,
    QPushButton,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from hwsched.model.history import ChangeSetInfo
from hwsched.model.time_zone import second_of

_NUMBER = int(Qt.ItemDataRole.UserRole)
_UNDONE = _NUMBER + 1


class HistoryDialog(QDialog):
    """All steps, the latest on top."""

    wants_back = Signal(int)
    """Number of the step to be taken back."""
    wants_again = Signal(int)
    """Number of the step, taken back before, to be done again."""

    def __init__(self, steps: Sequence[ChangeSetInfo], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("History")
        self.resize(820, 460)
        self.list = QTreeWidget()
        self.list.setHeaderLabels(["Step", "When", "Who", "What", "State"])
        self.list.setRootIsDecorated(False)
        self.list.setAlternatingRowColors(True)
        self.list.header().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self.back = QPushButton("Take back the chosen step")
        self.back.setEnabled(False)
        self.back.clicked.connect(self._on_back)
        self.again = QPushButton("Do the chosen step again")
        self.again.setEnabled(False)
        self.again.clicked.connect(self._on_again)
        self.list.currentItemChanged.connect(self._on_current)
        row = QHBoxLayout()
        row.addStretch(1)
        row.addWidget(self.again)
        row.addWidget(self.back)
        layout = QVBoxLayout(self)
        layout.addWidget(self.list)
        layout.addLayout(row)
        self.show_steps(steps)

    def show_steps(self, steps: Sequence[ChangeSetInfo]) -> None:
        """Show these steps."""
        self.list.clear()
        for step in reversed(steps):
            state = "taken back" if step.undone else ""
            item = QTreeWidgetItem([str(step.number), second_of(step.when), step.who, step.summary, state])
            item.setData(0, _NUMBER, step.number if step.kind == "edit" else None)
            item.setData(0, _UNDONE, step.undone)
            seen = "" if step.base is None or step.base == step.number - 1 else f", made after seeing step {step.base}"
            device = f"on {step.device}{seen}" if step.device else "before devices were written down"
            for column in range(self.list.columnCount()):
                item.setToolTip(column, device)
            self.list.addTopLevelItem(item)

    def _on_current(self, item: QTreeWidgetItem | None) -> None:
        edit = item is not None and item.data(0, _NUMBER) is not None
        undone = item is not None and bool(item.data(0, _UNDONE))
        self.back.setEnabled(edit and not undone)
        self.again.setEnabled(edit and undone)

    def _on_back(self) -> None:
        item = self.list.currentItem()
        if item is not None and item.data(0, _NUMBER) is not None:
            self.wants_back.emit(int(item.data(0, _NUMBER)))

    def _on_again(self) -> None:
        item = self.list.currentItem()
        if item is not None and item.data(0, _NUMBER) is not None:
            self.wants_again.emit(int(item.data(0, _NUMBER)))
