"""A chosen line keeps the colours of its words and shapes: a state is told there as anywhere else."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtGui import QBrush, QColor, QIcon, QPalette
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

Index = QModelIndex | QPersistentModelIndex


class KeptColours(QStyledItemDelegate):
    """Qt's own paints a chosen line in one colour, and tints its icons.

    Here belongs how a chosen cell is painted; how it is measured and edited belongs to who stands on it.
    """

    def initStyleOption(self, option: QStyleOptionViewItem, index: Index) -> None:  # noqa: N802
        """Paint a chosen cell as it is painted otherwise."""
        super().initStyleOption(option, index)
        if not option.state & QStyle.StateFlag.State_Selected:
            return
        ink = index.data(Qt.ItemDataRole.ForegroundRole)
        if isinstance(ink, (QBrush, QColor)):
            palette = option.palette
            palette.setBrush(QPalette.ColorRole.HighlightedText, ink)
            option.palette = palette
        if not option.icon.isNull():
            shape = option.icon.pixmap(option.decorationSize)
            icon = QIcon(shape)
            icon.addPixmap(shape, QIcon.Mode.Selected)
            option.icon = icon
