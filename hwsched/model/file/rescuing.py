"""Saving what can be read of a damaged project file, or of one that holds what is none of ours, into a new project.

The file is opened to be read only, and is left as it is. What its tables have lost and its journal still tells is put
back from there; what cannot be saved is named.
"""

import sqlite3
from collections.abc import Iterable, Iterator, Sequence, Set
from contextlib import closing, suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from sqlalchemy import Engine

from hwsched.model.columns import json_text
from hwsched.model.errors import DamagedProjectError
from hwsched.model.file.migrating import stamp, upgrade
from hwsched.model.file.schema import APPLICATION_ID, HEAD, REVISIONS
from hwsched.model.file.sound_values import find_wrong
from hwsched.model.file.sqlite_file import access_to, harmless, make_file
from hwsched.model.journal.chain import seal_chain
from hwsched.model.journal.digests import seal_tables
from hwsched.model.journal.history import newest
from hwsched.model.journal.verifying import told_rows
from hwsched.model.project import file_engine
from hwsched.model.state_memory import WRITING
from hwsched.model.tables import JOURNALLED, METADATA

_WIDEST_GAP: Final = 200_000
"""Rows between two that can be read that are asked for one by one."""
_REPLACED: Final = "\ufffd"


@dataclass(frozen=True, slots=True)
class Saved:
    """What became of one table."""

    table: str
    rows: int
    """Saved, those of the journal included."""
    from_journal: int
    """Of them such as the table had lost and the journal told."""
    expected: int | None
    """How many there should be; None where nothing tells."""

    @property
    def lost(self) -> int | None:
        """How many rows are gone; None where nothing tells how many there were."""
        return None if self.expected is None else max(0, self.expected - self.rows)


@dataclass(frozen=True, slots=True)
class Rescued:
    """What was saved of a project, and what was not."""

    revision: str
    """Of its schema, and of the new project's."""
    tables: tuple[Saved, ...]
    left_out: tuple[str, ...]
    """Rows and values that were read and could not stay, with the reason; what was there besides a project."""

    @property
    def whole(self) -> bool:
        """Whether nothing was lost, as far as can be told."""
        return not self.left_out and all(not each.lost for each in self.tables)


def rescue(path: Path, target: Path) -> Rescued:
    """Write what can be read of a project file into a new one.

    Parameters
    ----------
    path : Path
        The damaged file; it is not changed.
    target : Path
        The new project; nothing is overwritten.

    Raises
    ------
    ProjectError
        Where nothing can be read, or the new project cannot be made.
    """
    found: list[Rescued] = []
    make_file(target, lambda draft: found.append(_fill(path, draft)))
    return found[0]


def _fill(path: Path, draft: Path) -> Rescued:
    try:
        with closing(sqlite3.connect(access_to(path).uri, uri=True)) as old:
            harmless(old)
            old.execute("PRAGMA query_only = ON")
            old.text_factory = lambda text: text.decode("utf-8", "replace")
            declared = old.execute("SELECT type, name, sql FROM sqlite_master").fetchall()
            # Only real tables are asked: what a view works out may have no end.
            real = {name for kind, name, sql in declared if kind == "table" and "VIRTUAL" not in str(sql).upper()[:20]}
            revision = _revision(old) if "alembic_version" in real else HEAD
            engine = file_engine(draft, foreign_keys=False)
            try:
                _make_tables(engine, revision)
                return _copy(old, declared, real, engine, draft, revision)
            finally:
                engine.dispose()
    except sqlite3.DatabaseError as error:
        raise DamagedProjectError(
            f"nothing can be read of {path} ({error}); put back its last good copy: hwsched project backups {path}"
        ) from error


def _revision(old: sqlite3.Connection) -> str:
    with suppress(sqlite3.DatabaseError):
        row = old.execute("SELECT version_num FROM alembic_version LIMIT 1").fetchone()
        if row is not None and row[0] in REVISIONS:
            return str(row[0])
    return HEAD


def _make_tables(engine: Engine, revision: str) -> None:
    with engine.connect() as fresh:
        connection = fresh.execution_options(**{WRITING: True})
        with connection.begin():
            connection.exec_driver_sql(f"PRAGMA application_id = {APPLICATION_ID}")
            if revision == HEAD:
                METADATA.create_all(connection)
                stamp(connection)
            else:
                upgrade(connection, revision)


def _copy(
    old: sqlite3.Connection,
    declared: Sequence[tuple[str, str, str]],
    real: Set[str],
    engine: Engine,
    draft: Path,
    revision: str,
) -> Rescued:
    left_out: list[str] = []
    with closing(sqlite3.connect(draft)) as new:
        new.isolation_level = None
        new.execute("BEGIN IMMEDIATE")
        names = [str(name) for (name,) in new.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
        names = [name for name in names if name != "alembic_version"]
        left_out += [f"{kind} {name}, which is none of a project" for kind, name in _strange(declared, names)]
        for name in names:
            if name in real:
                left_out += _copy_table(old, new, name)
            else:
                left_out.append(f"table {name}, which is not there")
        new.execute("COMMIT")
    told = _from_journal(engine) if revision == HEAD else {}
    with closing(sqlite3.connect(draft)) as new:
        new.isolation_level = None
        new.execute("BEGIN IMMEDIATE")
        if revision == HEAD:
            left_out += _without_wrong_values(new)
        left_out += _without_loose_rows(new)
        expected = _expected(old) if "table_digest" in real else {}
        tables = tuple(
            Saved(name, _rows(new, name), told.get(name, 0), expected.get(name, 0 if expected else None))
            for name in names
            if name in JOURNALLED
        )
        new.execute("COMMIT")
    if revision == HEAD:
        _seal(engine)
    return Rescued(revision, tables, tuple(left_out))


def _strange(declared: Iterable[tuple[str, str, str]], names: Sequence[str]) -> Iterator[tuple[str, str]]:
    for kind, name, _ in declared:
        if kind in ("trigger", "view") or (kind == "table" and name not in {*names, "alembic_version"}):
            yield kind, name


def _copy_table(old: sqlite3.Connection, new: sqlite3.Connection, name: str) -> Iterator[str]:
    wanted = [str(column) for (column,) in new.execute("SELECT name FROM pragma_table_info(?)", (name,))]
    there = {column for (column,) in old.execute("SELECT name FROM pragma_table_info(?)", (name,))}
    columns = [column for column in wanted if column in there]
    for column in wanted:
        if column not in there:
            yield f"column {column} of table {name}, which is not there"
    if not columns:
        return
    listed = ", ".join(f'"{column}"' for column in columns)
    places = ", ".join("?" * (len(columns) + 1))
    into = f'INSERT INTO "{name}" (rowid, {listed}) VALUES ({places})'  # noqa: S608 names of our own schema
    for row in _readable(old, name, listed):
        if any(isinstance(value, str) and _REPLACED in value for value in row):
            yield f"table {name}, row {row[1]}: bytes that were no text"
        try:
            new.execute(into, row)
        except sqlite3.Error as error:
            yield f"table {name}, row {row[1]}: {error}"


def _readable(old: sqlite3.Connection, name: str, listed: str) -> Iterator[tuple[Any, ...]]:
    """Yield all rows that can be read: from the front, from the back, and what lies between one by one."""
    query = f'SELECT rowid, {listed} FROM "{name}"'  # noqa: S608 names of our own schema
    front: list[tuple[Any, ...]] = []
    if _read(old, f"{query} ORDER BY rowid", front):
        yield from front
        return
    back: list[tuple[Any, ...]] = []
    _read(old, f"{query} ORDER BY rowid DESC", back)
    yield from front
    first = front[-1][0] if front else 0
    last = back[-1][0] if back else first
    for rowid in range(first + 1, min(last, first + _WIDEST_GAP)):
        with suppress(sqlite3.DatabaseError):
            row = old.execute(f"{query} WHERE rowid = ?", (rowid,)).fetchone()
            if row is not None:
                yield row
    yield from (row for row in reversed(back) if row[0] > first)


def _read(old: sqlite3.Connection, query: str, into: list[tuple[Any, ...]]) -> bool:
    """Read until the end, or until it fails; tells whether it came to the end."""
    try:
        for row in old.execute(query):
            into.append(row)
    except sqlite3.DatabaseError:
        return False
    return True


def _from_journal(engine: Engine) -> dict[str, int]:
    """Put back rows that a table has lost and the journal tells whole; returns how many of each table."""
    found: dict[str, int] = {}
    with engine.connect() as fresh:
        connection = fresh.execution_options(**{WRITING: True})
        with connection.begin():
            for name, table in JOURNALLED.items():
                rows, whole = told_rows(connection, name)
                there = set(connection.exec_driver_sql(f'SELECT id FROM "{name}"').scalars())  # noqa: S608
                for row_id in sorted(whole - there):
                    row = {key: value for key, value in rows[row_id].items() if key in table.c}
                    held = [_held(value) for value in row.values()]
                    columns = ", ".join(f'"{key}"' for key in row)
                    places = ", ".join("?" * len(row))
                    # What is already there under the same mark or name stays.
                    into = f'INSERT OR IGNORE INTO "{name}" ({columns}) VALUES ({places})'  # noqa: S608
                    done = connection.exec_driver_sql(into, tuple(held))
                    found[name] = found.get(name, 0) + done.rowcount
    return found


def _held(value: Any) -> Any:
    return json_text(value) if isinstance(value, dict | list) else value


def _without_wrong_values(new: sqlite3.Connection) -> Iterator[str]:
    while (wrong := find_wrong(new)) is not None:
        yield str(wrong)
        table, column = wrong.table, wrong.column
        try:
            new.execute(f'UPDATE "{table}" SET "{column}" = NULL WHERE rowid = ?', (wrong.rowid,))  # noqa: S608
        except sqlite3.IntegrityError:
            new.execute(f'DELETE FROM "{table}" WHERE rowid = ?', (wrong.rowid,))  # noqa: S608


def _without_loose_rows(new: sqlite3.Connection) -> Iterator[str]:
    while loose := new.execute("PRAGMA foreign_key_check").fetchall():
        for table, rowid, parent, _ in loose:
            key = new.execute(f'SELECT * FROM "{table}" WHERE rowid = ?', (rowid,)).fetchone()  # noqa: S608
            if key is not None:
                yield f"table {table}, row {key[0]}: its {parent} is lost"
                new.execute(f'DELETE FROM "{table}" WHERE rowid = ?', (rowid,))  # noqa: S608


def _expected(old: sqlite3.Connection) -> dict[str, int]:
    with suppress(sqlite3.DatabaseError):
        return {str(name): int(rows) for name, rows in old.execute("SELECT name, rows FROM table_digest")}
    return {}


def _rows(new: sqlite3.Connection, name: str) -> int:
    return int(new.execute(f'SELECT count(*) FROM "{name}"').fetchone()[0])  # noqa: S608


def _seal(engine: Engine) -> None:
    with engine.connect() as fresh:
        connection = fresh.execution_options(**{WRITING: True})
        with connection.begin():
            connection.exec_driver_sql("DELETE FROM table_digest")
            seal_tables(connection, newest(connection))
            seal_chain(connection)
