"""What stands in the place of lines where a list has none: what comes here, and how to begin."""

from typing import Final

from PySide6.QtCore import QEvent, QObject, QRect, Qt
from PySide6.QtGui import QPainter, QPalette
from PySide6.QtWidgets import QAbstractItemView, QLabel

from hwsched.desktop.looks.tokens import SPACE, colour
from hwsched.language import to_phrase

NO_OPENINGS: Final = to_phrase("No openings yet: take in a survey, or add one.")
"""Said in every list of openings, and of what follows from them, while a project has none."""
_MIDDLE: Final = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap


def paint_empty(painter: QPainter, room: QRect, words: str) -> None:
    """Paint in the midst of a picture's place what will be seen there, as quietly as where a list has no lines."""
    painter.setPen(colour("soft"))
    painter.drawText(room.adjusted(SPACE.wide, SPACE.wide, -SPACE.wide, -SPACE.wide), int(_MIDDLE), words)


def empty_place(words: str) -> QLabel:
    """Return what stands in a place that will hold something else, as quietly as where a list has no lines."""
    made = QLabel(words)
    made.setTextFormat(Qt.TextFormat.PlainText)
    made.setWordWrap(True)
    made.setAlignment(Qt.AlignmentFlag.AlignCenter)
    made.setMargin(SPACE.wide)
    made.setForegroundRole(QPalette.ColorRole.PlaceholderText)
    return made


class Empty(QLabel):
    """Words over a list that has no line; they go with its first one.

    Parameters
    ----------
    view : QAbstractItemView
        The list, with its model.
    words : str
        What is said; nothing hides it.
    """

    def __init__(self, view: QAbstractItemView, words: str = "") -> None:
        super().__init__(words, view.viewport())
        self._view = view
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setWordWrap(True)
        self.setAlignment(Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop)
        self.setMargin(SPACE.wide)
        self.setForegroundRole(QPalette.ColorRole.PlaceholderText)
        # What is dragged onto the list, and its menu, are the list's.
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        model = view.model()
        for signal in (model.rowsInserted, model.rowsRemoved, model.modelReset, model.layoutChanged):
            signal.connect(self.look)
        view.viewport().installEventFilter(self)
        self.look()

    def say(self, words: str) -> None:
        """Say something else."""
        self.setText(words)
        self.look()

    def look(self, *_what: object) -> None:
        """Show the words where there is no line."""
        self.setGeometry(self._view.viewport().rect())
        self.setVisible(bool(self.text()) and not self._view.model().rowCount())

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802
        """Be as large as the list."""
        if event.type() == QEvent.Type.Resize:
            self.look()
        return super().eventFilter(watched, event)
