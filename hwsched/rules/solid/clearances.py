"""How near a unit's plate may come to what stands on its face. Which distance each kind wants is a rule's limit."""

from collections.abc import Iterable, Mapping, Sequence
from math import radians, sin
from typing import Final

from hwsched.attributes.of_parts import PLATE_HEIGHT_MM, PLATE_WIDTH_MM
from hwsched.calc.opening.placement import Rect
from hwsched.rules.carried import of_centre
from hwsched.rules.reading import lock_item, unit_part
from hwsched.rules.rounding import MEASURE_MM, apart_allowances, by_rounding, least_excuse
from hwsched.rules.rule import Verdict
from hwsched.rules.solid.footprints import Footprint, footprints
from hwsched.rules.solid.housing import housing_rect
from hwsched.rules.solid.turns import turned
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput, Part

TOUCH_MM: Final = MEASURE_MM
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


def moved(rect: Rect, limits: Mapping[str, float]) -> Rect:
    """Return a footprint with what its item sweeps where the limits of the rule that guards it tell of that."""
    if "sweep_deg" in limits:
        return swept(rect, limits["sweep_deg"])
    return turned(rect, limits) if "turn_mm" in limits else rect


def less(rect: Rect, x_mm: float, y_mm: float) -> Rect:
    """Return a rectangle with so much less on each side, at the least its middle.

    Examples
    --------
    >>> less(Rect(0, 0, 10, 2), 1, 3)
    Rect(x0=1, y0=1.0, x1=9, y1=1.0)
    """
    x, y = min(x_mm, (rect.x1 - rect.x0) / 2), min(y_mm, (rect.y1 - rect.y0) / 2)
    return Rect(rect.x0 + x, rect.y0 + y, rect.x1 - x, rect.y1 - y)


def plate_sizes(unit: Part) -> tuple[float | None, ...]:
    """Return the sizes by which is told whether a unit is made in inches."""
    return unit.number_of(PLATE_WIDTH_MM), unit.number_of(PLATE_HEIGHT_MM)


def near(given: OpeningInput, fit: Fit, kinds: Sequence[str], limits: Mapping[str, float]) -> Iterable[Verdict]:
    """Judge the unit's distance from everything of some kinds on its face, as it stands and as it is moved."""
    unit = unit_part(given, fit)
    place = fit.placement
    if unit is None or unit.kind != "surface-unit" or (place is not None and place.face not in ON_FACE):
        return
    stands = [f for f in footprints(given, fit, place.face if place is not None else "inside") if f.kind in kinds]
    housing = housing_rect(place, unit) if place is not None and stands else None
    for found in stands:
        if found.rect is None:
            yield unknown(found.needs, found.name)
        # Without a place the unit is asked only what is unknown of its surroundings.
        elif housing is not None:
            rect = moved(found.rect, limits)
            yield from _verdict(given, found, housing, rect, limits["clearance_mm"], unit)


def _verdict(
    given: OpeningInput, found: Footprint, housing: Rect, rect: Rect, clearance_mm: float, unit: Part
) -> Iterable[Verdict]:
    gap = gap_mm(housing, rect)
    # A unit put exactly at its distance must keep it: sums of inches in millimetres miss by a hair.
    if gap >= clearance_mm - TOUCH_MM:
        return
    if found.perhaps:
        yield unknown(found.needs or ("existing_item.face",), found.name)
        return
    short = clearance_mm - gap
    axes = apart_allowances(of_centre(lock_item(given)), found.carried, plate_sizes(unit))
    excuse = least_excuse(axes, lambda more: gap_mm(housing, less(rect, more[0], more[1])) >= clearance_mm - TOUCH_MM)
    if excuse is not None:
        yield by_rounding(given, excuse, short, found.name)
        return
    where = f"overlaps the {found.name} by {length(given, -gap)}"
    if gap >= 0:
        where = f"stands {length(given, gap)} from the {found.name}"
    yield Verdict(
        f"The unit {where}; {length(given, clearance_mm)} is needed, short by {length(given, short)}.",
        values={"gap_mm": gap, "needed_mm": clearance_mm, "short_mm": short},
        about=found.name,
    )
