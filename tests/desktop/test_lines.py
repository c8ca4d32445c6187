"""Small tables: filled at once, also where they are in sight."""

from time import process_time

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHeaderView

from hwsched.desktop.widgets.lines import Lines

ROWS = [("≠", f"Leaf: fact {n}", "44.5 mm " * 4, "38 mm") for n in range(200)]


def test_lines_in_sight_are_filled_again_as_quickly_as_hidden_ones(qtbot):
    """Each cell had all lines measured anew: two hundred lines took a hundred times as long once they were in sight."""
    table = Lines(("", "What", "M101", "M102"), 2, {1: 120})
    qtbot.addWidget(table)
    table.resize(500, 700)
    began = process_time()
    table.show_rows(ROWS)
    hidden = process_time() - began
    table.show()
    qtbot.waitExposed(table)
    table.show_rows(ROWS)
    began = process_time()
    table.show_rows(ROWS)
    assert process_time() - began < 30 * hidden
    kept = [table.horizontalHeader().sectionResizeMode(column) for column in range(4)]
    mode = QHeaderView.ResizeMode
    assert kept == [mode.ResizeToContents, mode.Interactive, mode.Stretch, mode.Stretch]
    assert table.verticalHeader().sectionResizeMode(0) == mode.ResizeToContents
    assert table.columnWidth(1) == 120
    assert table.item(199, 1).text() == "Leaf: fact 199"
    assert table.item(0, 2).textAlignment() == Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop
    assert table.rowHeight(0) > table.fontMetrics().height() * 1.5


def test_columns_with_a_width_of_their_own_give_of_it_before_a_list_is_scrolled(qtbot):
    """Names of files had so much room at a large text size that their titles were scrolled to."""
    table = Lines(("File", "At", "Kind", "Title"), 3, {0: 230})
    qtbot.addWidget(table)
    table.show_rows([("a-photograph-of-the-door.jpg", "leaf", "jpg", "Seen from inside")])
    table.resize(900, 300)
    table.show()
    qtbot.waitExposed(table)
    assert table.columnWidth(0) == 230
    taken = table.columnWidth(1) + table.columnWidth(2)
    table.resize(taken + 230 + 40, 300)
    assert table.columnWidth(0) < 230
    assert table.columnWidth(0) >= table.horizontalHeader().sectionSizeHint(0)
    assert table.horizontalScrollBar().maximum() == 0
    table.resize(900, 300)
    assert table.columnWidth(0) == 230


def test_titles_stay_as_they_are_where_a_row_is_chosen(qtbot):
    lines = Lines(("Part", "Where"), 1)
    qtbot.addWidget(lines)
    lines.resize(500, 200)
    lines.show_rows([("ARC-1", "in the leaf"), ("ARC-2", "on the wall")])
    lines.show()
    header = lines.horizontalHeader()
    before = header.grab().toImage()
    qtbot.mouseClick(lines.viewport(), Qt.MouseButton.LeftButton, pos=lines.visualItemRect(lines.item(1, 0)).center())
    assert lines.chosen_row() == 1
    assert header.grab().toImage() == before
