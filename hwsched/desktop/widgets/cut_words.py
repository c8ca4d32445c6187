"""Words that a line of a list has no room for are told whole where they are pointed at."""

from PySide6.QtCore import QEvent, QModelIndex, QObject, Qt
from PySide6.QtGui import QFontMetrics, QHelpEvent
from PySide6.QtWidgets import QAbstractItemView, QStyle, QToolTip

from hwsched.desktop.looks.tokens import SPACE


def cut_words(view: QAbstractItemView, index: QModelIndex) -> str:
    """Return what a line shows where it is longer than its place; nothing where all of it is seen."""
    said = str(index.data(Qt.ItemDataRole.DisplayRole) or "")
    around = 2 * (SPACE.hair + view.style().pixelMetric(QStyle.PixelMetric.PM_FocusFrameHMargin) + 1)
    font = index.data(Qt.ItemDataRole.FontRole)
    metrics = QFontMetrics(font) if font is not None else view.fontMetrics()
    wide = max((metrics.horizontalAdvance(line) for line in said.splitlines()), default=0)
    place = view.visualRect(index) & view.viewport().rect()
    return said if wide + around > place.width() else ""


class CutWords(QObject):
    """Tells the whole of a cut line as its tip, above what is told of it else.

    Here belongs what is told of words that are there but not seen; other tips belong to whoever fills the list.

    Parameters
    ----------
    view : QAbstractItemView
        The list.
    """

    def __init__(self, view: QAbstractItemView) -> None:
        super().__init__(view)
        self._view = view
        view.viewport().installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802
        """Tell it."""
        if not isinstance(event, QHelpEvent) or event.type() != QEvent.Type.ToolTip:
            return super().eventFilter(watched, event)
        index = self._view.indexAt(event.pos())
        said = cut_words(self._view, index) if index.isValid() else ""
        tip = str(index.data(Qt.ItemDataRole.ToolTipRole) or "") if said else ""
        if not said or said in tip:
            return super().eventFilter(watched, event)
        QToolTip.showText(event.globalPos(), "\n".join(filter(None, (said, tip))), self._view)
        return True
