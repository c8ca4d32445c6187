"""Choosing a part of the catalogue by number or words, and the catalogue of the open project."""

from collections.abc import Sequence

from PySide6.QtCore import QStringListModel, Qt
from PySide6.QtWidgets import QComboBox, QCompleter, QSizePolicy, QWidget

from hwsched.desktop.project.workspace import Workspace
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.values import Catalogue
from hwsched.values.role_words import role_said

_GAP = "  "


def catalogue_of(workspace: Workspace) -> Catalogue:
    """Return the catalogue as the openings see it; empty while there is no opening."""
    first = next(iter(workspace.checked.values()), None)
    return first.given.catalogue if first is not None else Catalogue({}, "empty")


def part_names(catalogue: Catalogue) -> QStringListModel:
    """Return number and description of every part, to be shared by many boxes."""
    parts = sorted(catalogue.parts.values(), key=lambda part: part.number)
    return QStringListModel([f"{part.number}{_GAP}{part.description}" for part in parts])


class RoleBox(DropDown):
    """A box of roles of parts: said in the language in force, told as they are declared."""

    def __init__(self, roles: Sequence[str], role: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        for each in roles:
            self.addItem(role_said(each), each)
        self.set_role(role)

    def role(self) -> str:
        """Return the chosen role."""
        return str(self.currentData() or "")

    def set_role(self, role: str) -> None:
        """Show a role; the first where there is no such."""
        self.setCurrentIndex(max(self.findData(role), 0))


class PartBox(DropDown):
    """A box that finds a part by any piece of its number or description."""

    def __init__(self, names: QStringListModel, number: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setEditable(True)
        self.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
        self.setModel(names)
        self.setMinimumContentsLength(14)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        completer = QCompleter(names, self)
        completer.setFilterMode(Qt.MatchFlag.MatchContains)
        completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        self.setCompleter(completer)
        self.set_number(number)

    def number(self) -> str:
        """Return the catalogue number."""
        return self.currentText().split(_GAP)[0].strip()

    def set_number(self, number: str) -> None:
        """Show a part; a number that the catalogue does not have is shown as it is."""
        at = self.findText(number + _GAP, Qt.MatchFlag.MatchStartsWith) if number else -1
        self.setCurrentIndex(at)
        if at < 0:
            self.setEditText(number)
        edit = self.lineEdit()
        if edit is not None:
            edit.setCursorPosition(0)
