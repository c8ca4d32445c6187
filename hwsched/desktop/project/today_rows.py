"""Lines of the landing place: a count with its words, and how far a level is, both lead to what stands behind."""

from collections.abc import Mapping
from typing import Final

from PySide6.QtCore import QRect, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from hwsched.desktop.looks import tokens
from hwsched.desktop.looks.icons import paint_icon
from hwsched.desktop.looks.tokens import CORNER, FOCUS, SPACE, STATES, TARGET, colour, font, scaled, wash, wide
from hwsched.language import phrase, to_phrase
from hwsched.operations.project.today import LevelProgress, State, Task

LOOKS: Final[Mapping[State, tokens.State]] = {
    "ready": "fits",
    "held": "held",
    "does-not-fit": "not-fits",
    "to-measure": "to-measure",
    "not-worked-out": "stale",
}
WORDS: Final[Mapping[State, str]] = {
    "ready": to_phrase("ready"),
    "held": to_phrase("held"),
    "does-not-fit": to_phrase("do not fit"),
    "to-measure": to_phrase("to measure"),
    "not-worked-out": to_phrase("not worked out"),
}


class Row(QAbstractButton):
    """A line that is clicked, or chosen by keyboard, as a whole.

    Here belongs how such a line shows that the pointer or the focus is on it; what it paints belongs to each kind.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def paint_ground(self, painter: QPainter) -> None:
        """Paint what lies under the line, and the ring of the focus."""
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ground = QRectF(self.rect()).adjusted(FOCUS / 2, FOCUS / 2, -FOCUS / 2, -FOCUS / 2)
        painter.setPen(Qt.PenStyle.NoPen)
        if self.isEnabled() and (self.isDown() or self.underMouse()):
            painter.setBrush(colour("tint" if self.isDown() else "hover"))
            painter.drawRoundedRect(ground, CORNER, CORNER)
        if self.hasFocus():
            pen = painter.pen()
            pen.setStyle(Qt.PenStyle.SolidLine)
            pen.setColor(colour("focus"))
            pen.setWidth(FOCUS)
            painter.setPen(pen)
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(ground, CORNER, CORNER)


class CountRow(Row):
    """How many there are of something, and what they are; nought leads nowhere."""

    def __init__(self, task: Task, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.task = task
        self.setText(f"{task.count} {task.words}")
        self.setAccessibleName(self.text())
        self.setEnabled(task.count > 0)
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def sizeHint(self) -> QSize:  # noqa: N802
        """Return room for the number and some words beside it."""
        width = self._beside() + wide(12)
        return QSize(width, self.heightForWidth(width))

    def minimumSizeHint(self) -> QSize:  # noqa: N802
        """Return the same: words wrap, they are never cut off."""
        return self.sizeHint()

    def hasHeightForWidth(self) -> bool:  # noqa: N802
        """Tell that words wrap."""
        return True

    def heightForWidth(self, width: int) -> int:  # noqa: N802
        """Return how high the words are in so much room."""
        room = QRect(0, 0, max(width - self._beside() - SPACE.small, wide(6)), scaled(TARGET) * 100)
        words = QFontMetrics(font()).boundingRect(room, int(Qt.TextFlag.TextWordWrap), self.task.words)
        number = QFontMetrics(font("title", bold=True)).height()
        return max(words.height(), number, scaled(TARGET)) + 2 * SPACE.hair

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Paint the number large, right-aligned, and the words beside it."""
        painter = QPainter(self)
        self.paint_ground(painter)
        inner = self.rect().adjusted(SPACE.small, SPACE.hair, -SPACE.small, -SPACE.hair)
        number = QRect(inner)
        number.setWidth(self._beside() - SPACE.small - SPACE.middle)
        middle = Qt.AlignmentFlag.AlignVCenter
        painter.setPen(colour("text" if self.task.count else "soft"))
        painter.setFont(font("title", bold=self.task.count > 0, tabular=True))
        painter.drawText(number, middle | Qt.AlignmentFlag.AlignRight, str(self.task.count))
        words = QRect(inner)
        words.setLeft(self._beside())
        painter.setFont(font())
        painter.setPen(colour("text" if self.task.count else "soft"))
        painter.drawText(
            words, int(middle | Qt.AlignmentFlag.AlignLeft) | int(Qt.TextFlag.TextWordWrap), self.task.words
        )

    def _beside(self) -> int:
        """Where the words begin: numbers of up to five figures stand right-aligned under one another."""
        figures = max(3, len(str(self.task.count)))
        return SPACE.small + QFontMetrics(font("title", bold=True)).horizontalAdvance("0" * figures) + SPACE.middle


class LevelRow(Row):
    """How far a level is: its openings by state, as shares of a bar with their numbers."""

    def __init__(self, progress: LevelProgress, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.progress = progress
        told = ", ".join(f"{count} {phrase(WORDS[state])}" for state, count in progress.states.items() if count)
        self.setText(f"{progress.building or phrase('No building')}, {progress.level or phrase('no level')}")
        self.setAccessibleName(f"{self.text()}: {told}")
        self.setToolTip(f"{self.text()}: {told}")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:  # noqa: N802
        """Return room for the name and a bar."""
        return QSize(self._names() + wide(36), scaled(tokens.ROW.grid))

    def minimumSizeHint(self) -> QSize:  # noqa: N802
        """Return room for the name and a short bar."""
        return QSize(self._names() + wide(16), scaled(tokens.ROW.grid))

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Paint the name, the shares with their shapes and numbers, and the total."""
        painter = QPainter(self)
        self.paint_ground(painter)
        inner = self.rect().adjusted(SPACE.small, 0, -SPACE.small, 0)
        painter.setFont(font())
        painter.setPen(colour("text"))
        name = QRect(inner)
        name.setWidth(self._names() - SPACE.middle)
        middle = Qt.AlignmentFlag.AlignVCenter
        painter.drawText(
            name, middle, painter.fontMetrics().elidedText(self.text(), Qt.TextElideMode.ElideMiddle, name.width())
        )
        painter.setFont(font(tabular=True))
        total = QRect(inner)
        total.setLeft(inner.right() - wide(5))
        painter.drawText(total, middle | Qt.AlignmentFlag.AlignRight, str(self.progress.total))
        bar = QRectF(inner.left() + self._names(), 0.0, 0.0, float(scaled(TARGET) - SPACE.hair))
        bar.setRight(total.left() - SPACE.small)
        bar.moveTop((self.height() - bar.height()) / 2)
        self._paint_bar(painter, bar)

    def _paint_bar(self, painter: QPainter, bar: QRectF) -> None:
        left, total = bar.left(), self.progress.total
        letters = font("small", bold=True, tabular=True)
        painter.setFont(letters)
        for state, count in self.progress.states.items():
            if not count:
                continue
            look = STATES[LOOKS[state]]
            share = QRectF(left, bar.top(), bar.width() * count / total, bar.height())
            left = share.right()
            # Ground between the shares parts them, which two colours alone need not.
            share.adjust(0.0, 0.0, -float(FOCUS), 0.0)
            painter.fillRect(share, wash(look.role))
            painter.fillRect(QRectF(share.left(), share.top(), FOCUS, share.height()), colour(look.role))
            side, said = bar.height() - SPACE.small, str(count)
            needed = painter.fontMetrics().horizontalAdvance(said)
            painter.setPen(colour(look.role))
            # The shape stays as long as there is any room for it: a number alone would be told by its colour only.
            room = share.width() - needed - side - SPACE.hair
            if room >= SPACE.hair + FOCUS:
                air = SPACE.small if room >= SPACE.middle else SPACE.hair
                icon = QRectF(share.left() + air, bar.center().y() - side / 2, side, side)
                paint_icon(painter, icon, look.shape, look.role)
                words = share.adjusted(air + side + SPACE.hair, 0, 0, 0)
                painter.drawText(words, Qt.AlignmentFlag.AlignVCenter, said)
            elif share.width() >= needed + FOCUS:
                painter.drawText(share, Qt.AlignmentFlag.AlignCenter, said)

    def _names(self) -> int:
        return wide(26)


class Legend(QWidget):
    """Which shape and colour is which state."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(phrase("States: ") + ", ".join(phrase(word) for word in WORDS.values()))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:  # noqa: N802
        """Return room for all states in a row."""
        metrics = QFontMetrics(font("small"))
        words = sum(metrics.horizontalAdvance(phrase(word)) for word in WORDS.values())
        return QSize(words + len(WORDS) * (metrics.height() + SPACE.hair + SPACE.large), metrics.height() + SPACE.hair)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Paint shape and word of each state."""
        painter = QPainter(self)
        painter.setFont(font("small"))
        metrics = painter.fontMetrics()
        left, side = SPACE.small, metrics.height()
        for state, english in WORDS.items():
            look, word = STATES[LOOKS[state]], phrase(english)
            paint_icon(painter, QRectF(left, (self.height() - side) / 2, side, side), look.shape, look.role)
            left += side + SPACE.hair
            painter.setPen(colour("soft"))
            room = QRect(left, 0, metrics.horizontalAdvance(word) + SPACE.hair, self.height())
            painter.drawText(room, Qt.AlignmentFlag.AlignVCenter, word)
            left += metrics.horizontalAdvance(word) + SPACE.large
