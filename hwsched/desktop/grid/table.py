"""The table of a grid: rows are selected, columns are marked, and some columns stay in view at the left.

Keys: arrows move, with Shift they mark more rows and columns; Tab leaves; F2 or Enter edits; what else a key asks for
is told by signals to whoever has the table.
"""

from typing import Any, Final

from PySide6.QtCore import QItemSelectionModel, QModelIndex, QPersistentModelIndex, QPoint, QSize, Qt, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QKeyEvent,
    QKeySequence,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
    QShowEvent,
)
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from hwsched.desktop.grid.column import Column
from hwsched.desktop.grid.model import COLUMN, GROUP, GridModel
from hwsched.desktop.grid.widths import shared_widths, squeezed
from hwsched.desktop.looks.text_size import in_pixels
from hwsched.desktop.looks.tokens import ROW, SPACE, THIN, colour, scaled, wide
from hwsched.desktop.widgets.empty import paint_empty
from hwsched.language import phrase

_SHIFT: Final = Qt.KeyboardModifier.ShiftModifier
_SIDEWAYS: Final = (Qt.Key.Key_Left, Qt.Key.Key_Right)
_LEAST: Final = 12
"""Figures of the last column where it has to do with what the others leave."""
_READ: Final = 24
"""Figures in which a sentence is read."""
_COPIES: Final = QKeySequence.StandardKey.Copy
_TRIGGERS: Final = QAbstractItemView.EditTrigger
_MODES: Final = QAbstractItemView.ScrollMode
_BARS: Final = Qt.ScrollBarPolicy


class GridTable(QTableView):
    """A view of a `GridModel` whose first columns can stay in view.

    Parameters
    ----------
    model : GridModel
        What is shown.
    """

    wants = Signal(str)
    """A key asks for something: copy, paste, fill, clear, many, filter, menu."""
    clipped = Signal(object)
    """Somebody wants to edit a cell that cannot be; its index."""
    entered = Signal(object)
    """Return was pressed, or a double click made, in a cell that cannot be edited; its index."""

    def __init__(self, model: GridModel[Any], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._grid = model
        self._anchor = 0
        self.empty = ""
        """Said in the place of rows where there are none."""
        _set_up(self, model)
        self.horizontalHeader().setStretchLastSection(True)
        self.frozen = _Frozen(self, model)
        self.frozen.setSelectionModel(self.selectionModel())
        for view in (self, self.frozen):
            # Rows are what is selected: a header that shows whether a whole column is would ask for each of its cells.
            view.horizontalHeader().setSelectionModel(QItemSelectionModel(model, view))
        for view in (self, self.frozen):
            view.doubleClicked.connect(self._on_double_click)
        self.horizontalHeader().sectionResized.connect(self._on_resized)
        self.verticalScrollBar().valueChanged.connect(self.frozen.verticalScrollBar().setValue)
        self.frozen.verticalScrollBar().valueChanged.connect(self.verticalScrollBar().setValue)
        model.modelReset.connect(self.lay_out)
        self.lay_out()

    @property
    def editing(self) -> bool:
        """Whether somebody is typing into a cell."""
        states = (self.state(), self.frozen.state())
        return QAbstractItemView.State.EditingState in states

    def selected_ids(self) -> list[str]:
        """Return by what the selected rows are known that are in view, in its order."""
        # By its ranges: to make an index of each of 50,000 rows would hold the screen.
        chosen = self.selectionModel().selection()
        ranges = [chosen.at(place) for place in range(chosen.size())]
        lines = sorted({line for each in ranges for line in range(each.top(), each.bottom() + 1)})
        return [found for line in lines if (found := self._grid.id_at(line)) is not None]

    def marked(self) -> tuple[int, int]:
        """Return the first and the last marked column."""
        column = max(0, self.currentIndex().column())
        anchor = min(self._anchor, max(0, self._grid.columnCount() - 1))
        return min(anchor, column), max(anchor, column)

    def mark_only(self) -> None:
        """Mark no more than the current column."""
        self._anchor = max(0, self.currentIndex().column())
        self.viewport().update()

    def lay_out(self) -> None:
        """Give columns their widths, and let the frozen ones stand over the others."""
        arrangement, columns = self._grid.contents.arrangement, self._grid.contents.columns
        for view in (self, self.frozen):
            header = view.horizontalHeader()
            header.blockSignals(True)
            for place in range(len(columns)):
                view.setColumnHidden(place, view is self.frozen and place >= arrangement.frozen)
            header.blockSignals(False)
            _show_sort(view, self._grid)
        self._share()
        # Where no row is there is nothing to be reached at its side.
        self.setHorizontalScrollBarPolicy(_BARS.ScrollBarAsNeeded if self._grid.total() else _BARS.ScrollBarAlwaysOff)
        self._place_frozen()

    def show_sort(self) -> None:
        """Show at both headers by which column rows are in order."""
        for view in (self, self.frozen):
            _show_sort(view, self._grid)

    def edit(self, index: QModelIndex | QPersistentModelIndex, *how: Any) -> Any:
        """Edit a cell where it is seen."""
        if not how:
            view = self.frozen if index.column() < self._grid.contents.arrangement.frozen else self
            QTableView.edit(view, index)
            return None
        trigger = how[0]
        column = index.data(COLUMN) if index.isValid() else None
        if trigger == _TRIGGERS.AnyKeyPressed and (not isinstance(column, Column) or not column.typed):
            return False
        if index.column() < self._grid.contents.arrangement.frozen:
            return QTableView.edit(self.frozen, index, *how)
        return super().edit(index, *how)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Do what a key asks for, and keep in mind from where columns are marked."""
        if self.editing:
            # What the editor of a cell leaves is meant for it, not for the rows.
            event.accept()
            return
        wanted = _wanted(event)
        index = self.currentIndex()
        if wanted:
            self.wants.emit(wanted)
        elif index.data(GROUP) is not None and event.key() in (*_SIDEWAYS, Qt.Key.Key_Space, *_ENTERS):
            self.fold(index.row())
        elif event.key() in (Qt.Key.Key_F2, *_ENTERS):
            if index.isValid() and index.flags() & Qt.ItemFlag.ItemIsEditable:
                self.edit(index)
            elif index.isValid():
                (self.clipped if event.key() == Qt.Key.Key_F2 else self.entered).emit(index)
        else:
            super().keyPressEvent(event)
            moved = self.currentIndex() != index
            if (moved and not event.modifiers() & _SHIFT) or event.key() == Qt.Key.Key_Escape:
                self._anchor = max(0, self.currentIndex().column())
            elif event.key() in _SIDEWAYS:
                self.viewport().update()
                self.frozen.viewport().update()

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """Begin to mark at a cell; a click on the line of a group hides or shows its rows."""
        self.press(self, event.position().toPoint(), shift=bool(event.modifiers() & _SHIFT))
        super().mousePressEvent(event)

    def press(self, view: QTableView, at: QPoint, *, shift: bool) -> None:
        """Follow a press of the mouse in one of the views."""
        index = view.indexAt(at)
        if index.isValid() and index.data(GROUP) is not None:
            self.fold(index.row())
        elif index.isValid() and not shift:
            self._anchor = index.column()

    def fold(self, line: int) -> None:
        """Hide the rows of a group or show them, with the cursor staying on its line."""
        column = max(0, self.currentIndex().column())
        self._grid.fold(line)
        self.selectionModel().setCurrentIndex(
            self._grid.index(line, column), QItemSelectionModel.SelectionFlag.NoUpdate
        )

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:  # noqa: N802
        """Ask for the menu of the current cell."""
        index = self.indexAt(event.pos())
        if event.reason() == QContextMenuEvent.Reason.Mouse and index.isValid():
            self.selectionModel().setCurrentIndex(index, QItemSelectionModel.SelectionFlag.NoUpdate)
        self.wants.emit("menu")

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802
        """Paint the rows; where there are none, why there are none."""
        super().paintEvent(event)
        self.say_why_empty(self)

    def say_why_empty(self, view: QTableView) -> None:
        """Paint in one of the views why no row is there: beside the frozen columns, over both where that is narrow."""
        words = phrase("No row is as asked for.") if self._grid.total() else self.empty
        if words and not self._grid.rowCount():
            painter = QPainter(view.viewport())
            room, beside = self.viewport().rect(), self._frozen_width()
            room.setLeft(beside if room.width() - beside >= wide(_READ) else 0)
            paint_empty(painter, room, words)
            painter.end()

    def showEvent(self, event: QShowEvent) -> None:  # noqa: N802
        """Share the width anew: it was shared before the table was seen, where no row is as if there were some."""
        super().showEvent(event)
        self._share()

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802
        """Let the frozen columns be as high as the table."""
        super().resizeEvent(event)
        self._share()
        self._place_frozen()

    def scrollTo(  # noqa: N802
        self,
        index: QModelIndex | QPersistentModelIndex,
        hint: QAbstractItemView.ScrollHint = QAbstractItemView.ScrollHint.EnsureVisible,
    ) -> None:
        """Bring a cell into view, beside the frozen columns and not under them."""
        frozen = self._grid.contents.arrangement.frozen
        if index.column() < frozen:
            # Their columns are always seen: only the row has to come.
            at = self.horizontalScrollBar().value()
            super().scrollTo(index, hint)
            self.horizontalScrollBar().setValue(at)
            return
        super().scrollTo(index, hint)
        hidden = self._frozen_width() - self.visualRect(index).left()
        if frozen and hidden > 0:
            bar = self.horizontalScrollBar()
            bar.setValue(bar.value() - hidden)

    def _share(self) -> None:
        """Share the width that there is among the columns."""
        columns, kept = self._grid.contents.columns, self._grid.contents.arrangement.widths
        header, room = self.horizontalHeader(), self.viewport().width()
        least = max(wide(_LEAST), header.sectionSizeHint(len(columns) - 1)) if columns else 0
        free, growing = [column.name not in kept for column in columns], [not column.right for column in columns]
        sentences = [column.sentence for column in columns]
        declared = [kept.get(column.name, scaled(column.width * SPACE.small)) for column in columns]
        # A title is read whole, in whatever language it is, unless a person made its column narrower.
        titled = [
            max(width, header.sectionSizeHint(place)) if free[place] else width for place, width in enumerate(declared)
        ]
        widths = shared_widths(titled, free, growing, room, least, sentences)
        if sum(widths) > room:
            # Nothing is scrolled to for a title alone: its tip has it.
            without = shared_widths(declared, free, growing, room, least, sentences)
            widths = without if sum(without) <= room else widths
        if self.isVisible() and not self._grid.total() and sum(widths) > room:
            # Where no row is nothing is scrolled to: titles are seen whole, or not at all.
            titles = [header.sectionSizeHint(place) for place in range(len(columns))]
            widths = squeezed(widths, titles, room)
        # A width that follows from the window is nobody's wish, and not kept as one.
        blocked = header.blockSignals(True)
        for place, width in enumerate(widths):
            self.setColumnWidth(place, width)
            self.frozen.setColumnWidth(place, width)
        header.blockSignals(blocked)
        # The view did not hear of it.
        self.updateGeometries()
        self.viewport().update()

    def _on_double_click(self, index: QModelIndex) -> None:
        if index.data(GROUP) is None and not index.flags() & Qt.ItemFlag.ItemIsEditable:
            self.entered.emit(index)

    def _on_resized(self, section: int, _before: int, width: int) -> None:
        self.frozen.setColumnWidth(section, width)
        self._place_frozen()

    def _frozen_width(self) -> int:
        return sum(self.columnWidth(place) for place in range(self._grid.contents.arrangement.frozen))

    def _place_frozen(self) -> None:
        width, header = self._frozen_width(), self.horizontalHeader().height()
        place, edge = self.viewport().geometry(), self.frozen.frameWidth()
        self.frozen.setGeometry(
            place.left() - edge, place.top() - header - edge, width + 2 * edge, place.height() + header + 2 * edge
        )
        self.frozen.horizontalHeader().setFixedHeight(header)
        self.frozen.setVisible(width > 0)


class _Frozen(QTableView):
    """The columns that stay in view, over those of the table; keys are the table's."""

    def __init__(self, table: GridTable, model: GridModel[Any]) -> None:
        super().__init__(table)
        self._table = table
        _set_up(self, model)
        self.setFocusProxy(table)
        self.setFrameShape(QTableView.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName(phrase("Columns that stay in view"))
        self.horizontalHeader().sectionResized.connect(self._on_resized)

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """Mark as in the table."""
        self._table.press(self, event.position().toPoint(), shift=bool(event.modifiers() & _SHIFT))
        super().mousePressEvent(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:  # noqa: N802
        """Ask for the menu of a cell, as in the table."""
        self._table.contextMenuEvent(event)

    def minimumSizeHint(self) -> QSize:  # noqa: N802
        """Let it be as narrow as its columns."""
        return QSize(0, 0)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802
        """Paint the columns, and an edge under which the others go."""
        super().paintEvent(event)
        painter = QPainter(self.viewport())
        painter.setPen(QPen(colour("edge"), THIN))
        right = self.viewport().width() - THIN
        painter.drawLine(right, 0, right, self.viewport().height())
        painter.end()
        self._table.say_why_empty(self)

    def _on_resized(self, section: int, _before: int, width: int) -> None:
        # Of a column that is hidden here the width is none.
        if not self.isColumnHidden(section) and width and self._table.columnWidth(section) != width:
            self._table.setColumnWidth(section, width)


_ENTERS: Final = (Qt.Key.Key_Return, Qt.Key.Key_Enter)


def _wanted(event: QKeyEvent) -> str:
    """Return what a key asks for beyond moving and editing."""
    control = bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
    if event.matches(_COPIES):
        return "copy"
    if event.matches(QKeySequence.StandardKey.Paste):
        return "paste"
    if event.key() == Qt.Key.Key_Delete:
        return "clear"
    if control and event.key() == Qt.Key.Key_D:
        return "fill"
    if control and event.key() == Qt.Key.Key_E:
        return "many"
    if event.key() == Qt.Key.Key_Down and event.modifiers() & Qt.KeyboardModifier.AltModifier:
        return "filter"
    if event.key() == Qt.Key.Key_F10 and event.modifiers() & _SHIFT:
        # The key for menus is the platform's; this one is on every keyboard.
        return "menu"
    return ""


def _set_up(view: QTableView, model: GridModel[Any]) -> None:
    view.setModel(model)
    view.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
    view.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
    view.setEditTriggers(_TRIGGERS.DoubleClicked | _TRIGGERS.EditKeyPressed | _TRIGGERS.AnyKeyPressed)
    view.setVerticalScrollMode(_MODES.ScrollPerPixel)
    view.setHorizontalScrollMode(_MODES.ScrollPerPixel)
    view.setAlternatingRowColors(True)
    view.setShowGrid(False)
    view.setWordWrap(False)
    # Tab goes on to what stands beside; cells are reached by arrow keys.
    view.setTabKeyNavigation(False)
    # At once it would put the rows into the order of its first column.
    view.horizontalHeader().setSortIndicator(-1, Qt.SortOrder.AscendingOrder)
    view.setSortingEnabled(True)
    view.verticalHeader().hide()
    in_pixels(view.verticalHeader(), defaultSectionSize=ROW.grid)
    header = view.horizontalHeader()
    header.setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
    header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
    header.setSortIndicatorClearable(True)
    header.setSectionsMovable(True)
    header.setHighlightSections(False)
    # A title without room is cut behind its beginning, on whichever side it stands.
    header.setTextElideMode(Qt.TextElideMode.ElideRight)


def _show_sort(view: QTableView, model: GridModel[Any]) -> None:
    sort, header = model.contents.arrangement.sort, view.horizontalHeader()
    header.blockSignals(True)
    down = sort is not None and sort[1]
    place = model.place_of(sort[0]) if sort is not None else -1
    header.setSortIndicator(place, Qt.SortOrder.DescendingOrder if down else Qt.SortOrder.AscendingOrder)
    header.blockSignals(False)
    header.viewport().update()
