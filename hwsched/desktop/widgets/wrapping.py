"""Lines that wrap: Qt's own tree cuts them off where the column ends, its lists measure them wider than they paint."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import (
    QApplication,
    QListWidget,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTreeWidget,
    QWidget,
)

from hwsched.desktop.looks.tokens import SPACE

_MARGIN = 10 + 2 * SPACE.hair
"""Of words within their column, with the padding that the style sheet gives."""


class AsPainted(QStyledItemDelegate):
    """Measures a cell that wraps at the width in which it is painted.

    Qt measures it in the whole width of its column, and paints it within a margin and the padding that the style
    sheet gives: words that are only just too long would be cut, with dots.
    """

    def sizeHint(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> QSize:  # noqa: N802
        """Return how large it is."""
        inner, room = QStyleOptionViewItem(option), QRect(option.rect)
        margin = QApplication.style().pixelMetric(QStyle.PixelMetric.PM_FocusFrameHMargin) + 1
        # Two more: of widths that are no whole numbers of pixels it takes no notice.
        around = 2 * (SPACE.hair + margin) + 2
        if room.width() > around:
            inner.rect = room.adjusted(0, 0, -around, 0)
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
