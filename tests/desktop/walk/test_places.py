"""Every place by the keyboard alone: reached by its words, where the keys are is seen at each stop, and left again."""

import pytest
from PySide6.QtWidgets import QApplication

from hwsched.desktop.frame.places import PLACES
from tests.desktop.conftest import look_put_on
from tests.desktop.walk.hands import ALT, KEY, Keyboard

STOPS = 8
"""So many stops of Tab are looked at in each place."""


@pytest.fixture
def hands(at_work, qapp, qtbot):
    """One who works by keys, in the window as a person sees it."""
    with look_put_on(qapp, at_work.frame.preferences):
        at_work.resize(1366, 768)
        yield Keyboard(qtbot, at_work)


def picture(widget):
    """A widget with what stands around it, as it is painted now."""
    window = widget.window()
    area = widget.rect().adjusted(-3, -3, 3, 3)
    return window.grab(area.translated(widget.mapTo(window, widget.rect().topLeft()))).toImage()


def test_each_place_is_reached_shows_where_the_keys_are_and_is_left(hands, at_work):
    frame = at_work.frame
    unseen, met = [], {}
    for place in (each for each in PLACES if getattr(each, "listed", True) and each.name != frame.trail.here.place):
        hands.command(place.title)
        hands.done()
        here = frame.trail.here.place
        if here != frame.pages.resolved(place.name).name:
            unseen.append(f"{place.title}: not reached, {here} is shown")
            continue
        page, stops = frame.pages.widgets[here], 0
        reading = getattr(page, "_reading", None)
        hands.qtbot.waitUntil(lambda reading=reading: reading is None or not reading.busy, timeout=20_000)
        for _ in range(STOPS):
            focus = QApplication.focusWidget()
            if focus is None or not (focus is page or page.isAncestorOf(focus)):
                hands.key(KEY.Key_Tab)
                continue
            stops += 1
            with_keys = picture(focus)
            hands.key(KEY.Key_Tab)
            QApplication.processEvents()
            if QApplication.focusWidget() is not focus and picture(focus) == with_keys:
                unseen.append(f"{place.title}: {type(focus).__name__} {focus.accessibleName()} looks the same")
        met[place.title] = stops
        if not stops:
            unseen.append(f"{place.title}: the keys are not in it")
        hands.key(KEY.Key_Left, ALT)
        hands.done()
        if frame.trail.here.place == here:
            unseen.append(f"{place.title}: not left")
    assert len(met) > 25
    assert not unseen, "\n".join(unseen)
