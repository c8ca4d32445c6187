"""Hardware sets by real clicks and keys: proposed, made, given, changed after a look, overridden, removed."""

import pytest
from PySide6.QtCore import QPoint, Qt

from hwsched.desktop.parts.sets_window import SetsWindow
from hwsched.desktop.survey.register import COLUMNS
from hwsched.operations.parts.hardware_sets import hardware_sets, set_named
from tests.desktop.conftest import checked_of, choose, idle

LEFT = Qt.MouseButton.LeftButton
SET = COLUMNS.index("Set")


@pytest.fixture
def sets(at_work):
    at_work.beside.acts["sets"].trigger()
    return at_work.frame.side.windows[SetsWindow]


def set_in_register(window, mark):
    row = window.openings.register.row_of_id(checked_of(window, mark).given.opening.id)
    return window.openings.register.data(window.openings.register.index(row, SET))


def cell(grid, line, column):
    return grid.model.index(line, grid.model.place_of(column)).data()


def make(qtbot, window, sets, name, *marks):
    choose(window, *marks)
    qtbot.mouseClick(sets.new, LEFT)
    dialog = sets.new_set
    assert not dialog.ok.isEnabled()
    qtbot.keyClicks(dialog.name, name)
    qtbot.mouseClick(dialog.ok, LEFT)
    idle(qtbot, window)


def test_a_set_is_made_of_what_selected_openings_have_alike_and_shown_in_the_register(at_work, qtbot, sets):
    make(qtbot, at_work, sets, "Corridor", "M004", "M005")
    made = set_named(at_work.frame.state.workspace.project, "Corridor")
    assert made.marks == ("M004", "M005")
    alike = {
        (line.role, line.part)
        for line in made.lines
    }  # fmt: skip
    for mark in ("M004", "M005"):
        assert alike <= {(part.role, part.part) for part in checked_of(at_work, mark).fit.parts}
        assert set_in_register(at_work, mark) == "Corridor"
    assert sets.heading.text() == "Corridor"
    assert sets.pages.tabText(0) == "Openings 2"
    qtbot.keyClicks(at_work.openings.search, "corridor m004")
    at_work.history.act_undo.trigger()
    idle(qtbot, at_work)
    assert not hardware_sets(at_work.frame.state.workspace.project)
    assert sets.list.model.rowCount() == 0
    at_work.openings.search.clear()
    assert set_in_register(at_work, "M004") == ""


def test_a_set_is_made_by_hand_and_a_name_twice_is_refused(at_work, qtbot, sets):
    at_work.openings.table.clearSelection()
    for expected in (1, 1):
        qtbot.mouseClick(sets.new, LEFT)
        dialog = sets.new_set
        assert not dialog.give.isEnabled()
        qtbot.keyClicks(dialog.name, "By hand")
        qtbot.mouseClick(dialog.lines.add, LEFT)
        dialog.lines.table.cellWidget(0, 0).setCurrentText("unit")
        part = dialog.lines.table.cellWidget(0, 1)
        qtbot.keyClicks(part.lineEdit(), "ARC-UN")
        qtbot.mouseClick(dialog.ok, LEFT)
        assert len(hardware_sets(at_work.frame.state.workspace.project)) == expected
        if dialog is not None and at_work.frame.telling.told is not None:
            at_work.frame.telling.told.close()
            dialog.reject()
    (line,) = set_named(at_work.frame.state.workspace.project, "By hand").lines
    assert (line.role, line.part, line.quantity) == ("unit", "ARC-UN", 1.0)


def test_changed_lines_are_looked_at_before_they_are_accepted(at_work, qtbot, sets):
    make(qtbot, at_work, sets, "Corridor", "M004", "M005")
    rows = {sets.lines.table.cellWidget(r, 0).currentText(): r for r in range(sets.lines.table.rowCount())}
    assert not sets.look.isEnabled()
    box = sets.lines.table.cellWidget(rows["unit"], 1)
    box.lineEdit().selectAll()
    qtbot.keyClicks(box.lineEdit(), "ARC-UN")
    assert not sets.take.isEnabled()
    qtbot.mouseClick(sets.look, LEFT)
    idle(qtbot, at_work)
    assert {cell(sets.effects, n, "mark") for n in range(2)} == {"M004", "M005"}
    assert cell(sets.effects, 0, "fit") == "Fits"
    assert "ARC-UW" in cell(sets.effects, 0, "gone")
    assert "ARC-UN" in cell(sets.effects, 0, "new")
    assert {line.part for line in set_named(at_work.frame.state.workspace.project, "Corridor").lines} >= {"ARC-UW"}
    qtbot.mouseClick(sets.take, LEFT)
    idle(qtbot, at_work)
    assert {line.part for line in set_named(at_work.frame.state.workspace.project, "Corridor").lines} >= {"ARC-UN"}
    assert "ARC-UN" in {part.part for part in checked_of(at_work, "M004").fit.parts}
    at_work.history.act_undo.trigger()
    idle(qtbot, at_work)
    assert "ARC-UW" in {part.part for part in checked_of(at_work, "M004").fit.parts}
    assert sets.lines.table.cellWidget(rows["unit"], 1).number() == "ARC-UW"


def test_a_line_is_overridden_visibly_and_openings_are_given_and_freed(at_work, qtbot, sets):
    make(qtbot, at_work, sets, "Corridor", "M004", "M005")
    choose(at_work, "M004")
    at_work.opening.choose_part(at_work.frame.state.chosen, "unit", "ARC-UN")
    page = at_work.sheet.parts_page
    words = {page.table.item(r, 0).text(): page.table.item(r, 3).text() for r in range(page.table.rowCount())}
    assert words["unit"] == "by hand instead of set"
    assert words["cylinder"] == "set"
    assert "fit" in words.values()
    assert page.note.text() == "1 by hand instead of set Corridor"
    assert cell(sets.members, 0, "roles") == "unit"
    assert cell(sets.list, 0, "overridden") == "1"
    choose(at_work, "M006")
    assert sets.give.text() == "Give the set to 1 opening selected"
    qtbot.mouseClick(sets.give, LEFT)
    assert set_in_register(at_work, "M006") == "Corridor"
    choose(at_work, "M004", "M006")
    qtbot.mouseClick(sets.free, LEFT)
    assert set_named(at_work.frame.state.workspace.project, "Corridor").marks == ("M005",)
    assert set_in_register(at_work, "M006") == ""


@pytest.mark.usefixtures("sample_file")
def test_proposed_sets_are_chosen_renamed_and_made_as_one_step(at_work, qtbot, sets):
    qtbot.mouseClick(sets.propose, LEFT)
    idle(qtbot, at_work)
    dialog = sets.proposed
    count = dialog.list.topLevelItemCount()
    assert count > 5
    for row in range(2, count):
        dialog.list.topLevelItem(row).setCheckState(0, Qt.CheckState.Unchecked)
    dialog.list.topLevelItem(0).setText(0, "  Mill   corridors ")
    assert dialog.ok.text() == "Make 2 sets"
    qtbot.mouseClick(dialog.ok, LEFT)
    idle(qtbot, at_work)
    assert {each.name for each in hardware_sets(at_work.frame.state.workspace.project)} == {"Mill corridors", "HS-02"}
    at_work.history.act_undo.trigger()
    idle(qtbot, at_work)
    assert not hardware_sets(at_work.frame.state.workspace.project)


def test_sets_are_a_grid_that_is_ordered_and_an_opening_of_one_is_shown_by_a_key(at_work, qtbot, sets):
    make(qtbot, at_work, sets, "Corridor", "M004", "M005")
    make(qtbot, at_work, sets, "Annex", "M006")
    assert [cell(sets.list, n, "name") for n in range(2)] == ["Annex", "Corridor"]
    assert sets.heading.text() == "Annex"
    header = sets.list.table.horizontalHeader()
    where = QPoint(header.sectionViewportPosition(1) + 20, header.height() // 2)
    for _ in range(2):
        qtbot.mouseClick(header.viewport(), LEFT, pos=where)
    # The order has changed, and what is chosen is still what the form shows.
    assert [cell(sets.list, n, "openings") for n in range(2)] == ["2", "1"]
    assert sets.chosen().name == sets.heading.text() == "Annex"
    at = sets.list.table.visualRect(sets.list.model.index(0, 0)).center()
    qtbot.mouseClick(sets.list.table.viewport(), LEFT, pos=at)
    assert sets.heading.text() == "Corridor"
    at = sets.members.table.visualRect(sets.members.model.index(0, 0)).center()
    qtbot.mouseClick(sets.members.table.viewport(), LEFT, pos=at)
    qtbot.keyClick(sets.members.table, Qt.Key.Key_Down)
    qtbot.keyClick(sets.members.table, Qt.Key.Key_Return)
    assert at_work.frame.state.checked.given.opening.mark == "M005"


def test_a_set_is_removed_after_a_question(at_work, qtbot, sets):
    make(qtbot, at_work, sets, "Corridor", "M004")
    qtbot.mouseClick(sets.remove, LEFT)
    sets.sure.reject()
    assert hardware_sets(at_work.frame.state.workspace.project)
    qtbot.mouseClick(sets.remove, LEFT)
    sets.sure.accept()
    assert not hardware_sets(at_work.frame.state.workspace.project)
    assert set_in_register(at_work, "M004") == ""
