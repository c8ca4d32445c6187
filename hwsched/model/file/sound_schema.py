"""Whether a project file has the tables, columns and indexes of its schema, and nothing besides.

A file may come from a stranger. A trigger in it would change rows that no journal tells of, a view or a generated
column runs what its maker wrote, and a foreign key may remove rows by itself. So what a file declares is held against
the schema of its revision before anything else is asked of it. Values of rows have `sound_values`.
"""

import json
import re
import sqlite3
from collections.abc import Iterable, Mapping
from contextlib import closing
from functools import cache
from pathlib import Path
from typing import Any, Final

from hwsched.model.errors import DamagedProjectError, ForeignSchemaError
from hwsched.model.file.known_revision import is_current
from hwsched.paths import RESOURCES

Shape = Mapping[str, frozenset[str]]
"""Per table what it consists of, a phrase each, such as ``column mark TEXT NOT NULL``."""

NEWEST: Final = RESOURCES / "project_file" / "newest.json"
"""The shape of the newest schema, written down by ``python -m tests.model.saved_projects``: to make its tables in
memory at every opening would take longer than all else."""

_WORDS: Final = frozenset(
    {
        *("CREATE", "TABLE", "INTEGER", "TEXT", "FLOAT", "BOOLEAN", "BLOB", "VARCHAR", "NOT", "NULL", "DEFAULT"),
        *("CONSTRAINT", "PRIMARY", "FOREIGN", "KEY", "UNIQUE", "REFERENCES", "DEFERRABLE", "INITIALLY", "DEFERRED"),
        *("TRUE", "FALSE"),
    }
)
"""All that our own statements say besides names: what else stands there (CHECK, COLLATE) acts by itself."""
# Comments, then quoted texts and names in each of SQLite's ways, then bare words. sqlite.org/lang_keywords.html
_TOKEN: Final = re.compile(
    r"""--[^\n]*|/\*.*?(?:\*/|$)|'(?:[^']|'')*'|"(?:[^"]|"")*"|`(?:[^`]|``)*`|\[[^\]]*\]|([^\W\d]\w*)""", re.DOTALL
)
_OWN: Final = re.compile(r"(?:pk|fk|uq)_[a-z_]+|alembic_version_pkc")
"""Names that we give to keys."""
_ACTING: Final = ("rule ", "reference ")
"""How phrases begin of what a table does by itself."""
_SOUND: Final[set[tuple[str, tuple[Any, ...]]]] = set()
"""Revisions with the declarations that were found to be theirs: the same words declare the same, in whatever file."""
_KEPT: Final = 16
_MOST: Final = 12
"""So many things are named; a maker of thousands gets no longer message."""


def check_schema(database: sqlite3.Connection, path: Path) -> str:
    """Look whether a file declares what its revision has, and nothing else.

    Parameters
    ----------
    database : sqlite3.Connection
        To the file, of which nothing but the header was read; it must not be let run what the file brings along.
    path : Path
        Of the project, for the message.

    Returns
    -------
    str
        The revision.

    Raises
    ------
    ForeignSchemaError
        Names all that does not belong there.
    DamagedProjectError
        Names what is missing.
    NewerProjectError
        Where the revision is not known: what belongs there is not either.
    """
    # Before the first table is asked: a view may stand in its place, and a virtual table runs as it is looked at.
    declared = tuple(database.execute("SELECT type, name, tbl_name, sql FROM sqlite_master").fetchall())
    acting = list(_acting(declared))
    if acting:
        raise ForeignSchemaError(str(path), _some(acting))
    revision = _revision(database, path)
    is_current(revision, str(path))
    if (revision, declared) in _SOUND:
        return revision
    found, wanted = read_shape(database), schema_of(revision)
    missing = [f"table {table}" for table in sorted(wanted.keys() - found.keys())]
    foreign = [f"table {table}" for table in sorted(found.keys() - wanted.keys())]
    for table in sorted(wanted.keys() & found.keys()):
        missing += [f"{each} of {table}" for each in sorted(wanted[table] - found[table])]
        foreign += [f"{each} of {table}" for each in sorted(found[table] - wanted[table])]
    # What lies garbled where something of ours is gone is damage; what acts by itself does not come by accident.
    if missing and not any(each.startswith(_ACTING) for each in foreign):
        more = f", and in its place there is {_some(foreign)}" if foreign else ""
        raise DamagedProjectError(f"{path} is damaged: it has no {_some(missing)}{more}; take its last good copy")
    if foreign:
        raise ForeignSchemaError(str(path), _some(foreign))
    if len(_SOUND) >= _KEPT:
        _SOUND.clear()
    _SOUND.add((revision, declared))
    return revision


def schema_of(revision: str) -> Shape:
    """Return the shape of a revision: as written down of the newest, of earlier ones by running their migrations."""
    held = json.loads(NEWEST.read_text(encoding="utf-8"))
    if held["revision"] == revision:
        return {name: frozenset(phrases) for name, phrases in held["tables"].items()}
    return _migrated(revision)


@cache
def _migrated(revision: str) -> Shape:
    # Loaded for a file of an earlier version only: for one of this version all that is known is written down.
    from sqlalchemy import create_engine, pool  # noqa: PLC0415

    from hwsched.model.file import migrating  # noqa: PLC0415

    engine = create_engine("sqlite://", poolclass=pool.StaticPool)
    try:
        with engine.begin() as connection:
            migrating.upgrade(connection, revision)
        with closing(engine.raw_connection()) as raw:
            return read_shape(raw.dbapi_connection)  # type: ignore[arg-type]
    finally:
        engine.dispose()


def read_shape(database: sqlite3.Connection) -> Shape:
    """Read what a database declares, which holds tables and indexes only."""
    statements = {
        name: str(sql)
        for name, sql in database.execute("SELECT name, sql FROM sqlite_master WHERE type = 'table'").fetchall()
    }
    return {name: frozenset(_phrases(database, name, sql)) for name, sql in statements.items()}


def _acting(declared: Iterable[tuple[Any, ...]]) -> Iterable[str]:
    for kind, name, table, sql in declared:
        if kind not in ("table", "index"):
            yield f"{kind} {_name(name)}" + (f" on {_name(table)}" if kind == "trigger" else "")
        elif kind == "table" and re.match(r"\s*CREATE\s+VIRTUAL\b", str(sql), re.IGNORECASE):
            yield f"virtual table {_name(name)}"


def _revision(database: sqlite3.Connection, path: Path) -> str:
    row = database.execute("SELECT version_num FROM alembic_version LIMIT 1").fetchone()
    if row is None or not isinstance(row[0], str):
        raise DamagedProjectError(f"{path} is damaged (its schema has no revision); take its last good copy")
    return row[0]


def _phrases(database: sqlite3.Connection, table: str, sql: str) -> Iterable[str]:
    names = {table}
    key: dict[int, str] = {}
    for _, name, type_, required, default, place, hidden in _pragma(database, "table_xinfo", table):
        names |= {name, *re.findall(r"[^\W\d]\w*", str(default))}
        given = "" if default is None else f" DEFAULT {default}"
        worked_out = " worked out by itself" if hidden else ""
        yield f"column {_name(name)} {type_.upper()}{' NOT NULL' if required else ''}{given}{worked_out}"
        if place:
            key[place] = name
    yield f"key ({', '.join(_name(key[place]) for place in sorted(key))})"
    for _, _, target, column, to, updated, deleted, match in _pragma(database, "foreign_key_list", table):
        names |= {target, column, to or ""}
        # What the other row's removal or change does to this one.
        acts = "".join(
            f" ON {event} {act}" for event, act in (("UPDATE", updated), ("DELETE", deleted)) if act != "NO ACTION"
        )
        acts += "" if match == "NONE" else f" MATCH {match}"
        yield f"reference ({_name(column)}) to {_name(target)} ({_name(to)}){acts}"
    for _, name, unique, origin, partial in _pragma(database, "index_list", table):
        columns = ", ".join(
            f"{_name(column)}{' DESC' if falling else ''}{'' if sorted_as == 'BINARY' else f' COLLATE {sorted_as}'}"
            for _, _, column, falling, sorted_as, used in _pragma(database, "index_xinfo", name)
            if used
        )
        kind = f"{'unique ' if unique else ''}index {_name(name)}" if origin == "c" else f"unique {origin}"
        yield f"{kind} ({columns}){' in part' if partial else ''}"
    for token in _TOKEN.finditer(sql):
        word = token.group(1)
        if word and word.upper() not in _WORDS and word not in names and not _OWN.fullmatch(word):
            yield f"rule {word.upper()}"


def _pragma(database: sqlite3.Connection, name: str, about: str) -> list[tuple[Any, ...]]:
    return database.execute(f"SELECT * FROM pragma_{name}(?)", (about,)).fetchall()  # noqa: S608 a name of ours


def _name(name: object) -> str:
    """Return a name that the file brings along, cut so that no message grows without bound."""
    return "an expression" if name is None else str(name)[:60]


def _some(things: list[str]) -> str:
    more = f" and {len(things) - _MOST} more" if len(things) > _MOST else ""
    return ", ".join(things[:_MOST]) + more
