"""Shows the hardware sets that openings alike could share; those ticked are made."""

from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QHeaderView,
    QLabel,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.looks.tokens import scaled
from hwsched.desktop.widgets.number_columns import to_the_right
from hwsched.desktop.widgets.room import give_room
from hwsched.language import phrase, phrase_of_count
from hwsched.operations.parts.hardware_sets import Proposed
from hwsched.values.role_words import role_said


class ProposedSetsDialog(QDialog):
    """A group a line; ticked ones become sets, under the name that is typed."""

    wants_sets = Signal()

    def __init__(self, proposed: Sequence[Proposed], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(phrase("Proposed hardware sets"))
        self._proposed = list(proposed)
        openings = sum(len(each.openings) for each in proposed)
        said = QLabel(
            phrase(
                "{groups}, {openings}. Double-click a name to change it.",
                groups=phrase_of_count(
                    "{count} group of openings without a set takes the same parts",
                    "{count} groups of openings without a set take the same parts",
                    len(proposed),
                ),
                openings=phrase_of_count("{count} opening in all", "{count} openings in all", openings),
            )
        )
        said.setWordWrap(True)
        self.list = QTreeWidget()
        self.list.setHeaderLabels([phrase("Set"), phrase("Openings"), phrase("Lines"), phrase("Marks")])
        self.list.setRootIsDecorated(False)
        self.list.setAlternatingRowColors(True)
        to_the_right(self.list, (1,))
        self.list.setEditTriggers(QTreeWidget.EditTrigger.NoEditTriggers)
        self.list.header().setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        for each in self._proposed:
            lines = ", ".join(
                f"{role_said(line.role)} {line.part}" + ("" if line.quantity == 1 else f" × {line.quantity:g}")
                for line in each.lines
            )
            marks = ", ".join(each.marks)
            item = QTreeWidgetItem([each.name, str(len(each.marks)), lines, marks])
            item.setFlags(item.flags() | Qt.ItemFlag.ItemIsEditable | Qt.ItemFlag.ItemIsUserCheckable)
            item.setCheckState(0, Qt.CheckState.Checked)
            item.setToolTip(2, lines)
            item.setToolTip(3, marks)
            item.setTextAlignment(1, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
            self.list.addTopLevelItem(item)
        for column, width in enumerate((130, 70, 400)):
            self.list.setColumnWidth(column, scaled(width))
        self.list.itemDoubleClicked.connect(self._rename)
        self.list.itemChanged.connect(self._allow)
        self.buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel)
        self.ok = self.buttons.button(QDialogButtonBox.StandardButton.Ok)
        self.buttons.accepted.connect(self.wants_sets)
        self.buttons.rejected.connect(self.reject)
        layout = QVBoxLayout(self)
        layout.addWidget(said)
        layout.addWidget(self.list, 1)
        layout.addWidget(self.buttons)
        give_room(self, 109, 58)
        self._allow()

    def accepted_sets(self) -> list[Proposed]:
        """Return the groups that are ticked, under their names."""
        found = []
        for row, each in enumerate(self._proposed):
            item = self.list.topLevelItem(row)
            if item is not None and item.checkState(0) == Qt.CheckState.Checked:
                found.append(replace(each, name=" ".join(item.text(0).split())))
        return found

    def _rename(self, item: QTreeWidgetItem, column: int) -> None:
        if column == 0:
            self.list.editItem(item, 0)

    def _allow(self) -> None:
        count = len(self.accepted_sets())
        self.ok.setText(phrase_of_count("Make {count} set", "Make {count} sets", count))
        self.ok.setEnabled(count > 0)
