"""The landing place: counts by person that lead to what stands behind them, by mouse and by keyboard."""

import threading

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from hwsched.desktop.jobs.jobs import Jobs
from hwsched.desktop.project import today_page
from hwsched.desktop.project.preferences import Preferences
from hwsched.desktop.project.today_page import TodayPage
from hwsched.desktop.project.today_rows import CountRow, LevelRow
from hwsched.desktop.window import Window
from hwsched.operations.project.today import LevelProgress, SinceRelease, Task, Today


@pytest.fixture
def page(at_work, qtbot):
    made = TodayPage(at_work.frame)
    qtbot.addWidget(made)
    made.resize(1270, 680)
    made.show()
    qtbot.waitUntil(lambda: made.today is not None, timeout=20000)
    return made


def row(page, name):
    (found,) = [each for each in page.rows() if each.task.name == name]
    return found


def test_counts_are_those_of_the_project_and_lead_to_its_openings(page, at_work, qtbot):
    checked = at_work.frame.state.workspace.checked
    unmeasured = [key for key, each in checked.items() if each.fit is not None and each.fit.status == "to-measure"]
    assert len(unmeasured) >= 2
    measure = row(page, "to-measure")
    assert measure.accessibleName() == f"{len(unmeasured)} openings to measure"
    with qtbot.waitSignal(page.wants_openings) as led:
        qtbot.mouseClick(measure, Qt.MouseButton.LeftButton)
    assert led.args == [unmeasured, "openings to measure"]
    # From there on by keyboard alone.
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
    beside = QApplication.focusWidget()
    assert isinstance(beside, CountRow)
    assert beside.task.name != "to-measure"
    with qtbot.waitSignal(page.wants_openings) as led:
        qtbot.keyClick(beside, Qt.Key.Key_Space)
    assert led.args[0] == list(beside.task.openings)
    assert row(page, "short").task.count > 0 or not row(page, "short").isEnabled()

    levels = page.findChildren(LevelRow)
    assert sum(each.progress.total for each in levels) == len(checked)
    with qtbot.waitSignal(page.wants_openings) as led:
        qtbot.mouseClick(levels[0], Qt.MouseButton.LeftButton)
    assert led.args == [list(levels[0].progress.openings), levels[0].text()]


def test_counts_follow_what_is_changed_and_the_keyboard_stays_where_it_was(page, at_work, qtbot):
    before = row(page, "to-measure").task.count
    qtbot.mouseClick(row(page, "to-measure"), Qt.MouseButton.LeftButton)
    fits = next(
        e for e in at_work.frame.state.workspace.checked.values() if e.fit is not None and e.fit.status == "fits"
    )
    at_work.opening.retire_openings([fits.given.opening.id], "gone with the wall")
    total = len(at_work.frame.state.workspace.checked)
    qtbot.waitUntil(lambda: sum(each.progress.total for each in page.findChildren(LevelRow)) == total, timeout=20000)
    assert row(page, "to-measure").task.count == before
    assert QApplication.focusWidget() is row(page, "to-measure")


def test_what_changed_since_the_release_leads_to_it(qtbot):
    window = Window("tester")
    qtbot.addWidget(window)
    page = TodayPage(window.frame)
    qtbot.addWidget(page)
    since = SinceRelease("B", "2026-03-01T10:00", ("n",), ("c", "d"), 3, 0)
    tasks = (
        Task("questions", "surveyor", "questions of deliveries to decide", 1),
        Task("short", "storekeeper", "parts", 1, parts=("X",)),
    )
    states = {"ready": 1, "held": 0, "does-not-fit": 2, "to-measure": 0, "not-worked-out": 0}
    page.show_today(Today(tasks, (LevelProgress("", "", states, ("n", "c", "d")),), {}, since))
    told = {each.task.name: each for each in page.rows()}
    assert told["questions"].text() == "1 question of deliveries to decide"
    assert not told["since-others"].isEnabled()
    for name, signal, args in (
        ("since-new", page.wants_openings, [["n"], "openings new since revision B"]),
        ("since-changed", page.wants_openings, [["c", "d"], "openings otherwise since revision B"]),
        ("since-gone", page.wants_differences, []),
        ("questions", page.wants_questions, []),
        ("short", page.wants_parts, [["X"], "parts"]),
    ):
        with qtbot.waitSignal(signal) as led:
            qtbot.mouseClick(told[name], Qt.MouseButton.LeftButton)
        assert led.args == args, name
    (level,) = page.findChildren(LevelRow)
    assert level.accessibleName() == "No building, no level: 1 ready, 2 do not fit"


def test_who_opens_a_project_first_lands_here_and_later_where_they_were(qtbot, project_file):
    preferences = Preferences()
    preferences.place = ""
    window = Window("tester", preferences)
    qtbot.addWidget(window)
    window.show()
    window.project.open_project(str(project_file))
    here = window.frame.trail
    assert here.here.place == "today"
    page = window.frame.pages.page("today")
    qtbot.waitUntil(lambda: page.today is not None, timeout=30000)
    measure = row(page, "to-measure")
    qtbot.mouseClick(measure, Qt.MouseButton.LeftButton)
    assert here.here.place == "openings"
    assert list(window.frame.state.ids) == list(measure.task.openings)
    assert Preferences().place == "openings"
    qtbot.keyClick(window, Qt.Key.Key_Left, Qt.KeyboardModifier.AltModifier)
    assert here.here.place == "today"
    # The page follows another project, and shows nothing of the one before.
    window.project.open_project(str(project_file))
    assert page.today is None
    qtbot.waitUntil(lambda: page.today is not None, timeout=30000)


def test_closing_does_not_hold_the_screen_for_a_count(page, at_work, qtbot, monkeypatch):
    monkeypatch.setattr(Jobs, "closing_ms", 0)
    go, began, real = threading.Event(), threading.Event(), today_page.read_today

    def counting(*given, **named):
        began.set()
        assert go.wait(30)
        return real(*given, **named)

    monkeypatch.setattr(today_page, "read_today", counting)
    at_work.opening.add_opening("NEW-1")
    try:
        qtbot.waitUntil(began.is_set, timeout=30_000)
        at_work.close()
        assert at_work.isVisible(), "the count is asked to stop, and the screen goes on meanwhile"
    finally:
        go.set()
    qtbot.waitUntil(lambda: not at_work.isVisible(), timeout=30000)
    assert at_work.frame.state.workspace is None
