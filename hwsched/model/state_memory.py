"""What seldom changes, kept in memory: read again only after a change set that touched one of its tables.

A large catalogue takes longer to read than an edited opening takes to check, and settings, sets and own fields are
asked for again and again; one look at the journal tells for all of them together whether what is held is still so.
"""

from collections.abc import Callable
from typing import Any, Final, TypeVar
from weakref import WeakKeyDictionary

from sqlalchemy import Connection, RootTransaction, Table, bindparam, select

from hwsched.model.journal.history import newest
from hwsched.model.tables import CHANGE_ENTRY

WRITING: Final = "hwsched_writing"
"""Execution option of a connection whose transaction writes."""

_TOUCHED: Final = select(CHANGE_ENTRY.c.entity).where(CHANGE_ENTRY.c.change_set > bindparam("since")).distinct()

_Found = TypeVar("_Found")


class StateMemory:
    """Remembers what readers found, each under the tables that it read. Threads may share one."""

    def __init__(self) -> None:
        self._held: tuple[int, dict[Callable[[Connection], Any], tuple[frozenset[str], Any]]] | None = None
        """Number of the latest change set that all of it was seen with, and by reader what it found as of then."""
        self._seen: WeakKeyDictionary[RootTransaction, int] = WeakKeyDictionary()
        """By transaction that only reads: the latest change set that it sees, which stays the same."""
        self.contents: dict[str, Any] = {}
        """Few and small contents by their hash, under which they never change."""

    def read(self, connection: Connection, reader: Callable[[Connection], _Found], *tables: Table) -> _Found:
        """Return what a reader finds, as the connection's transaction sees it.

        Parameters
        ----------
        connection : Connection
            In a transaction.
        reader : callable
            Reads nothing but the tables; what it returns must not be changed by anybody.
        tables : Table
            Journalled ones.
        """
        # What a change set in the making sees may be rolled back, and its number be given to another one.
        if connection.get_execution_options().get(WRITING):
            return self._within(connection, reader)
        latest = self.newest(connection)
        held = self._held
        if held is not None and latest < held[0]:
            # A transaction that began before the change that others know already.
            return reader(connection)
        known = {} if held is None else held[1]
        if held is not None and latest > held[0] and known:
            touched = _touched(connection, held[0])
            known = {each: found for each, found in known.items() if touched.isdisjoint(found[0])}
        if reader not in known:
            known = {**known, reader: (frozenset(str(table.name) for table in tables), reader(connection))}
        # Another thread may have gone on meanwhile: what is held only ever grows newer.
        if self._held is held:
            self._held = (latest, known)
        found: _Found = known[reader][1]
        return found

    def _within(self, connection: Connection, reader: Callable[[Connection], _Found]) -> _Found:
        held = self._held
        if held is not None and reader in held[1] and newest(connection) >= held[0]:
            tables, found = held[1][reader]
            if _touched(connection, held[0]).isdisjoint(tables):
                return found  # type: ignore[no-any-return]
        return reader(connection)

    def newest(self, connection: Connection) -> int:
        """Do as `history.newest`; of a transaction that only reads it is asked once."""
        transaction = connection.get_transaction()
        if transaction is None or connection.get_execution_options().get(WRITING):
            return newest(connection)
        latest = self._seen.get(transaction)
        if latest is None:
            latest = self._seen[transaction] = newest(connection)
        return latest


def _touched(connection: Connection, since: int) -> frozenset[str]:
    """Return the names of the tables of which a change set after that one wrote rows."""
    return frozenset(connection.execute(_TOUCHED, {"since": since}).scalars())
