"""The same walk by mouse and by keyboard alone, on the one small project."""

import pytest
from PySide6.QtWidgets import QApplication

from tests.desktop.walk.hands import Keyboard, Mouse


@pytest.fixture(params=[Mouse, Keyboard], ids=["mouse", "keyboard"])
def hands(request, at_work, qtbot):
    """One who works in the window in one of the two ways."""
    at_work.resize(1366, 768)
    before = QApplication.doubleClickInterval()
    QApplication.setDoubleClickInterval(20)
    yield request.param(qtbot, at_work)
    QApplication.setDoubleClickInterval(before)
