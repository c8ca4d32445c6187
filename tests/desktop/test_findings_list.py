"""All findings as one list: one line a missing fact, worst first, mended and waived for all that share it."""

import threading

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from hwsched.desktop.findings import findings_window
from hwsched.desktop.findings.finding_lines import finding_lines, lines_of, sharing
from hwsched.operations.findings.checking import check_project
from hwsched.operations.findings.waivers import Spoken, waive_several, waivers
from hwsched.operations.project.history import history
from hwsched.operations.survey.fact_edit import FactEdit
from hwsched.operations.survey.many_facts import edit_many
from hwsched.rules.reading import lock_item
from tests.desktop.conftest import checked_of, idle

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def page(at_work, qtbot):
    at_work.activateWindow()
    at_work.frame.go("findings")
    page = at_work.frame.pages.widgets["findings"]
    qtbot.waitUntil(lambda: not page._reading.busy, timeout=10000)
    return page


def pick(qtbot, page, line):
    """Click the line of a finding."""
    grid = page.grid
    index = grid.model.index(grid.model.row_of_id(line.id), grid.model.place_of("mark"))
    QApplication.processEvents()
    grid.table.scrollTo(index)
    qtbot.mouseClick(grid.table.viewport(), LEFT, pos=grid.table.visualRect(index).center())
    assert page.chosen() == [line]


def test_one_missing_fact_is_one_line_worst_first_by_rule_opening_and_cure_and_leads_to_the_fact(at_work, qtbot, page):
    checked = list(at_work.frame.state.workspace.checked.values())
    several = 0
    for each in checked:
        lines = lines_of(each)
        needs = {need for finding in each.findings if not finding.waived for need in finding.needs}
        assert sorted(line.need for line in lines if line.need) == sorted(needs)
        several += sum(len(line.findings) > 1 for line in lines)
        order = [("error", "warning", "note").index(line.first.severity) for line in lines]
        assert order == sorted(order)
        assert {id(f) for line in lines for f in line.findings} == {id(f) for f in each.findings}
    assert several, "some fact is asked for by two rules"
    contents = page.model.contents
    lines = finding_lines(at_work.frame.state.workspace.checked.values())
    assert {line.id for line in contents.rows if line.opening} == {line.id for line in lines if not line.waived}
    for name, value in (("rule", "title"), ("cure", "cure"), ("opening", "mark")):
        qtbot.mouseClick(page.ways[name], LEFT)
        groups = [contents.group_at(n).value for n in range(len(contents)) if contents.group_at(n)]
        assert sorted(groups) == sorted({getattr(line, value) for line in contents.rows})
    qtbot.mouseClick(page.ways["list"], LEFT)
    page.ask.ask("building = Glass Annexe")
    asked = {line.id for line in contents.rows if line.opening and line.building == "Glass Annexe"}
    assert asked
    assert set(contents.shown_ids()) == asked
    page.ask.ask("annexe warning")
    shown = [contents.row_of(each) for each in contents.shown_ids()]
    assert shown
    assert all(line.building == "Glass Annexe" and "warning" in line.text for line in shown)
    page.ask.ask("")
    page.grid.sort("severity")
    order = [("error", "warning", "note").index(contents.row_at(n).first.severity) for n in range(len(contents))]
    assert order == sorted(order)
    line = next(line for line in contents.rows if line.need.startswith("existing_item."))
    pick(qtbot, page, line)
    qtbot.mouseClick(page.fact, LEFT)
    assert at_work.frame.state.checked.given.opening.mark == line.mark
    facts = at_work.sheet.facts
    assert at_work.sheet.pages.currentWidget() is facts
    assert QApplication.focusWidget() is facts
    assert facts.currentItem().text(1) == "unknown"


def test_a_missing_fact_is_filled_in_for_all_that_lack_it_after_a_preview(at_work, qtbot, page):
    lines = page.model.contents.rows
    counts = {line.need: page.mending.words(sharing(lines, line))[1] for line in lines if line.need}
    need = max(counts, key=counts.get)
    line = next(line for line in lines if line.need == need)
    marks = {each.mark for each in sharing(lines, line)}
    assert counts[need] > 1
    before = len(history(at_work.frame.state.workspace.project))
    pick(qtbot, page, line)
    assert page.mend.text() == f"Fill in for {counts[need]}…"
    qtbot.mouseClick(page.mend, LEFT)
    pane = page.pane
    column = pane._columns[0]
    text = {"flag": "yes", "integer": "1", "number": "1", "length": "3 in"}.get(column.attribute.kind)
    qtbot.keyClicks(pane.field, text or column.attribute.choices[0].label if column.attribute.choices else text or "x")
    told = {pane.lines.item(row, 0).text() for row in range(pane.lines.rowCount())}
    assert told <= marks
    assert len(told) == counts[need]
    assert pane.take.isEnabled()
    assert len(history(at_work.frame.state.workspace.project)) == before, "nothing is written before it is taken"
    qtbot.keyClick(pane.field, Qt.Key.Key_Return)
    idle(qtbot, at_work)
    assert len(history(at_work.frame.state.workspace.project)) == before + 1
    left = {each.mark for each in page.model.contents.rows if each.need == need}
    assert left == marks - told


def test_each_cure_of_selected_lines_is_offered_once_for_all_that_it_mends(page):
    rows = page.model.contents.rows
    chosen = [line for line in rows if line.opening][:40]
    cures = page.mending.cures(rows, chosen)
    assert len(cures) > 2
    for share in cures:
        assert share == sharing(rows, share[0])
        assert page.mending.kind(share)
        assert any(line in chosen for line in share)
    assert len({line.id for share in cures for line in share}) == sum(map(len, cures))
    offered = {share[0].id for share in cures}
    left = [line for line in chosen if sharing(rows, line)[0].id not in offered]
    assert all(not page.mending.kind(sharing(rows, line)) for line in left)
    page.grid.select([each.id for each in chosen])
    page.enable()
    assert page.mend.text() == f"Mend: {len(cures)} cures…"


def test_selected_findings_are_waived_as_one_step(at_work, qtbot, page):
    rows = page.model.contents.rows
    line = next(line for line in rows if not line.need and line.spoken and len(sharing(rows, line)) > 1)
    share = sharing(rows, line)[:2]
    page.grid.select([each.id for each in share])
    page.enable()
    before = len(history(at_work.frame.state.workspace.project))
    qtbot.mouseClick(page.waive, LEFT)
    pane = page.waive_pane
    assert not pane.take.isEnabled()
    qtbot.keyClicks(pane.reason, "seen on site")
    assert pane.take.text() == "Waive 2 findings at 2 openings"
    qtbot.keyClick(pane.reason, Qt.Key.Key_Return)
    idle(qtbot, at_work)
    assert len(history(at_work.frame.state.workspace.project)) == before + 1
    for each in share:
        found = checked_of(at_work, each.mark).findings
        assert all(f.waived for f in found if (f.rule, f.about) == (line.first.rule, each.first.about))
        assert page.model.contents.row_of(each.id) is None
    assert not pane.isVisible()


def test_findings_of_supplies_stand_in_the_list_are_waived_and_lead_to_the_supply(at_work, qtbot, page):
    project = at_work.frame.state.workspace.project
    supplies = {each.result.supply.name: each for each in check_project(project).supplies}
    found = {name: len([f for f in each.findings if not f.waived and not f.needs]) for name, each in supplies.items()}
    lines = [line for line in page.model.contents.rows if line.supply]
    listed = {name: len([line for line in lines if line.mark == name and not line.need]) for name in found}
    assert listed == found
    assert sum(found.values()) > 1
    line = next(line for line in lines if line.spoken and line.first.severity == "error")
    pick(qtbot, page, line)
    qtbot.mouseClick(page.waive, LEFT)
    qtbot.keyClicks(page.waive_pane.reason, "a larger battery is ordered")
    assert page.waive_pane.take.text() == "Waive 1 finding at one supply"
    qtbot.keyClick(page.waive_pane.reason, Qt.Key.Key_Return)
    idle(qtbot, at_work)
    qtbot.waitUntil(lambda: page.model.contents.row_of(line.id) is None, timeout=10000)
    (waiver,) = waivers(project)
    assert (waiver.scope, waiver.about) == ("supply", line.mark)
    other = next(each for each in lines if each.mark == line.mark and each.id != line.id)
    page.grid.select([other.id])
    page.enable()
    qtbot.mouseClick(page.fact, LEFT)
    assert at_work.frame.trail.here.place == "power"
    tree = at_work.frame.pages.widgets["power"].tree
    assert tree.currentItem().text(0).startswith(line.mark)


def test_what_is_no_edit_of_cells_is_seen_before_it_is_done_too(at_work, qtbot, page):
    done = []
    rows = [("M004", "Fit", "other facts", "worked out anew")]
    page.pane.ask_plain(rows, "Fit 1 opening again", lambda: done.append("fit"))
    assert page.pane.lines.item(0, 0).text() == "M004"
    qtbot.keyClick(page.pane.take, Qt.Key.Key_Escape)
    assert not page.pane.isVisible()
    assert done == []
    page.pane.ask_plain(rows, "Fit 1 opening again", lambda: done.append("fit"))
    qtbot.mouseClick(page.pane.take, LEFT)
    assert done == ["fit"]


def test_waivers_that_nothing_needs_any_more_are_taken_back_for_all(at_work, qtbot, page):
    workspace = at_work.frame.state.workspace
    marks = ["M004", "M005"]
    spoken = [
        Spoken(each.given.opening.id, f.rule, f.about)
        for each in (checked_of(at_work, mark) for mark in marks)
        for f in each.findings
        if f.rule == "case-offset-taken"
    ]
    assert len(spoken) == 2
    at_work.frame.edit(lambda: waive_several(workspace.project, spoken, person="Ann", reason="seen", who="tester"))
    idle(qtbot, at_work)
    locks = [lock_item(checked_of(at_work, mark).given).id for mark in marks]
    edits = [FactEdit("existing_item", lock, "case_offset_mm", "0") for lock in locks]
    at_work.frame.edit(lambda: edit_many(workspace.project, edits, who="tester"))
    idle(qtbot, at_work)
    lines = [line for line in page.model.contents.rows if line.first.rule == "waiver-unneeded"]
    assert [line.mark for line in lines] == marks
    page.grid.select([lines[0].id])
    page.enable()
    assert page.mend.text() == "Take waivers back for 2…"
    qtbot.mouseClick(page.mend, LEFT)
    assert len(waivers(workspace.project)) == 2
    qtbot.mouseClick(page.pane.take, LEFT)
    idle(qtbot, at_work)
    assert not waivers(workspace.project)
    assert not [line for line in page.model.contents.rows if line.first.rule == "waiver-unneeded"]


def test_very_many_findings_are_listed_beside_the_window_and_are_the_same(at_work, qtbot, page, monkeypatch):
    contents, go_on, real = page.model.contents, threading.Event(), findings_window.finding_lines
    before, rule = list(contents.rows), contents.rows[-1].first.rule
    monkeypatch.setattr(findings_window, "HERE", 0)
    monkeypatch.setattr(findings_window, "finding_lines", lambda *given: go_on.wait(30) and real(*given))
    page.model.load([])
    page.follow()
    at_work.frame.go("findings", rule)
    assert contents.rows == [], "the window does not wait for them"
    go_on.set()
    qtbot.waitUntil(lambda: contents.rows == before, timeout=10000)
    assert {line.first.rule for line in page.chosen()} == {rule}, "who came for a rule is shown it"
