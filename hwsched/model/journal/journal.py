"""The journal: the one way by which rows change.

Here belong inserting, updating and deleting rows with their entries, all in bulk. Taking steps back stands in
`reverting`, reading the journal in `history`.
"""

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from functools import lru_cache
from itertools import repeat
from typing import Any, Final, Literal

from sqlalchemy import Connection, Delete, Table, Update, bindparam, delete, literal_column, select, update
from sqlalchemy.exc import IntegrityError

from hwsched.model.bulk import among, execute_many, insert_columns, inserting, new_ids, rows_by_id
from hwsched.model.errors import MissingRowError, StillUsedError
from hwsched.model.journal.chain import LastSet, last_set, seal_chain
from hwsched.model.journal.conflicts import check_unseen
from hwsched.model.journal.digests import FEW, all_plain, digests_of, plain, seal_tables
from hwsched.model.journal.entry_writing import (
    Action,
    Origins,
    entry_of,
    exchangeable,
    known,
    new_texts,
    origin_at,
    row_ids,
    row_text,
)
from hwsched.model.journal.ledger import Ledger
from hwsched.model.journal.refusals import refusal, said_table
from hwsched.model.lock_points import DECIDING, Unsettled, settle
from hwsched.model.roles import check_people, require
from hwsched.model.tables import (
    ATTACHMENT,
    BLANK,
    CHANGE_ENTRY,
    CHANGE_REFERENCE,
    CHANGE_SET,
    CHANGE_TARGET,
    LINKS,
    OWNED,
    PART,
    PERSON,
)
from hwsched.stopping import asking

Kind = Literal["edit", "undo", "redo"]

_BELONGS: Final[Mapping[str, str]] = {
    "opening": "id",
    "opening_fit": "opening_id",
    "leaf": "opening_id",
    "existing_item": "opening_id",
    "lock_point": "opening_id",
    "chosen_part": "opening_id",
    "placed_unit": "opening_id",
    "assigned_part": "opening_id",
    "run": "opening_id",
    "route": "opening_id",
    "waiver": "opening_id",
    "issued_packet": "opening_id",
    "attachment": "opening_id",
    "open_question": "opening_id",
    "part": "number",
    "kit_content": "part_id",
}
"""Column that says which opening, or which part, a row belongs to."""
_OF_OPENINGS: Final = frozenset(name for name, column in _BELONGS.items() if column in ("id", "opening_id"))


_CLOSED: Final = ("summary", "target", "entries", "own_hash", "chain_hash")
_CLOSING: Final = (
    update(CHANGE_SET)
    .where(CHANGE_SET.c.number == bindparam("new_here"))
    .values({name: bindparam(f"new_{name}") for name in _CLOSED})
)


# Statements of each edit are made and compiled once: making them takes as long as the database takes to do them.
@lru_cache(256)
def _removing(table: Table) -> Delete:
    return delete(table).where(table.c.id == bindparam("row_id"))


@lru_cache(256)
def _setting(table: Table, names: tuple[str, ...]) -> Update:
    values = {name: bindparam(f"new_{name}", type_=table.c[name].type) for name in names}
    version = table.c.version + literal_column("1")
    return update(table).where(table.c.id == bindparam("row_id")).values(**values, version=version)


@dataclass(frozen=True, slots=True)
class Session:
    """One opening of a project by one process or window, in which change sets are made."""

    id: str
    device: str
    """Name of the machine."""


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
    session : Session
        Where it is made.
    base : int, optional
        The newest change set that the person had seen when beginning the edit: what others changed since is not
        overwritten. Left out, everything counts as seen.

    Raises
    ------
    NotAllowedError
        Where the person's role does not do this verb.
    """

    def __init__(
        self,
        connection: Connection,
        verb: str,
        summary: str,
        who: str,
        session: Session,
        kind: Kind = "edit",
        base: int | None = None,
    ) -> None:
        self.connection = connection
        self.verb = verb
        self.summary = summary
        self.who = who
        self.session = session
        self.kind: Kind = kind
        self.base = base
        self.target: int | None = None
        """For undo and redo: number of the edit that is taken back or done again; of several, the first."""
        self.further: Sequence[int] = ()
        """The other edits of an undo or redo of several, ascending."""
        self.number: int | None = None
        """Its number, once a first entry was made; None as long as nothing has changed."""
        self.openings: set[str] = set()
        """Identifiers of the openings that it touched, by their own row or by one that belongs to them."""
        self.parts: set[str] = set()
        """Catalogue numbers of the parts that it touched; complete once it is finished."""
        self.entities: set[str] = set()
        """Names of the tables that it touched."""
        self.added: list[str] = []
        """Identifiers of the rows that it inserted, in order."""
        self.said: list[str] = []
        """Sentences of the verbs that were parts of it, in order."""
        self.unsettled = Unsettled()
        """Openings whose lock points are still to be brought in step."""
        self._part_ids: set[str] = set()
        self._stood_on: set[str] = set()
        self.begins: Callable[[Connection, LastSet | None], None] | None = None
        """Called once with the newest change set, before the first thing is written."""
        self._failed = False
        self._entries = 0
        self._seals = False
        self._header: dict[str, Any] = {}
        self._before = ""
        """Chained hash of the change set before it."""
        self._ledger = Ledger()
        self.require(verb)

    def require(self, verb: str) -> None:
        """Refuse a verb that the person's role does not do; raises NotAllowedError."""
        require(self.connection, self.who, verb)

    @contextmanager
    def part(self, verb: str, summary: str, kind: Kind) -> Iterator[None]:
        """Let another verb write into it: its sentence is kept beside; where it fails, nothing of the whole is written.

        Parameters
        ----------
        verb, summary, kind
            Of the other verb; it must be one that the person's role does.
        """
        self.require(verb)
        if kind != "edit":
            raise RuntimeError(f"an {kind} cannot be a part of another change set")
        own, self.summary = self.summary, summary
        try:
            yield
        except BaseException:
            self._failed = True
            raise
        else:
            self.said.append(self.summary)
        finally:
            self.summary = own

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
        return self._insert(table, rows, origins)

    def update(
        self,
        table: Table,
        edits: Iterable[tuple[str, Mapping[str, Any]]],
        origins: Origins = None,
        *,
        there: Mapping[str, Sequence[Any]] | None = None,
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
        there : mapping of str to sequence, optional
            The whole rows by identifier, where they were read in this change set and not written since.

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
        wanted = list(edits)
        if not wanted:
            return []
        named = {name for _, values in wanted for name in values}
        if wrong := named - (BLANK[table.name].keys() - {"id", "version"}):
            raise KeyError(f"{table.name} has no column to edit named {', '.join(sorted(wrong))}")
        ids = [row_id for row_id, _ in wanted]
        # The second edit would be compared with what the first has not written yet, and its entry would tell a wrong
        # before.
        if len(set(ids)) != len(ids):
            raise ValueError(f"{table.name}: a row is edited twice in one go")
        entity = str(table.name)
        names = [column.name for column in table.columns if column.name in named]
        # Whole rows: of them the table's digest is made.
        read = [column.name for column in table.columns]
        current: Mapping[str, Sequence[Any]] = there if there is not None else self._rows(table, ids)
        written: list[dict[str, Any]] = []
        entries: list[dict[str, Any]] = []
        whole: list[tuple[dict[str, Any], dict[str, Any]]] = []
        changed: set[str] = set()
        deciding = DECIDING.get(entity, frozenset())
        for index, (row_id, values) in enumerate(wanted):
            found = current.get(row_id)
            if found is None:
                raise MissingRowError(f"this {said_table(table)} is not in the project any more ({row_id})")
            row = dict(zip(read, found, strict=True))
            # An edit that changes nothing leaves no entry: the same file taken in twice is no step to undo.
            after = {name: value for name, value in plain(entity, values).items() if row[name] != value}
            if not after:
                continue
            before = {name: row[name] for name in after}
            changed |= after.keys()
            opening_id = self._touch(entity, row)
            new = {**row, **after}
            # A row that goes over to another opening unsettles both.
            for each in (opening_id, self._touch(entity, new)):
                if each is not None and not deciding.isdisjoint(after):
                    self.unsettled.written(each)
            self._link(entity, before)
            self._link(entity, after)
            texts = row_text(entity, before), row_text(entity, after)
            entries.append(entry_of(entity, row_id, opening_id, "update", *texts, origin_at(origins, index)))
            whole.append((row, {**new, "version": row["version"] + 1}))
            new["row_id"] = row_id
            written.append(new)
        if entries:
            self._ledger.updated(entries, whole)
        self._write(entries)
        self._set(table, [name for name in names if name in changed], written)
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
            # Children first: an undo turns the entries round, and then the owner is back before what stands on it.
            self.delete(child, [row[0] for row in among(self.connection, select(child.c.id), owner, wanted)])
        if table is not ATTACHMENT:
            # Files may hang at anything, so no column of the database's says at which table.
            files = select(ATTACHMENT.c.id).where(ATTACHMENT.c.entity == str(table.name))
            self.delete(ATTACHMENT, [row[0] for row in among(self.connection, files, ATTACHMENT.c.row_id, wanted)])
        return len(self.take_out(table, wanted))

    def take_out(self, table: Table, ids: Sequence[str]) -> list[dict[str, Any]]:
        """Remove rows that nothing belongs to; returns them without their unknowns; as `delete` otherwise."""
        names = [column.name for column in table.columns]
        entity = str(table.name)
        gone = [known(dict(zip(names, row, strict=True))) for row in self._rows(table, ids).values()]
        for row in gone:
            self._link(entity, row)
            if entity in DECIDING:
                self.unsettled.written(row["opening_id"])
        entries = [
            entry_of(entity, row["id"], self._touch(entity, row), "delete", row_text(entity, row), None, None)
            for row in gone
        ]
        if entries:
            self._ledger.removed(entries)
        self._write(entries)
        try:
            execute_many(self.connection, _removing(table), row_ids(gone, "id"))
        except IntegrityError as error:
            used = StillUsedError(f"this {said_table(table)} cannot be removed: others still stand on it")
            raise self._refused(used) from error
        return gone

    def follow(self, table: Table, rows: Iterable[Mapping[str, Any]]) -> None:
        """Insert rows that follow from what was done: they are journalled, and not told among those added."""
        told = len(self.added)
        self.insert(table, rows)
        del self.added[told:]

    def restore(self, table: Table, rows: Iterable[Mapping[str, Any]]) -> list[str]:
        """Insert rows that the journal kept when they went: under their identifiers, with a risen version.

        Parameters
        ----------
        table : Table
            A journalled one.
        rows : iterable of mapping
            As kept, with ``id`` and ``version``.
        """
        # Risen, so that whoever still shows the row from before its removal is told that it changed.
        return self._insert(table, [{**row, "version": row["version"] + 1} for row in rows], None)

    def tell(
        self,
        entity: str,
        rows: Iterable[tuple[Mapping[str, Any], Mapping[str, Any] | None, Mapping[str, Any] | None]],
    ) -> None:
        """Write down what happened to rows past the journal; no row is changed.

        Parameters
        ----------
        entity : str
            Table.
        rows : iterable of (mapping, mapping or None, mapping or None)
            The whole row, then what the journal said and what is there: of a changed row what differs, else the whole.
        """
        entries: dict[str, list[dict[str, Any]]] = {"insert": [], "update": [], "delete": []}
        for whole, before, now in rows:
            action: Action = "insert" if before is None else "delete" if now is None else "update"
            for row in (before, now):
                self._link(entity, row or {})
            texts = row_text(entity, before), row_text(entity, now)
            entries[action].append(entry_of(entity, whole["id"], self._touch(entity, whole), action, *texts, None))
        for group in entries.values():
            if group:
                self._ledger.told(group)
                self._write(group)

    def seal(self) -> None:
        """Let what all tables and the journal hold at its end be what they should hold; it is written in any case."""
        if self.number is None:
            self._number()
        self._seals = True

    def finish(self) -> None:
        """Settle what follows, write the header's last state. Without an entry there is no change set, save an undo.

        Raises
        ------
        ConflictError
            Where it would overwrite what somebody else changed and its maker had not seen.
        ValueRefusedError
            Where it would leave the project without anybody who may list people.
        """
        # PostgreSQL gives a transaction up at its first error; SQLite would go on and commit half of the change set.
        if self._failed:
            raise RuntimeError("a change set goes on after one of its edits was refused")
        if self.number is None and self.target is not None:
            # All that the step changed may stand as it was before it; it is taken back all the same, or it would stand
            # before the earlier ones for ever.
            self._number()
        if self.number is None:
            return
        settle(self)
        if self.base is not None:
            check_unseen(self.connection, self.number, self.base, (self.who, self.session.id))
        if PERSON.name in self.entities:
            check_people(self.connection)
        # Sorted, as a set has another order in every process: the same edit writes the same rows.
        links = [{"row_id": row_id, "change_set": self.number} for row_id in sorted(self._stood_on)]
        execute_many(self.connection, inserting(CHANGE_REFERENCE), links)
        further = [{"change_set": self.number, "target": target} for target in self.further]
        execute_many(self.connection, inserting(CHANGE_TARGET), further)
        query = select(PART.c.number)
        self.parts.update(row[0] for row in among(self.connection, query, PART.c.id, self._part_ids))
        said = {"summary": self.summary, "target": self.target, "entries": self._entries}
        own, chained = self._ledger.close(self.connection, {**self._header, **said}, self._before, self.further)
        closed = {"here": self.number, **said, "own_hash": own, "chain_hash": chained}
        execute_many(self.connection, _CLOSING, [{f"new_{name}": value for name, value in closed.items()}])
        if self._seals:
            seal_tables(self.connection, self.number)
            seal_chain(self.connection)

    def _insert(self, table: Table, given: Iterable[Mapping[str, Any]], origins: Origins) -> list[str]:
        rows = list(given)
        if not rows:
            return []
        # SQLAlchemy's own kind of text for names would be asked for an adapter at every row.
        entity = str(table.name)
        named = set().union(*rows)
        if wrong := named - BLANK[entity].keys():
            raise KeyError(f"{table.name} has no column {', '.join(sorted(wrong))}")
        blank = {**BLANK[entity], "version": 1}
        # What a row does not name is unknown, save for this.
        told = known(blank)
        if len(rows) > FEW:
            # Most of a survey's columns are empty for everybody: they need not be handed over row by row.
            kept = named | told.keys() | DECIDING.get(entity, frozenset()) | {"id", _BELONGS.get(entity, "id")}
            blank = {name: value for name, value in blank.items() if name in kept}
        full: list[dict[str, Any]] = [{**blank, **row} for row in asking(rows)]
        nameless = [row for row in full if row["id"] is None]
        for row, made in zip(nameless, new_ids(len(nameless)), strict=True):
            row["id"] = made
        if not all_plain(entity, full):
            rows, full = [plain(entity, row) for row in rows], [plain(entity, row) for row in full]
        ids = [row["id"] for row in full]
        openings = self._touch_all(entity, full)
        for column in LINKS[entity]:
            self._stood_on.update(row[column] for row in full if row.get(column) is not None)
        texts = new_texts(entity, told, rows, ids)
        # Column by column: ten thousand openings are forty thousand entries.
        columns = ids, openings, origins or [None] * len(ids)
        self._ledger.inserted(entity, columns, digests_of(texts))
        self._write_new(entity, columns, texts)
        self.unsettled.inserted(table, full)
        try:
            execute_many(self.connection, inserting(table, tuple(blank)), full)
        except IntegrityError as error:
            raise self._refused(refusal(table, error)) from error
        self.added += ids
        return ids

    def _rows(self, table: Table, ids: Collection[str]) -> dict[str, Sequence[Any]]:
        """Read whole rows, in the order of the table's columns."""
        found = rows_by_id(self.connection, table, list(table.columns), ids)
        return {row_id: row[1:] for row_id, row in found.items()}

    def _set(self, table: Table, names: Sequence[str], rows: Sequence[Mapping[str, Any]]) -> None:
        """Write these columns of all these rows: one statement for all, since the unchanged values are at hand."""
        if not rows:
            return
        if len(rows) > 1:
            # Two rows may exchange what must be unique, such as their marks: step aside first.
            for name in exchangeable(table, names):
                aside = update(table).where(table.c.id == bindparam("row_id")).values({name: table.c.id})
                execute_many(self.connection, aside, row_ids(rows, "row_id"))
        try:
            execute_many(
                self.connection,
                _setting(table, tuple(names)),
                [{"row_id": row["row_id"], **{f"new_{name}": row[name] for name in names}} for row in rows],
            )
        except IntegrityError as error:
            raise self._refused(refusal(table, error)) from error

    def _refused(self, error: Exception) -> Exception:
        # Rows and entries no longer agree: whoever swallows the refusal must not commit.
        self._failed = True
        return error

    def _touch(self, entity: str, row: Mapping[str, Any]) -> str | None:
        """Note what the row belongs to; returns its opening."""
        belongs = _BELONGS.get(entity)
        if belongs is None:
            return None
        if entity in _OF_OPENINGS:
            # A run may end at a junction, a waiver may speak of the whole project.
            opening_id: str | None = row.get(belongs)
            if opening_id is not None:
                self.openings.add(opening_id)
            return opening_id
        (self.parts if belongs == "number" else self._part_ids).add(row[belongs])
        return None

    def _touch_all(self, entity: str, rows: Sequence[Mapping[str, Any]]) -> Sequence[str | None]:
        """Note what new rows belong to; returns the opening of each."""
        belongs = _BELONGS.get(entity)
        held: list[Any] = [None] * len(rows) if belongs is None else [row.get(belongs) for row in rows]
        if entity in _OF_OPENINGS:
            self.openings.update(held if None not in held else filter(None, held))
            return held
        if belongs is not None:
            (self.parts if belongs == "number" else self._part_ids).update(held)
        return [None] * len(rows)

    def _link(self, entity: str, row: Mapping[str, Any]) -> None:
        """Note the rows other than openings that a row stands on."""
        for column in LINKS[entity]:
            if row.get(column) is not None:
                self._stood_on.add(row[column])

    def _number(self) -> None:
        # The writing transaction keeps other writers out: the next number is ours.
        last = last_set(self.connection)
        if self.begins is not None:
            self.begins(self.connection, last)
        before = 0 if last is None else last.number
        self._before = "" if last is None else last.chain_hash
        self.number = before + 1
        header = {
            "number": self.number,
            "uuid": new_ids(1)[0],
            "base": before if self.base is None else self.base,
            "device": self.session.device,
            "session": self.session.id,
            "at": datetime.now(UTC).isoformat(timespec="milliseconds"),
            "who": self.who,
            "verb": self.verb,
            "summary": self.summary,
            "kind": self.kind,
            "target": self.target,
            "entries": 0,
            "own_hash": None,
            "chain_hash": None,
        }
        self._header = header
        execute_many(self.connection, inserting(CHANGE_SET), [header])

    def _write_new(self, entity: str, columns: Sequence[Sequence[str | None]], texts: Sequence[bytes]) -> None:
        """Write the entries of new rows: of each its identifier, its opening and its origin, and the row as a text."""
        if self.number is None:
            self._number()
        ids, openings, origins = columns
        count, first = len(texts), self._entries
        told: dict[str, Iterable[Any]] = {
            "change_set": repeat(self.number, count),
            "sequence": range(first, first + count),
            "entity": repeat(entity, count),
            "row_id": ids,
            "opening_id": openings,
            "action": repeat("insert", count),
            "before": repeat(None, count),
            "after": [text.decode() for text in texts],
            "origin": origins,
        }
        insert_columns(self.connection, CHANGE_ENTRY, told)
        self._entries += count
        self.entities.add(entity)

    def _write(self, entries: Sequence[dict[str, Any]]) -> None:
        if not entries:
            return
        if self.number is None:
            self._number()
        for sequence, entry in enumerate(entries, self._entries):
            entry["change_set"] = self.number
            entry["sequence"] = sequence
        execute_many(self.connection, inserting(CHANGE_ENTRY), entries)
        self._entries += len(entries)
        self.entities.add(entries[0]["entity"])
