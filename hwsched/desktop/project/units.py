"""The units of a project in words: how lengths are shown, and what a number without a unit means."""

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QButtonGroup,
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QLabel,
    QLineEdit,
    QRadioButton,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.language import phrase, to_phrase
from hwsched.quantities import BARE_UNITS, LENGTH_STYLES

STYLES: Final = {
    "fraction": to_phrase('inches and fractions, 1 3/4"'),
    "decimal-inch": to_phrase('decimal inches, 1.75"'),
    "mm": to_phrase("millimetres, 44.5 mm"),
}
UNITS: Final = {"in": "inches", "ft": "feet", "mm": "millimetres", "cm": "centimetres", "m": "metres"}
NO_UNIT: Final = to_phrase("nothing: a unit has to be typed")
SYSTEMS: Final = (
    (to_phrase('Inches: 1 3/4" is shown, and 5 typed alone is 5 inches'), "fraction", "in"),
    (to_phrase("Millimetres: 44.5 mm is shown, and 5 typed alone is 5 mm"), "mm", "mm"),
)
"""What a new project may begin with: what is said, how lengths are shown, what a bare number means."""


class UnitsBox(QWidget):
    """Both units of a project, with what a change of them changes.

    Parameters
    ----------
    style, unit : str
        As the project has them; no unit: a bare number is refused.
    """

    def __init__(self, style: str, unit: str | None, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._style, self._unit = style, unit or ""
        self.lengths, self.bare = DropDown(), DropDown()
        for each in LENGTH_STYLES:
            self.lengths.addItem(phrase(STYLES[each]), each)
        self.bare.addItem(phrase(NO_UNIT), "")
        for known in BARE_UNITS:
            self.bare.addItem(phrase(UNITS[known]), known)
        self.lengths.setCurrentIndex(self.lengths.findData(style))
        self.bare.setCurrentIndex(self.bare.findData(self._unit))
        self.lengths.setAccessibleName(phrase("Lengths are shown in"))
        self.bare.setAccessibleName(phrase("A number typed without a unit means"))
        self.said = QLabel()
        self.said.setWordWrap(True)
        form = QFormLayout(self)
        form.setContentsMargins(0, 0, 0, 0)
        form.addRow(phrase("Lengths are shown in"), self.lengths)
        form.addRow(phrase("A number without a unit means"), self.bare)
        form.addRow(self.said)
        for box in (self.lengths, self.bare):
            box.currentIndexChanged.connect(lambda _index: self._say())
        self._say()

    def style_answer(self) -> str | None:
        """Return how lengths are to be shown, where it is another way."""
        chosen = str(self.lengths.currentData())
        return chosen if chosen != self._style else None

    def unit_answer(self) -> str | None:
        """Return what a bare number is to mean, where it is something else; empty: nothing."""
        chosen = str(self.bare.currentData())
        return chosen if chosen != self._unit else None

    def _say(self) -> None:
        said = []
        if self.style_answer() is not None:
            said.append(phrase("Lengths are shown and printed otherwise; what is measured stays as it is."))
        unit = self.unit_answer()
        if unit is not None:
            meaning = phrase("is in {units}", units=UNITS[unit]) if unit else phrase("is refused")
            said.append(
                phrase(
                    "What is typed or read from now on without a unit {meaning}; what is stored stays as it is.",
                    meaning=meaning,
                )
            )
        self.said.setText(" ".join(said) or phrase("What is measured is stored in millimetres whatever is shown."))


class NewProjectDialog(QDialog):
    """Title and units of a project that is to be made."""

    def __init__(self, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(phrase("New project"))
        self.name = QLineEdit(title)
        self.name.setAccessibleName(phrase("Title of the project"))
        self.systems = QButtonGroup(self)
        form = QFormLayout()
        form.addRow(phrase("Title"), self.name)
        layout = QVBoxLayout(self)
        layout.addLayout(form)
        for place, (words, _, _) in enumerate(SYSTEMS):
            button = QRadioButton(phrase(words))
            button.setChecked(place == 0)
            self.systems.addButton(button, place)
            layout.addWidget(button)
        note = QLabel(phrase("Both can be changed later, in the project's settings."))
        note.setTextInteractionFlags(Qt.TextInteractionFlag.NoTextInteraction)
        layout.addWidget(note)
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        layout.addWidget(buttons)
        self.name.selectAll()

    def answer(self) -> tuple[str, str, str]:
        """Return title, how lengths are shown, and what a bare number means."""
        _, style, unit = SYSTEMS[self.systems.checkedId()]
        return self.name.text().strip(), style, unit
