"""Asks what to print, for which openings, and where to."""

from pathlib import Path
from typing import Final

from PySide6.QtWidgets import (
    QButtonGroup,
    QCheckBox,
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QHBoxLayout,
    QLineEdit,
    QPushButton,
    QRadioButton,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.looks.tokens import SPACE, scaled, wide
from hwsched.desktop.widgets.asked_files import first_folder, folder_to_write, written_into
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.desktop.widgets.room import Scrolled, give_room
from hwsched.documents.release.bound_packets import BOUND_PACKETS
from hwsched.documents.release.packet import PACKET
from hwsched.documents.view import Format
from hwsched.language import phrase, to_phrase
from hwsched.operations.release.issued_documents import PRINTS
from hwsched.operations.release.walking_order import WALKS

_FORMATS: Final = {"pdf": "PDF", "xlsx": to_phrase("Workbook"), "ics": "iCalendar"}


class PrintDialog(QDialog):
    """Documents, openings, folder, paper."""

    def __init__(self, shown: int, chosen: int, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(phrase("Print"))
        self.boxes = {}
        self.went_out = QCheckBox(phrase("Write down that these packets went out"))
        self.went_out.setToolTip(
            phrase("Of the openings that are ready; a later change then says that the packet is older")
        )
        self.walk = DropDown()
        self.walk.setAccessibleName(phrase("Order on each level"))
        self.walk.setToolTip(phrase("In which order the doors of a level are walked"))
        for name, words in WALKS.items():
            self.walk.addItem(phrase(words), name)
        held = QWidget()
        documents = QVBoxLayout(held)
        documents.setContentsMargins(0, 0, 0, 0)
        for name, title, formats in PRINTS:
            box = QCheckBox(f"{phrase(title)} ({', '.join(formats)})")
            box.setChecked("xlsx" in formats)
            self.boxes[name] = box
            documents.addWidget(box)
            if name == BOUND_PACKETS.name:
                documents.addWidget(self.walk)
            if name == PACKET.name:
                indented = QHBoxLayout()
                indented.addSpacing(scaled(SPACE.wide))
                indented.addWidget(self.went_out)
                documents.addLayout(indented)
        self.scopes = QButtonGroup(self)
        scopes = QVBoxLayout()
        for key, text, count in (
            ("all", phrase("All openings"), 1),
            ("shown", phrase("The {shown} shown in the register", shown=shown), shown),
            ("chosen", phrase("The {chosen} selected", chosen=chosen), chosen),
        ):
            button = QRadioButton(text)
            button.setObjectName(key)
            button.setChecked(key == "all")
            button.setEnabled(count > 0)
            self.scopes.addButton(button)
            scopes.addWidget(button)
        self.folder = QLineEdit(str(first_folder("written")))
        self.folder.setMinimumWidth(wide(39))
        browse = QPushButton(phrase("Choose"))
        browse.clicked.connect(self._browse)
        where = QHBoxLayout()
        where.addWidget(self.folder, 1)
        where.addWidget(browse)
        self.paper = DropDown()
        for name, paper in (
            (phrase("As the office declared"), ""),
            (phrase("Letter"), "letter"),
            ("A4", "a4"),
            ("A5", "a5"),
        ):
            self.paper.addItem(name, paper)
        self.formats: dict[Format, QCheckBox] = {}
        kinds = QHBoxLayout()
        for format_ in dict.fromkeys(format_ for _, _, each in PRINTS for format_ in each):
            box = QCheckBox(phrase(_FORMATS.get(format_, format_.upper())))
            box.setChecked(True)
            self.formats[format_] = box
            kinds.addWidget(box)
        kinds.addStretch(1)
        form = QFormLayout()
        form.addRow(phrase("Documents"), Scrolled(held))
        form.addRow(phrase("Formats"), kinds)
        form.addRow(phrase("Openings"), scopes)
        form.addRow(phrase("Folder"), where)
        form.addRow(phrase("Paper"), self.paper)
        self.buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel)
        self.buttons.button(QDialogButtonBox.StandardButton.Ok).setText(phrase("Print"))
        self.buttons.accepted.connect(self.accept)
        self.buttons.rejected.connect(self.reject)
        layout = QVBoxLayout(self)
        layout.addLayout(form)
        layout.addWidget(self.buttons)
        self.folder.textChanged.connect(self._allow)
        for box in (*self.boxes.values(), *self.formats.values()):
            box.toggled.connect(self._allow)
        self._allow()
        give_room(self)

    def accept(self) -> None:
        """Take what is chosen; the next question for a folder begins in this one."""
        written_into(self.folder.text())
        super().accept()

    def answer(self) -> tuple[list[str], str, Path, str, frozenset[Format], bool, str]:
        """Return documents' names, scope, folder, paper, formats, whether packets are written down as out, the walk."""
        names = [name for name, box in self.boxes.items() if box.isChecked() and box.isEnabled()]
        checked = self.scopes.checkedButton()
        return (
            names,
            checked.objectName() if checked else "all",
            Path(self.folder.text()),
            str(self.paper.currentData()),
            frozenset(format_ for format_, box in self.formats.items() if box.isChecked()),
            self.went_out.isEnabled() and self.went_out.isChecked(),
            str(self.walk.currentData()),
        )

    def _allow(self) -> None:
        wanted = {format_ for format_, box in self.formats.items() if box.isChecked()}
        for name, _, formats in PRINTS:
            self.boxes[name].setEnabled(not wanted.isdisjoint(formats))
        ready = any(b.isChecked() and b.isEnabled() for b in self.boxes.values()) and bool(self.folder.text().strip())
        packets, bound = self.boxes[PACKET.name], self.boxes[BOUND_PACKETS.name]
        self.went_out.setEnabled(any(box.isChecked() and box.isEnabled() for box in (packets, bound)))
        self.walk.setEnabled(bound.isChecked() and bound.isEnabled())
        self.buttons.button(QDialogButtonBox.StandardButton.Ok).setEnabled(ready)

    def _browse(self) -> None:
        folder = folder_to_write(self, phrase("Folder for the documents"), at=self.folder.text())
        if folder:
            self.folder.setText(folder)
