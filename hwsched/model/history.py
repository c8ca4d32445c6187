"""Reading the journal: the steps that were taken, which are in force, and where a fact came from."""

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields
from decimal import Decimal
from typing import Any, Final

from sqlalchemy import ColumnElement, Connection, select

from hwsched.model.tables import CHANGE_ENTRY, CHANGE_SET, EXACT


@dataclass(frozen=True, slots=True)
class ChangeSetInfo:
    """One step."""

    number: int
    when: str
    who: str
    verb: str
    summary: str
    kind: str
    """edit, undo or redo."""
    target: int | None
    """For undo and redo: the edit that they speak of."""
    undone: bool
    """Whether it is an edit that is taken back at present."""
    rows: int


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
class Stack:
    """Which edits are in force, and which can be done again."""

    done: tuple[int, ...]
    """Edits in force in the order in which they came into force; undo takes the last."""
    undone: tuple[int, ...]
    """Edits that redo brings back, the next one last."""
    off: frozenset[int]
    """All edits that are taken back, those included that can no longer be done again."""
    last: Mapping[int, int]
    """Per edit, the change set that brought it into force or took it back last: itself, an undo or a redo."""


_ENTRY: Final = tuple(CHANGE_ENTRY.c[field.name] for field in fields(Entry))


def history(connection: Connection) -> list[ChangeSetInfo]:
    """Return all steps, oldest first."""
    off = stack(connection).off
    return [
        ChangeSetInfo(
            row.number, row.at, row.who, row.verb, row.summary, row.kind, row.target, row.number in off, row.entries
        )
        for row in connection.execute(select(CHANGE_SET).order_by(CHANGE_SET.c.number))
    ]


def stack(connection: Connection) -> Stack:
    """Work out from the headers which edits are in force; a new edit ends what could be done again."""
    done: dict[int, None] = {}
    undone: dict[int, None] = {}
    off: set[int] = set()
    last: dict[int, int] = {}
    query = select(CHANGE_SET.c.number, CHANGE_SET.c.kind, CHANGE_SET.c.target).order_by(CHANGE_SET.c.number)
    for number, kind, target in connection.execute(query):
        if kind == "edit":
            done[number] = None
            undone.clear()
            last[number] = number
            continue
        last[target] = number
        if kind == "undo":
            del done[target]
            undone[target] = None
            off.add(target)
        else:
            del undone[target]
            done[target] = None
            off.discard(target)
    return Stack(tuple(done), tuple(undone), frozenset(off), last)


def entries_of(connection: Connection, number: int) -> list[Entry]:
    """Return the entries of one change set, in the order in which they were made."""
    query = select(*_ENTRY).where(CHANGE_ENTRY.c.change_set == number).order_by(CHANGE_ENTRY.c.sequence)
    return [
        Entry(change_set, sequence, entity, row_id, action, _plain(entity, before), _plain(entity, after), origin)
        for change_set, sequence, entity, row_id, action, before, after, origin in connection.execute(query).all()
    ]


def entries_among(connection: Connection, numbers: Iterable[int]) -> Iterable[Entry]:
    """Return the entries of several change sets, one set after the other."""
    for number in numbers:
        yield from entries_of(connection, number)


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


def _changes(connection: Connection, condition: ColumnElement[bool]) -> list[RowChange]:
    query = (
        select(*_ENTRY, CHANGE_SET.c.at, CHANGE_SET.c.who, CHANGE_SET.c.verb, CHANGE_SET.c.kind)
        .join(CHANGE_SET, CHANGE_ENTRY.c.change_set == CHANGE_SET.c.number)
        .where(condition)
        .order_by(CHANGE_ENTRY.c.change_set, CHANGE_ENTRY.c.sequence)
    )
    return [
        RowChange(
            number, sequence, entity, row_id, action, _plain(entity, before), _plain(entity, after), origin,
            at, who, verb, kind,
        )
        for (
            number, sequence, entity, row_id, action, before, after, origin, at, who, verb, kind,
        ) in connection.execute(query).all()
    ]  # fmt: skip


def _plain(entity: str, text: str | None) -> Mapping[str, Any] | None:
    if text is None:
        return None
    values: dict[str, Any] = json.loads(text)
    for name in EXACT.get(entity, ()):
        # An earlier schema held floats, which are taken by their shortest text.
        if values.get(name) is not None:
            values[name] = Decimal(str(values[name]))
    return values
