"""The rows of lock points follow from leaves and existing items by themselves, at the end of every change set.

Here belongs bringing the rows in step; which locks are points is said in `hwsched.values.lock_points`. An undo or redo
brings back the rows as they were; where that would leave them out of step with leaves and items, it is refused.
"""

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from operator import itemgetter
from typing import Any, Final, Protocol

from sqlalchemy import ColumnElement, Connection, Select, Table, or_, select
from sqlalchemy.sql.base import ReadOnlyColumnCollection

from hwsched.model.bulk import among
from hwsched.model.errors import MissingRowError, NotUndoableError
from hwsched.model.tables import ASSIGNED_PART, ITEM_TABLE, LEAF_TABLE, LOCK_POINT, OPENING_TABLE
from hwsched.values.facts import Item, Leaf
from hwsched.values.lock_points import LOCK_KINDS, lock_items, lock_points

_LEAF_FACTS: Final = ("ordinal", "id", "position")
_LOCK_FACTS: Final = ("ordinal", "id", "kind", "leaf", "disposition", "lock_form")
_leaf_facts: Final = itemgetter(*_LEAF_FACTS)
_lock_facts: Final = itemgetter(*_LOCK_FACTS)
_opening_of: Final = itemgetter("opening_id")
DECIDING: Final[Mapping[str, frozenset[str]]] = {
    LEAF_TABLE.name: frozenset({"opening_id", *_LEAF_FACTS}),
    ITEM_TABLE.name: frozenset({"opening_id", *_LOCK_FACTS}),
    LOCK_POINT.name: frozenset({"opening_id", "item_id"}),
}
"""Columns that decide which places of an opening are locked, and those of the rows that follow."""

_POINTS: Final[Select[Any]] = select(LOCK_POINT.c.opening_id, LOCK_POINT.c.id, LOCK_POINT.c.item_id)
_Known = dict[tuple[Any, ...], tuple[int, ...]]
"""What decides at openings alike, to the places of the locks among their items."""

Rows = dict[str, list[tuple[str, str | None]]]
"""By opening: identifier and existing lock of each of its lock points."""


def read_points(connection: Connection, ids: Collection[str] | None = None) -> Rows:
    """Return the rows of lock points by opening, in no order."""
    found: Rows = defaultdict(list)
    for opening_id, point_id, item_id in among(connection, _POINTS, LOCK_POINT.c.opening_id, ids):
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
    for each in _deciding(connection, [opening_id]).values():
        leaves = [Leaf(leaf_id, position) for _, leaf_id, position in sorted(each.leaves)]
        items = [
            Item(item_id, kind, leaf, disposition=disposition, lock_form=form, cylinder_height_mm=height)
            for _, item_id, kind, leaf, disposition, form, height in sorted(each.locks, key=itemgetter(0, 1))
        ]
        for point in lock_points(leaves, items, rows[opening_id]):
            if point.id == point_id:
                return point.name
    return ""


class Unsettled:
    """Openings of which a change set wrote what decides on their lock points, since these were in step.

    What it wrote of openings that are new with it is kept, so that thousands need not be read back.
    """

    def __init__(self) -> None:
        self.openings: set[str] = set()
        """Identifiers of all of them."""
        self.new: dict[str, _Deciding] = {}
        """By opening: of those that have no lock point yet, what decides."""

    def inserted(self, table: Table, rows: Sequence[Mapping[str, Any]]) -> None:
        """Note whole rows that were inserted."""
        if table is OPENING_TABLE:
            for row in rows:
                self.openings.add(row["id"])
                self.new[row["id"]] = _Deciding()
        elif table is LEAF_TABLE:
            self.openings.update(map(_opening_of, rows))
            for row in rows:
                # Kept from what is written anyway: reading ten thousand new openings back would cost as much as
                # writing them.
                if (held := self.new.get(row["opening_id"])) is not None:
                    held.leaves.append(_leaf_facts(row))
        elif table is ITEM_TABLE:
            self.openings.update(map(_opening_of, rows))
            for row in rows:
                held = self.new.get(row["opening_id"])
                if held is not None and (row["kind"] in LOCK_KINDS or row["lock_form"] is not None):
                    held.locks.append(_lock_facts(row))
        elif table is LOCK_POINT:
            for row in rows:
                self.written(row["opening_id"])

    def written(self, opening_id: str) -> None:
        """Note that rows of an opening were changed or removed."""
        self.openings.add(opening_id)
        self.new.pop(opening_id, None)


@dataclass(slots=True)
class _Deciding:
    """Rows of an opening that decide, in no order."""

    leaves: list[tuple[Any, ...]] = field(default_factory=list)
    """As `_LEAF_FACTS`."""
    locks: list[tuple[Any, ...]] = field(default_factory=list)
    """As `_LOCK_FACTS`, more may follow; of what is a lock only."""

    def wanted(self, known: _Known) -> Sequence[str | None]:
        """Return the existing lock of each lock point, in order; openings alike are judged once."""
        self.leaves.sort()
        self.locks.sort(key=itemgetter(0, 1))
        alike = tuple(leaf[2] for leaf in self.leaves), tuple(lock[2:6] for lock in self.locks)
        places = known.get(alike)
        if places is None:
            leaves = [Leaf("", position) for position in alike[0]]
            locks = [
                Item(str(place), kind, leaf, disposition=disposition, lock_form=form)
                for place, (kind, leaf, disposition, form) in enumerate(alike[1])
            ]
            places = known[alike] = tuple(int(lock.id) for lock in lock_items(leaves, locks))
        # An opening without a lock has one place all the same.
        return [self.locks[place][1] for place in places] or (None,)


class Settled(Protocol):
    """A change set, as far as its lock points are settled: it asks for that itself, so it is not imported here."""

    target: int | None
    unsettled: Unsettled

    @property
    def connection(self) -> Connection:
        """Its transaction."""

    @property
    def kind(self) -> str:
        """What it is on the stack of steps: edit, undo, redo."""

    def update(self, table: Table, edits: Iterable[tuple[str, Mapping[str, Any]]], /) -> list[str]:
        """Set columns of rows."""

    def delete(self, table: Table, ids: Iterable[str], /) -> object:
        """Delete rows."""

    def follow(self, table: Table, rows: Iterable[Mapping[str, Any]], /) -> object:
        """Insert rows that follow from others."""


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
    new, there = change.unsettled.new, change.unsettled.openings - change.unsettled.new.keys()
    held = read_points(change.connection, there) if there else {}
    deciding = {**new, **_deciding(change.connection, there)} if there else new
    known: _Known = {}
    wrong: list[tuple[str, list[tuple[str, str | None]], Sequence[str | None]]] = []
    for opening_id, each in deciding.items():
        wanted, rows = each.wanted(known), held.get(opening_id, [])
        if len(rows) != len(wanted) or {item for _, item in rows} != set(wanted):
            wrong.append((opening_id, rows, wanted))
    # An undo that settled points by itself would write rows which its own redo does not know.
    if wrong and change.kind != "edit":
        raise NotUndoableError(
            f"step {change.target} cannot be taken back or done again alone: later steps decide which places of the "
            "opening are locked"
        )
    if wrong:
        _bring_in_step(change, wrong)
    change.unsettled = Unsettled()


def _bring_in_step(
    change: Settled, wrong: list[tuple[str, list[tuple[str, str | None]], Sequence[str | None]]]
) -> None:
    moved: list[tuple[str, dict[str, str | None]]] = []
    gone: list[str] = []
    fresh: list[dict[str, str | None]] = []
    for opening_id, rows, wanted in wrong:
        if not rows and len(wanted) == 1:
            # Nearly all openings of a survey: new, with one lock or none.
            fresh.append({"id": opening_id, "opening_id": opening_id, "item_id": wanted[0]})
            continue
        known = {item for _, item in rows}
        open_ = [item for item in wanted if item not in known]
        # A point whose lock went takes a lock that has none yet: what was chosen for it by hand stays.
        free = sorted((row for row in rows if row[1] not in wanted), key=lambda row: (row[0] != opening_id, row[0]))
        moved += [(row[0], {"item_id": item}) for row, item in zip(free, open_, strict=False)]
        gone += [row[0] for row in free[len(open_) :]]
        rest = open_[len(free) :]
        first = not rows
        fresh += [
            # The first point bears the opening's own identifier, so that an opening with only one needs no other name
            # for it.
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


def _deciding(connection: Connection, ids: Collection[str]) -> dict[str, _Deciding]:
    """Return what decides on lock points at each of these openings that is there."""
    found = {row[0]: _Deciding() for row in among(connection, select(OPENING_TABLE.c.id), OPENING_TABLE.c.id, ids)}
    of_leaf = select(LEAF_TABLE.c.opening_id, *(LEAF_TABLE.c[name] for name in _LEAF_FACTS))
    for opening_id, *leaf in among(connection, of_leaf, LEAF_TABLE.c.opening_id, ids):
        found[opening_id].leaves.append(tuple(leaf))
    columns = (ITEM_TABLE.c[name] for name in ("opening_id", *_LOCK_FACTS, "cylinder_height_mm"))
    locks = select(*columns).where(is_lock_row(ITEM_TABLE.c))
    for opening_id, *lock in among(connection, locks, ITEM_TABLE.c.opening_id, ids):
        found[opening_id].locks.append(tuple(lock))
    return found
