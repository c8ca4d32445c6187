"""Whether a project file holds in every column what belongs there: SQLite takes text where a number is declared.

Here belongs the look at a file that another program may have written into; files of ours pass it unread by Python.
"""

import sqlite3
import sys
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Final

from sqlalchemy import Boolean, Column, Float, Integer, LargeBinary
from sqlalchemy.types import TypeEngine

from hwsched.model.columns import ExactText, JsonText
from hwsched.model.errors import DamagedProjectError
from hwsched.model.sqlite_file import looked_at, refusal_of
from hwsched.model.tables import METADATA

_LONGEST: Final = 40
_LONGEST_KEY: Final = 70
"""Longer than a SHA-256, by which contents are known."""
_LARGEST: Final = sys.float_info.max
_TEXTS: Final[dict[type, str]] = {ExactText: "an amount"}


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
    except sqlite3.Error as error:
        raise refusal_of(path, error) or error from error
    if wrong is not None:
        raise DamagedProjectError(
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


def find_wrong(database: sqlite3.Connection) -> WrongValue | None:
    """Find the first value of another kind in a database of the newest schema."""
    for name, key, checks in _checks():
        table = f'"{name}"'
        wrong = " OR ".join(condition for _, condition, _ in checks)
        row = database.execute(f"SELECT rowid, {key} FROM {table} WHERE {wrong} LIMIT 1").fetchone()  # noqa: S608
        if row is None:
            continue
        for column, condition, belongs in checks:
            question = f'SELECT "{column}" FROM {table} WHERE rowid = ? AND ({condition})'  # noqa: S608
            found = database.execute(question, (row[0],)).fetchone()
            if found is not None:
                return WrongValue(name, row[0], row[1], column, found[0], belongs)
    return None


@cache
def _checks() -> tuple[tuple[str, str, tuple[tuple[str, str, str], ...]], ...]:
    """Return per table its key and its checks: column, condition of a wrong value, what belongs there."""
    found = []
    for table in METADATA.tables.values():
        key = next(iter(table.primary_key.columns)).name
        found.append((str(table.name), f'"{key}"', tuple(_check(column) for column in table.columns)))
    return tuple(found)


def _check(column: Column[object]) -> tuple[str, str, str]:
    kinds, belongs = _kinds(column.type)
    name = f'"{column.name}"'
    wrong = f"typeof({name}) NOT IN ({kinds}, 'null')"
    if isinstance(column.type, JsonText):
        # What a new row holds tells which of the two it is.
        kind = "array" if column.info.get("blank") == [] else "object"
        wrong = f"({wrong} OR NOT json_valid({name}) OR json_type({name}) <> '{kind}')"
        belongs = f"JSON, an {kind}"
    elif isinstance(column.type, ExactText):
        wrong = f"({wrong} OR {name} GLOB '*[^0-9.E+-]*' OR {name} NOT GLOB '*[0-9]*')"
    elif isinstance(column.type, Float):
        # SQLite turns what is not a number into null; infinity it keeps.
        wrong = f"({wrong} OR abs({name}) > {_LARGEST!r})"
    elif isinstance(column.type, Boolean):
        wrong = f"({wrong} OR {name} NOT IN (0, 1))"
    elif column.info.get("holds") == "date":
        wrong, belongs = f"({wrong} OR date({name}, '+0 days') IS NOT {name})", "a date as 2031-02-03"
    elif column.info.get("holds") == "json":
        wrong, belongs = f"({wrong} OR NOT json_valid({name}))", "JSON"
    return str(column.name), wrong, belongs


def _kinds(type_: TypeEngine[object]) -> tuple[str, str]:
    if isinstance(type_, Float):
        return "'real', 'integer'", "a number"
    if isinstance(type_, Boolean):
        return "'integer'", "yes or no"
    if isinstance(type_, Integer):
        return "'integer'", "a whole number"
    if isinstance(type_, LargeBinary):
        return "'blob'", "the content of a file"
    return "'text'", _TEXTS.get(type(type_), "text")


def _short(value: object, most: int = _LONGEST) -> str:
    text = repr(value)
    return text if len(text) <= most else f"{text[:most]}..."
