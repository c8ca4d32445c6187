"""Choices by hand."""

import pytest

from hwsched.model import errors
from hwsched.model.catalogue_writing import write_parts
from hwsched.model.queries import read_inputs
from hwsched.operations.opening.hand_choices import choose_part, place_unit, release_part, release_unit
from hwsched.operations.project.history import undo
from hwsched.operations.survey.editing import add_opening
from hwsched.values import Chosen, HandPlacement, Part
from tests.model.backends import furnished
from tests.model.states import state

PLACE = {"leaf": "single", "face": "inside", "pattern": "above", "x_mm": 20, "y_mm": 1100.5}


@furnished
def opening(project):
    with project.change("import-catalogue", "Parts", "ann") as change:
        write_parts(change, [Part("C-1", "mortise-cylinder"), Part("C-2", "mortise-cylinder")], "test")
    return add_opening(project, {"mark": "1"}, who="ann")[1]


def given(project, opening):
    with project.reading() as connection:
        return next(read_inputs(connection, [opening]))


def test_a_part_is_chosen_changed_and_released(project, opening):
    changes = choose_part(project, opening, "cylinder", "C-1", who="ann")
    assert changes.openings == {opening}
    assert given(project, opening).chosen == (Chosen("cylinder", "C-1", 1.0),)
    assert choose_part(project, opening, "cylinder", "C-1", who="ann").number is None
    choose_part(project, opening, "cylinder", "C-2", who="ann", quantity=2.0)
    choose_part(project, opening, "lock", "C-1", who="ann")
    assert given(project, opening).chosen == (Chosen("cylinder", "C-2", 2.0), Chosen("lock", "C-1", 1.0))
    release_part(project, opening, "cylinder", who="ann")
    assert given(project, opening).chosen == (Chosen("lock", "C-1", 1.0),)
    assert release_part(project, opening, "cylinder", who="ann").number is None
    undo(project, who="ann")
    assert len(given(project, opening).chosen) == 2
    with pytest.raises(errors.ValueRefusedError, match=r"'cylnder' is no role; accepted: .*cylinder"):
        release_part(project, opening, "cylnder", who="ann")


@pytest.mark.parametrize(
    ("choice", "word"),
    [
        ({"role": "butler", "part": "C-1"}, "butler"),
        ({"role": "cylinder", "part": "C-9"}, "C-9"),
        ({"role": "cylinder", "part": "C-1", "quantity": 0}, "more than 0"),
        ({"role": "cylinder", "part": "C-1", "quantity": float("nan")}, "more than 0"),
    ],
)
def test_a_choice_that_cannot_be(project, opening, choice, word):
    before = state(project)
    with pytest.raises(errors.ValueRefusedError, match=word):
        choose_part(project, opening, who="ann", **choice)
    assert state(project) == before


def test_a_unit_is_placed_moved_and_released(project, opening):
    place_unit(project, opening, who="ann", **PLACE)
    assert given(project, opening).placed == HandPlacement("single", "inside", "above", 20.0, 1100.5)
    assert place_unit(project, opening, who="ann", **PLACE).number is None
    place_unit(project, opening, who="ann", **{**PLACE, "y_mm": 900.0})
    placed = given(project, opening).placed
    assert placed is not None
    assert placed.y_mm == 900.0
    changes = release_unit(project, opening, who="ann")
    assert changes.openings == {opening}
    assert given(project, opening).placed is None
    assert release_unit(project, opening, who="ann").number is None


@pytest.mark.parametrize(("wrong", "word"), [({"face": "ceiling"}, "ceiling"), ({"x_mm": float("inf")}, "x_mm")])
def test_a_place_that_cannot_be(project, opening, wrong, word):
    with pytest.raises(errors.ValueRefusedError, match=word):
        place_unit(project, opening, who="ann", **{**PLACE, **wrong})
    assert given(project, opening).placed is None


def test_an_opening_that_is_gone(project, opening):
    for verb in (
        lambda: choose_part(project, "nobody", "cylinder", "C-1", who="ann"),
        lambda: release_part(project, "nobody", "cylinder", who="ann"),
        lambda: place_unit(project, "nobody", who="ann", **PLACE),
        lambda: release_unit(project, "nobody", who="ann"),
    ):
        with pytest.raises(errors.MissingRowError):
            verb()
