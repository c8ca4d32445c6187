"""A sentence that has no room in its cell is read whole below the table, by mouse and keys."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from hwsched.desktop.findings.findings_window import FindingsWindow
from hwsched.desktop.frame.places import PLACES
from hwsched.desktop.grid.grid import Grid
from hwsched.desktop.release.gate_window import GateWindow
from hwsched.rules import in_rulebook
from tests.desktop.conftest import idle


@pytest.fixture
def findings(at_work, qtbot):
    at_work.resize(1366, 768)
    at_work.frame.go("findings")
    idle(qtbot, at_work)
    return at_work.frame.pages.windows[FindingsWindow]


def longest(page):
    """The line with the longest sentence."""
    return max(page.model.contents.rows, key=lambda line: len(line.said))


def test_a_finding_that_is_cut_is_read_whole_with_its_cure(findings, qtbot):
    assert findings.grid.whole.isHidden()
    line = longest(findings)
    findings.grid.select([line.id])
    assert findings.grid.whole.isVisible()
    assert findings.grid.whole.toPlainText() == f"Finding: {line.said}\nCure: {line.cure}"
    # The chosen row is not pushed out of sight by it.
    table = findings.grid.table
    assert table.viewport().rect().intersects(table.visualRect(table.currentIndex()))


def test_the_sentences_follow_the_keys_and_stay_where_they_are(findings, qtbot):
    table, whole = findings.grid.table, findings.grid.whole
    findings.grid.select([longest(findings).id])
    table.setFocus()
    high = whole.height()
    seen = set()
    for _ in range(12):
        qtbot.keyClick(table, Qt.Key.Key_Down)
        current = findings.grid.current
        if current is not None:
            line = findings.model.contents.row_of(current)
            assert line.said in whole.toPlainText()
            seen.add(line.id)
        assert whole.isVisible()
        assert whole.height() == high
    assert len(seen) > 3
    qtbot.keyClick(table, Qt.Key.Key_Tab)
    assert QApplication.focusWidget() is whole, "it is scrolled and copied by keys"
    qtbot.keyClick(whole, Qt.Key.Key_Tab)
    assert QApplication.focusWidget() is not whole


def test_every_list_that_has_sentences_lets_them_be_read(at_work, qtbot):
    found = set()
    for place in PLACES:
        at_work.frame.go(place.name)
        idle(qtbot, at_work)
        page = at_work.frame.pages.widgets[at_work.frame.trail.here.place]
        for grid in page.findChildren(Grid):
            sentences = [each for each in grid.model.contents.known.values() if each.sentence]
            assert (grid.whole is not None) == bool(sentences), grid.place
            if sentences:
                found.add(grid.place)
    assert {"findings", "gate", "missing", "history", "waivers"} <= found


def test_the_gate_says_the_rule_in_words_and_leads_to_what_is_meant(at_work, qtbot):
    at_work.frame.go("gate")
    idle(qtbot, at_work)
    gate = at_work.frame.pages.windows[GateWindow]
    lines = gate.model.contents.rows
    decision = next(line for line in lines if line.lack.decision)
    assert f"accept '{in_rulebook(decision.lack.rule).title}'" in decision.lack.said
    assert decision.lack.rule not in decision.lack.said
    assert not gate.way.isEnabled()
    gate.grid.select([decision.id])
    gate.enable()
    qtbot.mouseClick(gate.way, Qt.MouseButton.LeftButton)
    idle(qtbot, at_work)
    assert at_work.frame.trail.here.place == "findings"
    page = at_work.frame.pages.windows[FindingsWindow]
    (chosen,) = page.chosen()
    assert (chosen.first.rule, chosen.opening) == (decision.lack.rule, decision.opening)
    assert page.waive.isEnabled()
    # A missing fact leads to where it is typed, by Return.
    at_work.frame.go("gate")
    idle(qtbot, at_work)
    fact = next(line for line in gate.model.contents.rows if line.lack.of == "fact" and line.mark == "M114")
    gate.grid.select([fact.id])
    gate.grid.table.setFocus()
    qtbot.keyClick(gate.grid.table, Qt.Key.Key_Return)
    assert at_work.frame.trail.here.place == "openings"
    assert at_work.frame.state.chosen == fact.opening
    assert at_work.sheet.pages.seen() is at_work.sheet.facts
    # A circuit's error leads to the supplies.
    at_work.frame.go("gate")
    idle(qtbot, at_work)
    circuit = next(line for line in gate.model.contents.rows if line.lack.of == "circuit")
    gate.grid.select([circuit.id])
    gate.go_to_it()
    assert at_work.frame.trail.here.place == "power"
