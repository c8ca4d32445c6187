"""Lines that wrap show all of their words, however wide they are: none is cut where it is only just too long."""

import pytest
from PySide6.QtCore import QRect, QSize
from PySide6.QtWidgets import QApplication, QStyleOptionViewItem

from hwsched.desktop.looks.tokens import wide
from hwsched.desktop.widgets.lines import Lines
from hwsched.desktop.widgets.wrapping import WrappingList
from tests.desktop.test_access import look  # noqa: F401 (a fixture)

WORDS = "Resistance of a copper conductor"
"""Its last word is long: cut, much less ink is left than there was."""


def lines():
    made = Lines(["Of", "What"], 1)
    made.show_rows([["S", WORDS]] * 2)
    return made, made.model().index(0, 1)


def names():
    made = WrappingList()
    made.setSpacing(4)
    made.addItems([WORDS] * 2)
    return made, made.model().index(0, 0)


def ink(view, index):
    """How many dark points a cell has."""
    for _ in range(3):
        QApplication.processEvents()
    image = view.viewport().grab(view.visualRect(index)).toImage()
    points = ((x, y) for x in range(image.width()) for y in range(image.height()))
    return sum(image.pixelColor(*point).lightness() < 120 for point in points)


@pytest.mark.parametrize("made", [lines, names])
def test_words_are_there_at_every_width_about_the_one_at_which_they_wrap(look, qtbot, made):  # noqa: F811
    view, index = made()
    qtbot.addWidget(view)
    view.setCurrentIndex(view.model().index(1, 0))
    view.resize(wide(80), wide(30))
    view.show()
    whole = ink(view, index)
    assert whole > 300
    high = set()
    for width in range(wide(25), wide(42)):
        view.resize(width, wide(30))
        left = ink(view, index)
        high.add(view.visualRect(index).height())
        assert left > 0.9 * whole, width
    # In one line at last, in two before.
    assert len(high) == 2


def test_a_line_is_as_high_however_qt_asks_for_it(look, qtbot):  # noqa: F811
    """Asked with the width of the line, not of the list, it was measured narrower: a line was left empty below it."""
    view, index = names()
    qtbot.addWidget(view)
    view.show()
    high = set()
    for width in range(wide(25), wide(42)):
        view.resize(width, wide(30))
        QApplication.processEvents()
        line, found = view.visualRect(index), set()
        for room in (view.viewport().rect(), QRect(line.topLeft(), QSize(line.width(), view.height()))):
            option = QStyleOptionViewItem()
            view.initViewItemOption(option)
            option.rect = room
            found.add(view.itemDelegate().sizeHint(option, index).height())
        assert len(found) == 1, width
        high |= found
    assert len(high) == 2
