"""The drawing by mouse and keys: looked at, measured, moved, torn off, printed."""

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QColor, QPalette, QWheelEvent
from PySide6.QtWidgets import QApplication, QFileDialog

from hwsched.desktop.opening.drawing_page import DrawingPage
from hwsched.desktop.opening.opening_scene import scene_of
from hwsched.desktop.opening.scene_handles import handles
from hwsched.drawings.layers import UNIT
from hwsched.operations.findings.checked import Checked
from tests.desktop.conftest import checked_of, choose, idle
from tests.desktop.test_access import large, look  # noqa: F401 (fixtures)
from tests.drawings.openings import FIT, GIVEN

KEY = Qt.Key
LEFT = Qt.MouseButton.LeftButton
CTRL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier


@pytest.fixture
def page(qtbot):
    """The drawing of an opening, with the keyboard in it."""
    made = DrawingPage()
    qtbot.addWidget(made)
    made.resize(1100, 700)
    made.show_scene(*scene_of(Checked(GIVEN, FIT, ()), 1, "fraction"), "fraction")
    with qtbot.waitActive(made):
        made.show()
        made.activateWindow()
    qtbot.mouseClick(made.view, LEFT, pos=QPoint(3, 3))
    made.view.grab()
    assert QApplication.focusWidget() is made.view
    return made


def press(qtbot, view, key, held=Qt.KeyboardModifier.NoModifier, times=1):
    for _ in range(times):
        qtbot.keyClick(view, key, held)


def test_the_wheel_goes_nearer_at_the_pointer(page):
    view, at = page.view, QPointF(300.0, 200.0)
    place, before = view.camera.to_scene(at.x(), at.y()), view.camera.scale
    for _ in range(4):
        none = Qt.KeyboardModifier.NoModifier
        wheel = QWheelEvent(
            at, view.mapToGlobal(at), QPoint(), QPoint(0, 120), Qt.MouseButton.NoButton, none,
            Qt.ScrollPhase.NoScrollPhase, False,
        )  # fmt: skip
        QApplication.sendEvent(view, wheel)
    assert view.camera.scale > 2 * before
    assert view.camera.to_screen(*place) == pytest.approx((300.0, 200.0))


def test_it_is_looked_at_by_keys_and_dragged_along(page, qtbot):
    view = page.view
    press(qtbot, view, KEY.Key_3)
    x0, y0, x1, _ = view.camera.region
    edge = view.state.scene.standing("edge")
    assert x0 < edge.dx_mm < x1
    assert not view.camera.whole
    qtbot.mousePress(view, LEFT, pos=QPoint(20, 20))
    qtbot.mouseMove(view, QPoint(60, 20))
    qtbot.mouseRelease(view, LEFT, pos=QPoint(60, 20))
    assert view.camera.region[0] == pytest.approx(x0 - 40 / view.camera.factor)
    press(qtbot, view, KEY.Key_Up, CTRL | SHIFT)
    assert view.camera.region[1] > y0
    press(qtbot, view, KEY.Key_0)
    assert view.look().whole


def test_layers_are_switched_by_key_and_by_touch(page, qtbot):
    def named():
        return {getattr(each, "name", "") for each in page.view.page().primitives}

    assert "cable hole" in named()
    press(qtbot, page.view, KEY.Key_H)
    assert "cable hole" not in named()
    assert not page.layer_acts["holes"].isChecked()
    button = next(each for each in page.tools.children() if getattr(each, "text", str)() == "Holes")
    qtbot.mouseClick(button, LEFT)
    assert "cable hole" in named()
    assert not any("keep-out" in each for each in named())
    press(qtbot, page.view, KEY.Key_K)
    assert any("keep-out" in each for each in named())


def test_what_is_chosen_is_marked_in_the_list_and_in_the_drawing(page, qtbot):
    view, words = page.view, lambda: page.list.currentItem().text() if page.list.currentItem() else ""
    qtbot.mouseClick(view, LEFT, pos=view.place_of(UNIT, "inside").toPoint() - QPoint(8, 8))
    assert words() == "Unit SU-W"
    marked = view.grab().toImage()
    press(qtbot, view, KEY.Key_PageDown)
    assert words() == "New lock TC-125"
    assert view.grab().toImage() != marked
    row = next(at for at in range(page.list.count()) if page.list.item(at).text() == "Closer")
    qtbot.mouseClick(page.list.viewport(), LEFT, pos=page.list.visualItemRect(page.list.item(row)).center())
    assert page.state.chosen == "i3"
    press(qtbot, view, KEY.Key_Escape)
    assert page.state.chosen == ""
    assert words() == ""


def test_a_distance_is_measured_by_mouse_and_by_keys(page, qtbot):
    """The leaf is 36 in wide."""
    view = page.view
    inside = view.state.scene.standing("inside")
    left, right = (QPointF(*view.camera.to_screen(inside.dx_mm + x, 12.0)).toPoint() for x in (0.0, 914.4))
    press(qtbot, view, KEY.Key_M)
    qtbot.mouseClick(view, LEFT, pos=left + QPoint(2, 1))
    qtbot.mouseClick(view, LEFT, pos=right - QPoint(2, 1))
    assert page.form.measured.text().startswith('Measured: 36" apart')
    qtbot.mouseMove(view, left)
    press(qtbot, view, KEY.Key_Space)
    press(qtbot, view, KEY.Key_Right, times=(right.x() - left.x()) // 10)
    press(qtbot, view, KEY.Key_Right, SHIFT, times=(right.x() - left.x()) % 10)
    press(qtbot, view, KEY.Key_Return)
    assert page.form.measured.text().startswith('Measured: 36" apart')
    press(qtbot, view, KEY.Key_Escape)
    press(qtbot, view, KEY.Key_Escape)
    assert not page.act_measure.isChecked()


def test_arrows_move_by_steps_and_on_to_lines_and_escape_takes_back(page, qtbot):
    view, told, gone = page.view, [], []
    view.moving.connect(lambda move: told.append((move.dx, move.dy, move.words())))
    view.moved.connect(lambda move: gone.append((move.thing, move.dx, move.dy)))
    press(qtbot, view, KEY.Key_Right)
    press(qtbot, view, KEY.Key_Up, SHIFT)
    assert told[-1][:2] == (1.0, 10.0)
    # Plate 40 to 130 from the lock edge, its middle at 85; the next line leftward is the backset of 69.85.
    press(qtbot, view, KEY.Key_Left, CTRL)
    assert told[-1][0] < 1.0
    assert told[-1][2].startswith("on the")
    with qtbot.waitSignal(view.taken_back):
        press(qtbot, view, KEY.Key_Escape)
    assert not gone
    press(qtbot, view, KEY.Key_Down)
    press(qtbot, view, KEY.Key_Return)
    assert gone == [(UNIT, 0.0, -1.0)]


def test_it_is_torn_off_to_a_window_of_its_own_and_comes_back(page, qtbot):
    view = page.view
    press(qtbot, view, KEY.Key_W)
    assert view.window() is page.torn is not page
    qtbot.waitUntil(page.torn.isActiveWindow)
    assert page.back.isVisible()
    press(qtbot, view, KEY.Key_PageDown)
    assert page.state.chosen == UNIT
    press(qtbot, view, KEY.Key_W)
    assert view.window() is page.window()
    button = next(each for each in page.tools.children() if getattr(each, "text", str)() == "Own window")
    qtbot.mouseClick(button, LEFT)
    assert view.window() is page.torn
    qtbot.mouseClick(page.back, LEFT)
    assert page.torn is None
    assert page.inner.isVisible()


def test_on_a_dark_screen_it_is_drawn_on_dark(page):
    def ground():
        return page.view.grab().toImage().pixelColor(8, 8).lightness()

    palette = page.palette()
    palette.setColor(QPalette.ColorRole.Base, QColor("white"))
    page.setPalette(palette)
    assert ground() > 200
    palette.setColor(QPalette.ColorRole.Base, QColor("black"))
    page.setPalette(palette)
    assert ground() < 60


def test_places_are_typed_dragged_and_printed(at_work, qtbot, tmp_path, monkeypatch):
    choose(at_work, "M004")
    at_work.activateWindow()
    sheet, view = at_work.sheet, at_work.sheet.view
    form = sheet.drawing.form
    place = at_work.frame.state.checked.fit.placement
    press(qtbot, view, KEY.Key_PageDown)
    assert sheet.drawing.state.chosen == UNIT
    assert "Lead:" in form.costs.text()
    # An inch higher, in the words of a rule; the project's lengths are inches.
    wanted = place.y_mm + 25.4
    qtbot.mouseDClick(form.up, LEFT)
    qtbot.keyClick(form.up, KEY.Key_A, CTRL)
    qtbot.keyClicks(form.up, f"{wanted / 25.4:.4f} in")
    qtbot.keyClick(form.up, KEY.Key_Return)
    idle(qtbot, at_work)
    assert checked_of(at_work, "M004").given.placed.y_mm == pytest.approx(wanted, abs=0.02)
    assert form.release.isVisible()
    # What does not fit, or is no length, is said beside the field and stays to be mended.
    for text, said in (("1", "Refused"), ("high", "high")):
        qtbot.keyClick(form.up, KEY.Key_A, CTRL)
        qtbot.keyClicks(form.up, text)
        qtbot.keyClick(form.up, KEY.Key_Return)
        assert said in form.told.text()
        assert form.up.text() == text
    qtbot.mouseClick(form.release, LEFT)
    idle(qtbot, at_work)
    assert checked_of(at_work, "M004").given.placed is None
    # The lever, once chosen, is dragged: 40 mm up.
    lever = next(each for each in checked_of(at_work, "M004").given.items if each.kind == "lever")
    press(qtbot, view, KEY.Key_Escape)
    qtbot.mouseDClick(view, LEFT, pos=view.place_of(UNIT, "inside").toPoint())
    assert not view.camera.whole
    qtbot.mouseClick(
        sheet.drawing.list.viewport(), LEFT,
        pos=sheet.drawing.list.visualItemRect(
            next(
                sheet.drawing.list.item(at)
                for at in range(sheet.drawing.list.count())
                if sheet.drawing.list.item(at).text() == "Lever or knob"
            )
        ).center(),
    )  # fmt: skip
    start = view.place_of(lever.id, "inside").toPoint()
    end = start - QPoint(0, round(40 * view.camera.factor))
    qtbot.mousePress(view, LEFT, pos=start)
    qtbot.mouseMove(view, end)
    qtbot.mouseRelease(view, LEFT, pos=end)
    idle(qtbot, at_work)
    moved = next(each for each in checked_of(at_work, "M004").given.items if each.id == lever.id)
    assert moved.y_mm == pytest.approx(lever.y_mm + 40.0, abs=12.0)
    at_work.history.act_undo.trigger()
    idle(qtbot, at_work)
    # By a handle it is made larger: its other edge stays where it is.
    lever = next(each for each in checked_of(at_work, "M004").given.items if each.id == lever.id)
    view.look_at(lever.id)
    QApplication.processEvents()
    edges = handles(view)
    start = edges[1, 0].toPoint()
    factor = view.look().factor
    qtbot.mouseMove(view, start)
    assert view.cursor().shape() == Qt.CursorShape.SizeHorCursor
    qtbot.mousePress(view, LEFT, pos=start)
    qtbot.mouseMove(view, start + QPoint(round(30 * factor), 0))
    assert " wide, " in form.told.text()
    qtbot.mouseRelease(view, LEFT, pos=start + QPoint(round(30 * factor), 0))
    idle(qtbot, at_work)
    sized = next(each for each in checked_of(at_work, "M004").given.items if each.id == lever.id)
    # On to a line within seven pixels.
    assert sized.width_mm - lever.width_mm == pytest.approx(30.0, abs=8.0 / factor + 1.0)
    assert abs(sized.x_mm - lever.x_mm) == pytest.approx((sized.width_mm - lever.width_mm) / 2, abs=0.05)
    assert sized.height_mm == pytest.approx(lever.height_mm, abs=0.01)
    at_work.history.act_undo.trigger()
    idle(qtbot, at_work)
    path = tmp_path / "seen.pdf"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(path), ""))
    press(qtbot, view, KEY.Key_P)
    qtbot.waitUntil(path.is_file, timeout=10000)


def test_whoever_looks_nearer_has_letters_of_the_size_that_was_chosen(large, qtbot):  # noqa: F811
    """Where all was seen large letters had no room, and they stayed small however near one went."""
    large.sheet.pages.show_page(large.sheet.drawing)
    view = large.sheet.drawing.view
    view.grab()
    view.setFocus()

    def letters():
        """How high capitals of 2.5 paper mm are on the screen."""
        return 2.5 * view.camera.px_per_mm

    wanted = view.fontMetrics().capHeight()
    assert letters() < 0.7 * wanted, "there is room for large letters"
    middle = view.rect().center()
    place, before = view.camera.to_scene(middle.x(), middle.y()), view.camera.factor
    press(qtbot, view, KEY.Key_Plus)
    view.grab()
    assert letters() > 0.8 * wanted
    assert view.camera.factor == pytest.approx(1.25 * before)
    assert view.camera.to_screen(*place) == pytest.approx((middle.x(), middle.y()), abs=1)
    press(qtbot, view, KEY.Key_Minus, times=3)
    view.grab()
    assert view.camera.whole
    assert view.camera.factor == pytest.approx(before)
    assert letters() < 0.7 * wanted


def test_a_sentence_in_the_place_of_a_drawing_keeps_off_its_edges(qtbot):
    made = DrawingPage()
    qtbot.addWidget(made)
    made.resize(500, 500)
    made.show()
    view = made.view
    words = view.fontMetrics().horizontalAdvance(view.empty)
    for wide in range(words - 20, words + 20, 4):
        view.resize(max(wide, view.minimumWidth()), 300)
        image = view.grab().toImage()
        ground = image.pixelColor(2, image.height() - 8)
        edges = [*range(3, 16), *range(image.width() - 16, image.width() - 3)]
        inked = [x for x in edges for y in range(60, 240) if image.pixelColor(x, y) != ground]
        assert not inked, wide
