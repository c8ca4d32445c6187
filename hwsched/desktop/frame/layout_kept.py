"""How the window stood: its place and size, and how its panes share the room, kept from one start to the next."""

from collections.abc import Mapping
from typing import Final

from PySide6.QtCore import QSize
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QMainWindow, QSplitter

from hwsched.desktop.looks.tokens import wide
from hwsched.desktop.project.preferences import Preferences

_WINDOW: Final = "window"
_WIDE: Final = 178
_HIGH: Final = 97
"""At the first start, in figures, where the screen is that large."""


class LayoutKept:
    """Puts a window and its splitters as they stood, and remembers how they stand.

    Parameters
    ----------
    preferences : Preferences
        Where it is kept.
    window : QMainWindow
        Whose place and size it is.
    splitters : mapping of name to QSplitter
        Whose parts are kept.
    """

    def __init__(self, preferences: Preferences, window: QMainWindow, splitters: Mapping[str, QSplitter]) -> None:
        self._preferences, self._window, self._splitters = preferences, window, splitters

    def restore(self) -> None:
        """Put all as it stood; at the first start as large as the screen allows."""
        before = self._preferences.layout(_WINDOW)
        if before.isEmpty() or not self._window.restoreGeometry(before):
            self._window.resize(QSize(wide(_WIDE), wide(_HIGH)).boundedTo(_room()))
        for name, splitter in self._splitters.items():
            state = self._preferences.layout(self._called(name))
            if not state.isEmpty():
                splitter.restoreState(state)

    def keep(self) -> None:
        """Remember how all stands."""
        self._preferences.keep_layout(_WINDOW, self._window.saveGeometry())
        for name, splitter in self._splitters.items():
            self._preferences.keep_layout(self._called(name), splitter.saveState())

    def _called(self, name: str) -> str:
        """Name the parts at this size of letters: what small ones need is little for large ones, and they stay wide."""
        percent = self._preferences.text_size
        return name if percent == _USUAL else f"{name}-{percent}"


_USUAL: Final = 100


def _room() -> QSize:
    screen = QGuiApplication.primaryScreen()
    return screen.availableGeometry().size() if screen is not None else QSize()
