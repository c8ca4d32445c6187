"""The cells of a survey sheet as they stand, coloured by what they are: header, no opening, doubtful, refused."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt
from PySide6.QtGui import QColor, QFont, QPalette

from hwsched.attributes import as_text
from hwsched.desktop.survey.column_words import fact_label
from hwsched.exchange.problems import column_letter
from hwsched.exchange.survey.outline import SheetOutline
from hwsched.kept_sentences import kept_error
from hwsched.language import phrase

_REFUSED: Final = QColor(214, 64, 64, 90)
_ASKED: Final = QColor(230, 160, 30, 90)
_HEADER: Final = QColor(90, 130, 190, 60)
_Index = QModelIndex | QPersistentModelIndex
_NOWHERE: Final = QModelIndex()


@dataclass(frozen=True, slots=True)
class MarkedCell:
    """What is doubtful about a cell."""

    kind: str
    """asked, refused."""
    text: str


class SheetModel(QAbstractTableModel):
    """Rows and columns as the spreadsheet has them.

    Parameters
    ----------
    sheet : SheetOutline or None
        The sheet; None shows nothing.
    marked_cells : mapping of (int, str) to MarkedCell
        By row as the spreadsheet counts and letters of the column; no letters: the row as a whole.
    """

    def __init__(
        self,
        sheet: SheetOutline | None,
        marked_cells: Mapping[tuple[int, str], MarkedCell],
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._rows = sheet.rows if sheet else ()
        self._sheet = sheet
        self._marked = marked_cells
        self._width = max((len(row) for row in self._rows), default=0)
        self._headings = {each.index: each for each in sheet.columns} if sheet else {}

    def cell(self, row: int, column: int) -> object:
        """Return a cell, both counted from 0; an empty text where there is none."""
        line = self._rows[row] if 0 <= row < len(self._rows) else ()
        return line[column] if 0 <= column < len(line) else ""

    def text(self, row: int, column: int) -> str:
        """Return a cell as it is shown, both counted from 0."""
        return " ".join(as_text(self.cell(row, column)).split())

    def rowCount(self, parent: _Index = _NOWHERE) -> int:  # noqa: N802
        """Return the number of rows."""
        return 0 if parent.isValid() else len(self._rows)

    def columnCount(self, parent: _Index = _NOWHERE) -> int:  # noqa: N802
        """Return the number of columns."""
        return 0 if parent.isValid() else self._width

    def data(self, index: _Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return what a cell shows."""
        row, column = index.row(), index.column()
        if role == Qt.ItemDataRole.DisplayRole:
            return self.text(row, column)
        if self._sheet is None:
            return None
        is_header = self._sheet.header_first <= row + 1 <= self._sheet.header_row and bool(self._headings)
        passed = self._sheet.passed.get(row + 1)
        doubt = self._marked.get((row + 1, column_letter(column))) or self._marked.get((row + 1, ""))
        if role == Qt.ItemDataRole.BackgroundRole:
            if is_header:
                return _HEADER
            return (_REFUSED if doubt.kind == "refused" else _ASKED) if doubt else None
        if role == Qt.ItemDataRole.ForegroundRole and (passed or row + 1 < self._sheet.header_first):
            return QPalette().color(QPalette.ColorGroup.Disabled, QPalette.ColorRole.Text)
        if role == Qt.ItemDataRole.FontRole and is_header:
            font = QFont()
            font.setBold(True)
            return font
        if role == Qt.ItemDataRole.ToolTipRole:
            return doubt.text if doubt else phrase("Not read: {passed}", passed=kept_error(passed)) if passed else None
        return None

    def headerData(  # noqa: N802
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:
        """Return the letters of a column with the fact that it carries, or the number of a row."""
        if role != Qt.ItemDataRole.DisplayRole:
            return None
        if orientation == Qt.Orientation.Vertical:
            return str(section + 1)
        column = self._headings.get(section)
        return f"{column_letter(section)}\n{fact_label(column.target) if column else ''}"
