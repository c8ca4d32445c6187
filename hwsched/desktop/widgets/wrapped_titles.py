"""Titles of columns that wrap: a column is as wide as its words need, not as a sentence above them."""

from typing import Final

from PySide6.QtCore import QRect, QSize, Qt, QTimer
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHeaderView, QTableWidget

from hwsched.desktop.looks.tokens import wide

_SHORT: Final = 13
"""Figures up to which a title stays in one line."""
_LEAST: Final = 9
"""Figures that a line of a longer one has at least."""
_MOST: Final = 4
"""Lines of a title, about: a longer one makes its column wider."""
_UNEVEN: Final = 1.25
"""So much wider than its share of a title a line is, since words are not broken."""
_LEFT: Final = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
_WRAPPED: Final = int(Qt.TextFlag.TextWordWrap)


class WrappedTitles(QHeaderView):
    """Titles over the columns of a small table, as high as the highest of them is at the width of its column.

    Here belongs how much room a title asks for; on what side it stands and what is told of it is its table's.

    Parameters
    ----------
    table : QTableWidget
        Over whose columns they stand.
    """

    def __init__(self, table: QTableWidget) -> None:
        super().__init__(Qt.Orientation.Horizontal, table)
        # Titles of numbers stand at the right, as their items say, and are short: they do not wrap.
        self.setDefaultAlignment(Qt.AlignmentFlag(int(_LEFT) | _WRAPPED))
        # What wraps is not cut with dots.
        self.setTextElideMode(Qt.TextElideMode.ElideNone)
        self.setHighlightSections(False)
        self.setSectionsClickable(False)
        self._filling = False
        """Whether the last column has what room is left."""
        self._later = QTimer(self, singleShot=True, interval=0)
        self._later.timeout.connect(self._be_high)
        self.sectionResized.connect(lambda *_: self._later.start())
        table.setHorizontalHeader(self)

    def fill_room(self) -> None:
        """Let the last column have the room that is left, where the titles of all leave any."""
        self._filling = True
        self._fill_room()

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802
        """Share the room anew."""
        super().resizeEvent(event)
        if self._filling:
            self._fill_room()

    def sectionSizeFromContents(self, section: int) -> QSize:  # noqa: N802
        """Return how wide a title is at least, and how high at the width that its column has."""
        whole, text = super().sectionSizeFromContents(section), self._title(section)
        letters = self.fontMetrics()
        across = letters.horizontalAdvance(text)
        beside, over = whole.width() - across, whole.height() - letters.height()
        # A line breaks where it is only just as wide as its room: its letters are set in parts of a pixel.
        across += letters.averageCharWidth() // 2
        longest = max(map(letters.horizontalAdvance, text.split()), default=0)
        short = across <= wide(_SHORT)
        least = across if short else max(longest, wide(_LEAST), round(across / _MOST * _UNEVEN))
        room = QRect(0, 0, max(self.sectionSize(section) - beside, longest), 10_000)
        return QSize(least + beside, letters.boundingRect(room, _WRAPPED, text).height() + over)

    def sizeHint(self) -> QSize:  # noqa: N802
        """Return how high the highest title is."""
        highest = max((self.sectionSizeFromContents(n).height() for n in range(self.count())), default=0)
        return QSize(super().sizeHint().width(), highest)

    def _fill_room(self) -> None:
        last = self.count() - 1
        fits = sum(map(self.sectionSize, range(last))) + self.sectionSizeHint(last) <= self.width()
        mode = QHeaderView.ResizeMode.Stretch if fits else QHeaderView.ResizeMode.ResizeToContents
        if mode != self.sectionResizeMode(last):
            self.setSectionResizeMode(last, mode)

    def _title(self, section: int) -> str:
        return str(self.model().headerData(section, Qt.Orientation.Horizontal) or "")

    def _be_high(self) -> None:
        if self.sizeHint().height() != self.height():
            self.geometriesChanged.emit()
