"""Small read-only tables, and a page of one with its actions below it. What the lines say is for whoever fills them."""

import re
from collections.abc import Collection, Iterator, Sequence
from contextlib import contextmanager
from heapq import nlargest
from typing import Final

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QAction, QPalette, QResizeEvent
from PySide6.QtWidgets import (
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QSizePolicy,
    QStyle,
    QStyleOptionViewItem,
    QTableWidget,
    QTableWidgetItem,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.looks.tokens import SPACE, Text, colour, scaled, wide
from hwsched.desktop.widgets.empty import Empty
from hwsched.desktop.widgets.kept_colours import Index, KeptColours
from hwsched.desktop.widgets.number_columns import to_the_right
from hwsched.desktop.widgets.wrapped_titles import WrappedTitles
from hwsched.language import phrase

_LONGEST: Final = 40
_LEAST: Final = 11
"""Figures that a column has which shares what is left: narrower its words would stand one below the other."""
_SCROLLED: Final = 18
"""Figures that it has where it is scrolled to: then it costs no room, and its lines are low; more for no word."""
_LONG: Final = 6
"""Words of a column that are measured, the ones of the most letters: one of them is the widest."""
_WORD: Final = re.compile(r"[^\s-]+-?")
"""What is not broken where a line is full."""
_SHARE: Final = 0.2
"""Of the whole width that a narrow column of sentences has where that is more than its least."""


INK: Final = int(Qt.ItemDataRole.UserRole) + 40
"""Role under which a cell keeps the role of its words' colour."""


class _LineDelegate(KeptColours):
    """Paints words of a line in the colour of a role."""

    def initStyleOption(self, option: QStyleOptionViewItem, index: Index) -> None:  # noqa: N802
        """Take the colour of a role in the theme in force."""
        super().initStyleOption(option, index)
        if role := index.data(INK):
            palette = option.palette
            for each in (QPalette.ColorRole.Text, QPalette.ColorRole.HighlightedText):
                palette.setColor(each, colour(role))
            option.palette = palette

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:  # noqa: N802
        """Return how large it is at the width in which it is painted: within the padding of the style sheet."""
        inner = QStyleOptionViewItem(option)
        if option.rect.width() > 2 * SPACE.hair:
            inner.rect = option.rect.adjusted(0, 0, -2 * SPACE.hair, 0)
        return super().sizeHint(inner, index)


class Lines(QTableWidget):
    """A small read-only table.

    Here belongs how lines are shown and chosen; what a key does with one belongs to whoever stands on it.

    Parameters
    ----------
    titles : sequence of str
        Of the columns.
    stretch : int
        From this column on they share what is left of the width.
    narrow : mapping of column to width, optional
        Columns that keep a width and wrap [px at 100 % text].
    numbers : collection of int, optional
        Columns whose numbers stand under one another at the right, with their titles above them.
    """

    def __init__(
        self,
        titles: Sequence[str],
        stretch: int,
        narrow: dict[int, int] | None = None,
        numbers: Collection[int] = (),
    ) -> None:
        super().__init__(0, len(titles))
        header = WrappedTitles(self)
        self.setHorizontalHeaderLabels(list(titles))
        for column, title in enumerate(titles):
            if (head := self.horizontalHeaderItem(column)) is not None:
                # A title that is cut is told whole.
                head.setToolTip(title)
        self.setAccessibleName(phrase("List of {titles}", titles=", ".join(titles)))
        self.verticalHeader().hide()
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self.setEditTriggers(QTableWidget.EditTrigger.NoEditTriggers)
        # Tab goes on to what stands beside; lines are reached by arrow keys.
        self.setTabKeyNavigation(False)
        self.setSelectionBehavior(QTableWidget.SelectionBehavior.SelectRows)
        self.setWordWrap(True)
        self.setAlternatingRowColors(True)
        self.setShowGrid(False)
        self.setItemDelegate(_LineDelegate(self))
        self.empty = Empty(self)
        """What is said before there is a line."""
        to_the_right(self, numbers)
        self._numbers = frozenset(numbers)
        for column in range(len(titles)):
            mode = QHeaderView.ResizeMode.Stretch if column >= stretch else QHeaderView.ResizeMode.ResizeToContents
            header.setSectionResizeMode(column, mode)
        self._narrow: dict[int, int] = {}
        """Columns that keep a width where there is room, with it [px]."""
        for column, width in (narrow or {}).items():
            header.setSectionResizeMode(column, QHeaderView.ResizeMode.Interactive)
            # Its title fits, in whatever language it is.
            self.setColumnWidth(column, max(scaled(width), header.sectionSizeHint(column)))
            if column < stretch:
                self._narrow[column] = self.columnWidth(column)
        self._sharing = [column for column in range(stretch, len(titles)) if column not in (narrow or {})]
        self._growing = {column: self.columnWidth(column) for column in narrow or {} if column > stretch}
        """Narrow columns of sentences, with their least width: where there is room they have a share of it."""
        self._words: dict[int, list[str]] = {}
        """Of each column the words that may be its widest."""

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802
        """Share the room anew."""
        super().resizeEvent(event)
        self._share()

    def _share(self) -> None:
        """Let the last columns share what is left; where that is too little they are scrolled."""
        header, room = self.horizontalHeader(), self.viewport().width()
        for column, width in self._growing.items():
            self.setColumnWidth(column, max(width, self._needed(column), round(room * _SHARE)))
        # Those with a width of their own give of it before anything is scrolled to: their words wrap.
        others = [n for n in range(self.columnCount()) if n not in self._sharing and n not in self._narrow]
        narrow = {column: max(width, self._needed(column)) for column, width in self._narrow.items()}
        least = {column: self._least(column) for column in self._sharing}
        taken = sum(map(header.sectionSize, others)) + sum(narrow.values())
        short = taken + sum(least.values()) - room
        for column, width in narrow.items():
            given = max(min(width - self._least(column), short), 0)
            self.setColumnWidth(column, width - given)
            taken, short = taken - given, short - given
        alike = (room - taken) // max(len(least), 1) >= max(least.values(), default=0)
        for column, width in least.items():
            if alike:
                header.setSectionResizeMode(column, QHeaderView.ResizeMode.Stretch)
                continue
            header.setSectionResizeMode(column, QHeaderView.ResizeMode.Interactive)
            # What is left over after the words of each is shared; where they have no room they are scrolled to.
            scrolled = max(min(wide(_SCROLLED), room), width)
            self.setColumnWidth(column, scrolled if short > 0 else width + -short // len(least))

    def _least(self, column: int) -> int:
        """Return how wide a column is at least that shares the room, or gives of its own."""
        return max(wide(_LEAST), self._needed(column))

    def _needed(self, column: int) -> int:
        """Return the width at which a column's title and each of its words are read whole, within reason."""
        margin = self.style().pixelMetric(QStyle.PixelMetric.PM_FocusFrameHMargin, None, self) + 1
        widest = max(map(self.fontMetrics().horizontalAdvance, self._words.get(column, ())), default=0)
        wanted = max(self.horizontalHeader().sectionSizeHint(column), widest + 2 * (SPACE.hair + margin) + 2)
        return min(wanted, wide(_SCROLLED))

    def show_rows(
        self, rows: Sequence[Sequence[str]], *, aside: Collection[int] = (), inks: Sequence[Text] = ()
    ) -> None:
        """Show these lines; those set aside are slanted; inks: the roles of the colours of their first words."""
        with self._unmeasured():
            self._fill(rows, aside)
        for r, role in enumerate(inks):
            if (cell := self.item(r, 0)) is not None:
                cell.setData(INK, role)
        self._share()

    @contextmanager
    def _unmeasured(self) -> Iterator[None]:
        """Measure no row and column meanwhile: lines in sight would be measured anew, all of them, for each cell."""
        down, across = self.verticalHeader(), self.horizontalHeader()
        modes = [across.sectionResizeMode(column) for column in range(self.columnCount())]
        for header in (down, across):
            header.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        try:
            yield
        finally:
            for column, mode in enumerate(modes):
                across.setSectionResizeMode(column, mode)
            down.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)

    def _fill(self, rows: Sequence[Sequence[str]], aside: Collection[int]) -> None:
        self.setRowCount(len(rows))
        words = [{word for text in set(column) for word in _WORD.findall(text)} for column in zip(*rows, strict=False)]
        self._words = {column: nlargest(_LONG, each, key=len) for column, each in enumerate(words)}
        for r, row in enumerate(rows):
            for c, text in enumerate(row):
                cell = QTableWidgetItem(text)
                cell.setToolTip(text)
                side = Qt.AlignmentFlag.AlignRight if c in self._numbers else Qt.AlignmentFlag.AlignLeft
                cell.setTextAlignment(side | Qt.AlignmentFlag.AlignTop)
                if r in aside:
                    font = cell.font()
                    font.setItalic(True)
                    cell.setFont(font)
                self.setItem(r, c, cell)

    def chosen_row(self) -> int:
        """Return the selected line; -1 where there is none."""
        rows = self.selectionModel().selectedRows()
        return rows[0].row() if rows else -1


class LinesPage(QWidget):
    """A table with its actions as buttons below and as its context menu, and a line of words.

    Here belongs how such a page looks and offers its actions; what the lines say and what the actions ask for
    belongs to the page of a subject.
    """

    def __init__(self, table: Lines) -> None:
        super().__init__()
        self.table = table
        table.setContextMenuPolicy(Qt.ContextMenuPolicy.ActionsContextMenu)
        table.itemSelectionChanged.connect(self.enable)
        self.buttons: dict[str, QToolButton] = {}
        """By the words of their actions."""
        self._row = QHBoxLayout()
        self._row.setContentsMargins(4, 0, 4, 4)
        self.note = QLabel()
        self.note.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.note.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self._row.addWidget(self.note, 1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(4)
        layout.addWidget(table, 1)
        layout.addLayout(self._row)

    def offer(self, text: str, tip: str) -> QAction:
        """Add an action, as a button and to the context menu."""
        made = QAction(text, self)
        made.setToolTip(tip)
        # Left to itself a button leaves out the dots that say: something is asked first.
        made.setIconText(text)
        self.table.addAction(made)
        button = QToolButton()
        button.setDefaultAction(made)
        self.buttons[text] = button
        self._row.insertWidget(self._row.count() - 1, button)
        return made

    def say(self, text: str) -> None:
        """Show a line of words beside the buttons; a long one is cut, its tip has the whole."""
        self.note.setText(text if len(text) <= _LONGEST else f"{text[: _LONGEST - 1]}…")
        self.note.setToolTip(text)

    def enable(self) -> None:
        """Let what is possible with the selected line be done."""
