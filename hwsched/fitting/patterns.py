"""The ways in which a lead can come to a face: straight behind the cylinder, above it, below it."""

from dataclasses import dataclass

from hwsched.calc.placement import Pattern, Rect
from hwsched.cases import Case, Item, Leaf
from hwsched.fitting.practice import distance_mm
from hwsched.rules.reading import SKINNED, SOLID

STRAIGHT, ABOVE, BELOW = "straight", "above", "below"
_COST = {STRAIGHT: 0.0, ABOVE: 1.0, BELOW: 2.0}
"""Preference in order; a hole more is drilled where the unit does not stand behind the cylinder."""


@dataclass(frozen=True, slots=True)
class LockPlace:
    """Where the lock stands on its leaf, above the floor [mm]."""

    x: float
    y: float
    top: float
    """Upper end of its case."""
    bottom: float
    z: float
    """Plane of its case's middle, from the secured face."""


def lock_place(case: Case, leaf: Leaf, lock: Item) -> LockPlace | None:
    """Return where the lock stands; None while a fact is missing."""
    x, y, thick = lock.backset_mm, lock.cylinder_height_mm, leaf.thickness_mm
    if x is None or y is None or thick is None:
        return None
    above = lock.case_above_mm or 0.0
    below = (lock.case_height_mm or 2 * above) - above
    # A bored lock has its cross bore in place of a case.
    if lock.cross_bore_mm:
        above = below = lock.cross_bore_mm / 2
    return LockPlace(x, y, y + above, y - max(below, 0.0), thick / 2 + (lock.case_offset_mm or 0.0))


def patterns(leaf: Leaf, lock: Item, at: LockPlace) -> tuple[Pattern, ...]:
    """Return the ways for a leaf, preferred first; each with its lead from the cylinder to the hole nearest to it."""
    found: list[Pattern] = []
    if lock.lock_form in ("mortise", "rim", "cabinet", "gate"):
        found.append(Pattern(STRAIGHT, Rect(at.x, at.y, at.x, at.y), at.z, _COST[STRAIGHT]))
    rows: list[tuple[str, float, float]] = []
    if leaf.material == "aluminium":
        start = at.y + distance_mm("above-aluminium")
        rows.append((ABOVE, start, start))
    elif leaf.material in SKINNED:
        room = distance_mm("hollow-room")
        rows += [(ABOVE, at.top, at.top + room), (BELOW, at.bottom - room, at.bottom)]
    elif leaf.material in SOLID and lock.lock_form != "cabinet":
        low, high = _channel(at.top - at.y)
        rows.append((ABOVE, at.y + low, at.y + high))
        low, high = _channel(at.y - at.bottom)
        rows.append((BELOW, at.y - high, at.y - low))
    for name, y0, y1 in rows:
        nearest = min(abs(y0 - at.y), abs(y1 - at.y))
        found.append(Pattern(name, Rect(at.x, y0, at.x, y1), nearest + at.z, _COST[name]))
    return tuple(found)


def _channel(case_beyond_mm: float) -> tuple[float, float]:
    """Return how far from the cylinder's centre a channel's hole may stand, over or under the lock's case."""
    usual = distance_mm("above-wood")
    least = max(usual, case_beyond_mm + distance_mm("channel-square"))
    return least, least + distance_mm("channel-room")
