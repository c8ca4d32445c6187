"""How near a unit's plate may come to what stands on its face. Which distance each kind wants is a rule's limit."""

from collections.abc import Iterable, Sequence
from math import radians, sin
from typing import Final

from hwsched.calc.opening.placement import Rect
from hwsched.rules.footprints import Footprint, footprints
from hwsched.rules.housing import housing_rect
from hwsched.rules.reading import unit_part
from hwsched.rules.rule import Verdict
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput

TOUCH_MM: Final = 0.05
"""The measuring tolerance: distances short by no more than this are kept. Nobody measures a door nearer than that."""
ON_FACE: Final = ("inside", "key")


def gap_mm(a: Rect, b: Rect) -> float:
    """Free distance between two rectangles along the axis that parts them most [mm]; negative when they overlap.

    Examples
    --------
    >>> gap_mm(Rect(0, 0, 10, 10), Rect(13, 0, 20, 10)), gap_mm(Rect(0, 0, 10, 10), Rect(8, 0, 20, 10))
    (3, -2)
    """
    return max(b.x0 - a.x1, a.x0 - b.x1, b.y0 - a.y1, a.y0 - b.y1)


def swept(rect: Rect, sweep_deg: float) -> Rect:
    """Return a lever's footprint with what its end sweeps as it is turned down."""
    return Rect(rect.x0, rect.y0 - (rect.x1 - rect.x0) * sin(radians(sweep_deg)), rect.x1, rect.y1)


def near(
    given: OpeningInput, fit: Fit, kinds: Sequence[str], clearance_mm: float, sweep_deg: float = 0.0
) -> Iterable[Verdict]:
    """Judge the unit's distance from everything of some kinds on its face."""
    unit = unit_part(given, fit)
    place = fit.placement
    if unit is None or unit.kind != "surface-unit" or (place is not None and place.face not in ON_FACE):
        return
    housing = housing_rect(place, unit) if place is not None else None
    for found in footprints(given, fit, place.face if place is not None else "inside"):
        if found.kind not in kinds:
            continue
        if found.rect is None:
            yield unknown(found.needs, found.name)
        # Without a place the unit is asked only what is unknown of its surroundings.
        elif housing is not None:
            rect = swept(found.rect, sweep_deg) if sweep_deg else found.rect
            yield from _verdict(given, found, gap_mm(housing, rect), clearance_mm)


def _verdict(given: OpeningInput, found: Footprint, gap: float, clearance_mm: float) -> Iterable[Verdict]:
    # A unit put exactly at its distance must keep it: sums of inches in millimetres miss by a hair.
    if gap >= clearance_mm - TOUCH_MM:
        return
    if found.perhaps:
        yield unknown(found.needs or ("existing_item.face",), found.name)
        return
    short = clearance_mm - gap
    where = f"overlaps the {found.name} by {length(given, -gap)}"
    if gap >= 0:
        where = f"stands {length(given, gap)} from the {found.name}"
    yield Verdict(
        f"The unit {where}; {length(given, clearance_mm)} is needed, short by {length(given, short)}.",
        values={"gap_mm": gap, "needed_mm": clearance_mm, "short_mm": short},
        about=found.name,
    )
