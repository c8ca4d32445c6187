"""Tables and journal against what the change sets left there: foreign edits are found, told, taken as they are."""

import random
import sqlite3
from contextlib import closing
from decimal import Decimal
from hashlib import sha256

import pytest
from sqlalchemy import select, text

from hwsched.model.catalogue_writing import write_parts
from hwsched.model.file.schema import HEAD, REVISIONS
from hwsched.model.file.upgrading import upgrade_project
from hwsched.model.journal import verifying as model_verifying
from hwsched.model.journal.digests import all_plain, held_sums, table_sum
from hwsched.model.journal.history import history, newest
from hwsched.model.journal.verifying import look
from hwsched.model.project import create_project, open_project
from hwsched.model.tables import BUILDING, CHANGE_SET, JOURNALLED, LEAF_TABLE, OPENING_TABLE
from hwsched.operations.project.history import redo, undo
from hwsched.operations.project.verifying import accept, verify
from hwsched.operations.survey.editing import add_opening, edit_facts
from hwsched.values import Part
from tests.model.backends import furnished
from tests.model.saved_projects import SAVED, WHO, fill, restore
from tests.model.states import state


@furnished
def yard(project):
    """A project with something in every table; returns the openings' identifiers."""
    fill(project)
    return project


def foreign(project, *statements):
    """Do what another program does: past the journal."""
    with project.writing() as connection:
        for statement in statements:
            connection.execute(text(statement))


def told(project):
    return verify(project).sentences()


def test_what_is_written_by_change_sets_is_as_it_should_be(yard):
    assert not verify(yard)
    with yard.reading() as connection:
        assert {name for name in JOURNALLED if table_sum(connection, name).rows} == {
            name for name, held in held_sums(connection).items() if held.rows
        }
    while True:
        try:
            undo(yard, who=WHO)
        except Exception:
            break
        assert not verify(yard)
    redo(yard, who=WHO)
    assert not verify(yard)


@pytest.mark.parametrize("revision", REVISIONS)
def test_an_upgraded_project_is_as_it_should_be(tmp_path, revision):
    target = tmp_path / "saved.hwsched"
    restore(SAVED / f"{revision}.sql", target)
    upgrade_project(target)
    with open_project(target) as project:
        assert project.notices == ()
        assert not verify(project)
        # Nor does the journal tell other rows than the tables hold: a foreign edit is told, and nothing besides.
        foreign(project, "UPDATE opening SET rating = '90' WHERE mark = '0012'")
        (table,) = verify(project).tables
        assert [str(row) for row in table.rows] == ["0012: rating nothing -> 90"]
        assert table.all_told


@pytest.mark.parametrize("seed", range(5))
def test_whatever_numbers_are_given_the_digests_are_those_of_the_rows(project, seed):
    """Whole numbers for lengths, a minus before zero, prices, fields of the project's own, few rows and many."""
    rng = random.Random(seed)

    def row(number):
        return {
            "mark": f"{seed}-{number}",
            "rise_m": rng.choice((None, 3, 3.0, -0.0, 1e16, 1e-7, 2.5)),
            "priority": rng.choice((None, 1, 7)),
            "stair": rng.choice((None, True, False)),
            "notes": rng.choice((None, "null", 'a "b"', "\u00e4\u20ac", "1.0,")),
            "extra": rng.choice(({}, {"x": 1}, {"x": 1.0, "y": ["\u00e4"]})),
        }

    for count in (3, 150):
        with project.change("add", "Add", "ann") as change:
            ids = change.insert(OPENING_TABLE, [row(number * 1000 + count) for number in range(count)])
            change.insert(LEAF_TABLE, [{"opening_id": each, "thickness_mm": 44} for each in ids])
        with project.change("edit", "Edit", "ann") as change:
            edits = [(each, {**row(0), "mark": f"n{each}"}) for each in rng.sample(ids, len(ids) // 2)]
            change.update(OPENING_TABLE, edits)
        with project.change("remove", "Remove", "ann") as change:
            change.delete(OPENING_TABLE, rng.sample(ids, len(ids) // 3))
    with project.change("import-catalogue", "Catalogue", "ann") as change:
        write_parts(change, [Part("C-1", "cam", list_price=Decimal("12.10"), attributes={"length_mm": 5})], "t")
    assert told(project) == []


def test_many_rows_are_made_plain_only_where_one_is_not():
    blank = dict.fromkeys(column.name for column in OPENING_TABLE.columns)
    rows = [{**blank, "rise_m": 2.5, "stair": True} for _ in range(101)]
    assert all_plain("opening", rows)
    assert not all_plain("opening", rows[:100])
    rows[50]["rise_m"] = 2
    assert not all_plain("opening", rows)
    rows[50].update(rise_m=2.0, stair=1)
    assert not all_plain("opening", rows)
    assert all_plain("lock_point", [{"id": str(n)} for n in range(101)])


EDITS = {
    "a value changed": (
        "UPDATE opening SET rating = '20' WHERE mark = '0012'",
        ("opening", "0012: rating nothing -> 20"),
    ),
    "two values that would cancel out": (
        "UPDATE leaf SET thickness_mm = CASE position WHEN 'active' THEN 44 ELSE 45 END",
        ("leaf", "thickness_mm nothing -> 44.0"),
    ),
    "a row taken out": ("DELETE FROM placed_unit", ("placed_unit", "was taken out")),
    "a row put in": (
        "INSERT INTO building (id, name) VALUES ('b', 'Annex')",
        ("building", "Annex was put in"),
    ),
    "the project's own row": ("UPDATE project SET name = 'Yours'", ("project", "since change set 0")),
}


@pytest.mark.parametrize("what", EDITS)
def test_a_foreign_edit_is_told_with_table_row_and_since_when(yard, what):
    statement, (entity, said) = EDITS[what]
    with yard.reading() as connection:
        since = held_sums(connection)[entity].change_set
    foreign(yard, statement)
    (table,) = verify(yard).tables
    assert (table.entity, table.since) == (entity, since)
    assert said in str(table)
    assert f"since change set {since}" in str(table)


def test_a_restored_value_is_no_difference(yard):
    foreign(yard, "UPDATE opening SET rating = '20' WHERE mark = '0012'")
    foreign(yard, "UPDATE opening SET rating = NULL WHERE mark = '0012'")
    assert told(yard) == []


JOURNAL = {
    "who": "UPDATE change_set SET who = 'somebody' WHERE number = 3",
    "summary": "UPDATE change_set SET summary = 'nothing' WHERE number = 3",
    "time": "UPDATE change_set SET at = '2020-01-01T00:00:00.000+00:00' WHERE number = 3",
    "what was": "UPDATE change_entry SET after = '{}' WHERE change_set = 3 AND sequence = 0",
    "where from": "UPDATE change_entry SET origin = 'x.xlsx' WHERE change_set = 3 AND sequence = 0",
    "an entry gone": "DELETE FROM change_entry WHERE change_set = 3 AND sequence = 0",
}


@pytest.mark.parametrize("what", JOURNAL)
def test_an_altered_change_set_is_told(yard, what):
    foreign(yard, JOURNAL[what])
    found = verify(yard)
    assert list(found.sets) == [3]
    assert "does not say what it said" in found.sentences()[-1]


def test_a_change_set_that_is_gone_is_told_at_the_next_one(yard):
    foreign(
        yard,
        "DELETE FROM change_reference WHERE change_set = 3",
        "DELETE FROM change_entry WHERE change_set = 3",
        "DELETE FROM change_set WHERE number = 3",
    )
    assert verify(yard).sets == {4: "change set 3 is missing before it"}


def test_the_newest_change_sets_that_are_gone_are_told(yard):
    with yard.reading() as connection:
        last = newest(connection)
    for table in ("change_reference", "change_target", "change_entry"):
        foreign(yard, f"DELETE FROM {table} WHERE change_set > {last - 2}")
    foreign(yard, f"DELETE FROM change_set WHERE number > {last - 2}")
    assert verify(yard).sets == {last - 2: f"change sets up to {last} were written after it and are gone"}


def test_an_undo_of_several_that_speaks_of_others_is_told(yard):
    with yard.reading() as connection:
        last = newest(connection)
    foreign(yard, f"UPDATE change_target SET target = 1 WHERE change_set = {last}")
    assert verify(yard).sets == {last: "it does not go on from the one before"}


def test_a_content_that_is_another_is_told(yard):
    foreign(yard, "UPDATE fit_content SET content = replace(content, 'to-measure', 'fits')")
    assert verify(yard).contents
    assert all("table fit_content" in each for each in verify(yard).contents)


def test_a_change_set_keeps_its_own_hash_wherever_it_stands(tmp_path):
    """A set that comes from another copy has another number here, and says the same."""
    target = tmp_path / "saved.hwsched"
    restore(SAVED / f"{HEAD}.sql", target)
    with closing(sqlite3.connect(target)) as database, database:
        database.execute("UPDATE change_set SET number = number + 100, target = target + 100")
        database.execute("UPDATE change_entry SET change_set = change_set + 100")
        database.execute("UPDATE change_reference SET change_set = change_set + 100")
        database.execute("UPDATE change_target SET change_set = change_set + 100, target = target + 100")
    with open_project(target) as project:
        found = verify(project)
    assert found.sets[101] == "change set 1 is missing before it"
    assert not [wrong for wrong in found.sets.values() if "does not say" in wrong]


def test_each_set_holds_the_hash_of_the_one_before(project):
    for number in range(3):
        add_opening(project, {"mark": str(number)}, who="ann")
    with project.reading() as connection:
        rows = connection.execute(select(CHANGE_SET).order_by(CHANGE_SET.c.number)).all()
    before = ""
    for row in rows:
        stated = f'["{before}", {row.number}, {row.base}, null, "{row.own_hash}"]'
        assert row.chain_hash == sha256(stated.encode()).hexdigest()
        before = row.chain_hash


@pytest.mark.parametrize("what", EDITS)
def test_what_was_changed_can_be_taken_as_it_is_and_taken_back(yard, what):
    before = state(yard)
    foreign(yard, EDITS[what][0])
    now = state(yard)
    found, changes = accept(yard, who=WHO)
    assert found
    assert state(yard) == now
    assert told(yard) == []
    with yard.reading() as connection:
        step = history(connection)[-1]
    assert (step.number, step.verb) == (changes.number, "accept-present-state")
    assert f"table {found.tables[0].entity}" in step.summary
    assert not accept(yard, who=WHO)[0]
    undo(yard, who=WHO)
    # Of the project's own row the journal knows only what was edited.
    assert state(yard) == (now if what.startswith("the project's") else before)
    assert told(yard) == []


@pytest.mark.parametrize("what", JOURNAL)
def test_an_altered_journal_can_be_taken_as_it_is(yard, what):
    foreign(yard, JOURNAL[what])
    found, changes = accept(yard, who=WHO)
    assert list(found.sets) == [3]
    assert told(yard) == []
    with yard.reading() as connection:
        assert "change set 3" in history(connection)[-1].summary
        assert newest(connection) == changes.number
    edit_facts(yard, "opening", next(iter(changes.openings), None) or first(yard), {"rating": "20"}, who=WHO)
    assert told(yard) == []


def first(project):
    with project.reading() as connection:
        return connection.execute(select(OPENING_TABLE.c.id)).scalars().first()


def test_without_anything_foreign_nothing_is_written(yard):
    with yard.reading() as connection:
        before = newest(connection)
    found, changes = accept(yard, who=WHO)
    assert (bool(found), changes.number) == (False, None)
    with yard.reading() as connection:
        assert newest(connection) == before


def test_a_file_that_was_changed_is_opened_and_says_so(tmp_path):
    target = tmp_path / "yard.hwsched"
    with create_project(target, "Yard") as project:
        add_opening(project, {"mark": "1", "rating": "90"}, who="ann")
    with open_project(target) as project:
        assert project.notices == ()
    with closing(sqlite3.connect(target)) as database, database:
        database.execute("UPDATE opening SET rating = NULL")
    with open_project(target) as project:
        first_, last = project.notices
        assert first_ == "changed past the journal: table opening, since change set 1: 1: rating 90 -> nothing"
        assert f"hwsched project verify {target}" in last
        edit_facts(project, "opening", first(project), {"hand": "LH"}, who="ann")
        # An edit in between hides nothing.
        assert ["rating 90 -> nothing" in each for each in told(project)] == [True]


def test_of_a_large_project_rows_are_counted_at_opening(tmp_path, monkeypatch):
    target = tmp_path / "yard.hwsched"
    with create_project(target, "Yard") as project:
        for number in range(4):
            add_opening(project, {"mark": str(number)}, who="ann")
        monkeypatch.setattr(model_verifying, "MOST", 10)
        foreign(project, "UPDATE opening SET rating = '20' WHERE mark = '2'")
        with project.reading() as connection:
            assert not look(connection)
        assert len(told(project)) == 1
        with project.change("add", "Add", "ann") as change:
            change.insert(BUILDING, [{"name": "Mill"}])
        foreign(project, "DELETE FROM building", "UPDATE change_set SET own_hash = 'x' WHERE number = 2")
        with project.reading() as connection:
            found = look(connection)
    assert [str(each) for each in found.tables] == ["table building, since change set 5, 1 rows then and 0 now"]
    assert list(found.sets) == [2]
