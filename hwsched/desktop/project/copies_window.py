"""The daily copies of the project file; one of them is put back on wish, and what was there is kept first."""

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHeaderView, QMessageBox, QTreeWidget, QTreeWidgetItem, QWidget

from hwsched.desktop.frame.tool_window import Desk, ToolWindow
from hwsched.desktop.looks.moments import moment_said
from hwsched.desktop.widgets.empty import Empty
from hwsched.language import phrase
from hwsched.operations.project.backups import list_backups, restore

_NAME = int(Qt.ItemDataRole.UserRole)


class CopiesWindow(ToolWindow):
    """Day, size and last step of each copy."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, phrase("Copies of this project"), parent)
        self.resize(760, 320)
        self.list = QTreeWidget()
        self.list.setAccessibleName(phrase("Copies of this project"))
        self.list.setHeaderLabels([phrase("Copy"), phrase("Size"), phrase("Last step in it"), phrase("When")])
        self.list.setRootIsDecorated(False)
        self.list.setAlternatingRowColors(True)
        self.list.header().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self.list.itemSelectionChanged.connect(self.enable)
        self.empty = Empty(self.list)
        self.back = self.button(phrase("Put back…"), self.ask, phrase("The project as it is now is kept first"))
        self.body.addWidget(self.list)
        self.foot.addWidget(self.back)
        self.asked: QMessageBox | None = None
        self.follow()

    @property
    def place(self) -> Path | None:
        """The project's file; None for a database on a server."""
        return self.desk.workspace.place

    def follow(self) -> None:
        """List the copies anew."""
        self.list.clear()
        copies = list_backups(self.place) if self.place is not None else []
        for each in copies:
            when = moment_said(each.newest_at) if each.newest_at else ""
            item = QTreeWidgetItem([each.name, phrase("{size:.1f} MB", size=each.size / 1e6), each.step, when])
            item.setData(0, _NAME, each.name)
            self.list.addTopLevelItem(item)
        if self.place is None:
            self.empty.say(phrase("Copies of a database on a server are its keeper's."))
        else:
            self.empty.say(phrase("No copies yet. One is made before the first change of each day."))
        self.enable()

    def enable(self) -> None:
        """One must be chosen."""
        self.back.setEnabled(bool(self.list.selectedItems()) and self.idle)

    def ask(self) -> None:
        """Say what will be, and ask."""
        name = str(self.list.selectedItems()[0].data(0, _NAME))
        box = QMessageBox(QMessageBox.Icon.Question, phrase("Put a copy back"), "", parent=self)
        box.setTextFormat(Qt.TextFormat.PlainText)
        box.setText(
            phrase(
                "The project becomes what it was in the copy {name}. As it is now it is kept first, among "
                "these copies, and can be put back in the same way.",
                name=name,
            )
        )
        yes = box.addButton(phrase("Put it back"), QMessageBox.ButtonRole.AcceptRole)
        no = box.addButton(phrase("Leave it"), QMessageBox.ButtonRole.RejectRole)
        box.setDefaultButton(no)
        box.setEscapeButton(no)
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.buttonClicked.connect(lambda pressed: self.put_back(name) if pressed is yes else None)
        self.asked = box
        box.open()

    def put_back(self, name: str) -> None:
        """Put a copy in the project's place, and open it."""
        workspace, place = self.desk.workspace, self.place
        if place is None:
            return

        def act() -> None:
            # A file that is open cannot be exchanged.
            workspace.close()
            restore(place, name)

        opens = self.desk.open_project
        self.desk.jobs.edit(phrase("Putting the copy back"), act, lambda _done: opens(str(place)))
