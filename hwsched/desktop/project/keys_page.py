"""The page of keys, made from the commands: what can be done, by which keys, and in which menu it stands."""

from typing import Final

from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QLabel, QLineEdit, QVBoxLayout, QWidget

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.looks.text_size import put_letters
from hwsched.desktop.looks.tokens import SPACE
from hwsched.desktop.widgets.found_by_key import found_by_key
from hwsched.desktop.widgets.lines import Lines
from hwsched.language import phrase, to_phrase

_TITLES: Final = (to_phrase("Command"), to_phrase("Keys"), to_phrase("What it does"))


class KeysPage(QWidget):
    """Commands with their keys; those with keys first.

    Parameters
    ----------
    frame : Frame
        Its commands are told.
    """

    def __init__(self, frame: Frame, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._commands = frame.commands
        title = QLabel(phrase("Keys"))
        put_letters(title, "title", bold=True)
        self.words = QLineEdit()
        self.words.setPlaceholderText(phrase("Words of a command, or keys"))
        self.words.setAccessibleName(phrase("Words of a command, or keys"))
        self.words.setClearButtonEnabled(True)
        self.words.textChanged.connect(self._fill)
        found_by_key(self, self.words)
        self.table = Lines([phrase(each) for each in _TITLES], 2)
        self.table.setAccessibleName(phrase("Commands and their keys"))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(SPACE.wide, SPACE.large, SPACE.wide, SPACE.large)
        layout.setSpacing(SPACE.middle)
        layout.addWidget(title)
        layout.addWidget(self.words)
        layout.addWidget(self.table, 1)
        self._fill()

    def showEvent(self, event: QShowEvent) -> None:  # noqa: N802
        """Tell of commands that came since."""
        super().showEvent(event)
        self._fill()

    def _fill(self, _text: str = "") -> None:
        words = self.words.text().casefold().split()
        told = sorted(
            ((each.title, each.keys, each.tip) for each in self._commands), key=lambda row: (not row[1], row[0])
        )
        shown = [row for row in told if all(word in " ".join(row).casefold() for word in words)]
        self.table.show_rows(shown)
