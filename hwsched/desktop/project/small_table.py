"""A small table in a form: a row a thing, edited in its cells, rows added and taken away below it."""

from typing import Any, Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QHeaderView,
    QPushButton,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from hwsched.attributes import shown_unit
from hwsched.desktop.looks.text_size import in_pixels
from hwsched.desktop.looks.tokens import ROW, SPACE
from hwsched.desktop.project.calculator_fields import Table, at, object_word, put
from hwsched.desktop.widgets.typed import with_unit
from hwsched.desktop.widgets.wrapped_titles import WrappedTitles
from hwsched.language import phrase
from hwsched.quantities import LengthStyle

_EXACT: Final = int(Qt.ItemDataRole.UserRole)
"""Role under which a cell keeps the exact value, beside the text that was shown for it."""
_ROWS: Final = 5
"""Rows that are seen at once."""


class SmallTable(QWidget):
    """A list of things alike.

    Parameters
    ----------
    table : Table
        Its columns.
    value : object
        What it begins with, as JSON has it; None for nothing.
    style : LengthStyle
        How lengths are shown.
    bare_unit : str or None
        What a length without a unit means.
    """

    changed = Signal()

    def __init__(self, table: Table, value: Any, style: LengthStyle, bare_unit: str | None) -> None:
        super().__init__()
        self.table, self._style, self._bare_unit = table, style, bare_unit
        self.cells = QTableWidget(0, len(table.columns))
        header = WrappedTitles(self.cells)
        said = table.field.text.rstrip(".")
        self.cells.setAccessibleName(phrase(said) if said else table.field.name)
        self.cells.setHorizontalHeaderLabels([self._heading(n) for n in range(len(table.columns))])
        for n, column in enumerate(table.columns):
            item = self.cells.horizontalHeaderItem(n)
            if item is not None:
                # The title may be cut: it stands before what else is told.
                about = column.field.about
                item.setToolTip(f"{item.text()}\n{phrase(about)}" if about else item.text())
        self.cells.verticalHeader().hide()
        in_pixels(self.cells.verticalHeader(), defaultSectionSize=ROW.grid)
        self.cells.setTabKeyNavigation(False)
        self.cells.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        header.fill_room()
        header.geometriesChanged.connect(self._size)
        self.more = QPushButton(phrase("Add a row"))
        self.less = QPushButton(phrase("Take the row away"))
        for button in (self.more, self.less):
            button.setAutoDefault(False)
        self.more.clicked.connect(lambda _checked=False: self._add({}, tell=True))
        self.less.clicked.connect(self._take_away)
        buttons = QHBoxLayout()
        buttons.addWidget(self.more)
        buttons.addWidget(self.less)
        buttons.addStretch(1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.cells)
        layout.addLayout(buttons)
        self.fill(value)
        self.touched = False
        """Whether a person has changed something."""
        self.changed.connect(self._on_touched)
        self.cells.itemChanged.connect(lambda _item: self.changed.emit())

    def fill(self, value: Any) -> None:
        """Show these rows in place of those that are there."""
        blocked = self.cells.blockSignals(True)
        self.cells.setRowCount(0)
        for row in self._rows(value):
            self._add(row)
        self.cells.blockSignals(blocked)
        self._size()

    def _on_touched(self) -> None:
        self.touched = True

    def value(self) -> Any:
        """Return the rows as JSON has them; None for no rows. Raises InputError naming the cell's field."""
        found: list[Any] = []
        for row in range(self.cells.rowCount()):
            held: dict[str, Any] = {}
            for n, column in enumerate(self.table.columns):
                put(held, column.path, self._read(row, n))
            if held:
                found.append(held)
        if self.table.rows_are == "lists":
            return [[row.get(str(n)) for n in range(len(self.table.columns))] for row in found] or None
        if self.table.rows_are == "pairs":
            return {row.get("name", ""): row.get("value", "") for row in found} or None
        return found or None

    def _heading(self, n: int) -> str:
        column = self.table.columns[n]
        unit = shown_unit(column.attribute, self._style)
        # Fields within an object of the row are told apart by it.
        label = phrase(column.attribute.label)
        for name in reversed(column.path[:-1]):
            label = phrase("{what}: {said}", what=phrase(object_word(name)), said=label)
        return f"{label} [{unit}]" if unit else label

    def _rows(self, value: Any) -> list[dict[str, Any]]:
        if self.table.rows_are == "pairs":
            return [{"name": name, "value": each} for name, each in (value or {}).items()]
        if self.table.rows_are == "lists":
            return [{str(n): each for n, each in enumerate(row)} for row in value or ()]
        return list(value or ())

    def _add(self, row: dict[str, Any], *, tell: bool = False) -> None:
        place = self.cells.rowCount()
        self.cells.insertRow(place)
        for n, column in enumerate(self.table.columns):
            exact = at(row, column.path)
            text = column.show(exact, self._style)
            item = QTableWidgetItem(text)
            item.setData(_EXACT, (text, exact))
            self.cells.setItem(place, n, item)
        if tell:
            self.cells.setCurrentCell(place, 0)
            self._size()
            self.changed.emit()

    def _take_away(self) -> None:
        row = self.cells.currentRow()
        if row >= 0:
            self.cells.removeRow(row)
            self._size()
            self.changed.emit()

    def _read(self, row: int, n: int) -> Any:
        item = self.cells.item(row, n)
        if item is None:
            return None
        text, exact = item.data(_EXACT) or ("", None)
        # What nobody typed over is taken as it is, not as it is rounded for show.
        column = self.table.columns[n]
        if item.text() == text:
            return exact
        return column.read(with_unit(column.attribute, item.text(), self._style), self._bare_unit)

    def _size(self) -> None:
        rows = min(max(self.cells.rowCount(), 1), _ROWS) * self.cells.verticalHeader().defaultSectionSize()
        self.cells.setFixedHeight(self.cells.horizontalHeader().sizeHint().height() + rows + SPACE.wide)
        self.less.setEnabled(self.cells.rowCount() > 0)
