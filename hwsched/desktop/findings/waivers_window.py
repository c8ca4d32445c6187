"""All waivers of the project; those selected can be taken back."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHeaderView, QTreeWidget, QTreeWidgetItem, QWidget

from hwsched.desktop.side_place import SidePlace
from hwsched.desktop.tool_window import Desk, ToolWindow
from hwsched.operations.findings.waivers import unwaive, waivers
from hwsched.operations.project.history import newest
from hwsched.values.record import SCOPES

_ID = int(Qt.ItemDataRole.UserRole)
_OPENING = _ID + 1


class WaiversWindow(ToolWindow):
    """Rule, opening, who, when, until, why."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, "Waivers", parent)
        self.resize(900, 400)
        self.list = QTreeWidget()
        self.list.setHeaderLabels(["Rule", "About", "Opening", "Holds for", "Person", "Given", "Until", "Reason"])
        self.list.setRootIsDecorated(False)
        self.list.setAlternatingRowColors(True)
        self.list.setSelectionMode(QTreeWidget.SelectionMode.ExtendedSelection)
        self.list.header().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self.list.header().setStretchLastSection(True)
        self.list.itemSelectionChanged.connect(self.enable)
        self.list.itemActivated.connect(self._show_opening)
        self.back = self.button("Take back the selected", self.take_back, "Their findings count again")
        self.rule = self.button("Show rule", self._show_rule)
        self.body.addWidget(self.list)
        self.foot.addWidget(self.rule)
        self.foot.addWidget(self.back)
        self.follow()

    def follow(self) -> None:
        """List the waivers anew."""
        self.list.clear()
        checked = self.desk.workspace.checked
        self.base = newest(self.desk.workspace.project)
        found = waivers(self.desk.workspace.project)
        today = self.desk.workspace.project.today()
        for each in found:
            opening = checked.get(each.opening_id or "")
            until = each.until.isoformat() if each.until else "no end"
            over = " (over)" if each.past(today) else ""
            mark = opening.given.opening.mark if opening is not None else ""
            item = QTreeWidgetItem(
                [
                    each.rule, each.about, mark, SCOPES[each.scope], each.person, each.given_on.isoformat(),
                    until + over, each.reason,
                ]
            )  # fmt: skip
            item.setData(0, _ID, each.id)
            item.setData(0, _OPENING, each.opening_id)
            item.setToolTip(7, each.reason)
            self.list.addTopLevelItem(item)
        self.told.setText("" if found else "No waiver is given.")
        self.enable()

    def enable(self) -> None:
        """Something must be selected."""
        chosen = self.list.selectedItems()
        self.back.setEnabled(bool(chosen) and self.idle)
        self.rule.setEnabled(bool(chosen))

    def take_back(self) -> None:
        """Take the selected waivers back, as one step."""
        ids = [str(item.data(0, _ID)) for item in self.list.selectedItems()]
        workspace = self.desk.workspace
        self.edit_seen(
            lambda base: unwaive(workspace.project, ids, who=workspace.who, base=base),
            self.base,
            lambda _changes: self.follow(),
        )

    def _show_rule(self) -> None:
        for item in self.list.selectedItems()[:1]:
            self.desk.show_rule(item.text(0))

    def _show_opening(self, item: QTreeWidgetItem) -> None:
        if item.data(0, _OPENING):
            self.desk.select([str(item.data(0, _OPENING))])


WAIVERS = SidePlace("waivers", "Waivers", "Who accepted which finding, and why", WaiversWindow, within="openings")
