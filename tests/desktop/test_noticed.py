"""What is noticed as a project is opened is said in the desktop: changed past the journal, to be read only."""

import sqlite3
from contextlib import closing

import pytest

from hwsched.desktop.window import Window
from hwsched.model.file import sqlite_file
from hwsched.model.project import create_project
from hwsched.operations.survey.editing import add_opening
from tests.desktop.conftest import idle


@pytest.fixture
def yard(tmp_path):
    path = tmp_path / "yard.hwsched"
    with create_project(path, "Yard") as project:
        add_opening(project, {"mark": "M1"}, who="ann")
    return path


@pytest.fixture
def window(qtbot):
    shown = Window("tester")
    qtbot.addWidget(shown)
    shown.show()
    return shown


def opened(window, qtbot, path):
    window.project.open_project(str(path))
    qtbot.waitUntil(lambda: window.frame.state.workspace is not None, timeout=30000)
    idle(qtbot, window)


def test_a_project_as_it_should_be_is_opened_without_a_word(window, qtbot, yard):
    opened(window, qtbot, yard)
    assert window.project.noticed is None


def test_what_was_changed_past_the_journal_is_said(window, qtbot, yard):
    with closing(sqlite3.connect(yard)) as database, database:
        database.execute("UPDATE opening SET hand = '<b>LH</b>'")
    opened(window, qtbot, yard)
    assert "M1: hand nothing -> <b>LH</b>" in window.project.noticed.text()
    assert "hwsched project verify" in window.project.noticed.text()
    assert window.openings.register.total() == 1
    window.project.noticed.close()


def test_one_that_can_only_be_read_is_shown_and_says_so(window, qtbot, yard, monkeypatch):
    monkeypatch.setattr(sqlite_file, "_writable", lambda path: False)
    opened(window, qtbot, yard)
    assert "opened to be read only" in window.project.noticed.text()
    assert window.status.where.text().endswith(", read only"), "it is said as long as it is open"
    assert window.openings.register.total() == 1
    window.project.noticed.close()
