"""When something was is told by the project's clock, in words; with the offset where this machine's is otherwise."""

import time
from datetime import UTC, datetime

import pytest
from PySide6.QtCore import Qt

from hwsched.desktop.looks.moments import moment_said
from hwsched.desktop.project.history_window import HistoryWindow
from hwsched.desktop.release.revisions_window import RevisionsWindow
from hwsched.operations.project.settings import set_settings
from tests.desktop.conftest import choose, idle


@pytest.fixture
def in_kolkata(monkeypatch):
    """This machine's clock stands there."""
    monkeypatch.setenv("TZ", "Asia/Kolkata")
    time.tzset()
    yield
    monkeypatch.delenv("TZ")
    time.tzset()


def test_the_offset_is_told_only_where_the_clock_on_the_wall_shows_another_hour(in_kolkata):
    assert moment_said("2031-02-03T14:05:09.123+05:30") == "3 Feb 2031, 14:05"
    assert moment_said("2031-12-31T23:05:09+00:00") == "31 Dec 2031, 23:05 (UTC+00:00)"


def test_no_list_shows_an_offset_of_the_machine_s_own_hour(at_work, qtbot):
    project = at_work.frame.state.workspace.project
    zone = datetime.now(UTC).astimezone().tzinfo
    set_settings(project, who="tests", time_zone="UTC")
    today = datetime.now(UTC)
    said = f"{today.day} {today:%b %Y}, "
    at_work.history.show_history()
    grid = at_work.frame.pages.windows[HistoryWindow].grid
    shown = {grid.model.index(row, grid.model.place_of("when")).data() for row in range(grid.model.rowCount())}
    assert shown
    assert all(each.startswith(said) for each in shown)
    if today.astimezone(zone).utcoffset() == today.utcoffset():
        assert not any("+" in each for each in shown)
    at_work.frame.go("revisions")
    page = at_work.frame.pages.windows[RevisionsWindow]
    page.freeze_it("for approval")
    idle(qtbot, at_work)
    assert page.list.topLevelItem(0).text(1).startswith(said)
    at_work.frame.go("openings")
    choose(at_work, "M016")
    at_work.sheet.pages.show_page(at_work.sheet.past_page)
    assert said in at_work.sheet.past_page.tree.topLevelItem(0).text(0)


def test_history_says_in_words_on_which_machine_a_step_was_made(at_work, qtbot):
    at_work.history.show_history()
    page = at_work.frame.pages.windows[HistoryWindow]
    idle(qtbot, at_work)
    table = page.grid.table
    row = table.visualRect(page.grid.model.index(0, page.grid.model.place_of("what")))
    qtbot.mouseClick(table.viewport(), Qt.MouseButton.LeftButton, pos=row.center())
    assert page.chosen().device
    assert page.told.text() == f"Made on the machine “{page.chosen().device}”"
