"""What belongs together stands in line: titles over their words, controls of a row, panes, labels and their fields."""

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QFont
from PySide6.QtWidgets import (
    QAbstractSpinBox,
    QApplication,
    QDateEdit,
    QLabel,
    QLineEdit,
    QPushButton,
    QSpinBox,
    QTreeWidget,
    QTreeWidgetItem,
)

from hwsched.desktop.findings.rule_page import RulePage
from hwsched.desktop.looks.letters import use_own_letters
from hwsched.desktop.looks.tokens import ROW
from hwsched.desktop.project.preferences import Preferences
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.desktop.widgets.lines import Lines
from hwsched.desktop.widgets.number_columns import RIGHT, to_the_right
from hwsched.rules import RULEBOOK
from tests.desktop.conftest import choose, idle, look_put_on

WORD = "HHHH"
"""Its ink begins and ends where its letters do."""


@pytest.fixture
def look(qapp):
    """What is chosen of the look, put on with the letters of the package, as it is seen."""
    before, chosen = QFont(qapp.font()), Preferences()
    assert use_own_letters(qapp)
    with look_put_on(qapp, chosen):
        yield chosen
    qapp.setFont(before)


@pytest.fixture
def looked(look, at_work):
    """The window at the smallest screen, as it is seen."""
    at_work.resize(1366, 768)
    return at_work


def ink(widget, place, dark=150):
    """The columns at which something is written in a place of a widget, its edges left out."""
    image = widget.grab(place).toImage()
    inner = [(x, y) for x in range(2, image.width() - 2) for y in range(3, image.height() - 3)]
    return sorted({x for x, y in inner if image.pixelColor(x, y).lightness() < dark})


def lines():
    made = Lines(("", WORD, WORD, WORD), 1, numbers=(2, 3))
    made.show_rows([("", WORD, WORD, WORD)] * 2)
    return made, made.horizontalHeader()


def tree():
    made = QTreeWidget()
    made.setHeaderLabels(["", WORD, WORD, WORD])
    line = QTreeWidgetItem(made, ["", WORD, WORD, WORD])
    for column in (2, 3):
        line.setTextAlignment(column, RIGHT)
    to_the_right(made, (2, 3))
    return made, made.header()


@pytest.mark.parametrize("made", [lines, tree])
@pytest.mark.parametrize("percent", [100, 200])
def test_titles_stand_over_the_words_of_their_columns(look, qtbot, made, percent):
    look.text_size = percent
    view, header = made()
    qtbot.addWidget(view)
    view.resize(900, 300)
    view.show()
    for _ in range(3):
        QApplication.processEvents()
    for column, end in ((1, 0), (2, -1), (3, -1)):
        row = view.visualRect(view.model().index(0, column))
        left, wide = view.viewport().x() + header.sectionViewportPosition(column), header.sectionSize(column)
        title = ink(view, QRect(left, header.y(), wide, header.height()))
        words = ink(view, QRect(left, view.viewport().y() + row.top(), wide, row.height()))
        assert title[end] == words[end], (column, title[end], words[end])


@pytest.mark.parametrize("percent", [100, 150, 200])
def test_what_is_worked_in_one_row_is_equally_high(look, qtbot, percent):
    look.text_size = percent
    high = {}
    for made in (QLineEdit(), DropDown(), QPushButton("Choose…"), QSpinBox(), QDateEdit()):
        qtbot.addWidget(made)
        made.show()
        high[type(made).__name__] = made.sizeHint().height()
    assert max(high.values()) - min(high.values()) <= 1, high


def test_a_line_of_a_small_table_is_as_high_as_a_row_of_a_grid_and_its_words_keep_off_the_next_column(look, qtbot):
    table = Lines(("One", "Two", "Three"), 1)
    qtbot.addWidget(table)
    long = "Keep the order of the steps of the packet; measure the coin cell before it is handed over to the caretaker"
    table.show_rows([("Note", "short", "short"), ("Note", long, "short")])
    table.resize(420, 300)
    table.show()
    for _ in range(3):
        QApplication.processEvents()
    assert table.rowHeight(0) == ROW.grid
    wraps = table.visualRect(table.model().index(1, 1))
    assert wraps.height() > 2 * ROW.grid
    written = ink(table.viewport(), wraps)
    assert written[0] >= 6
    assert wraps.width() - written[-1] >= 6


def test_the_facts_of_a_rule_stand_under_its_title(look, qtbot):
    page = RulePage()
    qtbot.addWidget(page)
    page.resize(600, 500)
    page.show_rule(next(each for each in RULEBOOK if each.title.startswith("L")), {}, off=False)
    page.show()
    QApplication.processEvents()
    below = round(page.document().documentLayout().blockBoundingRect(page.document().begin()).bottom())
    title = ink(page.viewport(), QRect(0, 0, 300, below))
    facts = ink(page.viewport(), QRect(0, below + 4, 300, 120))
    # Letters begin somewhat within their own width, large ones more so.
    assert -2 <= facts[0] - title[0] <= 1


def top_left(widget, window):
    return widget.mapTo(window, QPoint(0, 0))


def test_the_title_of_the_inspector_stays_where_it_is_for_one_and_for_several(looked, qtbot):
    places = []
    for marks in (("M016",), ("M016", "M116")):
        choose(looked, *marks)
        idle(qtbot, looked)
        for _ in range(3):
            QApplication.processEvents()
        shown = [each for each in looked.findChildren(QLabel) if each.isVisible() and marks[0] in each.text()[:4]]
        places.append(min((top_left(each, looked) for each in shown), key=lambda at: at.y()))
    assert places[0] == places[1]


def test_pages_of_a_place_begin_and_end_on_one_line(looked, qtbot):
    looked.frame.go("deliveries")
    idle(qtbot, looked)
    page = looked.frame.pages.widgets["deliveries"]
    edges = set()
    for at in range(page.pages.count()):
        page.pages.setCurrentIndex(at)
        QApplication.processEvents()
        view = page.deciding.tree if at == 0 else page.pages.widget(at)
        place = QRect(top_left(view, looked), view.size())
        edges.add((place.left(), place.right()))
    assert len(edges) == 1, edges
    looked.frame.go("sets")
    idle(qtbot, looked)
    for _ in range(3):
        QApplication.processEvents()
    page = looked.frame.pages.widgets["sets"]
    bottoms = {top_left(each, looked).y() + each.height() for each in (page.list, page.pages)}
    assert len(bottoms) == 1, bottoms


def middle(widget, window):
    return top_left(widget, window).y() + widget.height() / 2


def test_a_label_stands_beside_its_field(looked, qtbot):
    looked.frame.go("what-if")
    idle(qtbot, looked)
    page = looked.frame.pages.widgets["what-if"]
    label = next(each for each in page.findChildren(QLabel) if each.buddy() is page.question.kind)
    QApplication.processEvents()
    words = label.contentsRect().top() + label.fontMetrics().height() / 2
    assert abs(top_left(label, looked).y() + words - middle(page.question.kind, looked)) <= 1
    for name in ("siting", "fewest"):
        looked.frame.go(name)
        idle(qtbot, looked)
        page = looked.frame.pages.widgets[name]
        for field in page.findChildren(QAbstractSpinBox):
            if field.isVisible():
                others = [each for each in page.findChildren(DropDown) if each.isVisible()]
                assert all(abs(each.height() - field.height()) <= 1 for each in others)


def test_the_tour_is_begun_by_a_button_and_not_by_a_field(looked, qtbot):
    looked.frame.go("preferences")
    idle(qtbot, looked)
    page = looked.frame.pages.widgets["preferences"]
    assert page.tour.width() <= page.tour.sizeHint().width()
    assert page.name.width() > 1.5 * page.tour.width()


def test_numbers_of_parts_stand_under_one_another(looked, qtbot):
    choose(looked, "M016")
    idle(qtbot, looked)
    table = looked.sheet.parts
    assert table.horizontalHeaderItem(2).textAlignment() == RIGHT
    assert table.rowCount() > 3
    for row in range(table.rowCount()):
        assert table.item(row, 2).textAlignment() & Qt.AlignmentFlag.AlignRight


def test_a_list_with_the_keyboard_keeps_its_lines_where_they_are_and_its_titles_no_second_frame(look, qtbot):
    for view, header in (lines(), tree()):
        beside = QLineEdit()
        for each in (view, beside):
            qtbot.addWidget(each)
        view.resize(500, 200)
        beside.show()
        view.show()
        places = set()
        for each in (beside, view):
            each.activateWindow()
            each.setFocus()
            view.resize(view.width() + 1, 200)
            QApplication.processEvents()
            places.add(view.viewport().geometry().topLeft().toTuple())
            assert view.width() - view.viewport().width() == 4
        assert len(places) == 1
        assert header.viewport().geometry() == header.rect()
