"""Facts below one another: a label that wraps, a field beside it; grids below one another have their fields in line."""

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QLabel

from hwsched.desktop.widgets.fact_line import FactLine
from hwsched.language import phrase

_LABEL: Final = 2
_FIELD: Final = 3
"""How label and field share the width: by their words fields of two grids would begin at two places."""


class FactGrid(QGridLayout):
    """A row for each fact; it belongs into a layout that gives it the whole width."""

    def __init__(self) -> None:
        super().__init__()
        self.setColumnStretch(0, _LABEL)
        self.setColumnStretch(1, _FIELD)

    def add(self, words: str, line: FactLine) -> QLabel:
        """Add a fact under these words; returns their label."""
        label = QLabel(words, textFormat=Qt.TextFormat.PlainText, wordWrap=True)
        label.setBuddy(line.field)
        label.setToolTip(phrase(line.attribute.note))
        # Beside the field, not beside what is said below it once somebody types.
        label.setMinimumHeight(line.field.sizeHint().height())
        label.setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        row = self.rowCount()
        self.addWidget(label, row, 0, Qt.AlignmentFlag.AlignTop)
        self.addWidget(line, row, 1, Qt.AlignmentFlag.AlignTop)
        return label
