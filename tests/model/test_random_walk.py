"""A random walk of edits, undo, redo and undo of older steps: rows are always what the steps in force make them.

The walk keeps its own account of every step as cells that changed, written apart from the journal.
"""

import os
import tempfile

import pytest
from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule
from sqlalchemy import select

from hwsched.model import errors
from hwsched.model.catalogue_writing import write_parts
from hwsched.model.journal.verifying import verify
from hwsched.model.project import create_project, open_project
from hwsched.model.queries import StoredFit
from hwsched.model.tables import ASSIGNED_PART, OPENING_TABLE
from hwsched.operations.opening.hand_choices import choose_part, place_unit, release_part
from hwsched.operations.opening.storing_fits import store_fits
from hwsched.operations.project.history import redo, undo, undo_one
from hwsched.operations.project.settings import set_settings
from hwsched.operations.survey.editing import add_item, add_opening, edit_facts, remove
from hwsched.operations.survey.own_fields import define_field, remove_field, set_own_value
from hwsched.operations.survey.retiring import restore_openings, retire_openings, retired
from hwsched.values import Fit, Item, Leaf, Part
from hwsched.values.lock_points import lock_items
from tests.model.states import in_force, rows_of, state

MARKS = st.sampled_from(["1", "2", "3", "0012", "9E4"])
PLACES = st.sampled_from([None, "1", "2"])
PICK = st.integers(0, 10**6)
KINDS = st.sampled_from(["lock", "deadbolt", "exit-device", "closer"])
DISPOSITIONS = st.sampled_from(["replace", "keep", "remove", None])
ITEM_FACTS = {
    "disposition": DISPOSITIONS,
    "kind": KINDS,
    "lock_form": st.sampled_from(["mortise", "rim", None]),
    "leaf": st.sampled_from(["single", "active", "inactive", None]),
}


def cells(before, after):
    """What a step changed: per row the values before and after, of rows that stayed only those that differ."""
    changed = {}
    for key in before.keys() | after.keys():
        old, new = before.get(key), after.get(key)
        if old is None or new is None:
            changed[key] = (old, new)
        elif old != new:
            names = [name for name in old if old[name] != new[name]]
            changed[key] = ({name: old[name] for name in names}, {name: new[name] for name in names})
    return changed


def applied(rows, changed, side):
    """Rows with a step's values before (0) or after (1) it."""
    result = dict(rows)
    for key, both in changed.items():
        values = both[side]
        if values is None:
            del result[key]
        elif both[1 - side] is None:
            result[key] = values
        else:
            result[key] = {**result[key], **values}
    return result


class Walk(RuleBasedStateMachine):
    """Random edits; the account is `expected`, the steps in force and those that can be done again."""

    @initialize()
    def begin(self):
        self.folder = tempfile.TemporaryDirectory()
        self.path = f"{self.folder.name}/walk.hwsched"
        self.project = create_project(self.path, "Walk")
        self.expected = state(self.project)
        self.done = []
        self.undone = []
        self.versions = {}
        self.parts()

    def step(self, edit):
        """Take one step by an edit that may be refused."""
        try:
            changes = edit()
        except (errors.DuplicateValueError, errors.ValueRefusedError):
            return
        if changes.number is None:
            return
        after = state(self.project)
        self.done.append((changes.number, cells(self.expected, after)))
        self.undone.clear()
        self.expected = after

    def child(self, table, pick):
        """An opening's row of a table, with the opening."""
        ids = sorted((row["opening_id"], row_id) for (name, row_id), row in self.expected.items() if name == table)
        return ids[pick % len(ids)] if ids else (None, None)

    def opening(self, pick):
        with self.project.reading() as connection:
            ids = sorted(connection.execute(select(OPENING_TABLE.c.mark, OPENING_TABLE.c.id)).all())
        return ids[pick % len(ids)][1] if ids else None

    @rule(price=st.sampled_from([1.0, 2.0]))
    def parts(self, price=1.0):
        def write():
            with self.project.change("import-catalogue", "Parts", "w") as change:
                parts = [Part("C-1", "cam", list_price=price, kit=(("S-1", price),)), Part("C-2", "cam")]
                write_parts(change, parts, "test")
            return change

        self.step(write)

    @rule(mark=MARKS, leaves=st.integers(0, 2), building=PLACES, level=PLACES)
    def add(self, mark, leaves, building, level):
        facts = {"mark": mark, "building": building, "level": level}
        self.step(lambda: add_opening(self.project, facts, who="w", leaves=leaves)[0])

    @rule(pick=PICK, hand=st.sampled_from(["LH", "RH", None]), rating=st.sampled_from(["45", None]))
    def edit(self, pick, hand, rating):
        if opening := self.opening(pick):
            self.step(lambda: edit_facts(self.project, "opening", opening, {"hand": hand, "rating": rating}, who="w"))

    @rule(pick=PICK, building=PLACES, level=PLACES)
    def move(self, pick, building, level):
        if opening := self.opening(pick):
            place = {"building": building, "level": level}
            self.step(lambda: edit_facts(self.project, "opening", opening, place, who="w"))

    @rule(pick=PICK, mark=MARKS)
    def rename(self, pick, mark):
        if opening := self.opening(pick):
            self.step(lambda: edit_facts(self.project, "opening", opening, {"mark": mark}, who="w"))

    @rule(pick=PICK, kind=KINDS, disposition=DISPOSITIONS)
    def item(self, pick, kind, disposition):
        if opening := self.opening(pick):
            facts = {"kind": kind, "disposition": disposition}
            self.step(lambda: add_item(self.project, opening, facts, who="w")[0])

    @rule(pick=PICK, facts=st.fixed_dictionaries({}, optional=ITEM_FACTS))
    def edit_item(self, pick, facts):
        _, row = self.child("existing_item", pick)
        if row and facts:
            self.step(lambda: edit_facts(self.project, "existing_item", row, facts, who="w"))

    @rule(pick=PICK, table=st.sampled_from(["existing_item", "leaf"]))
    def take_out(self, pick, table):
        _, row = self.child(table, pick)
        if row:
            self.step(lambda: remove(self.project, table, row, who="w"))

    @rule(pick=PICK)
    def drop(self, pick):
        if opening := self.opening(pick):
            self.step(lambda: remove(self.project, "opening", opening, who="w"))

    @rule(pick=PICK, back=st.booleans())
    def retire(self, pick, back):
        opening = self.opening(pick)
        resting = {each.id for each in retired(self.project)}
        if opening and not back:
            self.step(lambda: retire_openings(self.project, [opening], who="w"))
        elif opening in resting:
            self.step(lambda: restore_openings(self.project, [opening], who="w"))

    @rule(pick=PICK, part=st.sampled_from(["C-1", "C-2", None]))
    def choose(self, pick, part):
        opening, point = self.child("lock_point", pick)
        if opening and part:
            self.step(lambda: choose_part(self.project, opening, "cylinder", part, who="w", point=point))
        elif opening:
            self.step(lambda: release_part(self.project, opening, "cylinder", who="w", point=point))

    @rule(pick=PICK, x_mm=st.sampled_from([10.0, 20.0]))
    def place(self, pick, x_mm):
        where = {"leaf": "single", "face": "key", "pattern": "above", "x_mm": x_mm, "y_mm": 1000.0}
        opening, point = self.child("lock_point", pick)
        if opening:
            self.step(lambda: place_unit(self.project, opening, who="w", point=point, **where))

    @rule(pick=PICK, status=st.sampled_from(["fits", "to-measure"]))
    def fit(self, pick, status):
        def store():
            with self.project.change("fit", "Fit", "w") as change:
                store_fits(change, {point: StoredFit("case", Fit(status))})
            return change

        opening, point = self.child("lock_point", pick)
        if opening:
            self.step(store)

    @rule(pick=PICK, serial=st.sampled_from(["SN-1", "SN-2"]))
    def piece(self, pick, serial):
        """A piece on record, as an operation writes it: it stays when the place where it is goes."""
        facts = {"role": "unit", "part": "C-1", "piece": 1, "quantity": 1.0, "source": "worked-out", "state": "planned"}

        def record():
            with self.project.change("record-piece", "Piece", "w") as change:
                change.insert(
                    ASSIGNED_PART, [{"opening_id": opening, "lock_point_id": point, **facts, "serial": serial}]
                )
            return change

        opening, point = self.child("lock_point", pick)
        if opening:
            self.step(record)

    @rule()
    def define(self):
        self.step(lambda: define_field(self.project, "opening", "key_group", "Key group", "text", who="w"))

    @rule()
    def forget(self):
        self.step(lambda: remove_field(self.project, "opening", "key_group", who="w"))

    @rule(pick=PICK, value=st.sampled_from(["AA", "BB", None]))
    def own(self, pick, value):
        if opening := self.opening(pick):
            self.step(lambda: set_own_value(self.project, "opening", opening, "key_group", value, who="w"))

    @rule(prefer=st.sampled_from(["cost", "holes"]))
    def set(self, prefer):
        self.step(lambda: set_settings(self.project, who="w", prefer=prefer))

    @rule()
    def undo(self):
        if not self.done:
            with pytest.raises(errors.NothingToUndoError):
                undo(self.project, who="w")
            return
        undo(self.project, who="w")
        self.undone.append(self.done.pop())
        self.expected = applied(self.expected, self.undone[-1][1], 0)

    @rule()
    def redo(self):
        if not self.undone:
            with pytest.raises(errors.NothingToUndoError):
                redo(self.project, who="w")
            return
        redo(self.project, who="w")
        self.done.append(self.undone.pop())
        self.expected = applied(self.expected, self.done[-1][1], 1)

    @rule(pick=PICK)
    def undo_older(self, pick):
        if not self.done:
            return
        at = pick % len(self.done)
        number, changed = self.done[at]
        later = {step for step, _ in self.done[at + 1 :]}
        try:
            undo_one(self.project, number, who="w")
        except errors.NotUndoableError as error:
            if not set(error.dependents) <= later or not later:
                pytest.fail(f"step {number} is refused for {error.dependents}, later are {later}")
            return
        self.undone.append(self.done.pop(at))
        self.expected = applied(self.expected, changed, 0)

    @rule()
    def reopen(self):
        self.project.close()
        self.project = open_project(self.path)

    @invariant()
    def rows_are_what_the_steps_make_them(self):
        assert state(self.project) == self.expected
        assert in_force(self.project) == sorted(number for number, _ in self.done)
        with self.project.reading() as connection:
            assert connection.exec_driver_sql("PRAGMA foreign_key_check").all() == []

    @invariant()
    def every_place_that_is_locked_has_its_row(self):
        rows = self.expected
        for opening in [row_id for table, row_id in rows if table == "opening"]:
            held = {
                table: sorted(
                    (row for (name, _), row in rows.items() if name == table and row["opening_id"] == opening),
                    key=lambda row: (row["ordinal"], row["id"]),
                )
                for table in ("leaf", "existing_item")
            }
            names = ("id", "kind", "leaf", "disposition", "lock_form")
            locks = lock_items(
                [Leaf(row["id"], row["position"]) for row in held["leaf"]],
                [Item(**{name: row[name] for name in names}) for row in held["existing_item"]],
            )
            points = [row for (name, _), row in rows.items() if name == "lock_point" and row["opening_id"] == opening]
            assert len(points) == max(1, len(locks))
            assert {row["item_id"] for row in points} == ({lock.id for lock in locks} or {None})
            for table in ("chosen_part", "placed_unit"):
                here = [row for (name, _), row in rows.items() if name == table and row["opening_id"] == opening]
                assert {row["lock_point_id"] for row in here} <= {row["id"] for row in points}

    @invariant()
    def nothing_was_changed_past_the_journal(self):
        with self.project.reading() as connection:
            found = verify(connection)
        assert (found.tables, dict(found.sets)) == ((), {})

    @invariant()
    def versions_never_fall(self):
        for key, row in rows_of(self.project).items():
            if key[0] == "opening_fit":
                # It has its opening's identifier, so a new one may follow one that was taken back; nobody edits it.
                continue
            version = row.pop("version")
            seen, content = self.versions.get(key, (0, None))
            assert version > seen or (version == seen and row == content)
            self.versions[key] = (version, row)

    def teardown(self):
        self.project.close()
        self.folder.cleanup()


Walk.TestCase.settings = settings(
    max_examples=int(os.environ.get("HWSCHED_WALKS", "10")),
    stateful_step_count=30,
    deadline=None,
    suppress_health_check=list(HealthCheck),
)
TestWalk = pytest.mark.fuzz(Walk.TestCase)
