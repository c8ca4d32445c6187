"""Jobs: stopped whenever a person says so, never holding the screen, and kept to be read when they are over."""

import threading

import pytest
from PySide6.QtCore import Qt, QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QApplication

from hwsched.desktop.jobs.jobs import Jobs
from hwsched.desktop.looks.appearance import Look
from hwsched.operations.findings import checking
from hwsched.operations.release import project_view
from tests.desktop.conftest import choose, idle
from tests.desktop.test_access import look  # noqa: F401 (a fixture)

LEFT, CONTROL = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.ControlModifier


@pytest.fixture
def held(monkeypatch):
    """Work of these names waits until it is let go."""
    go = threading.Event()

    def hold(module, name):
        real = getattr(module, name)

        def waiting(*arguments, **named):
            assert go.wait(60)
            return real(*arguments, **named)

        monkeypatch.setattr(module, name, waiting)
        return go

    yield hold
    go.set()


def latest(window):
    return window.frame.jobs.log.entries[0]


def test_a_schedule_is_stopped_before_it_is_written(at_work, qtbot, tmp_path, held):
    go = held(project_view, "project_view")
    at_work.release.print_documents(["schedule"], "all", tmp_path / "out", "letter")
    qtbot.mouseClick(at_work.status.stop, LEFT)
    assert not at_work.status.stop.isEnabled()
    go.set()
    idle(qtbot, at_work)
    assert not [each for each in (tmp_path / "out").rglob("*") if each.is_file()]
    assert (latest(at_work).title, latest(at_work).outcome) == ("Printing", "stopped")
    assert at_work.frame.telling.told is None, "what a person wanted is no failure"


def test_reading_that_is_stopped_takes_nothing_over(at_work, qtbot, held):
    go = held(checking, "check_openings")
    before = dict(at_work.frame.state.workspace.checked)
    at_work.fitting.act_check.trigger()
    qtbot.mouseClick(at_work.status.stop, LEFT)
    go.set()
    idle(qtbot, at_work)
    assert at_work.frame.state.workspace.checked == before
    assert at_work.openings.register.total() == len(before)


def test_closing_does_not_hold_the_screen_for_a_job(at_work, qtbot, monkeypatch):
    monkeypatch.setattr(Jobs, "closing_ms", 0)
    go, began = threading.Event(), threading.Event()

    def work(_progress, cancelled):
        began.set()
        # Held the screen for this, nothing would ever let it go on.
        assert go.wait(30)
        return cancelled()

    at_work.frame.jobs.run("Slow work", work)
    try:
        qtbot.waitUntil(began.is_set, timeout=30_000)
        at_work.activateWindow()
        qtbot.waitUntil(at_work.isActiveWindow)
        qtbot.keyClick(QApplication.focusWidget() or at_work, Qt.Key.Key_Q, CONTROL)
        assert at_work.isVisible()
        assert at_work.statusBar().currentMessage() == "Stopping: Slow work. It is closed as soon as it can be."
    finally:
        go.set()
    qtbot.waitUntil(lambda: not at_work.isVisible(), timeout=30000)
    assert at_work.frame.state.workspace is None


def test_what_a_job_came_to_stays_to_be_read_with_its_reasons(at_work, qtbot, tmp_path, monkeypatch):
    choose(at_work, "M004", "M008")
    at_work.fitting.act_fit.trigger()
    idle(qtbot, at_work)
    at_work.activateWindow()
    qtbot.waitUntil(at_work.isActiveWindow)
    qtbot.keyClick(QApplication.focusWidget() or at_work, Qt.Key.Key_F7)
    page, total = at_work.drawer.jobs, at_work.openings.register.total()
    fit = sum(each.fit.status == "fits" for each in at_work.frame.state.workspace.checked.values())
    assert page.isVisible()
    assert page.said.text().startswith(
        f"Fitting {total} openings: {fit} of {total} openings fit · {total - fit} left out"
    )
    left = {page.lines.topLevelItem(n).text(0): page.lines.topLevelItem(n).text(1) for n in range(total - fit)}
    assert left["M008"].startswith("does not fit: ")
    assert any(why.startswith("to measure: ") for why in left.values())
    at_work.release.print_documents(["pick-list"], "chosen", tmp_path, "letter")
    idle(qtbot, at_work)
    assert [page.list.item(row).text().split(":")[0] for row in range(2)] == ["Printing", f"Fitting {total} openings"]
    opened = []
    monkeypatch.setattr(QDesktopServices, "openUrl", lambda url: opened.append(url) or True)
    qtbot.mouseClick(page.folder, LEFT)
    qtbot.mouseClick(page.file, LEFT)
    written = latest(at_work).report.files
    assert opened == [QUrl.fromLocalFile(str(tmp_path)), QUrl.fromLocalFile(str(written[0]))]
    choose(at_work, "M005")
    qtbot.mouseClick(page.openings, LEFT)
    assert len(at_work.frame.state.ids) == 2


def test_what_could_not_be_done_stays_to_be_tried_again(at_work, qtbot):
    at_work.opening.add_opening("M004")
    at_work.frame.telling.told.close()
    at_work.opening.remove_openings([choose(at_work, "M004")[0]])
    idle(qtbot, at_work)
    problems = at_work.drawer.problems
    assert "already" in problems.list.item(0).text()
    at_work.drawer.turn()
    at_work.drawer.setCurrentWidget(problems)
    total = at_work.openings.register.total()
    qtbot.mouseClick(problems.again, LEFT)
    idle(qtbot, at_work)
    assert at_work.openings.register.total() == total + 1
    assert problems.count == 0


def test_a_running_job_s_title_stands_alone_in_the_line_whatever_the_text_size(qapp, at_work, qtbot, held, look):  # noqa: F811
    own = Look(qapp, at_work.frame.preferences)
    at_work.frame.go("preferences")
    page = at_work.frame.pages.widgets["preferences"]
    status = at_work.status
    go = held(checking, "check_openings")
    at_work.fitting.act_check.trigger()
    for key in (Qt.Key.Key_End, Qt.Key.Key_Home):
        page.text_size.setFocus()
        height = status.parent().height()
        qtbot.keyClick(page.text_size, Qt.Key.Key_Down, Qt.KeyboardModifier.AltModifier)
        qtbot.keyClick(page.text_size.view(), key)
        qtbot.keyClick(page.text_size.view(), Qt.Key.Key_Return)
        qtbot.waitUntil(lambda before=height: status.parent().height() != before)
        qtbot.wait(50)
        assert at_work.statusBar().currentMessage()
        assert not status.counts.isVisible(), "two texts would stand over one another"
    go.set()
    idle(qtbot, at_work)
    assert not at_work.statusBar().currentMessage()
    assert status.counts.isVisible()
    own.setParent(None)
