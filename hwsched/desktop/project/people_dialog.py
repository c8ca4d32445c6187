"""The people of the project: names and roles; listing, giving another role, taking off the list."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QDialog,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QLineEdit,
    QPushButton,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.looks.tokens import wide
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.desktop.widgets.room import give_room
from hwsched.language import phrase
from hwsched.model.roles import ROLES, SPECIFIER
from hwsched.operations.project.people import Person


class PeopleDialog(QDialog):
    """All people with their roles, and a line for one more.

    Parameters
    ----------
    who : str
        Person at work.
    """

    wants_person = Signal(str, str)
    """Name and role of a person to be listed, or to have that role."""
    wants_gone = Signal(str)

    def __init__(self, who: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(phrase("People"))
        self._who = who
        self.base = 0
        """The newest step when the people were read."""
        self.told = QLabel()
        self.told.setWordWrap(True)
        self.list = QTreeWidget()
        self.list.setHeaderLabels([phrase("Name"), phrase("Role"), phrase("Does")])
        self.list.setRootIsDecorated(False)
        self.list.setAlternatingRowColors(True)
        self.list.header().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self.list.currentItemChanged.connect(self._on_current)
        self.name = QLineEdit()
        self.name.setPlaceholderText(phrase("Name of a person"))
        self.name.setMinimumWidth(wide(16))
        self.name.setToolTip(phrase("As given at log-in, or by --who at the command line"))
        self.name.textChanged.connect(lambda _text: self._enable())
        self.role = DropDown()
        # The name beside it is read too, however much a role does.
        self.role.setMinimumContentsLength(16)
        for role in ROLES.values():
            self.role.addItem(f"{phrase(role.name)}: {phrase(role.does)}", role.name)
        self.put = QPushButton(phrase("List, or give this role"))
        self.gone = QPushButton(phrase("Take off the list"))
        for button in (self.put, self.gone):
            button.setAutoDefault(False)
        self.put.clicked.connect(self._on_put)
        self.gone.clicked.connect(self._on_gone)
        self.name.returnPressed.connect(self.put.click)
        row, below = QHBoxLayout(), QHBoxLayout()
        row.addWidget(self.name, 2)
        row.addWidget(self.role, 3)
        below.addWidget(self.gone)
        below.addStretch(1)
        below.addWidget(self.put)
        layout = QVBoxLayout(self)
        layout.addWidget(self.told)
        layout.addWidget(self.list, 1)
        layout.addLayout(row)
        layout.addLayout(below)
        give_room(self, 80, 46)

    def show_people(self, people: Sequence[Person], base: int) -> None:
        """Show these people, as they were read when a step was the newest."""
        self.base = base
        self.list.clear()
        for person in people:
            does = phrase(ROLES[person.role].does) if person.role in ROLES else phrase("is not known to this version")
            self.list.addTopLevelItem(QTreeWidgetItem([person.name, phrase(person.role), does]))
        own = next((person.role for person in people if person.name == self._who), None)
        if not people:
            words = phrase(
                "Nobody is listed, so everybody may do everything. The first one must be a {specifier}.",
                specifier=phrase(SPECIFIER),
            )
            self.name.setText(self._who)
            self.role.setCurrentIndex(self.role.findData(SPECIFIER))
        else:
            words = phrase(
                "You work here as {person}: {own}.",
                person=self._who,
                own=phrase(own or "not listed, so you may only look"),
            )
            self.name.clear()
        self.told.setText(words)
        self._enable()

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Keep Return to the field: Qt would press a button of what is told about a refused name at once."""
        if event.key() not in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            super().keyPressEvent(event)

    def _enable(self) -> None:
        self.put.setEnabled(bool(self.name.text().strip()))
        self.gone.setEnabled(self.list.currentItem() is not None)

    def _on_current(self, item: QTreeWidgetItem | None) -> None:
        if item is not None:
            self.name.setText(item.text(0))
            self.role.setCurrentIndex(max(self.role.findData(item.text(1)), 0))
        self._enable()

    def _on_put(self) -> None:
        self.wants_person.emit(self.name.text().strip(), str(self.role.currentData()))

    def _on_gone(self) -> None:
        item = self.list.currentItem()
        if item is not None:
            self.wants_gone.emit(item.text(0))
