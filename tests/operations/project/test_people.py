"""People and roles: who may do what, and that somebody can always list others."""

import ast
import re
from pathlib import Path

import pytest

import hwsched
from hwsched.model import errors
from hwsched.model.catalogue_writing import write_parts
from hwsched.model.roles import ROLES
from hwsched.operations.opening.hand_choices import choose_part
from hwsched.operations.project.history import redo, undo, undo_one
from hwsched.operations.project.people import Person, add_person, people, remove_person
from hwsched.operations.project.settings import set_settings
from hwsched.operations.survey.editing import add_opening, edit_facts
from hwsched.values import Part
from tests.model.backends import furnished
from tests.model.states import state


@furnished
def listed(project):
    """One person of each role, and an opening; returns its identifier."""
    opening = add_opening(project, {"mark": "1"}, who="anybody")[1]
    add_person(project, "Spec", "specifier", who="Spec")
    for role in ("surveyor", "storekeeper", "installer", "viewer"):
        add_person(project, role.capitalize(), role, who="Spec")
    return opening


def test_a_project_without_people_is_open_to_all(project):
    assert people(project) == []
    for who in ("ann", "ben"):
        add_opening(project, {"mark": who}, who=who)


def test_the_first_person_is_a_specifier(project):
    for role in set(ROLES) - {"specifier"}:
        with pytest.raises(errors.ValueRefusedError, match="the first person is a specifier"):
            add_person(project, "Ann", role, who="ann")
    add_person(project, "  Ann   Archer ", "specifier", who="ann")
    assert people(project) == [Person("Ann Archer", "specifier")]


def test_who_is_not_listed_changes_nothing_and_learns_whom_to_ask(project, listed):
    before = state(project)
    with pytest.raises(errors.NotAllowedError) as refused:
        edit_facts(project, "opening", listed, {"hand": "LH"}, who="stranger")
    assert re.search(r'stranger is not among .*; Spec may add .*--add "stranger"', str(refused.value))
    for verb in (undo, redo):
        with pytest.raises(errors.NotAllowedError):
            verb(project, who="stranger")
    assert state(project) == before


MAY = {
    "Surveyor": {"edit"},
    "Spec": {"edit", "choose", "settings", "people"},
    "Storekeeper": set(),
    "Installer": set(),
    "Viewer": set(),
}


@pytest.mark.parametrize("who", MAY)
def test_each_role_does_its_own_work_only(project, listed, who):
    with project.change("import-catalogue", "Parts", "Spec") as change:
        write_parts(change, [Part("C-1", "cam")], "test")
    acts = {
        "edit": lambda: edit_facts(project, "opening", listed, {"hand": "LH"}, who=who),
        "choose": lambda: choose_part(project, listed, "cam", "C-1", who=who),
        "settings": lambda: set_settings(project, who=who, prefer="holes"),
        "people": lambda: add_person(project, "New", "viewer", who=who),
    }
    done = set()
    for name, act in acts.items():
        before = state(project)
        try:
            act()
        except errors.NotAllowedError as error:
            said = str(error)
        else:
            done.add(name)
            undo(project, who=who)
            said = f"{who} Spec may"
        assert state(project) == before
        assert who in said
        assert "Spec may" in said
    assert done == MAY[who]


def test_the_storekeeper_takes_in_the_catalogue_that_carries_the_stock(project, listed):
    with project.change("import-catalogue", "Parts", "Storekeeper") as change:
        write_parts(change, [Part("C-1", "cam", stock=3.0)], "test")
    assert change.number is not None


def test_taking_back_what_one_may_not_do_is_refused_too(project, listed):
    step = set_settings(project, who="Spec", prefer="holes").number
    mine = edit_facts(project, "opening", listed, {"hand": "LH"}, who="Surveyor").number
    with pytest.raises(errors.NotAllowedError, match="'set-settings' is for: specifier"):
        undo_one(project, step, who="Surveyor")
    # Who gets another role can take back no more than it does.
    add_person(project, "Surveyor", "viewer", who="Spec")
    with pytest.raises(errors.NotAllowedError):
        undo(project, who="Surveyor")
    undo_one(project, mine, who="Spec")


def test_there_is_always_somebody_who_can_list_others(project, listed):
    before = state(project)
    with pytest.raises(errors.ValueRefusedError, match="must be a specifier"):
        add_person(project, "Spec", "viewer", who="Spec")
    with pytest.raises(errors.ValueRefusedError, match="must be a specifier"):
        remove_person(project, "Spec", who="Spec")
    # Nor by a step of the history: the listing of the only specifier, made second.
    assert state(project) == before
    with pytest.raises(errors.ValueRefusedError, match="must be a specifier"):
        undo_one(project, 2, who="Spec")
    assert state(project) == before
    add_person(project, "Surveyor", "specifier", who="Spec")
    remove_person(project, "Spec", who="Surveyor")
    for name in ("Storekeeper", "Installer", "Viewer", "Surveyor"):
        remove_person(project, name, who="Surveyor")
    assert people(project) == []
    edit_facts(project, "opening", listed, {"hand": "LH"}, who="anybody")


def test_what_is_no_person_and_no_role(project, listed):
    with pytest.raises(errors.MissingRowError, match="nobody is not among"):
        remove_person(project, "nobody", who="Spec")
    with pytest.raises(errors.ValueRefusedError, match="accepted: surveyor"):
        add_person(project, "New", "king", who="Spec")
    with pytest.raises(errors.ValueRefusedError, match="needs a name"):
        add_person(project, " ", "viewer", who="Spec")


def test_people_are_journalled_like_everything_else(project, listed):
    before = state(project)
    add_person(project, "Viewer", "installer", who="Spec")
    assert Person("Viewer", "installer") in people(project)
    undo(project, who="Spec")
    assert state(project) == before
    assert add_person(project, "Viewer", "viewer", who="Spec").number is None


BEGINNERS = {"change", "change_prepared", "change_and_fit"}
"""What begins a change set."""


def verbs_of_operations():
    """Words that operations give to what begins a change set, or hold as their verb."""
    # One operation adds leaves and items; it puts its verb together.
    found = {"add-leaf", "add-item"}
    for path in (Path(hwsched.__file__).parent / "operations").rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text())):
            called = isinstance(node, ast.Call) and ast.unparse(node.func).split(".")[-1] in BEGINNERS
            named = isinstance(node, ast.Assign) and "verb" in ast.unparse(node.targets[0])
            stated = node.args if called else [node.value] if named else []
            found |= {each.value for one in stated for each in ast.walk(one) if isinstance(each, ast.Constant)}
    return found


def test_every_verb_that_a_role_names_is_one():
    known = verbs_of_operations()
    assert len(known) > 30
    for role in ROLES.values():
        assert (role.verbs or set()) <= known, (role.name, (role.verbs or set()) - known)
