"""Tabs of which none is hidden while a few letters of each have room: the longest end in dots first.

Qt's own are scrolled as soon as one letter is wanting: half a word at the edge, and pages that nobody sees.
"""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QTabBar, QTabWidget, QWidget

from hwsched.desktop.looks.tokens import wide

_LEAST: Final = 9
"""Figures that a tab has at least: where that is too much for all, they are scrolled."""


class Tabs(QTabBar):
    """A row of tabs; what is told of one that is cut has all of its words.

    Here belongs how tabs share the room; which pages there are belongs to whoever has them.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        # The line under them is that of the pages below.
        self.setDrawBase(False)
        self.setUsesScrollButtons(True)
        self.setElideMode(Qt.TextElideMode.ElideRight)

    def minimumTabSizeHint(self, index: int) -> QSize:  # noqa: N802
        """Return the size of a tab where not all of them have room."""
        whole = self.tabSizeHint(index)
        widths = [self.tabSizeHint(at).width() for at in range(self.count()) if self.isTabVisible(at)]
        return QSize(min(whole.width(), max(most_of(widths, self.width()), wide(_LEAST))), whole.height())


class TabbedPages(QTabWidget):
    """Pages under a row of such tabs.

    Here belongs what all pages in tabs have in common; what stands on one belongs to whoever adds it.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setTabBar(Tabs(self))


def most_of(widths: Sequence[int], room: int) -> int:
    """Return how wide each may be at most, so that all have room; those that are not so wide keep their width.

    Examples
    --------
    >>> most_of([80, 120, 140], 300), most_of([80, 120, 140], 340), most_of([80, 120, 140], 90)
    (110, 140, 30)
    """
    left, ordered = room, sorted(widths)
    for at, width in enumerate(ordered):
        share = left // (len(ordered) - at)
        if width > share:
            return share
        left -= width
    return ordered[-1] if ordered else room
