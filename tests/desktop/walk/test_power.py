"""Work at the power: an opening to another circuit, supplies sited; a document seen, searched and written."""

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QDragEnterEvent, QDragMoveEvent, QDropEvent
from PySide6.QtWidgets import QApplication, QFileDialog, QLineEdit

from tests.desktop.conftest import checked_of
from tests.desktop.walk.hands import KEY, Mouse
from tests.desktop.walk.test_opening import line_of


def line(window, text):
    return next(item for item in window.tree.lines() if item.text(0).split(" · ")[0] == text)


def test_an_opening_goes_to_another_circuit_and_supplies_are_sited(hands, at_work):
    hands.command("Power")
    power = at_work.frame.pages.widgets["power"]
    hands.line(power.tree, line(power, "M216"))
    if isinstance(hands, Mouse):
        target = line(power, "GLASS-G")
        hands._cell(power.tree, power.tree.indexFromItem(target))
        data = power.tree.mimeData(power.tree.selectedItems())
        # What the platform sends while something is dragged.
        at, held = power.tree.visualItemRect(target).center(), Qt.KeyboardModifier.NoModifier
        said = (Qt.DropAction.MoveAction, data, Qt.MouseButton.LeftButton, held)
        for event in (QDragEnterEvent(at, *said), QDragMoveEvent(at, *said), QDropEvent(QPointF(at), *said)):
            QApplication.sendEvent(power.tree.viewport(), event)
    else:
        hands.press(power.move_to)
        hands.wake()
        hands.box(power.asked_where.circuit, "GLASS-G/S")
        hands.press(power.asked_where.ok)
    hands.done()
    assert line(power, "M216").parent().parent() is line(power, "GLASS-G")
    hands.undo()
    assert line(power, "M216").parent().parent() is line(power, "MILL-1")
    hands.command("Site supplies")
    siting = at_work.frame.pages.widgets["siting"]
    hands.box(siting.building, "Mill House")
    hands.press(siting.work)
    hands.done()
    rows = [siting.list.topLevelItem(n).text(0) for n in range(siting.list.topLevelItemCount())]
    assert "Supplies in use" in rows
    hands.command("Back")
    assert power.isVisible()


def test_a_document_is_seen_searched_and_written(hands, at_work, tmp_path):
    hands.line(*line_of(at_work, "M004"))
    hands.command("Documents")
    page = at_work.frame.pages.widgets["documents"]
    item = next(page.names.item(n) for n in range(page.names.count()) if "packet" in page.names.item(n).text().lower())
    hands.line(page.names, item)
    hands.press(page.show_it)
    hands.done()
    assert page.view.pages.count > 0
    hands.qtbot.waitUntil(lambda: page.view.sheet.image is not None, timeout=10000)
    hands.field(page.search, "m004")
    assert page.hits.text().endswith("pages")
    hands.to(page.view)
    hands.key(KEY.Key_PageDown)
    assert page.at.text().startswith("Page 2 of")

    def folder(asked):
        assert isinstance(asked, QFileDialog)
        hands.over(str(tmp_path))
        assert isinstance(QApplication.focusWidget(), QLineEdit)
        hands.key(KEY.Key_Return)

    hands.answer(folder)
    hands.press(page.write_it)
    hands.done()
    assert list(tmp_path.rglob("*.pdf")), page.told.text()
    assert checked_of(at_work, "M004") is not None
