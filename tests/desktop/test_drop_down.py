"""Drop-downs say all of their words: in their own width, else in dots with a tip and a list that has the whole."""

import ast
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QHelpEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QHBoxLayout, QTableWidget, QToolTip, QWidget

import hwsched.desktop
from hwsched.desktop.looks.tokens import FIELD, colour, wide
from hwsched.desktop.widgets.drop_down import DropDown
from tests.desktop.test_access import look  # noqa: F401 (a fixture)

LONG = "Only openings that were surveyed again since the revision that is named here"
SHORT = "all"


@pytest.fixture
def boxed(qtbot):
    """A page of a width with one box that has a short and a long entry, the long one chosen."""

    held = []

    def made(width, entries=(SHORT, LONG)):
        page = QWidget()
        held.append(page)
        qtbot.addWidget(page)
        row = QHBoxLayout(page)
        row.setContentsMargins(0, 0, 0, 0)
        box = DropDown()
        box.addItems(list(entries))
        box.setCurrentIndex(len(entries) - 1)
        row.addWidget(box)
        row.addStretch(1)
        page.resize(width, 60)
        page.show()
        QApplication.processEvents()
        return box

    return made


def asked(box):
    """What is told when the pointer rests on it."""
    QToolTip.hideText()
    at = QPoint(5, 5)
    QApplication.sendEvent(box, QHelpEvent(QHelpEvent.Type.ToolTip, at, box.mapToGlobal(at)))
    return QToolTip.text()


def test_it_is_as_wide_as_its_longest_words_where_there_is_room(look, boxed):  # noqa: F811
    box = boxed(wide(120), (SHORT, "Least cost, parts and work"))
    assert not box.cut()
    narrow = boxed(wide(120), (SHORT, "A4"))
    assert narrow.width() < box.width()


def test_it_can_do_with_less_and_then_tells_the_whole(look, boxed):  # noqa: F811
    box = boxed(wide(20))
    assert box.width() <= wide(20)
    assert box.cut()
    box.setToolTip("What is counted")
    assert asked(box) == f"{LONG}\nWhat is counted"
    box.setCurrentIndex(0)
    assert not box.cut()
    assert asked(box) == "What is counted"


def test_cut_words_end_in_dots_before_the_arrow(look, boxed):  # noqa: F811
    box = boxed(wide(20), (SHORT, "m" * 60))
    assert box.cut()
    pictures = []
    for count in range(3, 30):
        box.setItemText(1, "m" * count + "…")
        if box.cut():
            break
        pictures.append(box.grab().toImage())
    box.setItemText(1, "m" * 60)
    # As the longest that has room with its dots is shown, so is one that has none.
    assert box.grab().toImage() == pictures[-1]


def test_its_list_is_as_wide_as_the_longest_entry(look, boxed, qtbot):  # noqa: F811
    box = boxed(wide(20))
    box.showPopup()
    qtbot.waitUntil(box.view().isVisible)
    words = box.view().fontMetrics().horizontalAdvance(LONG)
    assert box.view().viewport().width() > words
    assert box.view().width() <= box.screen().availableGeometry().width()
    box.hidePopup()


def test_what_is_very_long_asks_for_a_field_s_width(look, boxed):  # noqa: F811
    box = boxed(wide(300), ("all", LONG * 5))
    assert box.width() == wide(FIELD)


def test_every_drop_down_of_the_desktop_is_this_one():
    root = Path(hwsched.desktop.__file__).parent
    found = []
    for path in sorted(root.rglob("*.py")):
        if path.name == "drop_down.py":
            continue
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            made = isinstance(node, ast.Call) and getattr(node.func, "id", "") == "QComboBox"
            kin = isinstance(node, ast.ClassDef) and any(getattr(base, "id", "") == "QComboBox" for base in node.bases)
            own = isinstance(node, ast.Attribute) and node.attr == "setSizeAdjustPolicy"
            if made or kin or own:
                found.append(f"{path.relative_to(root)}:{node.lineno}")
    assert found == []


@pytest.mark.parametrize("opened", [False, True])
def test_letters_find_an_entry_by_any_of_its_words(boxed, qtbot, opened):
    """Not only by how it begins: who types "lev" means the level of the opening."""
    entries = ("not read", "Leaf: Width", "Opening: Level", "Opening: Clear width")
    box = boxed(wide(60), entries)
    box.setCurrentIndex(0)
    chosen = []
    box.activated.connect(chosen.append)
    box.setFocus()
    if opened:
        qtbot.mouseClick(box, Qt.MouseButton.LeftButton)
        qtbot.waitUntil(lambda: box.view().isVisible())
    keyboard = box.view() if opened else box
    qtbot.keyClicks(keyboard, "lev")
    if opened:
        qtbot.keyClick(keyboard, Qt.Key.Key_Return)
    assert box.currentText() == "Opening: Level"
    assert chosen[-1] == 2


def test_one_letter_goes_on_to_the_next_entry_and_what_begins_so_is_before_what_has_it_within(boxed, qtbot):
    box = boxed(wide(60), ("unknown", "wood", "steel", "glass in wood", "wired glass"))
    box.setCurrentIndex(0)
    box.setFocus()
    found = []
    for _ in range(2):
        qtbot.keyClick(box, Qt.Key.Key_W)
        found.append(box.currentText())
    assert found == ["wood", "wired glass"]
    qtbot.wait(QApplication.keyboardInputInterval() + 50)
    qtbot.keyClicks(box, "glass in")
    assert box.currentText() == "glass in wood"
    qtbot.wait(QApplication.keyboardInputInterval() + 50)
    qtbot.keyClicks(box, "iron")
    assert box.currentText() == "glass in wood"


def test_a_short_list_is_seen_whole(look, boxed, qtbot):  # noqa: F811
    box = boxed(wide(40), ("in", "ft", "mm", "cm", "m", "as the heading says"))
    for place in (0, 5):
        box.setCurrentIndex(place)
        qtbot.mouseClick(box, Qt.MouseButton.LeftButton)
        view = box.view()
        qtbot.waitUntil(view.isVisible)
        for row in range(box.count()):
            rect = view.visualRect(box.model().index(row, 0))
            assert view.viewport().rect().contains(rect), row
        QTest.keyClick(view, Qt.Key.Key_Escape)


def test_letters_typed_after_one_another_find_entries_in_the_open_list(look, boxed, qtbot):  # noqa: F811
    box = boxed(wide(60), ("Opening: Mark", "Opening: Level", "Leaf: Width", "Leaf: Thickness", "Leaf: Core thick"))
    qtbot.mouseClick(box, Qt.MouseButton.LeftButton)
    view = box.view()
    qtbot.waitUntil(view.isVisible)
    QTest.keyClicks(view, "leaf: th")
    assert view.currentIndex().data() == "Leaf: Thickness"
    qtbot.wait(QApplication.keyboardInputInterval() + 50)
    QTest.keyClicks(view, "wid")
    assert view.currentIndex().data() == "Leaf: Width"
    # The same letter again goes on to the next.
    qtbot.wait(QApplication.keyboardInputInterval() + 50)
    QTest.keyClicks(view, "ooo")
    assert view.currentIndex().data() == "Opening: Mark"
    QTest.keyClick(view, "o")
    assert view.currentIndex().data() == "Opening: Level"
    QTest.keyClick(view, Qt.Key.Key_Return)
    assert box.currentText() == "Opening: Level"


def test_one_in_a_cell_has_an_edge_only_while_it_is_used(look, qtbot):  # noqa: F811
    table = QTableWidget(2, 1)
    qtbot.addWidget(table)
    boxes = [DropDown(), DropDown()]
    for row, box in enumerate(boxes):
        box.addItems([SHORT, LONG])
        box.fill_cell()
        table.setCellWidget(row, 0, box)
    table.resize(400, 200)
    table.show()
    boxes[0].setFocus()
    QApplication.processEvents()

    def edge(box):
        """What stands at its left edge, and right within it."""
        image = box.grab().toImage()
        return image.pixelColor(0, image.height() // 2).name(), image.pixelColor(3, image.height() // 2).name()

    quiet = edge(boxes[1])
    assert quiet[0] == quiet[1]
    used = edge(boxes[0])
    assert used[0] == colour("focus").name() != used[1]
    # That there is something to choose is seen all the same.
    arrow = boxes[1].grab(QRect(boxes[1].width() - 20, 0, 20, boxes[1].height())).toImage()
    assert len({arrow.pixelColor(x, y).name() for x in range(2, 18) for y in range(2, arrow.height() - 2)}) > 1
