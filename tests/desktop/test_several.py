"""Several openings in the inspector, by mouse and by keys: mixed values, an edit of many, two beside one another."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLineEdit

from hwsched.desktop.survey.facts_form import ATTRIBUTE
from tests.desktop.conftest import checked_of, choose, idle

KEY, LEFT = Qt.Key, Qt.MouseButton.LeftButton
CTRL = Qt.KeyboardModifier.ControlModifier
MARKS = ("M003", "M004", "M005", "M006", "M007", "M012", "M016", "M116", "M216", "E1", "X1", "A-02")


def line_of(form, section, label):
    for n in range(form.topLevelItemCount()):
        top = form.topLevelItem(n)
        for k in range(top.childCount()):
            if top.text(0).startswith(section) and top.child(k).text(0) == label:
                return top.child(k)
    raise AssertionError((section, label))


def held(window, attribute):
    """The fact of the leaf of each of the openings."""
    checked = window.frame.state.workspace.checked.values()
    return {
        each.given.opening.mark: getattr(each.given.leaves[0], attribute)
        for each in checked
        if each.given.opening.mark in MARKS
    }


def enter(qtbot, form):
    """Press Enter in the editor, and wait until it is gone: Qt takes a key in an editor a moment later."""
    editor = form.findChild(QLineEdit)
    with qtbot.waitSignal(editor.destroyed, timeout=5000):
        qtbot.keyClick(editor, KEY.Key_Return)


@pytest.fixture
def many(at_work, qtbot):
    choose(at_work, *MARKS)
    at_work.activateWindow()
    assert at_work.inspected.currentWidget() is at_work.several.several
    return at_work.several.several


def test_one_fact_of_many_is_edited_by_mouse_and_taken_back_by_one_undo_and_two_are_compared(at_work, qtbot, many):
    form, proposal = many.form, many.proposal
    assert many.title.text() == f"{len(MARKS)} openings"
    before = held(at_work, "undercut_mm")
    line = line_of(form, "Leaf", "Undercut")
    form.scrollToItem(line)
    at = form.visualRect(form.indexFromItem(line, 1)).center()
    qtbot.mouseClick(form.viewport(), LEFT, pos=at)
    qtbot.mouseDClick(form.viewport(), LEFT, pos=at)
    editor = form.findChild(QLineEdit)
    qtbot.keyClick(editor, KEY.Key_A, CTRL)
    qtbot.keyClicks(editor, "7/8")
    enter(qtbot, form)
    assert proposal.isVisible()
    changed = [mark for mark, mm in before.items() if mm != 22.225]
    assert [proposal.table.item(row, 0).text() for row in range(proposal.table.rowCount())] == changed
    assert {proposal.table.item(row, 2).text() for row in range(proposal.table.rowCount())} == {'7/8"'}
    assert held(at_work, "undercut_mm") == before, "nothing is written before it was seen"
    qtbot.mouseClick(proposal.take, LEFT)
    idle(qtbot, at_work)
    assert set(held(at_work, "undercut_mm").values()) == {22.225}
    assert line_of(form, "Leaf", "Undercut").text(1) == '7/8"'
    at_work.history.act_undo.trigger()
    idle(qtbot, at_work)
    assert held(at_work, "undercut_mm") == before
    # Two of them are laid beside one another, and one is shown as itself.
    choose(at_work, "M004", "M116")
    several = at_work.several.several
    assert several.title.text() == "M004 and M116"
    assert several.pages.currentWidget() is several.compare
    table = several.compare.table
    marks = [table.item(row, 0).text() for row in range(table.rowCount())]
    differ = marks.count("≠")
    assert 0 < differ < len(marks)
    assert marks[:differ] == ["≠"] * differ
    qtbot.mouseClick(several.compare.only, LEFT, pos=several.compare.only.rect().center() / 8)
    qtbot.keyClick(several.compare.only, KEY.Key_Space) if not several.compare.only.isChecked() else None
    assert table.rowCount() == differ
    choose(at_work, "M004")
    assert at_work.inspected.currentWidget() is at_work.sheet


def test_the_same_by_keys_and_mixed_values_are_left_alone(at_work, qtbot, many):
    form, proposal = many.form, many.proposal
    before = held(at_work, "thickness_mm")
    assert len(set(before.values())) > 1
    line = line_of(form, "Leaf", "Leaf thickness")
    assert line.text(1).startswith("mixed: ")
    qtbot.mouseClick(form.viewport(), LEFT, pos=form.visualItemRect(form.topLevelItem(0).child(0)).center())
    while form.currentItem() is not line:
        qtbot.keyClick(form, KEY.Key_Down)
    qtbot.keyClick(form, KEY.Key_F2)
    editor = form.findChild(QLineEdit)
    assert editor.text() == ""
    enter(qtbot, form)
    assert not proposal.isVisible(), "nothing typed, nothing asked"
    qtbot.keyClick(form, KEY.Key_F2)
    editor = form.findChild(QLineEdit)
    qtbot.keyClicks(editor, "thick")
    enter(qtbot, form)
    # What cannot be read is kept where it can be mended, with the reason.
    assert QApplication.focusWidget() is proposal.field
    assert proposal.field.text() == "thick"
    assert "thick" in proposal.told.text()
    assert not proposal.take.isEnabled()
    qtbot.keyClick(proposal.field, KEY.Key_A, CTRL)
    qtbot.keyClicks(proposal.field, "2 1/8")
    qtbot.keyClick(proposal.field, KEY.Key_Escape)
    assert not proposal.isVisible()
    assert QApplication.focusWidget() is form
    assert held(at_work, "thickness_mm") == before
    qtbot.keyClick(form, KEY.Key_F2)
    qtbot.keyClicks(form.findChild(QLineEdit), "2 1/8")
    enter(qtbot, form)
    assert QApplication.focusWidget() is proposal.take
    qtbot.keyClick(proposal.take, KEY.Key_Return)
    idle(qtbot, at_work)
    assert set(held(at_work, "thickness_mm").values()) == {53.975}
    assert form.currentItem().data(1, ATTRIBUTE).name == "thickness_mm"


def test_an_old_step_of_an_opening_is_taken_back_on_its_page_with_its_values_seen(at_work, qtbot):
    choose(at_work, "M004")
    sheet = at_work.sheet
    opening = at_work.frame.state.chosen
    sheet.edited.emit("opening", opening, "notes", "first")
    sheet.edited.emit("opening", opening, "wave", "2")
    page = sheet.past_page
    bar = sheet.pages.tabBar()
    at = sheet.pages.indexOf(page)
    qtbot.keyClick(bar, Qt.Key.Key_End)
    sheet.pages.setCurrentIndex(at) if sheet.pages.currentIndex() != at else None
    tree = page.tree
    assert tree.topLevelItem(0).child(0).text(2) == "2"
    notes = tree.topLevelItem(1)
    assert [notes.child(0).text(n) for n in (0, 1, 2)] == ["Opening: Notes", "unknown", "first"]
    qtbot.mouseClick(tree.viewport(), Qt.MouseButton.LeftButton, pos=tree.visualItemRect(notes.child(0)).center())
    qtbot.mouseClick(page.back, Qt.MouseButton.LeftButton)
    idle(qtbot, at_work)
    opening = checked_of(at_work, "M004").given.opening
    assert (opening.notes, opening.wave) == (None, "2")
    assert page.again.isEnabled()
    qtbot.keyClick(page.again, Qt.Key.Key_Space)
    idle(qtbot, at_work)
    assert checked_of(at_work, "M004").given.opening.notes == "first"
    # Beside it the assembly is drawn when it is looked at.
    sheet.pages.show_page(sheet.assembly_page)
    plain = sheet.assembly_page.view.grab().toImage()
    assert "steps of the work" in sheet.assembly_page.notes.text()
    sheet.assembly_page.view.show_drawings(())
    assert sheet.assembly_page.view.grab().toImage() != plain
