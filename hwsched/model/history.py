"""Reading the journal: the steps that were taken, and where a fact came from."""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from sqlalchemy import Connection, select

from hwsched.model.tables import CHANGE_ENTRY, CHANGE_SET


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
    before: Mapping[str, Any] | None
    """Of an update only what differs; of a removal the whole row without its unknowns."""
    after: Mapping[str, Any] | None
    origin: str | None


@dataclass(frozen=True, slots=True)
class Stack:
    """Which edits are in force, and which can be done again."""

    done: tuple[int, ...]
    """Edits in force, oldest first."""
    undone: tuple[int, ...]
    """Edits that redo brings back, the next one last."""
    off: frozenset[int]
    """All edits that are taken back, those included that can no longer be done again."""


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
    done: list[int] = []
    undone: list[int] = []
    off: set[int] = set()
    query = select(CHANGE_SET.c.number, CHANGE_SET.c.kind, CHANGE_SET.c.target).order_by(CHANGE_SET.c.number)
    for number, kind, target in connection.execute(query):
        if kind == "edit":
            done.append(number)
            undone.clear()
        elif kind == "undo":
            done.remove(target)
            undone.append(target)
            off.add(target)
        else:
            undone.remove(target)
            done.append(target)
            off.discard(target)
    return Stack(tuple(done), tuple(undone), frozenset(off))


def entries_of(connection: Connection, number: int) -> list[Entry]:
    """Return the entries of one change set, in the order in which they were made."""
    query = select(CHANGE_ENTRY).where(CHANGE_ENTRY.c.change_set == number).order_by(CHANGE_ENTRY.c.sequence)
    return [_entry(row) for row in connection.execute(query)]


def changes_of(connection: Connection, row_id: str) -> list[Entry]:
    """Return all that happened to one row, oldest first; the origins say where its facts came from."""
    query = (
        select(CHANGE_ENTRY)
        .where(CHANGE_ENTRY.c.row_id == row_id)
        .order_by(CHANGE_ENTRY.c.change_set, CHANGE_ENTRY.c.sequence)
    )
    return [_entry(row) for row in connection.execute(query)]


def _entry(row: Any) -> Entry:
    return Entry(
        row.change_set,
        row.sequence,
        row.entity,
        row.row_id,
        row.action,
        None if row.before is None else json.loads(row.before),
        None if row.after is None else json.loads(row.after),
        row.origin,
    )
