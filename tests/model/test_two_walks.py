"""Two people walk at random through one project, each with a view that grows old: edits, undo, redo, steps of history.

Whatever they do: nobody overwrites what he had not seen, undo takes back nothing of the other, and the rows are always
what the journal makes of them when it is played anew. The walk compares rows by an account of its own.
"""

import os
import shutil
import tempfile
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule, run_state_machine_as_test

from hwsched.model import errors
from hwsched.model.catalogue_writing import write_parts
from hwsched.model.journal.history import entries_of, history
from hwsched.model.project import create_project, open_project
from hwsched.model.tables import BLANK
from hwsched.operations.opening.hand_choices import choose_part, place_unit, release_part, release_unit
from hwsched.operations.parts.hardware_sets import Line, assign_set, change_set_lines, make_set
from hwsched.operations.project.history import newest, redo, redo_one, undo, undo_one
from hwsched.operations.project.settings import set_settings
from hwsched.operations.survey.editing import add_item, add_opening, edit_facts, remove
from hwsched.operations.survey.own_fields import define_field, set_own_value
from hwsched.values import Part
from tests.model.states import state

WHO = st.sampled_from(["ann", "ben"])
PICK = st.integers(0, 10**6)
SLOTS = {
    "chosen_part": ("opening_id", "lock_point_id", "role"),
    "placed_unit": ("opening_id", "lock_point_id"),
    "set_line": ("set_id", "role"),
}
REFUSED = (errors.DuplicateValueError, errors.ValueRefusedError, errors.MissingRowError)


def facts(rows):
    """All facts of all rows, by table, row, column and key within it; choices, units and set lines by their place."""
    found = {}
    for (table, row_id), row in rows.items():
        if table in SLOTS:
            place = (table, *(row[name] for name in SLOTS[table]))
            told = sorted((name, value) for name, value in row.items() if name not in ("id", *SLOTS[table]))
            found[place] = sorted([*found.get(place, []), told])
            continue
        for name, value in row.items():
            for path, leaf in leaves((name,), value):
                found[table, row_id, *path] = leaf
    return found


def leaves(path, value):
    if isinstance(value, dict):
        for key, each in value.items():
            yield from leaves((*path, key), each)
    elif isinstance(value, list):
        for each in value:
            yield (*path, each), True
    elif value is not None:
        yield path, value


def changed(before, after):
    return {key for key in before.keys() | after.keys() if before.get(key) != after.get(key)}


class Person:
    """Somebody with a window of his own: what it shows, and up to which step it was read."""

    def __init__(self, name, place):
        self.name = name
        self.project = open_project(place)
        self.look()

    def look(self):
        self.base = newest(self.project)
        self.seen = facts(state(self.project))


class TwoWalks(RuleBasedStateMachine):
    """The account: facts before and after each step."""

    place: str

    @initialize()
    def begin(self):
        self.made = create_project(self.place, "Walk")
        self.started = state(self.made)
        with self.made.change("import-catalogue", "Parts", "cid") as change:
            write_parts(change, [Part("C-1", "cam"), Part("C-2", "cam")], "test")
        for field in ("key_group", "door_no"):
            define_field(self.made, "opening", field, field, "text", who="cid")
        for mark in ("1", "2"):
            add_opening(self.made, {"mark": mark, "hand": "LH", "building": "Mill", "level": "1"}, who="cid")
        self.set_id = make_set(self.made, "HS", [Line("cam", "C-1")], who="cid")[1]
        self.replayed, self.played = dict(self.started), 0
        self.people = {name: Person(name, self.place) for name in ("ann", "ben")}
        self.now = facts(state(self.made))
        self.steps = {}

    def edit(self, who, act):
        """Let a person edit by what the window shows."""
        person, before = self.people[who], self.now
        try:
            done = act(person.project, who=who, base=person.base)
        except (errors.ConflictError, *REFUSED) as error:
            refused = error
        else:
            refused = None
        if refused is not None:
            assert facts(state(self.made)) == before
            if isinstance(refused, errors.ConflictError):
                assert changed(person.seen, before), "nothing had changed that was not seen"
                assert all(clash.who != who for clash in refused.clashes)
                person.look()
            return
        number = done.number
        self.now = facts(state(self.made))
        if number is not None:
            self.steps[number] = (before, self.now)
            # Lock points follow from leaves and items, whoever changed these; nobody's word of them is overwritten.
            written = {key for key in changed(before, self.now) if key[0] != "lock_point"}
            unseen = {key for key in written if person.seen.get(key) != before.get(key)}
            assert not unseen, f"{who} overwrote unseen: {unseen}"
        person.look()

    def opening(self, pick):
        rows = state(self.made)
        ids = sorted((row["mark"], row_id) for (table, row_id), row in rows.items() if table == "opening")
        return ids[pick % len(ids)][1] if ids else "none"

    def point(self, pick):
        """A lock point with its opening."""
        rows = state(self.made)
        ids = sorted((row["opening_id"], row_id) for (table, row_id), row in rows.items() if table == "lock_point")
        return ids[pick % len(ids)] if ids else ("none", "none")

    @rule(who=WHO)
    def look(self, who):
        self.people[who].look()

    @rule(who=WHO, pick=PICK, hand=st.sampled_from(["LH", "RH", "LHR"]))
    def hand(self, who, pick, hand):
        opening = self.opening(pick)
        self.edit(who, lambda p, **k: edit_facts(p, "opening", opening, {"hand": hand}, **k))

    @rule(who=WHO, pick=PICK, rating=st.sampled_from(["45", "20", None]), mark=st.sampled_from(["1", "2", "3"]))
    def rating_and_mark(self, who, pick, rating, mark):
        opening = self.opening(pick)
        self.edit(who, lambda p, **k: edit_facts(p, "opening", opening, {"rating": rating, "mark": mark}, **k))

    @rule(who=WHO, pick=PICK, level=st.sampled_from(["1", "2", None]))
    def move(self, who, pick, level):
        opening = self.opening(pick)
        self.edit(who, lambda p, **k: edit_facts(p, "opening", opening, {"level": level}, **k))

    @rule(who=WHO, pick=PICK, name=st.sampled_from(["key_group", "door_no"]), value=st.sampled_from(["A", "B", None]))
    def own(self, who, pick, name, value):
        opening = self.opening(pick)
        self.edit(who, lambda p, **k: set_own_value(p, "opening", opening, name, value, **k))

    @rule(who=WHO, pick=PICK, role=st.sampled_from(["cam", "unit"]), part=st.sampled_from(["C-1", "C-2", None]))
    def choose(self, who, pick, role, part):
        opening, at = self.point(pick)
        if part is None:
            self.edit(who, lambda p, **k: release_part(p, opening, role, point=at, **k))
        else:
            self.edit(who, lambda p, **k: choose_part(p, opening, role, part, point=at, **k))

    @rule(who=WHO, pick=PICK, x_mm=st.sampled_from([10.0, 20.0, None]))
    def put(self, who, pick, x_mm):
        opening, at = self.point(pick)
        where = {"leaf": "single", "face": "key", "pattern": "above", "x_mm": x_mm, "y_mm": 1000.0}
        if x_mm is None:
            self.edit(who, lambda p, **k: release_unit(p, opening, point=at, **k))
        else:
            self.edit(who, lambda p, **k: place_unit(p, opening, point=at, **where, **k))

    @rule(who=WHO, limit=st.sampled_from(["battery-life.days", "trim-clear.clearance_mm"]), value=st.floats(1, 3))
    def limit(self, who, limit, value):
        self.edit(who, lambda p, **k: set_settings(p, limits={limit: float(round(value))}, **k))

    @rule(who=WHO, off=st.dictionaries(st.sampled_from(["trim-clear", "reach-height"]), st.booleans(), min_size=1))
    def switch(self, who, off):
        self.edit(who, lambda p, **k: set_settings(p, rules_off=off, **k))

    @rule(who=WHO, roles=st.dictionaries(st.sampled_from(["cam", "unit"]), st.sampled_from(["C-1", "C-2"]), min_size=1))
    def lines(self, who, roles):
        seen = self.people[who].seen
        was = [
            Line(role, dict(map(tuple, told))["part"])
            for (table, *key), rows in seen.items()
            if table == "set_line" and key[0] == self.set_id
            for role, told in ((key[1], row) for row in rows)
        ]
        wanted = [Line(role, part) for role, part in roles.items()]
        self.edit(who, lambda p, **k: change_set_lines(p, self.set_id, wanted, was=was, **k))

    @rule(who=WHO, pick=PICK, stated=st.booleans())
    def give(self, who, pick, stated):
        opening = self.opening(pick)
        self.edit(who, lambda p, **k: assign_set(p, self.set_id if stated else None, [opening], **k))

    @rule(who=WHO, mark=st.sampled_from(["1", "2", "3", "4"]))
    def add(self, who, mark):
        self.edit(who, lambda p, base, **k: add_opening(p, {"mark": mark}, **k)[0])

    @rule(who=WHO, pick=PICK, kind=st.sampled_from(["lock", "deadbolt"]))
    def item(self, who, pick, kind):
        """A lock to be replaced: a deadbolt besides is a lock point of its own."""
        opening = self.opening(pick)
        self.edit(who, lambda p, base, **k: add_item(p, opening, {"kind": kind, "disposition": "replace"}, **k)[0])

    @rule(who=WHO, pick=PICK)
    def drop(self, who, pick):
        opening = self.opening(pick)
        self.edit(who, lambda p, **k: remove(p, "opening", opening, **k))

    def take(self, who, verb, chosen=None):
        """Let a person take back or do again; returns the edit that it was, or None where it was refused."""
        person, before = self.people[who], self.now
        told = {step.number: step for step in self.history()}
        try:
            done = verb(person.project, who=who) if chosen is None else verb(person.project, chosen, who=who)
        except (errors.NothingToUndoError, errors.NotUndoableError) as error:
            refused = error
        else:
            refused = None
        if refused is not None:
            assert facts(state(self.made)) == before
            for number in getattr(refused, "dependents", ()):
                assert f"{number} of {told[number].who} (" in str(refused)
            return None
        self.now = facts(state(self.made))
        person.look()
        target = next(step.target for step in self.history() if step.number == done.number)
        then, after = self.steps.get(target, ({}, {}))
        if target in self.steps:
            # Nothing but what that step had changed, and back to just what it was.
            touched = changed(before, self.now)
            assert touched <= changed(then, after), touched - changed(then, after)
        return told[target]

    def history(self):
        with self.made.reading() as connection:
            return history(connection)

    @rule(who=WHO)
    def undo(self, who):
        mine = [step for step in self.history() if step.kind == "edit" and step.who == who and not step.undone]
        taken = self.take(who, undo)
        assert taken is None or taken.who == who
        assert taken is None or taken.number in [step.number for step in mine]

    @rule(who=WHO)
    def redo(self, who):
        last = {step.target: step.who for step in self.history() if step.kind == "undo"}
        taken = self.take(who, redo)
        assert taken is None or (taken.undone and last[taken.number] == who)

    @rule(who=WHO, pick=PICK, verb=st.sampled_from([undo_one, redo_one]))
    def choose_a_step(self, who, pick, verb):
        steps = [step for step in self.history() if step.kind == "edit" and step.undone == (verb is redo_one)]
        if steps:
            self.take(who, verb, steps[pick % len(steps)].number)

    @invariant()
    def the_journal_makes_the_rows(self):
        if not hasattr(self, "people"):
            return
        with self.made.reading() as connection:
            for number in range(self.played + 1, newest(self.made) + 1):
                for entry in entries_of(connection, number):
                    play(self.replayed, entry)
                self.played = number
        assert self.replayed == state(self.made)

    def teardown(self):
        for person in getattr(self, "people", {}).values():
            person.project.close()
        if hasattr(self, "made"):
            self.made.close()


def play(rows, entry):
    """Apply one entry of the journal to rows."""
    key = (entry.entity, entry.row_id)
    if entry.action == "delete":
        del rows[key]
        return
    values = {name: value for name, value in (entry.after or {}).items() if name != "version"}
    if entry.action == "insert":
        blank = {name: value for name, value in BLANK[entry.entity].items() if name != "version"}
        rows[key] = {**blank, **values}
    else:
        rows[key] = {**rows[key], **values}


@pytest.mark.fuzz
def test_two_people_walk(backend, request):
    places = []

    class Walk(TwoWalks):
        def __init__(self):
            super().__init__()
            if backend == "sqlite":
                places.append(tempfile.mkdtemp())
                self.place = str(Path(places[-1]) / "walk.hwsched")
            else:
                import psycopg

                url, name = request.getfixturevalue("postgres_url"), "w" + os.urandom(6).hex()
                with psycopg.connect(f"{url}/postgres", autocommit=True) as connection:
                    connection.execute(f"CREATE DATABASE {name}")
                self.place = f"{url}/{name}"

    walks = int(os.environ.get("HWSCHED_WALKS", "8"))
    try:
        run_state_machine_as_test(
            Walk,
            settings=settings(
                max_examples=walks if backend == "sqlite" else max(walks // 5, 2),
                stateful_step_count=40,
                deadline=None,
                suppress_health_check=list(HealthCheck),
            ),
        )
    finally:
        for place in places:
            shutil.rmtree(place, ignore_errors=True)
