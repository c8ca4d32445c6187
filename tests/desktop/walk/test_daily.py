"""What must hold whoever works, by mouse or by keys: things stay chosen, words stay typed, work stops, pages let go."""

import threading

import pytest
from PySide6.QtCore import QPoint
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QDialogButtonBox, QFileDialog, QInputDialog

from hwsched.desktop.jobs.jobs import Jobs
from hwsched.model.project import open_project
from hwsched.operations.findings import checking
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.project.history import history
from hwsched.operations.survey.editing import edit_fact_text
from tests.desktop.conftest import checked_of
from tests.desktop.walk.hands import CONTROL, KEY, LEFT, NONE, Mouse
from tests.desktop.walk.test_opening import fact, line_of

FACT = "Leaf thickness"


def leaving(thing):
    """Return what is filled once a widget is gone."""
    gone = []
    thing.destroyed.connect(lambda *_: gone.append(True))
    return gone


def marks(window):
    checked = window.frame.state.workspace.checked
    return [checked[each].given.opening.mark for each in window.frame.state.ids]


def sort_by_findings(hands, grid, mark):
    """By the heading, or by the menu of a cell."""
    if isinstance(hands, Mouse):
        header = grid.table.horizontalHeader()
        at = header.sectionViewportPosition(grid.model.place_of("result.findings"))
        QTest.mouseClick(header.viewport(), LEFT, NONE, QPoint(at + 30, header.height() // 2))
    else:
        table, index = line_of(hands.window, mark)
        hands.line(table, index.siblingAtColumn(grid.model.place_of("result.findings")))
        hands.menu(grid.table, "Sort upward")


def test_what_is_chosen_stays_so_through_order_and_search_and_removing_asks_by_name(hands, at_work):
    grid = at_work.openings.grid
    hands.line(*line_of(at_work, "B/1"))
    before = grid.model.shown_ids()
    sort_by_findings(hands, grid, "B/1")
    assert grid.model.shown_ids() != before
    assert marks(at_work) == ["B/1"]
    assert at_work.sheet.title.text().startswith("B/1")
    total = at_work.openings.register.total()
    # What a search hides is not taken by a command.
    hands.field(at_work.openings.search, "no such words anywhere")
    hands.key(KEY.Key_Escape)
    assert grid.model.rowCount() == 0
    assert at_work.openings.left.text().startswith("B/1 is selected and not in this view")
    assert not at_work.opening.act_remove.isEnabled(), "and what it would act on is out of sight"
    assert at_work.opening.removal is None
    hands.field(at_work.openings.search, "b/1")
    hands.key(KEY.Key_Escape)
    assert marks(at_work) == ["B/1"]
    hands.command("Remove openings")
    question = at_work.opening.removal
    assert question.text() == "Remove B/1 with all its facts?"
    hands.wake()
    hands.press(next(each for each in question.buttons() if each.text() == "Keep"))
    assert at_work.openings.register.total() == total


def test_words_find_what_is_said_and_not_what_is_denied(hands, at_work):
    register = at_work.openings.register
    for words, column, wanted in (("rated", "opening.rating", None), ("fits", "result.state", "Fits")):
        hands.field(at_work.openings.search, words)
        hands.qtbot.waitUntil(lambda words=words: register.words == words)
        place = register.place_of(column)
        found = {register.data(register.index(row, place)) for row in range(register.rowCount())}
        assert "Not rated" not in found
        assert wanted is None or found == {wanted}


def test_a_metric_project_is_begun_and_its_units_are_changed_later(hands, at_work, tmp_path):
    def named(asked):
        assert isinstance(asked, QFileDialog)
        hands.over(str(tmp_path / "metric.hwsched"))
        hands.key(KEY.Key_Return)

    hands.answer(named)
    hands.command("New project")
    dialog = at_work.project.beginning
    hands.wake()
    hands.press(dialog.systems.button(1))
    hands.press(dialog.findChild(QDialogButtonBox).button(QDialogButtonBox.StandardButton.Ok))
    hands.done()
    project = at_work.frame.state.workspace.project
    assert (project.length_style, project.bare_unit) == ("mm", "mm")

    def marked(asked):
        assert isinstance(asked, QInputDialog)
        hands.over("1")
        hands.key(KEY.Key_Return)

    hands.answer(marked)
    hands.command("Add opening")
    hands.done()
    hands.page(at_work.sheet.pages, "Facts")
    form = at_work.sheet.facts
    hands.line(form, fact(form, FACT))
    hands.key(KEY.Key_F2)
    hands.over("44.5")
    assert at_work.statusBar().currentMessage() == f"{FACT}: 44.5 mm", "how it is understood is said before it is taken"
    gone = leaving(QApplication.focusWidget())
    hands.key(KEY.Key_Return)
    hands.qtbot.waitUntil(lambda: bool(gone))
    hands.done()
    assert checked_of(at_work, "1").given.leaves[0].thickness_mm == 44.5
    hands.command("Settings and rules")
    settings = at_work.project.settings
    hands.wake()
    hands.box(settings.units.lengths, settings.units.lengths.itemText(settings.units.lengths.findData("fraction")))
    hands.box(settings.units.bare, settings.units.bare.itemText(settings.units.bare.findData("in")))
    assert "what is stored stays as it is" in settings.units.said.text()
    hands.press(settings.findChild(QDialogButtonBox).button(QDialogButtonBox.StandardButton.Ok))
    hands.done()
    assert (project.length_style, project.bare_unit) == ("fraction", "in")
    assert fact(form, FACT).data() == '1 3/4"'
    hands.line(form, fact(form, FACT))
    hands.edit("2")
    assert checked_of(at_work, "1").given.leaves[0].thickness_mm == pytest.approx(50.8)


def test_history_and_search_do_not_outlive_their_project(hands, at_work, tmp_path):
    hands.field(at_work.openings.search, "m004")
    hands.key(KEY.Key_Escape)
    hands.command("History")
    page = at_work.frame.pages.widgets["history"]
    gone = leaving(page)

    def named(asked):
        assert isinstance(asked, QFileDialog)
        hands.over(str(tmp_path / "other.hwsched"))
        hands.key(KEY.Key_Return)

    hands.answer(named)
    hands.command("New project")
    hands.wake()
    hands.press(at_work.project.beginning.findChild(QDialogButtonBox).button(QDialogButtonBox.StandardButton.Ok))
    hands.done()
    hands.qtbot.waitUntil(lambda: bool(gone))
    assert "history" not in at_work.frame.pages.widgets
    assert (at_work.openings.search.text(), at_work.openings.register.words) == ("", "")


def test_a_value_is_typed_refused_mended_and_outlives_a_command(hands, at_work):
    hands.line(*line_of(at_work, "M004"))
    hands.page(at_work.sheet.pages, "Facts")
    form, project = at_work.sheet.facts, at_work.frame.state.workspace.project
    steps, shown = len(history(project)), at_work.openings.register.rowCount()
    hands.line(form, fact(form, FACT))
    hands.edit("thick")
    refused = form.itemFromIndex(fact(form, FACT))
    assert (refused.text(1), refused.childCount()) == ("thick", 1)
    assert refused.child(0).text(0).startswith("Not taken: ")
    assert len(history(project)) == steps
    hands.line(form, fact(form, FACT))
    hands.key(KEY.Key_F2)
    hands.over("1 7/8")
    editor = QApplication.focusWidget()
    hands.key(KEY.Key_F5)
    assert at_work.frame.jobs.busy
    hands.done()
    assert (editor.isVisible(), editor.text()) == (True, "1 7/8"), "a command leaves what is being typed"
    gone = leaving(editor)
    hands.key(KEY.Key_Return)
    hands.qtbot.waitUntil(lambda: bool(gone))
    hands.done()
    assert fact(form, FACT).data() == '1 7/8"'
    # The keyboard stays where one works: the next key moves in the form and narrows nothing.
    assert QApplication.focusWidget() is form
    hands.key(KEY.Key_Down)
    assert at_work.openings.register.rowCount() == shown
    assert form.currentItem().text(0) != FACT


def test_a_word_is_looked_at_by_an_arrow_key_and_taken_by_return(hands, at_work):
    hands.line(*line_of(at_work, "M004"))
    hands.page(at_work.sheet.pages, "Facts")
    form, project = at_work.sheet.facts, at_work.frame.state.workspace.project
    before, steps = fact(form, "Hand").data(), len(history(project))
    for takes in (False, True):
        hands.line(form, fact(form, "Hand"))
        hands.key(KEY.Key_F2)
        box = QApplication.focusWidget()
        assert isinstance(box, QComboBox)
        gone = leaving(box)
        hands.key(KEY.Key_Up)
        wanted = box.currentText()
        assert wanted != before
        assert len(history(project)) == steps
        hands.key(KEY.Key_Return if takes else KEY.Key_Escape)
        hands.qtbot.waitUntil(lambda gone=gone: bool(gone))
        hands.done()
        assert fact(form, "Hand").data() == (wanted if takes else before)


def test_a_job_is_stopped_and_the_window_closes_while_one_runs(hands, at_work, monkeypatch):
    go, real = threading.Event(), checking.check_openings

    def waiting(*given, **named):
        assert go.wait(60)
        return real(*given, **named)

    monkeypatch.setattr(checking, "check_openings", waiting)
    try:
        hands.command("Check")
        assert at_work.frame.jobs.busy
        hands.press(at_work.status.stop)
        assert not at_work.status.stop.isEnabled()
        go.set()
        hands.done()
        assert at_work.frame.telling.told is None, "what a person wanted is no failure"
        go.clear()
        monkeypatch.setattr(Jobs, "closing_ms", 0)
        hands.command("Check")
        hands.command("Quit")
        assert at_work.isVisible()
        assert at_work.statusBar().currentMessage().endswith("It is closed as soon as it can be.")
    finally:
        go.set()
    hands.qtbot.waitUntil(lambda: not at_work.isVisible(), timeout=30_000)
    assert at_work.frame.state.workspace is None


def test_closed_pages_hear_nothing_and_cost_is_reckoned_once(hands, at_work):
    def close():
        hands.press(at_work.centre.leave) if isinstance(hands, Mouse) else hands.key(KEY.Key_W, CONTROL)

    def reckoned():
        return [each.title for each in at_work.frame.jobs.log.entries].count("Reckoning")

    for title, name in (("Site supplies", "siting"), ("Cost", "cost")):
        hands.command(title)
        hands.done()
        gone = leaving(at_work.frame.pages.widgets[name])
        close()
        hands.qtbot.waitUntil(lambda gone=gone: bool(gone))
        assert name not in at_work.frame.pages.widgets
    assert reckoned() == 1
    hands.command("Cost")
    hands.done()
    assert reckoned() == 1, "nothing has changed since"
    close()
    hands.command("Openings")
    hands.line(*line_of(at_work, "M004"))
    hands.page(at_work.sheet.pages, "Facts")
    form = at_work.sheet.facts
    hands.line(form, fact(form, FACT))
    hands.edit("1 7/8")
    assert at_work.frame.telling.told is None
    assert fact(form, FACT).data() == '1 7/8"'


@pytest.mark.parametrize("mine", [True, False])
def test_what_another_typed_meanwhile_is_a_question_with_both_values(hands, at_work, mine):
    hands.line(*line_of(at_work, "M004"))
    hands.page(at_work.sheet.pages, "Facts")
    form, leaf = at_work.sheet.facts, checked_of(at_work, "M004").given.leaves[0]
    hands.line(form, fact(form, FACT))
    with open_project(str(at_work.frame.state.workspace.project.path)) as other:
        edit_fact_text(other, "leaf", leaf.id, "thickness_mm", "1 7/8", who="ben")
    hands.edit("2")
    question = at_work.frame.telling.asked
    for words in (f"{FACT} of M004", 'you saw:\t1 3/4"', 'now:\t1 7/8" (ben, ', 'you want:\t2"'):
        assert words in question.text()
    hands.wake()
    hands.press(question.mine if mine else question.theirs)
    hands.done()
    shown = '2"' if mine else '1 7/8"'
    assert fact(form, FACT).data() == shown
    with open_project(str(at_work.frame.state.workspace.project.path)) as other:
        (again,) = check_openings(other, [checked_of(at_work, "M004").given.opening.id])
    assert again.given.leaves[0].thickness_mm == pytest.approx(50.8 if mine else 47.625)
