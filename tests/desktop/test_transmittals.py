"""The window of transmittals: written down by clicks, fetched, taken back."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QDialogButtonBox, QFileDialog

from hwsched.desktop.release.transmittals_window import TransmittalDialog, TransmittalsWindow
from hwsched.operations.release.transmittals import transmittals
from tests.desktop.conftest import empty_words, idle

LEFT = Qt.MouseButton.LeftButton


def test_written_down_fetched_and_taken_back(at_work, qtbot, tmp_path, monkeypatch):
    sheet = tmp_path / "schedule.pdf"
    sheet.write_bytes(b"%PDF-1.4 as it went out")
    at_work.beside.acts["transmittals"].trigger()
    window = at_work.frame.side.windows[TransmittalsWindow]
    assert "Nothing is written down" in empty_words(window.list)
    assert not window.fetch.isEnabled()
    monkeypatch.setattr(QFileDialog, "getOpenFileNames", lambda *_: ([str(sheet)], ""))
    qtbot.mouseClick(window.make, LEFT)
    (dialog,) = (each for each in QApplication.topLevelWidgets() if isinstance(each, TransmittalDialog))
    stated = dialog.buttons.button(QDialogButtonBox.StandardButton.Ok)
    assert not stated.isEnabled()
    qtbot.keyClicks(dialog.recipient, "Architect")
    qtbot.keyClicks(dialog.purpose, "for approval")
    qtbot.mouseClick(stated, LEFT)
    idle(qtbot, at_work)
    row = window.list.topLevelItem(0)
    assert (row.text(0), row.text(2), row.text(3), row.text(4)) == ("1", "Architect", "for approval", "tester")
    assert row.child(0).text(2) == "schedule.pdf"
    window.list.setCurrentItem(row.child(0))
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(tmp_path / "back"))
    qtbot.mouseClick(window.fetch, LEFT)
    idle(qtbot, at_work)
    assert (tmp_path / "back" / "schedule.pdf").read_bytes() == sheet.read_bytes()
    at_work.history.act_undo.trigger()
    idle(qtbot, at_work)
    assert window.list.topLevelItemCount() == 0
    assert transmittals(at_work.frame.state.workspace.project) == ()
