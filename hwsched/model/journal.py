"""The journal: the one way by which rows change.

Here belong inserting, updating and deleting rows with their entries, all in bulk. Taking steps back stands in
`reverting`, reading the journal in `history`.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any, Final, Literal

from sqlalchemy import Connection, Table, bindparam, delete, func, insert, select, update
from sqlalchemy.exc import IntegrityError

from hwsched.model.bulk import among, execute_many, new_ids, rows_by_id
from hwsched.model.columns import json_text
from hwsched.model.errors import DuplicateValueError, MissingRowError, StillUsedError
from hwsched.model.tables import CHANGE_ENTRY, CHANGE_SET, JOURNALLED, OWNED, REFERENCES, UNIQUE

Kind = Literal["edit", "undo", "redo"]
Action = Literal["insert", "update", "delete"]
Origins = Sequence[str | None] | None
"""Where each row's values came from, row for row, such as ``survey.xlsx, Doors, row 12``."""

_CONTEXT: Final = ("opening_id", "number", "part_id")
"""Columns that say which opening or part a row belongs to."""


@dataclass(frozen=True, slots=True)
class Entry:
    """What happened to one row."""

    entity: str
    row_id: str
    action: Action
    before: Mapping[str, Any] | None
    """Of an update only what differs; of a removal the whole row without its unknowns."""
    after: Mapping[str, Any] | None


class Change:
    """One change set in the making: rows and their journal entries, in the caller's transaction.

    Parameters
    ----------
    connection : Connection
        In a writing transaction.
    verb : str
        Name of the operation, kebab-case.
    summary : str
        A sentence for people; may be set anew until the end.
    who : str
        Person at work.
    kind : {"edit", "undo", "redo"}
        What it is on the stack of steps.
    target : int, optional
        For undo and redo: number of the edit that is taken back or done again.
    """

    def __init__(
        self, connection: Connection, verb: str, summary: str, who: str, kind: Kind = "edit", target: int | None = None
    ) -> None:
        self.connection = connection
        self.verb = verb
        self.summary = summary
        self.who = who
        self.kind: Kind = kind
        self.target = target
        self.number: int | None = None
        """Its number, once a first entry was made; None as long as nothing has changed."""
        self.openings: set[str] = set()
        """Identifiers of the openings that it touched, by their own row or by one that belongs to them."""
        self.parts: set[str] = set()
        """Catalogue numbers of the parts that it touched."""
        self.entities: set[str] = set()
        """Names of the tables that it touched."""
        self.added: list[str] = []
        """Identifiers of the rows that it inserted, in order."""
        self._entries = 0

    def insert(self, table: Table, rows: Iterable[Mapping[str, Any]], origins: Origins = None) -> list[str]:
        """Insert rows.

        Parameters
        ----------
        table : Table
            A journalled one.
        rows : iterable of mapping
            Values by column; missing ones are unknown, a missing ``id`` is made.
        origins : sequence of str or None, optional
            Row for row, where the values came from.

        Returns
        -------
        list of str
            Identifiers, in the order of the rows.

        Raises
        ------
        KeyError
            For a column that the table does not have.
        DuplicateValueError
            For a second mark, number or name.
        """
        return self._insert(table, [{**row, "version": 1} for row in rows], origins)

    def update(
        self, table: Table, edits: Iterable[tuple[str, Mapping[str, Any]]], origins: Origins = None
    ) -> list[str]:
        """Set columns of rows; only what differs is written and journalled.

        Parameters
        ----------
        table : Table
            A journalled one.
        edits : iterable of (str, mapping)
            Identifier and values by column; each identifier once.
        origins : sequence of str or None, optional
            Edit for edit, where the values came from.

        Returns
        -------
        list of str
            Identifiers of the rows that did change.

        Raises
        ------
        KeyError
            For a column that the table does not have, or that is not for editing.
        MissingRowError
            For an identifier that is not there.
        DuplicateValueError
            For a second mark, number or name.
        """
        wanted = [(row_id, values) for row_id, values in edits if values]
        names = _editable(table, wanted)
        if not wanted:
            return []
        if len({row_id for row_id, _ in wanted}) != len(wanted):
            raise ValueError(f"{table.name}: a row is edited twice in one go")
        read = list(dict.fromkeys((*names, *(name for name in _CONTEXT if name in table.c))))
        at = {name: index + 1 for index, name in enumerate(read)}
        current = rows_by_id(self.connection, table, [table.c[name] for name in read], [row_id for row_id, _ in wanted])
        written: list[dict[str, Any]] = []
        entries: list[dict[str, Any]] = []
        for index, (row_id, values) in enumerate(wanted):
            row = current.get(row_id)
            if row is None:
                raise MissingRowError(f"{table.name} {row_id} is not in the project any more")
            after = {name: value for name, value in values.items() if row[at[name]] != value}
            if not after:
                continue
            before = {name: row[at[name]] for name in after}
            context = {name: row[at[name]] for name in _CONTEXT if name in at}
            self._touch(table, row_id, context)
            self._touch(table, row_id, {**context, **after})
            opening_id = row_id if table.name in ("opening", "opening_fit") else context.get("opening_id")
            entries.append(_entry(table, row_id, opening_id, "update", before, after, origins, index))
            written.append({"row_id": row_id, **{name: row[at[name]] for name in names}, **after})
        if not written:
            return []
        changed = [name for name in names if any(name in json_after["changed"] for json_after in entries)]
        self._write(entries)
        self._set_columns(table, changed, written)
        return [row["row_id"] for row in written]

    def delete(self, table: Table, ids: Iterable[str]) -> int:
        """Remove rows, and before them the rows that belong to them.

        Parameters
        ----------
        table : Table
            A journalled one.
        ids : iterable of str
            Identifiers; those that are not there are passed over.

        Returns
        -------
        int
            How many rows of this table went.

        Raises
        ------
        StillUsedError
            Where other rows stand on one of them, such as openings on a level.
        """
        wanted = list(dict.fromkeys(ids))
        for child, owner in OWNED[table.name]:
            self.delete(child, [row[0] for row in among(self.connection, select(child.c.id), owner, wanted)])
        found = rows_by_id(self.connection, table, list(table.columns), wanted)
        names = [column.name for column in table.columns]
        gone = [dict(zip(names, row[1:], strict=True)) for row in found.values()]
        entries = []
        for row in gone:
            self._touch(table, row["id"], row)
            entries.append(_entry(table, row["id"], _opening_of(table, row), "delete", _known(row), None, None, 0))
        self._write(entries)
        try:
            execute_many(self.connection, delete(table).where(table.c.id == bindparam("row_id")), _ids(gone))
        except IntegrityError as error:
            raise StillUsedError(f"other rows still stand on this {table.name.replace('_', ' ')}") from error
        return len(gone)

    def restore(self, table: Table, rows: Iterable[Mapping[str, Any]]) -> list[str]:
        """Insert rows that the journal kept when they went: under their identifiers, their versions risen.

        Parameters
        ----------
        table : Table
            A journalled one.
        rows : iterable of mapping
            As kept, with ``id`` and ``version``.
        """
        return self._insert(table, [{**row, "version": row["version"] + 1} for row in rows], None)

    def finish(self) -> None:
        """Write the header's last state; without an entry there is no change set."""
        if self.number is not None:
            self.connection.execute(
                update(CHANGE_SET)
                .where(CHANGE_SET.c.number == self.number)
                .values(summary=self.summary, entries=self._entries)
            )

    def _insert(self, table: Table, rows: Sequence[dict[str, Any]], origins: Origins) -> list[str]:
        if not rows:
            return []
        blank = {column.name: {} if "'{}'" in _default(column) else None for column in table.columns}
        fresh = iter(new_ids(len(rows)))
        full: list[dict[str, Any]] = []
        entries: list[dict[str, Any]] = []
        for index, row in enumerate(rows):
            whole = {**blank, **row}
            if len(whole) != len(blank):
                raise KeyError(f"{table.name} has no column {', '.join(sorted(whole.keys() - blank.keys()))}")
            if whole["id"] is None:
                whole["id"] = next(fresh)
            self._touch(table, whole["id"], whole)
            full.append(whole)
            entries.append(
                _entry(table, whole["id"], _opening_of(table, whole), "insert", None, _known(whole), origins, index)
            )
        self._write(entries)
        try:
            execute_many(self.connection, insert(table), full)
        except IntegrityError as error:
            raise _duplicate(table, error) from error
        ids = [row["id"] for row in full]
        self.added += ids
        return ids
