"""What would do nothing cannot be pressed, and says why: each command without a project, in an empty and a full one."""

import pytest

from hwsched.desktop.window import Window
from tests.desktop.conftest import checked_of, choose, idle

WITHOUT_OPENINGS = {
    "undo",
    "redo",
    "fit",
    "check",
    "print",
    "labels",
    "add-existing-item",
    "why-this",
    "remove-openings",
    "retire-openings",
    "release-unit",
    "back",
    "forward",
    "close-page",
    "go-findings",
}
"""What does nothing in a project where nobody has done anything yet, on a place of the rail."""


def off(window):
    return {each.identifier for each in window.frame.commands if not each.act.isEnabled()}


def tells(window, name):
    """Why a command cannot be given, as its tip tells it."""
    command = window.frame.commands[name]
    assert not command.act.isEnabled(), name
    why = window.frame.commands.why_not(name)
    assert why
    assert command.act.toolTip() == command.act.statusTip() == f"{command.tip}: {why}"
    return why


@pytest.fixture
def empty(qtbot, tmp_path):
    shown = Window("tester")
    qtbot.addWidget(shown)
    shown.show()
    shown.project.new_project(str(tmp_path / "empty.hwsched"), "Empty")
    idle(qtbot, shown)
    shown.frame.go("today")
    shown.frame.trail.clear()
    shown.frame.go("openings")
    return shown


def test_in_an_empty_project_nothing_can_be_pressed_that_would_do_nothing(empty, qtbot):
    assert off(empty) == WITHOUT_OPENINGS
    for name in WITHOUT_OPENINGS:
        tells(empty, name)
    assert tells(empty, "undo") == "none of your steps is in force"
    assert tells(empty, "fit") == "take in openings first"
    empty.frame.go("findings")
    assert tells(empty, "inspector") == "this page has none"
    assert "close-page" not in off(empty)
    assert empty.frame.commands["back"].act.toolTip() == "To the place before: Openings"
    # What was made is the first step that can be taken back, and the tip says which.
    empty.opening.add_opening("N1")
    idle(qtbot, empty)
    assert empty.history.act_undo.isEnabled()
    assert empty.history.act_undo.toolTip().startswith("Take back your last step: ")
    assert "N1" in empty.history.act_undo.toolTip()
    empty.history.act_undo.trigger()
    idle(qtbot, empty)
    assert tells(empty, "undo")
    assert "N1" in empty.history.act_redo.toolTip()
    assert empty.history.act_redo.isEnabled()


def test_without_a_project_it_is_said_what_comes_first(qtbot):
    shown = Window("tester")
    qtbot.addWidget(shown)
    shown.show()
    assert tells(shown, "undo") == tells(shown, "fit") == "open a project first"
    assert tells(shown, "back") == "there is none"
    assert not {"new-project", "open-project", "quit", "find", "preferences"} & off(shown)


def test_what_acts_on_openings_follows_what_is_selected_and_in_view(at_work, qtbot):
    choose(at_work, "M016", "M116")
    assert not {"retire-openings", "remove-openings", "fit", "labels"} & off(at_work)
    assert tells(at_work, "release-unit") == "it was not placed by hand"
    at_work.openings.grid.table.clearSelection()
    for name in ("retire-openings", "remove-openings"):
        assert tells(at_work, name) == "no opening is selected"
    at_work.openings.register.narrow(words="there is no such opening")
    for name in ("fit", "labels"):
        assert tells(at_work, name) == "no opening is in view"
    at_work.openings.register.narrow(words="")
    assert not {"fit", "labels"} & off(at_work)


def test_a_unit_that_was_placed_by_hand_can_be_released(at_work, qtbot):
    choose(at_work, "M016")
    place = checked_of(at_work, "M016").point(1).fit.placement
    at_work.places.move_unit(place.x_mm + 2, place.y_mm)
    idle(qtbot, at_work)
    assert "release-unit" not in off(at_work)
    at_work.frame.commands["release-unit"].act.trigger()
    idle(qtbot, at_work)
    assert tells(at_work, "release-unit")
