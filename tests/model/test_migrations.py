"""Migrations: they end in the tables, and every saved project of an earlier schema comes up to date whole."""

import shutil
import sqlite3
from contextlib import closing

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import create_engine, inspect

from hwsched import paths
from hwsched.model import errors
from hwsched.model.file import known_revision, migrating, schema, sqlite_file
from hwsched.model.file.schema import HEAD, REVISIONS
from hwsched.model.file.upgrading import upgrade_project
from hwsched.model.journal.history import changes_of_opening, history
from hwsched.model.project import create_project, open_project
from hwsched.model.queries import opening_ids, read_catalogue, read_fits, read_inputs, read_own_fields
from hwsched.model.tables import JOURNALLED, METADATA
from hwsched.operations.project.history import redo, undo
from hwsched.operations.release.attachments import attachments_of, fetch
from hwsched.operations.release.revisions import read_revision
from tests.model.saved_projects import SAVED, WHO, restore
from tests.model.states import rows_of, state

_SENT = {"transmittal", "office"}
_DELIVERIES = {"delivery", "open_question", *_SENT}
_FILES = {"attachment", "revision", *_DELIVERIES}
_PEOPLE = {"person", *_FILES}
LATER = {
    "0001": {
        *("supply", "circuit", "run", "route"),
        *("hardware_set", "set_line", "waiver", "issued_packet"),
        *("assigned_part", *_PEOPLE),
    },
    "0002": {"assigned_part", *_PEOPLE},
    "0004": _PEOPLE,
    "0006": _PEOPLE,
    "0005": _FILES,
    **dict.fromkeys(("0007", "0003", "0008", "0009", "0010", "0011", "0012", "0013"), _DELIVERIES),
    "0014": _SENT,
}
"""Tables that an earlier schema did not have, so that its saved project has nothing in them."""


def shape(connection):
    """All that a schema consists of, in no order."""
    found = inspect(connection)
    return {
        name: {
            "columns": {c["name"]: (str(c["type"]), c["nullable"], c["default"]) for c in found.get_columns(name)},
            "key": found.get_pk_constraint(name),
            "foreign": sorted(map(repr, found.get_foreign_keys(name))),
            "unique": sorted(map(repr, found.get_unique_constraints(name))),
            "indexes": sorted(map(repr, found.get_indexes(name))),
        }
        for name in found.get_table_names()
    }


def migrated(url, revision=HEAD):
    engine = create_engine(url)
    with engine.begin() as connection:
        migrating.upgrade(connection, revision)
    return engine


def test_the_revisions_are_those_of_the_migrations():
    script = ScriptDirectory.from_config(migrating.configuration())
    assert [revision.revision for revision in script.walk_revisions()][::-1] == list(REVISIONS)


def test_the_newest_migration_equals_the_tables(tmp_path):
    engine = migrated(f"sqlite:///{tmp_path}/migrated.db")
    with engine.connect() as connection:
        context = MigrationContext.configure(connection, opts={"compare_type": True, "compare_server_default": True})
        assert compare_metadata(context, METADATA) == []
    engine.dispose()


def test_a_new_project_equals_a_migrated_one(project, request, tmp_path):
    """A new project is made from the declarations, since alembic takes ten times as long."""
    backend = request.getfixturevalue("backend")
    if backend == "sqlite":
        engine = migrated(f"sqlite:///{tmp_path}/migrated.db")
    else:
        import psycopg

        url = request.getfixturevalue("postgres_url")
        with psycopg.connect(f"{url}/postgres", autocommit=True) as connection:
            connection.execute("CREATE DATABASE migrated")
        engine = migrated(f"{url}/migrated".replace("postgresql:", "postgresql+psycopg:"))
    with engine.connect() as theirs, project.reading() as ours:
        assert shape(ours) == shape(theirs)
    engine.dispose()


def test_every_schema_has_a_saved_project():
    assert {path.stem for path in SAVED.glob("*.sql")} == set(REVISIONS)


@pytest.mark.turns(3)
@pytest.mark.parametrize("revision", REVISIONS)
def test_a_saved_project_comes_up_to_date_whole(tmp_path, revision):
    target = tmp_path / "saved.hwsched"
    restore(SAVED / f"{revision}.sql", target)
    upgrade_project(target)
    with open_project(target) as project:
        assert project.title == "Saved yard"
        with project.reading() as connection:
            assert migrating.revision_of(connection) == HEAD
            marks = opening_ids(connection)
            assert sorted(marks) == ["0012", "9E4"]
            inputs = {given.opening.mark: given for given in read_inputs(connection)}
            assert [given.opening.level for given in inputs.values()] == ["roof", "1"]
            first = inputs["0012"]
            assert (first.opening.building, first.opening.hand, first.opening.stair) == ("Mill", "LHR", True)
            assert [leaf.position for leaf in first.leaves] == ["active", "inactive"]
            assert [item.backset_mm for item in first.items] == [69.85]
            assert (first.chosen[0].part, first.placed.y_mm if first.placed else None) == ("C-1", 1100.0)
            assert first.placed.face == "inside"
            # What decides egress came with 0010.
            said = ("B", 40, 2021, False) if revision >= "0010" else (None,) * 4
            names = ("occupancy_group", "occupant_load", "code_edition", "sprinkler")
            assert tuple(getattr(first.opening, name) for name in names) == said
            assert read_catalogue(connection).parts["C-1"].kit == (("S-1", 2.0),)
            assert read_fits(connection)[marks["0012"]].fit.status == "to-measure"
            assert [field.choices for field in read_own_fields(connection)] == [("AA", "BB")]
            assert len(changes_of_opening(connection, marks["0012"])) > 5
            assert connection.exec_driver_sql("PRAGMA foreign_key_check").all() == []
        assert {table for table, _ in rows_of(project)} == set(JOURNALLED) - LATER.get(revision, set())
        if "revision" not in LATER.get(revision, set()):
            # What was frozen and what was attached then is read by every later version.
            then = read_revision(project, "A")
            assert [each.mark for each in then.openings] == ["9E4", "0012"]
            assert then.openings[1].given.leaves == first.leaves
            assert then.openings[0].fit == read_fits_of(project, marks["9E4"])
            assert len(then.rules) > 100
            (file,) = attachments_of(project)
            assert fetch(project, file.id) == b"seen from inside"
        # Its journal still works: back to nothing and forth again.
        before = state(project)
        with project.reading() as connection:
            steps = len([step for step in history(connection) if step.kind == "edit" and not step.undone])
        for _ in range(steps):
            undo(project, who=WHO)
        assert {table for table, _ in rows_of(project)} == {"project"}
        for _ in range(steps):
            redo(project, who=WHO)
        assert state(project) == before


def read_fits_of(project, opening_id):
    with project.reading() as connection:
        return read_fits(connection)[opening_id].fit


NEXT = """
import sqlalchemy as sa
from alembic import op
revision = "next"
down_revision = "{head}"
branch_labels = None
depends_on = None
def upgrade():
    with op.batch_alter_table("opening") as batch:
        batch.add_column(sa.Column("sound_db", sa.Float()))
        batch.alter_column("notes", new_column_name="remarks")
    {more}
"""


@pytest.fixture
def next_schema(tmp_path, monkeypatch):
    """A program of the next version: one more migration; returns a function that writes it."""

    def write(more="pass"):
        folder = tmp_path / "next%20migrations"
        shutil.copytree(paths.MIGRATIONS, folder, ignore=shutil.ignore_patterns("__pycache__"))
        (folder / "versions" / "next.py").write_text(NEXT.format(head=HEAD, more=more))
        monkeypatch.setattr(migrating, "MIGRATIONS", folder)
        monkeypatch.setattr(known_revision, "REVISIONS", (*schema.REVISIONS, "next"))
        monkeypatch.setattr(known_revision, "HEAD", "next")
        monkeypatch.setattr(migrating, "HEAD", "next")

    return write


def old_project(folder):
    target = folder / "old.hwsched"
    restore(SAVED / f"{HEAD}.sql", target)
    return target


def columns(target):
    with closing(sqlite3.connect(target)) as database:
        return {row[1] for row in database.execute("PRAGMA table_info(opening)")}


def test_an_older_project_is_left_alone_until_somebody_says_yes(tmp_path, next_schema):
    target = old_project(tmp_path)
    before = target.read_bytes()
    next_schema()
    with pytest.raises(errors.NeedsUpgradeError, match="hwsched project upgrade") as told:
        open_project(target)
    assert (told.value.place, told.value.revision) == (str(target), HEAD)
    assert "copy" in told.value.consequence
    assert target.read_bytes() == before
    assert [path.name for path in tmp_path.iterdir() if path.suffix == ".hwsched"] == [target.name]


def test_asked_for_it_is_migrated_and_a_compared_copy_kept(tmp_path, next_schema):
    folder = tmp_path / "place"
    folder.mkdir()
    target = old_project(folder)
    with closing(sqlite3.connect(target)) as database:
        tables = [row[0] for row in database.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
        rows = sum(database.execute(f"SELECT count(*) FROM {name}").fetchone()[0] for name in tables)
        rows += database.execute("SELECT count(*) FROM sqlite_master").fetchone()[0]
    next_schema()
    done = upgrade_project(target)
    copy = folder / f"old.before-{HEAD}.hwsched"
    assert (done.place, done.before, done.after, done.copy, done.rows) == (str(target), HEAD, "next", copy, rows)
    with open_project(target) as project, project.reading() as connection:
        assert migrating.revision_of(connection) == "next"
        assert connection.exec_driver_sql("SELECT count(*) FROM opening").scalar() == 3
        assert connection.exec_driver_sql("PRAGMA foreign_keys").scalar() == 1
    assert {"sound_db", "remarks"} <= columns(target)
    assert {path.name for path in folder.iterdir()} == {target.name, copy.name}
    assert "notes" in columns(copy)
    # Once is enough.
    again = upgrade_project(target)
    assert (again.before, again.after, again.copy) == ("next", "next", None)
    open_project(target).close()
    assert {path.name for path in folder.iterdir()} == {target.name, copy.name}


def test_an_earlier_copy_is_never_overwritten(tmp_path, next_schema):
    target = old_project(tmp_path)
    kept = tmp_path / f"old.before-{HEAD}.hwsched"
    kept.write_bytes(b"precious")
    next_schema()
    done = upgrade_project(target)
    assert kept.read_bytes() == b"precious"
    assert done.copy == tmp_path / f"old.before-{HEAD}-2.hwsched"
    assert "notes" in columns(done.copy)


def lose_a_row(database):
    database.execute("DELETE FROM chosen_part")


def change_a_value(database):
    database.execute("UPDATE opening SET mark = '0013' WHERE mark = '0012'")


def lose_an_index(database):
    database.execute("DROP INDEX ix_leaf_opening_id")


@pytest.mark.parametrize(
    ("spoil", "word"),
    [
        (lose_a_row, "chosen_part differs"),
        (change_a_value, "opening differs"),
        (lose_an_index, "sqlite_master differs"),
    ],
)
def test_without_an_equal_copy_nothing_is_begun(tmp_path, next_schema, monkeypatch, spoil, word):
    target = old_project(tmp_path)
    next_schema()
    back_up = sqlite_file.back_up

    def badly(path, draft):
        back_up(path, draft)
        with closing(sqlite3.connect(draft)) as database, database:
            spoil(database)

    monkeypatch.setattr(sqlite_file, "back_up", badly)
    with pytest.raises(errors.ProjectError, match=word):
        upgrade_project(target)
    assert "notes" in columns(target)
    assert [path.name for path in tmp_path.iterdir() if path.suffix == ".hwsched"] == [target.name]


def test_a_copy_with_a_broken_page_is_no_copy(tmp_path, next_schema, monkeypatch):
    target = old_project(tmp_path)
    next_schema()
    back_up = sqlite_file.back_up

    def badly(path, draft):
        back_up(path, draft)
        with draft.open("rb+") as file:
            # The head of the last page.
            file.seek(-4096, 2)
            file.write(b"\xff" * 100)

    monkeypatch.setattr(sqlite_file, "back_up", badly)
    with pytest.raises(errors.ProjectError, match="as before"):
        upgrade_project(target)
    assert "notes" in columns(target)
    assert [path.name for path in tmp_path.iterdir() if path.suffix == ".hwsched"] == [target.name]


@pytest.mark.parametrize(
    "more",
    [
        "raise RuntimeError('it went wrong')",
        "op.execute('UPDATE leaf SET opening_id = 1')",
    ],
)
def test_a_migration_that_fails_leaves_the_project_as_before(tmp_path, next_schema, more):
    target = old_project(tmp_path)
    next_schema(more)
    with pytest.raises(errors.ProjectError, match="as before"):
        upgrade_project(target)
    assert "notes" in columns(target)
    assert "sound_db" not in columns(target)
    assert "notes" in columns(tmp_path / f"old.before-{HEAD}.hwsched")


@pytest.mark.slow
def test_a_server_database_is_migrated_in_place_when_asked(postgres_url, next_schema):
    import psycopg

    with psycopg.connect(f"{postgres_url}/postgres", autocommit=True) as connection:
        connection.execute("CREATE DATABASE older")
    url = f"{postgres_url}/older"
    create_project(url, "Older").close()
    next_schema()
    with pytest.raises(errors.NeedsUpgradeError, match="let its keeper make one first"):
        open_project(url)
    done = upgrade_project(url)
    assert (done.before, done.after, done.copy) == (HEAD, "next", None)
    with open_project(url) as project, project.reading() as connection:
        assert migrating.revision_of(connection) == "next"
        assert "remarks" in {column["name"] for column in inspect(connection).get_columns("opening")}
    assert upgrade_project(url).before == "next"
