"""The ways by which a lead can come to the face of a leaf, each with where its hole may be and how its run goes.

What ways there are follows from `rules.solid.cavity`; distances are practice. Where the unit then stands is told by
`surface`.
"""

from dataclasses import dataclass, replace
from itertools import pairwise
from math import atan, ceil, cos, degrees, dist, floor, radians, sin, tan
from typing import Final, Literal

from hwsched.attributes.of_parts import HOLE_MM
from hwsched.calc.calculator import InputError
from hwsched.calc.opening.bore import Box, LeafSize, bore
from hwsched.calc.opening.channel import ChannelInput, channel
from hwsched.calc.opening.placement import Rect
from hwsched.quantities.adding import added
from hwsched.rules import limits_of, rule_named
from hwsched.rules.practice import angle_deg, distance_mm, lead_hole
from hwsched.rules.reading import SKINNED, in_role, leaf_name, lock_form, lock_item, lock_part
from hwsched.rules.solid.bodies import drill_angle_deg
from hwsched.rules.solid.bores import as_bore
from hwsched.rules.solid.cavity import Cavity, existing_hole_top, way_kinds
from hwsched.rules.solid.footprints import footprints
from hwsched.rules.solid.templates import template_deg, template_mm
from hwsched.values import Fit, Hole, Leaf, OpeningInput, Part

_BORED_LEAD: Final = rule_named("bored-lead")

STRAIGHT: Final = "straight"
ABOVE: Final = "above"
BELOW: Final = "below"
BESIDE: Final = "beside"
ORDER: Final = {STRAIGHT: 0, ABOVE: 1, BELOW: 2, BESIDE: 3, "in-edge": 4}
"""Preference where all else is equal: straight behind the cylinder, above it, below it."""

Kind = Literal["square", "hollow", "channel", "slanted", "surface"]
_LEAST_DEG: Final = 0.5
Lean = Literal["usual", "flattest", "steepest"]
"""The usual angle, or the nearest to it that leads into the pocket; or the least or the greatest that does."""
Point = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class Way:
    """One way to one side of the lock."""

    pattern: str
    kind: Kind
    hole: Rect
    """Where the access hole's centre may be, or where the lead may go under the plate; above the floor [mm]."""
    base_mm: float
    """Lead from the part to the hole nearest to the lock."""
    drilled: int
    """Holes that it costs."""
    plate_above_mm: float | None = None
    """Lower edge of the plate above the hole's centre where the trade fixes it, negative: below; None: it is free."""
    lean: Lean = "usual"
    """How a channel's bit leans."""

    @property
    def cost(self) -> float:
        """What decides before the lead's length does: holes, then the order of preference."""
        return self.drilled + ORDER[self.pattern] / 100


def ways(given: OpeningInput, fit: Fit, leaf: Leaf, at: Cavity, face: str) -> tuple[Way, ...]:
    """List the ways from a lock whose part is chosen."""
    found: list[Way] = []
    for kind in way_kinds(given, fit):
        if kind == "square":
            found.append(Way(STRAIGHT, "square", Rect(at.x, at.y, at.x, at.y), at.lead_z, 1))
        elif kind == "hollow":
            found += _hollow(given, fit, leaf, at)
        elif kind == "channel":
            found += _channel(in_role(given, fit, "unit"), at)
        elif kind == "slanted":
            found += _slanted(given, lock_part(given, fit), leaf, at)
        elif kind == "surface":
            found += _surface(given, fit, leaf, at, face)
    if _lower_end_unknown(given):
        # Its own case may stand there unmeasured; above, the case's top follows from the cylinder.
        found = [way for way in found if way.pattern != BELOW or way.kind not in ("hollow", "channel")]
    return tuple(found)


def _lower_end_unknown(given: OpeningInput) -> bool:
    """Tell whether the lock's case may reach farther down than the survey says."""
    lock = lock_item(given)
    return lock is None or (lock.lock_form in ("mortise", "euro-profile") and lock.case_height_mm is None)


def _hollow(given: OpeningInput, fit: Fit, leaf: Leaf, at: Cavity) -> list[Way]:
    size = lead_hole(leaf.material or "")
    part, unit = lock_part(given, fit), in_role(given, fit, "unit")
    if size is None or part is None:
        return []
    off = size.diameter_mm / 2 + distance_mm("hollow-gap")
    room = distance_mm("hollow-room")
    at_gate = part.kind == "gate-lock"
    inside = (leaf.thickness_mm or 0.0) / 2 if at_gate else at.lead_z
    own = 1 if at_gate else 0  # the hole behind the gate lock's case
    low, above_edge = at.top + off, None
    high = low + room
    top = existing_hole_top(given, leaf)
    if leaf.material == "aluminium" and top is not None and not at_gate:
        practice = top + template_mm(unit, "above-existing-hole")
        # In aluminium the hole goes above the one that is there already, by common practice of the trade.
        low = max(low, practice)
        high = low if leaf.construction == "narrow-stile" else low + room
        if leaf.construction == "narrow-stile":
            # Counted from the top of the hole that is there, so that the plate covers the new one (common practice).
            above_edge = top + template_mm(unit, "plate-above-hole") - low
    down = at.bottom - off

    def lead(y: float) -> float:
        if at_gate:
            return abs(y - at.y) + 2 * inside
        return added(dist(a, b) for a, b in pairwise(_round_case(given, part, leaf, at, (at.x, y))))

    above = Way(ABOVE, "hollow", Rect(at.x, low, at.x, high), lead(low), 1 + own, above_edge)
    below = Way(BELOW, "hollow", Rect(at.x, down - room, at.x, down), lead(down), 1 + own)
    return [above, below]


def _round_case(
    given: OpeningInput, part: Part | None, leaf: Leaf, at: Cavity, hole: tuple[float, float]
) -> list[Point]:
    """Return the lead's way inside a hollow leaf: out of the case on its key side, past its end, out by the hole."""
    start: Point = (at.x, at.y, at.lead_z)
    out: Point = (hole[0], hole[1], 0.0)
    if (lock := lock_item(given)) is None or lock.lock_form not in ("mortise", "euro-profile"):
        return [start, (hole[0], hole[1], at.lead_z), out]
    # The case fills the leaf behind the cylinder and is no way for a lead (common practice).
    off = template_mm(part, "lead-diameter") / 2
    beside = min(at.box.high[2] + off, leaf.thickness_mm or at.box.high[2])
    up = hole[1] > at.y
    end = at.top + off if up else at.bottom - off
    over = min(at.box.low[2] - off, beside)
    return [start, (at.x, at.y, beside), (at.x, end, beside), (at.x, end, max(over, 0.0)), out]


def _channel(unit: Part | None, at: Cavity) -> list[Way]:
    square, usual = template_mm(unit, "channel-square"), template_mm(unit, "above-cylinder")
    room = distance_mm("channel-room")
    # Nearer to the pocket the second bore would have to be steeper than a jig holds it.
    deeper = max(at.box.low[2] - square, square - at.box.high[2], 0.0)
    drop = max(deeper / tan(radians(angle_deg("channel-steepest"))), square)
    # The usual hole by common practice, 2 1/2 in above the cylinder, unless the case stands so high that the second
    # bore could not come down into it.
    low = max(at.y + usual, at.top + drop)
    high = min(at.y - usual, at.bottom - drop)
    return [
        Way(ABOVE, "channel", Rect(at.x, low, at.x, low + room), low - at.y + at.lead_z, 2),
        Way(BELOW, "channel", Rect(at.x, high - room, at.x, high), at.y - high + at.lead_z, 2),
    ]


def _slanted(given: OpeningInput, lock: Part | None, leaf: Leaf, at: Cavity) -> list[Way]:
    """One bore at 45 degrees into the cross bore; its hole stands off by as much as the bore goes deep."""
    thick = leaf.thickness_mm or 0.0
    lean, off = template_deg(lock, "bored-edge"), limits_of(_BORED_LEAD, given.settings)["angle_deg"]
    # So far aside that a bore through the whole leaf leans no less than it may; a shorter one soon leans too much.
    aside = thick * tan(radians(lean - off))
    x = at.x - aside
    steep = tan(radians(template_deg(lock, "bored-up")))
    near, far = aside / tan(radians(lean + off)) * steep, thick * steep
    reach = (near**2 + (near / steep) ** 2) ** 0.5
    return [
        Way(ABOVE, "slanted", Rect(x, at.top + near, x, at.top + far), at.top - at.y + reach, 1),
        Way(BELOW, "slanted", Rect(x, at.bottom - far, x, at.bottom - near), at.y - at.bottom + reach, 1),
    ]


def _surface(given: OpeningInput, fit: Fit, leaf: Leaf, at: Cavity, face: str) -> list[Way]:
    """Along the face from where the lock ends: nothing is drilled."""
    standing = (each for each in footprints(given, fit, face) if not each.other)
    lock = next((each.rect for each in standing if each.kind == "lock" and each.rect is not None), None)
    if lock is None:
        return []
    room = distance_mm("surface-room")
    own = 0
    return [
        Way(ABOVE, "surface", Rect(at.x, lock.y1, at.x, lock.y1 + room), lock.y1 - at.y + at.lead_z, own),
        Way(BELOW, "surface", Rect(at.x, lock.y0 - room, at.x, lock.y0), at.y - lock.y0 + at.lead_z, own),
        Way(BESIDE, "surface", Rect(lock.x1, at.y, lock.x1 + room, at.y), lock.x1 - at.x + at.lead_z, own),
    ]


def run_points(
    given: OpeningInput, fit: Fit, way: Way, leaf: Leaf, at: Cavity, hole: tuple[float, float], holes: tuple[Hole, ...]
) -> list[Point]:
    """Return the lead's way from the part to the access hole, without the stretch behind the plate."""
    x, y = hole
    start: Point = (at.x, at.y, at.lead_z)
    if way.kind == "square":
        return [start, (x, y, 0.0)]
    if way.kind == "hollow":
        part = lock_part(given, fit)
        if part is not None and part.kind == "gate-lock":
            middle = (leaf.thickness_mm or 0.0) / 2
            return [start, (at.x, at.y, middle), (x, y, middle), (x, y, 0.0)]
        return _round_case(given, part, leaf, at, hole)
    if way.kind == "surface":
        edge = _nearest(way.hole, at)
        return [start, (edge[0], edge[1], at.lead_z), (edge[0], edge[1], 0.0), (x, y, 0.0)]
    last = holes[-1]
    # Higher than the leaf, since heights here count from the floor: the bore must not end at a top that lies lower.
    size = LeafSize(leaf.width_mm or 0.0, (leaf.height_mm or 0.0) + 1000.0, leaf.thickness_mm or 0.0)
    entered = bore(as_bore(last, size, at.box))
    if way.kind == "slanted":
        return [start, entered.end, (x, y, 0.0)]
    return [start, entered.end, (x, y, last.from_depth_mm), (x, y, 0.0)]


def _nearest(rect: Rect, at: Cavity) -> tuple[float, float]:
    return min(max(at.x, rect.x0), rect.x1), min(max(at.y, rect.y0), rect.y1)


def holes_of(
    given: OpeningInput, fit: Fit, way: Way, leaf: Leaf, at: Cavity, hole: tuple[float, float]
) -> tuple[Hole, ...]:
    """Return the holes that a way costs, in the order in which they are made."""
    size = lead_hole(leaf.material or "")
    if size is None or way.kind == "surface":
        return ()
    relative = (round(hole[0] - at.x, 3), round(hole[1] - at.y, 3))
    access = Hole(
        "access hole for the lead",
        leaf_name(leaf),
        "inside",
        hole[0],
        hole[1],
        size.diameter_mm,
        size.pilot_mm,
        distance_mm("skin-depth"),
        from_cylinder_mm=relative,
        tool=size.bit,
        order=1,
    )
    if way.kind == "square":
        return (
            _through_for_reader(given, fit, access, at) or replace(access, depth_mm=round(_to_pocket(at, leaf), 3)),
        )
    if way.kind == "hollow":
        return _hollow_holes(given, fit, leaf, at, access)
    if way.kind == "slanted":
        return (_slanted_hole(lock_part(given, fit), access, way, leaf, at),)
    return _channel_holes(given, in_role(given, fit, "unit"), access, way, leaf, at)


def _through_for_reader(given: OpeningInput, fit: Fit, access: Hole, at: Cavity) -> Hole | None:
    """Return the one hole in which a reader stands and its lead goes on; None for any other part, or another place."""
    part, lock = lock_part(given, fit), lock_item(given)
    wide = part.number_of(HOLE_MM) if part is not None and part.kind == "fixed-reader" else None
    # Of a reader that is kept the hole is there, as deep as its body.
    if wide is None or lock is None or lock.disposition == "keep" or (access.x_mm, access.y_mm) != (at.x, at.y):
        return None
    return replace(
        access,
        name="hole for the reader and its lead",
        diameter_mm=wide,
        pilot_mm=None,
        depth_mm=None,
        tool="hole-saw",
        purpose="function",
    )


def _to_pocket(at: Cavity, leaf: Leaf) -> float:
    """Depth of a square hole opposite the cylinder: to the lock's case, or the sheet alone before it."""
    to_case = at.box.low[2]
    if leaf.material in SKINNED:
        # Through the sheet at least, though the case touches it from behind.
        return max(to_case, distance_mm("skin-depth"))
    return to_case if to_case > 0 else at.lead_z


def _hollow_holes(given: OpeningInput, fit: Fit, leaf: Leaf, at: Cavity, access: Hole) -> tuple[Hole, ...]:
    part = lock_part(given, fit)
    if part is None or part.kind != "gate-lock":
        return (access,)
    behind = replace(
        access,
        name="hole for the lead behind the lock's case",
        # The case is bolted onto the key side: there the lead goes into the tube.
        face="key",
        x_mm=at.x,
        y_mm=at.y,
        diameter_mm=template_mm(part, "gate-back-hole"),
        from_cylinder_mm=(0.0, 0.0),
    )
    return (behind, replace(access, order=2))


def _slanted_hole(lock: Part | None, access: Hole, way: Way, leaf: Leaf, at: Cavity) -> Hole:
    up = way.pattern == ABOVE
    drop = access.y_mm - at.top if up else at.bottom - access.y_mm
    steep = template_deg(lock, "bored-up")
    deep = drop / tan(radians(steep))
    # The bore must lead to the cross bore's centre line from wherever the hole came to lie, so that the angle follows
    # from the place.
    aside = degrees(atan((at.x - access.x_mm) / deep)) if deep > 0 else 0.0
    long = (deep**2 + drop**2 + (at.x - access.x_mm) ** 2) ** 0.5
    diameter = template_mm(lock, "bored-diameter")
    slanted = replace(
        access,
        name="lead's hole into the cross bore",
        diameter_mm=diameter,
        pilot_mm=None,
        # A hundredth more, so that what rounding takes off does not leave the bore short of its cavity.
        depth_mm=round(long + 0.01, 3),
        up_deg=-steep if up else steep,
        edge_deg=-aside,
        tool="twist-drill",
    )
    long_in_face = diameter / 2 / sin(radians(drill_angle_deg(slanted)))
    return replace(slanted, slot_mm=round(long_in_face if up else -long_in_face, 3))


def _channel_holes(
    given: OpeningInput, unit: Part | None, access: Hole, way: Way, leaf: Leaf, at: Cavity
) -> tuple[Hole, ...]:
    square, diameter = template_mm(unit, "channel-square"), template_mm(unit, "channel-diameter")
    angle = _channel_angle(template_deg(unit, "channel-angle"), way.lean, access, leaf, at, square, diameter)
    down = way.pattern == ABOVE
    drop = access.y_mm - at.top if down else at.bottom - access.y_mm
    # A rim lock stands on the leaf: what is hollow there is the hole of its cylinder.
    goal = "cylinder's hole" if lock_form(given) == "rim" else "lock's pocket"
    slanted = replace(
        access,
        name=f"channel for the lead into the {goal}",
        diameter_mm=diameter,
        pilot_mm=None,
        depth_mm=round(max(drop, 1.0) / cos(radians(angle)) + 0.01, 3),
        up_deg=-(90.0 - angle) if down else 90.0 - angle,
        from_depth_mm=square,
        purpose="channel",
        tool="twist-drill",
        order=2,
    )
    # As the bit comes down to its angle it cuts a slot out of the face: its axis leaves the leaf that far off, and its
    # section in the face is longer than the bit is wide.
    reach = square / tan(radians(angle)) + diameter / 2 / sin(radians(angle))
    # One long bit bores both, square first and then leaning (common practice): the slot is as wide as its bit.
    access = replace(access, diameter_mm=diameter, pilot_mm=None, tool="twist-drill")
    return replace(access, depth_mm=square, slot_mm=round(reach if down else -reach, 3)), slanted


def _channel_angle(
    usual: float, lean: Lean, access: Hole, leaf: Leaf, at: Cavity, square: float, diameter: float
) -> float:
    """Return the angle that is leant to: the usual one where it leads into the pocket, else the nearest that does."""
    size = LeafSize(leaf.width_mm or 0.0, max(at.top, access.y_mm) + 100.0, leaf.thickness_mm or 0.0)
    pocket = Box(at.box.low, at.box.high)
    try:
        found = channel(
            ChannelInput(size, "inside", access.x_mm, access.y_mm, pocket, square, usual, diameter)
        ).angles_deg
    except InputError:
        return usual
    if found is None:
        return usual
    low, high = found
    # Nothing is bored along the face itself; the rules say how flat a bit can still be held.
    low = max(low, _LEAST_DEG)
    high = max(min(high, max(low, angle_deg("channel-steepest"))), low)
    wanted = {"usual": usual, "flattest": low, "steepest": high}[lean]
    # The usual angle of common practice as long as it ends in the pocket, else as near to it as does: the flatter a bit
    # lies, the longer is its slot, and the steeper, the sooner it comes out of the far face.
    if low < wanted < high:
        return wanted
    if lean == "usual":
        # Aimed at where the bit comes in whole, as long as the pocket is wide enough for that.
        drop, half = max(access.y_mm - at.top, at.bottom - access.y_mm, 1.0), diameter / 2
        into = [degrees(atan((z - square) / drop)) for z in (pocket.low[2] + half, pocket.high[2] - half)]
        if low <= into[0] < into[1] <= high:
            low, high = into
    inside = min(max(wanted, low), high)
    return (floor(inside * 100) if inside > (low + high) / 2 else ceil(inside * 100)) / 100
