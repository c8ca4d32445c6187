"""What stands in the place of lines where a list has none: what comes here, and how to begin."""

from typing import Final

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QAbstractItemView, QLabel

from hwsched.desktop.looks.tokens import SPACE
from hwsched.language import to_phrase

NO_OPENINGS: Final = to_phrase("No openings yet: take in a survey, or add one.")
"""Said in every list of openings, and of what follows from them, while a project has none."""


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
