"""Prices in a project: exact on every database, in the journal, and after the migration of one that held floats."""

import json
import sqlite3
from contextlib import closing
from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlalchemy import create_engine, select, text

from hwsched.model.catalogue_writing import write_parts
from hwsched.model.file import migrating
from hwsched.model.file.schema import HEAD
from hwsched.model.file.upgrading import upgrade_project
from hwsched.model.journal.history import changes_of, entries_of
from hwsched.model.project import open_project
from hwsched.model.queries import read_catalogue
from hwsched.model.tables import CHANGE_ENTRY, PART
from hwsched.operations.project.history import redo, undo
from hwsched.values import Part
from tests.model.saved_projects import SAVED, restore
from tests.model.states import state

DIGITS = Decimal("0.1234567890123456789012345678901")


def write(project, *parts):
    with project.change("import-catalogue", "Parts", "ann") as change:
        write_parts(change, parts, "test")
    return change


def prices(project):
    with project.reading() as connection:
        return {number: part.list_price for number, part in read_catalogue(connection).parts.items()}


def test_every_digit_is_held(project):
    told = {"A": DIGITS, "B": Decimal("12.10"), "C": Decimal(0), "D": None, "E": Decimal("999999999999.99")}
    write(project, *(Part(number, "cam", list_price=price) for number, price in told.items()))
    assert prices(project) == told
    with project.reading() as connection:
        held = connection.execute(text("SELECT list_price FROM part WHERE number = 'B'")).scalar()
    assert held == "12.1"


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(price=st.decimals(0, 10**12, places=20))
def test_any_price_is_held_and_written_once(project, price):
    write(project, Part("A", "cam", list_price=price))
    assert prices(project)["A"] == price
    # The same amount with other zeros behind it is no change.
    assert write(project, Part("A", "cam", list_price=Decimal(f"{price:f}0"))).number is None


def test_a_float_is_taken_as_it_is_written_and_never_held():
    part = Part("A", "cam", list_price=12.1)
    assert part.list_price == Decimal("12.1")
    assert replace(part, list_price=0.1 + 0.2).list_price == Decimal("0.30000000000000004")


def test_the_tables_themselves_refuse_a_float(project):
    write(project, Part("A", "cam"))
    with project.reading() as connection:
        row_id = connection.execute(select(PART.c.id)).scalar()
    with pytest.raises(TypeError, match="exact"), project.change("edit", "Price", "ann") as change:
        change.update(PART, [(row_id, {"list_price": 12.1})])
    assert prices(project) == {"A": None}


def test_the_journal_keeps_every_digit_there_and_back(project):
    write(project, Part("A", "cam", list_price=Decimal("12.10")))
    first = state(project)
    change = write(project, Part("A", "cam", list_price=DIGITS))
    with project.reading() as connection:
        (entry,) = entries_of(connection, change.number)
    assert (entry.before, entry.after) == ({"list_price": Decimal("12.1")}, {"list_price": DIGITS})
    second = state(project)
    undo(project, who="ann")
    assert state(project) == first
    undo(project, who="ann")
    assert state(project) != first
    redo(project, who="ann")
    assert state(project) == first
    redo(project, who="ann")
    assert state(project) == second
    with project.reading() as connection:
        told = [each.after["list_price"] for each in changes_of(connection, entry.row_id) if each.action == "update"]
        held = connection.execute(select(CHANGE_ENTRY.c.after).where(CHANGE_ENTRY.c.change_set == 2)).scalar()
    assert all(type(each) is Decimal for each in told)
    assert json.loads(held) == {"list_price": str(DIGITS)}


OLD = {"A": 12.1, "B": 0.1 + 0.2, "C": 1e-7, "D": 123456789012.25, "E": None, "F": 0.0, "G": 5e22}


def old_project(target):
    """A project of the first schema with prices as floats, the journal's entries as that version wrote them."""
    restore(SAVED / "0001.sql", target)
    with closing(sqlite3.connect(target)) as database, database:
        database.execute("DELETE FROM kit_content")
        database.execute("DELETE FROM part")
        database.execute("DELETE FROM change_entry WHERE entity IN ('part', 'kit_content')")
        database.execute("INSERT INTO change_set VALUES (900, 'then', 'ann', 'import', 'Parts', 'edit', NULL, 7)")
        for sequence, (number, price) in enumerate(OLD.items()):
            row = {"id": number.lower(), "version": 1, "number": number, "kind": "cam", "list_price": price}
            database.execute(
                "INSERT INTO part (id, version, number, kind, list_price) VALUES (?, 1, ?, 'cam', ?)",
                (row["id"], number, price),
            )
            after = json.dumps({name: value for name, value in row.items() if value is not None})
            database.execute(
                "INSERT INTO change_entry VALUES (900, ?, 'part', ?, NULL, 'insert', NULL, ?, NULL)",
                (sequence, row["id"], after),
            )


def test_prices_that_were_floats_are_taken_by_their_shortest_text(tmp_path):
    old_project(tmp_path / "old.hwsched")
    upgrade_project(tmp_path / "old.hwsched")
    with open_project(tmp_path / "old.hwsched") as project:
        assert prices(project) == {n: None if p is None else Decimal(repr(p)) for n, p in OLD.items()}
        before = state(project)
        # The journal's floats are taken likewise: the step can still be taken back and done again.
        undo(project, who="ann")
        assert prices(project) == {}
        redo(project, who="ann")
        assert state(project) == before


@pytest.mark.slow
def test_prices_that_were_floats_on_a_server(postgres_url):
    import psycopg

    with psycopg.connect(f"{postgres_url}/postgres", autocommit=True) as connection:
        connection.execute("CREATE DATABASE floats")
    engine = create_engine(f"{postgres_url}/floats".replace("postgresql:", "postgresql+psycopg:"))
    with engine.begin() as connection:
        migrating.upgrade(connection, "0002")
        for number, price in OLD.items():
            connection.execute(
                text("INSERT INTO part (id, number, kind, list_price) VALUES (:number, :number, 'cam', :price)"),
                {"number": number, "price": price},
            )
        migrating.upgrade(connection, HEAD)
        found = {number: part.list_price for number, part in read_catalogue(connection).parts.items()}
    engine.dispose()
    assert found == {n: None if p is None else Decimal(repr(p)) for n, p in OLD.items()}
