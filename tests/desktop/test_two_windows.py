"""Two people with a window each on one project, by real clicks and keys: conflicts, undo by person, people, roles."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLineEdit, QMessageBox

from hwsched.desktop.findings.rulebook_window import RulebookWindow
from hwsched.desktop.parts.sets_window import SetsWindow
from hwsched.desktop.window import Window
from hwsched.operations.parts.hardware_sets import Line, assign_set, change_set_lines, hardware_sets, make_set
from hwsched.operations.project.history import newest
from hwsched.operations.project.people import Person, people
from hwsched.operations.project.reading_settings import settings_of
from hwsched.operations.project.settings import set_settings
from hwsched.operations.survey.typed_values import type_in
from hwsched.rules import rule_named
from tests.desktop.conftest import checked_of, choose, idle


@pytest.fixture
def windows(qtbot, corner_file):
    """Ann's window and Ben's, both on the same opening."""
    shown = []
    for who in ("ann", "ben"):
        window = Window(who)
        qtbot.addWidget(window)
        window.show()
        window.project.open_project(str(corner_file))
        idle(qtbot, window)
        choose(window, "M004")
        shown.append(window)
    return shown


def step(qtbot, page, line):
    """Choose a step of the history by a click."""
    table = page.grid.table
    qtbot.mouseClick(
        table.viewport(), Qt.MouseButton.LeftButton, pos=table.visualRect(page.model.index(line, 0)).center()
    )


def fact(window, label):
    items = window.sheet.facts.findItems(label, Qt.MatchFlag.MatchExactly | Qt.MatchFlag.MatchRecursive, 0)
    return items[0]


def begin(qtbot, window, label):
    """Open the editor of a fact."""
    window.sheet.pages.show_page(window.sheet.facts)
    window.sheet.facts.editItem(fact(window, label), 1)
    return window.sheet.facts.findChild(QLineEdit)


def end(qtbot, editor, text):
    editor.selectAll()
    qtbot.keyClicks(editor, text)
    press_return(qtbot, editor)


def press_return(qtbot, editor):
    """The editor hands over what was typed once the key is through with it."""
    with qtbot.waitSignal(editor.destroyed, timeout=5000):
        qtbot.keyClick(editor, Qt.Key.Key_Return)


def other_types(window, label, text):
    """Let the window's person type elsewhere, so that the other window keeps its keys."""
    item = fact(window, label)
    entity, row = ("leaf", checked_of(window, "M004").given.leaves[0].id)
    name = {"Leaf thickness": "thickness_mm", "Wave": "wave"}[item.text(0)]
    if name == "wave":
        entity, row = "opening", window.frame.state.chosen
    type_in(window.frame.state.workspace.project, entity, row, name, text, who=window.frame.state.who)


def thickness(window):
    window.frame.state.workspace.refresh([window.frame.state.chosen])
    return fact(window, "Leaf thickness").text(1)


def asked(window):
    question = window.frame.telling.asked
    assert question.isVisible()
    return question


def test_the_other_s_value_is_a_question_and_mine_is_taken(qtbot, windows):
    ann, ben = windows
    editor = begin(qtbot, ben, "Leaf thickness")
    other_types(ann, "Leaf thickness", "1 7/8")
    end(qtbot, editor, "2")
    question = asked(ben)
    for word in ("Leaf thickness of M004", 'you saw:\t1 3/4"', 'now:\t1 7/8" (ann, ', 'you want:\t2"'):
        assert word in question.text()
    assert question.defaultButton() is question.theirs
    assert thickness(ann) == '1 7/8"'
    qtbot.mouseClick(question.mine, Qt.MouseButton.LeftButton)
    assert thickness(ann) == thickness(ben) == '2"'


@pytest.mark.parametrize("by_key", [True, False])
def test_theirs_is_kept_and_shown(qtbot, windows, by_key):
    ann, ben = windows
    end(qtbot, begin(qtbot, ann, "Leaf thickness"), "1 7/8")
    end(qtbot, begin(qtbot, ben, "Leaf thickness"), "2")
    question, before = asked(ben), newest(ann.frame.state.workspace.project)
    if by_key:
        qtbot.keyClick(question, Qt.Key.Key_Escape)
    else:
        qtbot.mouseClick(question.theirs, Qt.MouseButton.LeftButton)
    # Shown without being read anew by hand.
    assert fact(ben, "Leaf thickness").text(1) == '1 7/8"'
    assert newest(ann.frame.state.workspace.project) == before
    # Having seen it, the next edit is no question any more.
    end(qtbot, begin(qtbot, ben, "Leaf thickness"), "2")
    assert thickness(ann) == '2"'


def test_a_third_value_meanwhile_is_asked_about_again(qtbot, windows):
    ann, ben = windows
    end(qtbot, begin(qtbot, ann, "Leaf thickness"), "1 7/8")
    end(qtbot, begin(qtbot, ben, "Leaf thickness"), "2")
    first = asked(ben)
    other_types(ann, "Leaf thickness", "2 1/4")
    qtbot.mouseClick(first.mine, Qt.MouseButton.LeftButton)
    second = asked(ben)
    assert second is not first
    assert 'you saw:\t1 7/8"' in second.text()
    assert 'now:\t2 1/4" (ann, ' in second.text()
    qtbot.mouseClick(second.theirs, Qt.MouseButton.LeftButton)
    assert thickness(ben) == '2 1/4"'


def test_different_facts_and_equal_values_are_no_question(qtbot, windows):
    ann, ben = windows
    end(qtbot, begin(qtbot, ann, "Leaf thickness"), "2")
    end(qtbot, begin(qtbot, ben, "Wave"), "7")
    end(qtbot, begin(qtbot, ben, "Leaf thickness"), "2")
    assert ben.frame.telling.asked is None
    assert thickness(ann) == '2"'
    assert fact(ann, "Wave").text(1) == "7"


def test_what_is_typed_stays_while_the_opening_is_read_anew(qtbot, windows):
    """The edit carries what was shown when it was begun, and the text is not lost."""
    ann, ben = windows
    editor = begin(qtbot, ben, "Leaf thickness")
    editor.selectAll()
    qtbot.keyClicks(editor, "2")
    other_types(ann, "Leaf thickness", "1 7/8")
    other_types(ann, "Wave", "9")
    ben.frame.state.workspace.refresh([ben.frame.state.chosen])
    assert editor.isVisible()
    assert editor.text() == "2"
    press_return(qtbot, editor)
    assert 'you saw:\t1 3/4"' in asked(ben).text()
    # What was read anew meanwhile stands in the form now.
    assert fact(ben, "Wave").text(1) == "9"
    qtbot.mouseClick(ben.frame.telling.asked.theirs, Qt.MouseButton.LeftButton)
    assert fact(ben, "Leaf thickness").text(1) == '1 7/8"'


def test_removing_what_the_other_edited_is_a_question(qtbot, windows):
    ann, ben = windows
    end(qtbot, begin(qtbot, ann, "Wave"), "7")
    ben.opening.act_remove.trigger()
    removal = ben.opening.removal
    qtbot.mouseClick(next(b for b in removal.buttons() if b.text() == "Remove M004"), Qt.MouseButton.LeftButton)
    assert "you want:\tremoved" in asked(ben).text()
    total = ben.openings.register.total()
    qtbot.mouseClick(ben.frame.telling.asked.mine, Qt.MouseButton.LeftButton)
    assert ben.openings.register.total() == total - 1
    # Ann, who still sees it, is told who took it out.
    end(qtbot, begin(qtbot, ann, "Wave"), "8")
    assert "ben took it out in step" in ann.frame.telling.told.text()
    ann.frame.telling.told.close()


def test_a_choice_and_the_unit_s_place_carry_what_was_shown(qtbot, windows):
    ann, ben = windows
    units = [each.number for each in checked_of(ann, "M004").given.catalogue.of_kind("surface-unit")]
    ann.opening.choose_part(ann.frame.state.chosen, "unit", units[0])
    ben.opening.choose_part(ben.frame.state.chosen, "unit", units[1])
    told = asked(ben).text()
    assert told.startswith("Part for the role unit of M004\n    you saw:\tleft to the fit\n")
    assert f"now:\t{units[0]} (ann, " in told
    qtbot.mouseClick(ben.frame.telling.asked.theirs, Qt.MouseButton.LeftButton)
    assert [choice.part for choice in checked_of(ben, "M004").given.chosen if choice.role == "unit"] == [units[0]]
    ann.places.release_unit()
    ben.places.release_unit()
    assert not ben.frame.telling.asked.isVisible()


def test_undo_takes_back_the_own_step_and_offers_the_history_where_it_is_blocked(qtbot, windows):
    ann, ben = windows
    end(qtbot, begin(qtbot, ann, "Leaf thickness"), "2")
    end(qtbot, begin(qtbot, ben, "Wave"), "7")
    ann.history.act_undo.trigger()
    assert thickness(ben) == '1 3/4"'
    assert fact(ben, "Wave").text(1) == "7"
    ann.history.act_redo.trigger()
    assert thickness(ben) == '2"'
    end(qtbot, begin(qtbot, ben, "Leaf thickness"), "2 1/4")
    ann.history.act_undo.trigger()
    box = ann.frame.telling.told
    assert isinstance(box, QMessageBox)
    assert "of ben (Edit leaf thickness of M004)" in box.text()
    show = next(button for button in box.buttons() if button.text() == "Show history")
    qtbot.mouseClick(show, Qt.MouseButton.LeftButton)
    page = ann.frame.pages.widgets["history"]
    assert page.isVisible()
    step(qtbot, page, 0)
    assert page.chosen().who == "ben"
    qtbot.mouseClick(page.back, Qt.MouseButton.LeftButton)
    assert thickness(ann) == '2"'
    # What was taken back is chosen again, and done again.
    step(qtbot, page, 1)
    assert page.chosen().undone
    qtbot.mouseClick(page.again, Qt.MouseButton.LeftButton)
    assert thickness(ann) == '2 1/4"'


def test_settings_of_two_people(qtbot, windows):
    """Different rules do not meet; the same limit is a question."""
    ann, ben = windows
    ben.project.act_settings.trigger()
    dialog = ben.project.settings
    project = ann.frame.state.workspace.project
    set_settings(project, who="ann", limits={"trim-clear.clearance_mm": 11.0}, rules_off={"reach-height": True})
    find = Qt.MatchFlag.MatchContains | Qt.MatchFlag.MatchRecursive
    dialog.rules.findItems(rule_named("coin-cell-drain").title, find, 0)[0].setCheckState(0, Qt.CheckState.Unchecked)
    dialog.rules.findItems(rule_named("trim-clear").title, find, 0)[0].child(0).setText(1, "9")
    dialog.accept()
    question = asked(ben)
    assert "Limit trim-clear.clearance_mm\n    you saw:\tthe rule's own\n    now:\t11 (ann" in question.text()
    assert settings_of(project).rules_off == {"reach-height"}
    qtbot.mouseClick(question.mine, Qt.MouseButton.LeftButton)
    idle(qtbot, ben)
    settings = settings_of(project)
    assert settings.rules_off == {"reach-height", "coin-cell-drain"}
    assert settings.limits == {"trim-clear.clearance_mm": 9.0}


def test_the_rulebook_carries_what_it_showed(qtbot, windows):
    ann, ben = windows
    ben.findings.act_rulebook.trigger()
    book = ben.frame.side.windows[RulebookWindow]
    book.choose("trim-clear")
    set_settings(ann.frame.state.workspace.project, who="ann", limits={"trim-clear.clearance_mm": 11.0})
    field = next(iter(book.limits.values()))
    field.selectAll()
    qtbot.keyClicks(field, "9")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    assert "now:\t11 (ann" in asked(ben).text()
    qtbot.mouseClick(ben.frame.telling.asked.theirs, Qt.MouseButton.LeftButton)
    idle(qtbot, ben)
    assert next(iter(book.limits.values())).text() == "11"
    assert settings_of(ben.frame.state.workspace.project).limits == {"trim-clear.clearance_mm": 11.0}


def test_a_set_keeps_the_other_s_lines_and_asks_about_the_same_role(qtbot, windows):
    ann, ben = windows
    project = ann.frame.state.workspace.project
    parts = sorted(checked_of(ann, "M004").given.catalogue.parts)[:4]
    lines = [Line("cylinder", parts[0]), Line("cam", parts[1])]
    _, set_id = make_set(project, "HS-9", lines, who="ann")
    ben.beside.acts["sets"].trigger()
    book = ben.frame.side.windows[SetsWindow]
    book.choose("HS-9")
    change_set_lines(project, set_id, [*lines, Line("unit", parts[2])], who="ann")
    quantity = book.lines.table.cellWidget(1, 2)
    quantity.setValue(2)
    qtbot.mouseClick(book.look, Qt.MouseButton.LeftButton)
    idle(qtbot, ben)
    qtbot.mouseClick(book.take, Qt.MouseButton.LeftButton)
    [held] = [each for each in hardware_sets(project) if each.name == "HS-9"]
    told = {line.role: (line.part, line.quantity) for line in held.lines}
    other = book.lines.lines()[1].role
    assert set(told) == {"cylinder", "cam", "unit"}
    assert told["unit"] == (parts[2], 1.0)
    assert told[other][1] == 2.0
    assert {line.role for line in book.lines.lines()} == set(told)
    assign_set(project, set_id, [checked_of(ann, "M004").given.opening.id], who="ann")
    qtbot.mouseClick(book.remove, Qt.MouseButton.LeftButton)
    qtbot.mouseClick(book.sure.button(QMessageBox.StandardButton.Yes), Qt.MouseButton.LeftButton)
    assert "Hardware set of M004\n    you saw:\tnone" in asked(ben).text()
    qtbot.mouseClick(ben.frame.telling.asked.theirs, Qt.MouseButton.LeftButton)
    assert [each.name for each in hardware_sets(project)].count("HS-9") == 1


def test_people_are_listed_and_roles_hold(qtbot, windows):
    ann, ben = windows
    ann.people.act_people.trigger()
    dialog = ann.people.dialog
    # The first one is offered as a specifier: oneself.
    assert (dialog.name.text(), dialog.role.currentData()) == ("ann", "specifier")
    qtbot.mouseClick(dialog.put, Qt.MouseButton.LeftButton)
    for name, role in (("ben", "viewer"), ("cid", "surveyor")):
        dialog.name.clear()
        qtbot.keyClicks(dialog.name, name)
        dialog.role.setCurrentIndex(dialog.role.findData(role))
        qtbot.keyClick(dialog.name, Qt.Key.Key_Return)
    assert people(ann.frame.state.workspace.project) == [
        Person("ann", "specifier"),
        Person("ben", "viewer"),
        Person("cid", "surveyor"),
    ]
    assert dialog.told.text() == "You work here as ann: specifier."
    end(qtbot, begin(qtbot, ben, "Wave"), "7")
    assert "ben is viewer in this project, who changes nothing" in ben.frame.telling.told.text()
    ben.frame.telling.told.close()
    # What could not be written stays where it was typed, with the reason, and in this window alone.
    assert fact(ben, "Wave").text(1) == "7"
    assert "changes nothing" in fact(ben, "Wave").toolTip(1)
    assert fact(ann, "Wave").text(1) != "7"
    dialog.list.setCurrentItem(dialog.list.topLevelItem(2))
    qtbot.mouseClick(dialog.gone, Qt.MouseButton.LeftButton)
    assert [person.name for person in people(ann.frame.state.workspace.project)] == ["ann", "ben"]
    dialog.list.setCurrentItem(dialog.list.topLevelItem(0))
    qtbot.mouseClick(dialog.gone, Qt.MouseButton.LeftButton)
    assert "must be a specifier" in ann.frame.telling.told.text()
    ann.frame.telling.told.close()
    # A refusal that Return brought up is not gone by the same key.
    dialog.role.setCurrentIndex(dialog.role.findData("viewer"))
    qtbot.keyClick(dialog.name, Qt.Key.Key_Return)
    assert ann.frame.telling.told.isVisible()
    ann.frame.telling.told.close()
    dialog.close()


def cell(qtbot, window, mark, column):
    """Click a cell of the register."""
    grid = window.openings.grid
    contents = grid.model.contents
    line = next(n for n in range(len(contents)) if contents.row_at(n).given.opening.mark == mark)
    index = grid.model.index(line, grid.model.place_of(column))
    grid.table.scrollTo(index)
    view = grid.table.frozen if index.column() < contents.arrangement.frozen else grid.table
    qtbot.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, pos=view.visualRect(index).center())
    return view


def level_of(window):
    return checked_of(window, "M004").given.opening.level


def other_moves(ann, ben, level):
    """Ann moves the opening to another level; Ben's window reads it anew."""
    type_in(ann.frame.state.workspace.project, "opening", ben.frame.state.chosen, "level", level, who="ann")
    ben.frame.state.workspace.refresh([ben.frame.state.chosen])
    assert level_of(ben) == level


def test_a_cell_that_is_typed_into_carries_what_stood_there_when_it_was_opened(qtbot, windows):
    ann, ben = windows
    before = level_of(ben)
    view = cell(qtbot, ben, "M004", "opening.level")
    qtbot.keyClick(view, Qt.Key.Key_F2)
    editor = view.findChild(QLineEdit)
    qtbot.keyClicks(editor, "Bens")
    other_moves(ann, ben, "Anns")
    assert editor.text() == "Bens"
    press_return(qtbot, editor)
    told = asked(ben).text()
    assert f"you saw:\tMill House, {before}\n" in told
    assert "now:\tMill House, Anns (ann, " in told
    qtbot.mouseClick(ben.frame.telling.asked.theirs, Qt.MouseButton.LeftButton)
    assert level_of(ben) == "Anns"


@pytest.mark.parametrize("meanwhile", ["", "a cell is edited besides"])
def test_what_an_edit_of_cells_would_change_is_taken_as_it_was_shown(qtbot, windows, meanwhile):
    ann, ben = windows
    before = level_of(ben)
    view = cell(qtbot, ben, "M004", "opening.level")
    qtbot.keyClick(view, Qt.Key.Key_Delete)
    pane = ben.openings.grid.changes
    assert [pane.lines.item(0, column).text() for column in (2, 3)] == [before, "unknown"]
    other_moves(ann, ben, "Anns")
    if meanwhile:
        view = cell(qtbot, ben, "M004", "opening.building")
        qtbot.keyClick(view, Qt.Key.Key_F2)
        editor = view.findChild(QLineEdit)
        editor.selectAll()
        qtbot.keyClicks(editor, "Chart House")
        press_return(qtbot, editor)
        idle(qtbot, ben)
    qtbot.mouseClick(pane.take, Qt.MouseButton.LeftButton)
    told = asked(ben).text()
    assert f"you saw:\tMill House, {before}\n" in told
    assert "House, Anns (ann, " in told
    qtbot.mouseClick(ben.frame.telling.asked.mine, Qt.MouseButton.LeftButton)
    idle(qtbot, ben)
    assert level_of(ben) is None


@pytest.mark.parametrize("when", ["while it is typed", "while it is offered"])
def test_one_value_for_several_openings_is_taken_as_it_was_shown(qtbot, windows, when):
    ann, ben = windows
    opening = ben.frame.state.chosen
    choose(ben, "M003", "M004")
    several = ben.several.several
    several.pages.setCurrentIndex(1)
    form, proposal = several.form, several.proposal
    (line,) = [
        each
        for each in form.findItems("Wave", Qt.MatchFlag.MatchExactly | Qt.MatchFlag.MatchRecursive, 0)
        if each.parent().text(0) == "Opening"
    ]
    form.scrollToItem(line)
    at = form.visualRect(form.indexFromItem(line, 1)).center()
    qtbot.mouseClick(form.viewport(), Qt.MouseButton.LeftButton, pos=at)
    qtbot.keyClick(form, Qt.Key.Key_F2)
    editor = form.findChild(QLineEdit)
    qtbot.keyClicks(editor, "7")

    def meanwhile():
        type_in(ann.frame.state.workspace.project, "opening", opening, "wave", "9", who="ann")
        ben.frame.state.workspace.refresh([opening])

    if when == "while it is typed":
        meanwhile()
    press_return(qtbot, editor)
    assert proposal.isVisible()
    if when == "while it is offered":
        meanwhile()
    qtbot.mouseClick(proposal.take, Qt.MouseButton.LeftButton)
    assert "now:\t9 (ann, " in asked(ben).text()
    qtbot.mouseClick(ben.frame.telling.asked.theirs, Qt.MouseButton.LeftButton)
    assert checked_of(ben, "M004").given.opening.wave == "9"
