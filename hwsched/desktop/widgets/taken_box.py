"""The drop-down whose word is acted on at once: keys look for it in its list, and only Enter or the mouse takes it.

Here belongs how a word is taken that costs something, such as reading a file anew; what it costs belongs to the page.
"""

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent, QWheelEvent

from hwsched.desktop.widgets.drop_down import DropDown

_WAYS: Final = frozenset(
    {
        Qt.Key.Key_Up, Qt.Key.Key_Down, Qt.Key.Key_PageUp, Qt.Key.Key_PageDown, Qt.Key.Key_Home, Qt.Key.Key_End,
    }
)  # fmt: skip
"""Keys that go from word to word."""
_COMMANDS: Final = (
    Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier | Qt.KeyboardModifier.MetaModifier
)


class TakenBox(DropDown):
    """A drop-down of which the first letter or arrow opens the list, so that no word on the way is taken."""

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Open the list where a key would go to another word; a letter is looked for in it."""
        text = event.text()
        types = text.isprintable() and bool(text.strip()) and not event.modifiers() & _COMMANDS
        if not types and event.key() not in _WAYS:
            super().keyPressEvent(event)
            return
        self.showPopup()
        if types:
            self.look_in_list(event)

    def wheelEvent(self, event: QWheelEvent) -> None:  # noqa: N802
        """Leave the wheel to the page: no word is taken by turning it."""
        event.ignore()
