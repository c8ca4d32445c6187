"""Findings by real clicks and keys: waived, taken back, asked why, looked up in the rulebook."""

import pytest
from PySide6.QtCore import QDate, QPoint, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QAbstractItemView, QTreeWidgetItemIterator

from hwsched.desktop.findings.rulebook_window import RulebookWindow
from hwsched.desktop.findings.waivers_window import WaiversWindow
from hwsched.desktop.findings.why_window import WhyWindow
from hwsched.operations.findings.waivers import waivers
from hwsched.operations.project.reading_settings import settings_of
from tests.desktop.conftest import checked_of, choose, idle

LEFT = Qt.MouseButton.LeftButton


def click_line(qtbot, table, row):
    """Click the first cell of a line; a high one is brought to the top."""
    table.scrollToItem(table.item(row, 0), QAbstractItemView.ScrollHint.PositionAtTop)
    corner = table.visualItemRect(table.item(row, 0)).topLeft()
    qtbot.mouseClick(table.viewport(), LEFT, pos=corner + QPoint(6, 6))


def click_finding(qtbot, window, rule):
    """Click the line of a finding in the sheet."""
    page = window.sheet.findings_page
    window.sheet.pages.show_page(page)
    row = next(r for r, finding in enumerate(page._findings) if finding.rule == rule)
    click_line(qtbot, page.table, row)
    assert page.chosen().rule == rule
    return page


def press(qtbot, page, action):
    """Press the button of an action below a list."""
    button = next(each for each in action.associatedObjects() if each.metaObject().className() == "QToolButton")
    assert button.text() == action.text()
    qtbot.mouseClick(button, LEFT)


def waive(qtbot, window, reason, scope="opening", until=None):
    """Fill the dialog by keys and clicks and press its button."""
    dialog = window.findings.waiver
    assert not dialog.ok.isEnabled()
    qtbot.keyClicks(dialog.reason, reason)
    button = next(each for each in dialog.scopes.buttons() if each.objectName() == scope)
    button.click()
    if until is not None:
        dialog.ends.click()
        dialog.until.setDate(QDate.fromString(until, "yyyy-MM-dd"))
    qtbot.mouseClick(dialog.ok, LEFT)
    idle(qtbot, window)


def test_a_waived_finding_stays_marked_counted_and_comes_back(at_work, qtbot):
    choose(at_work, "M004")
    total = len(checked_of(at_work, "M004").findings)
    page = click_finding(qtbot, at_work, "case-offset-taken")
    assert page.act_waive in page.table.actions()
    assert not page.act_back.isEnabled()
    press(qtbot, page, page.act_waive)
    waive(qtbot, at_work, "grinder on site", until="2099-01-31")
    finding = next(f for f in checked_of(at_work, "M004").findings if f.rule == "case-offset-taken")
    assert finding.waived
    assert "tester" in finding.waived_by
    assert "2099-01-31" in finding.waived_by
    row = page.table.currentRow()
    assert page.table.item(row, 0).text() == "Note, waived"
    assert "grinder on site" in page.table.item(row, 1).text()
    assert page.table.item(row, 0).font().italic()
    assert at_work.sheet.pages.tabText(3) == f"Findings {total - 1} + 1 waived"
    shown = at_work.openings.register.row_of_id(at_work.frame.state.chosen)
    register = at_work.openings.register
    assert "1 waived" in register.data(register.index(shown, register.place_of("result.findings")))
    assert not page.act_waive.isEnabled()
    press(qtbot, page, page.act_back)
    assert not any(f.waived for f in checked_of(at_work, "M004").findings)
    assert not waivers(at_work.frame.state.workspace.project)
    at_work.history.act_undo.trigger()
    assert any(f.waived for f in checked_of(at_work, "M004").findings)
    at_work.history.act_undo.trigger()
    assert not any(f.waived for f in checked_of(at_work, "M004").findings)


@pytest.mark.usefixtures("sample_file")
def test_a_waiver_for_the_project_reaches_every_opening_and_undo_too(at_work, qtbot):
    choose(at_work, "M004")
    page = click_finding(qtbot, at_work, "case-offset-taken")
    having = {
        id_
        for id_, c in at_work.frame.state.workspace.checked.items()
        if any(f.rule == "case-offset-taken" for f in c.findings)
    }
    assert len(having) > 20
    press(qtbot, page, page.act_waive)
    assert str(len(having)) in at_work.findings.waiver.scopes.buttons()[2].text()
    waive(qtbot, at_work, "measured by the locksmith", scope="project")

    def waived():
        return {id_ for id_, c in at_work.frame.state.workspace.checked.items() if any(f.waived for f in c.findings)}

    assert waived() == having
    at_work.history.act_undo.trigger()
    idle(qtbot, at_work)
    assert not waived()


def test_a_waiver_without_a_reason_cannot_be_given_and_one_refused_keeps_the_dialog(at_work, qtbot, monkeypatch):
    choose(at_work, "M004")
    page = click_finding(qtbot, at_work, "case-offset-taken")
    press(qtbot, page, page.act_waive)
    dialog = at_work.findings.waiver
    qtbot.keyClicks(dialog.reason, "   ")
    assert not dialog.ok.isEnabled()
    dialog.until.setMinimumDate(QDate(2000, 1, 1))
    dialog.ends.click()
    dialog.until.setDate(QDate(2001, 1, 1))
    qtbot.keyClicks(dialog.reason, "late")
    qtbot.mouseClick(dialog.ok, LEFT)
    assert "over already" in at_work.frame.telling.told.text()
    at_work.frame.telling.told.close()
    assert dialog.isVisible()
    assert not waivers(at_work.frame.state.workspace.project)
    dialog.reject()


def test_the_list_of_waivers_takes_several_back_as_one_step(at_work, qtbot):
    for mark in ("M004", "M005"):
        choose(at_work, mark)
        page = click_finding(qtbot, at_work, "case-offset-taken")
        press(qtbot, page, page.act_waive)
        waive(qtbot, at_work, "seen")
    at_work.findings.act_waivers.trigger()
    window = at_work.frame.side.windows[WaiversWindow]
    contents = window.model.contents
    assert {contents.row_at(n).mark for n in range(len(contents))} == {"M004", "M005"}
    window.grid.table.setFocus()
    qtbot.keyClick(window.grid.table, Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)
    qtbot.mouseClick(window.back, LEFT)
    assert not waivers(at_work.frame.state.workspace.project)
    assert len(contents) == 0
    at_work.history.act_undo.trigger()
    assert len(waivers(at_work.frame.state.workspace.project)) == 2
    assert len(contents) == 2
    window.close()


def lines(tree):
    """Return all lines of a tree."""
    found, at = [], QTreeWidgetItemIterator(tree)
    while at.value() is not None:
        found.append(at.value().text(0))
        at += 1
    return found


@pytest.mark.parametrize("page", ["part", "place", "hole", "finding"])
def test_why_tells_the_chain_and_copies_it(at_work, qtbot, page):
    choose(at_work, "M004")
    sheet = at_work.sheet
    fit = checked_of(at_work, "M004").fit
    if page == "part":
        sheet.pages.show_page(sheet.parts_and_candidates)
        click_line(qtbot, sheet.parts, 0)
        press(qtbot, sheet.parts_page, sheet.parts_page.act_why)
        wanted, about = fit.parts[0].reason, fit.parts[0].role
    elif page == "place":
        assert sheet.parts_page.act_place in sheet.view.actions()
        sheet.parts_page.act_place.trigger()
        wanted, about = "Lead: needs", "place"
    elif page == "hole":
        sheet.pages.show_page(sheet.holes_page)
        sheet.holes.selectRow(1)
        press(qtbot, sheet.holes_page, sheet.holes_page.act_why)
        wanted, about = f"{fit.holes[1].order}. {fit.holes[1].name}", "holes"
    else:
        press(qtbot, sheet.findings_page, click_finding(qtbot, at_work, "case-offset-taken").act_why)
        wanted, about = "Cure:", "case-offset-taken"
    window = at_work.frame.side.windows[WhyWindow]
    assert window.about.currentData() == about
    assert any(wanted in line for line in lines(window.tree))
    if page == "hole":
        assert window.tree.currentItem().text(0).startswith(f"{fit.holes[1].order}. ")
    window.tree.clearSelection()
    qtbot.mouseClick(window.copy, LEFT)
    text = QGuiApplication.clipboard().text()
    assert text.startswith("M004:")
    assert wanted in text
    assert window.rule.isEnabled() == (page == "finding")
    window.tree.setFocus()
    window.tree.setCurrentItem(window.tree.topLevelItem(0))
    qtbot.keyClick(window.tree, Qt.Key.Key_Down, Qt.KeyboardModifier.ShiftModifier)
    assert len(window.tree.selectedItems()) == 2
    qtbot.keyClick(window.tree, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    assert QGuiApplication.clipboard().text().splitlines() == [item.text(0) for item in window.tree.selectedItems()]
    window.close()


def test_why_follows_an_edit_of_its_opening(at_work, qtbot):
    choose(at_work, "M004")
    at_work.findings.show_why("unit")
    window = at_work.frame.side.windows[WhyWindow]
    assert "ARC-UW" in window.headline.text()
    at_work.opening.choose_part(at_work.frame.state.chosen, "unit", "ARC-UN")
    assert "ARC-UN" in window.headline.text()
    assert any("chosen by hand" in line for line in lines(window.tree))
    window.close()


def test_a_finding_shows_its_rule_and_the_rulebook_switches_and_limits(at_work, qtbot):
    choose(at_work, "M004")
    press(qtbot, at_work, click_finding(qtbot, at_work, "case-offset-taken").act_rule)
    book = at_work.frame.side.windows[RulebookWindow]
    assert book.chosen() == "case-offset-taken"
    assert "Basis" in book.page.toPlainText()
    qtbot.mouseClick(book.switch, LEFT)
    idle(qtbot, at_work)
    assert settings_of(at_work.frame.state.workspace.project).rules_off == {"case-offset-taken"}
    assert not any(
        f.rule == "case-offset-taken" for c in at_work.frame.state.workspace.checked.values() for f in c.findings
    )
    assert "Switched off" in book.page.toPlainText()
    assert book.switch.text() == "Switch on"
    qtbot.keyClicks(book.search, "trim clear of")
    shown = [line for line in book._lines() if not line.isHidden()]
    assert 0 < len(shown) < 10
    book.search.clear()
    book.choose("trim-clear")
    field = book.limits["clearance_mm"]
    field.selectAll()
    qtbot.keyClicks(field, "wide")
    qtbot.mouseClick(book.set, LEFT)
    assert "no number" in book.told.text()
    field.selectAll()
    qtbot.keyClicks(field, "9")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    idle(qtbot, at_work)
    assert settings_of(at_work.frame.state.workspace.project).limits == {"trim-clear.clearance_mm": 9.0}
    assert "9 mm (the rule's own" in book.page.toPlainText()
    book.changed.click()
    assert {line.text(2) for line in book._lines() if not line.isHidden()} == {"off", "on, 1 limit changed"}
    qtbot.mouseClick(book.own, LEFT)
    idle(qtbot, at_work)
    assert settings_of(at_work.frame.state.workspace.project).limits == {}
    at_work.history.act_undo.trigger()
    idle(qtbot, at_work)
    assert settings_of(at_work.frame.state.workspace.project).limits == {"trim-clear.clearance_mm": 9.0}
    assert book.limits["clearance_mm"].text() == "9"
    book.close()


def test_another_part_is_chosen_among_candidates_by_keys_and_by_mouse(at_work, qtbot):
    choose(at_work, "M004")
    at_work.activateWindow()
    sheet, pane = at_work.sheet, at_work.sheet.candidates
    sheet.pages.show_page(sheet.parts_and_candidates)

    def try_cylinder():
        row = next(n for n in range(sheet.parts.rowCount()) if sheet.parts.item(n, 0).text() == "cylinder")
        at = sheet.parts.visualItemRect(sheet.parts.item(row, 1)).center()
        qtbot.mouseClick(sheet.parts.viewport(), Qt.MouseButton.LeftButton, pos=at)
        qtbot.mouseDClick(sheet.parts.viewport(), Qt.MouseButton.LeftButton, pos=at)
        idle(qtbot, at_work)
        assert pane.isVisible()

    def chosen():
        fit = checked_of(at_work, "M004").fit
        return next((p.part, p.source) for p in fit.parts if p.role == "cylinder") if fit else None

    before = chosen()
    try_cylinder()
    words = [pane.table.item(row, 0).text() for row in range(pane.table.rowCount())]
    assert words[0] in ("now", "fits")
    assert words[-1] == "does not fit"
    assert "mm) off" in pane.table.item(pane.table.rowCount() - 1, 2).text()
    row = words.index("fits")
    for _ in range(row):
        qtbot.keyClick(pane.table, Qt.Key.Key_Down)
    wanted = pane.table.item(row, 1).text().split("\n")[0]
    qtbot.keyClick(pane.table, Qt.Key.Key_Return)
    idle(qtbot, at_work)
    assert (wanted, "by-hand") in {(c.part, c.source) for c in checked_of(at_work, "M004").given.chosen}
    assert not pane.isVisible()
    at_work.frame.state.show_again()
    try_cylinder()
    qtbot.mouseClick(pane.release, Qt.MouseButton.LeftButton)
    idle(qtbot, at_work)
    assert not checked_of(at_work, "M004").given.chosen
    assert chosen() == before
