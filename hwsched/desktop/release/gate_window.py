"""The release gate: which openings may be picked for and installed, and what is missing at the others."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHeaderView, QTreeWidget, QTreeWidgetItem, QWidget

from hwsched.desktop.jobs import Cancelled, Progress
from hwsched.desktop.side_place import SidePlace
from hwsched.desktop.tool_window import Desk, ToolWindow
from hwsched.operations.release.project_view import project_view
from hwsched.operations.release.release_gate import Passage, passages

_OPENING = int(Qt.ItemDataRole.UserRole)


class GateWindow(ToolWindow):
    """Openings that are held, each with what is missing below it; one that is chosen by double-click is shown."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, "Release gate", parent)
        self.resize(820, 480)
        self.list = QTreeWidget()
        self.list.setHeaderLabels(["Opening", "What is missing until it may be picked for and installed"])
        self.list.header().setSectionResizeMode(0, QHeaderView.ResizeMode.ResizeToContents)
        self.list.setWordWrap(True)
        self.list.itemActivated.connect(self._show_opening)
        self.body.addWidget(self.list)
        self.again = self.button("Ask again", self.ask)
        self.foot.addWidget(self.again)
        self._asked = False
        self.enable()

    def enable(self) -> None:
        """One job at a time."""
        self.again.setEnabled(self.idle)

    def follow(self) -> None:
        """Say that what stands here is of before."""
        if self._asked:
            self.told.setText("The project has changed since; ask again.")
        self.enable()

    def ask(self) -> None:
        """Ask the gate of all openings."""
        workspace = self.desk.workspace

        def work(_progress: Progress, _cancelled: Cancelled) -> tuple[Passage, ...]:
            return passages(project_view(workspace.project, checker=workspace.checker))

        self.run("Asking the gate", work, self.show_passages)

    def show_passages(self, found: tuple[Passage, ...]) -> None:
        """Show what is held."""
        self._asked = True
        self.list.clear()
        held = [each for each in found if not each.free]
        for each in held:
            item = QTreeWidgetItem([each.mark, each.missing[0]])
            item.setData(0, _OPENING, each.opening_id)
            item.addChildren([QTreeWidgetItem(["", line]) for line in each.missing[1:]])
            self.list.addTopLevelItem(item)
        self.list.expandAll()
        self.told.setText(f"{len(found) - len(held)} of {len(found)} openings may be picked for and installed.")

    def _show_opening(self, item: QTreeWidgetItem) -> None:
        opening = str((item.parent() or item).data(0, _OPENING) or "")
        if opening in self.desk.workspace.checked:
            self.desk.select([opening])


def _shown(window: GateWindow) -> None:
    window.ask()


GATE = SidePlace(
    "gate",
    "Release gate",
    "Which openings may be picked for and installed, and what is missing at the others",
    GateWindow,
    within="release",
    shown=_shown,
)
