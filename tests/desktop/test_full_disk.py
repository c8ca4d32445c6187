"""What was typed or chosen and could not be written, as on a full disk, stays where it is with the reason."""

import sqlite3

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox

from hwsched.model.file.sqlite_file import refusal_of
from hwsched.operations.survey import many_facts, typed_values
from tests.desktop.conftest import checked_of, choose, idle
from tests.desktop.grid.test_register_grid import click, grid  # noqa: F401 (a fixture)

KEY = Qt.Key


class FullDisk(sqlite3.OperationalError):
    """As SQLite raises it."""

    sqlite_errorcode = sqlite3.SQLITE_FULL


@pytest.fixture
def disk(monkeypatch, corner_file):
    """A disk that is full until room is made on it."""
    held = {"full": True}

    def on_it(write):
        def written(project, *told, **named):
            if held["full"]:
                raise refusal_of(corner_file, FullDisk("database or disk is full"))
            return write(project, *told, **named)

        return written

    monkeypatch.setattr(typed_values, "type_in", on_it(typed_values.type_in))
    monkeypatch.setattr(many_facts, "edit_many", on_it(many_facts.edit_many))
    return held


def say_and_close(window):
    """Close what is told, and return all of its words."""
    told = window.frame.telling.told
    words = f"{told.text()} {told.informativeText()}"
    told.close()
    return words


def pick_another(qtbot, form):
    """Choose another word in the cell of the current line, by keys."""
    qtbot.keyClick(form, KEY.Key_F2)
    box = form.findChild(QComboBox)
    before = box.currentText()
    qtbot.keyClick(box, KEY.Key_Up)
    wanted = box.currentText()
    assert wanted != before
    with qtbot.waitSignal(box.destroyed, timeout=5000):
        qtbot.keyClick(box, KEY.Key_Return)
    return before, wanted


def test_a_choice_of_the_form_is_kept_with_the_reason_and_taken_once_there_is_room(at_work, qtbot, disk):
    facts = at_work.sheet.facts
    choose(at_work, "M004")
    at_work.sheet.pages.setCurrentWidget(facts)
    facts.setFocus()
    facts.setCurrentItem(facts.findItems("Hand", Qt.MatchFlag.MatchExactly | Qt.MatchFlag.MatchRecursive, 0)[0], 1)
    held = checked_of(at_work, "M004").given.opening.hand
    before, wanted = pick_another(qtbot, facts)
    idle(qtbot, at_work)
    words = say_and_close(at_work)
    assert "is full" in words
    assert words.lower().count("nothing was changed") == 1
    line = facts.currentItem()
    assert line.text(1) == wanted
    assert "is full" in line.child(0).text(0)
    assert line.child(0).text(0).endswith(f"{before} stands.")
    assert checked_of(at_work, "M004").given.opening.hand == held
    disk["full"] = False
    qtbot.keyClick(facts, KEY.Key_F2)
    box = facts.findChild(QComboBox)
    assert box.currentText() == wanted
    with qtbot.waitSignal(box.destroyed, timeout=5000):
        qtbot.keyClick(box, KEY.Key_Return)
    idle(qtbot, at_work)
    assert checked_of(at_work, "M004").given.opening.hand != held
    assert facts.currentItem().text(1) == wanted
    assert facts.currentItem().childCount() == 0


def test_a_choice_in_a_cell_of_the_register_is_kept_with_the_reason(at_work, qtbot, grid, disk):  # noqa: F811
    click(qtbot, grid, "M004", "opening.hand")
    index = grid.table.currentIndex()
    held = checked_of(at_work, "M004").given.opening.hand
    before, wanted = pick_another(qtbot, grid.table)
    idle(qtbot, at_work)
    assert say_and_close(at_work).lower().count("nothing was changed") == 1
    assert index.data() == wanted
    assert "is full" in index.data(Qt.ItemDataRole.ToolTipRole)
    assert "is full" in grid.echo.text()
    assert grid.echo.isVisible()
    assert checked_of(at_work, "M004").given.opening.hand == held
    disk["full"] = False
    at_work.activateWindow()
    grid.table.setFocus()
    qtbot.keyClick(grid.table, KEY.Key_F2)
    box = grid.table.findChild(QComboBox)
    assert box.currentText() == wanted
    with qtbot.waitSignal(box.destroyed, timeout=5000):
        qtbot.keyClick(box, KEY.Key_Return)
    idle(qtbot, at_work)
    assert checked_of(at_work, "M004").given.opening.hand != held
    assert index.data() == wanted
    assert index.data(Qt.ItemDataRole.ToolTipRole) == wanted
    assert not grid.echo.isVisible()
    assert before != wanted
