"""Letters of drawings that are looked at beside a list or a form are as large as the text size in force asks."""

import pytest
from PySide6.QtGui import QFontMetricsF

from hwsched.desktop.looks.tokens import font
from hwsched.desktop.widgets.drawing_view import DrawingView
from hwsched.desktop.widgets.sheet_view import SheetView
from hwsched.drawings.drawing import Drawing, Line, Text
from tests.desktop.test_access import look  # noqa: F401 (a fixture)


@pytest.mark.parametrize("percent", [100, 150, 200])
def test_letters_of_sheets_follow_the_text_size_until_the_whole_is_asked_for(look, qtbot, percent):  # noqa: F811
    look._preferences.text_size = percent
    view = SheetView()
    qtbot.addWidget(view)
    view.resize(600, 300)
    view.show()
    shapes = (Line(((0.0, 0.0), (250.0, 100.0)), "outline"), Text(5.0, 5.0, "words", "small"))
    sheet = Drawing("Sheet", shapes, (0.0, 0.0, 250.0, 100.0), ("A note " * 40,), to_scale=False, schematic=True)
    view.show_drawings([sheet])
    small = QFontMetricsF(font("small")).capHeight()
    # The smallest letters of a sheet are 1.8 mm high: as high as three quarters of the window's small ones at least,
    # and as high as those for whoever chose larger letters.
    share = 0.75 if percent == 100 else 1.0
    assert view.canvas.px_per_mm * 1.8 == pytest.approx(share * small)
    assert view.area.horizontalScrollBar().maximum() > 0
    # What stands below is not scrolled to: it is as wide as what is seen.
    assert view.canvas._notes_room().right() <= view.area.viewport().width()
    view.area.setFocus()
    before = view.canvas.px_per_mm
    qtbot.keyClick(view.area, "+")
    assert view.canvas.px_per_mm == pytest.approx(1.25 * before)
    qtbot.keyClick(view.area, "-")
    qtbot.keyClick(view.area, "-")
    assert view.canvas.px_per_mm == pytest.approx(before / 1.25)
    qtbot.keyClick(view.area, "0")
    assert view.canvas.width() <= view.area.width()
    view.close()


def test_drawings_beside_a_form_have_letters_of_the_text_size(look, qtbot):  # noqa: F811
    sizes = {}
    for percent in (100, 200):
        look._preferences.text_size = percent
        view = DrawingView()
        qtbot.addWidget(view)
        view.resize(1000, 700)
        shapes = (Line(((0.0, 0.0), (100.0, 50.0)), "outline"), Text(50.0, 20.0, "MMMM", "label", "centre"))
        view.show_drawings([Drawing("Sheet", shapes, (0.0, 0.0, 100.0, 50.0), (), to_scale=False, schematic=True)])
        view.show()
        image = view.grab().toImage()
        ground = image.pixelColor(1, 1)
        points = ((x, y) for x in range(0, image.width(), 2) for y in range(0, image.height(), 2))
        inked = [x for x, y in points if image.pixelColor(x, y) != ground]
        # A schematic is set as it is, letters and all: as wide as its line, while there is room.
        sizes[percent] = max(inked) - min(inked)
        view.close()
    assert sizes[200] == pytest.approx(2 * sizes[100], rel=0.05)
