"""Work in the list of openings: one fact of all of them, a query kept as a view, columns, a block out and back."""

import pytest
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication

from hwsched.operations.opening.asked_openings import asked_openings
from hwsched.operations.opening.scope import Scope
from hwsched.operations.project.history import history
from tests.desktop.conftest import checked_of
from tests.desktop.walk.hands import CONTROL, KEY

ASKED = "rating = 20 and leaf.material = wood and leaf.thickness > 1 1/2 and level = Ground"
THIRTY = 30


def cell(grid, line, column):
    assert grid.model.place_of(column) >= 0, column
    return grid.model.index(line, grid.model.place_of(column))


def test_one_fact_of_thirty_openings_and_a_query_kept_as_a_view(hands, at_work):
    grid, project = at_work.openings.grid, at_work.frame.state.workspace.project
    for n in range(THIRTY - grid.model.rowCount()):
        at_work.opening.add_opening(f"Z-{n}")
        hands.done()
    assert grid.model.rowCount() == THIRTY
    steps, last = len(history(project)), grid.model.rowCount() - 1
    hands.line(grid.table, cell(grid, 0, "opening.rating"))
    hands.up_to(grid.table, cell(grid, last, "opening.rating"))
    assert len(grid.ids) == last + 1
    hands.key(KEY.Key_E, CONTROL)
    pane = grid.changes
    hands.say("20")
    assert pane.take.isEnabled()
    shown = {pane.lines.item(row, 3).text() for row in range(pane.lines.rowCount())}
    assert len(shown) == 1
    assert len(history(project)) == steps, "nothing is written before it was seen"
    hands.press(pane.take)
    hands.done()
    assert {each.given.opening.rating for each in at_work.frame.state.workspace.checked.values()} == {"20"}
    assert len(history(project)) == steps + 1
    hands.undo()
    # Asked for by facts, kept under a name, and found again.
    hands.field(at_work.openings.search, ASKED)
    hands.key(KEY.Key_Escape)
    hands.key(KEY.Key_Return)
    wanted = asked_openings(project, Scope(where=ASKED)).ids
    assert wanted
    assert set(grid.model.shown_ids()) == set(wanted)
    assert "fire rating" in at_work.openings.ask.words.text()
    views = at_work.openings.narrowing.views
    hands.press(views.keep)
    assert QApplication.focusWidget() is views.name
    hands.say("wood, ground")
    hands.key(KEY.Key_Return)
    hands.press(views.buttons["All"])
    assert grid.model.rowCount() == last + 1
    hands.press(views.buttons["wood, ground"])
    assert set(grid.model.shown_ids()) == set(wanted)


def test_thickness_and_parts_are_found_by_words(hands, at_work):
    register, checked = at_work.openings.register, at_work.frame.state.workspace.checked

    def found(words):
        hands.field(at_work.openings.search, words)
        hands.key(KEY.Key_Escape)
        hands.qtbot.waitUntil(lambda: register.words == words)
        return shown()

    def shown():
        return {checked[register.id_at(row)].given.opening.mark for row in range(register.rowCount())}

    def thick(mm):
        leaves = {each.given.opening.mark: each.given.leaves for each in checked.values()}
        return {mark for mark, of in leaves.items() if of and of[0].thickness_mm == pytest.approx(mm)}

    def using(part):
        return {
            each.given.opening.mark
            for each in checked.values()
            if each.fit is not None and any(part == used.part for used in each.fit.parts)
        }

    assert thick(44.45) <= found("thick 1 3/4")
    assert thick(50.8) <= found("thick 2")
    for part in ("ARC-UN", "ARC-C22"):
        assert found(part.lower()) == using(part) != set()
    # The same asked for by its fact, and both together.
    for asked, wanted in (
        ("leaf thickness > 1 3/4", thick(50.8) | thick(54.0) | thick(45.0)),
        ("uses ARC-UN and leaf thickness = 1 3/4", using("ARC-UN") & thick(44.45)),
    ):
        assert wanted
        hands.field(at_work.openings.search, asked)
        hands.key(KEY.Key_Escape)
        hands.qtbot.waitUntil(lambda wanted=wanted: shown() == wanted)


def test_columns_are_chosen_and_frozen_and_a_block_goes_out_and_comes_back(hands, at_work):
    grid = at_work.openings.grid
    hands.line(grid.table, cell(grid, 2, "opening.mark"))
    hands.menu(grid.table, "Columns…")
    pane = grid.columns
    hands.field(pane.search, "thickness")
    line = next(
        pane.tree.topLevelItem(n).child(k)
        for n in range(pane.tree.topLevelItemCount())
        for k in range(pane.tree.topLevelItem(n).childCount())
        if pane.tree.topLevelItem(n).child(k).text(0) == "Leaf thickness"
    )
    hands.line(pane.tree, line)
    hands.key(KEY.Key_Space)
    hands.qtbot.waitUntil(lambda: grid.model.place_of("leaf.thickness_mm") >= 0)
    hands.field(pane.frozen, "1")
    assert grid.model.contents.arrangement.frozen == 1
    assert grid.table.frozen.isVisible()
    hands.press(pane.close_)
    assert not pane.isVisible()
    assert QApplication.focusWidget() is grid.table, "one goes on where one was"
    hands.menu(grid.table, "Columns…")
    hands.key(KEY.Key_Escape)
    assert not pane.isVisible()
    assert QApplication.focusWidget() is grid.table
    # A block of two columns goes to a spreadsheet and comes back changed.
    ids = [grid.model.id_at(line) for line in (3, 4, 5)]
    checked = at_work.frame.state.workspace.checked
    marks = [checked[each].given.opening.mark for each in ids]
    column = "leaf.thickness_mm"
    hands.line(grid.table, cell(grid, 3, column))
    hands.up_to(grid.table, cell(grid, 5, column))
    hands.key(KEY.Key_C, CONTROL)
    out = QGuiApplication.clipboard().text().split("\n")
    assert len(out) == 3
    QGuiApplication.clipboard().setText("2 1/8\nnonsense\n2 1/8\n")
    hands.line(grid.table, cell(grid, 3, column))
    hands.key(KEY.Key_V, CONTROL)
    changes = grid.changes
    assert "nonsense" in changes.lines.item(0, 3).text(), "what cannot be read is named first"
    hands.press(changes.take)
    hands.done()
    assert [checked_of(at_work, mark).given.leaves[0].thickness_mm for mark in (marks[0], marks[2])] == pytest.approx(
        [53.975, 53.975]
    )
    hands.undo()
    assert [checked_of(at_work, mark).given.leaves[0].thickness_mm for mark in marks] == [
        checked[each].given.leaves[0].thickness_mm for each in ids
    ]
