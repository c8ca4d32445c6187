"""The hollow in the leaf round the lock: where the lead starts, and what a bore for the lead must reach.

Here belongs geometry that follows from the survey and the new lock. Whether a bore reaches is said by a rule, where
it is drilled by the fitting.
"""

from dataclasses import dataclass

from hwsched.attributes.of_parts import (
    BODY_LENGTH_MM,
    CAM_OFFSET_MM,
    CASE_HEIGHT_MM,
    CASE_WIDTH_MM,
    CROSS_BORE_MM,
    DEPTH_MM,
    HOLE_MM,
    INSIDE_HALF_MM,
    THREAD_DIAMETER_MM,
    THREAD_PITCH_MM,
)
from hwsched.calc.opening.bore import Box, Rod
from hwsched.rules.practice import distance_mm
from hwsched.rules.reading import SKINNED, SOLID, lock_form, lock_item, lock_leaf, lock_part
from hwsched.values import Fit, Item, Leaf, OpeningInput, Part

_SLIVER_MM = 3.0
"""Half width of the box laid into a round bore: narrow, so that it keeps nearly the bore's whole height."""


@dataclass(frozen=True, slots=True)
class Cavity:
    """Heights above the floor; z from the inside face [mm]."""

    x: float
    """Centre of cylinder, cross bore or reader from the lock edge."""
    y: float
    lead_z: float
    """Plane in which the lead leaves the new part."""
    box: Box
    """What a bore may enter; for a round bore a narrow box laid into it."""

    @property
    def top(self) -> float:
        """Upper end."""
        return self.box.high[1]

    @property
    def bottom(self) -> float:
        """Lower end."""
        return self.box.low[1]


def way_kinds(given: OpeningInput, fit: Fit) -> tuple[str, ...]:
    """Name the ways by which a lead can come from the lock to a face of its leaf.

    square: through the face opposite the cylinder; hollow: inside a hollow leaf, then through its sheet; channel: by
    two bores into the lock's pocket; slanted: by one bore into a bored lock's cross bore; surface: along the face.
    """
    leaf, form = lock_leaf(given), lock_form(given)
    if leaf is None or form is None or leaf.material is None:
        return ()
    if leaf.material == "glass":
        # Glass is not drilled: only where the lock stands in a patch or rail is there a way along it.
        return ("surface",) if form in ("mortise", "euro-profile", "rim") else ()
    if form == "cabinet":
        return ("surface",)
    if form == "gate":
        return ("hollow",) if leaf.material in SKINNED else ("surface",)
    inside = "hollow" if leaf.material in SKINNED else "channel" if leaf.material in SOLID else ""
    if form == "bored":
        # A bored lock has no case to come into from above; in solid material the lead goes slantwise into the cross
        # bore.
        return ("hollow",) if inside == "hollow" else ("slanted",)
    kinds = [inside] if inside else []
    if form in ("mortise", "reader") or (form == "euro-profile" and _half(lock_part(given, fit))):
        # Straight behind the cylinder costs one square hole, and is what the trade tries first.
        kinds.insert(0, "square")
    return tuple(kinds)


def _half(part: Part | None) -> bool:
    inside = part.number_of(INSIDE_HALF_MM) if part is not None else None
    # The blind side of a half cylinder is 10 mm (DIN 18252 as quoted in trade): behind it the leaf is free for a
    # square hole.
    return inside is not None and inside <= 10.0


def cavity(given: OpeningInput, fit: Fit) -> Cavity | None:
    """Return the hollow round the lock and the start of the lead; None while a fact is missing."""
    leaf, lock, part = lock_leaf(given), lock_item(given), lock_part(given, fit)
    if leaf is None or lock is None or part is None or leaf.thickness_mm is None:
        return None
    x, y, thick = lock.backset_mm, lock.cylinder_height_mm, leaf.thickness_mm
    if x is None or y is None:
        return None
    lead_z = _lead_z(fit, lock, part, thick)
    if lead_z is None:
        return None
    box = _box(lock, part, lead_z, x, y, thick)
    if box is None and leaf.material == "glass":
        # Nothing is bored in glass: the lead goes along its face, whatever the size of the case in its patch.
        box = _round(x, y, distance_mm("cylinder-hole"), 0.0, thick)
    return None if box is None else Cavity(x, y, lead_z, box)


def _lead_z(fit: Fit, lock: Item, part: Part, thick: float) -> float | None:
    middle = thick / 2 + (lock.case_offset_mm or 0.0)
    if part.kind == "mortise-cylinder":
        pitch, offset = part.number_of(THREAD_PITCH_MM), part.number_of(CAM_OFFSET_MM)
        if pitch is None or offset is None:
            return None
        turns = fit.stack.turns if fit.stack is not None else 0
        # The lead comes out at the shell's rear, which every turn carries farther in.
        return min(max(middle + offset - turns * pitch, 0.0), thick)
    if part.kind == "rim-cylinder":
        body, trim = part.number_of(BODY_LENGTH_MM), lock.trim_key_mm
        return None if body is None or trim is None else min(max(thick - body + trim, 0.0), thick)
    if part.kind == "fixed-reader":
        depth = part.number_of(DEPTH_MM)
        return None if depth is None else max(thick - depth, 0.0)
    if part.kind == "cabinet-lock":
        return 0.0
    if part.kind == "gate-lock":
        # Out of the back of a case that stands on the key side.
        return thick
    return middle


def _box(lock: Item, part: Part, lead_z: float, x: float, y: float, thick: float) -> Box | None:
    if part.kind in ("mortise-cylinder", "euro-cylinder"):
        above, wide = lock.case_above_mm, lock.case_width_mm
        if above is None or wide is None:
            return None
        # Without its height the case surely reaches down to the cylinder's lower edge.
        high = lock.case_height_mm if lock.case_height_mm is not None else above + distance_mm("cylinder-hole") / 2
        # Whatever its depth, the case holds the cylinder.
        deep = max(lock.case_depth_mm or 0.0, x + distance_mm("cylinder-hole") / 2)
        middle = thick / 2 + (lock.case_offset_mm or 0.0)
        return Box((0.0, y + above - high, middle - wide / 2), (deep, y + above, middle + wide / 2))
    if part.kind == "bored-lever-lock":
        bores = [bore for bore in (lock.cross_bore_mm, part.number_of(CROSS_BORE_MM)) if bore is not None]
        return _round(x, y, max(bores), 0.0, thick) if bores else None
    if part.kind == "rim-cylinder":
        return _round(x, y, distance_mm("cylinder-hole"), 0.0, lead_z)
    if part.kind == "fixed-reader":
        hole = part.number_of(HOLE_MM)
        return None if hole is None else _round(x, y, hole, 0.0, lead_z)
    if part.kind == "gate-lock":
        across, up = part.number_of(CASE_WIDTH_MM), part.number_of(CASE_HEIGHT_MM)
        if across is None or up is None:
            return None
        return Box((x - across / 2, y - up / 2, 0.0), (x + across / 2, y + up / 2, thick))
    thread = part.number_of(THREAD_DIAMETER_MM)
    return None if thread is None else _round(x, y, thread, 0.0, thick)


def _round(x: float, y: float, diameter: float, z0: float, z1: float) -> Box:
    half_wide = min(_SLIVER_MM, diameter / 4)
    # Laid into the circle, not round it: a bore that meets the box surely meets the hole.
    half_high = ((diameter / 2) ** 2 - half_wide**2) ** 0.5
    return Box((x - half_wide, y - half_high, z0), (x + half_wide, y + half_high, z1))


def lock_body(lock: Item, thick: float) -> Box | Rod | None:
    """Return what an existing lock takes from its leaf, by the survey alone; None while a fact is missing.

    The case of a mortise or euro-profile lock, the cross bore of a bored one, else the cylinder's hole.
    """
    x, y = lock.backset_mm, lock.cylinder_height_mm
    if x is None or y is None or lock.lock_form in ("gate", None):
        return None
    if lock.lock_form in ("mortise", "euro-profile"):
        above, high, deep, wide = lock.case_above_mm, lock.case_height_mm, lock.case_depth_mm, lock.case_width_mm
        if above is None or high is None or deep is None or wide is None:
            return None
        middle = thick / 2 + (lock.case_offset_mm or 0.0)
        return Box((0.0, y + above - high, middle - wide / 2), (deep, y + above, middle + wide / 2))
    diameter = lock.cross_bore_mm if lock.lock_form == "bored" else distance_mm("cylinder-hole")
    return None if diameter is None else Rod((x, y, 0.0), (x, y, thick), diameter)


def existing_hole_top(given: OpeningInput, leaf: Leaf) -> float | None:
    """Return the upper edge of the cylinder's or thumb turn's hole in the leaf above the floor [mm]."""
    lock = lock_item(given)
    if lock is None or lock.cylinder_height_mm is None:
        return None
    return lock.cylinder_height_mm + distance_mm("cylinder-hole") / 2
