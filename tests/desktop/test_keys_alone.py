"""Where the keyboard goes, and what is told of what it did, for whoever has no mouse."""

import pytest
from PySide6.QtCore import QRect, Qt, QTimer
from PySide6.QtGui import QGuiApplication, QImage, QPainter
from PySide6.QtWidgets import QApplication, QComboBox, QInputDialog, QStyleOptionViewItem

from hwsched.desktop.jobs.jobs import Jobs
from hwsched.desktop.looks.tokens import FOCUS
from hwsched.desktop.project import following
from hwsched.operations.project.history import history
from tests.desktop.conftest import checked_of, choose, empty_words, idle, look_put_on

KEY = Qt.Key
CONTROL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier


def press(qtbot, key, modifier=Qt.KeyboardModifier.NoModifier):
    """Press a key where the keyboard is."""
    qtbot.keyClick(QApplication.focusWidget(), key, modifier)


@pytest.fixture
def grid(at_work):
    at_work.activateWindow()
    return at_work.openings.grid


def column_of(qtbot, grid, mark, name):
    """Come to a cell of the register by keys."""
    choose(grid.window(), mark)
    grid.table.setFocus()
    while grid.table.currentIndex().column() != grid.model.place_of(name):
        before = grid.table.currentIndex().column()
        press(qtbot, KEY.Key_Right if before < grid.model.place_of(name) else KEY.Key_Left)
        assert grid.table.currentIndex().column() != before


def told(window):
    return window.statusBar().currentMessage()


@pytest.mark.parametrize("place", ["openings", "catalogue", "findings", "power"])
def test_who_comes_to_a_list_is_in_its_rows(at_work, qtbot, place):
    at_work.activateWindow()
    at_work.frame.go("today")
    at_work.frame.go(place)
    page = at_work.openings if place == "openings" else at_work.frame.pages.widgets[place]
    assert QApplication.focusWidget() is (page.tree if place == "power" else page.grid.table)


def test_tab_still_comes_to_what_stands_before_the_list(at_work, qtbot):
    at_work.activateWindow()
    for place, before in (("openings", at_work.openings.search), ("catalogue", None)):
        at_work.frame.go(place)
        field = before or at_work.frame.pages.widgets[place].search
        for _ in range(60):
            press(qtbot, KEY.Key_Tab)
            if QApplication.focusWidget() is field:
                break
        assert QApplication.focusWidget() is field


@pytest.mark.parametrize("place", ["calculators", "revisions", "documents", "rulebook"])
def test_who_comes_to_a_page_begins_where_it_begins_to_the_eye(at_work, qtbot, qapp, place):
    at_work.resize(1366, 768)
    at_work.activateWindow()
    at_work.frame.go("today")
    at_work.frame.go(place)
    page, here = at_work.centre.page, QApplication.focusWidget()
    assert page.isAncestorOf(here)
    qapp.processEvents()
    at = here.mapTo(page, here.rect().topLeft())
    assert at.x() < page.width() / 4
    assert at.y() < page.height() / 4


def test_tab_comes_to_the_place_where_one_is_on_the_rail(at_work, qtbot):
    at_work.activateWindow()
    rail = at_work.rail
    for place in ("power", "openings", "calculators"):
        at_work.frame.go(place)
        for _ in range(60):
            press(qtbot, KEY.Key_Tab)
            if rail.isAncestorOf(QApplication.focusWidget()):
                break
        assert QApplication.focusWidget() is rail.buttons["today" if place == "calculators" else place]


def test_tab_leads_from_the_register_to_what_is_chosen_beside_it(at_work, qtbot, grid):
    choose(at_work, "M004")
    grid.table.setFocus()
    for _ in range(3):
        press(qtbot, KEY.Key_Tab)
        if at_work.inspector.isAncestorOf(QApplication.focusWidget()):
            break
    assert at_work.inspector.isAncestorOf(QApplication.focusWidget())
    for _ in range(3):
        press(qtbot, KEY.Key_Tab, SHIFT)
    assert at_work.openings.isAncestorOf(QApplication.focusWidget())


@pytest.mark.parametrize("key", [KEY.Key_Escape, KEY.Key_Down])
def test_the_line_for_asking_is_left_for_the_rows(at_work, qtbot, grid, key):
    total = grid.model.rowCount()
    grid.table.setFocus()
    press(qtbot, KEY.Key_F, CONTROL)
    line = at_work.openings.search
    assert QApplication.focusWidget() is line
    qtbot.keyClicks(line, "M00")
    while not line.offers.isHidden():
        press(qtbot, KEY.Key_Escape)
    press(qtbot, key)
    assert QApplication.focusWidget() is grid.table
    assert line.text() == "M00"
    assert 0 < grid.model.rowCount() < total


def test_what_a_step_did_is_told_be_it_taken_back_or_of_many(at_work, qtbot, grid):
    column_of(qtbot, grid, "M004", "opening.rating")
    QGuiApplication.clipboard().setText("20 min\nthick\n")
    press(qtbot, KEY.Key_Down, SHIFT)
    press(qtbot, KEY.Key_V, CONTROL)
    assert "1 cannot be taken and is left out." in grid.changes.said.text()
    press(qtbot, KEY.Key_Return)
    idle(qtbot, at_work)
    number = history(at_work.frame.state.workspace.project)[-1].number
    assert told(at_work).startswith(f"Step {number}: Edit fire rating of ")
    press(qtbot, KEY.Key_Z, CONTROL)
    idle(qtbot, at_work)
    assert told(at_work).startswith(f"Step {number + 1}: Take back step {number}: Edit fire rating of ")


def test_what_was_told_outlives_the_reading_that_follows_it(at_work, qtbot, grid, monkeypatch):
    """A step of very many openings is followed by a job that reads all of them."""
    monkeypatch.setattr(following, "_HANDFUL", 3)
    column_of(qtbot, grid, "M004", "opening.rating")
    press(qtbot, KEY.Key_A, CONTROL)
    QGuiApplication.clipboard().setText("20 min")
    press(qtbot, KEY.Key_V, CONTROL)
    began = []
    at_work.frame.jobs.started.connect(began.append)
    press(qtbot, KEY.Key_Return)
    idle(qtbot, at_work)
    assert began == ["Checking"], "what was touched is read by a job"
    assert "Edit fire rating of " in told(at_work)


def test_nothing_is_painted_beside_a_marked_cell(at_work, qtbot, qapp, grid):
    """What is painted past a cell stays there when the mark goes."""
    with look_put_on(qapp, at_work.frame.preferences):
        column_of(qtbot, grid, "M004", "opening.hand")
        press(qtbot, KEY.Key_Right, SHIFT)
        first, last = grid.table.marked()
        assert last == first + 1
        row = grid.table.currentIndex().row()
        inside = []
        for column in (first, last):
            option = QStyleOptionViewItem()
            option.initFrom(grid.table)
            option.widget, option.rect = grid.table, QRect(20, 20, 80, 28)
            seen = QImage(120, 68, QImage.Format.Format_ARGB32)
            seen.fill(0)
            painter = QPainter(seen)
            grid.delegates[0].paint(painter, option, grid.model.index(row, column))
            painter.end()
            beside = [
                (x, y)
                for x in range(seen.width())
                for y in range(seen.height())
                if not option.rect.contains(x, y) and seen.pixel(x, y)
            ]
            assert not beside
            inside.append([seen.pixel(x, 24) for x in (20, 20 + FOCUS - 1, 99)])
        assert inside[0][0] == inside[0][1] == inside[1][2], "the edges themselves are there"


def test_why_no_row_is_there_is_read_beside_the_columns_that_stay(at_work, qtbot, qapp, grid):
    with look_put_on(qapp, at_work.frame.preferences):
        at_work.resize(1366, 768)
        column_of(qtbot, grid, "M004", "result.state")
        grid.do("freeze")
        at_work.openings.search.setFocus()
        qtbot.keyClicks(at_work.openings.search, "zzz")
        qapp.processEvents()

        def written(left, right):
            seen = grid.table.viewport().grab().toImage()
            ground = seen.pixel(seen.width() - 4, seen.height() - 4)
            return any(seen.pixel(x, y) != ground for x in range(left, right) for y in range(seen.height()))

        beside = grid.table.frozen.viewport().width()
        assert beside > 0
        # Not over the edge of what stays: there the words would be cut.
        assert not written(0, beside + 4)
        assert written(beside + 4, grid.table.viewport().width())


def test_who_opens_an_opening_of_a_list_is_taken_to_it(at_work, qtbot):
    at_work.activateWindow()
    at_work.frame.go("catalogue")
    page = at_work.frame.pages.widgets["catalogue"]
    press(qtbot, KEY.Key_F, CONTROL)
    fit = checked_of(at_work, "M004").fit
    qtbot.keyClicks(page.search, next(each.part for each in fit.parts if each.role == "unit"))
    press(qtbot, KEY.Key_Tab)
    press(qtbot, KEY.Key_Down)
    page.pages.setCurrentWidget(page.use)
    qtbot.waitUntil(lambda: page.use.tree.topLevelItemCount() > 0)
    idle(qtbot, at_work)
    page.use.tree.setFocus()
    press(qtbot, KEY.Key_Home)
    press(qtbot, KEY.Key_Down)
    mark = page.use.tree.currentItem().text(0)
    press(qtbot, KEY.Key_Return)
    assert at_work.frame.trail.here.place == "openings"
    assert at_work.frame.state.checked.given.opening.mark == mark
    assert QApplication.focusWidget() is at_work.openings.grid.table


def test_a_unit_that_is_moved_by_arrows_is_chosen(at_work, qtbot):
    choose(at_work, "M004")
    at_work.activateWindow()
    at_work.sheet.pages.show_page(at_work.sheet.drawing)
    drawing = at_work.sheet.drawing.view
    drawing.setFocus()
    assert not drawing.state.chosen
    press(qtbot, KEY.Key_Up)
    assert drawing.move_ is not None
    assert drawing.state.chosen_thing().movable
    assert at_work.sheet.drawing.form.isEnabled()
    press(qtbot, KEY.Key_Escape)
    assert drawing.move_ is None


def test_label_sheets_are_said_as_on_their_packs(at_work, qtbot):
    said = []

    def look():
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, QInputDialog)
        box = dialog.findChild(QComboBox)
        said.extend(box.itemText(at) for at in range(box.count()))
        qtbot.keyClick(dialog, KEY.Key_Escape)

    QTimer.singleShot(300, look)
    at_work.frame.commands["labels"].act.trigger()
    assert said[0].startswith("A4, 8 labels of ")
    assert any(each.startswith("Letter, 30 labels of ") for each in said)
    assert len(said) == len(set(said))


def test_a_button_that_its_own_job_switches_off_has_the_keyboard_again(at_work, qtbot):
    at_work.activateWindow()
    at_work.frame.go("siting")
    page = at_work.frame.pages.widgets["siting"]
    page.work.setFocus()
    press(qtbot, KEY.Key_Space)
    assert not page.work.isEnabled(), "it is working"
    qtbot.waitUntil(lambda: page.isAncestorOf(QApplication.focusWidget()))
    idle(qtbot, at_work)
    qtbot.waitUntil(lambda: QApplication.focusWidget() is page.work)


def test_a_button_that_stays_off_leaves_the_keyboard_on_its_page(at_work, qtbot):
    at_work.activateWindow()
    at_work.frame.go("siting")
    page = at_work.frame.pages.widgets["siting"]
    # As the last of the page, from which the keyboard would be sent out of it.
    page.take.setEnabled(True)
    page.take.setFocus()
    page.take.setEnabled(False)
    qtbot.waitUntil(lambda: page.isAncestorOf(QApplication.focusWidget()))


def test_a_cure_that_is_taken_leaves_the_keyboard_on_its_page(at_work, qtbot, monkeypatch):
    # As work that takes its time: buttons are switched off meanwhile.
    monkeypatch.setattr(Jobs, "patience_ms", 0)
    at_work.activateWindow()
    at_work.frame.go("findings")
    page = at_work.frame.pages.widgets["findings"]
    page.grid.table.setFocus()
    while not page.waive.isEnabled():
        press(qtbot, KEY.Key_Down)
    page.waive.setFocus()
    press(qtbot, KEY.Key_Space)
    assert QApplication.focusWidget() is page.waive_pane.reason
    qtbot.keyClicks(page.waive_pane.reason, "agreed")
    press(qtbot, KEY.Key_Return)
    idle(qtbot, at_work)
    for _ in range(5):
        QApplication.processEvents()
    assert not page.waive_pane.isVisible()
    assert page.isAncestorOf(QApplication.focusWidget())


def test_an_answer_of_nothing_is_said_in_the_place_of_its_lines(at_work, qtbot):
    at_work.frame.go("what-if")
    page = at_work.frame.pages.widgets["what-if"]
    assert "Work out" in empty_words(page.differences)
    choose(at_work, "M004")
    kind = page.question.kind
    kind.setFocus()
    press(qtbot, KEY.Key_Down)
    for button in (page.question.plus, page.work):
        button.setFocus()
        press(qtbot, KEY.Key_Space)
    idle(qtbot, at_work)
    qtbot.waitUntil(lambda: page.said.text().startswith("0 of 1"))
    assert empty_words(page.differences) == "No opening would be different."


def test_tab_comes_to_the_fields_of_a_calculator_and_not_to_what_holds_them(at_work, qtbot):
    at_work.activateWindow()
    at_work.frame.go("calculators")
    page = at_work.frame.pages.widgets["calculators"]
    page.names.setFocus()
    for _ in range(7):
        press(qtbot, KEY.Key_Down)
    lines = list(page.form.lines.values())
    assert len(lines) > 5
    been = []
    while QApplication.focusWidget() is not page.names or not been:
        press(qtbot, KEY.Key_Tab)
        been.append(QApplication.focusWidget())
        assert len(been) < 80
    assert {line.field for line in lines} <= set(been)
    assert page.form not in been
    hints = [line.field.placeholderText() or line.text() or line.field.currentText() for line in lines]
    assert "no where it is left out" in hints
    assert not [each for each in hints if "false" in each or "true" in each]
