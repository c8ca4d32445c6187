"""What stands in the place of lines where a list has none: what comes here, and how to begin."""

from typing import Final

from PySide6.QtCore import QEvent, QObject, QPoint, QRect, QSize, Qt
from PySide6.QtGui import QFont, QFontMetrics, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractItemView, QLabel, QPlainTextEdit, QWidget

from hwsched.desktop.looks.tokens import SPACE, Text, colour, font, scaled, wide
from hwsched.language import to_phrase

NO_OPENINGS: Final = to_phrase("No openings yet. Take in a survey, or add one.")
"""Said in every list of openings, and of what follows from them, while a project has none."""
_LINE: Final = 60
"""Figures in a line, at most: longer ones nobody reads at ease."""
_OVER: Final = 0.36
"""Share of what is free that is left over the words: where the eye rests, somewhat above the midst."""
_BETWEEN: Final = (". ", "! ")
_LAID: Final = int(Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop) | int(Qt.TextFlag.TextWordWrap)


def paint_empty(painter: QPainter, room: QRect, words: str) -> None:
    """Paint in an empty place what comes here: the first of several sentences larger, what to do for it below."""
    for text, letters, role, place in _placed(room, words):
        painter.setFont(letters)
        painter.setPen(colour(role))
        painter.drawText(place, _LAID, text)


def empty_rect(room: QRect, words: str) -> QRect:
    """Return where in an empty place its words stand."""
    found = QRect()
    for *_, place in _placed(room, words):
        found = found.united(place)
    return found


def _placed(room: QRect, words: str) -> list[tuple[str, QFont, Text, QRect]]:
    """Return what is said with its letters, the role of their colour and its place."""
    first, rest = _parted(words)
    said: list[tuple[str, QFont, Text]] = [(rest, font(), "soft")] if rest else []
    if first:
        said.insert(0, (first, font("large"), "text") if rest else (first, font(), "soft"))
    rim = min(scaled(SPACE.wide), max(room.width() // 8, SPACE.hair))
    across = max(min(room.width() - 2 * rim, wide(_LINE)), 1)
    sizes = [_even(QFontMetrics(letters), text, across) for text, letters, _ in said]
    gap = scaled(SPACE.hair)
    free = room.height() - sum(size.height() for size in sizes) - gap * (len(said) - 1)
    top, found = room.top() + max(round(free * _OVER), 0), []
    for (text, letters, role), size in zip(said, sizes, strict=True):
        left = room.left() + (room.width() - size.width()) // 2
        found.append((text, letters, role, QRect(QPoint(left, top), size)))
        top += size.height() + gap
    return found


def _even(letters: QFontMetrics, text: str, across: int) -> QSize:
    """Return how large a text is in lines that are about equally long: no word stands alone below the others."""

    def high(width: int) -> int:
        return letters.boundingRect(0, 0, width, 10_000, _LAID, text).height()

    step, least = max(across // 20, 1), high(across)
    while (
        across > 2 * step
        and high(across - step) == least
        and letters.boundingRect(0, 0, across - step, 10_000, _LAID, text).width() <= across - step
    ):
        across -= step
    return QSize(across, least)


def _parted(words: str) -> tuple[str, str]:
    """Return the first sentence, and what follows it."""
    ends = [at + 1 for each in _BETWEEN if (at := words.find(each)) >= 0]
    # Over the others it is a title, which has no full stop.
    return (words[: min(ends)].rstrip("."), words[min(ends) :].strip()) if ends else (words, "")


class EmptyPlace(QLabel):
    """Words in the midst of an empty place.

    Here belongs how they are painted; when they are seen belongs to whoever has the place.
    """

    def __init__(self, words: str, parent: QWidget | None = None) -> None:
        super().__init__(words, parent)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setWordWrap(True)
        self.setMargin(SPACE.wide)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802
        """Paint."""
        painter = QPainter(self)
        paint_empty(painter, self.rect(), self.text())
        painter.end()


def empty_place(words: str) -> QLabel:
    """Return what stands in a place that will hold something else, as quietly as where a list has no lines."""
    return EmptyPlace(words)


class EmptyText(QPlainTextEdit):
    """A text to be read; while there is none, words stand in its place as in that of lines."""

    def __init__(self, words: str) -> None:
        super().__init__()
        self.setReadOnly(True)
        self.say(words)

    def say(self, words: str) -> None:
        """Say something else while there is no text."""
        self._empty = words
        # Whoever cannot see them hears them.
        self.setAccessibleDescription(words)
        self.viewport().update()

    def placeholderText(self) -> str:  # noqa: N802
        """Return what is said while there is no text."""
        return self._empty

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802
        """Paint the text, or what is said in its place."""
        super().paintEvent(event)
        if not self.toPlainText():
            painter = QPainter(self.viewport())
            paint_empty(painter, self.viewport().rect(), self._empty)
            painter.end()


class Empty(EmptyPlace):
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
