"""How large windows are that ask something: in letters, not in pixels, and never larger than the screen."""

from typing import Final

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QFrame, QScrollArea, QWidget

from hwsched.desktop.looks.tokens import wide

_OF_SCREEN: Final = 0.9
"""Share of the screen that such a window takes at most: its title and the system's bars stand there too."""
_LEAST: Final = 14
"""Figures high is what is scrolled at least."""


def give_room(window: QWidget, across: float | None = None, down: float | None = None) -> None:
    """Make a window as large as its words need, or so many figures wide and high; where they have room on the screen.

    Parameters
    ----------
    window : QWidget
        Laid out already.
    across, down : float, optional
        Figures that it is wide and high; as its layout wants it when left out.
    """
    layout, most = window.layout(), window.screen().availableSize() * _OF_SCREEN
    width = min(window.sizeHint().width() if across is None else wide(across), most.width())
    if down is not None:
        height = wide(down)
    elif layout is not None and layout.hasHeightForWidth():
        height = layout.totalHeightForWidth(width)
    else:
        height = window.sizeHint().height()
    window.resize(width, min(height, most.height()))


class Scrolled(QScrollArea):
    """What is as high as what it holds where there is room, and is scrolled where there is not."""

    def __init__(self, held: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setWidgetResizable(True)
        self._held = held
        self.setWidget(held)

    def sizeHint(self) -> QSize:  # noqa: N802
        """Return the size of what it holds."""
        return QSize(self.minimumSizeHint().width(), self._held.sizeHint().height())

    def minimumSizeHint(self) -> QSize:  # noqa: N802
        """Return the width of what it holds, and a height at which a few lines are seen."""
        held = self._held.minimumSizeHint()
        bar = self.verticalScrollBar().sizeHint().width()
        return QSize(held.width() + bar, min(held.height(), wide(_LEAST)))
