"""Reading stored rows of a project file with SQLite's own driver alone.

A list of what is stored is asked for often, by scripts and by people who wait: without the layers above it is there in
a fraction of the time. Nothing here writes; a project that is no file, or not of this version, is opened as usual.
"""

from __future__ import annotations

import json
import sqlite3
from contextlib import closing
from operator import itemgetter
from pathlib import Path
from typing import Any

from hwsched.model.errors import ProjectError
from hwsched.model.file.schema import HEAD, SUFFIX
from hwsched.model.file.sound_values import check_asked
from hwsched.model.file.sqlite_file import check_file, connected, refusal_of


def plain_rows(address: str, query: str) -> list[dict[str, Any]] | None:
    """Run one query.

    Parameters
    ----------
    address : str
        Of the project.
    query : str
        SQL; it must read only.

    Returns
    -------
    list of dict or None
        Rows by column; None: the project is no file of this version, and `open_project` tells what to do.

    Raises
    ------
    ProjectError
        As `check_file`; and where a table that is read holds what does not belong there.
    """
    path = Path(address)
    if "://" in address or path.suffix.casefold() != SUFFIX or check_file(path) != HEAD:
        return None
    try:
        with closing(connected(path, sqlite3.PARSE_DECLTYPES)) as database:
            database.execute("PRAGMA query_only = ON")
            check_asked(path, database, query)
            found = database.execute(query)
            names = [column[0] for column in found.description]
            return [dict(zip(names, row, strict=True)) for row in found]
    except sqlite3.Error as error:
        raise refusal_of(path, error) or ProjectError(f"{path} cannot be read: {error}") from error


def told(rows: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """Return stored rows as they are told: without the columns that only tables know, maps and lists as such."""
    if not rows:
        return []
    # Which columns are told is the same for all: asked once, ten thousand rows take half as long.
    names = {name: "own" if name == _OWN else name for name in rows[0] if name not in _HIDDEN and name[0] != "_"}
    as_told = tuple(names.values())
    # Of one name alone, or of none, the getter gives no row of values.
    values = itemgetter(*names) if len(names) > 1 else lambda row: tuple(row[name] for name in names)
    shown = [dict(zip(as_told, values(row), strict=True)) for row in rows]
    for as_ in [as_ for name, as_ in names.items() if name in _JSON]:
        for row in shown:
            if isinstance(row[as_], str):
                row[as_] = {} if row[as_] == "{}" else json.loads(row[as_])
    return shown


_HIDDEN = frozenset(
    {"id", "version", "level_id", "set_id", "opening_id", "supply_id", "circuit_id", "sort", "ordinal", "retired"}
)
_OWN = "extra"
_JSON = frozenset({"extra", "attributes", "choices", "scope", "prefer"})
sqlite3.register_converter("BOOLEAN", lambda held: bool(int(held)))
