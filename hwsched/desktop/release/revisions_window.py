"""Revisions: states of the project under a letter; freezing one, and what is different from another or from now."""

from typing import Any, Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHeaderView, QInputDialog, QSplitter, QTreeWidget, QTreeWidgetItem, QWidget

from hwsched.desktop.frame.tool_window import Desk, ToolWindow
from hwsched.desktop.jobs.jobs import Cancelled, Progress
from hwsched.desktop.looks.moments import moment_said
from hwsched.desktop.looks.tokens import scaled
from hwsched.desktop.widgets.buttons import let_lead
from hwsched.desktop.widgets.empty import Empty
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.operations.release.changed_lines import Changed
from hwsched.operations.release.document_differences import DocumentDifference, document_differences
from hwsched.operations.release.freezing import FrozenRevision, freeze
from hwsched.operations.release.revision_differences import RevisionDifferences, differences
from hwsched.operations.release.revisions import revisions
from hwsched.values.revision import Scope

_OPENING = int(Qt.ItemDataRole.UserRole)
_KINDS: Final = {"new": to_phrase("new"), "gone": to_phrase("gone"), "changed": to_phrase("changed")}


class RevisionsWindow(ToolWindow):
    """All revisions above; below what is different since the selected one, or between the two selected."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, phrase("Revisions"), parent)
        self.resize(860, 520)
        self.list = QTreeWidget()
        self.list.setAccessibleName(phrase("Revisions"))
        self.list.setHeaderLabels([phrase("Revision"), phrase("Frozen"), phrase("By"), phrase("Of"), phrase("Purpose")])
        self.list.setRootIsDecorated(False)
        self.list.setAlternatingRowColors(True)
        self.list.setSelectionMode(QTreeWidget.SelectionMode.ExtendedSelection)
        self.list.itemSelectionChanged.connect(self.enable)
        self.found = QTreeWidget()
        self.found.setAccessibleName(phrase("What is otherwise"))
        self.found.setHeaderLabels([phrase("What is otherwise"), phrase("Before"), phrase("After")])
        self.found.setAlternatingRowColors(True)
        self.found.itemActivated.connect(self._show_opening)
        self.list.header().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self.found.header().setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        self.found.setColumnWidth(0, scaled(320))
        self.found.setColumnWidth(1, scaled(240))
        Empty(self.list, phrase("No revision yet. Freeze… keeps the project as it stands under the first letter."))
        Empty(self.found, phrase("Choose one revision or two, and press Compare: what differs stands here."))
        split = QSplitter(Qt.Orientation.Vertical)
        split.addWidget(self.list)
        split.addWidget(self.found)
        split.setSizes([180, 300])
        self.body.addWidget(split)
        self.compare = self.button(
            phrase("Compare"),
            self.compare_them,
            phrase("The selected one with the project as it stands, or the two selected"),
        )
        self.make = self.button(
            phrase("Freeze…"), self.ask_freeze, phrase("Freeze the project as it stands under the next letter")
        )
        self.foot.addWidget(self.compare)
        self.foot.addWidget(self.make)
        let_lead(self.make)
        self.listen(desk.workspace.changed, self.follow_change)
        self.follow()

    def follow(self) -> None:
        """List the revisions anew."""
        chosen = set(self.letters())
        self.list.clear()
        for each in revisions(self.desk.workspace.project):
            at = moment_said(each.at)
            item = QTreeWidgetItem([each.letter, at, each.person, Scope.of(each.scope).words, each.purpose])
            self.list.addTopLevelItem(item)
            item.setSelected(each.letter in chosen)
        self.enable()

    def letters(self) -> list[str]:
        """Return the selected letters, in their order."""
        rows = sorted(self.list.indexOfTopLevelItem(item) for item in self.list.selectedItems())
        return [item.text(0) for row in rows if (item := self.list.topLevelItem(row)) is not None]

    def enable(self) -> None:
        """One or two revisions can be compared."""
        self.compare.setEnabled(self.idle and len(self.letters()) in (1, 2))
        self.make.setEnabled(self.idle)

    def ask_freeze(self) -> None:
        """Ask what it is for, and freeze the project."""
        purpose, stated = QInputDialog.getText(
            self, phrase("Freeze the project"), phrase("Purpose, such as: for approval")
        )
        if stated:
            self.freeze_it(purpose)

    def freeze_it(self, purpose: str) -> None:
        """Freeze the project under the next letter; undo takes the letter back."""
        workspace = self.desk.workspace

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            return freeze(
                workspace.project,
                who=workspace.who,
                purpose=purpose,
                checker=workspace.checker,
                progress=progress,
                cancelled=cancelled,
            )

        def then(made: FrozenRevision) -> None:
            self.follow()
            self.told.setText(
                phrase_of_count(
                    "Revision {letter}: {openings} opening frozen.",
                    "Revision {letter}: {openings} openings frozen.",
                    made.openings,
                    letter=made.letter,
                    openings=made.openings,
                )
            )

        self.run(phrase("Freezing"), work, then)

    def compare_them(self) -> None:
        """Show what is different since the selected revision, or between the two selected."""
        letters, workspace = self.letters(), self.desk.workspace

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            found = differences(workspace.project, *letters, progress=progress, cancelled=cancelled)
            return found, document_differences(workspace.project, found, cancelled=cancelled)

        if letters:
            self.run(phrase("Comparing"), work, self._show_found)

    def _show_found(self, both: tuple[RevisionDifferences, tuple[DocumentDifference, ...]]) -> None:
        found, documents = both
        self.found.clear()
        if found.others:
            self._add(phrase("The project"), "", found.others)
        for each in found.openings:
            self._add(each.mark, phrase(_KINDS[each.kind]), each.lines, each.opening_id)
        for circuit in found.circuits:
            self._add(phrase("Circuit {name}", name=circuit.name), phrase(_KINDS[circuit.kind]), circuit.lines)
        if documents:
            said = [(phrase(each.title), ", ".join(each.marks) or phrase("otherwise")) for each in documents]
            self._add(phrase("Documents"), "", tuple(Changed(title, " ", words) for title, words in said))
        after = phrase("the project as it stands") if found.after == "present" else found.after
        self.told.setText(
            phrase_of_count(
                "{before} and {after}: {count} opening differs, {same} do not.",
                "{before} and {after}: {count} openings differ, {same} do not.",
                len(found.openings),
                before=found.before,
                after=after,
                same=found.same,
            )
        )

    def _add(self, name: str, kind: str, lines: tuple[Changed, ...], opening_id: str = "") -> None:
        item = QTreeWidgetItem([name, "", kind])
        item.setData(0, _OPENING, opening_id)
        self.found.addTopLevelItem(item)
        for line in lines:
            item.addChild(QTreeWidgetItem([line.what, line.before or "–", line.after or "–"]))
        item.setExpanded(bool(lines) and not opening_id)

    def _show_opening(self, item: QTreeWidgetItem) -> None:
        while (above := item.parent()) is not None:
            item = above
        opening = str(item.data(0, _OPENING) or "")
        if opening in self.desk.workspace.checked:
            self.desk.show_openings([opening])
