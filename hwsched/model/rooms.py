"""Rooms of which every door is said to be not on an egress path: one of them may be the only way out.

A room is a name on a level; openings are joined by the names on their two sides. Whether that is a finding is said by a
rule.
"""

import json
from collections.abc import Collection, Iterable
from typing import Any, Final

from sqlalchemy import Connection, Select, select

from hwsched.model.bulk import among
from hwsched.model.tables import CHANGE_ENTRY, IN_USE, OPENING_TABLE
from hwsched.values.facts import Opening

SIDES: Final = ("room_to", "room_from")
_NO_ROOM: Final = ("cabinet",)
"""Forms behind which nobody is."""
DECIDING: Final = frozenset({"level_id", "egress", "form", "retired", *SIDES})
"""Columns of an opening that decide on the rooms of others."""
_DOORS: Final[Select[Any]] = select(
    *(OPENING_TABLE.c[name] for name in ("id", "level_id", "form", "egress", *SIDES))
).where(IN_USE)


def closed_rooms(
    connection: Connection, openings: Collection[tuple[Opening, str | None]]
) -> dict[str, tuple[str, ...]]:
    """Return the sides of openings on which a room has no door on an egress path, as far as the survey says of each.

    Parameters
    ----------
    connection : Connection
        In a transaction.
    openings : collection of (Opening, level)
        That are asked about, each with the identifier of its level.
    """
    asked = {
        opening.id: level
        for opening, level in openings
        if opening.egress == "none" and opening.form not in _NO_ROOM and (opening.room_to or opening.room_from)
    }
    return _closed(_doors(connection, set(asked.values())), asked) if asked else {}


def closed_rooms_on(connection: Connection, levels: Collection[str | None]) -> dict[str, tuple[str, ...]]:
    """Return the same for every opening on some levels that has such a side."""
    return _closed(_doors(connection, levels))


def in_rooms_touched_since(connection: Connection, number: int) -> set[str]:
    """Return the openings on the levels where the journal has touched, since a change set, what decides on rooms."""
    entry = CHANGE_ENTRY.c
    query = select(entry.row_id, entry.before, entry.after).where(
        entry.change_set > number, entry.entity == OPENING_TABLE.name
    )
    touched: set[str] = set()
    levels: set[str | None] = set()
    for row_id, *texts in connection.execute(query):
        states = [json.loads(text) for text in texts if text is not None]
        if any(not DECIDING.isdisjoint(state) for state in states):
            touched.add(row_id)
            levels.update(state["level_id"] for state in states if "level_id" in state)
    if not touched:
        return set()
    # Those that it left, and those on which it stands now.
    stands = select(OPENING_TABLE.c.id, OPENING_TABLE.c.level_id)
    levels.update(row[1] for row in among(connection, stands, OPENING_TABLE.c.id, touched))
    return {row[0] for row in _doors(connection, levels)}


def _doors(connection: Connection, levels: Collection[str | None]) -> Iterable[Any]:
    yield from among(connection, _DOORS, OPENING_TABLE.c.level_id, {each for each in levels if each is not None})
    if None in levels:
        yield from connection.execute(_DOORS.where(OPENING_TABLE.c.level_id.is_(None)))


def _closed(doors: Iterable[Any], ids: Collection[str] | None = None) -> dict[str, tuple[str, ...]]:
    """Return the sides of these openings, of all where none are named, on which every door is on no egress path."""
    ways_out: set[tuple[str | None, str]] = set()
    asked: list[tuple[str, list[tuple[str, tuple[str | None, str]]]]] = []
    for opening_id, level, form, egress, *names in doors:
        if form in _NO_ROOM or (egress == "none" and ids is not None and opening_id not in ids):
            continue
        rooms = [(side, (level, name.strip().casefold())) for side, name in zip(SIDES, names, strict=True) if name]
        if egress == "none":
            if rooms:
                asked.append((opening_id, rooms))
        else:
            # Unknown is no word: of a room with such a door nobody has said that there is no way out.
            ways_out.update([room for _, room in rooms])
    found = {opening_id: tuple([side for side, room in rooms if room not in ways_out]) for opening_id, rooms in asked}
    return {opening_id: sides for opening_id, sides in found.items() if sides}
