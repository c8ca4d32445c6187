"""Reading the journal: the steps that were taken, which are in force, and where a fact came from."""

import json
from collections.abc import Callable, Collection, Iterable, Mapping
from contextlib import suppress
from dataclasses import dataclass, fields
from decimal import Decimal
from typing import Any, Final

from sqlalchemy import ColumnElement, Connection, FromClause, Subquery, func, select, true, union_all

from hwsched.model.bulk import among
from hwsched.model.errors import DamagedProjectError
from hwsched.model.tables import CHANGE_ENTRY, CHANGE_SET, CHANGE_TARGET, EXACT
from hwsched.model.time_zone import read_zone, told_in


@dataclass(frozen=True, slots=True)
class ChangeSetInfo:
    """One step."""

    number: int
    when: str
    """ISO 8601, in the project's zone."""
    who: str
    verb: str
    summary: str
    kind: str
    """edit, undo or redo."""
    target: int | None
    """For undo and redo: the edit that they speak of; of several, the first."""
    undone: bool
    """Whether it is an edit that is taken back at present."""
    rows: int
    uuid: str
    """What it is known by in every copy of the project."""
    base: int | None
    """The newest change set that its maker had seen; None for one written before that was kept."""
    device: str | None
    """Name of the machine."""
    session: str | None
    """One opening of the project by one process or window."""


@dataclass(frozen=True, slots=True)
class Entry:
    """What happened to one row in one step."""

    change_set: int
    sequence: int
    entity: str
    row_id: str
    action: str
    """insert, update or delete."""
    before: Mapping[str, Any] | None
    """Of an update only what differs; of a removal the whole row without its unknowns."""
    after: Mapping[str, Any] | None
    """Of an update only what differs; of an insertion the whole row without its unknowns."""
    origin: str | None
    """Where the values came from, such as a file's sheet and row."""


@dataclass(frozen=True, slots=True)
class RowChange(Entry):
    """What happened to one row in one step, with who did it and when."""

    when: str
    who: str
    verb: str
    kind: str
    """edit, undo or redo."""


@dataclass(frozen=True, slots=True)
class Standing:
    """How an edit stands at present."""

    edit: int
    who: str
    """Whose edit it is."""
    verb: str
    summary: str
    last: int
    """The change set that brought it into force or took it back last: itself, an undo or a redo."""
    in_force: bool


_ENTRY: Final = tuple(CHANGE_ENTRY.c[field.name] for field in fields(Entry))


def turns(condition: Callable[[Any, Any], ColumnElement[bool]], *outer: FromClause) -> Subquery:
    """Return undo and redo, a row for each edit that they speak of: number, kind, who, target.

    Parameters
    ----------
    condition : callable
        Of a row's number and target: which are wanted. It stands in both halves, so that each goes by its index.
    *outer : FromClause
        Tables of the query around, which the condition speaks of.
    """
    heads, others = CHANGE_SET.alias(), CHANGE_SET.alias()
    number, target = heads.c.number, heads.c.target
    first = select(number, heads.c.kind, heads.c.who, target).where(target.is_not(None), condition(number, target))
    number, target = CHANGE_TARGET.c.change_set, CHANGE_TARGET.c.target
    further = (
        select(others.c.number, others.c.kind, others.c.who, target)
        .join_from(CHANGE_TARGET, others, others.c.number == number)
        .where(condition(number, target))
    )
    if outer:
        first, further = first.correlate(*outer), further.correlate(*outer)
    return union_all(first, further).subquery()


def history(connection: Connection) -> list[ChangeSetInfo]:
    """Return all steps, oldest first."""
    rows = connection.execute(select(CHANGE_SET).order_by(CHANGE_SET.c.number)).all()
    # In the order of their numbers, so that of undo, redo and undo again the last one stands.
    every = turns(lambda _number, _target: true())
    last = {row.target: row.kind for row in connection.execute(select(every).order_by(every.c.number))}
    zone = read_zone(connection)
    return [
        ChangeSetInfo(
            row.number,
            told_in(zone, row.at),
            row.who,
            row.verb,
            row.summary,
            row.kind,
            row.target,
            last.get(row.number) == "undo",
            row.entries,
            row.uuid,
            row.base,
            row.device,
            row.session,
        )
        for row in rows
    ]


_NEWEST: Final = select(func.max(CHANGE_SET.c.number))


def newest(connection: Connection) -> int:
    """Return the number of the newest change set; 0 in a new project."""
    return int(connection.execute(_NEWEST).scalar() or 0)


def standing(connection: Connection, number: int) -> Standing | None:
    """Tell how an edit stands; None for a number that is no edit's."""
    header = connection.execute(
        select(CHANGE_SET.c.who, CHANGE_SET.c.verb, CHANGE_SET.c.summary)
        .where(CHANGE_SET.c.number == number, CHANGE_SET.c.kind == "edit")
    ).first()  # fmt: skip
    if header is None:
        return None
    of_it = turns(lambda _, target: target == number)
    turn = connection.execute(
        select(of_it.c.number, of_it.c.kind).order_by(of_it.c.number.desc()).limit(1)
    ).first()  # fmt: skip
    if turn is None:
        return Standing(number, *header, number, True)
    return Standing(number, *header, turn.number, turn.kind == "redo")


def spoken_of(connection: Connection, number: int) -> list[int]:
    """Return the edits of which a change set speaks, ascending: those that it took back or did again, else itself."""
    spoken = turns(lambda each, _: each == number)
    return sorted(row.target for row in connection.execute(select(spoken))) or [number]


def entries_of(connection: Connection, number: int) -> list[Entry]:
    """Return the entries of one change set, in the order in which they were made."""
    query = select(*_ENTRY).where(CHANGE_ENTRY.c.change_set == number).order_by(CHANGE_ENTRY.c.sequence)
    return [_entry(row) for row in connection.execute(query).all()]


def entries_after(
    connection: Connection, number: int, column: ColumnElement[Any], ids: Collection[str], before: int | None = None
) -> list[Entry]:
    """Return entries of change sets after one, by the row or the opening that they are of.

    Parameters
    ----------
    connection : Connection
        In a transaction.
    number : int
        After which change set.
    column : ColumnElement
        ``CHANGE_ENTRY.c.row_id`` or ``CHANGE_ENTRY.c.opening_id``: both are indexed together with the change set.
    ids : collection of str
        Identifiers that are looked for.
    before : int, optional
        Before which change set; to the newest when left out.
    """
    query = select(*_ENTRY).where(CHANGE_ENTRY.c.change_set > number)
    if before is not None:
        query = query.where(CHANGE_ENTRY.c.change_set < before)
    return [_entry(row) for row in among(connection, query, column, ids)]


def changes_of(connection: Connection, row_id: str, entity: str | None = None) -> list[RowChange]:
    """Return all that happened to one row, oldest first: who, when, what, and from which file, sheet and row.

    Parameters
    ----------
    connection : Connection
        In a transaction.
    row_id : str
        Identifier of a row of any table.
    entity : str, optional
        Its table: an opening, its first lock point and the fit that is stored for it share an identifier.
    """
    found = _changes(connection, CHANGE_ENTRY.c.row_id == row_id)
    return [each for each in found if entity in (None, each.entity)]


def changes_of_opening(connection: Connection, opening_id: str) -> list[RowChange]:
    """Return all that happened to an opening and to what belongs to it, oldest first."""
    return _changes(connection, CHANGE_ENTRY.c.opening_id == opening_id)


def source_of(connection: Connection, row_id: str, column: str) -> RowChange | None:
    """Return the change that gave a fact its present value; None where it was never known.

    Parameters
    ----------
    connection : Connection
        In a transaction.
    row_id : str
        Of the opening, leaf, item or part.
    column : str
        Name of the fact.
    """
    found = None
    for change in changes_of(connection, row_id):
        if change.after is not None and column in change.after:
            found = change
    return found


def first_written(connection: Connection, entity: str, ids: Collection[str]) -> dict[str, tuple[int, int]]:
    """Return in which step, and at which place in it, rows of a table came into the project; by identifier."""
    query = select(CHANGE_ENTRY.c.row_id, CHANGE_ENTRY.c.change_set, CHANGE_ENTRY.c.sequence).where(
        CHANGE_ENTRY.c.entity == entity, CHANGE_ENTRY.c.action == "insert"
    )
    found: dict[str, tuple[int, int]] = {}
    for row_id, number, sequence in among(connection, query, CHANGE_ENTRY.c.row_id, ids):
        found[row_id] = min(found.get(row_id, (number, sequence)), (number, sequence))
    return found


def changes_of_rows(connection: Connection, rows: Collection[str]) -> list[RowChange]:
    """Return all that happened to rows, oldest first for each of them; as `changes_of`, of many at once."""
    return _row_changes(connection, among(connection, _CHANGES, CHANGE_ENTRY.c.row_id, rows))


def _changes(connection: Connection, condition: ColumnElement[bool]) -> list[RowChange]:
    return _row_changes(connection, connection.execute(_CHANGES.where(condition)).all())


_CHANGES: Final = (
    select(*_ENTRY, CHANGE_SET.c.at, CHANGE_SET.c.who, CHANGE_SET.c.verb, CHANGE_SET.c.kind)
    .join(CHANGE_SET, CHANGE_ENTRY.c.change_set == CHANGE_SET.c.number)
    .order_by(CHANGE_ENTRY.c.change_set, CHANGE_ENTRY.c.sequence)
)


def _row_changes(connection: Connection, rows: Iterable[Any]) -> list[RowChange]:
    zone = read_zone(connection)
    return [
        RowChange(
            number, sequence, entity, row_id, action, _plain(entity, before), _plain(entity, after), origin,
            told_in(zone, at), who, verb, kind,
        )
        for (
            number, sequence, entity, row_id, action, before, after, origin, at, who, verb, kind,
        ) in rows
    ]  # fmt: skip


def _plain(entity: str, text: str | None) -> Mapping[str, Any] | None:
    if text is None:
        return None
    values: Any = None
    with suppress(ValueError, RecursionError):
        values = json.loads(text)
    if not isinstance(values, dict):
        raise DamagedProjectError(
            f"the project is damaged: in table change_entry, an entry of {entity} holds {text[:40]!r} where JSON of a "
            "row belongs; take its last good copy"
        )
    for name in EXACT.get(entity, ()):
        # An earlier schema held floats, which are taken by their shortest text.
        if values.get(name) is not None:
            values[name] = Decimal(str(values[name]))
    return values


def _entry(row: Any) -> Entry:
    change_set, sequence, entity, row_id, action, before, after, origin = row
    return Entry(change_set, sequence, entity, row_id, action, _plain(entity, before), _plain(entity, after), origin)
