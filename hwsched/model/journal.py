"""The journal: the one way by which rows change.

Here belong inserting, updating and deleting rows with their entries, all in bulk. Taking steps back stands in
`reverting`, reading the journal in `history`.
"""

from collections.abc import Iterable, Mapping, Sequence
from datetime import UTC, datetime
from typing import Any, Final, Literal

from sqlalchemy import Connection, Table, bindparam, delete, func, insert, literal_column, select, update
from sqlalchemy.exc import IntegrityError

from hwsched.model.bulk import among, execute_many, new_ids, rows_by_id
from hwsched.model.columns import json_text
from hwsched.model.errors import DuplicateValueError, MissingRowError, StillUsedError
from hwsched.model.tables import BLANK, CHANGE_ENTRY, CHANGE_SET, JOURNALLED, OWNED, REFERENCES

Kind = Literal["edit", "undo", "redo"]
Action = Literal["insert", "update", "delete"]
Origins = Sequence[str | None] | None
"""Where each row's values came from, row for row, such as ``survey.xlsx, Doors, row 12``."""

_CONTEXT: Final[tuple[str, ...]] = ("opening_id", "number")
"""Columns that say which opening or part a row belongs to."""


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
        self._entries = 0

    def insert(self, table: Table, rows: Iterable[Mapping[str, Any]], origins: Origins = None) -> list[str]:
        """Insert rows; missing values are unknown, a missing ``id`` is made.

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

    def restore(self, table: Table, rows: Iterable[Mapping[str, Any]]) -> list[str]:
        """Insert rows that the journal kept when they went: under their identifiers, their versions risen."""
        return self._insert(table, [{**row, "version": row["version"] + 1} for row in rows], None)

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
        names = sorted({name for _, values in wanted for name in values})
        unknown = [name for name in names if name not in table.c or name in ("id", "version")]
        if unknown:
            raise KeyError(f"{table.name} has no column {', '.join(unknown)} for editing")
        if len({row_id for row_id, _ in wanted}) != len(wanted):
            raise ValueError(f"{table.name}: a row is edited twice in one go")
        read = list(dict.fromkeys((*names, *(name for name in _CONTEXT if name in table.c))))
        at = {name: index + 1 for index, name in enumerate(read)}
        current = rows_by_id(self.connection, table, [table.c[name] for name in read], [row_id for row_id, _ in wanted])
        written: list[dict[str, Any]] = []
        entries: list[dict[str, Any]] = []
        changed: set[str] = set()
        for index, (row_id, values) in enumerate(wanted):
            row = current.get(row_id)
            if row is None:
                raise MissingRowError(f"this {table.name.replace('_', ' ')} is not in the project any more")
            after = {name: value for name, value in values.items() if row[at[name]] != value}
            if not after:
                continue
            changed |= after.keys()
            before = {name: row[at[name]] for name in after}
            context = {name: row[at[name]] for name in _CONTEXT if name in at}
            self._touch(table, row_id, context)
            self._touch(table, row_id, {**context, **after})
            opening_id = _opening_of(table, {"id": row_id, **context})
            entries.append(_entry(table, row_id, opening_id, "update", before, after, _at(origins, index)))
            written.append({"row_id": row_id, **{name: row[at[name]] for name in names}, **after})
        self._write(entries)
        if written:
            columns = sorted(changed)
            statement = (
                update(table)
                .where(table.c.id == bindparam("row_id"))
                .values({"version": literal_column("version + 1"), **{name: bindparam(f"to_{name}") for name in columns}})
            )
            rows = [{"row_id": row["row_id"], **{f"to_{n}": row[n] for n in columns}} for row in written]
            try:
                _execute_update(self.connection, table, statement, rows, columns)
            except IntegrityError as error:
                raise _duplicate(table, error) from error
        return [row["row_id"] for row in written]

    def delete(self, table: Table, ids: Iterable[str]) -> int:
        """Remove rows, and before them the rows that belong to them; those that are not there are passed over.

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
        if not wanted:
            return 0
        for child, owner in OWNED[table.name]:
            self.delete(child, [row[0] for row in among(self.connection, select(child.c.id), owner, wanted)])
        found = rows_by_id(self.connection, table, list(table.columns), wanted)
        names = [column.name for column in table.columns]
        gone: list[dict[str, Any]] = [dict(zip(names, row[1:], strict=True)) for row in found.values()]
        entries = []
        for row in gone:
            self._touch(table, row["id"], row)
            entries.append(_entry(table, row["id"], _opening_of(table, row), "delete", _known(row), None, None))
        self._write(entries)
        try:
            execute_many(
                self.connection,
                delete(table).where(table.c.id == bindparam("row_id")),
                [{"row_id": row["id"]} for row in gone],
            )
        except IntegrityError as error:
            raise StillUsedError(f"other rows still stand on this {table.name.replace('_', ' ')}") from error
        return len(gone)

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
        blank = BLANK[table.name]
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
            opening_id = _opening_of(table, whole)
            entries.append(_entry(table, whole["id"], opening_id, "insert", None, _known(whole), _at(origins, index)))
        self._write(entries)
        try:
            execute_many(self.connection, insert(table), full)
        except IntegrityError as error:
            raise _duplicate(table, error) from error
        return [row["id"] for row in full]

    def _touch(self, table: Table, row_id: str, row: Mapping[str, Any]) -> None:
        self.entities.add(table.name)
        opening = _opening_of(table, {**row, "id": row_id} if "id" not in row else row)
        if opening is not None:
            self.openings.add(opening)
        if table.name == "part" and row.get("number"):
            self.parts.add(row["number"])

    def _write(self, entries: list[dict[str, Any]]) -> None:
        if not entries:
            return
        if self.number is None:
            self._open()
        number = self.number
        for sequence, entry in enumerate(entries, start=self._entries + 1):
            entry["change_set"] = number
            entry["sequence"] = sequence
        self._entries += len(entries)
        execute_many(self.connection, insert(CHANGE_ENTRY), entries)

    def _open(self) -> None:
        last = self.connection.execute(select(func.max(CHANGE_SET.c.number))).scalar()
        self.number = (last or 0) + 1
        self.connection.execute(
            insert(CHANGE_SET).values(
                number=self.number,
                at=datetime.now(UTC).isoformat(timespec="seconds"),
                who=self.who,
                verb=self.verb,
                summary=self.summary,
                kind=self.kind,
                target=self.target,
                entries=0,
            )
        )


def _execute_update(
    connection: Connection, table: Table, statement: Any, rows: list[dict[str, Any]], columns: list[str]
) -> None:
    # Types of bound values follow from the columns, so that maps are held as text.
    typed = statement.values({name: bindparam(f"to_{name}", type_=table.c[name].type) for name in columns})
    execute_many(connection, typed, rows)


def _at(origins: Origins, index: int) -> str | None:
    return None if origins is None else origins[index]


def _opening_of(table: Table, row: Mapping[str, Any]) -> str | None:
    if table.name in ("opening", "opening_fit"):
        return str(row["id"])
    found = row.get("opening_id")
    return None if found is None else str(found)


def _known(row: Mapping[str, Any]) -> dict[str, Any]:
    return {name: value for name, value in row.items() if value is not None and value != {}}


def _entry(
    table: Table,
    row_id: str,
    opening_id: str | None,
    action: Action,
    before: Mapping[str, Any] | None,
    after: Mapping[str, Any] | None,
    origin: str | None,
) -> dict[str, Any]:
    return {
        "entity": table.name,
        "row_id": row_id,
        "opening_id": opening_id,
        "action": action,
        "before": None if before is None else json_text(before),
        "after": None if after is None else json_text(after),
        "origin": origin,
    }


_UNIQUE_WORDS: Final = {
    "opening": "an opening with this mark is already in the project",
    "part": "a part with this catalogue number is already in the project",
    "building": "a building with this name is already in the project",
}


def _duplicate(table: Table, error: IntegrityError) -> Exception:
    text = str(error.orig).lower()
    if "unique" in text or "duplicate" in text:
        return DuplicateValueError(
            _UNIQUE_WORDS.get(table.name, f"this {table.name.replace('_', ' ')} is there already")
        )
    if "foreign key" in text:
        targets = ", ".join(sorted(set(REFERENCES[table.name].values())))
        return MissingRowError(f"the {targets} of this {table.name.replace('_', ' ')} is not in the project any more")
    return error


def journalled(name: str) -> Table:
    """Return the journalled table of that name; raises KeyError."""
    return JOURNALLED[name]
