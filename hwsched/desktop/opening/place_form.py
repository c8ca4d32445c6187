"""The place of what is chosen, as numbers that can be typed, and what it costs; refusals stand beside it."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFormLayout, QHBoxLayout, QLabel, QLineEdit, QPushButton, QVBoxLayout, QWidget

from hwsched.desktop.looks.tokens import SPACE, wide
from hwsched.desktop.opening.drawing_state import Thing
from hwsched.drawings.layers import UNIT
from hwsched.language import phrase


class PlaceForm(QWidget):
    """Fields of a thing's place; what was typed stays until it is taken or another thing is chosen."""

    typed = Signal(str, str)
    """From lock edge and above floor, as typed."""
    wants_release = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.across, self.up = QLineEdit(), QLineEdit()
        self._shown = ("", "")
        grid = QFormLayout()
        grid.setContentsMargins(0, 0, 0, 0)
        # With large letters a field stands below its name.
        grid.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        grid.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        self.labels = (QLabel(), QLabel())
        for field, label in zip((self.across, self.up), self.labels, strict=True):
            label.setBuddy(field)
            field.setMinimumWidth(wide(10))
            field.returnPressed.connect(self._take)
            grid.addRow(label, field)
        self.set = QPushButton(phrase("Move there"))
        self.set.setAutoDefault(False)
        self.set.clicked.connect(lambda _checked=False: self._take())
        self.release = QPushButton(phrase("Leave it to the fit"))
        self.release.setAutoDefault(False)
        self.release.setToolTip(phrase("The place of the unit is worked out again"))
        self.release.clicked.connect(lambda _checked=False: self.wants_release.emit())
        buttons = QHBoxLayout()
        buttons.addWidget(self.set)
        buttons.addWidget(self.release)
        buttons.addStretch(1)
        self.where, self.costs, self.told, self.measured = QLabel(), QLabel(), QLabel(), QLabel()
        for label, words in (
            (self.where, phrase("What is chosen")),
            (self.costs, phrase("What the place costs")),
            (self.told, phrase("What is said of the place")),
            (self.measured, phrase("What was measured")),
        ):
            label.setWordWrap(True)
            label.setTextFormat(Qt.TextFormat.PlainText)
            label.setAccessibleName(words)
            label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(SPACE.small, SPACE.hair, SPACE.hair, SPACE.hair)
        layout.setSpacing(SPACE.hair)
        layout.addWidget(self.where)
        layout.addLayout(grid)
        layout.addLayout(buttons)
        for each in (self.told, self.costs, self.measured):
            layout.addWidget(each)
        layout.addStretch(1)
        self.enable(None)

    def show_place(self, across: str, up: str) -> None:
        """Show where it stands; what a person is typing is left alone while it stands there."""
        if (across, up) != self._shown:
            self._shown = across, up
            self.forget_typing()
        for field, text in ((self.across, across), (self.up, up)):
            if not field.isModified():
                field.setText(text)

    def forget_typing(self) -> None:
        """Let what was typed go: it was taken, or another thing is chosen."""
        for field, text in zip((self.across, self.up), self._shown, strict=True):
            field.setModified(False)
            field.setText(text)
        self.told.clear()
        self.told.hide()

    def say(self, words: str) -> None:
        """Say what became of what was asked."""
        self.told.setText(words)
        self.told.setVisible(bool(words))

    def show_costs(self, words: str) -> None:
        """Show what the place costs."""
        self.costs.setText(words)
        self.costs.setVisible(bool(words))

    def enable(self, thing: Thing | None) -> None:
        """Let be moved what can be."""
        movable = thing is not None and thing.movable
        self.where.setText(
            phrase("Nothing chosen: click in the drawing or in the list.")
            if thing is None
            else thing.words + ("" if movable or not thing.why_not else f": {thing.why_not}")
        )
        what = (
            (phrase("Edge"), phrase("Lower edge"))
            if thing is None or thing.name == UNIT
            else (phrase("Middle"), phrase("Middle"))
        )
        for words, label, field in zip(
            (phrase("{what} from lock edge", what=what[0]), phrase("{what} above floor", what=what[1])),
            self.labels,
            (self.across, self.up),
            strict=True,
        ):
            label.setText(words)
            field.setAccessibleName(words)
        for each in (self.across, self.up, self.set):
            each.setEnabled(movable)
        self.release.setVisible(thing is not None and thing.by_hand)
        if not movable:
            self._shown = ("", "")
            for field in (self.across, self.up):
                field.clear()

    def _take(self) -> None:
        self.typed.emit(self.across.text(), self.up.text())
