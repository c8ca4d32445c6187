"""Rows of widgets go on in a next row; what takes the room that is left takes just that, and nothing is cut off."""

import pytest
from PySide6.QtCore import QRect
from PySide6.QtWidgets import QLabel, QWidget

from hwsched.desktop.looks.tokens import SPACE, wide
from hwsched.desktop.widgets.flow import Flow, Foot


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


@pytest.fixture
def footed(qtbot):
    held = []

    def made(width, text, *boxes):
        page = QWidget()
        held.append(page)
        qtbot.addWidget(page)
        words = QLabel(text)
        words.setWordWrap(True)
        foot = Foot(page)
        foot.setContentsMargins(0, 0, 0, 0)
        for each in (words, *boxes):
            foot.addWidget(each)
        page.resize(width, foot.heightForWidth(width))
        page.show()
        foot.setGeometry(page.rect())
        return words.geometry(), [box.geometry() for box in boxes], foot

    return made


def test_a_foot_has_its_buttons_at_the_right_and_all_of_its_words_beside_or_above(footed):
    long = "What it stands on has changed since: it is compared once more when you accept it. " * 2
    words, boxes, foot = footed(wide(160), long, Box(80), Box(60))
    assert [(each.left(), each.right() + 1) for each in boxes] == [
        (wide(160) - 60 - SPACE.hair - 80, wide(160) - 60 - SPACE.hair),
        (wide(160) - 60, wide(160)),
    ]
    assert words.right() < boxes[0].left()
    assert words.height() >= foot.itemAt(0).heightForWidth(words.width())
    # Beside two wide buttons there is no room for words: they stand above, as high as they need, over the whole width.
    half = wide(20)
    words, boxes, foot = footed(2 * half + SPACE.hair + 10, long, Box(half), Box(half))
    assert words.width() == 2 * half + SPACE.hair + 10
    assert words.height() >= foot.itemAt(0).heightForWidth(words.width())
    assert boxes[0].top() == boxes[1].top() == words.bottom() + 1 + SPACE.hair
    assert boxes[1].right() + 1 == 2 * half + SPACE.hair + 10


def test_a_foot_needs_no_more_width_than_a_few_of_its_buttons(footed):
    sizes = [Box(wide(20)) for _ in range(6)]
    words, boxes, foot = footed(wide(50), "153 of 153 parts", *sizes)
    assert foot.minimumSize().width() < wide(50)
    assert len({each.top() for each in boxes}) == 3
    assert all(each.right() < wide(50) and each.left() >= 0 for each in boxes)
    assert foot.heightForWidth(wide(50)) == boxes[-1].bottom() + 1
    assert words.bottom() < boxes[0].top()


def test_a_foot_without_words_is_as_high_as_its_buttons(footed):
    _words, boxes, foot = footed(wide(60), "", Box(60, 31))
    assert foot.heightForWidth(wide(60)) == 31
    assert boxes[0].right() + 1 == wide(60)
