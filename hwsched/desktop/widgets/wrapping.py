"""Lines of a tree that wrap: Qt's own tree cuts them off where the column ends."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import QStyledItemDelegate, QStyleOptionViewItem, QTreeWidget, QWidget

_MARGIN = 10


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
        return QSize(size.width(), size.height() + 4)


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
