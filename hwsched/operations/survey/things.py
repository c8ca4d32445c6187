"""What a person can name that something is attached to: an opening by its mark, a part by its number, and so on."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from typing import Final

from sqlalchemy import Connection, Table, select

from hwsched.language import to_phrase
from hwsched.model.bulk import among
from hwsched.model.errors import MissingRowError
from hwsched.model.project import Project
from hwsched.model.queries import points_of_opening
from hwsched.model.tables import (
    ASSIGNED_PART,
    HARDWARE_SET,
    ITEM_TABLE,
    JOURNALLED,
    LEAF_TABLE,
    LOCK_POINT,
    OPENING_TABLE,
    PART,
    SUPPLY_TABLE,
)
from hwsched.operations.opening.named_openings import openings_of_marks, row_of


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of thing that a person names by one word and its name."""

    word: str
    table: Table
    name: str
    """Column of its name."""


KINDS: Final[tuple[Kind, ...]] = (
    Kind("opening", OPENING_TABLE, "mark"),
    Kind("part", PART, "number"),
    Kind("supply", SUPPLY_TABLE, "name"),
    Kind("set", HARDWARE_SET, "name"),
)
"""Things with a name of their own; those of an opening (a leaf, an existing item) are named by its mark and a word."""
OF_OPENINGS: Final = {
    LEAF_TABLE.name: to_phrase("leaf"),
    ITEM_TABLE.name: to_phrase("existing item"),
    LOCK_POINT.name: to_phrase("lock point"),
    ASSIGNED_PART.name: to_phrase("piece"),
}
_POINT: Final = "point:"


@dataclass(frozen=True, slots=True)
class Thing:
    """Something of the project."""

    entity: str
    """Name of its table."""
    row_id: str


def thing_named(project: Project, words: Sequence[str]) -> Thing:
    """Find what a person names.

    Parameters
    ----------
    project : Project
        Open project.
    words : sequence of str
        A mark; a mark and what of the opening: ``leaf``, ``item:2``, ``point:2``; or a kind and a name: ``part C-1``.

    Raises
    ------
    MissingRowError
        Where there is no such thing; says what can be named.
    """
    kinds = {kind.word: kind for kind in KINDS}
    if len(words) == 2 and words[0] not in kinds:
        if words[1].startswith(_POINT):
            return _point(project, words[0], words[1].removeprefix(_POINT))
        return Thing(*row_of(project, words[0], words[1]))
    if len(words) not in (1, 2):
        named = ", ".join(f"{kind.word} {kind.name.upper()}" for kind in KINDS)
        raise MissingRowError(
            f"'{' '.join(words)}' names nothing; accepted: MARK, MARK leaf, MARK item:2, MARK point:2, {named}"
        )
    kind = kinds[words[0]] if len(words) == 2 else kinds["opening"]
    name = words[-1]
    with project.reading() as connection:
        found = connection.execute(select(kind.table.c.id).where(kind.table.c[kind.name] == name)).scalar()
    if found is None:
        raise MissingRowError(f"no {kind.word} has the {kind.name} {name}")
    return Thing(str(kind.table.name), str(found))


def _point(project: Project, mark: str, number: str) -> Thing:
    opening = openings_of_marks(project, [mark])[0]
    with project.reading() as connection:
        points = {str(point.number): point for point in points_of_opening(connection, opening)}
    if number not in points:
        raise MissingRowError(f"{mark} has no lock point {number}; it has {', '.join(points)}")
    return Thing(str(LOCK_POINT.name), points[number].id)


def names_of(connection: Connection, things: Collection[Thing]) -> dict[Thing, str]:
    """Return what people call things: ``M016``, ``part C-1``, ``M016 leaf``; those that are gone are left out."""
    found: dict[Thing, str] = {}
    for kind in KINDS:
        entity = str(kind.table.name)
        ids = [thing.row_id for thing in things if thing.entity == entity]
        query = select(kind.table.c.id, kind.table.c[kind.name])
        prefix = "" if kind.table is OPENING_TABLE else f"{kind.word} "
        found.update(
            (Thing(entity, row[0]), f"{prefix}{row[1]}") for row in among(connection, query, kind.table.c.id, ids)
        )
    for entity, word in OF_OPENINGS.items():
        table = JOURNALLED[entity]
        ids = [thing.row_id for thing in things if thing.entity == entity]
        query = select(table.c.id, OPENING_TABLE.c.mark).join(OPENING_TABLE, table.c.opening_id == OPENING_TABLE.c.id)
        for row_id, mark in among(connection, query, table.c.id, ids):
            found[Thing(entity, row_id)] = f"{mark} {word}"
    return found
