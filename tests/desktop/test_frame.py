"""One window, places in it: by rail, tabs, keys, back and forward; pages torn off and brought back."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QApplication

from hwsched.desktop.parts.cost_window import CostWindow
from hwsched.desktop.parts.parts_window import PartsWindow
from hwsched.desktop.power.power_window import PowerWindow
from tests.desktop.conftest import checked_of, choose, idle

LEFT, ALT, CONTROL = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.AltModifier, Qt.KeyboardModifier.ControlModifier
SHIFT = Qt.KeyboardModifier.ShiftModifier


def here(window):
    return window.frame.trail.here.place


def press(qtbot, window, key, modifiers=Qt.KeyboardModifier.NoModifier):
    qtbot.keyClick(QApplication.focusWidget() or window, key, modifiers)


def tab(qtbot, window, title):
    tabs = window.centre.tabs
    at = next(at for at in range(tabs.count()) if tabs.tabText(at) == title)
    qtbot.mouseClick(tabs, LEFT, pos=tabs.tabRect(at).center())


def click(qtbot, window, name):
    qtbot.mouseClick(window.rail.buttons[name], LEFT)


def test_places_are_gone_to_by_rail_and_tabs_and_back_leads_home(at_work, qtbot):
    at_work.activateWindow()
    choose(at_work, "M005")
    assert here(at_work) == "openings"
    assert at_work.rail.buttons["openings"].isChecked()
    assert at_work.inspector.isVisible()
    click(qtbot, at_work, "parts")
    assert at_work.frame.pages.windows[PartsWindow].isVisible()
    assert not at_work.inspector.isVisible(), "a part has its own sheet"
    tab(qtbot, at_work, "Cost")
    idle(qtbot, at_work)
    assert at_work.frame.pages.windows[CostWindow].isVisible()
    assert not at_work.frame.pages.windows[PartsWindow].isVisible()
    assert at_work.rail.buttons["parts"].isChecked()
    press(qtbot, at_work, Qt.Key.Key_Left, ALT)
    press(qtbot, at_work, Qt.Key.Key_Left, ALT)
    assert here(at_work) == "openings"
    assert at_work.rail.buttons["openings"].isChecked()
    assert at_work.inspector.isVisible()
    assert at_work.sheet.title.text().startswith("M005")
    press(qtbot, at_work, Qt.Key.Key_Right, ALT)
    assert here(at_work) == "catalogue"


def test_no_button_of_a_page_leads_where_a_tab_above_it_leads(at_work, qtbot):
    for name in ("survey", "openings", "power", "parts", "release"):
        at_work.frame.go(name)
        tabs = at_work.centre.tabs
        titles = {tabs.tabText(at) for at in range(tabs.count())}
        for at in range(tabs.count()):
            tabs.setCurrentIndex(at)
            idle(qtbot, at_work)
            page = at_work.frame.pages.widgets[here(at_work)]
            buttons = {each.text().replace("&", "").rstrip("…") for each in page.findChildren(QAbstractButton)}
            assert not buttons & titles, (name, buttons & titles)


def test_the_rail_is_walked_by_arrow_keys_and_return_goes_on_from_there(at_work, qtbot):
    at_work.activateWindow()
    click(qtbot, at_work, "survey")
    assert QApplication.focusWidget() is at_work.rail.buttons["survey"]
    for name, page in (("openings", "openings"), ("power", "power"), ("parts", "catalogue")):
        press(qtbot, at_work, Qt.Key.Key_Down)
        assert here(at_work) == page
        assert QApplication.focusWidget() is at_work.rail.buttons[name]
    press(qtbot, at_work, Qt.Key.Key_Up)
    assert here(at_work) == "power"


def test_a_page_is_torn_off_comes_back_and_is_closed(at_work, qtbot):
    at_work.activateWindow()
    click(qtbot, at_work, "parts")
    page = at_work.frame.pages.windows[PartsWindow]
    press(qtbot, at_work, Qt.Key.Key_W, CONTROL | SHIFT)
    own = page.window()
    assert own is not at_work
    assert own.isVisible()
    assert at_work.centre.away.isVisible()
    click(qtbot, at_work, "openings")
    assert page.isVisible(), "beside another place"
    own.close()
    assert page.window() is at_work
    click(qtbot, at_work, "parts")
    assert page.isVisible()
    at_work.activateWindow()
    press(qtbot, at_work, Qt.Key.Key_W, CONTROL)
    assert PartsWindow not in at_work.frame.pages.windows
    assert here(at_work) == "openings"


@pytest.mark.parametrize("key", [Qt.Key.Key_F8, Qt.Key.Key_F7])
def test_what_stands_beside_the_list_is_put_away_and_fetched_by_a_key(at_work, qtbot, key):
    at_work.activateWindow()
    shown = {Qt.Key.Key_F8: at_work.inspector, Qt.Key.Key_F7: at_work.drawer}[key]
    before = shown.isVisible()
    press(qtbot, at_work, key)
    assert shown.isVisible() is not before
    press(qtbot, at_work, key)
    assert shown.isVisible() is before


def test_a_page_follows_in_sight_and_catches_up_when_it_is_seen_again(at_work, qtbot, monkeypatch):
    followed = []
    monkeypatch.setattr(PowerWindow, "follow", lambda _self: followed.append(True))
    click(qtbot, at_work, "power")
    followed.clear()
    opening = checked_of(at_work, "M004").given.opening.id

    def edit(text):
        at_work.opening.type_fact("opening", opening, "wave", text)

    edit("1")
    assert followed == [True]
    click(qtbot, at_work, "openings")
    edit("2")
    edit("3")
    assert followed == [True], "nobody sees it"
    click(qtbot, at_work, "power")
    assert followed == [True, True], "once, for both"
    page = at_work.frame.pages.windows[PowerWindow]
    page.close()
    edit("4")
    assert followed == [True, True], "what is closed listens no more, though it is not deleted yet"


def test_every_command_stands_in_a_menu_once_and_says_its_keys(at_work):
    shown = [act for menu in at_work.menus.menus.values() for act in menu.actions() if act.objectName()]
    commands = list(at_work.frame.commands)
    assert sorted(each.identifier for each in commands) == sorted(act.objectName() for act in shown)
    keys = [each.keys for each in commands if each.keys]
    assert len(keys) == len(set(keys)) > 12
    assert all(each.tip for each in commands)
    offered = {each.text() for each in at_work.openings.table.actions()}
    assert offered >= {"Fit", "Remove openings", "Retire openings", "Add existing item"}, "by a right click"
    assert all(
        at_work.frame.pages.places[each.within].rail for each in at_work.frame.pages.places.values() if each.within
    )


def test_the_line_below_counts_by_state_and_says_who_works_where(at_work, qtbot, project_file):
    line = at_work.status
    total = at_work.openings.register.total()
    assert line.counts.text().startswith(f"{total} openings: ")
    assert sum(int(word) for word in line.counts.text().partition(": ")[2].split() if word.isdigit()) == total
    assert line.where.text() == f"tester · {project_file.name}"
    at_work.opening.add_opening("NEW-1")
    assert line.counts.text().startswith(f"{total + 1} openings: ")
