"""Missing facts, most useful first; the openings that need one are selected, and the return visit is written."""

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QFileDialog, QHeaderView, QLabel, QTreeWidget, QTreeWidgetItem, QWidget

from hwsched.desktop.jobs import Cancelled, Progress
from hwsched.desktop.side_place import SidePlace
from hwsched.desktop.tool_window import Desk, ToolWindow
from hwsched.operations.survey.return_visit import issue_return_visit
from hwsched.rules.missing import missing_facts

_MARKS = int(Qt.ItemDataRole.UserRole)


class MissingWindow(ToolWindow):
    """Fact, where it comes from, how many openings it unblocks, and which need it."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, "Missing facts", parent)
        self.resize(860, 440)
        note = QLabel("Unblocks: openings that need this fact and nothing else. Double-click to select the openings.")
        note.setWordWrap(True)
        self.list = QTreeWidget()
        self.list.setHeaderLabels(["Fact", "Of the", "Unblocks", "Needed by", "Openings"])
        self.list.setRootIsDecorated(False)
        self.list.setAlternatingRowColors(True)
        self.list.header().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self.list.itemActivated.connect(lambda item: self.select(item))
        self.paper = QComboBox()
        self.paper.addItem("Letter", "letter")
        self.paper.addItem("A4", "a4")
        self.write = self.button(
            "Write return visit…", self.ask_folder, "The sheet as PDF, and a workbook a building to be imported back"
        )
        self.body.addWidget(note)
        self.body.addWidget(self.list, 1)
        self.foot.addWidget(self.paper)
        self.foot.addWidget(self.write)
        self.follow()

    def follow(self) -> None:
        """Rank what is missing now."""
        self.list.clear()
        checked = self.desk.workspace.checked.values()
        found = missing_facts((each.given.opening.mark, each.fit, each.findings) for each in checked)
        for fact in found:
            some = ", ".join(fact.needed[:12])
            more = f" and {len(fact.needed) - 12} more" if len(fact.needed) > 12 else ""
            of = "catalogue" if fact.of_catalogue else "survey"
            item = QTreeWidgetItem([fact.label, of, str(len(fact.alone)), str(len(fact.needed)), some + more])
            item.setData(0, _MARKS, list(fact.needed))
            item.setToolTip(4, some + more)
            for column in (2, 3):
                item.setTextAlignment(column, Qt.AlignmentFlag.AlignCenter)
            self.list.addTopLevelItem(item)
        waiting = sum(each.fit is None for each in checked)
        words = "" if found else "Nothing is missing."
        if waiting:
            so_many = "1 opening is" if waiting == 1 else f"{waiting} openings are"
            words = f"{words} {so_many} not worked out yet; what is needed shows after Fit.".strip()
        self.told.setText(words)
        self.enable()

    def enable(self) -> None:
        """Offer the visit where something is missing."""
        self.write.setEnabled(self.idle and self.list.topLevelItemCount() > 0)

    def select(self, item: QTreeWidgetItem) -> None:
        """Select the openings that need a fact in the register."""
        marks = set(item.data(0, _MARKS))
        checked = self.desk.workspace.checked
        self.desk.select([id_ for id_, each in checked.items() if each.given.opening.mark in marks])

    def ask_folder(self) -> None:
        """Ask for a folder and write the return visit into it."""
        folder = QFileDialog.getExistingDirectory(self, "Folder for the return visit", str(Path.home()))
        if folder:
            self.write_visit(Path(folder))

    def write_visit(self, folder: Path) -> None:
        """Write sheet and workbooks."""
        project, paper = self.desk.workspace.project, str(self.paper.currentData())

        def work(_progress: Progress, _cancelled: Cancelled) -> list[Path]:
            return issue_return_visit(project, folder, paper=paper)

        def then(files: list[Path]) -> None:
            self.told.setText(f"{len(files)} files written into {folder}")

        self.run("Writing the return visit", work, then)


MISSING = SidePlace(
    "missing", "Missing facts", "Ranked by what they unblock; return visit", MissingWindow, within="survey"
)
