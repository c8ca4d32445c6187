"""A row of buttons that goes on in a next row where it has no room: none is hidden behind an arrow."""

from typing import Final

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QLayout, QLayoutItem, QSizePolicy, QToolButton, QWidget

from hwsched.desktop.icons import icon
from hwsched.desktop.tokens import SPACE, icon_size

_MOST_ROWS: Final = 4
"""About as many rows does it need where it is narrowest."""


class _Flow(QLayout):
    """Lays widgets in rows, from left to right and on."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._items: list[QLayoutItem] = []
        self.gaps: set[int] = set()
        """Before which item there is more room."""

    def addItem(self, item: QLayoutItem) -> None:  # noqa: N802
        """Take an item."""
        self._items.append(item)

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
        return self._set(QRect(0, 0, width, 0), place=False)

    def sizeHint(self) -> QSize:  # noqa: N802
        """Return the least size: it takes no more than it needs."""
        return self.minimumSize()

    def minimumSize(self) -> QSize:  # noqa: N802
        """Return the size of the widest item, and wide enough for a few rows.

        A window is at least as high as its rows are where they are narrowest: one item a row would want a whole screen.
        """
        size, whole = QSize(), 0
        for item in self._items:
            size = size.expandedTo(item.minimumSize())
            whole += item.sizeHint().width() + SPACE.hair
        few = whole // (_MOST_ROWS - 1)
        return size.expandedTo(QSize(few, 0))

    def setGeometry(self, rect: QRect) -> None:  # noqa: N802
        """Put the items into their rows."""
        super().setGeometry(rect)
        self._set(rect, place=True)

    def _set(self, rect: QRect, *, place: bool) -> int:
        x, y, tall = rect.x(), rect.y(), 0
        for at, item in enumerate(self._items):
            size = item.sizeHint()
            if x > rect.x():
                x += SPACE.hair * (3 if at in self.gaps else 1)
            if x + size.width() > rect.right() + 1 and x > rect.x():
                x, y, tall = rect.x(), y + tall + SPACE.hair, 0
            if place:
                item.setGeometry(QRect(x, y, size.width(), size.height()))
            x += size.width()
            tall = max(tall, size.height())
        return y + tall - rect.y()


class ToolRow(QWidget):
    """Buttons of actions."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._flow = _Flow(self)
        self._flow.setContentsMargins(0, 0, 0, 0)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def add(self, act: QAction, picture: str = "") -> QToolButton:
        """Add a button of an action: its words, or an icon where the words are not needed."""
        made = QToolButton()
        if picture:
            act.setIcon(icon(picture))
            made.setIconSize(icon_size())
        made.setDefaultAction(act)
        style = Qt.ToolButtonStyle
        made.setToolButtonStyle(style.ToolButtonIconOnly if picture else style.ToolButtonTextOnly)
        made.setAccessibleName(act.toolTip() or act.text())
        self._flow.addWidget(made)
        return made

    def add_gap(self) -> None:
        """Let more room before what comes next."""
        self._flow.gaps.add(self._flow.count())
