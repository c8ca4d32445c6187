"""Many facts at once: one step, refused whole, what others did meanwhile asked about."""

import pytest

from hwsched.model import errors
from hwsched.model.journal.history import history
from hwsched.model.queries import read_inputs
from hwsched.operations.project.history import undo
from hwsched.operations.survey.editing import add_item, add_opening, edit_fact_text
from hwsched.operations.survey.fact_edit import FactEdit
from hwsched.operations.survey.many_facts import edit_many
from hwsched.operations.survey.own_fields import define_field
from tests.model.backends import furnished
from tests.model.states import state


@furnished
def three(project):
    define_field(project, "opening", "keyed", "Keyed", "text", who="ann")
    made = [add_opening(project, {"mark": f"M{n}", "building": "Mill", "level": "1"}, who="ann")[1] for n in (1, 2, 3)]
    return made, [add_item(project, each, {"kind": "lock"}, who="ann")[1] for each in made]


def given(project, ids):
    with project.reading() as connection:
        return list(read_inputs(connection, ids))


def test_facts_of_several_things_are_one_step_and_one_undo(project, three):
    openings, locks = three
    before = state(project)
    edits = [
        *(FactEdit("existing_item", each, "backset_mm", "2 3/4 in") for each in locks),
        *(FactEdit("opening", each, "level", "2") for each in openings[:2]),
        FactEdit("opening", openings[0], "hand", "LHR"),
        FactEdit("opening", openings[0], "keyed", "K7"),
    ]
    changes = edit_many(project, edits, who="ben")
    assert changes.openings == set(openings)
    found = {each.opening.mark: each for each in given(project, openings)}
    assert [found[f"M{n}"].items[0].backset_mm for n in (1, 2, 3)] == pytest.approx([69.85] * 3)
    assert [found[f"M{n}"].opening.level for n in (1, 2, 3)] == ["2", "2", "1"]
    with project.reading() as connection:
        step = history(connection)[-1]
    assert step.summary == "Edit backset, level, hand and 1 more of 3 existing items, 2 openings"
    undo(project, who="ben")
    assert state(project) == before


def test_one_that_cannot_be_read_or_is_taken_leaves_all_as_it_was(project, three):
    openings, locks = three
    before = state(project)
    for wrong, error in (
        (FactEdit("existing_item", locks[1], "backset_mm", "wide"), errors.ValueRefusedError),
        (FactEdit("opening", openings[1], "mark", "M3"), errors.DuplicateValueError),
        (FactEdit("opening", "gone", "hand", "LH"), errors.MissingRowError),
        (FactEdit("circuit", openings[0], "name", "C"), errors.ValueRefusedError),
    ):
        with pytest.raises(error):
            edit_many(project, [FactEdit("opening", openings[0], "hand", "RH"), wrong], who="ben")
    assert state(project) == before


def test_what_somebody_else_changed_since_is_not_overwritten_unseen(project, three):
    openings, _ = three
    base = edit_fact_text(project, "opening", openings[2], "hand", "LH", who="ann").number - 1
    with pytest.raises(errors.ConflictError):
        edit_many(project, [FactEdit("opening", each, "hand", "RH") for each in openings], who="ben", base=base)
    assert [each.opening.hand for each in given(project, openings)] == [None, None, "LH"]


def test_nothing_otherwise_is_no_step(project, three):
    assert edit_many(project, [FactEdit("opening", three[0][0], "level", "1")], who="ben").number is None
