"""Digests of rows and tables: what a table holds in one number, which each change set carries on.

A table's digest is the sum of its rows' digests, so the order of rows does not matter and a change adds and subtracts
the rows that it touched. It finds accidents and other programs, not a forger: whoever knows this file can write a
digest that fits. Here belong the sums; the chain of change sets stands in `chain`, comparing in `verifying`.
"""

import json
import sys
from array import array
from collections.abc import Iterable, Iterator, Mapping, Sequence
from hashlib import sha256
from itertools import chain
from operator import itemgetter
from typing import Any, Final

from sqlalchemy import Boolean, Connection, Float, Integer, Select, Table, bindparam, select, update
from sqlalchemy.types import TypeEngine

from hwsched.model.bulk import execute_many, inserting
from hwsched.model.columns import JsonText
from hwsched.model.journal.entry_writing import known, row_bytes
from hwsched.model.tables import JOURNALLED, TABLE_DIGEST

_ROUND: Final = 2**64
_BYTES: Final = 32
"""Of a SHA-256."""
FEW: Final = 100
"""Up to so many rows each is looked at by itself."""

# What a driver gives back for a column, whatever was given to it: only then has a row the same text when it is read.
_KINDS: Final[tuple[tuple[type[TypeEngine[Any]], type], ...]] = ((Float, float), (Boolean, bool), (Integer, int))
_COLUMNS: Final[Mapping[str, Mapping[type, tuple[str, ...]]]] = {
    name: {
        kind: columns
        for declared, kind in _KINDS
        if (columns := tuple(column.name for column in table.columns if type(column.type) is declared))
    }
    for name, table in JOURNALLED.items()
}
_KIND: Final[Mapping[str, Mapping[str, type]]] = {
    name: {column: kind for kind, columns in kinds.items() for column in columns} for name, kinds in _COLUMNS.items()
}
_INEXACT: Final[Mapping[str, tuple[str, ...]]] = {
    name: (*kinds.get(float, ()), *kinds.get(bool, ())) for name, kinds in _COLUMNS.items()
}
"""Per table, the columns in which a whole number may have been given for something else."""
_JSON: Final[Mapping[str, frozenset[str]]] = {
    name: frozenset(column.name for column in table.columns if isinstance(column.type, JsonText))
    for name, table in JOURNALLED.items()
}


class Sum:
    """How a change set changes the digest of one table."""

    __slots__ = ("rows", "total")

    def __init__(self) -> None:
        self.total = 0
        self.rows = 0

    def came(self, digests: bytes) -> None:
        """Take rows in, by their digests one behind the other."""
        self.total += _added(digests)
        self.rows += len(digests) // _BYTES

    def went(self, digests: bytes) -> None:
        """Take rows out."""
        self.total -= _added(digests)
        self.rows -= len(digests) // _BYTES

    @property
    def hex(self) -> str:
        """The sum, as it is held."""
        return f"{self.total % _ROUND:016x}"


def _added(digests: bytes) -> int:
    # Eight bytes of each suffice; the sum is taken without making a number of each first.
    words = array("Q", digests)
    if sys.byteorder == "big":
        words.byteswap()
    return sum(words[:: _BYTES // words.itemsize])


def digests_of(texts: Iterable[bytes]) -> bytes:
    """Return the digests of rows' texts, as `row_bytes` writes them: 32 bytes each, one behind the other."""
    return b"".join([sha256(text).digest() for text in texts])


def plain(entity: str, row: Mapping[str, Any]) -> dict[str, Any]:
    """Return a row with every number as the database gives it back: 5.0 where 5 was given for a length, no -0.0."""
    kinds = _KIND[entity]
    return {name: _as_read(value, kinds.get(name)) for name, value in row.items()}


def _as_read(value: Any, kind: type | None) -> Any:
    if value is None or kind is None:
        return value
    if kind is float:
        return float(value) + 0.0 if isinstance(value, int | float) else value
    return kind(value) if isinstance(value, int | float) and value == kind(value) else value


def all_plain(entity: str, rows: Sequence[Mapping[str, Any]]) -> bool:
    """Tell whether rows of the same columns hold what the database gives back; a few are made so unasked."""
    if len(rows) <= FEW:
        return False
    named = [name for name in _INEXACT[entity] if name in rows[0]]
    # One column alone is not handed over as a tuple.
    read = itemgetter(*named, named[0]) if named else None
    return read is None or int not in set(map(type, chain.from_iterable(map(read, rows))))


def read_rows(connection: Connection, entity: str) -> Iterator[dict[str, Any]]:
    """Read all rows of a table as they are held, without their unknowns, as a journal entry tells them.

    Whatever columns the table has are read: it may be of a schema that is just being brought up to date.
    """
    kinds, texts = _KIND[entity], _JSON[entity]
    found = connection.exec_driver_sql(f'SELECT * FROM "{entity}"')  # noqa: S608 a table of ours
    names = list(found.keys())
    flags = [name for name in names if kinds.get(name) is bool]
    held = [name for name in names if name in texts]
    # Fetched by the thousand: to ask for each row by itself takes longer than to read it.
    for values in chain.from_iterable(found.partitions(1000)):
        row = dict(zip(names, values, strict=True))
        for name in flags:
            if row[name] is not None:
                row[name] = bool(row[name])
        for name in held:
            if row[name] is not None:
                row[name] = json.loads(row[name])
        yield known(row)


def table_sum(connection: Connection, entity: str) -> Sum:
    """Work out the digest of a table from its rows."""
    found = Sum()
    found.came(digests_of(row_bytes(entity, row) for row in read_rows(connection, entity)))
    return found


def write_sums(connection: Connection, sums: Mapping[str, Sum], number: int) -> None:
    """Carry the digests of tables on by what a change set did.

    Parameters
    ----------
    connection : Connection
        In the transaction of the change set.
    sums : mapping of str to Sum
        Per table, what came and what went.
    number : int
        Of the change set.
    """
    held = held_sums(connection)
    for name, each in sums.items():
        before = held.get(name)
        if before is not None:
            each.total += int(before.digest, 16)
            each.rows += before.rows
    set_sums(connection, sums, number, frozenset(held))


_HELD: Final[Select[Any]] = select(*(TABLE_DIGEST.c[name] for name in ("name", "digest", "rows", "change_set")))
# Compiled once: it is run with each edit.
_CARRYING_ON: Final = (
    update(TABLE_DIGEST)
    .where(TABLE_DIGEST.c.name == bindparam("table_name"))
    .values({name: bindparam(f"new_{name}") for name in ("digest", "rows", "change_set")})
)


def set_sums(connection: Connection, sums: Mapping[str, Sum], number: int, there: frozenset[str]) -> None:
    """Write down digests as they are now; ``there``: the tables of which one is held already."""
    rows = [
        {"table_name": name, "new_digest": each.hex, "new_rows": each.rows, "new_change_set": number}
        for name, each in sums.items()
    ]
    execute_many(connection, _CARRYING_ON, [row for row in rows if row["table_name"] in there])
    fresh = [
        {"name": name, "digest": each.hex, "rows": each.rows, "change_set": number}
        for name, each in sums.items()
        if name not in there
    ]
    execute_many(connection, inserting(TABLE_DIGEST), fresh)


class Held:
    """The digest of a table as the last change set that touched it left it."""

    __slots__ = ("change_set", "digest", "rows")

    def __init__(self, digest: str = f"{0:016x}", rows: int = 0, change_set: int = 0) -> None:
        self.digest = digest
        self.rows = rows
        self.change_set = change_set


def held_sums(connection: Connection) -> dict[str, Held]:
    """Read the digests that are held, by table; a table without one has had no rows."""
    return {name: Held(digest, rows, number) for name, digest, rows, number in connection.execute(_HELD)}


def seal_tables(connection: Connection, number: int, tables: Iterable[Table] = tuple(JOURNALLED.values())) -> None:
    """Take what tables hold now as what they should hold: of a new project, after an upgrade, when somebody says so."""
    sums = {str(table.name): table_sum(connection, str(table.name)) for table in tables}
    set_sums(connection, sums, number, frozenset(held_sums(connection)))
