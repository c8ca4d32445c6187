"""A project of an earlier version in the desktop: a question first, and no without a yes."""

import pytest
from PySide6.QtCore import Qt

from hwsched.desktop.window import Window
from tests.desktop.conftest import idle
from tests.model.saved_projects import SAVED, restore


@pytest.fixture
def old(tmp_path):
    restore(SAVED / "0001.sql", tmp_path / "old.hwsched")
    return tmp_path / "old.hwsched"


@pytest.fixture
def window(qtbot):
    shown = Window("tester")
    qtbot.addWidget(shown)
    shown.show()
    return shown


def press(qtbot, box, words):
    (button,) = [each for each in box.buttons() if each.text() == words]
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton)


def test_no_leaves_it_as_it_is(window, qtbot, old):
    before = old.read_bytes()
    window.project.open_project(str(old))
    assert "schema 0001" in window.project.asked.text()
    # What a hasty key press does is the harmless one.
    assert window.project.asked.defaultButton().text() == "Leave it as it is"
    press(qtbot, window.project.asked, "Leave it as it is")
    assert window.frame.state.workspace is None
    assert window.stack.currentWidget() is window.welcome
    assert old.read_bytes() == before
    assert len(list(old.parent.glob("*.hwsched"))) == 1


def test_yes_upgrades_opens_and_says_where_the_copy_is(window, qtbot, old):
    window.project.open_project(str(old))
    press(qtbot, window.project.asked, "Upgrade it")
    qtbot.waitUntil(lambda: window.frame.state.workspace is not None, timeout=30000)
    idle(qtbot, window)
    assert window.openings.register.total() == 2
    copy = old.parent / "old.before-0001.hwsched"
    assert str(copy) in window.project.upgraded.text()
    assert copy.exists()
    window.project.upgraded.close()
