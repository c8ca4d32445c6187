"""Which places of an opening are locked: how its lock points follow from leaves and existing items, and their names.

The rows of lock points follow from what is said here; see `hwsched.model.lock_points`.
"""

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from hwsched.values.facts import Item, Leaf
from hwsched.values.fit import Fit, Placement
from hwsched.values.opening_input import Beside, LockPoint, OpeningInput, PointFit

LOCK_KINDS: Final = {"lock": 0, "exit-device": 1, "deadbolt": 2}
"""Kinds of existing item that are locks, those that are converted first in front."""
_SUPPLYING: Final = ("unit", "supply", "wire", "strike")
"""Roles of what a lock point can share with another one of its opening."""
_STANDING: Final = ("cylinder", "lock", "reader", "power-transfer", "raceway")
"""Roles of what it meets or shares on its leaf, besides."""

_asked: Final[list[tuple[Sequence[Leaf] | None, Sequence[Item] | None, Item | None]]] = [(None, None, None)]
"""The first lock that was asked for last: of which leaves and items, by who they are."""


def leaf_name(leaf: Leaf) -> str:
    """Return how fits name a leaf: its position."""
    return leaf.position or "single"


def on_leaf(item: Item, leaf: Leaf) -> bool:
    """Tell whether an item may stand on a leaf; an item whose leaf is unknown stands on each."""
    # An item whose leaf is unknown keeps a unit off wherever it may stand.
    return item.leaf is None or item.leaf == leaf_name(leaf) or (item.leaf == "single" and leaf.position is None)


def active_leaf(leaves: Sequence[Leaf]) -> Leaf | None:
    """Return the leaf that people use first: the single or the active one; None while unknown."""
    for leaf in leaves:
        # A position that nobody noted counts as the active leaf: most openings have but one.
        if leaf.position != "inactive":
            return leaf
    return None


def is_lock(item: Item) -> bool:
    """Tell whether an existing item is a lock: by its kind, or since the survey knows the form of a lock of it."""
    return item.kind in LOCK_KINDS or item.lock_form is not None


def lock_item(given: OpeningInput) -> Item | None:
    """Return the existing lock that is converted at the lock point; None where the survey shows none."""
    if given.point.others:
        return next((item for item in given.items if item.id == given.point.item_id), None)
    leaves, items = given.leaves, given.items
    # Every rule asks for it, one after the other of the same opening.
    asked_leaves, asked_items, found = _asked[0]
    if asked_leaves is not leaves or asked_items is not items:
        found = first_lock(leaves, items)
        _asked[0] = leaves, items, found
    return found


def first_lock(leaves: Sequence[Leaf], items: Sequence[Item]) -> Item | None:
    """Return the existing lock that is converted first: on the active leaf, its form known if any is, locks first."""
    leaf = active_leaf(leaves)
    best: Item | None = None
    best_rank = (99, 99, 99)
    for item in items:
        if not is_lock(item):
            continue
        # What comes off is not converted, though it is a lock.
        if item.disposition == "remove" or (leaf is not None and not on_leaf(item, leaf)):
            continue
        # A lock whose form is known first: only from it can anything be worked out.
        rank = (item.lock_form is None, LOCK_KINDS.get(item.kind or "", 3), item.disposition != "replace")
        if rank < best_rank:
            best, best_rank = item, rank
    return best


def lock_items(leaves: Sequence[Leaf], items: Sequence[Item]) -> tuple[Item, ...]:
    """Return the existing locks that are converted, one a lock point, in the order in which they are worked out.

    The first is the opening's lock as ever. A further one is a lock that the survey says is replaced, or the lock of
    the other leaf of a pair, unless the survey says that it stays. An exit device and the lock that its cylinder works
    are one.
    """
    first = first_lock(leaves, items)
    if first is None:
        return ()
    active, names = active_leaf(leaves), {leaf_name(leaf) for leaf in leaves}
    found = [first]
    for item in items:
        if item is first or not is_lock(item):
            continue
        here = place_of(item, active)
        taken = [each for each in found if place_of(each, active) == here]
        if item.disposition is None:
            # Without a word on what happens to it, a second lock is taken as one to convert only where no other
            # stands on that leaf.
            another = item.lock_form is not None and not taken and here in names
        else:
            another = item.disposition == "replace" and not any(_one_device(item, each) for each in taken)
        if another:
            found.append(item)
    return tuple(found)


def place_of(item: Item, active: Leaf | None) -> str:
    """Name the leaf on which a lock stands; one whose leaf is unknown is taken to stand on the active leaf."""
    return item.leaf or (leaf_name(active) if active is not None else "")


def _one_device(one: Item, other: Item) -> bool:
    """Tell whether two items on a leaf are an exit device and the lock that belongs to it."""
    if "exit-device" not in (one.kind, other.kind):
        return False
    return one.lock_form == other.lock_form or one.lock_form is None or other.lock_form is None


def point_names(leaves: Sequence[Leaf], locks: Sequence[Item]) -> tuple[str, ...]:
    """Name the lock points of an opening by what tells them apart; empty where there is only one.

    Examples
    --------
    >>> leaf = (Leaf("l", "single"),)
    >>> point_names(leaf, (Item("1", "lock"), Item("2", "deadbolt")))
    ('lock', 'deadbolt')
    >>> pair = (Leaf("a", "active"), Leaf("i", "inactive"))
    >>> point_names(pair, (Item("1", "lock", "active"), Item("2", "lock", "inactive")))
    ('active leaf', 'inactive leaf')
    """
    if len(locks) < 2:
        return ("",) * len(locks)
    active = active_leaf(leaves)
    kinds = [(lock.kind or "lock").replace("-", " ") for lock in locks]
    places = [place_of(lock, active) for lock in locks]
    names = kinds
    if len(set(places)) == len(places):
        names = [f"{place} leaf" for place in places]
    elif len(set(places)) > 1:
        names = [f"{kind}, {place} leaf" for kind, place in zip(kinds, places, strict=True)]
    count = Counter(names)
    seen: Counter[str] = Counter()
    told = []
    for name, lock in zip(names, locks, strict=True):
        same = [each for each, other in zip(locks, names, strict=True) if other == name]
        seen[name] += 1
        told.append(name if count[name] == 1 else f"{_told_apart(lock, same, seen[name])} {name}")
    return tuple(told)


def _told_apart(lock: Item, same: Sequence[Item], number: int) -> str:
    """Return upper and lower for two locks of one kind whose heights are known, else their number."""
    heights = [each.cylinder_height_mm for each in same]
    if len(same) == 2 and heights[0] is not None and heights[1] is not None and heights[0] != heights[1]:
        return "upper" if lock.cylinder_height_mm == max(heights[0], heights[1]) else "lower"
    return {1: "first", 2: "second", 3: "third"}.get(number, f"{number}th")


def lock_points(
    leaves: Sequence[Leaf], items: Sequence[Item], ids: Sequence[tuple[str, str | None]]
) -> tuple[LockPoint, ...]:
    """Return the lock points of an opening in the order in which they are worked out.

    Parameters
    ----------
    leaves, items : sequence of Leaf, sequence of Item
        Of the opening, as surveyed.
    ids : sequence of (str, str or None)
        Identifier and existing lock of each of its rows, which follow from leaves and items.
    """
    # The common case, and the one in which identifier and name must stay as before there could be several.
    if len(ids) == 1:
        return (LockPoint(*ids[0]),)
    known = {item_id: point_id for point_id, item_id in ids}
    # Within a change set rows are settled last: a lock that has no row yet is no point yet.
    locks = [item for item in lock_items(leaves, items) if item.id in known]
    every = tuple(lock.id for lock in locks)
    return tuple(
        LockPoint(known[lock.id], lock.id, number, name, tuple(each for each in every if each != lock.id))
        for number, (lock, name) in enumerate(zip(locks, point_names(leaves, locks), strict=True), start=1)
    )


def with_beside(given: OpeningInput, done: Sequence[PointFit]) -> OpeningInput:
    """Return the input of a lock point with what was worked out for the earlier ones of its opening."""
    if not done:
        return given
    here = _place_of_point(given, given.point)
    return replace(
        given,
        beside=tuple(
            Beside(each.given.point, _met(each.fit, near=_place_of_point(given, each.given.point) == here))
            for each in done
        ),
    )


def _place_of_point(given: OpeningInput, point: LockPoint) -> str:
    item = lock_item(replace(given, point=point))
    return place_of(item, active_leaf(given.leaves)) if item is not None else ""


def _met(fit: Fit | None, *, near: bool) -> Fit | None:
    """Return what of a fit another lock point meets: what feeds it, and on its own leaf what stands there.

    What was refused, what else would do and why is left out, so that it does not touch the next point.
    """
    if fit is None:
        return None
    roles = (*_SUPPLYING, *_STANDING) if near else _SUPPLYING
    # Words are left out: a changed sentence at one point must not make the next one out of date.
    parts = tuple(
        replace(part, reason="", description="", source="worked-out") for part in fit.parts if part.role in roles
    )
    place: Placement | None = None
    if near and fit.placement is not None:
        # Only where it stands: what else would have been possible there does not concern the neighbour.
        place = replace(fit.placement, alternatives=(), clearances=(), source="worked-out")
    return Fit(
        fit.status,
        parts=parts,
        stack=fit.stack if near else None,
        placement=place,
        holes=fit.holes if near else (),
        power=fit.power,
    )
