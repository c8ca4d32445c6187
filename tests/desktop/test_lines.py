"""Small tables: filled at once, also where they are in sight."""

from time import process_time

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHeaderView

from hwsched.desktop.looks.tokens import SPACE
from hwsched.desktop.widgets.lines import Lines
from tests.desktop.test_access import look  # noqa: F401 (a fixture)

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


def test_no_word_is_cut_where_lines_share_the_room(look, qtbot):  # noqa: F811
    """Columns that shared what was left had less than their longest word and their title: both ended in dots."""
    long = "self-extinguishing-fastener-arrangement unmistakably"
    table = Lines(("Role", "Explanation", "Whereabouts"), 1, {0: 40})
    qtbot.addWidget(table)
    table.show_rows([("consumables", f"the {long} holds", "here"), ("cam", "straight", "there")])
    table.show()
    for width in (900, 420, 330, 200):
        table.resize(width, 300)
        qtbot.wait(20)
        header = table.horizontalHeader()
        for column, widest in enumerate(("consumables", "arrangement", "Whereabouts")):
            assert table.columnWidth(column) >= header.sectionSizeHint(column), (width, column)
            assert table.columnWidth(column) > table.fontMetrics().horizontalAdvance(widest) + 2 * SPACE.hair, width
        # All the room is used, and nothing is scrolled to while it is enough.
        needed = sum(map(table.columnWidth, range(3)))
        assert needed >= table.viewport().width() - 2, width
        assert (table.horizontalScrollBar().maximum() > 0) == (needed > table.viewport().width()), width
    assert needed > table.viewport().width(), "there is room for all in the narrowest"


def test_a_title_of_lines_that_is_cut_is_told_whole(qtbot):
    title = "How far it stands proud of collar and rings, from 0 to the tolerance"
    table = Lines(("Part", title), 1)
    qtbot.addWidget(table)
    table.show_rows([("A-1", '1/8"')])
    table.resize(200, 200)
    table.show()
    assert table.columnWidth(1) < table.horizontalHeader().sectionSizeHint(1)
    assert table.horizontalHeaderItem(1).toolTip() == title
