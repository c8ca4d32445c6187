"""What a change set in the making adds to the digests of tables and to the chain; written down as it is finished."""

from collections.abc import Mapping, Sequence
from typing import Any

from sqlalchemy import Connection

from hwsched.model.journal.chain import SetHash, chained, entry_digest
from hwsched.model.journal.digests import Sum, digests_of, write_sums
from hwsched.model.journal.entry_writing import known, row_bytes


class Ledger:
    """Collects, batch by batch, what came and went. It belongs to one change set."""

    def __init__(self) -> None:
        self._sums: dict[str, Sum] = {}
        self._hash = SetHash()

    def inserted(self, entity: str, columns: Sequence[Sequence[str | None]], digests: bytes) -> None:
        """Note entries of new rows, as columns (see `SetHash.go_on`), with the rows' digests one behind the other."""
        self._sum(entity).came(digests)
        self._hash.go_on(entity, "insert", columns, digests)

    def updated(
        self,
        entries: Sequence[Mapping[str, Any]],
        rows: Sequence[tuple[Mapping[str, Any], Mapping[str, Any]]],
    ) -> None:
        """Note entries of changed rows, with the whole rows before and after."""
        entity = entries[0]["entity"]
        there = self._sum(entity)
        there.went(digests_of(row_bytes(entity, known(before)) for before, _ in rows))
        there.came(digests_of(row_bytes(entity, known(after)) for _, after in rows))
        self.told(entries)

    def removed(self, entries: Sequence[Mapping[str, Any]]) -> None:
        """Note entries of rows that went; they hold the rows whole."""
        digests = digests_of(entry["before"].encode() for entry in entries)
        self._sum(entries[0]["entity"]).went(digests)
        self._hash.add(entries, digests)

    def told(self, entries: Sequence[Mapping[str, Any]]) -> None:
        """Note entries by which no row changes."""
        self._hash.add(entries, b"".join([entry_digest(entry["before"], entry["after"]) for entry in entries]))

    def close(
        self, connection: Connection, header: Mapping[str, Any], before: str, further: Sequence[int] = ()
    ) -> tuple[str, str]:
        """Carry the digests on; returns the own and the chained hash of the set.

        Parameters
        ----------
        connection : Connection
            In the transaction of the change set.
        header : mapping
            Of the set, as it stays.
        before : str
            Chained hash of the set before it; empty where there is none.
        further : sequence of int, optional
            Edits of which it speaks beside its target, ascending.
        """
        write_sums(connection, self._sums, header["number"])
        own = self._hash.own(header)
        return own, chained(before, header, own, further)

    def _sum(self, entity: str) -> Sum:
        return self._sums.setdefault(entity, Sum())
