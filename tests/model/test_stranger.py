"""A project file is data from a stranger: what it declares and holds is looked at before anything of it runs."""

import math
import os
import signal
import sqlite3
import sys
import threading
from contextlib import closing, contextmanager

import pytest
from sqlalchemy import Boolean, Column, Float, Integer, Text
from sqlalchemy.dialects.sqlite import dialect as sqlite_dialect

from hwsched.model import errors
from hwsched.model.file.schema import HEAD, REVISIONS
from hwsched.model.file.sound_schema import NEWEST, read_shape, schema_of
from hwsched.model.file.sqlite_file import harmless
from hwsched.model.file.upgrading import upgrade_project
from hwsched.model.file.value_kinds import check_of
from hwsched.model.journal.history import entries_of
from hwsched.model.project import create_project, open_project
from hwsched.model.queries import read_fits
from tests.model.saved_projects import SAVED, newest_shape, restore


@pytest.fixture(scope="module")
def filled(tmp_path_factory):
    """A project with something in every table."""
    target = tmp_path_factory.mktemp("stranger") / "filled.hwsched"
    restore(SAVED / f"{HEAD}.sql", target)
    return target


@pytest.fixture
def target(filled, tmp_path):
    copy = tmp_path / "yard.hwsched"
    copy.write_bytes(filled.read_bytes())
    return copy


def spoil(target, *statements):
    with closing(sqlite3.connect(target)) as database, database:
        for statement in statements:
            database.execute(statement)


def rewritten(table, old, new):
    """Statements that change how a table is declared, as somebody does who writes into the schema itself."""
    return (
        "PRAGMA writable_schema = ON",
        f"UPDATE sqlite_master SET sql = replace(sql, '{old}', '{new}') WHERE name = '{table}'",
        "PRAGMA writable_schema = OFF",
    )


@contextmanager
def within(seconds):
    """Fail where the block takes longer: what hangs in SQLite cannot be stopped by an exception."""
    timer = threading.Timer(seconds, os.kill, (os.getpid(), signal.SIGABRT))
    timer.start()
    try:
        yield
    finally:
        timer.cancel()


ENDLESS = "WITH RECURSIVE n(x) AS (SELECT 1 UNION ALL SELECT x + 1 FROM n) SELECT x FROM n"

FOREIGN = {
    "a trigger": (
        ("CREATE TRIGGER wipe AFTER UPDATE ON opening BEGIN UPDATE opening SET rating = NULL; END",),
        "trigger wipe on opening",
    ),
    "a view": ((f"CREATE VIEW later AS {ENDLESS}",), "view later"),
    "a view in a table's place": (
        ("DROP TABLE alembic_version", f"CREATE VIEW alembic_version AS SELECT '{HEAD}' AS version_num"),
        "view alembic_version",
    ),
    "a view without end in a table's place": (
        ("DROP TABLE alembic_version", f"CREATE VIEW alembic_version AS SELECT max(x) AS version_num FROM ({ENDLESS})"),
        "view alembic_version",
    ),
    "a virtual table": (("CREATE VIRTUAL TABLE words USING fts5(word)",), "virtual table words"),
    "another table": (("CREATE TABLE notes (text)",), "table notes"),
    "statistics": (("ANALYZE",), "table sqlite_stat1"),
    "another index": (("CREATE INDEX quick ON opening (mark)",), "index quick"),
    "an index of an expression": (("CREATE INDEX slow ON opening (lower(mark))",), "an expression"),
    "an index of some rows": (("CREATE UNIQUE INDEX one ON opening (hand) WHERE hand IS NOT NULL",), "in part"),
    "another column": (("ALTER TABLE leaf ADD COLUMN colour TEXT",), "column colour TEXT of leaf"),
    "a generated column": (
        ("ALTER TABLE leaf ADD COLUMN twice FLOAT GENERATED ALWAYS AS (2 * undercut_mm) VIRTUAL",),
        "column twice FLOAT worked out by itself of leaf",
    ),
    "a rule of its own": (rewritten("leaf", "version INTEGER", "version INTEGER CHECK (version < 9)"), "CHECK"),
    "rows that push others out": (
        rewritten("opening", "UNIQUE (mark)", "UNIQUE (mark) ON CONFLICT REPLACE"),
        "rule CONFLICT of opening",
    ),
    "rows that go with others": (
        rewritten("opening", "REFERENCES level (id)", "REFERENCES level (id) ON DELETE CASCADE"),
        "ON DELETE CASCADE of opening",
    ),
    "a rule behind a name": (
        rewritten("leaf", "version INTEGER", "version INTEGER /* CONSTRAINT CHECK */ CHECK (version < 9)"),
        "rule CHECK of leaf",
    ),
    "another order": (rewritten("opening", "mark TEXT", "mark TEXT COLLATE NOCASE"), "COLLATE"),
    "a name in quotes": (
        rewritten("opening", "mark TEXT", 'mark TEXT/* " */COLLATE/* " */NOCASE'),
        "COLLATE",
    ),
}


@pytest.mark.parametrize("what", FOREIGN)
def test_what_might_act_by_itself_is_refused_by_its_name(target, what):
    statements, named = FOREIGN[what]
    spoil(target, *statements)
    before = target.read_bytes()
    with within(60), pytest.raises(errors.ForeignSchemaError) as refused:
        open_project(target)
    assert named in str(refused.value)
    assert "nothing in it was run" in str(refused.value)
    with within(60), pytest.raises(errors.ForeignSchemaError):
        upgrade_project(target)
    assert target.read_bytes() == before


def test_all_that_does_not_belong_there_is_named_and_a_flood_is_cut(target):
    spoil(target, *(f"CREATE VIEW v{number:03} AS SELECT {number}" for number in range(300)))
    with pytest.raises(errors.ForeignSchemaError, match=r"view v000, view v001, .* and 288 more") as refused:
        open_project(target)
    assert len(str(refused.value)) < 1000


@pytest.mark.parametrize(
    ("statement", "named"),
    [
        ("DROP TABLE waiver", "table waiver"),
        ("DROP INDEX ix_leaf_opening_id", "index ix_leaf_opening_id (opening_id) of leaf"),
        ("ALTER TABLE leaf DROP COLUMN undercut_mm", "column undercut_mm FLOAT of leaf"),
        ("ALTER TABLE leaf RENAME COLUMN undercut_mm TO gap", "column undercut_mm FLOAT of leaf"),
    ],
)
def test_what_is_missing_is_named(target, statement, named):
    spoil(target, statement)
    with pytest.raises(errors.DamagedProjectError) as refused:
        open_project(target)
    assert named in str(refused.value)


@pytest.mark.parametrize("revision", REVISIONS)
def test_a_project_of_every_revision_has_what_belongs_to_it(tmp_path, revision):
    target = tmp_path / "saved.hwsched"
    restore(SAVED / f"{revision}.sql", target)
    with closing(sqlite3.connect(target)) as database:
        assert read_shape(database) == schema_of(revision)


def test_an_earlier_project_is_looked_at_too(tmp_path):
    target = tmp_path / "saved.hwsched"
    restore(SAVED / "0001.sql", target)
    spoil(target, "CREATE TABLE supply (id TEXT)")
    with pytest.raises(errors.ForeignSchemaError, match="table supply"):
        open_project(target)
    with pytest.raises(errors.ForeignSchemaError, match="table supply"):
        upgrade_project(target)


def test_the_shape_in_the_package_is_that_of_the_newest_schema():
    assert NEWEST.read_text(encoding="utf-8") == newest_shape(), "run python -m tests.model.saved_projects"


VALUES = {
    "text for a number": ("UPDATE leaf SET thickness_mm = 'thick'", "leaf", "thickness_mm", "a number"),
    "a blob for a number": ("UPDATE opening SET rise_m = x'00ff'", "opening", "rise_m", "a number"),
    "no number at all": ("UPDATE opening SET rise_m = 9e999", "opening", "rise_m", "a number"),
    "a blob for text": ("UPDATE opening SET mark = x'00ff' WHERE mark = '0012'", "opening", "mark", "text"),
    "a fraction for a whole number": ("UPDATE opening SET priority = 1.5", "opening", "priority", "a whole number"),
    "text for yes or no": ("UPDATE opening SET stair = 'maybe'", "opening", "stair", "yes or no"),
    "more than yes or no": ("UPDATE opening SET stair = 7", "opening", "stair", "yes or no"),
    "broken JSON": ("UPDATE opening SET extra = '{'", "opening", "extra", "JSON"),
    "JSON that is no number": ("""UPDATE part SET attributes = '{"a":NaN}'""", "part", "attributes", "JSON"),
    "a list for a mapping": ("UPDATE project SET settings = '[]'", "project", "settings", "JSON, an object"),
    "a mapping for a list": ("UPDATE own_field SET choices = '{}'", "own_field", "choices", "JSON, an array"),
    "a broken fit": ("UPDATE fit_content SET content = 'fits'", "fit_content", "content", "JSON"),
    "a word for a date": ("UPDATE waiver SET until = 'soon'", "waiver", "until", "a date"),
    "no day of the year": ("UPDATE waiver SET given_on = '2031-02-30'", "waiver", "given_on", "a date"),
    "a word for an amount": ("UPDATE part SET list_price = 'cheap'", "part", "list_price", "an amount"),
}


@pytest.mark.parametrize("what", VALUES)
def test_a_value_of_another_kind_is_named_with_its_place(target, what):
    statement, table, column, belongs = VALUES[what]
    spoil(target, statement)
    with closing(sqlite3.connect(target)) as database:
        ids = {str(row[0]) for row in database.execute(f"SELECT * FROM {table}")}
    with pytest.raises(errors.DamagedProjectError) as refused:
        open_project(target)
    said = str(refused.value)
    assert f"in table {table}, row " in said
    assert any(f"row {each!r}" in said for each in ids)
    assert f"column {column} holds " in said
    assert f"where {belongs}" in said


STRANGE = (None, 0, 1, 2, -1, 1.5, 2.0**63, -(2.0**63), 2**63 - 1, -(2**63), 9.3e18, sys.float_info.max, math.inf,
           -math.inf, "", "a", "12", "1.5", "\0", b"", b"a", b"12")  # fmt: skip


@pytest.mark.parametrize(
    ("column", "kinds", "further"),
    [
        (Column("x", Text), "'text'", ""),
        (Column("x", Integer), "'integer'", ""),
        (Column("x", Boolean), "'integer'", "OR x NOT IN (0, 1)"),
        (Column("x", Float), "'real', 'integer'", f"OR abs(x) > {sys.float_info.max!r}"),
    ],
    ids=["text", "integer", "boolean", "float"],
)
def test_what_is_asked_of_a_column_is_what_its_kind_says(column, kinds, further):
    """The question is put quickly; here it is put plainly, of everything that the column can hold."""
    _, quickly, _ = check_of(column)
    plainly = f"typeof(x) NOT IN ({kinds}, 'null') {further}"
    with closing(sqlite3.connect(":memory:")) as database:
        database.execute(f"CREATE TABLE t (x {column.type.compile(sqlite_dialect())})")
        database.executemany("INSERT INTO t VALUES (?)", [(each,) for each in STRANGE])
        rows = database.execute(f"SELECT x, coalesce({quickly}, 0), coalesce({plainly}, 0) FROM t").fetchall()
    assert [row for row in rows if row[1] != row[2]] == []
    assert {row[1] for row in rows} == {0, 1}


def test_bytes_that_are_no_text_are_named_with_their_place(target):
    spoil(target, "UPDATE opening SET notes = CAST(x'61ff62' AS TEXT) WHERE mark = '0012'")
    with closing(sqlite3.connect(target)) as database:
        (key,) = database.execute("SELECT id FROM opening WHERE mark = '0012'").fetchone()

    def read():
        with open_project(target) as project, project.reading() as connection:
            connection.exec_driver_sql("SELECT * FROM opening").all()

    with pytest.raises(errors.DamagedProjectError, match=f"table opening, row {key}, column notes"):
        read()


def test_a_connection_runs_nothing_that_a_file_brings_along(tmp_path):
    with create_project(tmp_path / "yard.hwsched", "Yard") as project, project.reading() as connection:
        names = ("trusted_schema", "cell_size_check")
        asked = {name: connection.exec_driver_sql(f"PRAGMA {name}").scalar() for name in names}
        raw = connection.connection.dbapi_connection
        limits = [raw.getlimit(each) for each in (sqlite3.SQLITE_LIMIT_ATTACHED, sqlite3.SQLITE_LIMIT_TRIGGER_DEPTH)]
    assert asked == {"trusted_schema": 0, "cell_size_check": 1}
    assert limits == [0, 0]


def test_limits_leave_room_for_the_largest_file_that_is_taken_in():
    with closing(sqlite3.connect(":memory:")) as database:
        harmless(database)
        assert database.execute("SELECT length(zeroblob(?))", (64 * 2**20,)).fetchone() == (64 * 2**20,)
        with pytest.raises(sqlite3.DataError, match="too big"):
            database.execute("SELECT zeroblob(?)", (300 * 2**20,)).fetchone()


def test_a_broken_entry_of_the_journal_is_named(target):
    spoil(target, "UPDATE change_entry SET after = '{' WHERE entity = 'person'")
    with open_project(target) as project, project.reading() as connection:
        (number,) = connection.exec_driver_sql("SELECT change_set FROM change_entry WHERE entity = 'person'").one()
        with pytest.raises(errors.DamagedProjectError, match=r"change_entry, an entry of person holds '\{'"):
            entries_of(connection, number)


@pytest.mark.parametrize("content", ['{"status":"fits","parts":7}', '{"what":1}', '{"status":"mended"}', "[]"])
def test_a_fit_of_another_form_is_named(target, content):
    spoil(target, f"UPDATE fit_content SET content = '{content}'")
    with open_project(target) as project, project.reading() as connection:
        keys = connection.exec_driver_sql("SELECT key FROM fit_content").scalars().all()
        with pytest.raises(errors.DamagedProjectError, match="table fit_content, row") as refused:
            read_fits(connection)
    assert any(f"row {key}" in str(refused.value) for key in keys)
