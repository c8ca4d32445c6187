"""A watch brings what others wrote: complete, once, also after a server was gone."""

import subprocess
import sys
import threading
import time

import pytest

from hwsched.model.catalogue_writing import write_parts
from hwsched.model.journal import watching
from hwsched.model.journal.touched import touched_since
from hwsched.model.journal.watching import Watch
from hwsched.model.project import open_project
from hwsched.model.tables import (
    BUILDING,
    CIRCUIT_TABLE,
    KIT_CONTENT,
    LEAF_TABLE,
    OPENING_TABLE,
    PART,
    RUN_TABLE,
    SUPPLY_TABLE,
)
from hwsched.values import Part


@pytest.fixture
def watch(project):
    made = Watch(project)
    yield made
    made.close()


@pytest.fixture
def other(project, address):
    with open_project(address) as opened:
        yield opened


def add(project, mark, who="ann"):
    with project.change("add-opening", "Add", who) as change:
        return change.insert(OPENING_TABLE, [{"mark": mark}])[0]


def soon(watch, seconds=5.0):
    """What a watch brings, asked ten times a second."""
    until = time.monotonic() + seconds
    while time.monotonic() < until:
        found = watch.look()
        if found:
            return found
        time.sleep(0.1)
    return []


def test_nothing_written_is_nothing_brought(watch, project):
    assert watch.look() == []
    with project.change("nothing", "Nothing", "ann"):
        pass
    assert watch.look() == []


def test_what_another_writes_is_brought_once(watch, other):
    assert watch.look() == []
    first, second = add(other, "1"), add(other, "2")
    found = soon(watch)
    found += soon(watch) if len(found) < 2 else []
    assert [(each.number, each.openings, each.entities) for each in found] == [
        (1, {first}, {"opening", "lock_point"}),
        (2, {second}, {"opening", "lock_point"}),
    ]
    time.sleep(1.1)
    assert watch.look() == []


def test_what_was_written_between_opening_and_the_first_look_is_brought(watch, other):
    opening = add(other, "1")
    assert [each.openings for each in soon(watch)] == [{opening}]


def test_what_is_rolled_back_is_not_brought(watch, other):
    watch.look()

    def refused():
        with other.change("add-opening", "Add", "ann") as change:
            change.insert(OPENING_TABLE, [{"mark": "1"}])
            raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        refused()
    time.sleep(1.1)
    assert watch.look() == []


def test_another_process_is_seen(watch, address):
    watch.look()
    code = (
        "import sys; from hwsched.model.project import open_project; from hwsched.model.tables import OPENING_TABLE\n"
        "with open_project(sys.argv[1]) as project, project.change('add', 'one', 'ben') as change:\n"
        "    change.insert(OPENING_TABLE, [{'mark': '1'}])"
    )
    subprocess.run([sys.executable, "-c", code, address], check=True)
    assert [each.entities for each in soon(watch)] == [{"opening", "lock_point"}]


def test_a_reader_and_a_writer_are_not_in_its_way(watch, project, other):
    watch.look()
    with project.reading() as connection:
        connection.exec_driver_sql("SELECT count(*) FROM opening").scalar()
        with other.change("add-opening", "Add", "ann") as change:
            change.insert(OPENING_TABLE, [{"mark": "1"}])
            assert watch.look() == []
        seen = []
        # The reading goes on seeing what it saw; the watch has a thread of its own.
        thread = threading.Thread(target=lambda: seen.extend(soon(watch)))
        thread.start()
        thread.join()
        assert len(seen) == 1
        assert connection.exec_driver_sql("SELECT count(*) FROM opening").scalar() == 0


def test_a_project_that_stops_answering_is_tried_again_and_nothing_is_missed(watch, other, monkeypatch):
    watch.look()

    def gone(connection, number):
        raise watching.ProjectError("the server does not answer")

    add(other, "1")
    with monkeypatch.context() as patched:
        patched.setattr(watching, "touched_since", gone)
        until = time.monotonic() + 3
        while watch.answers and time.monotonic() < until:
            assert watch.look() == []
            time.sleep(0.1)
        assert not watch.answers
        add(other, "2")
        assert watch.look() == []
    assert [each.number for each in soon(watch)] == [1, 2]
    assert watch.answers


@pytest.mark.slow
@pytest.mark.parametrize("backend", ["postgresql"], indirect=True)
def test_a_connection_that_the_server_ends_is_made_again(watch, other, postgres_url):
    import psycopg

    watch.look()
    add(other, "1")
    assert len(soon(watch)) == 1
    with psycopg.connect(f"{postgres_url}/postgres", autocommit=True) as keeper:
        keeper.execute(
            "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE pid <> pg_backend_pid() "
            "AND backend_type = 'client backend'"
        )
    add_again(other, "2")
    assert [each.number for each in soon(watch, 10)] == [2]


def add_again(project, mark):
    """Add an opening; a pooled connection that the server ended says so once."""
    for _ in range(5):
        try:
            return add(project, mark)
        except watching.ProjectError:
            time.sleep(0.2)
    raise AssertionError("never written")


@pytest.mark.slow
@pytest.mark.parametrize("backend", ["postgresql"], indirect=True)
def test_a_server_tells_without_being_asked(watch, other, monkeypatch):
    monkeypatch.setattr(watching, "_ASK_S", 1000.0)
    watch.look()
    add(other, "1")
    assert len(soon(watch, 2)) == 1
    assert watch.look() == []


@pytest.mark.slow
@pytest.mark.parametrize("backend", ["postgresql"], indirect=True)
def test_a_word_of_the_server_that_is_lost_is_made_good(watch, other, monkeypatch):
    from hwsched.model import project as project_module

    monkeypatch.setattr(project_module, "tell", lambda connection, number: None)
    watch.look()
    add(other, "1")
    assert len(soon(watch, 2)) == 1


def test_what_a_change_knows_of_itself_is_what_the_journal_tells(project):
    """Rows of each kind that belongs to an opening or a part, put in, changed, handed over and taken out."""
    opening, next_one = add(project, "1"), add(project, "2")
    told = []

    def step(act):
        with project.change("step", "Step", "ann") as change:
            act(change)
        told.append((change.number, change.openings, change.parts, change.entities))

    rows: dict[str, str] = {}

    def insert(name, table, row):
        step(lambda change: rows.update({name: change.insert(table, [row])[0]}))

    insert("leaf", LEAF_TABLE, {"opening_id": opening})
    step(lambda change: change.update(LEAF_TABLE, [(rows["leaf"], {"width_mm": 900.0})]))
    insert("supply", SUPPLY_TABLE, {"name": "PS", "use": "laid"})
    insert("circuit", CIRCUIT_TABLE, {"supply_id": rows["supply"], "name": "C"})
    run = {"circuit_id": rows["circuit"], "from_node": "supply", "to_node": opening, "opening_id": opening}
    insert("run", RUN_TABLE, run)
    step(lambda change: change.update(RUN_TABLE, [(rows["run"], {"to_node": next_one, "opening_id": next_one})]))
    step(lambda change: change.delete(RUN_TABLE, [rows["run"]]))
    step(lambda change: write_parts(change, [Part("A", "cam"), Part("B", "cam", kit=(("A", 1.0),))], "c.xlsx"))
    step(lambda change: write_parts(change, [Part("A", "cam", "Other"), Part("B", "cam", kit=(("A", 2.0),))], "c.xlsx"))
    step(lambda change: write_parts(change, [Part("B", "cam")], "c.xlsx"))
    with project.reading() as connection:
        (part_id,) = connection.execute(PART.select().where(PART.c.number == "B")).scalars()
    insert("kit", KIT_CONTENT, {"part_id": part_id, "number": "A", "quantity": 3.0})
    step(lambda change: change.delete(PART, [part_id]))
    insert("building", BUILDING, {"name": "Main"})
    step(lambda change: change.delete(OPENING_TABLE, [opening]))
    with project.reading() as connection:
        found = touched_since(connection, 2)
        assert touched_since(connection, 5) == found[3:]
    assert [(each.number, each.openings, each.parts, each.entities) for each in found] == told
