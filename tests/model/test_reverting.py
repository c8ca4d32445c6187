"""Undo, redo, undo of one older step: what comes back, what is refused, and on which later steps it depends."""

import shutil

import pytest
from sqlalchemy import event

from hwsched.model import errors
from hwsched.model.journal.history import history
from hwsched.model.journal.journal import Change
from hwsched.model.project import create_project, open_project
from hwsched.model.queries import read_settings
from hwsched.model.tables import (
    BUILDING,
    CHANGE_ENTRY,
    CHOSEN_PART,
    KIT_CONTENT,
    LEAF_TABLE,
    LEVEL,
    OPENING_TABLE,
    PART,
    PLACED_UNIT,
    PROJECT,
)
from hwsched.operations.project.history import redo, redo_one, undo, undo_one
from hwsched.operations.project.settings import set_settings
from tests.model.states import in_force, rows_of, state


class Steps:
    """Edits of a project, each one step that returns its number."""

    def __init__(self, project):
        self.project = project

    def insert(self, table, **row):
        with self.project.change("insert", f"insert {table.name}", "ann") as change:
            [row_id] = change.insert(table, [row])
        return change.number, row_id

    def update(self, table, row_id, **values):
        with self.project.change("update", f"update {table.name}", "ann") as change:
            change.update(table, [(row_id, values)])
        return change.number

    def delete(self, table, row_id):
        with self.project.change("delete", f"delete {table.name}", "ann") as change:
            change.delete(table, [row_id])
        return change.number


@pytest.fixture
def steps(project):
    return Steps(project)


def refused(project, number):
    """The later steps on which taking back a step founders; it changes nothing."""
    before = state(project)
    with pytest.raises(errors.NotUndoableError) as caught:
        undo_one(project, number, who="ben")
    assert state(project) == before
    for step in caught.value.dependents:
        assert str(step) in str(caught.value)
    return list(caught.value.dependents)


def test_there_and_back_across_closing(project, steps, address):
    _, opening = steps.insert(OPENING_TABLE, mark="0012", extra={"seal": "red"})
    states = [state(project)]
    steps.update(OPENING_TABLE, opening, hand="LH", extra={})
    states.append(state(project))
    steps.delete(OPENING_TABLE, opening)
    states.append(state(project))
    project.close()
    with open_project(address) as again:
        for expected in (states[1], states[0]):
            undo(again, who="ann")
            assert state(again) == expected
    with open_project(address) as again:
        for expected in states[1:]:
            redo(again, who="ann")
            assert state(again) == expected
        with pytest.raises(errors.NothingToUndoError):
            redo(again, who="ann")
        with again.reading() as connection:
            told = [(step.number, step.kind, step.target, step.undone) for step in history(connection)]
    assert told == [
        (1, "edit", None, False),
        (2, "edit", None, False),
        (3, "edit", None, False),
        (4, "undo", 3, False),
        (5, "undo", 2, False),
        (6, "redo", 2, False),
        (7, "redo", 3, False),
    ]


def test_versions_rise_there_and_back(project, steps):
    _, opening = steps.insert(OPENING_TABLE, mark="1")
    seen = []

    def look():
        row = rows_of(project).get(("opening", opening))
        if row:
            seen.append(row["version"])

    look()
    steps.update(OPENING_TABLE, opening, hand="LH")
    look()
    undo(project, who="ann")
    look()
    undo(project, who="ann")
    redo(project, who="ann")
    look()
    redo(project, who="ann")
    look()
    steps.delete(OPENING_TABLE, opening)
    undo(project, who="ann")
    look()
    assert seen == [1, 2, 3, 4, 5, 6]


def test_nothing_to_take_back(project):
    with pytest.raises(errors.NothingToUndoError, match="take back"):
        undo(project, who="ann")
    with pytest.raises(errors.NothingToUndoError, match="do again"):
        redo(project, who="ann")
    with pytest.raises(errors.NotUndoableError, match="not an edit in force"):
        undo_one(project, 1, who="ann")


def test_a_new_edit_ends_what_could_be_done_again(project, steps):
    steps.insert(OPENING_TABLE, mark="1")
    undo(project, who="ann")
    steps.insert(OPENING_TABLE, mark="1")
    with pytest.raises(errors.NothingToUndoError):
        redo(project, who="ann")
    with project.reading() as connection:
        assert [step.undone for step in history(connection)] == [True, False, False]


def test_an_undo_says_what_it_touched(project, steps):
    number, opening = steps.insert(OPENING_TABLE, mark="1")
    changes = undo(project, who="ann")
    assert (changes.openings, changes.entities, changes.number) == ({opening}, {"opening", "lock_point"}, number + 1)
    with project.reading() as connection:
        last = history(connection)[-1]
    assert (last.who, last.summary) == ("ann", "Take back step 1: insert opening")


def test_exchanged_marks_come_back(project, steps):
    _, first = steps.insert(OPENING_TABLE, mark="1")
    _, second = steps.insert(OPENING_TABLE, mark="2")
    before = state(project)
    with project.change("exchange", "exchange", "ann") as change:
        change.update(OPENING_TABLE, [(first, {"mark": "2"}), (second, {"mark": "1"})])
    after = state(project)
    undo(project, who="ann")
    assert state(project) == before
    redo(project, who="ann")
    assert state(project) == after


def test_a_row_replaced_by_another_of_the_same_mark_comes_back(project, steps):
    _, old = steps.insert(OPENING_TABLE, mark="1")
    before = state(project)
    with project.change("replace", "replace", "ann") as change:
        change.delete(OPENING_TABLE, [old])
        [new] = change.insert(OPENING_TABLE, [{"mark": "1"}])
        change.update(OPENING_TABLE, [(new, {"hand": "LH"})])
        change.update(OPENING_TABLE, [(new, {"hand": "RH"})])
    after = state(project)
    undo(project, who="ann")
    assert state(project) == before
    redo(project, who="ann")
    assert state(project) == after


def test_an_independent_older_step(project, steps):
    _, opening = steps.insert(OPENING_TABLE, mark="1")
    hand = steps.update(OPENING_TABLE, opening, hand="LH")
    steps.update(OPENING_TABLE, opening, rating="45")
    steps.insert(OPENING_TABLE, mark="2")
    undo_one(project, hand, who="ben")
    row = rows_of(project)["opening", opening]
    assert (row["hand"], row["rating"]) == (None, "45")
    assert in_force(project) == [1, 3, 4]
    redo(project, who="ben")
    assert rows_of(project)["opening", opening]["hand"] == "LH"
    assert in_force(project) == [1, 2, 3, 4]


def test_it_depends_on_a_later_step_at_the_same_fact(project, steps):
    _, opening = steps.insert(OPENING_TABLE, mark="1")
    first = steps.update(OPENING_TABLE, opening, hand="LH")
    second = steps.update(OPENING_TABLE, opening, hand="RH", rating="45")
    steps.update(OPENING_TABLE, opening, rating="60")
    assert refused(project, first) == [second]
    undo(project, who="ann")
    undo(project, who="ann")
    undo_one(project, first, who="ann")
    assert rows_of(project)["opening", opening]["hand"] is None


def test_it_depends_on_everything_later_at_a_row_that_it_made(project, steps):
    made, opening = steps.insert(OPENING_TABLE, mark="1")
    edit = steps.update(OPENING_TABLE, opening, hand="LH")
    leaf, _ = steps.insert(LEAF_TABLE, opening_id=opening)
    steps.insert(OPENING_TABLE, mark="2")
    assert refused(project, made) == [edit, leaf]


def test_it_depends_on_rows_that_came_and_went_on_a_row_that_it_made(project, steps):
    made, opening = steps.insert(OPENING_TABLE, mark="1")
    came, leaf = steps.insert(LEAF_TABLE, opening_id=opening)
    went = steps.delete(LEAF_TABLE, leaf)
    assert refused(project, made) == [came, went]


def test_it_depends_on_openings_that_stand_on_a_level_that_it_made(project, steps):
    building, mill = steps.insert(BUILDING, name="Mill")
    level, first = steps.insert(LEVEL, building_id=mill, name="1")
    _, opening = steps.insert(OPENING_TABLE, mark="1")
    moved = steps.update(OPENING_TABLE, opening, level_id=first)
    away = steps.update(OPENING_TABLE, opening, level_id=None)
    assert refused(project, level) == [moved, away]
    assert refused(project, building) == [level]


def test_it_depends_on_the_removal_of_what_its_earlier_values_stand_on(project, steps):
    _, level = steps.insert(LEVEL, name="1")
    _, opening = steps.insert(OPENING_TABLE, mark="1", level_id=level)
    away = steps.update(OPENING_TABLE, opening, level_id=None)
    gone = steps.delete(LEVEL, level)
    assert refused(project, away) == [gone]


def test_a_removed_row_does_not_come_back_without_its_owner(project, steps):
    _, part = steps.insert(PART, number="C-1", kind="cam")
    _, kit = steps.insert(KIT_CONTENT, part_id=part, number="S-1", quantity=1.0)
    unpacked = steps.delete(KIT_CONTENT, kit)
    gone = steps.delete(PART, part)
    assert refused(project, unpacked) == [gone]


def test_a_mark_that_was_taken_meanwhile_is_not_taken_away(project, steps):
    _, first = steps.insert(OPENING_TABLE, mark="1")
    _, second = steps.insert(OPENING_TABLE, mark="2")
    renamed = steps.update(OPENING_TABLE, first, mark="1a")
    taken = steps.update(OPENING_TABLE, second, mark="1")
    assert refused(project, renamed) == [taken]
    removed = steps.delete(OPENING_TABLE, first)
    again, _ = steps.insert(OPENING_TABLE, mark="1a")
    assert refused(project, removed) == [again]


def test_a_place_and_a_choice_that_were_made_anew_stay(project, steps):
    _, opening = steps.insert(OPENING_TABLE, mark="1")
    at = {"opening_id": opening, "lock_point_id": opening}
    place = {**at, "leaf": "single", "face": "key", "pattern": "above", "x_mm": 1.0, "y_mm": 2.0}
    choice = {**at, "role": "unit", "part": "U", "quantity": 1.0}
    _, placed = steps.insert(PLACED_UNIT, **place)
    _, chosen = steps.insert(CHOSEN_PART, **choice)
    unplaced = steps.delete(PLACED_UNIT, placed)
    unchosen = steps.delete(CHOSEN_PART, chosen)
    placed_again, _ = steps.insert(PLACED_UNIT, **place)
    chosen_again, _ = steps.insert(CHOSEN_PART, **choice)
    assert refused(project, unplaced) == [placed_again]
    assert refused(project, unchosen) == [chosen_again]


def test_what_only_the_database_sees_is_refused_too(project, steps):
    """An update's entry holds one column of a group: that the group is taken again shows at the rows only."""
    _, mill = steps.insert(BUILDING, name="Mill")
    _, first = steps.insert(LEVEL, building_id=mill, name="1")
    _, second = steps.insert(LEVEL, building_id=mill, name="2")
    renamed = steps.update(LEVEL, first, name="ground")
    steps.update(LEVEL, second, name="1")
    assert refused(project, renamed) == []


def test_steps_that_were_taken_back_do_not_count(project, steps):
    _, opening = steps.insert(OPENING_TABLE, mark="1")
    first = steps.update(OPENING_TABLE, opening, hand="LH")
    steps.update(OPENING_TABLE, opening, hand="RH")
    undo(project, who="ann")
    undo_one(project, first, who="ann")
    assert rows_of(project)["opening", opening]["hand"] is None


def test_a_step_done_again_counts_as_later_than_those_between(project, steps):
    _, opening = steps.insert(OPENING_TABLE, mark="1")
    hand = steps.update(OPENING_TABLE, opening, hand="LH")
    rating = steps.update(OPENING_TABLE, opening, rating="45")
    undo_one(project, hand, who="ann")
    redo(project, who="ann")
    undo_one(project, rating, who="ann")
    undo(project, who="ann")
    row = rows_of(project)["opening", opening]
    assert (row["hand"], row["rating"]) == (None, None)


def test_what_went_past_the_journal_is_not_lost(project, steps):
    _, opening = steps.insert(OPENING_TABLE, mark="1")
    steps.update(OPENING_TABLE, opening, hand="LH")
    with project.writing() as connection:
        connection.execute(OPENING_TABLE.update().values(hand="RHR"))
    with pytest.raises(errors.NotUndoableError, match="changed since"):
        undo(project, who="ann")
    assert rows_of(project)["opening", opening]["hand"] == "RHR"


def test_facts_that_this_version_does_not_know_are_not_dropped(project, steps):
    _, opening = steps.insert(OPENING_TABLE, mark="1")
    steps.update(OPENING_TABLE, opening, hand="LH")
    with project.writing() as connection:
        connection.execute(CHANGE_ENTRY.update().values(before='{"old_fact":1}').where(CHANGE_ENTRY.c.change_set == 2))
    with pytest.raises(errors.NotUndoableError, match="old_fact"):
        undo(project, who="ann")


def test_a_column_that_came_later_does_not_stand_in_the_way(project, steps):
    """The entry of an insertion made before the column was there does not hold its default."""
    _, opening = steps.insert(OPENING_TABLE, mark="1")
    with project.change("insert", "leaf", "ann") as change:
        [leaf] = change.insert(LEAF_TABLE, [{"opening_id": opening, "ordinal": 0}])
    with project.writing() as connection:
        text = f'{{"id":"{leaf}","opening_id":"{opening}","version":1}}'
        connection.execute(CHANGE_ENTRY.update().values(after=text).where(CHANGE_ENTRY.c.change_set == 2))
    undo(project, who="ann")
    assert ("leaf", leaf) not in rows_of(project)


# Two people: each goes over the own steps, and what depends is named with its person.


class By(Steps):
    """Edits of one person."""

    def __init__(self, project, who):
        super().__init__(project)
        self.who = who

    def update(self, table, row_id, **values):
        with self.project.change("update", f"update {table.name}", self.who) as change:
            change.update(table, [(row_id, values)])
        return change.number


def hand_and_rating(project, opening):
    row = rows_of(project)["opening", opening]
    return row["hand"], row["rating"]


def test_undo_takes_back_the_own_step_and_leaves_that_of_the_other(project, steps):
    _, opening = steps.insert(OPENING_TABLE, mark="1")
    By(project, "ann").update(OPENING_TABLE, opening, hand="LH")
    By(project, "ben").update(OPENING_TABLE, opening, rating="45")
    undo(project, who="ann")
    assert hand_and_rating(project, opening) == (None, "45")
    undo(project, who="ben")
    redo(project, who="ann")
    assert hand_and_rating(project, opening) == ("LH", None)
    redo(project, who="ben")
    assert hand_and_rating(project, opening) == ("LH", "45")
    with pytest.raises(errors.NothingToUndoError, match="cid has no step"):
        undo(project, who="cid")
    with pytest.raises(errors.NothingToUndoError, match="cid has nothing to do again"):
        redo(project, who="cid")


def test_an_edit_of_the_other_does_not_end_what_can_be_done_again(project, steps):
    _, opening = steps.insert(OPENING_TABLE, mark="1")
    By(project, "ann").update(OPENING_TABLE, opening, hand="LH")
    undo(project, who="ann")
    By(project, "ben").update(OPENING_TABLE, opening, rating="45")
    redo(project, who="ann")
    assert hand_and_rating(project, opening) == ("LH", "45")


def test_a_blocked_undo_names_step_and_person(project, steps):
    _, opening = steps.insert(OPENING_TABLE, mark="1")
    mine = By(project, "ann").update(OPENING_TABLE, opening, hand="LH")
    theirs = By(project, "ben").update(OPENING_TABLE, opening, hand="RH")
    before = state(project)
    with pytest.raises(errors.NotUndoableError, match=rf"step {mine} .*: {theirs} of ben \(update opening\)") as caught:
        undo(project, who="ann")
    assert caught.value.dependents == (theirs,)
    assert state(project) == before
    # Chosen in the history, the other's step goes; then the own one does.
    undo_one(project, theirs, who="ann")
    undo(project, who="ann")
    assert hand_and_rating(project, opening) == (None, None)


def test_a_blocked_redo_names_step_and_person(project, steps):
    _, opening = steps.insert(OPENING_TABLE, mark="1")
    mine = By(project, "ann").update(OPENING_TABLE, opening, hand="LH")
    undo(project, who="ann")
    theirs = By(project, "ben").update(OPENING_TABLE, opening, hand="RH")
    with pytest.raises(errors.NotUndoableError, match=rf"{mine} .* done again alone, .*: {theirs} of ben"):
        redo(project, who="ann")
    assert hand_and_rating(project, opening) == ("RH", None)


def test_who_takes_back_the_other_s_step_does_it_again_and_it_stays_the_other_s(project, steps):
    _, opening = steps.insert(OPENING_TABLE, mark="1")
    theirs = By(project, "ben").update(OPENING_TABLE, opening, hand="LH")
    undo_one(project, theirs, who="ann")
    with pytest.raises(errors.NothingToUndoError):
        redo(project, who="ben")
    with pytest.raises(errors.NothingToUndoError):
        undo(project, who="ben")
    redo(project, who="ann")
    undo(project, who="ben")
    assert hand_and_rating(project, opening) == (None, None)


def test_a_step_that_was_taken_back_is_chosen_to_be_done_again(project, steps):
    _, opening = steps.insert(OPENING_TABLE, mark="1")
    hand = By(project, "ann").update(OPENING_TABLE, opening, hand="LH")
    undo(project, who="ann")
    By(project, "ann").update(OPENING_TABLE, opening, rating="45")
    with pytest.raises(errors.NothingToUndoError):
        redo(project, who="ann")
    redo_one(project, hand, who="ben")
    assert hand_and_rating(project, opening) == ("LH", "45")
    for number in (hand, 99):
        with pytest.raises(errors.NotUndoableError, match=f"step {number} is not an edit that is taken back"):
            redo_one(project, number, who="ben")


def test_settings_and_own_fields_are_taken_back_one_by_one(project, steps):
    """They share a column, and are different facts all the same."""
    _, opening = steps.insert(OPENING_TABLE, mark="1")
    [(_, project_id)] = [key for key in rows_of(project) if key[0] == "project"]
    ann, ben = By(project, "ann"), By(project, "ben")
    # What a new project has decided already stays as it is.
    new = rows_of(project)["project", project_id]["settings"]
    ann.update(PROJECT, project_id, settings={**new, "limits": {"a.x": 1.0}, "rules_off": ["b"]})
    ben.update(PROJECT, project_id, settings={**new, "limits": {"a.x": 1.0, "c.y": 2.0}, "rules_off": ["b", "d"]})
    ann.update(OPENING_TABLE, opening, extra={"key_group": "AA"})
    ben.update(OPENING_TABLE, opening, extra={"key_group": "AA", "door_no": "7"})
    for _ in range(2):
        undo(project, who="ann")
    rows = rows_of(project)
    assert rows["project", project_id]["settings"] == {**new, "limits": {"c.y": 2.0}, "rules_off": ["d"]}
    assert rows["opening", opening]["extra"] == {"door_no": "7"}
    redo(project, who="ann")
    assert rows_of(project)["project", project_id]["settings"] == {
        **new,
        "limits": {"a.x": 1.0, "c.y": 2.0},
        "rules_off": ["b", "d"],
    }


def later_steps(project, count):
    """Let Ben take many steps that have nothing to do with others, in one transaction."""
    with project.writing() as connection:
        made = Change(connection, "insert", "Ben's", "ben", project.session)
        [other] = made.insert(OPENING_TABLE, [{"mark": f"B{count}"}])
        made.finish()
        for number in range(count):
            made = Change(connection, "edit", "Ben's", "ben", project.session)
            made.update(OPENING_TABLE, [(other, {"hand": ("LH", "RH")[number % 2]})])
            made.finish()


def result_of(project, act):
    """Statements that an act runs, and how far the database walks for them, in its own instructions."""
    counts = {"statements": 0, "walked": 0}

    def statement(*_):
        counts["statements"] += 1

    def walked():
        counts["walked"] += 1

    def watch(connection, *_):
        connection.set_progress_handler(walked, 1)

    def leave(connection, *_):
        connection.set_progress_handler(None, 0)

    hooks = (("before_cursor_execute", statement), ("checkout", watch), ("checkin", leave))
    for name, hook in hooks:
        event.listen(project.engine, name, hook)
    try:
        act()
    finally:
        for name, hook in hooks:
            event.remove(project.engine, name, hook)
    return counts


@pytest.fixture(scope="module")
def journals(tmp_path_factory):
    """Projects with few and with many steps after three: their files, and the numbers of the three."""
    folder, found = tmp_path_factory.mktemp("journals"), {}
    for count in (30, 1200):
        with create_project(folder / f"{count}.hwsched", "P") as project:
            steps = By(project, "ann")
            made, opening = steps.insert(OPENING_TABLE, mark="1")
            level, row = steps.insert(LEVEL, name="1")
            edit = steps.update(OPENING_TABLE, opening, hand="LH", level_id=row)
            later_steps(project, count)
        found[folder / f"{count}.hwsched"] = made, level, edit
    return found


@pytest.mark.parametrize("who", ["ann", "ben"])
def test_what_is_taken_back_costs_what_depends_on_it_not_what_was_done_since(journals, tmp_path, who):
    found = []
    for path, (made, level, edit) in journals.items():
        with open_project(shutil.copy(path, tmp_path)) as project:
            before = state(project)

            def all_of_it(project=project, made=made, level=level, edit=edit):
                undo(project, who="ann")
                redo(project, who="ann")
                for number in (made, level):
                    with pytest.raises(errors.NotUndoableError, match=f"{edit} of ann"):
                        undo_one(project, number, who=who)
                undo_one(project, edit, who=who)
                redo_one(project, edit, who=who)

            found.append(result_of(project, all_of_it))
            assert state(project) == before
    few, many = found
    assert many["statements"] == few["statements"]
    # The indexes are a storey or two higher.
    assert many["walked"] < 1.1 * few["walked"]


def test_a_step_that_left_no_trace_is_taken_back_all_the_same(tmp_path):
    """Else it would be the next one to be taken back for ever, and the steps before it would never be reached."""

    def in_force_of_ben():
        with project.reading() as connection:
            return [s for s in history(connection) if (s.who, s.kind, s.undone) == ("ben", "edit", False)]

    with create_project(tmp_path / "p.hwsched", "P") as project:
        set_settings(project, limits={"battery-life.days": 300.0}, who="ben")
        # That a rule is on says what held already; beside it stands what another switched off.
        set_settings(project, rules_off={"trim-clear": False}, who="ben")
        set_settings(project, rules_off={"reach-height": True}, who="ann")
        for _ in in_force_of_ben():
            assert undo(project, who="ben").number is not None
        assert in_force_of_ben() == []
        with project.reading() as connection:
            found = read_settings(connection)
        assert (found.rules_off, dict(found.limits)) == ({"reach-height"}, {})
