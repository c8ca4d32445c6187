"""What is cut is told whole: the tip of a cell, a title, a tab or a field begins with all of its words where they are.

Whoever gives a tip says what is not read on the screen; that words have no room is known where they are shown alone.
"""

from typing import Any, Final

from PySide6.QtCore import QEvent, QModelIndex, QObject, QPoint, QPointF, QRect, Qt
from PySide6.QtGui import QHelpEvent, QTextLayout, QTextOption
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QLineEdit,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionFrame,
    QStyleOptionViewItem,
    QTabBar,
    QToolTip,
    QWidget,
)

from hwsched.desktop.looks.tokens import THIN

_TIP: Final = Qt.ItemDataRole.ToolTipRole
_IN_FIELD: Final = 2
"""Qt keeps so much on either side of the words of a field [px]."""


class ToldWhole(QObject):
    """Looks on as tips are asked for; one for the whole program, put on what shows words that may be cut."""

    def look_at(self, what: Any) -> None:
        """Look on from here on, where it is a list, its titles, a field or a row of tabs."""
        if isinstance(what, QAbstractItemView):
            what.viewport().installEventFilter(self)
        elif isinstance(what, (QLineEdit, QTabBar)):
            what.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802
        """Tell words that are cut above what is told of them else."""
        if event.type() != QEvent.Type.ToolTip or not isinstance(event, QHelpEvent) or not isinstance(watched, QWidget):
            return False
        words, told = _of(watched, event.pos())
        if not words or words in told:
            return False
        QToolTip.showText(event.globalPos(), "\n".join(filter(None, (words, told))), watched)
        return True


def _of(widget: QWidget, at: QPoint) -> tuple[str, str]:
    """Return the words at a place that are cut, or nothing, and the tip that is given there."""
    if isinstance(widget, QLineEdit):
        return _of_field(widget)
    if isinstance(widget, QTabBar):
        tab = widget.tabAt(at)
        rect = widget.tabRect(tab)
        cut = rect.width() < widget.tabSizeHint(tab).width() or not widget.rect().contains(rect)
        return (widget.tabText(tab) if tab >= 0 and cut else "", widget.tabToolTip(tab))
    view = widget.parentWidget()
    if isinstance(view, QHeaderView):
        return _of_title(view, at)
    return _of_cell(view, view.indexAt(at)) if isinstance(view, QAbstractItemView) else ("", "")


def _of_field(field: QLineEdit) -> tuple[str, str]:
    words = (field.text() and field.displayText()) or field.placeholderText()
    option = QStyleOptionFrame()
    field.initStyleOption(option)
    room = field.style().subElementRect(QStyle.SubElement.SE_LineEditContents, option, field)
    margins = field.textMargins()
    inner = room.width() - margins.left() - margins.right() - 2 * _IN_FIELD
    return (words if field.fontMetrics().horizontalAdvance(words) > inner else "", field.toolTip())


def _of_title(header: QHeaderView, at: QPoint) -> tuple[str, str]:
    across = header.orientation() == Qt.Orientation.Horizontal
    section = header.logicalIndexAt(at)
    if not across or section < 0 or header.sectionSize(section) >= header.sectionSizeHint(section):
        return "", ""
    words, told = (header.model().headerData(section, header.orientation(), role) for role in (0, _TIP))
    return str(words or ""), str(told or "")


def _of_cell(view: QAbstractItemView, index: QModelIndex) -> tuple[str, str]:
    words, told = str(index.data() or ""), str(index.data(_TIP) or "")
    delegate = view.itemDelegateForIndex(index)
    if not words or not isinstance(delegate, QStyledItemDelegate):
        return "", ""
    option = QStyleOptionViewItem()
    view.initViewItemOption(option)
    delegate.initStyleOption(option, index)
    option.rect = view.visualRect(index)
    room = view.style().subElementRect(QStyle.SubElement.SE_ItemViewItemText, option, view)
    margin = view.style().pixelMetric(QStyle.PixelMetric.PM_FocusFrameHMargin, option, view) + THIN
    return words if _cut(option, room.adjusted(margin, 0, -margin, 0)) else "", told


def _cut(option: QStyleOptionViewItem, room: QRect) -> bool:
    """Tell whether the words of a cell are larger than their room: too wide, or too many lines."""
    wraps = bool(option.features & QStyleOptionViewItem.ViewItemFeature.WrapText)
    mode = QTextOption.WrapMode.WordWrap if wraps else QTextOption.WrapMode.ManualWrap
    layout = QTextLayout(option.text.replace("\n", "\u2028"), option.font)
    how = QTextOption()
    how.setWrapMode(mode)
    layout.setTextOption(how)
    layout.beginLayout()
    down, across = 0.0, 0.0
    while (line := layout.createLine()).isValid():
        line.setLineWidth(max(room.width(), 1))
        line.setPosition(QPointF(0.0, down))
        down, across = down + line.height(), max(across, line.naturalTextWidth())
    layout.endLayout()
    return across > room.width() + THIN or down > room.height() + THIN
