"""Letters with Alt: each leads to one thing of what is seen, and a page that is asked for so gets the keyboard."""

import re
from collections import defaultdict

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QAbstractButton,
    QApplication,
    QGroupBox,
    QLabel,
    QTabBar,
    QTableView,
    QToolButton,
    QWidget,
)

from hwsched.desktop.parts.parts_window import PartsWindow
from tests.desktop.conftest import choose, idle

LETTER = re.compile(r"(?<!&)&([^&\s])")
ALT, CONTROL = Qt.KeyboardModifier.AltModifier, Qt.KeyboardModifier.ControlModifier


def said(widget):
    """The texts of a widget whose letter is a key."""
    if isinstance(widget, QTabBar):
        return [widget.tabText(n) for n in range(widget.count())]
    if isinstance(widget, QGroupBox):
        return [widget.title()]
    if isinstance(widget, QLabel):
        return [widget.text()] if widget.buddy() is not None else []
    own = isinstance(widget, QAbstractButton) and not (isinstance(widget, QToolButton) and widget.defaultAction())
    return [widget.text()] if own else []


def test_no_two_things_that_are_seen_have_the_same_letter(at_work, qtbot):
    """With two of a letter it only goes from one to the other, and does nothing."""
    at_work.resize(1366, 768)
    choose(at_work, "M004")
    twice = {}
    for place in at_work.frame.pages.places:
        at_work.frame.go(place)
        idle(qtbot, at_work)
        held = defaultdict(list)
        texts = [act.text() for act in at_work.menuBar().actions()]
        texts += [text for each in at_work.findChildren(QWidget) if each.isVisible() for text in said(each)]
        for text in texts:
            if (found := LETTER.search(text)) is not None:
                held[found[1].upper()].append(text)
        twice |= {(place, letter): each for letter, each in held.items() if len(each) > 1}
    assert not twice


def test_a_page_that_is_asked_for_from_a_field_of_a_part_gets_the_keyboard(at_work, qtbot):
    at_work.resize(1366, 768)
    at_work.activateWindow()
    at_work.frame.go("parts")
    idle(qtbot, at_work)
    page = at_work.frame.pages.windows[PartsWindow]
    table = page.grid.findChild(QTableView)
    table.setFocus()
    qtbot.keyClick(table, Qt.Key.Key_Down)
    for key, held, wanted in (
        (Qt.Key.Key_U, ALT, page.use), (Qt.Key.Key_L, ALT, page.files), (Qt.Key.Key_Tab, CONTROL, page.use)
    ):  # fmt: skip
        page.pages.setCurrentWidget(page.facts)
        page.facts.lines["description"].field.setFocus()
        qtbot.keyClick(QApplication.focusWidget(), key, held)
        idle(qtbot, at_work)
        assert page.pages.currentWidget() is wanted
        assert wanted.isAncestorOf(QApplication.focusWidget()), key
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_C, ALT)
    assert page.pages.currentWidget() is page.facts
    assert page.facts.isAncestorOf(QApplication.focusWidget())
