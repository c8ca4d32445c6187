"""Columns share the width that there is; what follows from the window is nobody's wish, what a person made stays."""

from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from hwsched.desktop.grid.column import Column
from hwsched.desktop.grid.contents import Contents
from hwsched.desktop.grid.grid import Grid
from hwsched.desktop.grid.model import GridModel
from hwsched.desktop.grid.remembering import arrangement_of
from hwsched.desktop.grid.widths import shared_widths

ROWS = ((1, "Leaf thickness", "M114, M116", "none"), (2, "Footprint width", "GL-5", "none"))


def column(name, title, place, width, *, right=False):
    return Column(name, title, lambda row: row[place], width=width, right=right)


@pytest.fixture
def grid(qtbot):
    columns = (
        column("step", "Step", 0, 10, right=True),
        column("what", "What", 1, 30),
        column("where", "Where", 2, 20),
        column("why", "Why", 3, 40),
    )
    model = GridModel(Contents(columns, lambda row: str(row[0])))
    made = Grid(model, "widths", "Widths", str)
    model.setParent(made)
    qtbot.addWidget(made)
    model.load(ROWS)
    made.resize(1600, 400)
    made.show()
    return made


def widths(grid):
    QApplication.processEvents()
    return [grid.table.columnWidth(place) for place in range(4)]


def test_room_that_is_left_goes_to_words_and_a_little_that_is_wanting_is_the_last_one_s(grid):
    step, what, where, why = widths(grid)
    assert step == 80
    assert what > 1.5 * 240
    assert abs((what - 240) / (where - 160) - 9 / 4) < 0.1
    assert abs((why - 320) / (where - 160) - 4) < 0.1
    bar = grid.table.horizontalScrollBar()
    assert bar.maximum() == 0
    grid.resize(700, 400)
    narrow = widths(grid)
    assert narrow[:3] == [80, 240, 160]
    assert 100 < narrow[3] < 320
    assert bar.maximum() == 0
    grid.resize(500, 400)
    assert widths(grid) == [80, 240, 160, 320]
    assert bar.maximum() > 0
    # Nobody has made a column so wide: nothing is kept.
    assert arrangement_of("widths").widths == {}


def test_what_a_person_made_so_wide_stays_so(grid):
    widths(grid)
    grid.table.horizontalHeader().resizeSection(1, 100)
    grid.resize(1500, 400)
    assert widths(grid)[1] == 100
    assert arrangement_of("widths").widths == {"what": 100}


@pytest.mark.parametrize("room", range(0, 900, 37))
def test_no_column_is_narrower_than_it_is_declared_but_the_last_and_nothing_is_left_over(room):
    usual, least = [120, 80, 200], 90
    found = shared_widths(usual, [True, True, True], [True, False, True], room, least)
    assert found[:2] >= usual[:2]
    assert found[2] >= least
    if room >= sum(usual):
        assert room - 3 < sum(found) <= room
    elif room >= 120 + 80 + least:
        assert sum(found) == room
    else:
        assert found == usual


def test_a_title_is_read_whole_however_narrow_its_column_is_declared(qtbot):
    long = "What is wanted before it may be packed"
    step = replace(column("step", long, 0, 4), note="Steps are counted from the first")
    model = GridModel(Contents((step, column("what", "What", 1, 30)), lambda row: str(row[0])))
    made = Grid(model, "titles", "Titles", str)
    model.setParent(made)
    qtbot.addWidget(made)
    model.load(ROWS)
    made.resize(500, 300)
    made.show()
    QApplication.processEvents()
    header = made.table.horizontalHeader()
    assert made.table.columnWidth(0) >= header.sectionSizeHint(0)
    # Where rows would be scrolled to for it, it is cut, and its tip has it.
    made.resize(header.sectionSizeHint(0) + 80, 300)
    QApplication.processEvents()
    assert made.table.columnWidth(0) < header.sectionSizeHint(0)
    assert made.table.horizontalScrollBar().maximum() == 0
    tip = model.headerData(0, Qt.Orientation.Horizontal, Qt.ItemDataRole.ToolTipRole)
    assert tip.splitlines() == [long, "Steps are counted from the first"]
    made.resize(500, 300)
    QApplication.processEvents()
    # A person may make it narrower.
    header.resizeSection(0, 60)
    made.resize(520, 300)
    QApplication.processEvents()
    assert made.table.columnWidth(0) == 60


def test_a_list_without_a_row_is_not_scrolled_when_it_comes_into_sight(grid, qtbot):
    grid.hide()
    grid.model.load(())
    grid.resize(500, 400)
    QApplication.processEvents()
    grid.show()
    QApplication.processEvents()
    room, across = grid.table.viewport().width(), 0
    for width in widths(grid):
        # Each column is in sight with its whole width, or begins beyond the edge.
        assert across + width <= room or across >= room
        across += width
