"""A tree with columns beside its names: where width is wanting the least needed are left out instead of scrolled to.

What the lines are belongs to whoever fills them.
"""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QFont, QFontMetrics, QResizeEvent
from PySide6.QtWidgets import QHeaderView, QTreeWidget, QTreeWidgetItem, QTreeWidgetItemIterator

from hwsched.desktop.looks.tokens import wide
from hwsched.language import phrase

_NAME: Final = 0
_LEAST: Final = 22
"""Figures that a name has at least."""
_WHOLE: Final = 40
"""Figures for which other columns make room at most, so that names are read whole."""


class GivingTree(QTreeWidget):
    """Names have what the other columns leave; of those the least needed give way before a name is cut.

    Here belongs how the width is shared and what tips tell; what the lines are belongs to the tree of a subject.

    Parameters
    ----------
    titles : sequence of str
        Of the columns, names first.
    gives_way : sequence of int
        Columns that may be left out, the least needed first; the tip of a line says what stands in them.
    """

    def __init__(self, titles: Sequence[str], gives_way: Sequence[int]) -> None:
        super().__init__()
        self._titles, self._gives_way = tuple(titles), tuple(gives_way)
        self._at_it = False
        """Whether room is being shared: bars that come and go meanwhile ask for it again."""
        self.setHeaderLabels(list(titles))
        header = self.header()
        header.setStretchLastSection(False)
        header.setTextElideMode(Qt.TextElideMode.ElideRight)
        header.setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        self.setColumnWidth(_NAME, wide(_LEAST))
        # Qt says that a branch is unfolded while it lays the lines out, and for each of all: whoever measured them then
        # would lay them out once more inside of that, and spoil its memory.
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.timeout.connect(self.share)
        for folds in (self.expanded, self.collapsed):
            folds.connect(lambda _index: self._soon.start())

    def lines(self) -> list[QTreeWidgetItem]:
        """Return all lines from the top."""
        found, at = [], QTreeWidgetItemIterator(self)
        while at.value() is not None:
            found.append(at.value())
            at += 1
        return found

    def tell(self, line: QTreeWidgetItem, tip: str = "") -> None:
        """Give the name of a line a tip: this, or its text, and what stands in columns that may be left out."""
        told = [
            phrase("{what}: {said}", what=self._titles[column], said=line.text(column))
            for column in reversed(self._gives_way)
            if line.text(column)
        ]
        line.setToolTip(_NAME, "\n".join([tip or line.text(_NAME), *told]))

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802
        """Share the room anew."""
        super().resizeEvent(event)
        self.share()

    def share(self) -> None:
        """Let names have what the other columns leave; where they are cut the least needed columns are left out."""
        if self._at_it:
            return
        self._at_it = True
        try:
            self._share_out()
        finally:
            self._at_it = False

    def _share_out(self) -> None:
        room = self.viewport().width()
        needed = {column: self._needed(column) for column in range(1, self.columnCount())}
        name = max(min(self.sizeHintForColumn(_NAME), wide(_WHOLE)), wide(_LEAST))
        left_out: set[int] = set()
        for column in self._gives_way:
            if room - sum(needed.values()) >= name:
                break
            left_out.add(column)
            del needed[column]
        for column in self._gives_way:
            self.setColumnHidden(column, column in left_out)
        for column, width in needed.items():
            self.setColumnWidth(column, width)
        self.setColumnWidth(_NAME, max(room - sum(needed.values()), wide(_LEAST)))

    def _needed(self, column: int) -> int:
        """Return how wide a column must be, whether it is shown or not [px]."""
        # Qt measures titles in bold letters; one that is left out has as much about it as the first.
        bold = QFont(self.header().font())
        bold.setBold(True)
        letters = QFontMetrics(bold)
        around = self.header().sectionSizeHint(_NAME) - letters.size(0, self._titles[_NAME]).width()
        title = letters.size(0, self._titles[column]).width() + around
        return max(self.sizeHintForColumn(column), title)
