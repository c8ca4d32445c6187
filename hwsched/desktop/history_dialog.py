"""The steps of the journal: who, when, what; one older step can be taken back when nothing depends on it."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QDialog, QHeaderView, QPushButton, QTreeWidget, QTreeWidgetItem, QVBoxLayout, QWidget

from hwsched.model.history import ChangeSetInfo

_NUMBER = int(Qt.ItemDataRole.UserRole)


class HistoryDialog(QDialog):
    """All steps, the latest on top."""

    wants_back = Signal(int)
    """Number of the step to be taken back."""

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
        self.list.currentItemChanged.connect(self._on_current)
        layout = QVBoxLayout(self)
        layout.addWidget(self.list)
        layout.addWidget(self.back, 0, Qt.AlignmentFlag.AlignRight)
        self.show_steps(steps)

    def show_steps(self, steps: Sequence[ChangeSetInfo]) -> None:
        """Show these steps."""
        self.list.clear()
        for step in reversed(steps):
            state = "taken back" if step.undone else ""
            item = QTreeWidgetItem([str(step.number), step.when[:19].replace("T", " "), step.who, step.summary, state])
            item.setData(0, _NUMBER, step.number if step.kind == "edit" and not step.undone else None)
            self.list.addTopLevelItem(item)

    def _on_current(self, item: QTreeWidgetItem | None) -> None:
        self.back.setEnabled(item is not None and item.data(0, _NUMBER) is not None)

    def _on_back(self) -> None:
        item = self.list.currentItem()
        if item is not None and item.data(0, _NUMBER) is not None:
            self.wants_back.emit(int(item.data(0, _NUMBER)))
