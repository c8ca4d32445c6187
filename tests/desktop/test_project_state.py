"""What subjects share: which project is open and what is chosen in it, observed without a widget."""

import pytest

from hwsched.desktop.project.project_state import ProjectState
from hwsched.desktop.project.touched_openings import touched_openings
from hwsched.desktop.project.workspace import Workspace
from hwsched.model.project import open_project
from hwsched.operations.changes import Changes
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.findings.waivers import waive
from hwsched.operations.parts.hardware_sets import Line, assign_set, make_set
from hwsched.operations.power.power_results import power_facts
from hwsched.operations.project.settings import set_settings
from hwsched.operations.survey.editing import add_opening, edit_facts


@pytest.fixture
def project(corner_file):
    with open_project(corner_file) as opened:
        yield opened


@pytest.fixture
def state(project):
    state = ProjectState("ann")
    workspace = Workspace(project, "ann", state)
    state.take(workspace)
    workspace.take(check_openings(project))
    return state


@pytest.fixture
def heard(state):
    """What the state tells, in order."""
    told = []
    for name in ("leaving", "settled", "reloaded", "selected", "shown"):
        getattr(state, name).connect(lambda name=name: told.append(name))
    state.touched.connect(lambda ids: told.append(("touched", ids)))
    return told


def id_of(state, mark):
    return next(id_ for id_, each in state.workspace.checked.items() if each.given.opening.mark == mark)


def test_nothing_is_open_and_nothing_chosen_at_first():
    state = ProjectState("ann")
    assert (state.workspace, state.chosen, state.ids, state.checked) == (None, None, (), None)
    assert not state.filled
    assert state.seen_of("x") is None
    assert state.give_up() is None


def test_what_is_chosen_is_known_by_its_identity(state, heard):
    one, two = id_of(state, "M004"), id_of(state, "M005")
    state.select([two, one], one)
    assert heard == ["shown", "selected"]
    assert state.checked.given.opening.mark == "M004"
    assert state.ids == (two, one)
    assert state.seen_of(one) == state.checked.base
    heard.clear()
    state.reorder([one])
    assert heard == ["selected"]
    assert (state.ids, state.chosen) == ((one,), one)


def test_only_what_is_chosen_is_shown_anew_when_it_is_read_anew(state, heard, project):
    one, two = id_of(state, "M004"), id_of(state, "M005")
    state.select([one], one)
    heard.clear()
    edit_facts(project, "opening", two, {"wave": "7"}, who="ben")
    state.workspace.refresh([two])
    assert heard == [("touched", frozenset({two}))]
    heard.clear()
    state.workspace.refresh([one])
    assert heard == [("touched", frozenset({one})), "shown"]


def test_an_opening_that_comes_is_told_as_all_read_anew(state, heard, project):
    _, new = add_opening(project, {"mark": "NEW-1"}, who="ben")
    state.workspace.refresh([new])
    assert heard == ["reloaded"]
    assert new in state.workspace.checked


def test_settings_are_read_when_asked(state, heard, project):
    assert state.style_of_lengths == "fraction"
    set_settings(project, who="ben", length_style="mm")
    assert state.style_of_lengths == "fraction"
    state.settle()
    assert state.style_of_lengths == "mm"
    assert heard == ["settled"]


def test_who_hears_that_it_is_left_still_sees_it_open(state):
    seen = []
    state.leaving.connect(lambda: seen.append(state.workspace is not None))
    workspace = state.give_up()
    assert seen == [True]
    assert workspace is not None
    assert state.workspace is None
    assert not state.filled


def test_what_is_shown_again_while_it_is_being_shown_is_shown_once(state, heard):
    state.shown.connect(state.show_again)
    state.show_again()
    assert heard == ["shown"]


def test_another_project_begins_with_nothing_chosen(state, tmp_path):
    from hwsched.model.project import create_project

    state.select([id_of(state, "M004")], id_of(state, "M004"))
    state.give_up()
    with create_project(tmp_path / "empty.hwsched", "Empty", length_style="mm") as other:
        state.take(Workspace(other, "ann", state))
        assert (state.chosen, state.ids, state.style_of_lengths) == (None, (), "mm")
        assert not state.filled


def test_a_waiver_touches_what_it_accepts_and_nothing_else(state, project):
    having = {id_ for id_, each in state.workspace.checked.items() if any(not f.waived for f in each.findings)}
    one = min(having)
    rule = next(f.rule for f in state.workspace.checked[one].findings if not f.waived)
    changes = waive(project, rule, person="Ann", reason="Seen on site", who="ann", opening_id=one, scope="opening")
    changes = changes[0] if isinstance(changes, tuple) else changes
    assert touched_openings(state.workspace, Changes(frozenset(), entities=changes.entities)) == {one}


def test_a_set_touches_openings_that_had_it_and_that_get_it(state, project):
    one = id_of(state, "M004")
    part = sorted(state.workspace.checked[one].given.catalogue.parts)[0]
    _, held = make_set(project, "HS-9", [Line("unit", part)], who="ann")
    assign_set(project, held, [one], who="ann")
    only = Changes(frozenset(), entities=frozenset({"hardware_set"}))
    assert touched_openings(state.workspace, only) == {one}
    assert state.workspace.sets[one].name == "HS-9"
    assign_set(project, None, [one], who="ann")
    assert touched_openings(state.workspace, only) == {one}, "it had one"
    assert touched_openings(state.workspace, only) == set()


def test_a_run_touches_all_on_its_supply_and_a_level_all_that_are_connected(state, project):
    connected = power_facts(project).connected()
    one = min(connected)
    supply = connected[one].supply_id
    run = Changes(frozenset({one}), entities=frozenset({"run"}))
    assert touched_openings(state.workspace, run) == {id_ for id_, c in connected.items() if c.supply_id == supply}
    level = Changes(frozenset(), entities=frozenset({"level"}))
    assert touched_openings(state.workspace, level) == set(connected)
