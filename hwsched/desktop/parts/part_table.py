"""The catalogue as a table: parts of a kind, or all, that match what is searched; chosen by number, not by row."""

from collections.abc import Mapping, Sequence
from typing import Any, Final

from PySide6.QtCore import QAbstractTableModel, QItemSelectionModel, QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from hwsched.attributes import Attribute
from hwsched.catalogue import kind_of
from hwsched.catalogue.traits.entry import ENTRY, ON_HAND
from hwsched.operations.parts.part_form import shown_value, value_of
from hwsched.quantities import LengthStyle
from hwsched.telling.natural import natural
from hwsched.values import Part

Index = QModelIndex | QPersistentModelIndex
_RIGHT: Final = int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
_LEFT: Final = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
_NUMBERS: Final = frozenset({"length", "number", "integer", "money"})
_WIDEST: Final = 260


class PartRows(QAbstractTableModel):
    """Parts as rows, attributes as columns."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.parts: list[Part] = []
        self.columns: tuple[Attribute, ...] = ()
        self._shown: dict[tuple[str, str], str] = {}
        self._extra: Mapping[str, Mapping[str, Any]] = {}
        self._style: LengthStyle = "fraction"
        self._order = (0, Qt.SortOrder.AscendingOrder)

    def fill(
        self,
        parts: Sequence[Part],
        columns: tuple[Attribute, ...],
        extra: Mapping[str, Mapping[str, Any]],
        style: LengthStyle,
    ) -> None:
        """Show these parts."""
        self.beginResetModel()
        self.parts, self.columns, self._extra, self._style = list(parts), columns, extra, style
        self._shown = {}
        column, order = self._order
        self._order = (column if column < len(columns) else 0, order)
        self._arrange()
        self.endResetModel()

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008, N802
        """Return how many parts there are."""
        return 0 if parent.isValid() else len(self.parts)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008, N802
        """Return how many columns there are."""
        return 0 if parent.isValid() else len(self.columns)

    def data(self, index: Index, role: int = int(Qt.ItemDataRole.DisplayRole)) -> Any:
        """Return what a cell shows."""
        attribute = self.columns[index.column()]
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole):
            return self.text(self.parts[index.row()], attribute)
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _RIGHT if attribute.kind in _NUMBERS else _LEFT
        return None

    def headerData(  # noqa: N802
        self, section: int, orientation: Qt.Orientation, role: int = int(Qt.ItemDataRole.DisplayRole)
    ) -> Any:
        """Return the words over a column."""
        if orientation == Qt.Orientation.Horizontal and section < len(self.columns):
            if role == Qt.ItemDataRole.DisplayRole:
                return self.columns[section].label
            if role == Qt.ItemDataRole.ToolTipRole:
                return self.columns[section].note or self.columns[section].label
        return None

    def sort(self, column: int, order: Qt.SortOrder = Qt.SortOrder.AscendingOrder) -> None:
        """Sort by value, not by text; what is unknown stands last either way."""
        self.beginResetModel()
        self._order = (column, order)
        self._arrange()
        self.endResetModel()

    def text(self, part: Part, attribute: Attribute) -> str:
        """Return what a part shows for an attribute."""
        key = part.number, attribute.name
        if key not in self._shown:
            self._shown[key] = shown_value(part, attribute, self._extra.get(part.number, {}), self._style)
        return self._shown[key]

    def row_of(self, number: str) -> int:
        """Return the row of a part; -1 where it is not shown."""
        return next((row for row, part in enumerate(self.parts) if part.number == number), -1)

    def _arrange(self) -> None:
        if not self.columns:
            return
        column, order = self._order
        attribute = self.columns[column]

        def value(part: Part) -> Any:
            return value_of(part, attribute.name, self._extra.get(part.number, {}))

        def key(part: Part) -> Any:
            held = value(part)
            # Words in the order of their numbers, as marks are: C-9 before C-10.
            return natural(held) if isinstance(held, str) else held

        known = [part for part in self.parts if value(part) is not None]
        unknown = [part for part in self.parts if value(part) is None]
        known.sort(key=key, reverse=order == Qt.SortOrder.DescendingOrder)
        self.parts = known + unknown


class PartTable(QTableView):
    """The table; it says which part is chosen, and keeps that through sorting, search and edits."""

    picked = Signal(str)
    """Number of the part that is chosen now; empty where none is."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.rows = PartRows(self)
        self.number = ""
        """Of the chosen part."""
        self.setModel(self.rows)
        self.setAccessibleName("Parts of the catalogue")
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setAlternatingRowColors(True)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.verticalHeader().hide()
        self.setSortingEnabled(True)
        self.sortByColumn(0, Qt.SortOrder.AscendingOrder)
        self.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        self.selectionModel().currentRowChanged.connect(self._on_current)
        self.rows.modelReset.connect(self._choose_again)

    def show_parts(
        self,
        parts: Sequence[Part],
        kind: str,
        own: Sequence[Attribute],
        extra: Mapping[str, Mapping[str, Any]],
        style: LengthStyle,
    ) -> None:
        """Show these parts; of one kind with what its parts are like."""
        declared = kind_of(kind)
        more = (*declared.attributes, *own) if declared is not None else tuple(own)
        other = self.rows.columns != (*ENTRY[:2], *more, *ENTRY[2:], *ON_HAND)
        self.rows.fill(parts, (*ENTRY[:2], *more, *ENTRY[2:], *ON_HAND), extra, style)
        if other:
            self.resizeColumnsToContents()
            for column in range(len(self.rows.columns)):
                self.setColumnWidth(column, min(self.columnWidth(column), _WIDEST))

    def choose(self, number: str) -> None:
        """Choose a part by its number, whether or not it is shown at present."""
        if number != self.number:
            self.number = number
            self.picked.emit(number)
        self._choose_again()

    @property
    def in_view(self) -> bool:
        """Whether the chosen part is among those shown."""
        return self.rows.row_of(self.number) >= 0

    def _on_current(self, current: QModelIndex, _before: QModelIndex) -> None:
        # A row that goes with what is shown takes no choice along: only a person chooses another part.
        if current.isValid():
            number = self.rows.parts[current.row()].number
            if number != self.number:
                self.number = number
                self.picked.emit(number)

    def _choose_again(self) -> None:
        row = self.rows.row_of(self.number)
        if row < 0:
            self.clearSelection()
            return
        flags = QItemSelectionModel.SelectionFlag.ClearAndSelect | QItemSelectionModel.SelectionFlag.Rows
        self.selectionModel().setCurrentIndex(self.rows.index(row, 0), flags)
        self.scrollTo(self.rows.index(row, 0))
