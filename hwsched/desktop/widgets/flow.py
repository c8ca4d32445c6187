"""A layout of widgets beside one another that go on in a next row where there is no room: none is cut off or hidden."""

from collections.abc import Iterator
from typing import Final

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QWidget, QWidgetItem

from hwsched.desktop.looks.tokens import SPACE

_MOST_ROWS: Final = 4
"""About as many rows does it need where it is narrowest."""


class Flow(QLayout):
    """Lays widgets in rows, from left to right and on."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._items: list[QLayoutItem] = []
        self.gaps: set[int] = set()
        """Before which item there is more room."""
        self.stretched: QWidget | None = None
        """What takes the room that is left in its row."""

    def addItem(self, item: QLayoutItem) -> None:  # noqa: N802
        """Take an item."""
        self._items.append(item)

    def insert(self, place: int, widget: QWidget) -> None:
        """Take a widget and put it before the item of that place."""
        self.addChildWidget(widget)
        self._items.insert(place, QWidgetItem(widget))
        self.invalidate()

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
        """Return the size of the widest item, and wide enough for a few rows.

        A window is at least as high as its rows are where they are narrowest: one item a row would want a whole screen.
        """
        size, whole = QSize(), 0
        for item in self._items:
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

    def _rows(self, width: int) -> Iterator[list[tuple[QLayoutItem, int, QSize]]]:
        """Give the items of each row, each with its place in it and its size."""
        row: list[tuple[QLayoutItem, int, QSize]] = []
        x = 0
        for at, item in enumerate(self._items):
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
