"""Whether a project file holds in every column what belongs there: SQLite takes text where a number is declared.

Here belongs the look at a file that another program may have written into; files of ours pass it unread by Python. What
belongs in which column is written down beside the shape of the newest schema, from `value_kinds` beside this file: a
list of stored rows is asked for without what the tables are declared with.
"""

import json
import re
import sqlite3
from collections.abc import Container
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Final

from hwsched.model.errors import DamagedProjectError
from hwsched.model.file.sound_schema import NEWEST
from hwsched.model.file.sqlite_file import looked_at, refusal_of

Checks = dict[str, list[tuple[str, str, str]]]
"""Per table, of its columns, the key first: name, SQL that is true of a wrong value, what belongs there."""

_LONGEST: Final = 40
_LONGEST_KEY: Final = 70
"""Longer than a SHA-256, by which contents are known."""


def check_values(path: Path) -> None:
    """Look whether every value of a project file of the newest schema is of its column's kind.

    Raises
    ------
    DamagedProjectError
        Names table, row, column, what is there and what belongs there.
    ProjectError
        Where the file does not let itself be read.
    """
    try:
        with looked_at(path) as database:
            wrong = find_wrong(database)
            (projects,) = database.execute("SELECT count(*) FROM project").fetchone()
    except sqlite3.Error as error:
        raise refusal_of(path, error) or error from error
    if wrong is not None:
        raise _refusal(path, wrong)
    if projects != 1:
        raise DamagedProjectError(
            f"{path} is damaged: table project holds {projects} rows where 1 belongs; take its last good copy, or save "
            f"what can be read: hwsched rescue {path} NEW.hwsched"
        )


def check_asked(path: Path, database: sqlite3.Connection, query: str) -> None:
    """Look at the values of the tables that a query reads; raises DamagedProjectError as `check_values` does."""
    wrong = find_wrong(database, set(re.findall(r"\w+", query)))
    if wrong is not None:
        raise _refusal(path, wrong)


def _refusal(path: Path, wrong: "WrongValue") -> DamagedProjectError:
    return DamagedProjectError(
        f"{path} is damaged: in {wrong}; take its last good copy, or mend that value with the program that wrote it"
    )


@dataclass(frozen=True, slots=True)
class WrongValue:
    """A value of another kind than its column's."""

    table: str
    rowid: int
    key: object
    column: str
    value: object
    belongs: str

    def __str__(self) -> str:
        where = f"table {self.table}, row {_short(self.key, _LONGEST_KEY)}"
        return f"{where}, column {self.column} holds {_short(self.value)} where {self.belongs} belongs"


def find_wrong(database: sqlite3.Connection, tables: Container[str] | None = None) -> WrongValue | None:
    """Find the first value of another kind in a database of the newest schema; tables: in these only."""
    for name, checks in _checks().items():
        if tables is not None and name not in tables:
            continue
        table = f'"{name}"'
        wrong = " OR ".join(condition for _, condition, _ in checks)
        row = database.execute(f'SELECT rowid, "{checks[0][0]}" FROM {table} WHERE {wrong} LIMIT 1').fetchone()  # noqa: S608
        if row is None:
            continue
        for column, condition, belongs in checks:
            # As an expression: a column would go through the converter of its declared type.
            question = f'SELECT +"{column}" FROM {table} WHERE rowid = ? AND ({condition})'  # noqa: S608
            found = database.execute(question, (row[0],)).fetchone()
            if found is not None:
                return WrongValue(name, row[0], row[1], column, found[0], belongs)
    return None


@cache
def _checks() -> Checks:
    held = json.loads(NEWEST.read_text(encoding="utf-8"))["values"]
    return {table: [tuple(check) for check in checks] for table, checks in held.items()}


def _short(value: object, most: int = _LONGEST) -> str:
    text = repr(value)
    return text if len(text) <= most else f"{text[:most]}..."
