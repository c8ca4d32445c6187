"""Lines that wrap: Qt's own tree cuts them off where the column ends, its lists measure them wider than they paint."""

from typing import Final

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QSize, Qt, Signal
from PySide6.QtGui import QFontMetrics, QKeyEvent, QKeySequence
from PySide6.QtWidgets import (
    QListWidget,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTreeWidget,
    QWidget,
)

from hwsched.desktop.looks.tokens import SPACE, TARGET, scaled, wide

_MARGIN: Final = 10 + 2 * SPACE.hair
"""Of words within their column, with the padding that the style sheet gives."""
_LEAST: Final = 8
"""Figures that a column has at least."""


def _with_air(size: QSize) -> QSize:
    """Return the size of a line: several rows of words have the air over and under them that one row has."""
    least = scaled(TARGET)
    return QSize(size.width(), size.height() + 2 * SPACE.hair if size.height() > least else least)


class _AsPainted(QStyledItemDelegate):
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
        return _with_air(super().sizeHint(inner, index))


class WrappingList(QListWidget):
    """A list whose lines are as high as their words need."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWordWrap(True)
        self.setResizeMode(QListWidget.ResizeMode.Adjust)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setItemDelegate(_AsPainted(self))


class Wrapped(QStyledItemDelegate):
    """Measures cells of a tree at the width of their columns, or of the whole tree where one takes all of it.

    Parameters
    ----------
    tree : QTreeWidget
        It is laid out anew when its columns get another width.
    """

    def __init__(self, tree: QTreeWidget) -> None:
        super().__init__(tree)
        self._tree = tree
        tree.setWordWrap(True)
        tree.setTextElideMode(Qt.TextElideMode.ElideNone)
        tree.header().sectionResized.connect(lambda *_: tree.scheduleDelayedItemsLayout())

    def sizeHint(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> QSize:  # noqa: N802
        """Return how large it is."""
        tree, depth, above = self._tree, 1, index.parent()
        while above.isValid():
            depth, above = depth + 1, above.parent()
        spanned = tree.columnCount() == 1 or tree.isFirstColumnSpanned(index.row(), index.parent())
        width = tree.viewport().width() if spanned else tree.columnWidth(index.column())
        if index.column() == 0:
            width -= depth * tree.indentation()
        elif spanned:
            # It is covered by the first.
            return QSize()
        text = str(index.data(Qt.ItemDataRole.DisplayRole) or "")
        font = index.data(Qt.ItemDataRole.FontRole)
        metrics = QFontMetrics(font) if font is not None else tree.fontMetrics()
        room = QRect(0, 0, max(width - _MARGIN, wide(_LEAST)), 10_000)
        size = metrics.boundingRect(room, int(Qt.TextFlag.TextWordWrap), text).size()
        return _with_air(size)


class WrappingTree(QTreeWidget):
    """A tree of one column whose lines are as high as their words need."""

    wants_copy = Signal()
    """The keys for copying were pressed; Qt's own tree copies one line only."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setHeaderHidden(True)
        self.setItemDelegate(Wrapped(self))

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Leave copying to whoever knows all that is to be copied."""
        if event.matches(QKeySequence.StandardKey.Copy):
            self.wants_copy.emit()
            event.accept()
        else:
            super().keyPressEvent(event)
