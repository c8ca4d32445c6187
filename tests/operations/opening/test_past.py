"""The past of an opening: what each step changed of it, before and after, in the words of the project."""

import pytest

from hwsched.operations.opening.hand_choices import choose_part
from hwsched.operations.opening.past import past_of
from hwsched.operations.project.history import undo_one
from hwsched.operations.survey.editing import add_item, add_opening, edit_facts, remove
from hwsched.operations.survey.own_fields import define_field, set_own_value
from tests.operations.exact import small


@pytest.fixture(scope="module")
def yard(tmp_path_factory):
    made = small(tmp_path_factory.mktemp("past") / "y.hwsched", marks="")
    yield made
    made.close()


def test_each_step_says_what_it_changed_of_the_opening_the_latest_first(yard):
    define_field(yard, "opening", "keyed", "Keyed", "text", who="ann")
    _, mine = add_opening(yard, {"mark": "P1", "building": "Mill", "level": "1"}, who="ann")
    _, other = add_opening(yard, {"mark": "P2", "building": "Mill", "level": "1"}, who="ann")
    _, lever = add_item(yard, mine, {"kind": "lever"}, who="ben")
    edit_facts(yard, "opening", mine, {"hand": "LH"}, who="ann")
    thick = edit_facts(yard, "existing_item", lever, {"height_mm": 63.5}, who="ben")
    edit_facts(yard, "opening", other, {"hand": "RH"}, who="ben")
    edit_facts(yard, "opening", mine, {"hand": "RH", "level": "2"}, who="ben")
    set_own_value(yard, "opening", mine, "keyed", "K7", who="ann")
    part = next(iter(_numbers(yard)))
    choose_part(yard, mine, "cylinder", part, who="ann")
    past = past_of(yard, mine)
    assert [each.number for each in past] == sorted((each.number for each in past), reverse=True)
    told = [[(f.where, f.label, f.before, f.after) for f in each.facts] for each in past]
    assert told[0] == [("Part chosen by hand", "", "none", f"cylinder, {part}, 1")]
    assert told[1] == [("Opening", "Keyed", "unknown", "K7")]
    assert sorted(told[2]) == [
        ("Opening", "Building and level", "Mill, 1", "Mill, 2"),
        ("Opening", "Hand", "LH", "RH"),
    ]
    assert told[3] == [("Lever or knob", "Footprint height", "unknown", "63.5 mm")]
    assert [each.who for each in past[:4]] == ["ann", "ann", "ben", "ben"]
    assert ("Lever or knob", "Item", "unknown", "Lever or knob") in told[5]
    # What is gone is still named, and an old step that was taken back is said to be.
    undo_one(yard, thick.number, who="ann")
    remove(yard, "existing_item", lever, who="ann")
    past = past_of(yard, mine)
    assert ("Lever or knob", "Item", "Lever or knob", "unknown") in [
        (f.where, f.label, f.before, f.after) for f in past[0].facts
    ]
    assert next(each for each in past if each.number == thick.number).undone
    assert [each.kind for each in past[:2]] == ["edit", "undo"]


def _numbers(project):
    with project.reading() as connection:
        return project.catalogue.read(connection).parts
