"""Files at the chosen opening, by clicks: attached, opened, taken off, brought back."""

from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDesktopServices, QDragEnterEvent, QDropEvent, QImage
from PySide6.QtWidgets import QApplication, QFileDialog, QToolButton

from hwsched.operations.release.attachments import attachments_of
from tests.desktop.conftest import choose

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def photo(tmp_path):
    path = tmp_path / "inside.png"
    path.write_bytes(b"\x89PNG\r\n\x1a\n rest")
    return path


def press(qtbot, page, action):
    (button,) = [each for each in page.findChildren(QToolButton) if each.defaultAction() is action]
    qtbot.mouseClick(button, LEFT)


def test_a_file_is_attached_opened_and_taken_off(at_work, qtbot, photo, monkeypatch):
    choose(at_work, "M004")
    page = at_work.sheet.files_page
    at_work.sheet.pages.show_page(page)
    assert not page.act_open.isEnabled()
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(photo), ""))
    press(qtbot, page, page.act_add)
    assert page.table.rowCount() == 1
    assert page.table.item(0, 0).text() == "inside.png"
    assert at_work.sheet.pages.tabText(at_work.sheet.pages.indexOf(page)) == "Documents 1"
    # Another opening has its own.
    choose(at_work, "M005")
    assert page.table.rowCount() == 0
    choose(at_work, "M004")
    opened = []
    monkeypatch.setattr(QDesktopServices, "openUrl", lambda url: opened.append(url.toLocalFile()) or True)
    page.table.selectRow(0)
    press(qtbot, page, page.act_open)
    assert Path(opened[0]).read_bytes() == photo.read_bytes()
    page.table.selectRow(0)
    press(qtbot, page, page.act_remove)
    assert page.table.rowCount() == 0
    at_work.history.act_undo.trigger()
    assert page.table.rowCount() == 1
    assert len(attachments_of(at_work.frame.state.workspace.project)) == 1
    at_work.close()
    assert not Path(opened[0]).exists()


def test_a_file_that_cannot_be_taken_in_is_told(at_work, tmp_path):
    choose(at_work, "M004")
    at_work.release.attach_file(tmp_path / "none.png")
    assert "none.png: cannot be read" in at_work.frame.telling.told.text()
    at_work.frame.telling.told.close()
    assert attachments_of(at_work.frame.state.workspace.project) == ()


def test_a_photograph_dropped_at_an_opening_is_attached_and_shown(at_work, qtbot, tmp_path):
    path = tmp_path / "door.png"
    picture = QImage(30, 40, QImage.Format.Format_RGB32)
    picture.fill(Qt.GlobalColor.blue)
    assert picture.save(str(path))
    choose(at_work, "M004")
    page = at_work.sheet.files_page
    at_work.sheet.pages.show_page(page)
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path))])
    copy, none = Qt.DropAction.CopyAction, Qt.KeyboardModifier.NoModifier
    QApplication.sendEvent(page, QDragEnterEvent(QPoint(20, 20), copy, data, LEFT, none))
    QApplication.sendEvent(page, QDropEvent(QPointF(20, 20), copy, data, LEFT, none))
    assert page.table.item(0, 0).text() == "door.png"
    assert page.picture.image.size() == picture.size()
    choose(at_work, "M005")
    assert page.picture.image is None
