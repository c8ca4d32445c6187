"""The desktop by real clicks and keys: open, search, choose, edit, undo, fit, print."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLineEdit

from hwsched.desktop.survey.register import COLUMNS, Register
from hwsched.desktop.window import Window
from hwsched.operations.findings.checked import Checked
from hwsched.operations.project.history import history
from hwsched.rules import rule_named
from tests.desktop.conftest import idle


@pytest.fixture
def window(qtbot, project_file):
    shown = Window("tester")
    qtbot.addWidget(shown)
    shown.show()
    shown.project.open_project(str(project_file))
    qtbot.waitUntil(lambda: not shown.frame.jobs.busy and shown.openings.register.total() > 20, timeout=20000)
    yield shown
    shown.close()


def choose(window, mark):
    for row in range(window.openings.register.rowCount()):
        if window.openings.register.data(window.openings.register.index(row, 0)) == mark:
            window.openings.table.selectRow(row)
            return row
    raise AssertionError(mark)


def fact_cell(window, label):
    items = window.sheet.facts.findItems(label, Qt.MatchFlag.MatchExactly | Qt.MatchFlag.MatchRecursive, 0)
    assert items
    return items[0]


def test_nothing_open_offers_three_ways_to_begin(qtbot):
    shown = Window("tester")
    qtbot.addWidget(shown)
    shown.show()
    assert shown.stack.currentWidget() is shown.welcome
    assert not shown.fitting.act_fit.isEnabled()
    shown.close()


def test_search_state_and_place_narrow_the_register(window, qtbot):
    total = window.openings.register.total()
    qtbot.keyClicks(window.openings.search, "glass annexe gallery")
    qtbot.waitUntil(lambda: window.openings.register.rowCount() < total, timeout=3000)
    assert window.openings.count.text() == f"{window.openings.register.rowCount()} of {total}"
    window.openings.search.clear()
    qtbot.waitUntil(lambda: window.openings.register.rowCount() == total, timeout=3000)
    window.openings.state.setCurrentText("To measure")
    qtbot.waitUntil(lambda: 0 < window.openings.register.rowCount() < total, timeout=3000)
    assert {
        window.openings.register.data(window.openings.register.index(r, 1))
        for r in range(window.openings.register.rowCount())
    } == {"To measure"}
    window.openings.state.setCurrentIndex(0)
    building = window.openings.places.topLevelItem(0).child(0)
    window.openings.places.setCurrentItem(building)
    assert window.openings.register.rowCount() == int(building.text(1))


def test_the_chosen_opening_shows_facts_parts_findings_and_drawing(window):
    choose(window, "M004")
    assert window.sheet.title.text().startswith("M004")
    assert window.sheet.parts.rowCount() > 3
    assert fact_cell(window, "Backset").text(1)
    image = window.sheet.view.grab().toImage()
    colours = {image.pixel(x, y) for x in range(0, image.width(), 5) for y in range(0, image.height(), 5)}
    assert len(colours) > 8


def test_an_edit_is_checked_at_once_and_undone(window, qtbot):
    choose(window, "M004")
    before = window.sheet.state.text()
    assert "Fits" in before
    item = fact_cell(window, "Leaf thickness")
    window.sheet.pages.show_page(window.sheet.facts)
    window.sheet.facts.editItem(item, 1)
    editor = window.sheet.facts.findChild(QLineEdit)
    editor.clear()
    qtbot.keyClicks(editor, "3 1/2")
    qtbot.keyClick(editor, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: window.sheet.state.text() != before, timeout=5000)
    assert fact_cell(window, "Leaf thickness").text(1) == '3 1/2"'
    window.history.act_undo.trigger()
    assert fact_cell(window, "Leaf thickness").text(1) == '1 3/4"'
    assert window.sheet.state.text() == before


def test_a_wrong_value_is_refused_with_its_cure_and_nothing_changes(window, qtbot):
    choose(window, "M004")
    item = fact_cell(window, "Leaf thickness")
    shown, stands = item.text(1), window.frame.state.checked.given.leaves[0].thickness_mm
    window.sheet.edited.emit("leaf", window.frame.state.checked.given.leaves[0].id, "thickness_mm", "thick")
    item = fact_cell(window, "Leaf thickness")
    assert item.text(1) == "thick", "what was typed is not thrown away"
    assert "thick" in item.child(0).text(0)
    assert item.child(0).text(0).endswith(f"{shown} stands.")
    assert window.frame.state.checked.given.leaves[0].thickness_mm == stands


def test_fit_and_print_run_off_the_screens_thread(window, qtbot, tmp_path):
    qtbot.keyClicks(window.openings.search, "M00")
    qtbot.waitUntil(lambda: 0 < window.openings.register.rowCount() < 10, timeout=3000)
    window.fitting.act_fit.trigger()
    assert window.frame.jobs.busy
    assert not window.fitting.act_fit.isEnabled()
    qtbot.waitUntil(lambda: not window.frame.jobs.busy, timeout=20000)
    choose(window, "M004")
    window.release.print_documents(["packets", "pick-list"], "chosen", tmp_path, "a4")
    qtbot.waitUntil(lambda: not window.frame.jobs.busy, timeout=20000)
    assert (tmp_path / "packets" / "M004.pdf").is_file()
    assert (tmp_path / "pick-list.xlsx").is_file()


def test_a_survey_is_previewed_before_it_is_taken_in(window, qtbot):
    from hwsched.paths import SAMPLE

    window.survey.take_survey(SAMPLE / "survey.xlsx")
    qtbot.waitUntil(lambda: window.survey.preview is not None and window.survey.preview.isVisible(), timeout=20000)
    assert not window.survey.preview.take.isEnabled()
    titles = {window.survey.preview.pages.tabText(n) for n in range(window.survey.preview.pages.count())}
    assert any(title.startswith("Refused") for title in titles)
    window.survey.preview.reject()


def test_the_register_stays_in_step_with_its_columns(window):
    row = [window.openings.register.data(window.openings.register.index(0, column)) for column in range(len(COLUMNS))]
    assert all(isinstance(text, str) for text in row)
    window.openings.table.sortByColumn(0, Qt.SortOrder.AscendingOrder)
    marks = [
        window.openings.register.data(window.openings.register.index(r, 0))
        for r in range(window.openings.register.rowCount())
    ]
    assert marks.index("A-02") < marks.index("A-10")


@pytest.mark.usefixtures("sample_file")
def test_what_is_selected_stays_selected_when_the_register_is_sorted(window):
    """The next command acts on the same openings, wherever they now stand."""
    state, table = window.frame.state, window.openings.table
    ids = window.openings.register.shown_ids()
    window.openings.select_openings([ids[0], ids[5], ids[90]])
    shown = state.chosen
    table.sortByColumn(4, Qt.SortOrder.DescendingOrder)
    rows = [window.openings.register.id_at(index.row()) for index in table.selectionModel().selectedRows()]
    assert sorted(rows) == sorted([ids[0], ids[5], ids[90]])
    assert sorted(state.ids) == sorted(rows)
    assert state.ids == tuple(each for each in window.openings.register.shown_ids() if each in rows), "in its order"
    assert state.chosen == shown
    window.openings.register.narrow(words="no such words")
    assert state.ids == ()


def test_findings_are_counted_in_words(window):
    texts = {
        window.openings.register.data(
            window.openings.register.index(r, window.openings.register.place_of("result.findings"))
        )
        for r in range(window.openings.register.rowCount())
    }
    assert any(text.startswith("1 error") for text in texts)
    assert not any("1 notes" in text or " err " in text for text in texts)


def test_ten_thousand_openings_are_filtered_without_asking_for_every_cell(window, qtbot):
    one = next(iter(window.frame.state.workspace.checked.values()))
    register = Register()
    register.load([Checked(one.given, one.fit, one.findings)] * 10_000)
    calls = 0
    real = register.data

    def counted(*arguments):
        nonlocal calls
        calls += 1
        return real(*arguments)

    register.data = counted
    register.narrow(words=one.given.opening.mark)
    assert register.rowCount() == 10_000
    assert calls == 0


def drag(qtbot, window, right_mm, up_mm):
    """Drag the unit by the mouse; returns what is said while it is held."""
    from PySide6.QtCore import QPoint
    from PySide6.QtTest import QTest

    view = window.sheet.view
    view.grab()
    # From near, since from afar a pixel is many millimetres.
    QTest.mouseDClick(
        view,
        Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
        view.place_of("unit", "inside").toPoint(),
    )
    start = view.place_of("unit", "inside").toPoint()
    px = view.camera.factor
    end = start + QPoint(round(right_mm * px), round(-up_mm * px))
    QTest.mousePress(view, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, start)
    QTest.mouseMove(view, end)
    said = window.sheet.state.text()
    QTest.mouseRelease(view, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, end)
    return said


def test_the_unit_is_dragged_to_a_place_that_fits_and_released(window, qtbot):
    choose(window, "M004")
    before = window.frame.state.workspace.checked[window.frame.state.chosen].fit.placement
    said = drag(qtbot, window, 0, 25)
    assert said.startswith("Fits here")
    assert "to spare" in said
    after = window.frame.state.workspace.checked[window.frame.state.chosen].fit.placement
    assert after.source == "by-hand"
    assert after.y_mm == pytest.approx(before.y_mm + 25, abs=12)
    window.history.act_undo.trigger()
    assert window.frame.state.workspace.checked[window.frame.state.chosen].fit.placement == before


def test_a_place_that_does_not_fit_is_refused_with_the_reason(window, qtbot):
    choose(window, "M004")
    before = window.frame.state.workspace.checked[window.frame.state.chosen].fit.placement
    said = drag(qtbot, window, 0, -60)
    assert said.startswith("Does not fit here")
    assert window.sheet.state.text().startswith("Refused, the unit stays where it was")
    assert window.frame.state.workspace.checked[window.frame.state.chosen].fit.placement == before


def test_an_opening_and_an_item_are_added_removed_and_brought_back(window, qtbot):
    total = window.openings.register.total()
    window.opening.add_opening("NEW-1")
    assert window.openings.register.total() == total + 1
    assert window.sheet.title.text().startswith("NEW-1")
    window.opening.add_item("closer")
    assert window.sheet.facts.findItems("Closer", Qt.MatchFlag.MatchExactly, 0)
    window.opening.remove_openings(window.frame.state.ids)
    assert window.openings.register.total() == total
    window.history.act_undo.trigger()
    assert window.openings.register.total() == total + 1
    window.opening.add_opening("NEW-1")
    assert "already" in window.frame.telling.told.text()
    window.frame.telling.told.close()


def test_a_field_of_our_own_is_defined_typed_searched_and_printed(window, qtbot, tmp_path):
    from openpyxl import load_workbook

    window.project.define_field("Key group")
    qtbot.waitUntil(lambda: not window.frame.jobs.busy, timeout=20000)
    choose(window, "M004")
    assert fact_cell(window, "Key group").text(1) == "unknown"
    window.sheet.edited.emit("opening", window.frame.state.chosen, "key_group", "AA1-north")
    assert fact_cell(window, "Key group").text(1) == "AA1-north"
    qtbot.keyClicks(window.openings.search, "aa1-north")
    qtbot.waitUntil(lambda: window.openings.register.rowCount() == 1, timeout=3000)
    window.release.print_documents(["schedule"], "shown", tmp_path, "letter")
    qtbot.waitUntil(lambda: not window.frame.jobs.busy, timeout=20000)
    texts = [str(c.value) for sheet in load_workbook(tmp_path / "schedule.xlsx") for row in sheet for c in row]
    assert "Key group" in texts
    assert "AA1-north" in texts


def test_a_rule_is_switched_off_and_a_limit_changed_in_the_settings(window, qtbot):

    window.project.ask_settings()
    dialog = window.project.settings
    rule = dialog.rules.findItems(
        rule_named("coin-cell-drain").title, Qt.MatchFlag.MatchContains | Qt.MatchFlag.MatchRecursive, 0
    )[0]
    rule.setCheckState(0, Qt.CheckState.Unchecked)
    trim = dialog.rules.findItems(
        rule_named("trim-clear").title, Qt.MatchFlag.MatchContains | Qt.MatchFlag.MatchRecursive, 0
    )[0]
    trim.child(0).setText(1, "wide")
    with pytest.raises(ValueError, match="trim-clear"):
        dialog.answer()
    trim.child(0).setText(1, "9")
    dialog.accept()
    qtbot.waitUntil(lambda: not window.frame.jobs.busy, timeout=20000)
    settings = next(iter(window.frame.state.workspace.checked.values())).given.settings
    assert settings.rules_off == {"coin-cell-drain"}
    assert settings.limits == {"trim-clear.clearance_mm": 9.0}
    window.history.act_undo.trigger()
    qtbot.waitUntil(lambda: not window.frame.jobs.busy, timeout=20000)
    assert not next(iter(window.frame.state.workspace.checked.values())).given.settings.rules_off


def take_back(qtbot, page, line):
    index = page.model.index(line, 0)
    page.grid.table.scrollTo(index)
    qtbot.mouseClick(
        page.grid.table.viewport(), Qt.MouseButton.LeftButton, pos=page.grid.table.visualRect(index).center()
    )
    qtbot.mouseClick(page.back, Qt.MouseButton.LeftButton)


def test_history_takes_back_an_older_step_or_says_why_not(window, qtbot):
    choose(window, "M004")
    window.sheet.edited.emit("opening", window.frame.state.chosen, "notes", "first")
    window.sheet.edited.emit("opening", window.frame.state.chosen, "wave", "2")
    window.history.show_history()
    page = window.frame.pages.widgets["history"]
    take_back(qtbot, page, 1)
    assert fact_cell(window, "Notes").text(1) == "unknown"
    assert fact_cell(window, "Wave").text(1) == "2"
    take_back(qtbot, page, page.model.row_of_id("2"))
    assert "depend" in window.frame.telling.told.text()
    window.frame.telling.told.close()


def test_forms_and_catalogue_are_written(window, tmp_path, monkeypatch):
    from PySide6.QtWidgets import QFileDialog

    survey = window.survey.ask_form
    for ask, name in ((survey, "form.xlsx"), (survey, "form.pdf"), (window.parts.ask_export, "cat.xlsx")):
        monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_, name=name: (str(tmp_path / name), ""))
        ask()
        assert (tmp_path / name).is_file()


def test_the_time_zone_is_a_setting_and_a_wrong_one_is_told(at_work, qtbot):
    project = at_work.frame.state.workspace.project
    at_work.project.act_settings.trigger()
    dialog = at_work.project.settings
    assert dialog.zone.text() == (project.time_zone or "")
    dialog.zone.setText("Pacific/Kiritimati")
    dialog.accept()
    idle(qtbot, at_work)
    assert project.time_zone == "Pacific/Kiritimati"
    # +14:00 all year round (IANA time zone database).
    assert history(project)[-1].when.endswith("+14:00")
    at_work.project.act_settings.trigger()
    at_work.project.settings.zone.setText("Mars")
    at_work.project.settings.accept()
    idle(qtbot, at_work)
    assert "there is no 'Mars'" in at_work.frame.telling.told.text()
    at_work.frame.telling.told.close()
    assert project.time_zone == "Pacific/Kiritimati"
