"""Since the upgrade: what this version says otherwise than an earlier one has stored, before it is taken."""

from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QCheckBox, QHeaderView, QLabel, QTreeWidget, QTreeWidgetItem, QWidget

from hwsched.desktop.frame.tool_window import Desk, ToolWindow
from hwsched.desktop.jobs.jobs import Cancelled, Progress
from hwsched.desktop.looks.tokens import scaled
from hwsched.desktop.survey.register import status_word
from hwsched.desktop.widgets.buttons import let_lead
from hwsched.desktop.widgets.empty import Empty
from hwsched.language import phrase
from hwsched.operations.opening.fit_differences import in_words
from hwsched.operations.opening.since_upgrade import (
    ChangedFit,
    SinceUpgrade,
    since_upgrade,
    summary,
    take_since_upgrade,
)

_ID = int(Qt.ItemDataRole.UserRole)


class UpgradeWindow(ToolWindow):
    """Old and new value of all that differs, an opening a line; nothing is changed before a person takes it."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, phrase("Since the upgrade"), parent)
        self.resize(1180, 560)
        self.found: SinceUpgrade | None = None
        self.said = QLabel()
        self.said.setWordWrap(True)
        self.tree = QTreeWidget()
        self.tree.setAccessibleName(phrase("What differs"))
        self.tree.setHeaderLabels([phrase("Opening, and what differs"), phrase("Before"), phrase("After")])
        self.tree.setAlternatingRowColors(True)
        Empty(self.tree, phrase("What this version works out otherwise than an earlier one did stands here."))
        self.tree.header().setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        for column, width in enumerate((360, 380)):
            self.tree.setColumnWidth(column, scaled(width))
        self.tree.itemActivated.connect(self._show_opening)
        self.released = QCheckBox(phrase("Also openings whose packet went out"))
        self.released.setToolTip(phrase("Without it they keep what they were released with"))
        self.released.toggled.connect(lambda _on: self.compare())
        self.again = self.button(phrase("Compare again"), self.compare, phrase("Nothing is changed by it"))
        self.take = self.button(
            phrase("Take the new"), self.take_it, phrase("Store what was worked out; undo gives all of it back")
        )
        self.body.addWidget(self.said)
        self.body.addWidget(self.tree, 1)
        self.body.addWidget(self.released)
        for each in (self.again, self.take):
            self.foot.addWidget(each)
        self._forget(phrase("Nothing is changed before you take it."))

    def follow(self) -> None:
        """Forget what was worked out for the project as it was before."""
        if self.found is not None:
            self._forget(phrase("The project has changed since this was worked out. Work it out again."))
        self.enable()

    def enable(self) -> None:
        """Something must be worked out before it is taken."""
        self.again.setEnabled(self.idle)
        self.released.setEnabled(self.idle)
        self.take.setEnabled(self.idle and self.found is not None and bool(self.found.fresh))
        let_lead(self.take)

    def compare_first(self) -> None:
        """Compare, unless it was done already."""
        if self.found is None:
            self.compare()

    def compare(self) -> None:
        """Work out anew what an earlier version has worked out, and compare."""
        project, released = self.desk.workspace.project, self.released.isChecked()
        self._forget(phrase("Nothing is changed before you take it."))

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            return since_upgrade(project, released=released, progress=progress, cancelled=cancelled)

        self.run(phrase("Working out again"), work, self._on_found)

    def _on_found(self, found: SinceUpgrade | None) -> None:
        if found is None:
            self.said.setText(phrase("Stopped before all openings were compared. Nothing is changed."))
            return
        self.found = found
        for each in found.openings:
            self.tree.addTopLevelItem(self._line(each, found))
        self.tree.expandAll()
        said = summary(found)
        self.said.setText(phrase("{summary} Nothing is changed yet.", summary=said) if found.openings else said)
        self.enable()

    def _line(self, each: ChangedFit, found: SinceUpgrade) -> QTreeWidgetItem:
        packet = each.packet
        released = (
            phrase(
                "   released {at}, {by}{part}", at=packet.at, by=packet.by, part=phrase(": kept") if each.kept else ""
            )
            if packet is not None
            else ""
        )
        line = QTreeWidgetItem([each.mark + released])
        line.setData(0, _ID, each.opening_id)
        for differs in each.differs:
            texts = list(in_words(differs, found.style))
            if texts[0] == "status":
                texts = [phrase("State"), *(status_word(each) for each in texts[1:])]
            below = QTreeWidgetItem(texts)
            for column, text in enumerate(texts):
                below.setToolTip(column, text)
            line.addChild(below)
        return line

    def take_it(self) -> None:
        """Store what was worked out, as one step that undo takes back."""
        found, workspace = self.found, self.desk.workspace
        if found is None:
            return

        def work(_progress: Progress, _cancelled: Cancelled) -> Any:
            return take_since_upgrade(workspace.project, found, who=workspace.who)

        def then(_changes: Any) -> None:
            self._forget(phrase("Taken, as one step of the journal. Undo gives all of it back."))
            self.desk.reload()

        self.run(phrase("Taking it"), work, then)

    def _forget(self, words: str) -> None:
        self.found = None
        self.tree.clear()
        self.said.setText(words)
        self.enable()

    def _show_opening(self, item: QTreeWidgetItem) -> None:
        opening = str((item.parent() or item).data(0, _ID) or "")
        if opening:
            self.desk.show_openings([opening])
