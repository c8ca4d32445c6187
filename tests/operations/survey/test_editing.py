"""Editing by hand: one change set each, refused whole, and kept apart from what others did meanwhile."""

import pytest
from sqlalchemy import select

from hwsched.model import errors
from hwsched.model.journal.history import changes_of, history
from hwsched.model.queries import read_inputs
from hwsched.model.tables import ITEM_TABLE
from hwsched.operations.project.history import undo
from hwsched.operations.survey.editing import add_item, add_leaf, add_opening, edit_fact_text, edit_facts, remove
from hwsched.operations.survey.expected import Expected
from tests.model.backends import furnished
from tests.model.states import rows_of, state


@furnished
def opening(project):
    return add_opening(project, {"mark": "0012", "building": "Mill", "level": "1"}, who="ann")[1]


def given(project, opening):
    with project.reading() as connection:
        return next(read_inputs(connection, [opening]))


def summaries(project):
    with project.reading() as connection:
        return [step.summary for step in history(connection)]


def test_a_fact_is_set_and_told(project, opening):
    changes = edit_facts(project, "opening", opening, {"hand": "LHR", "frame_stop_mm": 16}, who="ben")
    assert (changes.openings, changes.entities, changes.number) == ({opening}, {"opening"}, 2)
    assert given(project, opening).opening.hand == "LHR"
    with project.reading() as connection:
        entry = changes_of(connection, opening)[-1]
    assert (entry.who, entry.before, entry.after) == (
        "ben",
        {"hand": None, "frame_stop_mm": None},
        {"hand": "LHR", "frame_stop_mm": 16.0},
    )
    assert entry.origin == "edited by ben"
    assert summaries(project) == ["Add opening 0012", "Edit hand, frame stop on the leaf of 0012"]


def test_an_edit_without_effect_is_no_step(project, opening):
    assert edit_facts(project, "opening", opening, {"level": "1", "hand": None, "mark": "0012"}, who="a").number is None
    assert len(summaries(project)) == 1


def test_leaves_and_items_are_edited_likewise(project, opening):
    leaf = given(project, opening).leaves[0].id
    changes = edit_facts(project, "leaf", leaf, {"thickness_mm": 44.45}, who="ann")
    assert changes.openings == {opening}
    assert given(project, opening).leaves[0].thickness_mm == 44.45
    changes, item = add_item(project, opening, {"kind": "lock", "backset_mm": 69.85}, who="ann")
    assert changes.added == (item,)
    edit_facts(project, "existing_item", item, {"backset_mm": 70.0, "thumb_turn": True}, who="ann")
    assert given(project, opening).items[0].thumb_turn is True
    assert summaries(project)[1:] == [
        "Edit leaf thickness of 0012",
        "Add existing item lock to 0012",
        "Edit backset, thumb turn inside of 0012",
    ]


@pytest.mark.parametrize(
    ("moved", "place"),
    [
        ({"level": "2"}, ("Mill", "2")),
        ({"building": "Store"}, ("Store", "1")),
        ({"building": None}, (None, "1")),
        ({"level": None}, ("Mill", None)),
        ({"building": None, "level": None}, (None, None)),
    ],
)
def test_an_opening_moves_to_another_place(project, opening, moved, place):
    before = state(project)
    edit_facts(project, "opening", opening, moved, who="ann")
    found = given(project, opening).opening
    assert (found.building, found.level) == place
    undo(project, who="ann")
    assert state(project) == before


def test_what_is_typed_is_read_in_the_projects_unit(project, opening):
    leaf = given(project, opening).leaves[0].id
    edit_fact_text(project, "leaf", leaf, "thickness_mm", "1 3/4", who="ann")
    edit_fact_text(project, "leaf", leaf, "width_mm", "3'-0\"", who="ann")
    edit_fact_text(project, "opening", opening, "hand", "left hand reverse", who="ann")
    found = given(project, opening)
    # 25.4 mm an inch: international yard and pound agreement of 1959, exact.
    assert (found.leaves[0].thickness_mm, found.leaves[0].width_mm) == (44.45, pytest.approx(914.4))
    assert found.opening.hand == "LHR"
    edit_fact_text(project, "opening", opening, "hand", "", who="ann")
    assert given(project, opening).opening.hand is None


@pytest.mark.parametrize(
    ("attribute", "text", "word"),
    [
        ("hand", "sideways", "LH"),
        ("operations_per_day", "-4", "0"),
        ("nothing", "x", "no such fact"),
        ("mark", "", "unknown"),
    ],
)
def test_what_cannot_be_is_refused_with_what_is_accepted(project, opening, attribute, text, word):
    before = state(project)
    with pytest.raises(errors.ValueRefusedError, match=word):
        edit_fact_text(project, "opening", opening, attribute, text, who="ann")
    assert state(project) == before


def test_one_wrong_value_refuses_the_edit_whole(project, opening):
    before = state(project)
    with pytest.raises(errors.ValueRefusedError):
        edit_facts(project, "opening", opening, {"hand": "LH", "frame_stop_mm": 5000.0}, who="ann")
    assert state(project) == before


def test_two_openings_do_not_share_a_mark(project, opening):
    _, other = add_opening(project, {"mark": "9E4"}, who="ann")
    before = state(project)
    with pytest.raises(errors.DuplicateValueError, match="mark"):
        add_opening(project, {"mark": "0012", "building": "New"}, who="ann")
    with pytest.raises(errors.DuplicateValueError, match="mark"):
        edit_facts(project, "opening", other, {"mark": "0012", "level": "new"}, who="ann")
    assert state(project) == before


@pytest.mark.parametrize("entity", ["opening", "leaf", "existing_item"])
def test_what_is_gone_is_not_edited(project, opening, entity):
    with pytest.raises(errors.MissingRowError, match="not in the project"):
        edit_facts(project, entity, "nobody", {}, who="ann")
    with pytest.raises(errors.MissingRowError):
        remove(project, entity, "nobody", who="ann")


@pytest.mark.parametrize("leaves", [0, 1, 2])
def test_a_new_opening_has_its_leaves(project, leaves):
    changes, opening = add_opening(project, {"mark": "1"}, who="ann", leaves=leaves)
    positions = {0: [], 1: ["single"], 2: ["active", "inactive"]}[leaves]
    assert [leaf.position for leaf in given(project, opening).leaves] == positions
    assert changes.openings == {opening}
    assert len(changes.added) == 1 + leaves


@pytest.mark.parametrize(
    ("facts", "leaves", "word"), [({}, 1, "mark"), ({"mark": " "}, 1, "unknown"), ({"mark": "1"}, 3, "0, 1 or 2")]
)
def test_a_new_opening_that_cannot_be(project, facts, leaves, word):
    with pytest.raises(errors.ValueRefusedError, match=word):
        add_opening(project, facts, who="ann", leaves=leaves)
    assert summaries(project) == []


def test_leaves_and_items_keep_their_order(project, opening):
    for kind in ("lock", "closer", "viewer"):
        add_item(project, opening, {"kind": kind}, who="ann")
    add_leaf(project, opening, {"position": "inactive"}, who="ann")
    found = given(project, opening)
    assert [item.kind for item in found.items] == ["lock", "closer", "viewer"]
    assert [leaf.position for leaf in found.leaves] == ["single", "inactive"]
    # Numbered as a survey that is taken in numbers them; what is removed leaves its number free.
    remove(project, "existing_item", found.items[1].id, who="ann")
    add_item(project, opening, {"kind": "pull"}, who="ann")
    with project.reading() as connection:
        numbered = connection.execute(select(ITEM_TABLE.c.kind, ITEM_TABLE.c.ordinal)).all()
    assert sorted(numbered, key=lambda row: row.ordinal) == [("lock", 0), ("viewer", 2), ("pull", 3)]
    with pytest.raises(errors.MissingRowError):
        add_item(project, "nobody", {"kind": "lock"}, who="ann")


def test_removing_an_opening_takes_all_that_belongs_to_it(project, opening):
    add_item(project, opening, {"kind": "lock"}, who="ann")
    before = state(project)
    changes = remove(project, "opening", opening, who="ann")
    assert changes.openings == {opening}
    assert {table for table, _ in rows_of(project)} == {"project", "building", "level"}
    assert summaries(project)[-1] == "Remove opening 0012"
    undo(project, who="ann")
    assert state(project) == before


def test_removing_an_item(project, opening):
    _, item = add_item(project, opening, {"kind": "lock"}, who="ann")
    changes = remove(project, "existing_item", item, who="ann")
    # What was locked there by it is locked by nothing that is known.
    assert (changes.openings, changes.entities) == ({opening}, {"existing_item", "lock_point"})
    assert given(project, opening).items == ()
    assert summaries(project)[-1] == "Remove existing item of 0012"


def test_there_is_nothing_else_to_edit(project):
    with pytest.raises(errors.ValueRefusedError, match="change_set"):
        edit_facts(project, "change_set", "1", {}, who="ann")


def test_a_bare_number_is_in_the_fact_s_own_unit_and_only_a_length_in_the_project_s(project):
    """The project's unit, inches here, is that of lengths; metres, degrees and plain numbers have their own."""
    opening = add_opening(project, {"mark": "B-1"}, who="ann")[1]
    for name, text in (("plan_x_m", "12"), ("temperature_low_c", "5"), ("operations_per_day", "40")):
        edit_fact_text(project, "opening", opening, name, text, who="ann")
    edit_fact_text(project, "opening", opening, "frame_stop_mm", "2", who="ann")
    with project.reading() as connection:
        (found,) = (c.opening for c in read_inputs(connection) if c.opening.id == opening)
    assert (found.plan_x_m, found.temperature_low_c, found.operations_per_day) == (12.0, 5.0, 40.0)
    assert found.frame_stop_mm == pytest.approx(50.8)


UNREAD = errors.ValueRefusedError("Frame stop on the leaf", "'abc' is no length")
STOP, OTHER = 0.625 * 25.4, 0.75 * 25.4
"""Shown as 5/8" and 3/4"."""


@pytest.mark.parametrize(
    ("held", "said", "wanted"),
    [
        (STOP, Expected("5/8", STOP), OTHER),
        # Typed in another unit it comes to the same but for rounding.
        (STOP, Expected("15.8750001 mm", STOP + 1e-7), OTHER),
        # As the project shows it, though it cannot be read so.
        (STOP, Expected(' 5/8" ', unread=UNREAD), OTHER),
        (None, Expected("unknown", unread=UNREAD), OTHER),
        (None, Expected(""), OTHER),
        (STOP, Expected("5/8", STOP), None),
        # It is so already: whatever was there before, nobody loses anything.
        (STOP, Expected("1/2", 12.7), STOP),
        (STOP, Expected("abc", unread=UNREAD), STOP),
    ],
)
def test_an_edit_is_made_where_a_fact_is_as_a_person_says(project, opening, held, said, wanted):
    edit_facts(project, "opening", opening, {"frame_stop_mm": held}, who="ann")
    edit_facts(project, "opening", opening, {"frame_stop_mm": wanted}, who="ben", was={"frame_stop_mm": said})
    assert given(project, opening).opening.frame_stop_mm == wanted


@pytest.mark.parametrize(
    ("held", "said", "wanted"),
    [
        (STOP, Expected("1/2", 12.7), OTHER),
        (STOP, Expected("15.87501 mm", STOP + 1e-5), OTHER),
        (STOP, Expected(""), OTHER),
        (None, Expected("5/8", STOP), OTHER),
        (STOP, Expected("1/2", 12.7), None),
    ],
)
def test_an_edit_of_what_is_otherwise_is_a_question(project, opening, held, said, wanted):
    for value in (10.0, held):
        edit_facts(project, "opening", opening, {"frame_stop_mm": value}, who="ann")
    before = state(project)
    with pytest.raises(errors.ConflictError) as refused:
        edit_facts(project, "opening", opening, {"frame_stop_mm": wanted}, who="ben", was={"frame_stop_mm": said})
    (clash,) = refused.value.clashes
    shown = {None: "unknown", STOP: '5/8"', OTHER: '3/4"'}
    assert (clash.seen, clash.present, clash.wanted) == (said.text or "unknown", shown[held], shown[wanted])
    # The first step added the opening; who gave the fact its value is told, with that step.
    assert (clash.who, clash.step) == ("ann", 3)
    assert state(project) == before


def test_what_cannot_be_read_is_refused_where_it_is_not_what_stands_there(project, opening):
    edit_facts(project, "opening", opening, {"frame_stop_mm": STOP}, who="ann")
    was = {"frame_stop_mm": Expected("abc", unread=UNREAD)}
    with pytest.raises(errors.ValueRefusedError, match="'abc' is no length"):
        edit_facts(project, "opening", opening, {"frame_stop_mm": OTHER}, who="ben", was=was)
