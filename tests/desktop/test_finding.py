"""Find anything: what fits best, on what a command will act; by the keyboard alone."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from hwsched.desktop.find.finding import Found, find
from hwsched.desktop.findings.rulebook_window import RulebookWindow
from hwsched.rules import RULEBOOK
from tests.desktop.conftest import choose, idle

CONTROL = Qt.KeyboardModifier.ControlModifier
DOWN, ENTER, ESCAPE = Qt.Key.Key_Down, Qt.Key.Key_Return, Qt.Key.Key_Escape


def found(kind, title, words="", possible=True, also=""):
    return Found(kind, title, words, lambda: None, possible, also)


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("", []),
        ("m1", ["M1", "M11", "A-M1"]),
        ("M11", ["M11"]),
        ("stair", ["Stair doors latch", "M1"]),
        ("doors st", ["Stair doors latch"]),
        ("cylinder-flush", ["Nothing stands proud"]),
        ("no such words", []),
    ],
)
def test_what_fits_best_stands_first(text, wanted):
    def source():
        yield found("Rule", "Stair doors latch")
        yield found("Rule", "Nothing stands proud", also="cylinder-flush")
        yield found("Opening", "M11", "hall")
        yield found("Opening", "M1", "stair")
        yield found("Part", "A-M1")

    assert [each.title for each in find([source], text)] == wanted


def test_where_words_fit_alike_an_opening_stands_before_a_command_and_what_is_possible_first():
    sources = [lambda: [found("Command", "Fit"), found("Command", "Fit", possible=False), found("Opening", "FIT")]]
    assert [(each.kind, each.possible) for each in find(sources, "fit")] == [
        ("Opening", True), ("Command", True), ("Command", False)
    ]  # fmt: skip
    assert len(find([lambda: [found("Part", f"P{n}") for n in range(100)]], "p")) == 40


def ask(qtbot, window, text):
    """Type words into the field, reached by its key from wherever the keyboard is."""
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    qtbot.keyClick(QApplication.focusWidget() or window, Qt.Key.Key_K, CONTROL)
    assert QApplication.focusWidget() is window.field
    qtbot.keyClicks(window.field, text)
    return window.field.list


def test_openings_rules_and_commands_are_reached_by_keys(at_work, qtbot):
    state = at_work.frame.state
    shown = ask(qtbot, at_work, "m005")
    assert shown.isVisible()
    qtbot.keyClick(at_work.field, ENTER)
    qtbot.waitUntil(lambda: state.checked is not None and state.checked.given.opening.mark == "M005")
    assert not shown.isVisible()
    rule = next(each for each in RULEBOOK if each.id == "cylinder-flush")
    ask(qtbot, at_work, rule.title)
    qtbot.keyClick(at_work.field, ENTER)
    qtbot.waitUntil(lambda: RulebookWindow in at_work.frame.pages.windows)
    assert at_work.frame.pages.windows[RulebookWindow].chosen() == "cylinder-flush"
    ask(qtbot, at_work, "cost")
    qtbot.keyClick(at_work.field, ENTER)
    qtbot.waitUntil(lambda: at_work.frame.trail.here.place == "cost")
    idle(qtbot, at_work)


def test_a_command_says_on_what_it_will_act_before_it_is_given(at_work, qtbot):
    choose(at_work, "M004", "M005")
    shown = ask(qtbot, at_work, "remove")
    assert shown.chosen().title == "Remove openings"
    assert shown.chosen().words.startswith("on 2 openings")
    qtbot.keyClick(at_work.field, ENTER)
    qtbot.waitUntil(lambda: at_work.opening.removal is not None)
    assert at_work.opening.removal.text() == "Remove 2 openings with all their facts?"
    at_work.opening.removal.close()
    total = at_work.openings.register.total()
    shown = ask(qtbot, at_work, "fit")
    assert shown.chosen().words.startswith(f"on {total} openings in view · F5")
    qtbot.keyClick(at_work.field, DOWN)
    assert shown.chosen().title != "Fit"
    qtbot.keyClick(at_work.field, ESCAPE)
    assert not shown.isVisible()
    assert QApplication.focusWidget() is not at_work.field
    assert not at_work.frame.jobs.busy


def test_what_cannot_be_done_says_why_and_is_not_done(qtbot):
    from hwsched.desktop.window import Window

    window = Window("tester")
    qtbot.addWidget(window)
    window.show()
    shown = ask(qtbot, window, "fit")
    assert shown.chosen().words.startswith("open a project first")
    qtbot.keyClick(window.field, ENTER)
    assert shown.isVisible()


@pytest.mark.parametrize("words", ["preferences", "dark", "text size"])
def test_what_a_person_chooses_for_themselves_is_found_by_the_words_for_it(at_work, qtbot, words):
    at_work.activateWindow()
    qtbot.waitUntil(at_work.isActiveWindow)
    qtbot.keyClick(at_work, Qt.Key.Key_K, Qt.KeyboardModifier.ControlModifier)
    qtbot.keyClicks(at_work.field, words)
    assert at_work.field.list.chosen() is not None, words
    while at_work.field.list.chosen().title != at_work.frame.commands["go-preferences"].title:
        before = at_work.field.list.chosen()
        qtbot.keyClick(at_work.field, Qt.Key.Key_Down)
        assert at_work.field.list.chosen() is not before, words
    qtbot.keyClick(at_work.field, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: "preferences" in at_work.frame.pages.widgets)


def test_reasons_are_asked_for_by_keys_from_wherever_an_opening_is_chosen(at_work, qtbot):
    choose(at_work, "M005")
    shown = ask(qtbot, at_work, "why this")
    assert (shown.chosen().title, shown.chosen().words.startswith("on M005")) == ("Why this?", True)
    qtbot.keyClick(at_work.field, ENTER)
    qtbot.waitUntil(lambda: at_work.frame.trail.here.place == "why")
    page = at_work.frame.pages.widgets["why"]
    assert page.mark == "M005"
    assert page.tree.topLevelItemCount() > 0
