"""Theme and text size are kept choices, and the whole program follows them at once."""

import pytest
from PySide6.QtCore import QByteArray, QSettings
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QLabel

from hwsched.desktop.appearance import Look, palette, sheet
from hwsched.desktop.preferences import Preferences
from hwsched.desktop.tokens import COLOURS, colour, font


@pytest.fixture
def preferences():
    return Preferences()


@pytest.fixture
def look(qapp, preferences):
    style, letters, colours = qapp.style().name(), qapp.font(), QPalette(qapp.palette())
    made = Look(qapp, preferences)
    yield made
    preferences.theme = "system"
    made.setParent(None)
    qapp.setStyleSheet("")
    qapp.setStyle(style)
    qapp.setFont(letters)
    qapp.setPalette(colours)


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
    preferences.forget("/yard/14.hwsched")
    assert preferences.recent[1] == "/yard/13.hwsched"
    alone = Preferences()
    for each in alone.recent[1:]:
        alone.forget(each)
    assert Preferences().recent == ["/yard/9.hwsched"]


def test_the_program_follows_theme_and_text_size(qapp, qtbot, preferences, look):
    label = QLabel("Mill House")
    qtbot.addWidget(label)
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
