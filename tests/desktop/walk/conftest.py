"""The same walk by mouse and by keyboard alone, on the one small project."""

from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication

from tests.desktop.walk.hands import Keyboard, Mouse


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(items):
    """Let each job be done by mouse in one run and by keyboard in the next: both take a minute and a half."""
    for item in items:
        if item.path.parent == Path(__file__).parent:
            item.add_marker(pytest.mark.turns(2))


@pytest.fixture(params=[Mouse, Keyboard], ids=["mouse", "keyboard"])
def hands(request, at_work, qtbot):
    """One who works in the window in one of the two ways."""
    at_work.resize(1366, 768)
    before = QApplication.doubleClickInterval()
    QApplication.setDoubleClickInterval(20)
    yield request.param(qtbot, at_work)
    QApplication.setDoubleClickInterval(before)
