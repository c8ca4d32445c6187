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

from hwsched.desktop.looks.tokens import SPACE, TARGET, scaled

_MARGIN = 10 + 2 * SPACE.hair
"""Of words within their column, with the padding that the style sheet gives."""


class Airy(QStyledItemDelegate):
    """Gives a line of several rows of words the air over and under them that a line of one row has."""

    def sizeHint(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> QSize:  # noqa: N802
        """Return how large it is."""
        size = super().sizeHint(option, index)
        return size + QSize(0, 2 * SPACE.hair if size.height() > scaled(TARGET) else 0)


class _AsPainted(Airy):
    """Measures a line that wraps at the width in which it is painted.

    Qt measures it in the width that the list would have with the ring of the focus about it, and paints it between
    the gaps of the list, within the padding that the style sheet gives: words that are only just too long would be cut,
    with dots, and others leave a line empty.
    """

    def __init__(self, view: QListWidget) -> None:
        super().__init__(view)
        self._view = view

    def sizeHint(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> QSize:  # noqa: N802
        """Return how large it is."""
        inner = QStyleOptionViewItem(option)
        room = self._view.viewport().width() - 2 * self._view.spacing() - 2 * SPACE.hair
        inner.rect = QRect(0, 0, max(room, 1), option.rect.height())
        return super().sizeHint(inner, index)


class WrappingList(QListWidget):
    """A list whose lines are as high as their words need."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWordWrap(True)
        self.setResizeMode(QListWidget.ResizeMode.Adjust)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setItemDelegate(_AsPainted(self))


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
