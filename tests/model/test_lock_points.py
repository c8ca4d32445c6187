"""Rows of lock points follow from leaves and existing locks: in every step, back and forth, and in earlier projects."""

import json
import sqlite3
from contextlib import closing

import pytest
from sqlalchemy import create_engine, literal, select

from hwsched.model import errors
from hwsched.model.file.upgrading import upgrade_project
from hwsched.model.journal.history import history
from hwsched.model.lock_points import DECIDING, is_lock_row, name_of_point
from hwsched.model.project import open_project
from hwsched.model.queries import StoredFit, by_opening, read_fits, read_inputs
from hwsched.model.tables import (
    ASSIGNED_PART,
    CHOSEN_PART,
    ITEM_TABLE,
    LEAF_TABLE,
    LOCK_POINT,
    OPENING_TABLE,
    PLACED_UNIT,
)
from hwsched.operations.opening.storing_fits import store_fits
from hwsched.operations.project.history import redo, undo, undo_one
from hwsched.survey import ITEM
from hwsched.values import Catalogue, Fit, Item, Leaf, Opening, OpeningInput
from hwsched.values.lock_points import is_lock, lock_items
from hwsched.values.watching import Watch
from tests.model.saved_projects import SAVED, WHO, restore
from tests.model.states import rows_of, state


class Door:
    """An opening with its leaves and locks; each edit is a step."""

    def __init__(self, project, leaves=("single",)):
        self.project = project
        with project.change("add-opening", "add", "ann") as change:
            [self.id] = change.insert(OPENING_TABLE, [{"mark": "1"}])
            rows = [{"opening_id": self.id, "ordinal": at, "position": each} for at, each in enumerate(leaves)]
            self.leaves = change.insert(LEAF_TABLE, rows)

    def insert(self, table, **row):
        with self.project.change("insert", "insert", "ann") as change:
            [row_id] = change.insert(table, [{"opening_id": self.id, **row}])
        return row_id

    def lock(self, ordinal, kind="lock", **facts):
        return self.insert(ITEM_TABLE, ordinal=ordinal, kind=kind, **facts)

    def edit(self, item, **facts):
        with self.project.change("edit", "edit", "ann") as change:
            change.update(ITEM_TABLE, [(item, facts)])
        return change.number

    def delete(self, *items, table=ITEM_TABLE):
        with self.project.change("delete", "delete", "ann") as change:
            change.delete(table, items)
        return change.number

    def points(self):
        """By existing lock: identifier of its lock point."""
        return {
            row["item_id"]: row_id
            for (table, row_id), row in rows_of(self.project).items()
            if table == "lock_point" and row["opening_id"] == self.id
        }

    def inputs(self):
        with self.project.reading() as connection:
            return [(given.point.item_id, given.point.name) for given in read_inputs(connection, [self.id])]


@pytest.fixture
def door(project):
    return Door(project)


def test_no_other_columns_decide_than_those_whose_edits_are_followed():
    leaves = (Leaf("a", "active"), Leaf("i", "inactive"))
    kinds = ("exit-device", "lock", "deadbolt", "deadbolt", "closer")
    forms, said = (None, "mortise", "rim", None, None), ("replace", None, "replace", "remove", "replace")
    items = tuple(
        Item(f"{kind} {leaf} {place}", kind, leaf, disposition=disposition, lock_form=form)
        for leaf in ("active", "inactive", None)
        for place, (kind, form, disposition) in enumerate(zip(kinds, forms, said, strict=True))
    )
    watch = Watch(OpeningInput(Opening("o", "1"), leaves, items, Catalogue({}, "")))
    assert len(lock_items(watch.given.leaves, watch.given.items)) > 2
    read = watch.read()
    assert read.leaf
    assert read.item
    assert DECIDING["leaf"] >= set(read.leaf)
    assert DECIDING["existing_item"] >= set(read.item)


def test_openings_alike_that_come_in_one_step_get_points_of_their_own(project):
    with project.change("import", "import", "ann") as change:
        ids = change.insert(OPENING_TABLE, [{"mark": str(n)} for n in range(4)])
        change.insert(LEAF_TABLE, [{"opening_id": each, "ordinal": 0, "position": "single"} for each in ids])
        locks = [
            {"opening_id": each, "ordinal": at, "kind": kind, "disposition": "replace", "lock_form": form}
            for each in ids[:3]
            for at, (kind, form) in enumerate((("deadbolt", "mortise"), ("closer", None), ("lock", "mortise")))
        ]
        items = change.insert(ITEM_TABLE, locks)
        # One is changed again before the step ends: only its lock is left a lock.
        change.update(ITEM_TABLE, [(items[6], {"disposition": "remove"})])
    with project.reading() as connection:
        inputs = {
            one[0].opening.id: [given.point.item_id for given in one] for one in by_opening(read_inputs(connection))
        }
    assert inputs == {
        ids[0]: [items[2], items[0]],
        ids[1]: [items[5], items[3]],
        ids[2]: [items[8]],
        ids[3]: [None],
    }


def test_an_opening_has_a_lock_point_from_the_first_step_with_its_own_identifier(door):
    assert door.points() == {None: door.id}
    assert door.inputs() == [(None, "")]


def test_the_point_takes_the_lock_that_comes_and_keeps_its_identifier(door):
    lock = door.lock(0)
    assert door.points() == {lock: door.id}
    door.delete(lock)
    assert door.points() == {None: door.id}


def test_a_deadbolt_to_be_replaced_is_a_point_of_its_own(door):
    lock = door.lock(0)
    bolt = door.lock(1, "deadbolt", disposition="keep")
    assert door.points() == {lock: door.id}
    door.edit(bolt, disposition="replace")
    points = door.points()
    assert (set(points), points[lock]) == ({lock, bolt}, door.id)
    assert door.inputs() == [(lock, "lock"), (bolt, "deadbolt")]
    door.edit(bolt, backset_mm=60.0, cylinder_height_mm=1200.0)
    assert door.points() == points
    door.edit(bolt, disposition="remove")
    assert door.points() == {lock: door.id}


def test_a_point_stays_with_its_lock_when_another_comes_in_front(door):
    bolt = door.lock(0, "deadbolt", disposition="replace")
    lock = door.lock(1)
    assert door.points()[bolt] == door.id
    assert door.inputs() == [(lock, "lock"), (bolt, "deadbolt")]


def test_what_belongs_to_a_point_whose_lock_goes_stays_with_the_lock_that_takes_its_place(door):
    lock = door.lock(0)
    door.insert(CHOSEN_PART, lock_point_id=door.id, role="unit", part="U-1", quantity=1.0)
    with door.project.change("exchange", "exchange", "ann") as change:
        change.delete(ITEM_TABLE, [lock])
        [other] = change.insert(ITEM_TABLE, [{"opening_id": door.id, "ordinal": 0, "kind": "lock"}])
    assert door.points() == {other: door.id}
    assert [row["lock_point_id"] for (table, _), row in rows_of(door.project).items() if table == "chosen_part"] == [
        door.id
    ]


def test_what_was_chosen_placed_and_fitted_goes_with_a_point_and_a_piece_stays(door):
    lock, bolt = door.lock(0), door.lock(1, "deadbolt", disposition="replace")
    point = door.points()[bolt]
    place = {"leaf": "single", "face": "inside", "pattern": "above", "x_mm": 1.0, "y_mm": 2.0}
    door.insert(CHOSEN_PART, lock_point_id=point, role="unit", part="U-1", quantity=1.0)
    door.insert(PLACED_UNIT, lock_point_id=point, **place)
    piece = {"role": "unit", "part": "U-1", "piece": 1, "quantity": 1.0, "source": "worked-out", "state": "issued"}
    kept = door.insert(ASSIGNED_PART, lock_point_id=point, **piece, serial="SN-1")
    with door.project.change("fit", "fit", "ann") as change:
        store_fits(
            change, {point: StoredFit("case", Fit("to-measure")), door.id: StoredFit("other", Fit("to-measure"))}
        )
    before = state(door.project)
    door.delete(bolt)
    rows = rows_of(door.project)
    tables = [table for table, _ in rows]
    assert not {"chosen_part", "placed_unit"} & set(tables)
    assert [row_id for table, row_id in rows if table == "opening_fit"] == [door.id]
    assert door.points() == {lock: door.id}
    assert (rows["assigned_part", kept]["lock_point_id"], rows["assigned_part", kept]["serial"]) == (None, "SN-1")
    undo(door.project, who="ann")
    assert state(door.project) == before


def test_the_opening_goes_with_its_points(door):
    door.lock(0)
    door.lock(1, "deadbolt", disposition="replace")
    before = state(door.project)
    door.delete(door.id, table=OPENING_TABLE)
    assert [table for table, _ in rows_of(door.project)] == ["project"]
    undo(door.project, who="ann")
    assert state(door.project) == before


def test_there_and_back(door):
    states = [state(door.project)]
    lock = door.lock(0)
    states.append(state(door.project))
    bolt = door.lock(1, "deadbolt", disposition="replace")
    states.append(state(door.project))
    door.edit(bolt, disposition="keep")
    states.append(state(door.project))
    door.delete(lock)
    states.append(state(door.project))
    for expected in reversed(states[:-1]):
        undo(door.project, who="ann")
        assert state(door.project) == expected
    for expected in states[1:]:
        redo(door.project, who="ann")
        assert state(door.project) == expected


def test_taking_back_an_older_step_that_would_leave_points_behind_is_refused(door):
    """The lock that came first took the opening's point; without it the second one's would be one too many."""
    lock = door.lock(0, lock_form="mortise")
    with door.project.reading() as connection:
        first = history(connection)[-1].number
    bolt = door.lock(1, "deadbolt", disposition="replace")
    before = state(door.project)
    with pytest.raises(errors.NotUndoableError, match="later steps decide which places of the opening are locked"):
        undo_one(door.project, first, who="ann")
    assert state(door.project) == before
    # Removed by an edit, it goes, and its place with it.
    door.delete(lock)
    assert [*door.points()] == [bolt]


def test_an_exit_device_that_would_be_one_with_a_later_lock_is_not_taken_back_alone(door):
    """Whether the device is a point of its own follows from the form that its lock got before."""
    lock = door.lock(0, disposition="replace", lock_form="rim")
    form = door.edit(lock, lock_form="mortise")
    device = door.lock(1, "exit-device", disposition="replace", lock_form="rim")
    assert set(door.points()) == {lock, device}
    before = state(door.project)
    with pytest.raises(errors.NotUndoableError, match="later steps decide which places of the opening are locked"):
        undo_one(door.project, form, who="ann")
    assert state(door.project) == before
    undo(door.project, who="ann")
    undo_one(door.project, form, who="ann")
    assert door.points() == {lock: door.id}


def test_leaves_decide_too(project):
    door = Door(project, ("active", "inactive"))
    active, other = door.lock(0, leaf="active", lock_form="mortise"), door.lock(1, leaf="inactive", lock_form="mortise")
    assert door.inputs() == [(active, "active leaf"), (other, "inactive leaf")]
    door.delete(door.leaves[1], table=LEAF_TABLE)
    assert door.points() == {active: door.id}


def test_fits_and_choices_are_read_by_point(door):
    lock, bolt = door.lock(0), door.lock(1, "deadbolt", disposition="replace")
    points = door.points()
    door.insert(CHOSEN_PART, lock_point_id=points[bolt], role="unit", part="U-2", quantity=1.0)
    with door.project.change("fit", "fit", "ann") as change:
        store_fits(change, {points[lock]: StoredFit("a", Fit("to-measure")), points[bolt]: StoredFit("b", Fit("fits"))})
    with door.project.reading() as connection:
        inputs = list(read_inputs(connection))
        assert [[choice.part for choice in given.chosen] for given in inputs] == [[], ["U-2"]]
        assert {point: stored.fit.status for point, stored in read_fits(connection).items()} == {
            points[lock]: "to-measure",
            points[bolt]: "fits",
        }
        [[first, second]] = by_opening(inputs)
        assert (first.beside, [each.fit.status for each in second.beside]) == ((), ["to-measure"])
        assert [name_of_point(connection, points[item]) for item in (lock, bolt)] == ["lock", "deadbolt"]
        assert name_of_point(connection, "gone") == ""


def test_two_locks_alike_are_told_by_their_height(door):
    door.lock(0, cylinder_height_mm=900.0, disposition="replace")
    upper = door.lock(1, cylinder_height_mm=1300.0, disposition="replace")
    with door.project.reading() as connection:
        assert name_of_point(connection, door.points()[upper]) == "upper lock"


# --- projects of an earlier schema ------------------------------------------------------------------------------------


class Earlier:
    """A project of schema 0002 and steps in it, written by hand as that version wrote them."""

    def __init__(self, target):
        self.target = target
        restore(SAVED / "0002.sql", target)
        with closing(sqlite3.connect(target)) as database:
            found = database.execute("SELECT id FROM opening WHERE mark = '0012'").fetchone()
            self.lock = database.execute("SELECT id FROM existing_item").fetchone()[0]
        self.opening = found[0]

    def step(self, *edits, kind="edit", undoes=None):
        """Write one change set: of each edit table, identifier, opening, values before and after."""
        with closing(sqlite3.connect(self.target)) as database, database:
            number = database.execute("SELECT max(number) FROM change_set").fetchone()[0] + 1
            header = (number, "2026-11-26T08:00:00.000+00:00", WHO, kind, "By hand", kind, undoes, len(edits))
            database.execute("INSERT INTO change_set VALUES (?, ?, ?, ?, ?, ?, ?, ?)", header)
            for sequence, (table, row_id, opening, before, after) in enumerate(edits):
                action = "insert" if before is None else "delete" if after is None else "update"
                said = [None if values is None else json.dumps(values, sort_keys=True) for values in (before, after)]
                row = (number, sequence, table, row_id, opening, action, *said, None)
                database.execute("INSERT INTO change_entry VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)", row)
                if after is None:
                    database.execute(f"DELETE FROM {table} WHERE id = ?", (row_id,))
                elif before is None:
                    marks = ", ".join("?" * len(after))
                    database.execute(f"INSERT INTO {table} ({', '.join(after)}) VALUES ({marks})", [*after.values()])
                else:
                    names = ", ".join(f"{name} = ?" for name in after)
                    database.execute(f"UPDATE {table} SET {names} WHERE id = ?", [*after.values(), row_id])
        return number


def item(row_id, opening, **facts):
    row = {"id": row_id, "opening_id": opening, "version": 1, "ordinal": 1, **facts}
    return "existing_item", row_id, opening, None, row


def turned(*edits):
    """The same edits the other way round, last first."""
    return [(*edit[:3], edit[4], edit[3]) for edit in reversed(edits)]


def test_the_openings_of_an_earlier_project_get_their_lock_points(tmp_path):
    earlier = Earlier(tmp_path / "saved.hwsched")
    pair = earlier.opening
    # A deadbolt that is replaced; for two steps it was not.
    earlier.step(item("bolt", pair, kind="deadbolt", leaf="active", disposition="replace"))
    keep = ("existing_item", "bolt", pair, {"disposition": "replace"}, {"disposition": "keep"})
    kept = earlier.step(keep)
    earlier.step(*turned(keep), kind="undo", undoes=kept)
    # An opening with two locks, made in one step, removed and brought back.
    single = {"id": "door", "version": 1, "mark": "77", "level_id": None}
    leaf = {"id": "leaf", "version": 1, "opening_id": "door", "ordinal": 0, "position": "single"}
    earlier.step(
        ("opening", "door", "door", None, {name: value for name, value in single.items() if value is not None}),
        ("leaf", "leaf", "door", None, leaf),
        item("latch", "door", kind="lock", lock_form="mortise"),
        item("upper", "door", kind="deadbolt", lock_form="mortise", disposition="replace"),
    )
    gone = turned(
        ("opening", "door", "door", None, {"id": "door", "version": 1, "mark": "77"}),
        item("upper", "door", kind="deadbolt", lock_form="mortise", disposition="replace"),
        item("latch", "door", kind="lock", lock_form="mortise"),
        ("leaf", "leaf", "door", None, leaf),
    )
    removed = earlier.step(*gone)
    earlier.step(*turned(*gone), kind="undo", undoes=removed)
    # A lock that came and went.
    earlier.step(item("third", "door", kind="lock", lock_form="rim", disposition="replace"))
    earlier.step(*turned(item("third", "door", kind="lock", lock_form="rim", disposition="replace")))

    upgrade_project(earlier.target)
    with open_project(earlier.target) as project:
        rows = rows_of(project)
        points = {pair: {}, "door": {}}
        for (table, row_id), row in rows.items():
            if table == "lock_point" and row["opening_id"] in points:
                points[row["opening_id"]][row["item_id"]] = row_id
        assert set(points[pair]) == {earlier.lock, "bolt"}
        assert points[pair][earlier.lock] == pair
        assert set(points["door"]) == {"latch", "upper"}
        assert points["door"]["latch"] == "door"
        for table in ("chosen_part", "placed_unit"):
            assert [row["lock_point_id"] for (name, _), row in rows.items() if name == table] == [pair]
        with project.reading() as connection:
            names = {given.opening.mark: [] for given in read_inputs(connection)}
            for given in read_inputs(connection):
                names[given.opening.mark].append(given.point.name)
            assert names == {"0012": ["lock", "deadbolt"], "9E4": [""], "77": ["lock", "deadbolt"]}
            assert read_fits(connection)[pair].fit.status == "to-measure"
            assert connection.exec_driver_sql("PRAGMA foreign_key_check").all() == []
            steps = [step for step in history(connection) if step.kind == "edit" and not step.undone]
        before = state(project)
        states = []
        for _ in steps:
            states.append(state(project))
            undo(project, who=WHO)
        assert {table for table, _ in rows_of(project)} == {"project"}
        for expected in reversed(states):
            redo(project, who=WHO)
            assert state(project) == expected
        assert state(project) == before


def test_a_lock_that_comes_in_an_upgraded_project_gets_its_point(tmp_path):
    earlier = Earlier(tmp_path / "saved.hwsched")
    upgrade_project(earlier.target)
    with open_project(earlier.target) as project:
        with project.change("add", "add", WHO) as change:
            facts = {"ordinal": 1, "kind": "deadbolt", "leaf": "active", "disposition": "replace"}
            change.insert(ITEM_TABLE, [{"opening_id": earlier.opening, **facts}])
        held = [row for (table, _), row in rows_of(project).items() if table == LOCK_POINT.name]
        # Those of the other opening and of the pair, which has two now.
        assert sorted(row["opening_id"] == earlier.opening for row in held) == [False, True, True]


def test_the_database_tells_locks_as_the_values_do():
    engine = create_engine("sqlite://")
    told = set()
    with engine.connect() as connection:
        for kind in (None, *(choice.value for choice in ITEM.attribute("kind").choices)):
            for form in (None, *(choice.value for choice in ITEM.attribute("lock_form").choices)):
                row = select(literal(kind).label("kind"), literal(form).label("lock_form")).subquery()
                found = connection.execute(select(row.c.kind).where(is_lock_row(row.c))).all()
                assert bool(found) == is_lock(Item("k", kind, lock_form=form)), (kind, form)
                told.add(bool(found))
    engine.dispose()
    assert told == {False, True}
