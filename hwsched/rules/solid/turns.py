"""What a thumb turn takes of its face as it is turned, with fingers round it: limits of the rule on thumb turns."""

from collections.abc import Mapping
from typing import Final

from hwsched.calc.opening.placement import Rect
from hwsched.rules.rule import Limit
from hwsched.values import Settings

LIMITS: Final = (
    Limit(
        "clearance_mm",
        3 / 16 * 25.4,
        "Least distance of the unit from a thumb turn, at rest and turned.",
        "common practice, 3/16 in",
        unit="mm",
        low=0.0,
        high=200.0,
    ),
    Limit(
        "fingers_mm",
        38.1,
        "Room across for a turn with thumb and finger beside it; what is broader is a ring or plate that leaves it.",
        "from memory, unverified, 1 1/2 in",
        unit="mm",
        low=0.0,
        high=150.0,
    ),
    Limit(
        "turn_mm",
        50.8,
        "Longest turn; what is longer is its plate.",
        "from memory, unverified: 1 1/4 to 2 in",
        unit="mm",
        low=0.0,
        high=200.0,
    ),
)
_DECLARED: Final = {limit.name: limit.value for limit in LIMITS}


def turn_limits(settings: Settings) -> Mapping[str, float]:
    """Return the sizes of turn and fingers, as the project has them."""
    return settings.limits_for("thumb-turn-clear", _DECLARED)


def half_mm(rect: Rect, limits: Mapping[str, float]) -> float:
    """Return half of what a turn of some footprint sweeps about its middle; 0 where its ring or plate leaves it room.

    Examples
    --------
    >>> limits = {"fingers_mm": 38.1, "turn_mm": 50.8}
    >>> half_mm(Rect(0, 0, 12, 30), limits), half_mm(Rect(0, 0, 25, 45), limits), half_mm(Rect(0, 0, 45, 45), limits)
    (15.0, 22.5, 0.0)
    >>> half_mm(Rect(0, 0, 32, 220), limits)
    25.4
    """
    wide, high = rect.x1 - rect.x0, rect.y1 - rect.y0
    return 0.0 if min(wide, high) >= limits["fingers_mm"] else min(max(wide, high), limits["turn_mm"]) / 2


def turned(rect: Rect, limits: Mapping[str, float]) -> Rect:
    """Return a turn's footprint with what it sweeps, and with fingers on both its sides.

    Over and under it fingers come from the side: there the trade keeps 3/16 in off the turn alone (common practice).

    Examples
    --------
    >>> turned(Rect(60, 980, 80, 1020), {"fingers_mm": 38.1, "turn_mm": 50.8})
    Rect(x0=50.0, y0=980, x1=90.0, y1=1020)
    >>> turned(Rect(60, 985, 92, 1015), {"fingers_mm": 38.0, "turn_mm": 50.8})
    Rect(x0=57.0, y0=984.0, x1=95.0, y1=1016.0)
    """
    half = half_mm(rect, limits)
    if half == 0:
        return rect
    x, y, beside = (rect.x0 + rect.x1) / 2, (rect.y0 + rect.y1) / 2, max(half, limits["fingers_mm"] / 2)
    return Rect(min(rect.x0, x - beside), min(rect.y0, y - half), max(rect.x1, x + beside), max(rect.y1, y + half))
