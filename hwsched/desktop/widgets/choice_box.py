"""A drop-down in a cell, and what a fact of a kind is edited with."""

from PySide6.QtCore import Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QWidget

from hwsched.attributes import Attribute
from hwsched.attributes.unknown import unknown_word
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.desktop.widgets.typed import words_among
from hwsched.language import phrase


class ChoiceBox(DropDown):
    """A drop-down in a cell: an arrow key looks at the next word, and only Enter or the mouse takes one."""

    picked = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._by_key = False
        self.activated.connect(self._on_activated)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Note that it is a key that changes the word."""
        self._by_key = True
        try:
            super().keyPressEvent(event)
        finally:
            self._by_key = False

    def _on_activated(self, _place: int) -> None:
        if not self._by_key:
            self.picked.emit()


def words_of(attribute: Attribute) -> list[str] | None:
    """Return the words among which a fact chooses, that for unknown first; None for one that is typed."""
    words = words_among(attribute)
    return None if words is None else [unknown_word(), *map(phrase, words)]
