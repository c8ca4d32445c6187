"""Asks what to print, for which openings, and where to."""

from pathlib import Path

from PySide6.QtWidgets import (
    QButtonGroup,
    QCheckBox,
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QFileDialog,
    QFormLayout,
    QHBoxLayout,
    QLineEdit,
    QPushButton,
    QRadioButton,
    QVBoxLayout,
    QWidget,
)

from hwsched.operations.issuing import PRINTS


class PrintDialog(QDialog):
    """Documents, openings, folder, paper."""

    def __init__(self, shown: int, chosen: int, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Print")
        self.boxes = {}
        documents = QVBoxLayout()
        for name, title, formats in PRINTS:
            box = QCheckBox(f"{title} ({', '.join(formats)})")
            box.setChecked("xlsx" in formats)
            box.toggled.connect(self._allow)
            self.boxes[name] = box
            documents.addWidget(box)
        self.scopes = QButtonGroup(self)
        scopes = QVBoxLayout()
        for key, text, count in (
            ("all", "All openings", 1),
            ("shown", f"The {shown} shown in the register", shown),
            ("chosen", f"The {chosen} selected", chosen),
        ):
            button = QRadioButton(text)
            button.setObjectName(key)
            button.setChecked(key == "all")
            button.setEnabled(count > 0)
            self.scopes.addButton(button)
            scopes.addWidget(button)
        self.folder = QLineEdit(str(Path.home()))
        self.folder.setMinimumWidth(320)
        self.folder.textChanged.connect(self._allow)
        browse = QPushButton("Choose")
        browse.clicked.connect(self._browse)
        where = QHBoxLayout()
        where.addWidget(self.folder, 1)
        where.addWidget(browse)
        self.paper = QComboBox()
        self.paper.addItem("Letter", "letter")
        self.paper.addItem("A4", "a4")
        form = QFormLayout()
        form.addRow("Documents", documents)
        form.addRow("Openings", scopes)
        form.addRow("Folder", where)
        form.addRow("Paper", self.paper)
        self.buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel)
        self.buttons.button(QDialogButtonBox.StandardButton.Ok).setText("Print")
        self.buttons.accepted.connect(self.accept)
        self.buttons.rejected.connect(self.reject)
        layout = QVBoxLayout(self)
        layout.addLayout(form)
        layout.addWidget(self.buttons)
        self._allow()

    def answer(self) -> tuple[list[str], str, Path, str]:
        """Return documents' names, scope, folder and paper."""
        names = [name for name, box in self.boxes.items() if box.isChecked()]
        checked = self.scopes.checkedButton()
        return (
            names,
            checked.objectName() if checked else "all",
            Path(self.folder.text()),
            str(self.paper.currentData()),
        )

    def _allow(self) -> None:
        ready = any(box.isChecked() for box in self.boxes.values()) and bool(self.folder.text().strip())
        self.buttons.button(QDialogButtonBox.StandardButton.Ok).setEnabled(ready)

    def _browse(self) -> None:
        folder = QFileDialog.getExistingDirectory(self, "Folder for the documents", self.folder.text())
        if folder:
            self.folder.setText(folder)
