"""Lines that wrap: Qt's own tree cuts them off where the column ends, its lists measure them wider than they paint."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import (
    QListWidget,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTreeWidget,
    QWidget,
)

from hwsched.desktop.looks.tokens import SPACE

_MARGIN = 10 + 2 * SPACE.hair
"""Of words within their column, with the padding that the style sheet gives."""


class AsPainted(QStyledItemDelegate):
    """Measures a line that wraps at the width in which it is painted.

    Qt asks now with the width of the list, now with that of the line, and takes no notice of the padding that the style
    sheet gives: words that are only just too long would be cut, with dots, or leave an empty line below them.
    """

    def __init__(self, view: QListWidget) -> None:
        super().__init__(view)
        self._view = view

    def sizeHint(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> QSize:  # noqa: N802
        """Return how large it is."""
        inner, room = QStyleOptionViewItem(option), QRect(option.rect)
        line = min(room.width(), self._view.viewport().width() - 2 * self._view.spacing())
        within = line - 2 * SPACE.hair
        if within > 0:
            room.setWidth(within)
            inner.rect = room
        return super().sizeHint(inner, index)


class WrappingList(QListWidget):
    """A list whose lines are as high as their words need."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWordWrap(True)
        self.setResizeMode(QListWidget.ResizeMode.Adjust)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setItemDelegate(AsPainted(self))


class _Wrapping(QStyledItemDelegate):
    def __init__(self, tree: QTreeWidget) -> None:
        super().__init__(tree)
        self._tree = tree

    def sizeHint(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> QSize:  # noqa: N802
        depth, above = 1, index.parent()
        while above.isValid():
            depth, above = depth + 1, above.parent()
        width = self._tree.viewport().width() - depth * self._tree.indentation() - _MARGIN
        text = str(index.data(Qt.ItemDataRole.DisplayRole) or "")
        room = QRect(0, 0, max(width, 80), 10_000)
        size = self._tree.fontMetrics().boundingRect(room, int(Qt.TextFlag.TextWordWrap), text).size()
        return QSize(size.width(), max(size.height() + SPACE.hair, super().sizeHint(option, index).height()))


class WrappingTree(QTreeWidget):
    """A tree of one column whose lines are as high as their words need."""

    wants_copy = Signal()
    """The keys for copying were pressed; Qt's own tree copies one line only."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setHeaderHidden(True)
        self.setWordWrap(True)
        self.setTextElideMode(Qt.TextElideMode.ElideNone)
        self.setItemDelegate(_Wrapping(self))
        self.header().sectionResized.connect(lambda *_: self.scheduleDelayedItemsLayout())

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Leave copying to whoever knows all that is to be copied."""
        if event.matches(QKeySequence.StandardKey.Copy):
            self.wants_copy.emit()
            event.accept()
        else:
            super().keyPressEvent(event)
