"""What goes wrong on the desktop: told where it was asked for, honest about what stands, with a way on, never lost."""

import logging
import os
import signal
import sqlite3
import subprocess
import sys
from contextlib import closing

import pytest
from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtWidgets import QFileDialog
from pytestqt.exceptions import capture_exceptions
from shiboken6 import isValid

from hwsched.desktop.findings.rulebook_window import RulebookWindow
from hwsched.desktop.jobs.jobs import Failure, Jobs
from hwsched.desktop.jobs.last_resort import LastResort, qt_messages_logged
from hwsched.desktop.jobs.trouble import FailureDialog, tell_failure
from hwsched.model.errors import ChangeError
from hwsched.operations.project.history import history
from hwsched.operations.survey.editing import add_opening, edit_facts
from tests.desktop.conftest import checked_of, idle


def steps(at_work):
    return len(history(at_work.frame.state.workspace.project))


def press(box, words):
    (button,) = [each for each in box.buttons() if each.text().replace("&", "") == words]
    button.click()


@pytest.fixture
def writer(corner_file):
    """Another program's writing transaction on the project."""
    with closing(sqlite3.connect(corner_file, isolation_level=None)) as other:
        yield other


def test_a_form_that_cannot_be_written_is_told_and_another_place_offered(at_work, monkeypatch):
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: ("/proc/none/form.xlsx", ""))
    at_work.survey.ask_form()
    box = at_work.frame.telling.told
    assert "/proc/none/form.xlsx cannot be written" in box.text()
    assert box.informativeText() == "Nothing was changed in the project."
    asked = []
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: asked.append(True) or ("", ""))
    press(box, "Choose again…")
    assert asked == [True]


def test_printing_into_a_place_that_is_no_folder_is_told(at_work, qtbot, tmp_path):
    (tmp_path / "file").write_text("x")
    at_work.release.print_documents(["schedule"], "all", tmp_path / "file", "a4")
    idle(qtbot, at_work)
    assert "cannot be written" in at_work.frame.telling.told.text()
    at_work.frame.telling.told.close()


def test_what_was_written_before_it_failed_is_said_and_shown(at_work, qtbot):
    project = at_work.frame.state.workspace.project
    opening = checked_of(at_work, "M004").given.opening.id

    def work(_progress, _cancelled):
        edit_facts(project, "opening", opening, {"notes": "written first"}, who="t")
        raise ChangeError("the second part was refused")

    before = steps(at_work)
    at_work.frame.jobs.run("Two things", work)
    idle(qtbot, at_work)
    box = at_work.frame.telling.told
    assert box.text() == "the second part was refused"
    assert box.windowTitle() == "Done in part"
    assert f"change set {before + 1}" in box.informativeText()
    assert "Nothing was changed" not in box.informativeText()
    assert at_work.frame.state.workspace.checked[opening].given.opening.notes == "written first", (
        "the views follow all the same"
    )
    box.close()


def test_a_window_that_is_closed_meanwhile_takes_nothing_along(at_work, qtbot):
    import threading

    at_work.findings.act_rulebook.trigger()
    window = at_work.frame.side.windows[RulebookWindow]
    project, go, heard = at_work.frame.state.workspace.project, threading.Event(), []
    written = threading.Event()

    def work(_progress, cancelled):
        made = add_opening(project, {"mark": "LATE"}, who="t")
        written.set()
        go.wait(30)
        return made, cancelled()

    window.run("Slow work", work, heard.append)
    # What is asked to stop before it has written writes nothing more.
    qtbot.waitUntil(written.is_set, timeout=30_000)
    window.close()
    qtbot.waitUntil(lambda: not isValid(window))
    assert at_work.frame.jobs.busy, "closing a window does not hold the screen until its work is done"
    go.set()
    idle(qtbot, at_work)
    assert heard == []
    assert checked_of(at_work, "LATE")
    assert at_work.openings.register.row_of_id(checked_of(at_work, "LATE").given.opening.id) is not None


def test_a_window_that_was_closed_hears_of_no_edit(at_work, qtbot):
    """An exception out of what is left of it would be told as a failure of the program."""
    actions = (
        at_work.power.act_power, at_work.release.act_revisions, at_work.beside.acts["sets"],
        at_work.beside.acts["cost"],
        at_work.fitting.act_what_if, at_work.findings.act_waivers, at_work.survey.act_missing,
    )  # fmt: skip
    for action in actions:
        action.trigger()
        idle(qtbot, at_work)
    at_work.frame.go("siting")
    closed = list(at_work.frame.side.windows.values())
    at_work.frame.side.close()
    qtbot.waitUntil(lambda: not any(isValid(each) for each in closed))
    with capture_exceptions() as caught:
        at_work.sheet.edited.emit("opening", at_work.frame.state.chosen, "notes", "seen again")
        idle(qtbot, at_work)
    assert caught == []
    assert at_work.frame.state.checked.given.opening.notes == "seen again"


def test_another_writer_holds_up_the_edit_and_not_the_screen(at_work, qtbot, writer, monkeypatch):
    monkeypatch.setattr(Jobs, "patience_ms", 20)
    opening = checked_of(at_work, "M004").given.opening.id
    ticks = []
    timer = QTimer()
    timer.setInterval(5)
    timer.timeout.connect(lambda: ticks.append(True))
    writer.execute("BEGIN IMMEDIATE")
    timer.start()
    at_work.opening.type_fact("opening", opening, "notes", "first")
    at_work.opening.type_fact("opening", opening, "notes", "second")
    assert at_work.frame.jobs.busy
    assert at_work.frame.state.workspace.checked[opening].given.opening.notes is None
    qtbot.waitUntil(lambda: len(ticks) > 20, timeout=5000)
    timer.stop()
    assert at_work.frame.jobs.busy, "the lock is still held"
    writer.execute("ROLLBACK")
    idle(qtbot, at_work)
    assert at_work.frame.state.workspace.checked[opening].given.opening.notes == "second", "in the order asked for"
    assert [step.verb for step in history(at_work.frame.state.workspace.project)[-2:]] == ["edit-facts"] * 2


def test_a_project_that_stays_busy_can_be_tried_again(at_work, qtbot, writer, monkeypatch):
    with at_work.frame.state.workspace.project.reading() as connection:
        connection.exec_driver_sql("PRAGMA busy_timeout = 50")
    opening = checked_of(at_work, "M004").given.opening.id
    writer.execute("BEGIN IMMEDIATE")
    at_work.opening.type_fact("opening", opening, "notes", "held up")
    idle(qtbot, at_work)
    assert "somebody else is writing" in at_work.frame.telling.told.text()
    writer.execute("ROLLBACK")
    press(at_work.frame.telling.told, "Try again")
    idle(qtbot, at_work)
    assert at_work.frame.state.workspace.checked[opening].given.opening.notes == "held up"


def test_an_edit_that_waits_is_made_before_the_window_goes(at_work, qtbot, writer, monkeypatch, corner_file):
    monkeypatch.setattr(Jobs, "patience_ms", 20)
    opening = checked_of(at_work, "M004").given.opening.id
    writer.execute("BEGIN IMMEDIATE")
    at_work.opening.type_fact("opening", opening, "notes", "kept")
    assert at_work.frame.jobs.busy
    writer.execute("ROLLBACK")
    at_work.close()
    with closing(sqlite3.connect(corner_file)) as database:
        assert database.execute("SELECT notes FROM opening WHERE id = ?", (opening,)).fetchone() == ("kept",)


def test_an_edit_that_fails_as_the_window_closes_is_told_first(at_work, qtbot, writer, monkeypatch):
    with at_work.frame.state.workspace.project.reading() as connection:
        connection.exec_driver_sql("PRAGMA busy_timeout = 50")
    monkeypatch.setattr(Jobs, "patience_ms", 1)
    opening = checked_of(at_work, "M004").given.opening.id
    writer.execute("BEGIN IMMEDIATE")
    at_work.opening.type_fact("opening", opening, "notes", "lost?")
    at_work.close()
    assert at_work.isVisible()
    assert "somebody else is writing" in at_work.frame.telling.told.text()
    writer.execute("ROLLBACK")
    at_work.frame.telling.told.close()


def test_a_bad_project_is_told_and_another_one_can_be_chosen(at_work, qtbot, tmp_path, monkeypatch):
    (tmp_path / "bad.hwsched").write_text("letters")
    chosen = [str(tmp_path / "bad.hwsched"), ""]
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (chosen.pop(0), ""))
    at_work.project.ask_open()
    idle(qtbot, at_work)
    assert "is not a project" in at_work.frame.telling.told.text()
    press(at_work.frame.telling.told, "Choose again…")
    assert chosen == []
    assert at_work.frame.state.workspace is not None, "what was open stays open"


def test_a_failure_of_the_program_s_own_gives_a_report_that_can_be_saved(at_work, qtbot, tmp_path, monkeypatch, caplog):
    monkeypatch.setenv("HWSCHED_LOG", str(tmp_path / "log"))
    opening = checked_of(at_work, "M004").given.opening
    mark, room = opening.mark, opening.room_to
    assert room

    def broken(_progress, _cancelled):
        raise KeyError(f"{mark} {room}")

    at_work.frame.jobs.run("Something", broken)
    idle(qtbot, at_work)
    dialog = at_work.frame.telling.told
    assert isinstance(dialog, FailureDialog)
    assert "KeyError" in dialog.text()
    assert "Nothing was changed" in dialog.text()
    (kept,) = (tmp_path / "log" / "reports").iterdir()
    assert str(kept) in dialog.text()
    for text in (dialog.report, dialog.text(), kept.read_text()):
        assert mark not in text
        assert room not in text
    assert "test_trouble" in dialog.report
    assert [record for record in caplog.records if record.exc_info], "the log has the whole traceback"
    dialog.save_to(tmp_path / "none" / "r.txt")
    assert "cannot be written" in dialog.text()
    dialog.save_to(tmp_path / "r.txt")
    assert (tmp_path / "r.txt").read_text() == dialog.report
    dialog.on.click()
    assert not at_work.frame.jobs.busy


class Slots(QObject):
    asked = Signal()


def test_an_exception_out_of_a_slot_a_thread_or_a_destructor_is_caught_and_told_once(qtbot, caplog):
    import threading

    came, source, last = [], Slots(), LastResort()
    last.came.connect(came.append)

    def slot():
        raise ValueError("out of a slot")

    class Dying:
        def __del__(self):
            raise LookupError("out of a destructor")

    def thread():
        raise OSError("out of a thread")

    source.asked.connect(slot)
    with last.in_force():
        # As Qt's event loop does it: through the hook, not through the caller.
        for _ in range(3):
            try:
                slot()
            except ValueError:
                sys.excepthook(*sys.exc_info())
        Dying()
        other = threading.Thread(target=thread)
        other.start()
        other.join()
        qtbot.waitUntil(lambda: len(came) == 3)
    assert sorted(type(each).__name__ for each in came) == ["LookupError", "OSError", "ValueError"]
    assert len([record for record in caplog.records if record.exc_info]) == 5, "the log has every one"


def test_qt_s_messages_go_to_the_log(qtbot, caplog):
    from PySide6.QtCore import qWarning

    with qt_messages_logged(lambda _words: None), caplog.at_level(logging.DEBUG, "qt"):
        qWarning("a word of Qt")
    assert ("qt", logging.WARNING, "a word of Qt") in caplog.record_tuples


DESKTOP = """
import os, signal, sys
from PySide6.QtCore import QTimer
from hwsched.desktop import window
class Window(window.Window):
    def showEvent(self, event):
        super().showEvent(event)
        QTimer.singleShot(0, self.act)
    def act(self):
        {act}
from hwsched.desktop import application
application.Window = Window
sys.argv = ["hwsched", "project", "desktop"]
from hwsched.__main__ import main
sys.exit(main())
"""


def desktop(act, tmp_path):
    return subprocess.run(
        [sys.executable, "-c", DESKTOP.format(act=act)],
        env={**os.environ, "HWSCHED_LOG": str(tmp_path), "QT_QPA_PLATFORM": "offscreen"},
        capture_output=True, text=True, check=False, timeout=120,
    )  # fmt: skip


@pytest.mark.turns(2)
@pytest.mark.parametrize(("by", "status"), [("SIGINT", 130), ("SIGTERM", 143)])
def test_a_signal_closes_the_desktop_in_order(by, status, tmp_path):
    done = desktop(f"os.kill(os.getpid(), signal.{by})", tmp_path)
    assert done.returncode == status, done.stderr
    assert "Traceback" not in done.stderr


def test_the_whole_desktop_survives_an_exception_in_a_slot(tmp_path):
    act = "QTimer.singleShot(200, self.close); raise RuntimeError('in a slot')"
    done = desktop(act, tmp_path)
    assert done.returncode == 0, done.stderr
    assert "Traceback" not in done.stderr
    assert len(list((tmp_path / "reports").iterdir())) == 1
    assert "in a slot" in (tmp_path / "hwsched.log").read_text()


def test_a_fault_below_python_leaves_its_place_behind(tmp_path):
    done = desktop("os.kill(os.getpid(), signal.SIGSEGV)", tmp_path)
    assert done.returncode == -signal.SIGSEGV
    assert "in act" in (tmp_path / "faults.log").read_text()


def test_where_nobody_knows_what_was_written_nothing_is_claimed(at_work, qtbot, tmp_path, monkeypatch):
    monkeypatch.setenv("HWSCHED_LOG", str(tmp_path))
    dialog = tell_failure(Failure("", ValueError("x"), None), at_work)
    assert "Nothing was changed" not in dialog.text()
    assert "History" in dialog.text()
    dialog.on.click()
