"""Windows on the project's copies and on what was changed past its journal, by mouse and keys."""

import sqlite3
from contextlib import closing
from datetime import datetime, timedelta

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton

from hwsched.desktop.project.copies_window import CopiesWindow
from hwsched.desktop.project.journal_window import JournalWindow
from hwsched.desktop.window import Window
from hwsched.model.project import create_project, open_project
from hwsched.operations.project.backups import list_backups
from hwsched.operations.project.history import newest
from hwsched.operations.survey.editing import add_opening, edit_facts
from tests.desktop.conftest import idle

LEFT = Qt.MouseButton.LeftButton


def marks(path):
    with closing(sqlite3.connect(path)) as database:
        return dict(database.execute("SELECT mark, hand FROM opening").fetchall())


@pytest.fixture
def yard(tmp_path):
    """A project that was worked in yesterday and today, so that there is a copy."""
    path = tmp_path / "yard.hwsched"
    with create_project(path, "Yard", bare_unit="in") as project:
        add_opening(project, {"mark": "M1"}, who="ann")
    yesterday = (datetime.now().astimezone() - timedelta(days=1)).isoformat(timespec="milliseconds")
    with closing(sqlite3.connect(path)) as database, database:
        database.execute("UPDATE change_set SET at = ?", (yesterday,))
    with open_project(path) as project:
        add_opening(project, {"mark": "M2"}, who="ann")
    assert len(list_backups(path)) == 1
    return path


@pytest.fixture
def window(qtbot, yard):
    shown = Window("ann")
    qtbot.addWidget(shown)
    shown.show()
    shown.project.open_project(str(yard))
    idle(qtbot, shown)
    if shown.project.noticed is not None:
        shown.project.noticed.close()
    return shown


def beside(qtbot, window, name, kind):
    window.beside.acts[name].trigger()
    idle(qtbot, window)
    return window.frame.side.windows[kind]


def test_a_copy_is_put_back_and_the_present_state_kept(qtbot, window, yard):
    copies = beside(qtbot, window, "copies", CopiesWindow)
    assert copies.list.topLevelItemCount() == 1
    assert not copies.back.isEnabled()
    qtbot.mouseClick(copies.list.viewport(), LEFT, pos=copies.list.visualItemRect(copies.list.topLevelItem(0)).center())
    assert copies.back.isEnabled()
    qtbot.mouseClick(copies.back, LEFT)
    assert "kept first" in copies.asked.text()
    yes = next(b for b in copies.asked.findChildren(QPushButton) if b.text() == "Put it back")
    qtbot.mouseClick(yes, LEFT)
    idle(qtbot, window)
    assert set(marks(yard)) == {"M1"}
    assert window.openings.register.rowCount() == 1
    assert any(each.name.startswith("before-restore") for each in list_backups(yard))


def test_a_copy_is_left_when_the_answer_is_no(qtbot, window, yard):
    copies = beside(qtbot, window, "copies", CopiesWindow)
    copies.list.setFocus()
    qtbot.keyClick(copies.list, Qt.Key.Key_Down)
    qtbot.mouseClick(copies.back, LEFT)
    qtbot.keyClick(copies.asked, Qt.Key.Key_Escape)
    idle(qtbot, window)
    assert set(marks(yard)) == {"M1", "M2"}
    assert len(list_backups(yard)) == 1


def test_without_a_foreign_edit_there_is_nothing_to_take(qtbot, window):
    journal = beside(qtbot, window, "journal", JournalWindow)
    # The day of the first step was moved by another program, so that there is a copy of yesterday.
    assert journal.found is not None
    assert journal.take.isEnabled() == bool(journal.found)


def test_what_another_program_changed_is_shown_taken_and_taken_back(qtbot, window, yard):
    with closing(sqlite3.connect(yard)) as database, database:
        database.execute("UPDATE opening SET hand = 'LH' WHERE mark = 'M1'")
    journal = beside(qtbot, window, "journal", JournalWindow)
    assert "M1" in journal.text.toPlainText()
    assert journal.take.isEnabled()
    project = journal.desk.workspace.project
    before = newest(project)
    qtbot.mouseClick(journal.take, LEFT)
    idle(qtbot, window)
    assert newest(project) == before + 1
    assert "M1" not in journal.text.toPlainText()
    edit_facts(project, "opening", next(iter(journal.desk.workspace.checked)), {"notes": "seen"}, who="ann")
    assert marks(yard)["M1"] == "LH"
