"""Rows of widgets go on in a next row; what takes the room that is left takes just that, and nothing is cut off."""

import pytest
from PySide6.QtCore import QRect
from PySide6.QtWidgets import QWidget

from hwsched.desktop.looks.tokens import SPACE
from hwsched.desktop.widgets.flow import Flow


class Box(QWidget):
    """As wide and high as it says."""

    def __init__(self, wide, high=20, least=None):
        super().__init__()
        self.setMinimumSize(wide if least is None else least, high)
        self._wide, self._high = wide, high

    def sizeHint(self):  # noqa: N802
        return QRect(0, 0, self._wide, self._high).size()


@pytest.fixture
def laid(qtbot):
    def rows_of(width, *boxes, stretched=None):
        page = QWidget()
        qtbot.addWidget(page)
        flow = Flow(page)
        flow.setContentsMargins(0, 0, 0, 0)
        for box in boxes:
            flow.addWidget(box)
        flow.stretched = stretched
        page.resize(width, flow.heightForWidth(width))
        page.show()
        flow.setGeometry(page.rect())
        return [(b.x(), b.y(), b.width(), b.height()) for b in boxes], flow.heightForWidth(width)

    return rows_of


def test_what_has_no_room_stands_in_the_next_row_and_the_line_takes_what_is_left(laid):
    line, ask, count = Box(100, least=40), Box(60), Box(80, 10)
    # In one row: 260 less 100 + 60 + 80 and two gaps of 4 leaves 12 for the line; a lower one stands in the middle.
    assert laid(260, line, ask, count, stretched=line) == ([(0, 0, 112, 20), (116, 0, 60, 20), (180, 5, 80, 10)], 20)
    # Of 200 the first two have 164: the count goes on below them.
    line, ask, count = Box(100, least=40), Box(60), Box(80, 10)
    place, high = laid(200, line, ask, count, stretched=line)
    assert place == [(0, 0, 136, 20), (140, 0, 60, 20), (0, 20 + SPACE.hair, 80, 10)]
    assert high == 20 + SPACE.hair + 10


def test_what_is_wider_than_a_row_is_as_wide_as_it_and_what_is_hidden_takes_no_room(laid):
    line, gone, last = Box(300, least=40), Box(50), Box(50)
    gone.hide()
    place, high = laid(120, line, gone, last)
    assert (place[0], place[2], high) == ((0, 0, 120, 20), (0, 20 + SPACE.hair, 50, 20), 40 + SPACE.hair)
