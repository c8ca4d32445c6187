"""The window is calm: nothing is cut where there is room, no bar where none is needed, words stand in line."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QAbstractItemView,
    QAbstractSpinBox,
    QApplication,
    QListView,
    QListWidget,
    QPlainTextEdit,
    QPushButton,
    QSpinBox,
    QTextBrowser,
)

from hwsched.desktop.frame.places import PLACES
from hwsched.desktop.grid.grid import Grid
from hwsched.desktop.looks.tokens import SPACE, colour
from hwsched.desktop.power.siting_window import SitingWindow
from hwsched.desktop.widgets.lines import Lines
from hwsched.desktop.window import Window
from hwsched.rules import RULEBOOK
from tests.desktop.conftest import idle, look_put_on

MANY_COLUMNS = {"openings", "parts"}
"""Registers of more columns than any screen has room for."""


@pytest.fixture
def looked(qapp, at_work):
    """The window at the smallest screen, with the look put on."""
    # The style of the program stays, under an open window too.
    with look_put_on(qapp, at_work.frame.preferences):
        at_work.resize(1366, 768)
        yield at_work


def pages(window, qtbot):
    for place in PLACES:
        window.frame.go(place.name)
        idle(qtbot, window)
        for _ in range(3):
            QApplication.processEvents()
        yield window.frame.trail.here.place, window.frame.pages.widgets[window.frame.trail.here.place]


def sideways(page):
    """Lists of a page that are scrolled sideways."""
    for view in page.findChildren(QAbstractItemView):
        if view.isVisible() and view.horizontalScrollBar().isVisible():
            above = view.parent()
            yield above.place if isinstance(above, Grid) else view.accessibleName()


def test_no_list_is_scrolled_sideways_at_the_smallest_screen_but_registers_of_many_columns(looked, qtbot):
    found = {(name, each) for name, page in pages(looked, qtbot) for each in sideways(page)}
    assert {each for each in found if each[1] not in MANY_COLUMNS} == set()


def test_no_word_of_a_button_is_cut_by_its_edge(looked, qtbot):
    seen = 0
    for name, page in pages(looked, qtbot):
        for each in page.findChildren(QPushButton):
            if each.isVisible() and each.text():
                words = each.fontMetrics().horizontalAdvance(each.text().replace("&", ""))
                assert each.contentsRect().width() >= words + 2 * SPACE.middle, (name, each.text())
                seen += 1
    assert seen > 40


def test_places_are_read_whole_beside_their_counts_without_a_title_that_says_nothing(looked, qtbot):
    looked.frame.go("openings")
    idle(qtbot, looked)
    tree = looked.openings.places
    assert not tree.header().isVisibleTo(tree)
    lines = [tree.topLevelItem(0)]
    for line in lines:
        lines += [line.child(n) for n in range(line.childCount())]
        words = tree.fontMetrics().horizontalAdvance(line.text(0))
        place = tree.visualItemRect(line)
        assert place.left() + words <= tree.columnWidth(0), line.text(0)
        assert line.toolTip(1).startswith(f"{line.text(1)} opening")
    assert len(lines) > 5


def test_titles_of_most_rules_are_read_whole_among_waivers(looked, qtbot):
    """Room stands idle beside the reason while the rule is cut."""
    looked.frame.go("waivers")
    idle(qtbot, looked)
    QApplication.processEvents()
    table = looked.frame.pages.widgets["waivers"].grid.table
    titles = sorted(table.fontMetrics().horizontalAdvance(rule.title) for rule in RULEBOOK)
    assert table.columnWidth(0) > titles[len(titles) * 9 // 10] + 2 * SPACE.hair
    assert not table.horizontalScrollBar().isVisible()


def test_titles_of_an_empty_list_are_not_cut_at_its_edge(qapp, qtbot, tmp_path):
    shown = Window("tester")
    qtbot.addWidget(shown)
    shown.resize(1366, 768)
    shown.show()
    shown.project.new_project(str(tmp_path / "empty.hwsched"), "Empty")
    idle(qtbot, shown)
    seen = 0
    for name, page in pages(shown, qtbot):
        for grid in page.findChildren(Grid):
            if grid.isVisible() and not grid.model.total():
                header, edge = grid.table.horizontalHeader(), grid.table.viewport().width()
                for at in range(header.count()):
                    begin, width = header.sectionViewportPosition(at), header.sectionSize(at)
                    assert begin + width <= edge or begin >= edge, (name, grid.place, "none is cut at the edge")
                    if header.length() > edge > begin:
                        assert width >= header.sectionSizeHint(at), (name, grid.place, "nor with dots")
                seen += 1
    assert seen > 5


def test_what_stands_in_fields_with_arrows_begins_where_it_does_in_others(looked, qtbot):
    seen = 0
    for name, page in pages(looked, qtbot):
        for each in page.findChildren(QAbstractSpinBox):
            assert each.lineEdit().textMargins().left() > 0, (name, each)
            seen += isinstance(each, QSpinBox)
    assert seen >= 3


def test_words_of_a_small_table_begin_under_their_title_and_end_before_the_next(looked, qtbot):
    table = Lines(("First", "Second"), 1)
    qtbot.addWidget(table)
    table.resize(300, 300)
    long = "a sentence of so many words that it needs a second line, and then a third one, to be told to its end"
    table.show_rows([("one", long), ("two", "short")])
    table.show()
    QApplication.processEvents()
    image = table.viewport().grab().toImage()
    ground = image.pixelColor(1, table.rowViewportPosition(1) + 2)
    first = table.rowViewportPosition(0)
    inked = [
        x
        for x in range(table.columnWidth(0))
        if any(image.pixelColor(x, y).lightness() < ground.lightness() - 80 for y in range(first, first + 20))
    ]
    assert 6 <= inked[0] <= 10, "the title's padding"
    # All lines of the sentence have room, and no line too many.
    metrics = table.fontMetrics()
    room = table.columnWidth(1) - 12
    needed = metrics.boundingRect(0, 0, room, 10_000, int(Qt.TextFlag.TextWordWrap), long).height()
    assert needed <= table.rowHeight(0) <= needed + 2 * metrics.lineSpacing()
    assert table.rowHeight(1) < 2 * metrics.lineSpacing() + 4


def test_a_chosen_line_of_a_list_has_no_box_around_its_words(looked, qtbot):
    for mode, boxed in (
        (QListView.SelectionMode.SingleSelection, False),
        (QListView.SelectionMode.MultiSelection, True),
    ):
        view = QListWidget()
        qtbot.addWidget(view)
        view.setSelectionMode(mode)
        view.addItems(["one", "two"])
        view.setCurrentRow(0)
        view.show()
        view.activateWindow()
        view.setFocus()
        QApplication.processEvents()
        image, ring = view.viewport().grab().toImage(), colour("focus")
        row = view.visualItemRect(view.item(0))
        drawn = any(image.pixelColor(x, row.top()) == ring for x in range(row.left() + 20, row.right() - 20))
        assert drawn is boxed


def test_what_is_only_read_has_the_edge_of_a_list_and_not_that_of_a_field(looked, qtbot):
    for made in (QTextBrowser, QPlainTextEdit):
        view = made()
        qtbot.addWidget(view)
        view.setReadOnly(True)
        view.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        view.resize(200, 100)
        view.show()
        QApplication.processEvents()
        assert view.grab().toImage().pixelColor(100, 0) == colour("line"), made


def test_a_place_for_a_supply_that_is_laid_later_is_offered_where_supplies_are_sited(at_work, qtbot):
    at_work.frame.go("power")
    power = at_work.frame.pages.widgets["power"]
    at_work.frame.go("siting")
    siting = at_work.frame.pages.windows[SitingWindow]
    before = {siting.building.itemText(at) for at in range(siting.building.count())}
    chosen = siting.building.currentText()
    at_work.frame.go("layout")
    planning = at_work.frame.pages.widgets["layout"]
    at_work.frame.go("power")
    power.add_power_row("supply", "", {"name": "BOAT-1", "building": "Boat Store"})
    idle(qtbot, at_work)
    at_work.frame.go("siting")
    assert {siting.building.itemText(at) for at in range(siting.building.count())} == before | {"Boat Store"}
    assert siting.building.currentText() == chosen
    at_work.frame.go("layout")
    assert planning.what.findText("Boat Store") >= 0
