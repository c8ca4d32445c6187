"""The rows of lock points follow from leaves and existing items by themselves, at the end of every change set.

Here belongs bringing the rows in step; which locks are points is said in `hwsched.values.lock_points`. An undo or redo
brings back the rows as they were; where that would leave them out of step with leaves and items, it is refused.
"""

from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from collections.abc import Set as AbstractSet
from typing import Any, Final, Protocol

from sqlalchemy import ColumnElement, Connection, Table, or_, select
from sqlalchemy.sql.base import ReadOnlyColumnCollection

from hwsched.model.bulk import among
from hwsched.model.errors import MissingRowError, NotUndoableError
from hwsched.model.tables import ASSIGNED_PART, ITEM_TABLE, LEAF_TABLE, LOCK_POINT, OPENING_TABLE
from hwsched.values.facts import Item, Leaf
from hwsched.values.lock_points import LOCK_KINDS, lock_items, lock_points

_DECIDING: Final = frozenset({"leaf", "existing_item"})
"""Tables whose rows decide which places of an opening are locked."""

Rows = dict[str, list[tuple[str, str | None]]]
"""By opening: identifier and existing lock of each of its lock points."""


class Settled(Protocol):
    """A change set, as far as its lock points are settled: it asks for that itself, so it is not imported here."""

    target: int | None

    @property
    def connection(self) -> Connection:
        """Its transaction."""

    @property
    def kind(self) -> str:
        """What it is on the stack of steps: edit, undo, redo."""

    @property
    def openings(self) -> AbstractSet[str]:
        """Identifiers of the openings that it touched."""

    @property
    def entities(self) -> AbstractSet[str]:
        """Names of the tables that it touched."""

    @property
    def added(self) -> Sequence[str]:
        """Identifiers of the rows that it inserted."""

    def update(self, table: Table, edits: Iterable[tuple[str, Mapping[str, Any]]], /) -> list[str]:
        """Set columns of rows."""

    def delete(self, table: Table, ids: Iterable[str], /) -> object:
        """Delete rows."""

    def follow(self, table: Table, rows: Iterable[Mapping[str, Any]], /) -> object:
        """Insert rows that follow from others."""


def read_points(connection: Connection, ids: Collection[str] | None = None) -> Rows:
    """Return the rows of lock points by opening, in no order."""
    found: Rows = defaultdict(list)
    query = select(LOCK_POINT.c.opening_id, LOCK_POINT.c.id, LOCK_POINT.c.item_id)
    for opening_id, point_id, item_id in among(connection, query, LOCK_POINT.c.opening_id, ids):
        found[opening_id].append((point_id, item_id))
    return found


def points_to_openings(connection: Connection, points: Collection[str]) -> dict[str, str]:
    """Return the opening of each of these lock points; raises MissingRowError for one that is not there."""
    query = select(LOCK_POINT.c.id, LOCK_POINT.c.opening_id)
    found = {row[0]: row[1] for row in among(connection, query, LOCK_POINT.c.id, points)}
    if len(found) != len(points):
        raise MissingRowError("a place of an opening that was locked is not in the project any more")
    return found


def name_of_point(connection: Connection, point_id: str) -> str:
    """Return the name of a lock point; empty where its opening has no other, or where it is gone."""
    opening_id = connection.execute(select(LOCK_POINT.c.opening_id).where(LOCK_POINT.c.id == point_id)).scalar()
    if opening_id is None:
        return ""
    rows = read_points(connection, [opening_id])
    for _, leaves, items in _deciding(connection, [opening_id]):
        for point in lock_points(leaves, items, rows[opening_id]):
            if point.id == point_id:
                return point.name
    return ""


def settle(change: Settled) -> None:
    """Bring the lock points of the openings that a change set touched in step with their leaves and items.

    Parameters
    ----------
    change : Change
        About to be finished.

    Raises
    ------
    NotUndoableError
        For an undo or redo that would leave them out of step: a later step decides on the same locks.
    """
    # An opening that is new, or back, has its first point to get; an edit of its own row changes nothing.
    if not change.entities & _DECIDING and change.openings.isdisjoint(change.added):
        return
    held = read_points(change.connection, change.openings)
    wrong: list[tuple[str, list[tuple[str, str | None]], Sequence[str | None]]] = []
    for opening_id, leaves, items in _deciding(change.connection, change.openings):
        # An opening without a lock has one place all the same.
        wanted: Sequence[str | None] = [item.id for item in lock_items(leaves, items)] or (None,)
        rows = held.get(opening_id, [])
        if len(rows) != len(wanted) or {item for _, item in rows} != set(wanted):
            wrong.append((opening_id, rows, wanted))
    if not wrong:
        return
    if change.kind != "edit":
        raise NotUndoableError(
            f"step {change.target} cannot be taken back or done again alone: later steps decide which places of the "
            "opening are locked"
        )
    _bring_in_step(change, wrong)


def _bring_in_step(
    change: Settled, wrong: list[tuple[str, list[tuple[str, str | None]], Sequence[str | None]]]
) -> None:
    moved: list[tuple[str, dict[str, str | None]]] = []
    gone: list[str] = []
    fresh: list[dict[str, str | None]] = []
    for opening_id, rows, wanted in wrong:
        known = {item for _, item in rows}
        open_ = [item for item in wanted if item not in known]
        # A point whose lock went takes a lock that has none yet: what was chosen for it by hand stays.
        free = sorted((row for row in rows if row[1] not in wanted), key=lambda row: (row[0] != opening_id, row[0]))
        moved += [(row[0], {"item_id": item}) for row, item in zip(free, open_, strict=False)]
        gone += [row[0] for row in free[len(open_) :]]
        rest = open_[len(free) :]
        first = not rows
        fresh += [
            {"id": opening_id if first and place == 0 else None, "opening_id": opening_id, "item_id": item}
            for place, item in enumerate(rest)
        ]
    change.update(LOCK_POINT, moved)
    query = select(ASSIGNED_PART.c.id)
    kept = [row[0] for row in among(change.connection, query, ASSIGNED_PART.c.lock_point_id, gone)]
    # Pieces are there though nothing is locked here any more.
    change.update(ASSIGNED_PART, [(each, {"lock_point_id": None}) for each in kept])
    change.delete(LOCK_POINT, gone)
    change.follow(LOCK_POINT, fresh)


def is_lock_row(columns: ReadOnlyColumnCollection[str, Any]) -> ColumnElement[bool]:
    """Say for the database what `hwsched.values.lock_points.is_lock` tells of an item: a test holds them together."""
    return or_(columns["kind"].in_(LOCK_KINDS), columns["lock_form"].is_not(None))


def _deciding(connection: Connection, ids: Collection[str]) -> Iterator[tuple[str, list[Leaf], list[Item]]]:
    """Yield each opening that is there with what of its leaves and locks decides on lock points, in order."""
    leaves: dict[str, list[tuple[int, Leaf]]] = defaultdict(list)
    items: dict[str, list[tuple[int, Item]]] = defaultdict(list)
    of_leaf = select(LEAF_TABLE.c.opening_id, LEAF_TABLE.c.ordinal, LEAF_TABLE.c.id, LEAF_TABLE.c.position)
    for opening_id, ordinal, leaf_id, position in among(connection, of_leaf, LEAF_TABLE.c.opening_id, ids):
        leaves[opening_id].append((ordinal, Leaf(leaf_id, position)))
    names = ("opening_id", "ordinal", "id", "kind", "leaf", "disposition", "lock_form", "cylinder_height_mm")
    columns = [ITEM_TABLE.c[name] for name in names]
    locks = select(*columns).where(is_lock_row(ITEM_TABLE.c))
    for opening_id, ordinal, item_id, kind, leaf, disposition, form, height in among(
        connection, locks, ITEM_TABLE.c.opening_id, ids
    ):
        item = Item(item_id, kind, leaf, disposition=disposition, lock_form=form, cylinder_height_mm=height)
        items[opening_id].append((ordinal, item))
    for (opening_id,) in among(connection, select(OPENING_TABLE.c.id), OPENING_TABLE.c.id, ids):
        yield opening_id, _ordered(leaves.get(opening_id, ())), _ordered(items.get(opening_id, ()))


def _ordered(rows: Collection[tuple[int, Any]]) -> list[Any]:
    return [row for _, row in sorted(rows, key=lambda row: (row[0], row[1].id))]
