"""Nuts of bolts that pass the leaf, as broad as the socket that turns them: limits of their rule, and their places.

A pull or lever on one face alone is bolted from the other; a gate lock's bolts have their nuts on the inside.
"""

from collections.abc import Iterator, Mapping
from typing import Final

from hwsched.calc.opening.bore import Box, Rod
from hwsched.calc.opening.placement import Rect
from hwsched.calc.opening.solid import Solid, bounds
from hwsched.rules.rule import Limit
from hwsched.values import Item, Settings

LIMITS: Final = (
    Limit(
        "socket_mm",
        19.05,
        "Across a socket on the nut or head of a bolt that passes the leaf.",
        "from memory, unverified: 3/4 in on a nut of 5/16 in or M8",
        unit="mm",
        low=0.0,
        high=100.0,
    ),
    Limit(
        "corner_mm",
        12.7,
        "Centre of a gate lock's bolt from both edges of its case.",
        "from memory, unverified, 1/2 in",
        unit="mm",
        low=0.0,
        high=100.0,
    ),
)
_DECLARED: Final = {limit.name: limit.value for limit in LIMITS}
_BOLTED: Final = ("pull", "lever")
"""Kinds of item whose bolts pass the leaf."""


def nut_limits(settings: Settings) -> Mapping[str, float]:
    """Return the sizes of sockets and where nuts stand, as the project has them."""
    return settings.limits_for("nut-room", _DECLARED)


def is_bolted(item: Item) -> bool:
    """Tell whether an item is of a kind that is bolted through the leaf from the other face."""
    return item.kind in _BOLTED


def on_face(fixing: Solid, face: str, thick: float, out: float, socket_mm: float) -> Solid:
    """Return what a bolt has on a face, from its solid in the leaf: a rod; a box where its place may be anywhere."""
    low, high = (-out, 0.0) if face == "inside" else (thick, thick + out)
    if isinstance(fixing, Rod):
        x, y, _ = fixing.start
        return Rod((x, y, low), (x, y, high), socket_mm)
    reach = bounds(fixing)
    more = (socket_mm - (reach.high[0] - reach.low[0])) / 2
    return Box((reach.low[0] - more, reach.low[1] - more, low), (reach.high[0] + more, reach.high[1] + more, high))


def is_under(fixing: Solid, rects: Iterator[Rect] | list[Rect]) -> bool:
    """Tell whether a bolt ends under something that stands on the face: it is that thing's own, or hidden by it."""
    (x0, y0, _), (x1, y1, _) = bounds(fixing)
    return any(rect.x0 <= x0 and x1 <= rect.x1 and rect.y0 <= y0 and y1 <= rect.y1 for rect in rects)


def corners(lock_case: Rect, corner_mm: float) -> Iterator[tuple[float, float]]:
    """Yield where the bolts of a lock's case stand."""
    for x in (lock_case.x0 + corner_mm, lock_case.x1 - corner_mm):
        yield x, lock_case.y0 + corner_mm
        yield x, lock_case.y1 - corner_mm
