"""Work by keys alone: focus stays where one works, and a key does what it says."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QComboBox, QLineEdit

from hwsched.desktop.frame.rail import Rail
from tests.desktop.conftest import choose, idle

DOWN, UP, TAB = Qt.Key.Key_Down, Qt.Key.Key_Up, Qt.Key.Key_Tab
F2, ENTER, ESCAPE = Qt.Key.Key_F2, Qt.Key.Key_Return, Qt.Key.Key_Escape
TOWARD_LOCK = Qt.Key.Key_Right
"""M004 is RHR: seen from inside, from which it is pushed, its hinges are on the left."""
FLAGS = Qt.MatchFlag.MatchExactly | Qt.MatchFlag.MatchRecursive


@pytest.fixture
def facts(at_work, qtbot):
    """The form of facts of M004, with the keyboard in it."""
    choose(at_work, "M004")
    at_work.activateWindow()
    form = at_work.sheet.facts
    at_work.sheet.pages.show_page(form)
    form.setFocus()
    return form


def go_to(form, label):
    form.setCurrentItem(form.findItems(label, FLAGS, 0)[0])


def test_f2_edits_and_the_focus_stays_in_the_form(at_work, qtbot, facts):
    go_to(facts, "Leaf thickness")
    qtbot.keyClick(facts, F2)
    editor = facts.findChild(QLineEdit)
    editor.selectAll()
    qtbot.keyClicks(editor, "1 7/8")
    with qtbot.waitSignal(editor.destroyed, timeout=5000):
        qtbot.keyClick(editor, ENTER)
    idle(qtbot, at_work)
    assert facts.currentItem().text(0) == "Leaf thickness"
    assert facts.currentItem().text(1) == '1 7/8"'
    assert QApplication.focusWidget() is facts
    shown = at_work.openings.register.rowCount()
    qtbot.keyClick(QApplication.focusWidget(), DOWN)
    assert at_work.openings.register.rowCount() == shown
    assert facts.currentItem().text(0) != "Leaf thickness"


def type_over(qtbot, form, words):
    qtbot.keyClick(form, F2)
    editor = form.findChild(QLineEdit)
    editor.selectAll()
    qtbot.keyClicks(editor, words)
    return editor


def test_a_refused_value_stays_beside_its_field_until_it_is_mended(at_work, qtbot, facts):
    go_to(facts, "Leaf thickness")
    stood, steps = facts.currentItem().text(1), at_work.frame.state.checked.base
    for words, shown, notes in (("1 3/4 thick", "1 3/4 thick", 1), ("thick", "thick", 1)):
        editor = type_over(qtbot, facts, words)
        with qtbot.waitSignal(editor.destroyed, timeout=5000):
            qtbot.keyClick(editor, ENTER)
        assert (facts.currentItem().text(1), facts.currentItem().childCount()) == (shown, notes)
    assert facts.currentItem().child(0).text(0).startswith("Not taken: ")
    assert at_work.frame.state.checked.base == steps
    choose(at_work, "M005")
    choose(at_work, "M004")
    go_to(facts, "Leaf thickness")
    assert facts.currentItem().text(1) == "thick", "it is there when one comes back"
    facts.setFocus()
    editor = type_over(qtbot, facts, "1 7/8")
    with qtbot.waitSignal(editor.destroyed, timeout=5000):
        qtbot.keyClick(editor, ENTER)
    idle(qtbot, at_work)
    assert (facts.currentItem().text(1), facts.currentItem().childCount()) == ('1 7/8"', 0)
    assert stood != '1 7/8"'


def test_a_command_given_while_typing_leaves_the_text(at_work, qtbot, facts):
    go_to(facts, "Leaf thickness")
    editor = type_over(qtbot, facts, "1 7/8")
    qtbot.keyClick(editor, Qt.Key.Key_F5)
    assert at_work.frame.jobs.busy
    idle(qtbot, at_work)
    assert editor.isVisible()
    assert editor.text() == "1 7/8"
    with qtbot.waitSignal(editor.destroyed, timeout=5000):
        qtbot.keyClick(editor, ENTER)
    idle(qtbot, at_work)
    assert facts.currentItem().text(1) == '1 7/8"'


def test_an_arrow_key_looks_at_the_next_word_and_enter_takes_one(at_work, qtbot, facts):
    go_to(facts, "Hand")
    before = facts.currentItem().text(1)
    steps = at_work.frame.state.checked.base
    qtbot.keyClick(facts, F2)
    box = facts.findChild(QComboBox)
    qtbot.keyClick(box, UP)
    assert box.currentText() != before
    assert at_work.frame.state.checked.base == steps
    with qtbot.waitSignal(box.destroyed, timeout=5000):
        qtbot.keyClick(box, ESCAPE)
    assert facts.currentItem().text(1) == before
    qtbot.keyClick(facts, F2)
    box = facts.findChild(QComboBox)
    qtbot.keyClick(box, UP)
    wanted = box.currentText()
    with qtbot.waitSignal(box.destroyed, timeout=5000):
        qtbot.keyClick(box, ENTER)
    idle(qtbot, at_work)
    assert facts.currentItem().text(1) == wanted


def test_tab_leaves_the_register(at_work, qtbot):
    at_work.activateWindow()
    table = at_work.openings.table
    table.setFocus()
    qtbot.keyClick(table, TAB)
    assert QApplication.focusWidget() is not table


def test_the_unit_is_moved_by_arrow_keys(at_work, qtbot):
    choose(at_work, "M004")
    at_work.activateWindow()
    view, place = at_work.sheet.view, at_work.frame.state.checked.fit.placement
    view.setFocus()
    said = at_work.sheet.state.text()
    qtbot.keyClick(view, Qt.Key.Key_Up)
    assert at_work.sheet.state.text() != said
    qtbot.keyClick(view, ESCAPE)
    assert at_work.sheet.state.text() == said
    for _ in range(2):
        qtbot.keyClick(view, TOWARD_LOCK)
    assert at_work.sheet.state.text().startswith("Fits here")
    qtbot.keyClick(view, ENTER)
    idle(qtbot, at_work)
    moved = at_work.frame.state.checked.given.placed
    assert (moved.x_mm, moved.y_mm) == pytest.approx((place.x_mm - 2.0, place.y_mm), abs=0.01)


def test_tab_goes_over_query_chips_and_views_as_they_are_seen(at_work, qtbot):
    at_work.resize(1366, 768)
    at_work.activateWindow()
    line = at_work.openings.ask.line
    qtbot.mouseClick(line, Qt.MouseButton.LeftButton)
    qtbot.keyClicks(line, "rating != none and leaf.material = wood")
    qtbot.keyClick(line, Qt.Key.Key_Return)
    assert line.hasFocus()
    qtbot.waitUntil(lambda: sum(each.isVisible() for each in at_work.openings.ask._buttons) == 2)
    grid, passed = at_work.openings.table, []
    for _ in range(14):
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
        passed.append(QApplication.focusWidget())
        if passed[-1] is grid:
            break
    assert passed[-1] is grid, "the list comes last"
    chips = [each for each in passed if each.accessibleName().startswith("Take away")]
    views = list(at_work.openings.narrowing.views.buttons.values())
    assert len(chips) == 2
    places = [each.mapTo(at_work, each.rect().center()) for each in passed[:-1]]
    # From row to row, and in a row from the left to the right.
    rows = [(at.y() // 12, at.x()) for at in places]
    assert rows == sorted(rows)
    assert [each for each in passed if each in views] == views


def test_one_fact_of_many_is_edited_by_keys_alone(at_work, qtbot):
    at_work.resize(1366, 768)
    at_work.activateWindow()
    grid = at_work.openings.table
    grid.setFocus()
    qtbot.keyClick(grid, Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)
    qtbot.keyClick(grid, Qt.Key.Key_E, Qt.KeyboardModifier.ControlModifier)
    pane = at_work.openings.grid.changes
    assert pane.field.hasFocus()
    # Back to which fact it is, and on again: value, what would change, and the buttons, never out of the pane.
    qtbot.keyClick(pane.field, Qt.Key.Key_Tab, Qt.KeyboardModifier.ShiftModifier)
    assert pane.fact.hasFocus()
    pane.fact.setCurrentText("Operations a day")
    qtbot.keyClick(pane.fact, Qt.Key.Key_Down)
    assert pane.field.hasFocus()
    for _ in range(4):
        assert pane.isAncestorOf(QApplication.focusWidget())
        if QApplication.focusWidget() is pane.leave:
            break
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
    assert QApplication.focusWidget() is pane.leave
    qtbot.keyClick(pane.leave, Qt.Key.Key_Escape)


def test_keys_go_along_to_a_page_from_wherever_they_were(at_work, qtbot):
    at_work.resize(1366, 768)
    at_work.activateWindow()
    rail = next(iter(at_work.findChildren(Rail)))
    # Walked over by arrows, the rail keeps the keys ...
    rail.buttons["openings"].setFocus()
    qtbot.keyClick(rail.buttons["openings"], Qt.Key.Key_Up)
    assert QApplication.focusWidget() is rail.buttons["survey"]
    # ... by any other way they come along into the page, and back.
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_F9)
    page = at_work.frame.pages.widgets["calculators"]
    assert page.isAncestorOf(QApplication.focusWidget())
    rail.buttons["survey"].setFocus()
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Left, Qt.KeyboardModifier.AltModifier)
    assert not rail.isAncestorOf(QApplication.focusWidget())
    rail.buttons["openings"].setFocus()
    field = at_work.field.line if hasattr(at_work.field, "line") else at_work.field
    qtbot.keyClick(at_work, Qt.Key.Key_K, Qt.KeyboardModifier.ControlModifier)
    qtbot.keyClicks(field, "siting")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: at_work.frame.trail.here.place == "siting")
    qtbot.waitUntil(lambda: at_work.frame.pages.widgets["siting"].isAncestorOf(QApplication.focusWidget()))


def test_a_part_that_is_found_is_chosen_in_the_catalogue(at_work, qtbot):
    at_work.resize(1366, 768)
    at_work.activateWindow()
    checked = next(iter(at_work.frame.state.workspace.checked.values()))
    numbers = sorted(checked.given.catalogue.parts)
    for number in (numbers[-1], numbers[len(numbers) // 2]):
        qtbot.keyClick(at_work, Qt.Key.Key_K, Qt.KeyboardModifier.ControlModifier)
        qtbot.keyClicks(at_work.field, number)
        qtbot.keyClick(at_work.field, Qt.Key.Key_Return)
        qtbot.waitUntil(lambda: at_work.frame.trail.here.place == "catalogue")
        page = at_work.frame.pages.widgets["catalogue"]
        qtbot.waitUntil(lambda page=page, number=number: page.heading.text().startswith(f"{number} "))
        assert page.grid.isAncestorOf(QApplication.focusWidget())
        # What narrows the list does not hide it the next time.
        page.search.setFocus()
        qtbot.keyClicks(page.search, "nothing is called so")
