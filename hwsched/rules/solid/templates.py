"""What the template of a part says of its holes; where the catalogue is silent the practice of the trade is taken.

Which of it was taken for a fit is said by the rule ``template-known``.
"""

from collections.abc import Iterator, Mapping
from typing import Final

from hwsched.attributes.of_parts import (
    BACK_HOLE_MM,
    BEND_RADIUS_MM,
    BOLT_HOLE_MM,
    BRIDGE_HOLE_MM,
    CHANNEL_ANGLE_DEG,
    CHANNEL_DIAMETER_MM,
    CHANNEL_ENTRY_MM,
    HOLE_ABOVE_EXISTING_MM,
    HOLE_FROM_CYLINDER_MM,
    LEAD_DIAMETER_MM,
    LEAD_HOLE_EDGE_DEG,
    LEAD_HOLE_MM,
    LEAD_HOLE_UP_DEG,
    PLATE_ABOVE_EXISTING_MM,
    SCREWS,
    NumberName,
)
from hwsched.rules.practice import angle_deg, distance_mm
from hwsched.rules.reading import in_role, lock_leaf, lock_part
from hwsched.rules.solid.screws import places_given
from hwsched.values import Fit, OpeningInput, Part

TEMPLATES: Final[Mapping[str, NumberName]] = {
    "above-existing-hole": HOLE_ABOVE_EXISTING_MM,
    "plate-above-hole": PLATE_ABOVE_EXISTING_MM,
    "above-cylinder": HOLE_FROM_CYLINDER_MM,
    "channel-square": CHANNEL_ENTRY_MM,
    "channel-diameter": CHANNEL_DIAMETER_MM,
    "channel-angle": CHANNEL_ANGLE_DEG,
    "bored-diameter": LEAD_HOLE_MM,
    "bored-up": LEAD_HOLE_UP_DEG,
    "bored-edge": LEAD_HOLE_EDGE_DEG,
    "bored-bolt-hole": BOLT_HOLE_MM,
    "gate-back-hole": BACK_HOLE_MM,
    "bridge-hole": BRIDGE_HOLE_MM,
    "lead-diameter": LEAD_DIAMETER_MM,
    "bend-radius": BEND_RADIUS_MM,
}
"""Distances and angles of `resources/practice/distances.csv` that the part says better, by the attribute that does."""


def template_mm(part: Part | None, name: str) -> float:
    """Return a distance [mm] as the part's template gives it, else as the trade does; raises KeyError."""
    given = part.number_of(TEMPLATES[name]) if part is not None else None
    return distance_mm(name) if given is None else given


def template_deg(part: Part | None, name: str) -> float:
    """Return an angle [deg] as the part's template gives it, else as the trade does; raises KeyError."""
    given = part.number_of(TEMPLATES[name]) if part is not None else None
    return angle_deg(name) if given is None else given


def taken(given: OpeningInput, fit: Fit) -> Iterator[tuple[Part, tuple[str, ...]]]:
    """Yield the parts of a fit with the attributes that were blank, so that the practice of the trade was taken."""
    unit, lock = in_role(given, fit, "unit"), lock_part(given, fit)
    if unit is not None:
        blank = [name for name in _of_unit(given, fit, unit) if unit.number_of(TEMPLATES[name]) is None]
        named = [str(TEMPLATES[name]) for name in blank]
        if unit.kind == "surface-unit" and (unit.number_of(SCREWS) or 0) > 1 and not places_given(unit):
            named.append("screw_places")
        if named:
            yield unit, tuple(named)
    if lock is not None:
        blank = [name for name in _of_lock(fit, lock) if lock.number_of(TEMPLATES[name]) is None]
        if blank:
            yield lock, tuple(str(TEMPLATES[name]) for name in blank)


def _of_unit(given: OpeningInput, fit: Fit, unit: Part) -> Iterator[str]:
    leaf = lock_leaf(given)
    purposes = {hole.purpose for hole in fit.holes}
    if unit.kind == "edge-unit":
        yield from ("bridge-hole",) if "channel" in purposes else ()
        return
    if "channel" in purposes:
        yield from ("above-cylinder", "channel-square", "channel-diameter", "channel-angle")
    elif leaf is not None and leaf.material == "aluminium" and fit.placement is not None:
        yield "above-existing-hole"
        if leaf.construction == "narrow-stile":
            yield "plate-above-hole"


def _of_lock(fit: Fit, lock: Part) -> Iterator[str]:
    if fit.cable is None:
        return
    if lock.kind == "bored-lever-lock":
        yield from ("bored-diameter", "bored-up", "bored-edge", "bored-bolt-hole")
    elif lock.kind == "gate-lock":
        yield "gate-back-hole"
    yield from ("lead-diameter", "bend-radius")
