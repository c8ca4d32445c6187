"""What stands in the sentences of the chosen row, whole: a cell is one line high, and cuts what has no room in it."""

from typing import Any, Final

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QPlainTextEdit, QSizePolicy, QStyle, QWidget

from hwsched.desktop.grid.column import Column
from hwsched.desktop.grid.model import GridModel
from hwsched.desktop.grid.table import GridTable
from hwsched.desktop.looks.tokens import SPACE
from hwsched.language import phrase

_LINES: Final = 4
"""So many are seen at once; of a longer text the rest is scrolled to."""


class WholeRow(QPlainTextEdit):
    """Stands below a table, from the first time on that a sentence of the chosen row has no room in its cell.

    It stays then, so that the rows do not move as one walks over them. Tab leads into it: it is scrolled and copied.

    Parameters
    ----------
    table : GridTable
        Tells how wide its cells are.
    model : GridModel
        Rows and columns.
    """

    def __init__(self, table: GridTable, model: GridModel[Any], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._table, self._model = table, model
        self.setObjectName("whole")
        self.setReadOnly(True)
        self.setTabChangesFocus(True)
        self.setAccessibleName(phrase("The chosen row, whole"))
        self.setTextInteractionFlags(
            Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
        )
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.hide()

    def sizeHint(self) -> QSize:  # noqa: N802
        """Return room for a few lines."""
        around = 2 * (int(self.document().documentMargin()) + self.frameWidth() + SPACE.hair)
        return QSize(super().sizeHint().width(), _LINES * self.fontMetrics().lineSpacing() + around)

    def minimumSizeHint(self) -> QSize:  # noqa: N802
        """Return the same height, and no width of its own."""
        return QSize(0, self.sizeHint().height())

    def show_row(self, identity: str | None) -> None:
        """Show the sentences of a row; nothing where none is chosen."""
        contents = self._model.contents
        row = contents.row_of(identity) if identity is not None else None
        said = [
            (place, column, text)
            for place, column in enumerate(contents.columns)
            if row is not None and column.sentence and (text := column.text(column.value(row)))
        ]
        words = "\n".join(
            text if len(said) == 1 else phrase("{title}: {text}", title=phrase(column.title), text=text)
            for _, column, text in said
        )
        if words != self.toPlainText():
            self.setPlainText(words)
        if not contents.ids:
            self.hide()
        elif self.isHidden() and any(self._cut(place, column, text) for place, column, text in said):
            self.show()
            self._table.scrollTo(self._table.currentIndex())

    def _cut(self, place: int, column: Column[Any], text: str) -> bool:
        style = self._table.style()
        around = 2 * (SPACE.hair + style.pixelMetric(QStyle.PixelMetric.PM_FocusFrameHMargin) + 1)
        return "\n" in text or self.fontMetrics().horizontalAdvance(text) + around > self._table.columnWidth(place)
