"""Titles of columns that have no room begin with their beginning; a grid without rows has no bar to be scrolled by."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage

from hwsched.desktop.grid.column import Column
from hwsched.desktop.grid.contents import Contents
from hwsched.desktop.grid.grid import Grid
from hwsched.desktop.grid.model import GridModel

TITLE = "Wiring" + 90 * "."
WIDE = 90


def made(qtbot, right):
    """A grid of columns that together are wider than it is."""
    columns = [Column(f"c{n}", TITLE, lambda row: row, right=right, width=20) for n in range(4)]
    grid = Grid(GridModel(Contents(columns, str)), "tried", "Tried", str, empty="Nothing is here yet.")
    qtbot.addWidget(grid)
    grid.resize(300, 200)
    grid.show()
    return grid


def title_of(grid):
    """What is painted of a title in so narrow a column, as rows of dark and light."""
    grid.table.setColumnWidth(0, WIDE)
    header = grid.table.horizontalHeader()
    image = header.grab(header.rect()).toImage().convertToFormat(QImage.Format.Format_Mono)
    return [[image.pixelIndex(x, y) for x in range(WIDE)] for y in range(image.height())]


@pytest.mark.parametrize("right", [True, False])
def test_a_title_without_room_begins_with_its_beginning(qtbot, right):
    grid = made(qtbot, right)
    metrics = grid.table.horizontalHeader().fontMetrics()
    assert metrics.horizontalAdvance(TITLE) > 2 * WIDE
    rows = title_of(grid)
    # Dots alone are no higher than a few pixels: where the word stands something is painted above them.
    middle = len(rows) // 2
    upper = [x for row in rows[4 : middle - 1] for x, ink in enumerate(row[2 : WIDE - 4], 2) if ink != row[WIDE - 6]]
    assert upper, "only the end of the title is seen"
    assert min(upper) < WIDE // 2


def test_a_grid_without_rows_has_no_bar_below_it(qtbot):
    grid = made(qtbot, False)
    bar = grid.table.horizontalScrollBar()
    assert not bar.isVisible()
    grid.model.load(["a", "b"])
    qtbot.waitUntil(bar.isVisible)
    grid.model.load([])
    qtbot.waitUntil(lambda: not bar.isVisible())
    assert grid.table.horizontalScrollBarPolicy() == Qt.ScrollBarPolicy.ScrollBarAlwaysOff
