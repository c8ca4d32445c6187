"""What is being typed outlives the end of the program: it is kept while it is typed, and told once afterwards."""

import subprocess
import sys

import pytest
from PySide6.QtCore import QSettings, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit

from hwsched.desktop.project import preferences
from hwsched.desktop.project.preferences import Preferences
from hwsched.desktop.window import Window
from tests.desktop.conftest import choose, idle

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def ended():
    """The number of a process that has ended."""
    return int(subprocess.run([sys.executable, "-c", "import os; print(os.getpid())"], capture_output=True).stdout)


def begin(window, qtbot, opening, fact):
    """Go to the facts of an opening by mouse and open the field of one, as a person does."""
    choose(window, opening)
    pages = window.sheet.pages
    bar = pages.tabBar()
    qtbot.mouseClick(bar, LEFT, pos=bar.tabRect(pages.indexOf(window.sheet.facts)).center())
    form = window.sheet.facts
    (item,) = form.findItems(fact, Qt.MatchFlag.MatchExactly | Qt.MatchFlag.MatchRecursive, 0)
    form.scrollToItem(item)
    at = form.visualRect(form.indexFromItem(item, 1)).center()
    qtbot.mouseClick(form.viewport(), LEFT, pos=at)
    qtbot.mouseDClick(form.viewport(), LEFT, pos=at)
    qtbot.waitUntil(lambda: isinstance(QApplication.focusWidget(), QLineEdit))
    return QApplication.focusWidget()


def kept():
    """What stands in the person's settings of fields, by process."""
    settings = QSettings(QSettings.Format.IniFormat, QSettings.Scope.UserScope, "hwsched", "desktop")
    settings.beginGroup("typed")
    return {key: settings.value(key) for key in settings.childKeys()}


def test_a_text_is_kept_while_it_is_typed_and_told_once_after_the_end(at_work, qtbot, project_file, ended, monkeypatch):
    field = begin(at_work, qtbot, "M016", "Room to")
    field.selectAll()
    QTest.keyClicks(field, "Rigging by the stair")
    qtbot.waitUntil(lambda: any("Rigging by the stair" in said for said in kept().values()))
    # As if this process were another one that was ended in the midst of it.
    assert len(kept()) == 1
    monkeypatch.setattr(preferences.os, "getpid", lambda: ended)
    at_work.typed_kept._keep()
    monkeypatch.undo()
    QTest.keyClick(field, Qt.Key.Key_Escape)
    assert str(ended) in kept()
    again = Window("tester")
    qtbot.addWidget(again)
    again.show()
    again.project.open_project(str(project_file))
    idle(qtbot, again)
    assert again.typed.isVisible()
    assert "M016, Room to: Rigging by the stair" in again.typed.words.text()
    qtbot.mouseClick(again.typed.copy, LEFT)
    assert QApplication.clipboard().text() == "Rigging by the stair"
    qtbot.mouseClick(again.typed.done, LEFT)
    assert not again.typed.isVisible()
    assert str(ended) not in kept(), "it is told once"


def test_what_was_taken_given_up_or_looked_for_is_not_kept(at_work, qtbot):
    field = begin(at_work, qtbot, "M016", "Room to")
    field.selectAll()
    QTest.keyClicks(field, "Rigging")
    qtbot.waitUntil(lambda: bool(kept()))
    QTest.keyClick(field, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: not kept())
    field = begin(at_work, qtbot, "M016", "Room from")
    QTest.keyClicks(field, "x")
    qtbot.waitUntil(lambda: bool(kept()))
    QTest.keyClick(field, Qt.Key.Key_Escape)
    qtbot.waitUntil(lambda: not kept())
    QTest.keyClick(at_work, Qt.Key.Key_K, Qt.KeyboardModifier.ControlModifier)
    QTest.keyClicks(QApplication.focusWidget(), "M116")
    qtbot.wait(600)
    assert not kept()
    at_work.activateWindow()


def test_what_another_project_s_field_held_waits_for_that_project(qtbot, tmp_path, ended):
    settings = QSettings(str(tmp_path / "kept.ini"), QSettings.Format.IniFormat)
    for said in ('[["/a.hwsched", "M1", "one"], ["/b.hwsched", "M2", "two"]]', "no list at all", "[[1]]"):
        settings.setValue(f"typed/{ended}", said)
        own = Preferences(kept=settings)
        first = own.typed_left("/b.hwsched")
        assert [each.text for each in first] == (["two"] if "two" in said else [])
        assert [each.text for each in own.typed_left("/a.hwsched")] == (["one"] if "two" in said else [])
        assert own.typed_left("/a.hwsched") == []
