"""A layout of widgets beside one another that go on in a next row where there is no room: none is cut off or hidden."""

from collections.abc import Iterator, Sequence
from typing import Final

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QWidget, QWidgetItem

from hwsched.desktop.looks.tokens import SPACE, wide

_MOST_ROWS: Final = 4
"""About as many rows does it need where it is narrowest."""
_WORDS: Final = 24
"""Figures that words have beside buttons at least."""


class Flow(QLayout):
    """Lays widgets in rows, from left to right and on.

    Here belongs how rows are filled; where they begin and what stands beside them may be said by who inherits.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._items: list[QLayoutItem] = []
        self.gaps: set[int] = set()
        """Before which item there is more room."""
        self.stretched: QWidget | None = None
        """What takes the room that is left in its row."""
        self.follows: Flow | None = None
        """Behind whose last widget the keys come to the first of this one, which may have none for a while."""

    def addItem(self, item: QLayoutItem) -> None:  # noqa: N802
        """Take an item."""
        self._items.append(item)

    def insert(self, place: int, widget: QWidget) -> None:
        """Take a widget and put it before the item of that place."""
        self.addChildWidget(widget)
        self._items.insert(place, QWidgetItem(widget))
        self.invalidate()
        self._put_in_order(place, widget)

    def _put_in_order(self, place: int, widget: QWidget) -> None:
        """Let Tab come to a widget where it is seen: the toolkit puts what is made later behind all of the window."""
        before = next(reversed(self._reached(0, place)), None)
        if before is None and self.follows is not None:
            before = next(reversed(self.follows._reached(0, self.follows.count())), None)
        after = next(iter(self._reached(place + 1, self.count())), None)
        if before is not None and before.window() is widget.window():
            QWidget.setTabOrder(before, widget)
        elif after is not None and after.window() is widget.window():
            # Behind it, and it behind the other: so both stand where it stood.
            QWidget.setTabOrder(after, widget)
            QWidget.setTabOrder(widget, after)

    def _reached(self, first: int, end: int) -> list[QWidget]:
        """Return the widgets of some places to which Tab comes."""
        widgets = [item.widget() for item in self._items[first:end]]
        return [each for each in widgets if each is not None and each.focusPolicy() & Qt.FocusPolicy.TabFocus]

    def count(self) -> int:
        """Return how many there are."""
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:  # noqa: N802
        """Return one of them."""
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:  # noqa: N802
        """Give one up."""
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def expandingDirections(self) -> Qt.Orientation:  # noqa: N802
        """Ask for no room that others could have."""
        return Qt.Orientation(0)

    def hasHeightForWidth(self) -> bool:  # noqa: N802
        """Say that it is as high as its rows."""
        return True

    def heightForWidth(self, width: int) -> int:  # noqa: N802
        """Return how high the rows are."""
        high = [max(size.height() for _, _, size in row) for row in self._rows(width)]
        return sum(high) + SPACE.hair * max(len(high) - 1, 0)

    def sizeHint(self) -> QSize:  # noqa: N802
        """Return the least size: it takes no more than it needs."""
        return self.minimumSize()

    def minimumSize(self) -> QSize:  # noqa: N802
        """Return the size of the widest item, and wide enough for a few rows."""
        return self._least(self._items)

    @staticmethod
    def _least(items: Sequence[QLayoutItem]) -> QSize:
        """Return the least size of items in rows.

        A window is at least as high as its rows are where they are narrowest: one item a row would want a whole screen.
        """
        size, whole = QSize(), 0
        for item in items:
            if not item.isEmpty():
                size = size.expandedTo(item.minimumSize())
                whole += item.sizeHint().width() + SPACE.hair
        few = whole // (_MOST_ROWS - 1)
        return size.expandedTo(QSize(few, 0))

    def setGeometry(self, rect: QRect) -> None:  # noqa: N802
        """Put the items into their rows."""
        super().setGeometry(rect)
        y = rect.y()
        for row in self._rows(rect.width()):
            tall = max(size.height() for _, _, size in row)
            left = rect.width() - (row[-1][1] + row[-1][2].width())
            wider = 0
            for item, x, size in row:
                grows = left if self.stretched is not None and item.widget() is self.stretched else 0
                place = QRect(
                    rect.x() + x + wider, y + (tall - size.height()) // 2, size.width() + grows, size.height()
                )
                item.setGeometry(place)
                wider += grows
            y += tall + SPACE.hair

    def _rows(
        self, width: int, items: Sequence[QLayoutItem] | None = None
    ) -> Iterator[list[tuple[QLayoutItem, int, QSize]]]:
        """Give the items of each row, all unless some are named, each with its place in it and its size."""
        row: list[tuple[QLayoutItem, int, QSize]] = []
        x = 0
        for at, item in enumerate(self._items if items is None else items):
            if item.isEmpty():
                continue
            size = item.sizeHint()
            if row:
                x += SPACE.hair * (3 if at in self.gaps else 1)
            if row and x + size.width() > width:
                yield row
                row, x = [], 0
            # What is wider than a row is as wide as one, where it can be.
            size.setWidth(max(min(size.width(), width), item.minimumSize().width()))
            row.append((item, x, size))
            x += size.width()
        if row:
            yield row


class Foot(Flow):
    """Words at the left and buttons at the right; where the row has too little room the words stand above the buttons.

    What is added first are the words: they take the room that is left, and are as high as they need.
    """

    def heightForWidth(self, width: int) -> int:  # noqa: N802
        """Return how high words and buttons are."""
        high, _words, _rows = self._laid(width)
        return high

    def minimumSize(self) -> QSize:  # noqa: N802
        """Return the size of the widest button, and wide enough for a few rows."""
        return self._least(self._items[1:])

    def setGeometry(self, rect: QRect) -> None:  # noqa: N802
        """Put words and buttons into their places."""
        QLayout.setGeometry(self, rect)
        _high, words, rows = self._laid(rect.width())
        for item, place in ((self._items[0], words), *rows):
            item.setGeometry(place.translated(rect.topLeft()))

    def _laid(self, width: int) -> tuple[int, QRect, list[tuple[QLayoutItem, QRect]]]:
        """Return the height, the place of the words and those of the buttons."""
        rows = list(self._rows(width, self._items[1:]))
        taken = rows[0][-1][1] + rows[0][-1][2].width() if len(rows) == 1 else 0
        left = width - taken - SPACE.small if taken else width
        widget = self._items[0].widget()
        said = bool(getattr(widget, "text", lambda: "")()) and not self._items[0].isEmpty()
        beside = len(rows) <= 1 and (not said or left >= wide(_WORDS))
        of_words = max(self._items[0].heightForWidth(left if beside else width), 0) if said else 0
        if beside:
            high = max([of_words, *(size.height() for row in rows for _, _, size in row)])
            words = QRect(0, (high - of_words) // 2, max(left, 0), of_words)
            top, step = 0, high
        else:
            words, top, step = QRect(0, 0, width, of_words), of_words + SPACE.hair if said else 0, 0
            high = top
        places = []
        for row in rows:
            tall = step or max(size.height() for _, _, size in row)
            free = width - row[-1][1] - row[-1][2].width()
            for item, x, size in row:
                places.append((item, QRect(QPoint(free + x, top + (tall - size.height()) // 2), size)))
            top += tall + SPACE.hair
        return (high if beside else top - SPACE.hair), words, places
