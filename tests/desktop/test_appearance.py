"""Theme and text size are kept choices, and the whole program follows them at once."""

import gc
import weakref

import pytest
from PySide6.QtCore import QByteArray, QEvent, QSettings, Qt
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import (
    QAbstractButton,
    QLabel,
    QLineEdit,
    QTabBar,
    QTableView,
    QToolBar,
    QToolButton,
    QTreeWidget,
    QTreeWidgetItem,
    QWidget,
)
from shiboken6 import isValid

from hwsched.desktop.frame.rail import Rail
from hwsched.desktop.looks.appearance import Look, palette, sheet
from hwsched.desktop.looks.icons import Picture
from hwsched.desktop.looks.tokens import COLOURS, colour, font
from hwsched.desktop.project.preferences import Preferences
from tests.desktop.conftest import idle, look_put_on


@pytest.fixture
def preferences():
    return Preferences()


@pytest.fixture
def look(qapp, preferences):
    with look_put_on(qapp, preferences) as made:
        yield made
        preferences.theme = "system"


def test_what_is_chosen_is_there_at_the_next_start(preferences):
    assert (preferences.theme, preferences.text_size, preferences.name, preferences.recent) == ("system", 100, "", [])
    preferences.theme, preferences.text_size, preferences.name = "dark", 150, "  A.  Quay "
    preferences.keep_layout("window", QByteArray(b"here"))
    again = Preferences()
    assert (again.theme, again.text_size, again.name) == ("dark", 150, "A. Quay")
    assert again.layout("window") == b"here"
    assert again.layout("another").isEmpty()


def test_what_nobody_could_have_chosen_counts_for_nothing(tmp_path):
    kept = QSettings(str(tmp_path / "one.ini"), QSettings.Format.IniFormat)
    for key, value in (("look/theme", "pink"), ("look/text_size", "large"), ("layout/window", "x")):
        kept.setValue(key, value)
    preferences = Preferences(kept=kept)
    assert (preferences.theme, preferences.text_size) == ("system", 100)
    assert preferences.layout("window").isEmpty()
    for said, taken in ((20, 80), (999, 200), (125, 125)):
        preferences.text_size = said
        assert preferences.text_size == taken


def test_recent_projects_stand_last_first_and_once(preferences):
    for number in range(15):
        preferences.opened(f"/yard/{number}.hwsched")
    preferences.opened("/yard/9.hwsched")
    assert preferences.recent[:3] == ["/yard/9.hwsched", "/yard/14.hwsched", "/yard/13.hwsched"]
    assert len(preferences.recent) == len(set(preferences.recent)) == 12
    preferences.opened("postgresql://ann:s3cret@db/yard")
    assert "s3cret" not in str(preferences.recent)
    preferences.forget("/yard/14.hwsched")
    assert preferences.recent[1] == "/yard/13.hwsched"
    alone = Preferences()
    for each in alone.recent[1:]:
        alone.forget(each)
    assert Preferences().recent == ["/yard/9.hwsched"]


def test_the_program_follows_theme_and_text_size(qapp, qtbot, preferences, look):
    label = QLabel("Mill House")
    qtbot.addWidget(label)
    # What was never shown is given colours as it is shown first.
    label.show()
    preferences.theme = "dark"
    assert look.dark
    assert label.palette().color(QPalette.ColorRole.WindowText).name() == COLOURS["text"][1]
    assert colour("window") == palette(dark=True).color(QPalette.ColorRole.Window)
    preferences.theme = "light"
    assert not look.dark
    assert label.palette().color(QPalette.ColorRole.WindowText).name() == COLOURS["text"][0]
    before = label.sizeHint().height()
    preferences.text_size = 200
    assert qapp.font().pixelSize() == 26
    assert font("title").pixelSize() == 40
    assert label.sizeHint().height() > before * 1.6


def test_the_style_sheet_says_no_word_that_is_left_open():
    light, dark = sheet(dark=False), sheet(dark=True)
    assert light != dark
    assert "$" not in light + dark
    assert COLOURS["focus"][0] in light
    assert COLOURS["focus"][1] in dark


class Dressed(QLabel):
    """Counts how often it was given a style."""

    times = 0

    def changeEvent(self, event):  # noqa: N802
        self.times += event.type() == QEvent.Type.StyleChange
        super().changeEvent(event)


def test_what_stands_deep_in_a_window_is_dressed_no_more_often(qtbot, preferences, look):
    around = QWidget()
    qtbot.addWidget(around)
    inner = around
    for _ in range(12):
        inner = QWidget(inner)
    label = Dressed("Mill House", inner)
    around.show()
    label.times = 0
    preferences.text_size = 150
    assert 1 <= label.times <= 3


def arrow_of(tree):
    """How high the arrow is that unfolds the first line [px]: what is painted before its text."""
    line = tree.visualItemRect(tree.topLevelItem(0))
    image = tree.viewport().grab(line.translated(-line.left(), 0)).toImage()
    ground = image.pixelColor(0, 0)
    wide = range(tree.indentation())
    rows = [y for y in range(image.height()) if any(image.pixelColor(x, y) != ground for x in wide)]
    return rows[-1] - rows[0] + 1


def test_the_arrows_of_trees_grow_with_the_text(qtbot, preferences, look):
    tree = QTreeWidget()
    tree.setHeaderLabels(["Place"])
    tree.addTopLevelItem(QTreeWidgetItem(["Mill House"]))
    tree.topLevelItem(0).addChild(QTreeWidgetItem(["Ground"]))
    qtbot.addWidget(tree)
    tree.show()
    high = {}
    for percent in (100, 200):
        preferences.text_size = percent
        qtbot.wait(0)
        high[percent] = arrow_of(tree)
    assert high[100] >= 8
    assert high[200] >= 1.8 * high[100]


def test_what_leads_to_tabs_out_of_sight_is_hit_and_seen_at_every_text_size(qtbot, preferences, look):
    tabs = QTabBar()
    tabs.setUsesScrollButtons(True)
    for name in ("Drawing", "Facts", "Parts", "Findings", "Documents", "History"):
        tabs.addTab(name)
    qtbot.addWidget(tabs)
    tabs.resize(200, 40)
    tabs.show()
    for percent in (100, 200):
        preferences.text_size = percent
        qtbot.wait(0)
        arrows = [each for each in tabs.findChildren(QToolButton) if each.isVisible()]
        assert len(arrows) == 2
        for each in arrows:
            assert each.width() >= 24 * percent / 100
            image = each.grab().toImage()
            ground = image.pixelColor(1, 1)
            inked = [y for y in range(image.height()) for x in range(image.width()) if image.pixelColor(x, y) != ground]
            # As high as the arrow of a drop-down is at this size.
            assert max(inked) - min(inked) >= 5 * percent / 100


def test_the_rail_has_room_for_its_words_in_a_text_size_that_is_chosen_while_it_is_shown(qapp, at_work, qtbot, look):
    own = Look(qapp, at_work.frame.preferences)
    at_work.frame.go("preferences")
    page = at_work.frame.pages.widgets["preferences"]
    rail = next(iter(at_work.findChildren(Rail)))
    before = rail.width()

    def has_room():
        return all(
            button.fontMetrics().horizontalAdvance(button.text()) < button.width()
            and button.iconSize().height() >= button.fontMetrics().ascent()
            for button in rail.buttons.values()
        )

    for key in (Qt.Key.Key_End, Qt.Key.Key_Home):
        page.text_size.setFocus()
        qtbot.keyClick(page.text_size, Qt.Key.Key_Down, Qt.KeyboardModifier.AltModifier)
        qtbot.keyClick(page.text_size.view(), key)
        qtbot.keyClick(page.text_size.view(), Qt.Key.Key_Return)
        qtbot.waitUntil(has_room)
        assert (rail.width() > before) == (key == Qt.Key.Key_End)
    own.setParent(None)


def pictured(button):
    """Tell whether a button shows an icon."""
    words_only = isinstance(button, QToolButton) and button.toolButtonStyle() == Qt.ToolButtonStyle.ToolButtonTextOnly
    return not button.icon().isNull() and not words_only


def sizes(window):
    """How large letters and icons are that a person sees, each with what it stands on."""
    for each in (window, *window.findChildren(QWidget)):
        # A bare one has no letters of its own: those of a field's ground are the field's.
        if each.isVisibleTo(window) and type(each) is not QWidget:
            if each.font().pixelSize() > 0:
                yield each, "letters", each.font().pixelSize()
            if isinstance(each, QToolBar) or (isinstance(each, QAbstractButton) and pictured(each)):
                yield each, "icons", each.iconSize().width()
            if isinstance(each, QTableView):
                yield each, "rows", each.verticalHeader().defaultSectionSize()
            if isinstance(each, Picture):
                yield each, "picture", each.width()


def test_letters_and_icons_of_an_open_window_follow_the_text_size_and_come_back(qapp, at_work, qtbot):
    preferences = at_work.frame.preferences
    with look_put_on(qapp, preferences):
        at_work.resize(1366, 768)
        for place in ("openings", "today", "parts", "office", "release"):
            at_work.frame.go(place)
            idle(qtbot, at_work)
            begun = list(sizes(at_work))
            assert {what for _, what, _ in begun} >= {"letters", "icons"}
            preferences.text_size = 150
            qapp.processEvents()
            grown = {(id(each), what): size for each, what, size in sizes(at_work)}
            stayed = [
                (
                    place,
                    type(each).__name__,
                    type(each.parent()).__name__,
                    each.accessibleName() or getattr(each, "text", str)(),
                    what,
                    size,
                )
                for each, what, size in begun
                if isValid(each) and grown.get((id(each), what), size * 1.5) < size * 1.4
            ]
            assert not stayed
            preferences.text_size = 100
            qapp.processEvents()
            now = {(id(each), what): size for each, what, size in sizes(at_work)}
            assert not [
                (place, each, what)
                for each, what, size in begun
                if isValid(each) and now.get((id(each), what), size) != size
            ]


@pytest.mark.parametrize("percent", [100, 150, 200])
def test_what_clears_a_field_stands_in_its_middle_whole(qapp, qtbot, percent):
    """It had the height of a button of its own, and hung out of the field, the more the larger the letters were."""
    preferences = Preferences()
    preferences.text_size = percent
    with look_put_on(qapp, preferences):
        field = QLineEdit()
        qtbot.addWidget(field)
        field.setClearButtonEnabled(True)
        field.resize(300, field.sizeHint().height())
        field.show()
        qtbot.keyClicks(field, "lock")
        clear = field.findChild(QToolButton)
        qtbot.waitUntil(clear.isVisible)
        assert field.rect().contains(clear.geometry())
        assert abs(clear.geometry().center().y() - field.rect().center().y()) <= 1
        qtbot.mouseClick(clear, Qt.MouseButton.LeftButton)
        assert not field.text()


class Asking(QLabel):
    """Looks for garbage whenever it is given a style, as Python itself may at any call while it is let."""

    def changeEvent(self, event):  # noqa: N802
        if gc.isenabled():
            gc.collect(0)
        super().changeEvent(event)


def test_no_window_that_nobody_holds_goes_while_another_look_is_put_on(qtbot, preferences, look):
    """It stands in the list through which the toolkit goes: gone in the midst of it, it brought the program down."""
    around = QWidget()
    qtbot.addWidget(around)
    labels = [Asking(f"{number}", around) for number in range(20)]
    around.show()
    gone = []
    for _ in range(20):
        ring = QWidget()
        ring.itself = ring
        weakref.finalize(ring, gone.append, True)
    del ring
    gc.enable()
    try:
        preferences.text_size = 160
        preferences.theme = "dark"
        during = len(gone)
    finally:
        gc.disable()
        preferences.theme, preferences.text_size = "system", 100
    gc.collect()
    assert (during, len(gone), len(labels)) == (0, 20, 20)
