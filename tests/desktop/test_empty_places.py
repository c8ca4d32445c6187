"""No list is an empty box: where a place has nothing yet, it says what comes there or how to begin."""

import pytest
from PySide6.QtCore import QRect
from PySide6.QtWidgets import (
    QAbstractItemView,
    QApplication,
    QComboBox,
    QHeaderView,
    QPlainTextEdit,
    QTabWidget,
    QTextEdit,
)

from hwsched.desktop.frame.places import PLACES
from hwsched.desktop.grid.table import GridTable
from hwsched.desktop.looks.tokens import wide
from hwsched.desktop.opening.differences import Differences
from hwsched.desktop.widgets.empty import Empty, empty_place, empty_rect
from hwsched.desktop.window import Window
from hwsched.model.project import create_project
from tests.desktop.conftest import empty_words, idle
from tests.desktop.test_access import inside


@pytest.fixture
def new_yard(qtbot, tmp_path):
    """The window with a project that has nothing in it."""
    with create_project(str(tmp_path / "new.hwsched"), "New Yard") as project:
        path = project.path
    window = Window("A. Quay")
    qtbot.addWidget(window)
    window.resize(1366, 768)
    window.show()
    window.project.open_project(str(path))
    idle(qtbot, window)
    return window


def said_of_nothing(view):
    """What a list says in the place of its lines; None where it has lines, or is no list of a person's."""
    if isinstance(view, QHeaderView) or inside(view, (QComboBox, QAbstractItemView)):
        return None
    if isinstance(view, (QPlainTextEdit, QTextEdit)):
        return None if view.toPlainText() else view.placeholderText()
    if view.model() is None or view.model().rowCount():
        return None
    if isinstance(view, GridTable):
        return view.empty
    return empty_words(view)


def empty_boxes(window, place):
    """Lists in sight without a line and without a word."""
    kinds = (QAbstractItemView, QPlainTextEdit, QTextEdit)
    for view in (each for kind in kinds for each in window.findChildren(kind)):
        said = said_of_nothing(view) if view.isVisibleTo(window) else None
        if said is not None and not said.strip():
            yield f"{place}: {type(view).__name__} {view.accessibleName()!r}"


def pages_of(window):
    """Turn to each page of what is in sight, one after the other."""
    yield
    for tabs in window.findChildren(QTabWidget):
        if tabs.isVisibleTo(window):
            for at in range(tabs.count()):
                tabs.setCurrentIndex(at)
                yield
            tabs.setCurrentIndex(0)


def test_no_place_of_a_new_project_is_an_empty_box(new_yard, qtbot):
    found, seen = [], set()
    for place in PLACES:
        new_yard.frame.go(place.name)
        idle(qtbot, new_yard)
        seen.add(new_yard.frame.trail.here.place)
        for _page in pages_of(new_yard):
            found += empty_boxes(new_yard, place.name)
    assert len(seen) >= 15
    assert not found, "\n".join(dict.fromkeys(found))


def test_no_place_of_a_project_with_openings_is_an_empty_box(at_work, qtbot):
    at_work.openings.select_openings(list(at_work.frame.state.workspace.checked)[:1])
    found = []
    for place in PLACES:
        at_work.frame.go(place.name)
        idle(qtbot, at_work)
        for _page in pages_of(at_work):
            found += empty_boxes(at_work, place.name)
    assert not found, "\n".join(dict.fromkeys(found))


def test_words_go_with_the_first_line_and_come_back_with_the_last(qtbot):
    from PySide6.QtWidgets import QListWidget

    view = QListWidget()
    qtbot.addWidget(view)
    words = Empty(view, "Nothing yet.")
    assert words.isVisibleTo(view)
    view.addItem("one")
    assert not words.isVisibleTo(view)
    view.clear()
    assert words.isVisibleTo(view)
    view.resize(321, 200)
    view.show()
    assert words.geometry() == view.viewport().rect()
    words.say("")
    assert not words.isVisibleTo(view)


def test_words_of_an_empty_place_stand_in_its_midst_in_lines_that_are_read_at_ease():
    words = "No openings yet. Take in a survey, or add one; each of them stands here with its state. " * 2
    for across, high in ((1800, 900), (1800, 200), (300, 500)):
        room = QRect(7, 9, across, high)
        place = empty_rect(room, words)
        assert room.contains(place)
        assert place.width() <= wide(60)
        assert abs(place.center().x() - room.center().x()) <= 1
        # The eye rests somewhat above the midst.
        assert 0 < place.top() - room.top() < room.bottom() - place.bottom()


def test_the_first_sentence_of_an_empty_place_is_larger_and_one_alone_is_quiet(qtbot):
    def ink(words):
        """Heights of the rows that have ink, and the darkest of it."""
        made = empty_place(words)
        qtbot.addWidget(made)
        made.resize(600, 300)
        image = made.grab().toImage()
        dark = [[image.pixelColor(x, y).lightness() for x in range(600)] for y in range(300)]
        rows = [y for y, row in enumerate(dark) if min(row) < max(row) - 60]
        return rows, min(map(min, dark))

    alone, quiet = ink("HHHH.")
    several, strong = ink("HHHH. HHHH.")
    lines = [n for n, y in enumerate(several) if n and y > several[n - 1] + 1]
    assert len(lines) == 1
    first, second = several[: lines[0]], several[lines[0] :]
    assert len(first) > len(second) == len(alone)
    assert strong < quiet


def test_a_text_that_is_empty_says_so_in_the_midst_as_a_list_does(new_yard, qtbot):
    for name, words in (("office", "Documents look as by default."), ("journal", "Nothing was changed past")):
        new_yard.frame.go(name)
        idle(qtbot, new_yard)
        text = new_yard.frame.pages.widgets[name].text
        assert text.toPlainText() == ""
        assert text.placeholderText().startswith(words)
        image = text.viewport().grab().toImage()
        ground = image.pixelColor(2, 2)
        rows = [y for y in range(image.height()) if any(image.pixelColor(x, y) != ground for x in range(image.width()))]
        assert image.height() // 5 < rows[0] < image.height() // 2


def test_what_if_is_not_scrolled_where_titles_have_room_in_large_letters(qtbot):
    tree = Differences("Nothing yet.")
    qtbot.addWidget(tree)
    tree.show()
    header = tree.header()
    titles = sum(header.sectionSizeHint(column) for column in range(tree.columnCount()))
    usual = sum(tree.columnWidth(column) for column in range(tree.columnCount()))
    for width in (usual + 100, (usual + titles) // 2, titles + 20):
        tree.resize(width, 200)
        QApplication.processEvents()
        assert tree.horizontalScrollBar().maximum() == 0
        assert all(tree.columnWidth(n) >= header.sectionSizeHint(n) for n in range(tree.columnCount()))
