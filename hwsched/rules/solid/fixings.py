"""How what stands on a leaf is fixed in it: the bolts of pulls and levers, the screws of closers and exit devices.

Where they stand follows from one size that the survey asks for, from the ends of what they hold. Where nobody told it
they may stand anywhere that the trade puts them, and whatever meets only that is unknown, never free.
"""

from collections.abc import Iterator
from typing import Final

from hwsched.calc.opening.bore import Box, Rod
from hwsched.calc.opening.placement import Rect
from hwsched.calc.opening.solid import Solid
from hwsched.rules.practice import distance_mm
from hwsched.values import Item

NEEDS: Final = ("existing_item.bolt_inset_mm",)
_ON_LINE: Final = ("pull", "lever")
"""Bolted on the middle line, one near each end."""
_AT_CORNERS: Final = ("closer", "exit-device")
"""Screwed near the corners of a body or case."""
KINDS: Final = (*_ON_LINE, *_AT_CORNERS)
NAMES: Final = {
    "pull": "the pull's bolt", "lever": "the lever's bolt", "closer": "a screw of the closer",
    "exit-device": "a fixing of the exit device",
}  # fmt: skip


def fixings(item: Item, rect: Rect, line_mm: float, thick: float, case_mm: float | None) -> Iterator[Solid]:
    """Yield the fixings of an existing item where they are told, or where they may be.

    Parameters
    ----------
    item : Item
        Of one of `KINDS`.
    rect : Rect
        Its footprint.
    line_mm : float
        Middle line of its spindle or bar, from the lock edge [mm].
    thick : float
        Of the leaf [mm].
    case_mm : float or None
        Of an exit device: how far its case reaches from the lock edge [mm]; None where nobody measured it.

    Yields
    ------
    Box or Rod
        Rods where the places are told; else boxes that hold them whatever they are.
    """
    inset, wide = item.bolt_inset_mm, distance_mm("pull-bolt")
    if inset == 0:
        return
    half = wide / 2
    if inset is None:
        if item.kind in _ON_LINE:
            near = min(distance_mm("fixing-from-end"), (rect.y1 - rect.y0) / 2)
            for low, high in ((rect.y0, rect.y0 + near), (rect.y1 - near, rect.y1)):
                yield Box((line_mm - half, low, 0.0), (line_mm + half, high, thick))
        else:
            yield Box((rect.x0, rect.y0, 0.0), (rect.x1, rect.y1, thick))
        return
    for x, y in dict.fromkeys(_spots(item, rect, line_mm, inset, case_mm)):
        yield Rod((x, y, 0.0), (x, y, thick), wide)


def _spots(item: Item, rect: Rect, line: float, inset: float, case_mm: float | None) -> Iterator[tuple[float, float]]:
    low, high = min(rect.y0 + inset, rect.y1), max(rect.y1 - inset, rect.y0)
    if item.kind in _ON_LINE:
        yield from ((line, low), (line, high))
        return
    left, right = rect.x0 + inset, rect.x1 - inset
    if item.kind == "exit-device":
        # Its case stands at the lock edge, its end cap at the other end of its bar.
        end = case_mm if case_mm is not None else rect.x0 + distance_mm("device-case-wide")
        yield from ((min(end, rect.x1) - inset, y) for y in (low, high))
    yield from ((x, y) for x in (left, right) for y in (low, high))
