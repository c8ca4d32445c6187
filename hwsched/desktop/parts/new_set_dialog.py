"""Asks for a new hardware set: its name, its lines, and whether the selected openings get it."""

from collections.abc import Iterable, Sequence

from PySide6.QtCore import QStringListModel, Signal
from PySide6.QtWidgets import QCheckBox, QDialog, QDialogButtonBox, QFormLayout, QLabel, QLineEdit, QVBoxLayout, QWidget

from hwsched.desktop.parts.set_lines import SetLines
from hwsched.desktop.widgets.room import give_room
from hwsched.language import phrase, phrase_of_count
from hwsched.operations.parts.hardware_sets import Line, lines_of
from hwsched.values import Fit


class NewSetDialog(QDialog):
    """Name, notes and lines, begun with what the selected openings have alike.

    Parameters
    ----------
    names : QStringListModel
        Parts of the catalogue.
    fits : sequence of Fit
        Of the selected openings, as far as they are fitted.
    selected : int
        Openings selected in the register.
    """

    wants_set = Signal()
    """The dialog stays until the set is made."""

    def __init__(
        self, names: QStringListModel, fits: Sequence[Fit], selected: int, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(phrase("New hardware set"))
        self.name = QLineEdit()
        self.name.textChanged.connect(self._allow)
        self.notes = QLineEdit()
        alike = shared_lines(fits)
        self.lines = SetLines(names)
        self.lines.show_lines(alike)
        self.lines.changed.connect(self._allow)
        words = phrase("Lines: none yet; add them by hand.")
        if alike:
            words = phrase_of_count(
                "Lines: what the selected opening that fits has.",
                "Lines: what {count} selected openings that fit have alike.",
                len(fits),
            )
        elif fits:
            words = phrase_of_count(
                "Lines: the selected opening that fits has no part; add lines by hand.",
                "Lines: the {count} selected openings that fit have no part alike; add lines by hand.",
                len(fits),
            )
        self.said = QLabel(words)
        self.said.setWordWrap(True)
        self.give = QCheckBox(phrase("Give it to the selected openings ({selected})", selected=selected))
        self.give.setChecked(selected > 0)
        self.give.setEnabled(selected > 0)
        self.buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel)
        self.ok = self.buttons.button(QDialogButtonBox.StandardButton.Ok)
        self.ok.setText(phrase("Make set"))
        self.buttons.accepted.connect(self.wants_set)
        self.buttons.rejected.connect(self.reject)
        form = QFormLayout()
        form.addRow(phrase("Name"), self.name)
        form.addRow(phrase("Notes"), self.notes)
        layout = QVBoxLayout(self)
        layout.addLayout(form)
        layout.addWidget(self.said)
        layout.addWidget(self.lines, 1)
        layout.addWidget(self.give)
        layout.addWidget(self.buttons)
        give_room(self, 73, 56)
        self._allow()

    def _allow(self) -> None:
        self.ok.setEnabled(bool(self.name.text().strip()) and bool(self.lines.lines()))


def shared_lines(fits: Iterable[Fit]) -> tuple[Line, ...]:
    """Return the lines that all these fits would give a set."""
    held = [lines_of(fit) for fit in fits]
    return tuple(line for line in held[0] if all(line in other for other in held[1:])) if held else ()
