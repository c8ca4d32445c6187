"""The journal's own edits: what is written, what is kept of it, what is refused."""

import re

import pytest
from sqlalchemy import select

from hwsched.model import errors
from hwsched.model.journal.history import changes_of, changes_of_opening, entries_of, history, source_of
from hwsched.model.tables import (
    BUILDING,
    CHANGE_SET,
    CHOSEN_PART,
    ITEM_TABLE,
    KIT_CONTENT,
    LEAF_TABLE,
    LEVEL,
    OPENING_TABLE,
    OWN_FIELD,
    PART,
)
from tests.model.states import rows_of, state


def change(project, who="ann"):
    return project.change("test", "A test", who)


def add(project, *marks):
    with change(project) as made:
        return made.insert(OPENING_TABLE, [{"mark": mark} for mark in marks])


def test_rows_get_identifiers_and_first_versions(project):
    with change(project) as made:
        ids = made.insert(OPENING_TABLE, [{"mark": "0012", "stair": False, "frame_stop_mm": 15.875}, {"mark": "9E4"}])
        kept = made.insert(OPENING_TABLE, [{"id": "f" * 32, "mark": "3-4", "extra": {"key_group": "AA"}}])
    assert kept == ["f" * 32]
    # RFC 9562: version 4, variant 10.
    assert all(re.fullmatch("[0-9a-f]{12}4[0-9a-f]{3}[89ab][0-9a-f]{15}", row_id) for row_id in ids)
    rows = {row["mark"]: row for (table, _), row in rows_of(project).items() if table == "opening"}
    assert rows["0012"]["version"] == 1
    assert (rows["0012"]["stair"], rows["0012"]["frame_stop_mm"], rows["0012"]["hand"]) == (False, 15.875, None)
    assert (rows["0012"]["extra"], rows["3-4"]["extra"]) == ({}, {"key_group": "AA"})
    assert made.added == [*ids, *kept]


def test_an_insertion_keeps_the_whole_row_and_where_it_came_from(project):
    with change(project) as made:
        [row_id] = made.insert(OPENING_TABLE, [{"mark": "1", "hand": "LH"}], ["survey.xlsx, Doors, row 12"])
    with project.reading() as connection:
        [entry] = changes_of(connection, row_id, "opening")
    assert (entry.entity, entry.action, entry.before) == ("opening", "insert", None)
    assert entry.after == {"id": row_id, "version": 1, "mark": "1", "hand": "LH"}
    assert (entry.origin, entry.who, entry.verb) == ("survey.xlsx, Doors, row 12", "ann", "test")


def test_an_update_writes_only_what_differs(project):
    [first, second, third] = add(project, "1", "2", "3")
    with change(project) as made:
        changed = made.update(
            OPENING_TABLE,
            [(first, {"hand": "LH", "mark": "1"}), (second, {"hand": None}), (third, {"notes": "x", "extra": {}})],
        )
    assert changed == [first, third]
    assert made.openings == {first, third}
    with project.reading() as connection:
        entries = entries_of(connection, made.number)
    assert [(e.row_id, e.before, e.after) for e in entries] == [
        (first, {"hand": None}, {"hand": "LH"}),
        (third, {"notes": None}, {"notes": "x"}),
    ]
    rows = rows_of(project)
    assert [rows["opening", row_id]["version"] for row_id in (first, second, third)] == [2, 1, 2]
    assert rows["opening", third]["hand"] is None


@pytest.mark.parametrize("edits", [[], [("same", {})], [("same", {"mark": "1", "extra": {}, "stair": None})]])
def test_without_a_difference_there_is_no_step(project, edits):
    with change(project) as made:
        made.insert(OPENING_TABLE, [{"id": "same", "mark": "1"}])
    with change(project) as made:
        assert made.update(OPENING_TABLE, edits) == []
        assert made.delete(OPENING_TABLE, []) == 0
        assert made.delete(OPENING_TABLE, ["nobody"]) == 0
        assert made.insert(OPENING_TABLE, []) == []
    assert made.number is None
    with project.reading() as connection:
        assert [step.number for step in history(connection)] == [1]


def test_a_header_says_who_when_and_how_much(project):
    with change(project, "ann") as made:
        made.insert(OPENING_TABLE, [{"mark": "1"}, {"mark": "2"}])
        made.summary = "Two openings"
    with project.reading() as connection:
        [step] = history(connection)
    assert (step.number, step.who, step.verb, step.summary, step.kind) == (1, "ann", "test", "Two openings", "edit")
    # Each with its lock point.
    assert (step.rows, step.undone, step.target) == (4, False, None)
    assert re.fullmatch(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}\+00:00", step.when)


def test_marks_can_be_exchanged(project):
    [first, second, third] = add(project, "1", "2", "3")
    with change(project) as made:
        made.update(OPENING_TABLE, [(first, {"mark": "2"}), (second, {"mark": "3"}), (third, {"mark": "1"})])
    rows = rows_of(project)
    assert [rows["opening", row_id]["mark"] for row_id in (first, second, third)] == ["2", "3", "1"]
    assert [rows["opening", row_id]["version"] for row_id in (first, second, third)] == [2, 2, 2]


def test_groups_that_must_be_unique_can_be_exchanged(project):
    with change(project) as made:
        ids = made.insert(
            OWN_FIELD,
            [{"entity": "opening", "name": name, "label": name, "kind": "text"} for name in ("a", "b")],
        )
        made.update(OWN_FIELD, [(ids[0], {"name": "b"}), (ids[1], {"name": "a"})])
    rows = rows_of(project)
    assert [rows["own_field", row_id]["name"] for row_id in ids] == ["b", "a"]
    assert rows["own_field", ids[0]]["choices"] == []


def test_removing_takes_what_belongs_to_the_row_children_first(project):
    [opening, other] = add(project, "1", "2")
    with change(project) as made:
        made.insert(LEAF_TABLE, [{"opening_id": opening}, {"opening_id": other}])
        made.insert(ITEM_TABLE, [{"opening_id": opening, "kind": "lock", "extra": {"seal": "red"}}])
        chosen = {"lock_point_id": opening, "role": "unit", "part": "U", "quantity": 1.0}
        made.insert(CHOSEN_PART, [{"opening_id": opening, **chosen}])
    with change(project) as made:
        assert made.delete(OPENING_TABLE, [opening, opening]) == 1
    with project.reading() as connection:
        entries = entries_of(connection, made.number)
    assert [entry.entity for entry in entries] == ["leaf", "existing_item", "chosen_part", "lock_point", "opening"]
    assert entries[1].before is not None
    assert entries[1].before["extra"] == {"seal": "red"}
    assert made.openings == {opening}
    left = [key for key in rows_of(project) if key[0] != "project"]
    assert sorted(table for table, _ in left) == ["leaf", "lock_point", "opening"]


def test_what_others_stand_on_stays(project):
    with change(project) as made:
        [building] = made.insert(BUILDING, [{"name": "Mill"}])
        [level] = made.insert(LEVEL, [{"building_id": building, "name": "1"}])
        made.insert(OPENING_TABLE, [{"mark": "1", "level_id": level}])
    before = state(project)
    with pytest.raises(errors.StillUsedError, match="level"), change(project) as made:
        made.delete(LEVEL, [level])
    assert state(project) == before


@pytest.mark.parametrize("table", [OPENING_TABLE, PART, BUILDING, OWN_FIELD])
def test_two_rows_do_not_share_what_must_be_unique(project, table):
    row = {
        "opening": {"mark": "1"},
        "part": {"number": "1", "kind": "cam"},
        "building": {"name": "1"},
        "own_field": {"entity": "part", "name": "a", "label": "A", "kind": "text"},
    }[table.name]
    with change(project) as made:
        made.insert(table, [row])
    before = state(project)
    with pytest.raises(errors.DuplicateValueError, match="already"), change(project) as made:
        made.insert(table, [row])
    assert state(project) == before


def test_an_update_to_a_taken_mark_is_refused(project):
    [_, second] = add(project, "1", "2")
    with pytest.raises(errors.DuplicateValueError, match="mark"), change(project) as made:
        made.update(OPENING_TABLE, [(second, {"mark": "1"})])


def test_a_leaf_needs_its_opening(project):
    with pytest.raises(errors.MissingRowError, match="opening"), change(project) as made:
        made.insert(LEAF_TABLE, [{"opening_id": "nowhere"}])


def test_a_missing_row_is_not_edited(project):
    with pytest.raises(errors.MissingRowError, match="opening"), change(project) as made:
        made.update(OPENING_TABLE, [("nowhere", {"hand": "LH"})])


def test_a_refusal_that_is_swallowed_is_not_committed(project):
    add(project, "1")

    def careless():
        with change(project) as made:
            with pytest.raises(errors.DuplicateValueError):
                made.insert(OPENING_TABLE, [{"mark": "2"}, {"mark": "1"}])
            if project.path is None:
                made.connection.rollback()

    before = state(project)
    with pytest.raises(RuntimeError, match="refused"):
        careless()
    assert state(project) == before


@pytest.mark.parametrize("values", [{"id": "x"}, {"version": 7}, {"no_such": 1}])
def test_columns_that_are_not_for_editing(project, values):
    [row_id] = add(project, "1")
    with pytest.raises(KeyError, match=next(iter(values))), change(project) as made:
        made.update(OPENING_TABLE, [(row_id, values)])
    with pytest.raises(KeyError, match="no_such"), change(project) as made:
        made.insert(OPENING_TABLE, [{"mark": "2", "no_such": 1}])


def test_a_row_is_edited_once_in_one_go(project):
    [row_id] = add(project, "1")
    with pytest.raises(ValueError, match="twice"), change(project) as made:
        made.update(OPENING_TABLE, [(row_id, {"hand": "LH"}), (row_id, {"hand": "RH"})])


def test_what_is_no_number_is_never_held(project):
    with pytest.raises(ValueError), change(project) as made:
        made.insert(OPENING_TABLE, [{"mark": "1", "frame_stop_mm": float("nan")}])
    assert add(project, "1")


def test_it_says_which_openings_parts_and_tables_it_touched(project):
    [first, second] = add(project, "1", "2")
    with change(project) as made:
        [c, d] = made.insert(PART, [{"number": "C-1", "kind": "cam"}, {"number": "D-1", "kind": "cam"}])
        [leaf] = made.insert(LEAF_TABLE, [{"opening_id": second}])
    assert (made.parts, made.openings, made.entities) == ({"C-1", "D-1"}, {second}, {"part", "leaf"})
    with change(project) as made:
        [kit] = made.insert(KIT_CONTENT, [{"part_id": c, "number": "S-1", "quantity": 2.0}])
        made.update(PART, [(d, {"number": "D-2"})])
    assert made.parts == {"C-1", "D-1", "D-2"}
    with change(project) as made:
        made.update(LEAF_TABLE, [(leaf, {"opening_id": first})])
    assert made.openings == {first, second}
    with change(project) as made:
        made.delete(PART, [c])
    assert (made.parts, made.entities) == ({"C-1"}, {"part", "kit_content"})
    assert ("kit_content", kit) not in rows_of(project)


def test_where_a_fact_came_from(project):
    [opening] = add(project, "1")
    with change(project, "ben") as made:
        made.update(OPENING_TABLE, [(opening, {"hand": "LH"})], ["survey.xlsx, Doors, row 3"])
    with change(project, "cas") as made:
        made.update(OPENING_TABLE, [(opening, {"rating": "45"})])
        [leaf] = made.insert(LEAF_TABLE, [{"opening_id": opening}])
    with project.reading() as connection:
        found = source_of(connection, opening, "hand")
        assert found is not None
        assert (found.who, found.origin, found.after) == ("ben", "survey.xlsx, Doors, row 3", {"hand": "LH"})
        assert source_of(connection, opening, "egress") is None
        rows = [entry.row_id for entry in changes_of_opening(connection, opening)]
    # Its lock point came with it, under its identifier.
    assert rows == [opening, opening, opening, opening, leaf]


def test_many_rows_are_one_step(project):
    with change(project) as made:
        ids = made.insert(OPENING_TABLE, [{"mark": str(number)} for number in range(3000)])
        made.insert(ITEM_TABLE, [{"opening_id": row_id, "x_mm": 70} for row_id in ids])
    with change(project) as made:
        assert len(made.update(ITEM_TABLE, _all(project, ITEM_TABLE, {"x_mm": 60.325}))) == 3000
        assert len(made.openings) == 3000
    with change(project) as made:
        assert made.delete(OPENING_TABLE, ids) == 3000
    with project.reading() as connection:
        assert list(connection.execute(select(CHANGE_SET.c.entries)).scalars()) == [9000, 3000, 9000]
    assert {table for table, _ in rows_of(project)} == {"project"}


def _all(project, table, values):
    return [(row_id, values) for name, row_id in rows_of(project) if name == table.name]
