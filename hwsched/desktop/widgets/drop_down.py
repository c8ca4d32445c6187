"""The drop-down of the window: as wide as its words where there is room; where there is not, they can still be read.

Every drop-down is one of these. What it offers and what is done with what was taken belongs to whoever has it.
"""

import re
from typing import Final

from PySide6.QtCore import QElapsedTimer, QEvent, QSize, Qt
from PySide6.QtGui import QHelpEvent, QPaintEvent
from PySide6.QtWidgets import QComboBox, QListView, QStyle, QStyleOptionComboBox, QStylePainter, QToolTip, QWidget

from hwsched.desktop.looks.tokens import FIELD, SPACE, wide

_LEAST: Final = 10
"""Letters that are always seen."""
_OF_SCREEN: Final = 0.9
"""Share of the screen that the list takes at most."""


_SEEN: Final = 16
"""Entries of a list that are seen at once; of more the others are reached by its bar, its keys and its search."""
_TYPED_FOR: Final = 1500
"""How long a pause between two letters may be that are typed to find one entry [ms]."""


class _Entries(QListView):
    """The list of a drop-down: what is typed is looked for at the beginning of each word of an entry."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._typed = ""
        self._since = QElapsedTimer()

    def keyboardSearch(self, search: str) -> None:  # noqa: N802
        """Go to the first entry with a word that begins so; with the same letter again, to the next one."""
        late = not self._since.isValid() or self._since.elapsed() > _TYPED_FOR
        self._since.start()
        self._typed = search.casefold() if late else f"{self._typed}{search}".casefold()
        rows = self._rows_with(self._typed)
        if not rows and len(set(self._typed)) == 1:
            rows = self._rows_with(self._typed[0])
            here = self.currentIndex().row()
            rows = [row for row in rows if row > here] or rows
        if rows:
            self.setCurrentIndex(self.model().index(rows[0], self.modelColumn()))

    def _rows_with(self, sought: str) -> list[int]:
        """Return the rows of the entries that begin so; of none, of those in which a word begins so."""
        model, column = self.model(), self.modelColumn()
        texts = [str(model.index(row, column).data() or "").casefold() for row in range(model.rowCount())]
        begin = [row for row, text in enumerate(texts) if text.startswith(sought)]
        return begin or [row for row, text in enumerate(texts) if re.search(rf"\b{re.escape(sought)}", text)]


class DropDown(QComboBox):
    """A drop-down that asks for as much room as its longest entry needs and can do with less.

    Where it has less, its words end in dots, the tip has all of them, and its list is as wide as the longest.
    Here belongs how a choice is shown in the room there is; which entries there are belongs to whoever fills it.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToContents)
        self.setMinimumContentsLength(_LEAST)
        self.setMaxVisibleItems(_SEEN)
        self.setView(_Entries(self))

    def fill_cell(self) -> None:
        """Take the size of the cell in which it stands: by its entries it would take its own again after a moment."""
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)

    def sizeHint(self) -> QSize:  # noqa: N802
        """Return the size at which its longest entry is read whole, within the width of a field."""
        hint = super().sizeHint()
        return QSize(min(hint.width(), max(wide(FIELD), self.minimumSizeHint().width())), hint.height())

    def minimumSizeHint(self) -> QSize:  # noqa: N802
        """Return the size at which a few letters are read; no more than all of them need."""
        return super().minimumSizeHint().boundedTo(super().sizeHint())

    def cut(self) -> bool:
        """Tell whether what it shows is longer than its room."""
        return self.fontMetrics().horizontalAdvance(self.currentText()) > self._room()

    def showPopup(self) -> None:  # noqa: N802
        """Show the list, as wide as its longest entry needs and the screen allows."""
        view = self.view()
        around = 2 * (SPACE.hair + SPACE.small) + view.verticalScrollBar().sizeHint().width()
        most = round(self.screen().availableGeometry().width() * _OF_SCREEN)
        view.setMinimumWidth(min(view.sizeHintForColumn(self.modelColumn()) + around, most))
        super().showPopup()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802
        """Paint; words that have no room end in dots."""
        if self.isEditable():
            super().paintEvent(event)
            return
        option = self._option()
        option.currentText = self.fontMetrics().elidedText(
            self.currentText(), Qt.TextElideMode.ElideRight, self._room()
        )
        painter = QStylePainter(self)
        painter.drawComplexControl(QStyle.ComplexControl.CC_ComboBox, option)
        painter.drawControl(QStyle.ControlElement.CE_ComboBoxLabel, option)
        painter.end()

    def event(self, event: QEvent) -> bool:
        """Tell the whole of what is cut, above what is told of it else."""
        if isinstance(event, QHelpEvent) and event.type() == QEvent.Type.ToolTip and self.cut():
            told = "\n".join(filter(None, (self.currentText(), self.toolTip())))
            QToolTip.showText(event.globalPos(), told, self)
            return True
        return super().event(event)

    def _option(self) -> QStyleOptionComboBox:
        option = QStyleOptionComboBox()
        self.initStyleOption(option)
        return option

    def _room(self) -> int:
        """Return how wide words may be [px]."""
        place = self.style().subControlRect(
            QStyle.ComplexControl.CC_ComboBox, self._option(), QStyle.SubControl.SC_ComboBoxEditField, self
        )
        icon = self.iconSize().width() + SPACE.hair if not self.itemIcon(self.currentIndex()).isNull() else 0
        return max(place.width() - icon, 0)
