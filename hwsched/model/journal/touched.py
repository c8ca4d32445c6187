"""What change sets touched, read from the journal: for views that follow what others did, and work that checks itself.

A `Change` knows the same of itself while it is made; here it is asked of steps that somebody else may have made.
"""

import json
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any, Final

from sqlalchemy import Connection, func, select

from hwsched.model.bulk import among
from hwsched.model.tables import CHANGE_ENTRY, CHANGE_SET, KIT_CONTENT, PART


@dataclass(frozen=True, slots=True)
class Touched:
    """What one change set touched."""

    number: int
    openings: frozenset[str]
    """Identifiers."""
    parts: frozenset[str]
    """Catalogue numbers."""
    entities: frozenset[str]
    """Tables."""
    who: str = ""
    summary: str = ""
    session: str | None = None
    """In which opening of the project it was made; None where that was not kept."""


CHANNEL: Final = "hwsched_change_set"
"""On which a server tells everybody who listens that a change set was written."""


def tell(connection: Connection, number: int) -> None:
    """Have a server tell of a change set once it is committed; a file tells by itself."""
    if connection.dialect.name == "postgresql":
        # PostgreSQL sends it on with the commit, and not at all where the transaction is rolled back.
        connection.execute(select(func.pg_notify(CHANNEL, str(number))))


_PARTS: Final = (PART.name, KIT_CONTENT.name)


def touched_since(connection: Connection, number: int) -> list[Touched]:
    """Return what each later change set touched, oldest first.

    Parameters
    ----------
    connection : Connection
        In a transaction.
    number : int
        The last change set that is known already.
    """
    entry = CHANGE_ENTRY.c
    openings: dict[int, set[str]] = {}
    entities: dict[int, set[str]] = {}
    query = select(entry.change_set, entry.entity, entry.opening_id).where(entry.change_set > number).distinct()
    for step, entity, opening_id in connection.execute(query):
        entities.setdefault(step, set()).add(entity)
        held = openings.setdefault(step, set())
        if opening_id is not None:
            held.add(opening_id)
    # A row that went over to another opening stands in the journal under the one that it came from.
    moved = select(entry.change_set, entry.after).where(
        entry.change_set > number, entry.action == "update", entry.after.contains('"opening_id"', autoescape=True)
    )
    for step, after in connection.execute(moved):
        other = json.loads(after).get("opening_id")
        if other is not None:
            openings[step].add(other)
    parts = _parts_since(connection, number) if any(held & set(_PARTS) for held in entities.values()) else {}
    header = CHANGE_SET.c
    made = select(header.number, header.who, header.summary, header.session).where(header.number > number)
    return [
        Touched(
            row.number,
            frozenset(openings.get(row.number, ())),
            frozenset(parts.get(row.number, ())),
            frozenset(entities.get(row.number, ())),
            row.who,
            row.summary,
            row.session,
        )
        for row in connection.execute(made.order_by(header.number))
    ]


def _parts_since(connection: Connection, number: int) -> dict[int, set[str]]:
    entry = CHANGE_ENTRY.c
    query = select(entry.change_set, entry.entity, entry.row_id, entry.before, entry.after).where(
        entry.change_set > number, entry.entity.in_(_PARTS)
    )
    rows = connection.execute(query).all()
    # Of a row that is gone the journal kept the whole, when it came or when it went.
    kits = [row for row in rows if row.entity == KIT_CONTENT.name]
    part_of = _held(kits, "part_id")
    part_of |= dict(
        among(
            connection,
            select(KIT_CONTENT.c.id, KIT_CONTENT.c.part_id),
            KIT_CONTENT.c.id,
            {row.row_id for row in kits} - part_of.keys(),
        )
    )
    numbers = _held([row for row in rows if row.entity == PART.name], "number")
    ids = {part_of.get(row.row_id, row.row_id) for row in rows} - numbers.keys()
    numbers |= dict(among(connection, select(PART.c.id, PART.c.number), PART.c.id, ids))
    found: dict[int, set[str]] = {}
    for row in rows:
        name = numbers.get(part_of.get(row.row_id, row.row_id))
        if name is not None:
            found.setdefault(row.change_set, set()).add(name)
    return found


def _held(rows: Iterable[Any], column: str) -> dict[str, str]:
    """Return what a column held by row, as far as the journal's entries tell."""
    found: dict[str, str] = {}
    for row in rows:
        for text in (row.before, row.after):
            value = json.loads(text).get(column) if text is not None else None
            if value is not None:
                found[row.row_id] = value
    return found
