"""Where one begins and what stays: recent projects, closing one, files dragged in, how the window stood."""

import shutil
import threading

import pytest
from PySide6.QtCore import QMimeData, QPoint, QSettings, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication

from hwsched.desktop.frame.dropping import dropped
from hwsched.desktop.project.preferences import Preferences
from hwsched.desktop.window import Window
from hwsched.paths import SAMPLE
from tests.desktop.conftest import idle

CONTROL, NOTHING = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.NoModifier


def data(*paths):
    made = QMimeData()
    made.setUrls([QUrl.fromLocalFile(str(each)) for each in paths])
    return made


def drop(window, path):
    held = data(path)
    enter = QDragEnterEvent(QPoint(40, 40), Qt.DropAction.CopyAction, held, Qt.MouseButton.LeftButton, NOTHING)
    QApplication.sendEvent(window, enter)
    QApplication.sendEvent(
        window, QDropEvent(QPoint(40, 40), Qt.DropAction.CopyAction, held, Qt.MouseButton.LeftButton, NOTHING)
    )


@pytest.mark.parametrize(
    ("names", "kind"),
    [
        (["yard.hwsched"], "project"),
        (["list.XLSX"], "book"),
        (["list.csv"], "survey"),
        (["photo.png"], None),
        (["a.csv", "b.csv"], None),
        ([], None),
    ],
)
def test_what_is_dragged_in_is_known_by_its_ending(names, kind):
    found = dropped(data(*(f"/somewhere/{name}" for name in names)))
    assert (found[0] if found is not None else None) == kind


def test_a_project_is_closed_and_a_recent_one_and_a_dropped_one_are_opened(at_work, qtbot, project_file, tmp_path):
    other = tmp_path / "other.hwsched"
    at_work.activateWindow()
    qtbot.waitUntil(at_work.isActiveWindow)
    qtbot.keyClick(QApplication.focusWidget() or at_work, Qt.Key.Key_F4, CONTROL)
    assert at_work.stack.currentWidget() is at_work.welcome
    assert at_work.frame.state.workspace is None
    assert at_work.windowTitle() == "hwsched"
    assert not at_work.fitting.act_fit.isEnabled()
    assert at_work.status.counts.text() == ""
    drop(at_work, SAMPLE / "survey.xlsx")
    assert at_work.statusBar().currentMessage().startswith("Open a project first")
    shutil.copy(project_file, other)
    drop(at_work, other)
    idle(qtbot, at_work)
    assert at_work.frame.state.workspace.place == other
    at_work.frame.preferences.opened(str(other))
    at_work.frame.preferences.opened(str(tmp_path / "gone.hwsched"))
    at_work.frame.preferences.opened(str(project_file))
    at_work.recent.menu.aboutToShow.emit()
    offered = at_work.recent.menu.actions()
    assert [each.toolTip() for each in offered] == [str(project_file), str(tmp_path / "gone.hwsched"), str(other)]
    offered[1].trigger()
    assert "is there no more" in at_work.statusBar().currentMessage()
    assert at_work.frame.preferences.recent == [str(project_file), str(other)]
    offered[0].trigger()
    idle(qtbot, at_work)
    assert at_work.frame.state.workspace.place == project_file


def test_of_a_dropped_workbook_it_is_asked_what_it_is(at_work, qtbot):
    drop(at_work, SAMPLE / "catalogue.xlsx")
    asked = at_work.dropping.asked
    assert [each.text() for each in asked.buttons()] == ["A survey", "A catalogue", "Leave it"]
    before = len(at_work.frame.jobs.log.entries)
    qtbot.mouseClick(next(each for each in asked.buttons() if each.text() == "A catalogue"), Qt.MouseButton.LeftButton)
    idle(qtbot, at_work)
    assert at_work.frame.jobs.log.entries[0].title == "Taking in catalogue.xlsx"
    assert "parts read" in at_work.frame.jobs.log.entries[0].words
    assert len(at_work.frame.jobs.log.entries) == before + 1


def test_of_what_is_dragged_and_cannot_be_taken_it_is_said_why(at_work, qtbot, tmp_path):
    folder = tmp_path / "lists.csv"
    folder.mkdir()
    (tmp_path / "a.csv").write_text("Mark", encoding="utf-8")

    def dragged(*paths):
        at_work.statusBar().clearMessage()
        held = data(*paths)
        enter = QDragEnterEvent(QPoint(40, 40), Qt.DropAction.CopyAction, held, Qt.MouseButton.LeftButton, NOTHING)
        enter.ignore()
        QApplication.sendEvent(at_work, enter)
        assert not enter.isAccepted()
        return at_work.statusBar().currentMessage()

    assert dragged(folder) == "lists.csv is a folder: drop one file of it."
    assert dragged(tmp_path / "a.csv", tmp_path / "b.csv").startswith("Several files are dragged: drop one at a time")
    assert "photo.png can be no project and no list" in dragged(tmp_path / "photo.png")
    words = QMimeData()
    words.setText("M016")
    at_work.statusBar().clearMessage()
    QApplication.sendEvent(
        at_work, QDragEnterEvent(QPoint(4, 4), Qt.DropAction.CopyAction, words, Qt.MouseButton.LeftButton, NOTHING)
    )
    assert not at_work.statusBar().currentMessage(), "a text that is dragged from field to field is nobody's file"


def test_a_file_that_is_dropped_while_work_runs_is_not_swallowed(at_work, qtbot, tmp_path):
    (tmp_path / "a.csv").write_text("Mark\nM1\n", encoding="utf-8")
    go = threading.Event()
    at_work.frame.jobs.run("Working", lambda _progress, _cancelled: go.wait(60))
    drop(at_work, tmp_path / "a.csv")
    assert at_work.statusBar().currentMessage() == "Working is not done yet: drop a.csv again once it is."
    go.set()
    idle(qtbot, at_work)
    assert at_work.survey.preview is None
    drop(at_work, tmp_path / "a.csv")
    qtbot.waitUntil(lambda: at_work.survey.preview is not None, timeout=20000)
    at_work.survey.preview.reject()


def test_the_window_stands_as_it_stood(qtbot, tmp_path):
    kept = QSettings(str(tmp_path / "kept.ini"), QSettings.Format.IniFormat)

    def window():
        made = Window("tester", Preferences(kept=kept))
        qtbot.addWidget(made)
        made.show()
        made.stack.setCurrentWidget(made.work)
        made.inspector.follow(made.frame.pages.places["openings"])
        return made

    first = window()
    room = first.screen().availableGeometry().size()
    assert first.width() <= room.width()
    assert first.height() <= room.height()
    first.resize(780, 560)
    first.split.setSizes([300, 400])
    sizes = first.split.sizes()
    first.close()
    second = window()
    assert (second.width(), second.height()) == (780, 560)
    assert second.split.sizes() == pytest.approx(sizes, abs=2)
    second.close()


def test_a_project_named_from_the_folder_where_it_lies_is_found_from_elsewhere(qapp, tmp_path, monkeypatch):
    (tmp_path / "yard.hwsched").touch()
    monkeypatch.chdir(tmp_path)
    chosen = Preferences()
    chosen.opened("yard.hwsched")
    chosen.opened(str(tmp_path / "yard.hwsched"))
    chosen.opened("postgresql://office/yard")
    assert chosen.recent == ["postgresql://office/yard", str(tmp_path / "yard.hwsched")]
