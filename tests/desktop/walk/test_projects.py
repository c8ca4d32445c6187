"""A second project and back by the recent ones; another person's window on the same project, killed while it types."""

import os
import subprocess
import sys

import pytest
from PySide6.QtWidgets import QApplication, QFileDialog, QLineEdit, QPushButton

from hwsched.desktop.project import watching
from hwsched.desktop.window import Window
from hwsched.model.project import create_project
from tests.desktop.conftest import checked_of, idle
from tests.desktop.walk.hands import KEY


def test_a_second_project_is_opened_and_the_first_one_again_from_the_recent_ones(hands, at_work, tmp_path):
    other = tmp_path / "second.hwsched"
    create_project(str(other), "Second Yard").close()
    first = at_work.frame.state.workspace.project.path

    def named(asked):
        assert isinstance(asked, QFileDialog)
        assert isinstance(QApplication.focusWidget(), QLineEdit)
        hands.over(str(other))
        hands.key(KEY.Key_Return)

    hands.answer(named)
    hands.command("Open project")
    hands.done()
    assert at_work.windowTitle().startswith("Second Yard")
    hands.command("Close project")
    buttons = [each for each in at_work.welcome.findChildren(QPushButton) if str(first) in each.toolTip()]
    hands.press(buttons[0])
    hands.done()
    assert at_work.frame.state.workspace.project.path == first


@pytest.fixture
def wound_up(monkeypatch):
    """The watch of a window that is opened now goes as a person has it."""
    monkeypatch.setattr(watching, "_EACH_MS", 200)


def test_another_person_types_is_seen_and_killed_and_nothing_written_is_lost(wound_up, hands, at_work, qtbot, tmp_path):
    path = at_work.frame.state.workspace.project.path
    said = {**os.environ, "QT_QPA_PLATFORM": "offscreen"}
    beside = subprocess.Popen(
        [sys.executable, "-m", "tests.desktop.walk.beside", str(path), "M004", str(tmp_path / "ben")],
        stdout=subprocess.PIPE, text=True, env=said,
    )  # fmt: skip
    try:
        qtbot.waitUntil(lambda: checked_of(at_work, "M004").given.opening.building == "Chart House", timeout=60_000)
        assert "ben" in at_work.statusBar().currentMessage()
        assert beside.stdout.readline() == "made\n"
    finally:
        beside.kill()
        beside.wait()
        beside.stdout.close()
    hands.command("Quit")
    # Started again: what was typed to its end is there, what was not is nowhere.
    again = Window("ben")
    qtbot.addWidget(again)
    again.show()
    later = type(hands)(qtbot, again)

    def named(asked):
        assert isinstance(asked, QFileDialog)
        later.over(str(path))
        later.key(KEY.Key_Return)

    later.answer(named)
    later.command("Open project")
    qtbot.waitUntil(lambda: again.frame.state.workspace is not None, timeout=20_000)
    idle(qtbot, again)
    assert checked_of(again, "M004").given.opening.building == "Chart House"
