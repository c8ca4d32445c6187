"""The window of how documents look: a file to begin with, taken in by clicks, taken away, brought back."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog

from hwsched.desktop.release.office_window import OfficeWindow
from hwsched.operations.release.office import office_text
from tests.desktop.conftest import idle

LEFT = Qt.MouseButton.LeftButton


def test_taken_in_shown_and_taken_away(at_work, qtbot, tmp_path, monkeypatch):
    at_work.beside.acts["office"].trigger()
    window = at_work.frame.side.windows[OfficeWindow]
    assert "look as by default" in window.text.placeholderText()
    assert not window.clear.isEnabled()
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(tmp_path))
    qtbot.mouseClick(window.write, LEFT)
    idle(qtbot, at_work)
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(tmp_path / "office.toml"), ""))
    qtbot.mouseClick(window.take, LEFT)
    idle(qtbot, at_work)
    assert "Quay Door Works" in window.text.toPlainText()
    qtbot.mouseClick(window.clear, LEFT)
    idle(qtbot, at_work)
    assert window.text.toPlainText() == ""
    at_work.history.act_undo.trigger()
    idle(qtbot, at_work)
    assert "Quay Door Works" in office_text(at_work.frame.state.workspace.project)
    assert "Quay Door Works" in window.text.toPlainText()
