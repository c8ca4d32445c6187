"""Searches, for an opening that the program refuses, whether some combination and place exists all the same.

Plain enumeration: each lock's part with each stack, each unit at each place of a grid that is refined where the coarse
one finds none, each screw, each way of the lead, each source of power. A witness must keep what the trade keeps
(distances below) and be found free of every violation by the same judges that judge the program. Searched are all forms
of lock, glass and walls included.

What the search does not try, so that it never says feasible by a way that a shop would not go: a bore at 45 degrees
without the jig of a bored lock, moved items, a lead on the surface where it can be led inside.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import combinations_with_replacement, islice, pairwise
from math import radians, sin, tan
from typing import Any, Final

from tests.verifier import judging_hands, judging_locks, judging_power, judging_tools, judging_units
from tests.verifier.bodies import TOLERANCE_MM, Body, Box, Point, Rod, circle_meets, meet
from tests.verifier.cells import Cells, Opening
from tests.verifier.held import on_face
from tests.verifier.standing import CYLINDER_HOLE_MM, INCH, SKINNED, SOLID, Bore, Rect, Standing, screw_spots

CLEAR_MM: Final = 3 / 16 * INCH
"""Between the unit and what stands on the face; from memory, unverified."""
WIDER_MM: Final = {"Lite or vision panel": 12.7, "Louvre": 12.7, "Exit device": 12.7, "Closer": 25.4}
"""The same to what is wider kept off: 1/2 in to glass and devices, 1 in to a closer; from memory, unverified."""
EDGE_MM: Final = 3.175
"""Between the unit and the leaf's edge, or the band of the stop; from memory, unverified."""
BRIDGE_MM: Final = 0.75 * INCH
"""Between the lock's pocket and that of a unit in the edge; common practice."""
LONG_FRONT_MM: Final = 8.0 * INCH
"""Front of a mortise lock in the lock edge; 86 preparation, one secondary copy."""
SIDE_MM: Final = 9.525
"""Wall beside such a pocket; from memory, unverified."""
GRIP_MM: Final = 9.525
"""Tailpiece into its case; from memory, unverified."""
HOLE_MM: Final = {"Aluminium": 19.05}
"""Hole for the lead by material, else 1/2 in; common practice."""
TOLERATED: Final = ("no-wire-across-leaf",)
"""Whether a wire has a way across the leaf is asked before, of the leaf alone."""
RACEWAY_WALL_MM: Final = 6.35
RACEWAY_MM: Final = 9.525
RACEWAY_REACH_MM: Final = 1219.2
"""Wood beside a way bored across a leaf, from memory; its diameter and the widest leaf of a clamp fixture, trade
article."""
CHANNEL_MM: Final = 9.525
CHANNEL_ABOVE_MM: Final = 2.5 * INCH
CHANNEL_DEG: Final = 10.0
"""Square and slanted bore of 3/8 in, 2-1/2 in above the cylinder, the slanted one 10 degrees to the face; common
practice."""
BORED_MM: Final = 9.525
BORED_DEG: Final = 45.0
LEAN_DEG: Final = 15.0
"""Of a bored lock's lead hole, where its maker says nothing: diameter, slope, how far it leans toward the lock edge as
the jig on the bolt holes has it; common practice."""
WARM: Final = 1.3
"""Resistance of a stranded conductor at 75 degC over that of solid copper at 20 degC: 1.22 by temperature, the rest for
its lay and its ends."""
SLACK_M: Final = 1.0
WARM_C: Final = 20.0
"""Temperature for which capacities are stated; under it all that the data sheet leaves in the cold is counted on."""
COLD_LEFT: Final = {
    "alkaline": ((-20.0, 0.1), (0.0, 0.5), (20.0, 1.0)),
    "lithium-iron-disulfide": ((-40.0, 0.4), (-20.0, 0.8), (20.0, 1.0)),
    "lithium-manganese-dioxide": ((-30.0, 0.3), (-20.0, 0.5), (20.0, 1.0)),
}
"""What the cold leaves at the least where the data sheet does not say: by chemistry, degC and share; from memory."""
NUT_AND_WASHER_MM: Final = 8.0
"""Of an M8 bolt past case and gate; ISO 7089 and ISO 4032, from memory."""
GATE_HOLE_MM: Final = 19.05
"""Behind a gate lock's case; from memory, unverified."""
LEFT_MM: Final = 3.175
"""Of the leaf before a screw's point; from memory, unverified."""
RACEWAY_HALF_MM: Final = 12.7
"""Half of what a raceway takes of the face; from memory, unverified."""
SPANNER: Final = (12.5, 0.55)
OVER_MM: Final = 2.5
"""Length and half the width of an ordinary spanner, in widths across flats, and what it passes over; from memory."""
SCREW_MM: Final = 1.75
"""Half of a No. 6 screw; ASME B18.6.1, secondary copies."""
SCREW_WALL_MM: Final = 1.5875
"""Between a screw and a hole for the lead; from memory, unverified."""
BIT_MM: Final = 12 * INCH
"""The usual long bit, where the shop's list has none; encyclopedia: 6, 8, 12 and 18 in."""
DRILL_MM: Final = 28.0
"""From the axis of the slimmest drill to its side; from memory, unverified."""
FACE_WALL_MM: Final = 3.175
"""Left between a bore and the face that it must not break through: 1/8 in; from memory, unverified."""
FIXING_WALL_MM: Final = 3.175
"""Between a hole and a spindle, or what holds an item in the leaf; from memory, unverified."""
ROD_HOLE_MM: Final = 4.7625
"""What the channel of an exit device's rod of 3/8 in is wider on each side: 3/4 in; from memory, unverified."""
ROD_GUIDE_MM: Final = 12.7
LATCH_MM: Final = 25.4
"""Half of what a rod's guides and its latch take of the face; from memory, unverified."""
SOCKET_MM: Final = 0.375 * INCH
"""Half of a socket on the nut of a 5/16 in or M8 bolt; from memory, unverified."""
PINCH_MM: Final = 0.5 * INCH
FINGER_MM: Final = 3.0 * INCH
"""Half of thumb and finger about a lead, and how far out of the face they reach; from memory, unverified."""
FINGERS_MM: Final = 1.5 * INCH
LONG_TURN_MM: Final = 2.0 * INCH
"""Across a turn with thumb and finger beside it, where no ring or plate as broad leaves that room; the longest turn;
from memory, unverified."""
FREE_FACE_MM: Final = 250.0
"""Beyond it nothing may stand on the face for a raceway over it to be taken as free."""
_STEP_MM: Final = 8.0
_REFINED_MM: Final = 1.0
_MOST_PLACES: Final = 30
"""Free places judged for one hole; more of them seldom differ in what is wrong with them."""

Roles = dict[str, list[tuple[str, Cells, float]]]


@dataclass(frozen=True)
class Witness:
    """A combination and a place that fit."""

    parts: tuple[str, ...]
    way: str
    x_mm: float
    y_mm: float

    def __str__(self) -> str:
        where = (
            f"plate at x {self.x_mm:.1f}, y {self.y_mm:.1f}" if self.way != "edge" else f"pocket at y {self.y_mm:.1f}"
        )
        return f"{', '.join(self.parts)}; {self.way}, {where}"


@dataclass(frozen=True)
class _Way:
    name: str
    hole: Point
    bores: tuple[Bore, ...]
    run: tuple[Point, ...]
    """From the cylinder to the face."""


def search(opening: Opening, parts: dict[str, Cells]) -> Witness | None:
    """Return a witness that the opening can be fitted; None where the search finds none."""
    if not opening.leaves:
        return _on_wall(opening, parts)
    seen: set[tuple[object, ...]] = set()
    for lock in _locks(opening, parts):
        bare = _standing(opening, parts, lock)
        part = bare.locking
        # Locks that leave a unit the same room and the same lead are searched once.
        alike = (
            part.get("lead"),
            part.get("trim"),
            round(bare.under_head() - part.get("length", 0.0), 1),
            part["plug"],
        )
        if (
            alike in seen
            or list(judging_locks.judged(bare))
            or _on_items(bare)
            or _bore_near_glass(bare)
            or _head_under_lever(bare)
        ):
            continue
        seen.add(alike)
        for number, unit in _of_kind(parts, "surface-unit"):
            found = _on_face(bare, number, unit)
            if found is not None:
                return found
        for number, unit in _of_kind(parts, "edge-unit"):
            found = _in_edge(bare, number, unit)
            if found is not None:
                return found
    return None


def _bore_near_glass(bare: Standing) -> bool:
    """Tell whether a bore that the lock needs comes nearer to glass than the trade cuts."""
    glass = [body for kind, body in bare.bodies() if kind in ("Lite or vision panel", "Louvre")]
    return any(meet(bore.body, body, WIDER_MM["Louvre"]) for bore in bare.bores for body in glass)


def _on_items(bare: Standing) -> bool:
    """Tell whether a gate lock's case, or a socket on its nuts, would stand on what stays."""
    part, (x, y) = bare.locking, bare.at
    if part["kind"] != "gate-lock":
        return False
    w, h = part["case_width"] / 2, part["case_height"] / 2
    items = [
        rect
        for item, rect in bare.items("Inside", "Key side", "Both faces")
        if item["kind"] not in ("Trim or escutcheon", "Push plate", "Kick plate")
    ]
    return any(x - w < r[2] and r[0] < x + w and y - h < r[3] and r[1] < y + h for r in items)


def _hand_at_lead(at: Standing) -> bool:
    """Tell whether thumb and finger come to each hole for the lead beside all that stands out and stays."""
    face = at.place["face"]
    start, out = (0.0, -1.0) if face == "inside" else (at.thick, 1.0)
    stays = [box for _, box in judging_tools.standing_out(at, face, start, out)]
    holes = [b.body.start for b in at.bores if b.purpose == "cable" and b.face == face and isinstance(b.body, Rod)]
    hands = [Rod((x, y, start), (x, y, start + out * FINGER_MM), PINCH_MM) for x, y, _ in holes]
    return not any(meet(hand, box) for hand in hands for box in stays)


def _swept(rect: Rect) -> Rect:
    """Return what a lever comes over on its way down."""
    x0, y0, x1, y1 = rect
    return x0, y0 - 0.71 * (x1 - x0), x1, y1


def _head_under_lever(bare: Standing) -> bool:
    """Tell whether a new rose stands where a lever that stays comes down."""
    if bare.locking["kind"] != "bored-lever-lock":
        return False
    (x, y), radius = bare.at, bare.locking["trim"] / 2
    levers = [rect for item, rect in bare.items("Inside", "Key side", "Both faces") if item["kind"] == "Lever or knob"]
    return any(circle_meets(x, y, radius, _swept(rect)) for rect in levers)


def _of_kind(parts: dict[str, Cells], kind: str) -> list[tuple[str, Cells]]:
    return [(number, part) for number, part in parts.items() if part["kind"] == kind]


def _standing(opening: Opening, parts: dict[str, Cells], roles: Roles, stack: Cells | None = None) -> Standing:
    at = Standing(opening, parts, roles, {}, [], [], [], stack or roles.pop("stack", [("", {}, 1)])[0][1], "none")
    if at.locking["kind"] == "bored-lever-lock" and at.locking["cross_bore"] > opening.lock["cross_bore"]:
        x, y = at.at
        body = Rod((x, y, 0.0), (x, y, at.thick), at.locking["cross_bore"] / 2)
        at.bores.append(Bore("cross bore, enlarged", "bore", "inside", body, 0.0, at.locking["cross_bore"]))
    return at


# --- the lock -------------------------------------------------------------------------------------------------------


def _locks(opening: Opening, parts: dict[str, Cells]) -> Iterator[Roles]:
    lock, leaf = opening.lock, opening.leaf()
    form = lock["lock"].split(",")[0].split()[0]
    if form == "Mortise":
        yield from _threaded(lock, leaf, parts)
    elif form == "Rim":
        for number, part in _of_kind(parts, "rim-cylinder"):
            yield from _tails(number, part, lock, leaf)
    elif form == "Bored":
        for number, part in _of_kind(parts, "bored-lever-lock"):
            ready = part["cross_bore"] <= lock["cross_bore"] + 1.5 and part["edge_bore"] <= lock["edge_bore"] + 1.5
            # An existing bore is enlarged with a jig; on a rated leaf only its listing could allow it.
            if ready or opening.facts["rating"] == "Not rated":
                yield {"lock": [(number, part, 1.0)]}
    elif form == "Gate":
        for number, part in _of_kind(parts, "gate-lock"):
            # One that carries its own unit has neither lead nor plate.
            if part.get("own_unit") != "yes":
                yield from _gates(number, part, leaf, parts)
    elif form == "Cabinet":
        for number, part in _of_kind(parts, "cabinet-lock"):
            if part["grip_low"] <= leaf["thick"]:
                yield {"lock": [(number, part, 1.0)]}
    elif form == "Euro":
        for number, part in _of_kind(parts, "euro-cylinder"):
            yield {"cylinder": [(number, part, 1.0)]}


def _threaded(lock: Cells, leaf: Cells, parts: dict[str, Cells]) -> Iterator[Roles]:
    centre = leaf["thick"] / 2 - (lock.get("case_offset") or 0.0)
    cams = [each for each in _of_kind(parts, "cam") if each[1]["cam_form"] == lock["cam"]]
    rings = _of_kind(parts, "ring")
    for number, part in _of_kind(parts, "mortise-cylinder"):
        fitting = [each for each in cams if each[1]["fits"] == part["fixing"]]
        if not fitting:
            continue
        for collar in _of_kind(parts, "collar"):
            for stack in [(), *((r,) for r in rings), *combinations_with_replacement(rings, 2)]:
                under = lock["trim_key"] + collar[1]["height"] + sum(ring["height"] for _, ring in stack)
                beyond = part["length"] + part["cam_offset"] - under - centre
                turn = round(beyond / part["pitch"])
                # Only whole turns, since the keyway stands upright.
                if turn in (0, 1, 2) and abs(beyond - turn * part["pitch"]) < TOLERANCE_MM:
                    roles: Roles = {"cylinder": [(number, part, 1.0)], "cam": [(*fitting[0], 1.0)]}
                    roles["collar"] = [(*collar, 1.0)]
                    roles["ring"] = [(*ring, 1.0) for ring in stack]
                    yield roles
                    break


def _gates(number: str, part: Cells, leaf: Cells, parts: dict[str, Cells]) -> Iterator[Roles]:
    if part["mounting"] != "Bolted on":
        yield {"lock": [(number, part, 1.0)]}
        return
    for bolt in _of_kind(parts, "fastener"):
        long = leaf["thick"] + part["case_depth"] + NUT_AND_WASHER_MM
        if (
            bolt[1]["form"] == "Through bolt"
            and bolt[1].get("material") == leaf["material"]
            and bolt[1]["length"] >= long
        ):
            yield {"lock": [(number, part, 1.0)], "fastener": [(*bolt, 4.0)]}


def _tails(number: str, part: Cells, lock: Cells, leaf: Cells) -> Iterator[Roles]:
    reach = part["body"] - lock["trim_key"] - leaf["thick"]
    for pieces in range(int(part["tail"] / part["step"])):
        left = part["tail"] - pieces * part["step"]
        if reach + left >= GRIP_MM and reach + left <= lock["case_width"] - judging_locks.CASE_WALL_MM:
            yield {"cylinder": [(number, part, 1.0)], "stack": [("", {"cut_off_mm": pieces * part["step"]}, 1.0)]}
            return


# --- a unit on the face ---------------------------------------------------------------------------------------------


def _on_face(bare: Standing, number: str, unit: Cells) -> Witness | None:
    opening = bare.opening
    if opening.facts.get("exposure") == "Exterior" and unit["exposure"] != "Exterior":
        return None
    if not _mates(bare, unit):
        return None
    kept, screws, powered = _kept_off(bare), _screws(bare, unit), _fed(bare, number, unit)
    if powered is None or not screws:
        return None
    power, more = powered
    held = [body for kind, body in bare.bodies() if kind not in ("Lite or vision panel", "Louvre")]
    for way in _ways(bare, unit):
        if _through_fixing(way, held) or not _drillable(way, bare.parts):
            continue
        for x, y in islice(_places(bare, unit, way, kept), _MOST_PLACES):
            for screw in screws:
                roles: Roles = {"fastener": [(*screw, unit["screws"])], **more}
                at = _complete(bare, number, unit, way, (x, y), roles, power)
                if at is not None:
                    return _witness(at, way.name, x, y)
    return None


def _mates(bare: Standing, unit: Cells) -> bool:
    """Tell whether the lock's plug goes into a unit, by itself or by one extension."""
    plug = bare.locking["plug"]
    return plug == unit["socket"] or any(
        each["socket"] == plug and each["plug"] == unit["socket"] for _, each in _of_kind(bare.parts, "lead-extension")
    )


def _through_fixing(way: _Way, held: list[Body]) -> bool:
    """Tell whether a way comes nearer to a spindle, or to what holds an item, than the trade drills."""
    cut = [part for bore in way.bores for part in (bore.body, *judging_units.slot_of(bore))]
    return any(meet(each, body, FIXING_WALL_MM + _around(body)) for each in cut for body in held)


def _around(body: Body) -> float:
    return 0.0 if isinstance(body, Rod) and body.start[:2] == body.end[:2] else ROD_HOLE_MM


def _fed(bare: Standing, number: str, unit: Cells) -> tuple[str, Roles] | None:
    """Return the first way to feed a unit that is sound by itself: it does not depend on where the unit stands."""
    for power, more in _powers(bare, unit):
        roles = bare.roles | {"unit": [(number, unit, 1.0)]} | more
        at = Standing(bare.opening, bare.parts, roles, {}, [], [], [], bare.stack, power)
        unlisted = any(family == "rated-unlisted" for family, _, _ in judging_locks.judged(at))
        if all(family in TOLERATED for family, _, _ in judging_power.judged(at)) and _arrives(at) and not unlisted:
            return power, more
    return None


def _arrives(at: Standing) -> bool:
    """Tell whether enough arrives also over warm, stranded wire with what leads across the leaf: a sure witness."""
    unit, source, wire, transfer = at.unit, at.part("supply"), at.part("wire"), at.part("power-transfer")
    if unit is None or source is None or wire is None or transfer is None:
        return True
    over = (at.leaf["width"] + 2 * at.leaf["height"]) / 1000 if at.leaf else 0.0
    run = at.opening.facts["distance"] + over + SLACK_M
    ohm = 2 * run * judging_power.ohm_per_m(wire["gauge"])
    ohm += 2 * transfer["length"] / 1000 * judging_power.ohm_per_m(transfer["gauge"])
    peak = max(unit["supply_a"], unit.get("inrush_a") or 0.0)
    left = source["volts"] * (1 - source["tolerance"]) - peak * ohm * WARM
    # At its rated load a supply is loaded to four fifths, as the trade does.
    return bool(left >= unit["supply_low"] and peak <= 0.8 * source["amps"])


def _witness(at: Standing, way: str, x: float, y: float) -> Witness:
    order = (
        "cylinder",
        "lock",
        "cam",
        "collar",
        "ring",
        "unit",
        "fastener",
        "lead-extension",
        "battery",
        "supply",
        "wire",
    )
    return Witness(tuple(each[0] for role in order for each in at.roles.get(role, [])), way, x, y)


def _kept_off(bare: Standing) -> list[Rect]:
    """What the unit keeps clear of on the inside face, its clearance added; a lever with what it sweeps."""
    found: list[Rect] = [
        (x0 - EDGE_MM, y0 - EDGE_MM, x1 + EDGE_MM, y1 + EDGE_MM) for x0, y0, x1, y1 in bare.stops("inside")
    ]
    rects = []
    for item, (x0, y0, x1, y1) in bare.items("Inside", "Both faces"):
        more = WIDER_MM.get(item["kind"], CLEAR_MM) - CLEAR_MM
        x0, y0, x1, y1 = x0 - more, y0 - more, x1 + more, y1 + more
        rect = (x0, y0, x1, y1)
        rects.append(_swept(rect) if item["kind"] == "Lever or knob" else rect)
        rods = on_face(item, bare.low, bare.top, ROD_GUIDE_MM, LATCH_MM)
        rects += [(a - more, b - more, c + more, d + more) for a, b, c, d in rods]
    x, y = bare.at
    part, lock_case = bare.locking, bare.lock_case()
    if part["kind"] == "bored-lever-lock":
        rects.append((x - part["trim"] / 2, y - part["trim"] / 2, x + part["trim"] / 2, y + part["trim"] / 2))
    if part["kind"] == "rim-cylinder" and lock_case is not None:
        rects.append((lock_case.low[0], lock_case.low[1], lock_case.high[0], lock_case.high[1]))
    if part["kind"] == "gate-lock":
        half = part["case_width"] / 2, part["case_height"] / 2
        rects.append((x - half[0], y - half[1], x + half[0], y + half[1]))
    if part["kind"] == "cabinet-lock":
        rects.append((x - part["thread"], y - part["thread"], x + part["thread"], y + part["thread"]))
    if part["kind"] == "euro-cylinder" and part["inside_half"] > judging_locks.BLIND_HALF_MM:
        rects.append((x - 25.0, y - 25.0, x + 25.0, y + 25.0))
    turned = any(item["kind"] == "Thumb turn" for item in bare.opening.items)
    if bare.lock.get("thumb_turn") == "yes" and part["kind"] == "mortise-cylinder" and not turned:
        rects.append((x - 15.0, y - 25.0, x + 15.0, y + 25.0))
    for tx, ty, (x0, y0, x1, y1) in judging_hands.turns(bare):
        if min(x1 - x0, y1 - y0) < FINGERS_MM:
            r = max(FINGERS_MM, min(max(x1 - x0, y1 - y0), LONG_TURN_MM)) / 2
            rects.append((tx - r, ty - r, tx + r, ty + r))
    found += [(x0 - CLEAR_MM, y0 - CLEAR_MM, x1 + CLEAR_MM, y1 + CLEAR_MM) for x0, y0, x1, y1 in rects]
    sockets = judging_hands.nuts(bare, "inside")
    found += [(x - SOCKET_MM, y - SOCKET_MM, x + SOCKET_MM, y + SOCKET_MM) for _, x, y in sockets]
    return found


def _ways(bare: Standing, unit: Cells) -> Iterator[_Way]:
    leaf, part, (x, y) = bare.leaf, bare.locking, bare.at
    material, t = leaf["material"], bare.thick
    size = HOLE_MM.get(material, 12.7)
    kind = part["kind"]
    half = kind == "euro-cylinder" and part["inside_half"] <= judging_locks.BLIND_HALF_MM
    lock_case = bare.lock_case()
    if material == "Glass" or kind == "cabinet-lock":
        yield from _over_face(bare)
        return
    if kind == "gate-lock":
        yield from _behind_gate(bare, size)
        return
    if (kind == "mortise-cylinder" or half) and lock_case is not None:
        depth = max(lock_case.low[2], 3.0)
        yield _square(x, y, depth, size, t / 2, "square")
    own = [body.bounds() for _, body in bare.own_bores()]
    top = max((b.high[1] for b in own), default=y)
    low = min((b.low[1] for b in own), default=y)
    if material in SKINNED:
        narrow = leaf.get("construction") == "Narrow stile"
        if narrow:
            above = unit.get("hole_above") or judging_units.TOP_TO_HOLE_MM
            hole_y = max(y + 0.625 * INCH + above, top + size / 2 + judging_units.HOLE_CLEAR_MM)
            zk = lock_case.high[2] if lock_case is not None else t / 2
            yield _square(x, hole_y, 6.35, size, t / 2, "narrow", ((x, y, zk), (x, top, zk)))
            return
        off = size / 2 + 3.175
        steps = [i * 8.0 for i in range(26)]
        for hole_y in (*(top + off + s for s in steps), *(low - off - s for s in steps)):
            yield _square(x, hole_y, 6.35, size, t / 2, "hollow", ((x, y, t / 2), (x, hole_y, t / 2)))
    elif material in SOLID and kind == "rim-cylinder" and bare.opening.facts.get("rating") == "Not rated":
        yield from _channels(bare, unit)
    elif material in SOLID and kind != "bored-lever-lock" and bare.opening.facts.get("rating") == "Not rated":
        yield from _into_pocket(bare, unit)
    elif material in SOLID and kind == "bored-lever-lock":
        # One bore into the round bore, at 45 degrees as deep as it stands off; the jig leans it toward the edge.
        lean, wide = tan(radians(part.get("lead_edge") or LEAN_DEG)), part.get("lead_hole") or BORED_MM
        for i in range(1, 9):
            deep = t * i / 10
            drop = deep * tan(radians(part.get("lead_up") or BORED_DEG))
            for sign, edge in ((1.0, top), (-1.0, low)):
                start = (x - deep * lean, edge + sign * drop, 0.0)
                end = (x, edge, deep)
                bore = Bore("lead's hole", "cable", "inside", Rod(start, end, wide / 2), 0.0, wide)
                yield _Way("slanted", start, (bore,), ((x, y, min(t / 2, deep)), (x, edge, deep), start))


def _over_face(bare: Standing) -> Iterator[_Way]:
    """Yield the lead's way over the face, from where patch or nut ends: up, down, and toward the hinges."""
    (x, y), part, cabinet = bare.at, bare.locking, bare.locking["kind"] == "cabinet-lock"
    z = 0.0 if cabinet else bare.thick / 2
    up = part["thread"] if cabinet else bare.lock["ih"] / 2
    side = x + part["thread"] if cabinet else bare.lock["ix"] + bare.lock["iw"] / 2
    for sign in (1.0, -1.0):
        for i in range(5):
            edge, under = y + sign * up, y + sign * (up + CLEAR_MM + 2.0 * i)
            yield _Way("surface", (x, under, 0.0), (), ((x, y, z), (x, edge, z), (x, edge, 0.0), (x, under, 0.0)))
    for i in range(5):
        past = side + CLEAR_MM + 2.0 * i
        yield _Way("surface", (past, y, 0.0), (), ((x, y, z), (side, y, z), (side, y, 0.0), (past, y, 0.0)))


def _behind_gate(bare: Standing, size: float) -> Iterator[_Way]:
    """Yield the two holes into a gate's tube: one behind the lock's case, one above or below it."""
    (x, y), t = bare.at, bare.thick
    behind = Bore("hole behind", "cable", "key", Rod((x, y, t), (x, y, t - 6.35), GATE_HOLE_MM / 2), 0.0, GATE_HOLE_MM)
    for sign in (1.0, -1.0):
        for i in range(12):
            hole_y = y + sign * (bare.locking["case_height"] / 2 + size / 2 + 3.175 + 8.0 * i)
            body = Rod((x, hole_y, 0.0), (x, hole_y, 6.35), size / 2)
            bore = Bore("access hole", "cable", "inside", body, 0.0, size)
            run = ((x, y, t), (x, y, t / 2), (x, hole_y, t / 2), (x, hole_y, 0.0))
            yield _Way("gate", (x, hole_y, 0.0), (behind, bore), run)


def _channels(bare: Standing, unit: Cells) -> Iterator[_Way]:
    """Yield the two bores into a rim cylinder's hole: a square one from the face, a slanted one out of its bottom."""
    (x, y), part = bare.at, bare.locking
    back = bare.thick - (part["body"] - bare.lock["trim_key"])
    body = Rod((x, y, back), (x, y, bare.thick), part["body_diameter"] / 2)
    # Into the cylinder no bore may run. By a maker's template it may come in half beside it, whose hole is wider; where
    # none says so, the whole bit stays behind it, where the hole is open.
    beside = 0.0 if unit.get("hole_from") else (unit.get("channel_diameter") or CHANNEL_MM) / 2
    for i in range(8):
        way = _channel(bare, unit, y + (unit.get("hole_from") or CHANNEL_ABOVE_MM) + 4.0 * i, y + CYLINDER_HOLE_MM / 2)
        if way.run[0][2] + beside <= back and not any(meet(bore.body, body) for bore in way.bores):
            yield replace(way, run=((x, y, back), *way.run))


def _into_pocket(bare: Standing, unit: Cells) -> Iterator[_Way]:
    """Yield the same two bores into the pocket of a lock's case: so far above it that the slanted one comes into it."""
    (x, y), lock_case = bare.at, bare.lock_case()
    if lock_case is None:
        return
    for i in range(1, 40):
        way = _channel(bare, unit, lock_case.high[1] + 4.0 * i, lock_case.high[1])
        # Half of the bit may come in beside the case; not so near to the far face that it breaks through.
        far = way.run[0][2] + (unit.get("channel_diameter") or CHANNEL_MM) / 2 + FACE_WALL_MM
        if lock_case.low[2] <= way.run[0][2] <= lock_case.high[2] and far <= bare.thick:
            yield replace(way, run=((x, y, way.run[0][2]), *way.run))


def _channel(bare: Standing, unit: Cells, hole_y: float, edge: float) -> _Way:
    """Return a square bore from the inside face and a slanted one out of its bottom down to a height."""
    wide, entry = unit.get("channel_diameter") or CHANNEL_MM, unit.get("channel_entry") or CHANNEL_MM
    tilt = radians(unit.get("channel_angle") or CHANNEL_DEG)
    (x, _), r = bare.at, wide / 2
    foot, end = (x, hole_y, entry), (x, edge, entry + (hole_y - edge) * tan(tilt))
    bores = (
        Bore(
            "access hole",
            "cable",
            "inside",
            Rod((x, hole_y, 0.0), foot, r),
            0.0,
            wide,
            entry / tan(tilt) + r / sin(tilt),
        ),
        Bore("channel", "channel", "inside", Rod(foot, end, r), entry, wide),
    )
    return _Way("channel", (x, hole_y, 0.0), bores, (end, foot, (x, hole_y, 0.0)))


def _square(x: float, y: float, depth: float, size: float, z: float, name: str, run: tuple[Point, ...] = ()) -> _Way:
    bore = Bore("access hole", "cable", "inside", Rod((x, y, 0.0), (x, y, depth), size / 2), 0.0, size)
    return _Way(name, (x, y, 0.0), (bore,), (*(run or ((x, y, z),)), (x, y, 0.0)))


def _places(bare: Standing, unit: Cells, way: _Way, kept: list[Rect]) -> Iterator[tuple[float, float]]:
    """Yield where the plate may stand over the hole, on a coarse grid first, then finer."""
    w, h = unit["width"], unit["height"]
    hx, hy, _ = way.hole
    x0, x1 = hx - unit["window_x1"], hx - unit["window_x0"]
    y0, y1 = hy - unit["window_y1"], hy - unit["window_y0"]
    if way.name == "narrow":
        y = bare.at[1] + 0.625 * INCH + (unit.get("plate_above") or judging_units.TOP_TO_PLATE_MM)
        if not y0 <= y <= y1:
            return
        y0 = y1 = y
    right = bare.leaf["width"] if bare.stile is None else bare.stile
    for step in (_STEP_MM, _REFINED_MM):
        found = False
        rows = _grid(max(y0, bare.low + EDGE_MM), min(y1, bare.top - EDGE_MM - h), step)
        free: dict[tuple[tuple[float, float], ...], list[float]] = {}
        for x in _grid(max(x0, EDGE_MM), min(x1, right - EDGE_MM - w), step):
            # Of what is kept off most stands beside: what stands above or below an x stands so for many.
            spans = tuple([(r[1], r[3]) for r in kept if x < r[2] and x + w > r[0]])
            if spans not in free:
                free[spans] = [y for y in rows if not any(y < high and y + h > low for low, high in spans)]
            for y in free[spans]:
                found = True
                yield x, y
        if found:
            return


def _grid(low: float, high: float, step: float) -> list[float]:
    if low > high:
        return []
    values = [low + i * step for i in range(int((high - low) / step) + 1)]
    return values if values[-1] == high else [*values, high]


def _screws(bare: Standing, unit: Cells) -> list[tuple[str, Cells]]:
    stock = [each for each in _of_kind(bare.parts, "fastener") if each[1].get("material") == bare.leaf["material"]]
    if bare.leaf["material"] == "Glass":
        return [each for each in stock if each[1]["form"] == "Adhesive pad"] if unit["glass"] == "yes" else []
    most = bare.thick - LEFT_MM + (unit.get("seat") or 0.0)
    return [
        each
        for each in stock
        if each[1]["size"] == unit.get("screw") and (each[1]["form"] == "Machine screw" or each[1]["length"] <= most)
    ]


def _on_wall(opening: Opening, parts: dict[str, Cells]) -> Witness | None:
    """Return a reader with a unit beside it, on a wall."""
    for reader in _of_kind(parts, "fixed-reader"):
        for number, unit in _of_kind(parts, "surface-unit"):
            roles: Roles = {"reader": [(*reader, 1.0)], "stack": [("", {}, 1.0)]}
            bare = _standing(opening, parts, roles)
            held = any(
                part.get("wall") == opening.facts["wall"] and part["size"] == unit.get("screw")
                for _, part in _of_kind(parts, "fastener")
            )
            weather = opening.facts["exposure"] == "Exterior" and unit["exposure"] != "Exterior"
            if held and not weather and (powered := _fed(bare, number, unit)) is not None:
                bare.roles |= {"unit": [(number, unit, 1.0)], **powered[1]}
                return _witness(bare, "wall", 0.0, opening.lock["y"])
    return None


def _powers(bare: Standing, unit: Cells) -> Iterator[tuple[str, Roles]]:
    wish = bare.opening.facts["power_wish"]
    if wish != "Remote supply":
        for cell in _of_kind(bare.parts, "primary-battery"):
            if unit.get("cell") is not None and cell[1]["designation"] == unit["cell"] and _lasts(bare, unit, cell[1]):
                yield "battery", {"battery": [(*cell, unit["cells"])]}
    if wish != "Battery" and bare.opening.facts.get("distance") is not None and _crosses(bare):
        for supply in _of_kind(bare.parts, "power-supply"):
            for wire in _of_kind(bare.parts, "wire"):
                for transfer in _of_kind(bare.parts, "power-transfer"):
                    run = bare.opening.facts["distance"]
                    yield (
                        "supply",
                        {"supply": [(*supply, 1.0)], "wire": [(*wire, run)], "power-transfer": [(*transfer, 1.0)]},
                    )


def _lasts(bare: Standing, unit: Cells, cell: Cells) -> bool:
    """Tell whether cells last surely long enough: with what the cold of the place takes from their capacity."""
    facts = bare.opening.facts
    left = _left_in_cold(cell, facts["cold"])
    daily = unit["standing_ua"] * 24 / 1000 + facts["operations"] * unit["operation_ma"] * unit["operation_s"] / 3600
    daily += cell["mah"] * cell["self_discharge"] / 365.25
    return bool(cell["mah"] * cell["usable"] * left / daily >= judging_power.LEAST_DAYS * 1.02)


def _left_in_cold(cell: Cells, cold: float) -> float:
    """Share of its capacity that a cell surely has: by its data sheet, else by its chemistry; 0 where neither tells."""
    if cold >= WARM_C:
        return 1.0
    if cell.get("cold_left") is not None:
        return float(cell["cold_left"])
    points = COLD_LEFT.get(cell["chemistry"], ())
    for (low_c, low), (high_c, high) in pairwise(points):
        if low_c <= cold < high_c:
            return low + (high - low) * (cold - low_c) / (high_c - low_c)
    return 0.0


def _inside_leaf(bare: Standing) -> bool:
    """Tell whether a wire can be brought across inside the leaf, by a way that is there or that is made."""
    leaf, rated = bare.leaf, bare.opening.facts.get("rating") != "Not rated"
    if not leaf or leaf.get("raceway") == "yes":
        return True
    lites = any(item["kind"] in ("Lite or vision panel", "Louvre") for item in bare.opening.items)
    if leaf["material"] in SKINNED:
        inside = leaf["core"] in ("Honeycomb", "Empty tube or frame") or leaf["construction"] == "Narrow stile"
    else:
        wall = (leaf["thick"] - RACEWAY_MM) / 2
        inside = leaf["core"] == "Solid wood or particleboard" and leaf["construction"] == "Flush" and not lites
        inside = inside and wall >= RACEWAY_WALL_MM and leaf["width"] <= RACEWAY_REACH_MM
    return bool(inside and not rated)


def _crosses(bare: Standing) -> bool:
    """Tell whether a wire can be brought across the leaf: inside it, or over its free face."""
    leaf, rated = bare.leaf, bare.opening.facts.get("rating") != "Not rated"
    if _inside_leaf(bare):
        return True
    bonds = leaf["material"] == "Glass"
    over = any(
        (not rated or part["listed"] == "yes") and (not bonds or part["glass"] == "yes")
        for _, part in _of_kind(bare.parts, "surface-raceway")
    )
    free = not any(rect[2] > FREE_FACE_MM for _, rect in bare.items("Inside", "Both faces"))
    return over and free


def _over_free_face(at: Standing) -> bool:
    """Tell whether a raceway over the face, where there is no other way, begins free at the middle of the unit."""
    if at.power != "supply" or _inside_leaf(at):
        return True
    unit, x, y = at.unit, at.place["x_mm"], at.place["y_mm"]
    if unit is None:
        return False
    in_edge = at.place["face"] == "edge"
    beside = 0.0 if in_edge else x + unit["width"]
    middle = y + (unit["pocket_length"] if in_edge else unit["height"]) / 2
    return not any(
        x1 > beside and y0 - RACEWAY_HALF_MM < middle < y1 + RACEWAY_HALF_MM
        for _, (_, y0, x1, y1) in at.items("Inside", "Both faces")
    )


def _complete(
    bare: Standing,
    number: str,
    unit: Cells,
    way: _Way,
    plate: tuple[float, float],
    more: Roles,
    power: str,
) -> Standing | None:
    x, y = plate
    pilots = [(x + dx, y + dy, 0.0) for dx, dy in screw_spots(unit)]
    end = (x + unit["connector_x"], y + unit["connector_y"], 0.0)
    place: dict[str, Any] = {
        "face": "inside",
        "pattern": "above" if way.name == "narrow" else way.name,
        "x_mm": x,
        "y_mm": y,
    }
    for extension in [None, *_of_kind(bare.parts, "lead-extension")]:
        roles = bare.roles | {"unit": [(number, unit, 1.0)]} | more
        if extension is not None:
            roles["lead-extension"] = [(*extension, 1.0)]
        at = Standing(
            bare.opening,
            bare.parts,
            roles,
            place,
            [*bare.bores, *way.bores],
            pilots,
            [*way.run, end],
            bare.stack,
            power,
        )
        if not _beside_hole(at) and _sound(at):
            return at
    return None


def _beside_hole(at: Standing) -> bool:
    """Tell whether a screw of the unit comes nearer to a hole for the lead than the trade sets one."""
    cut = [each for bore in at.bores for each in (bore.body, *judging_units.slot_of(bore))]
    return any(
        meet(Rod((x, y, 0.0), (x, y, at.thick / 2), SCREW_MM), each, SCREW_WALL_MM)
        for x, y, _ in at.pilots
        for each in cut
    )


def _drillable(way: _Way, parts: dict[str, Cells]) -> bool:
    """Tell whether a bit that the shop has, in the slimmest drill, bores each slanted hole of a way."""
    for bore in way.bores:
        body = bore.body
        if not isinstance(body, Rod) or abs(body.direction[2]) > 0.999:
            continue
        reaches = [
            tool["reach"]
            for _, tool in _of_kind(parts, "tool")
            if tool["form"] == "Twist drill" and tool.get("reach") and abs(tool["diameter"] - bore.diameter) <= 0.15
        ]
        steep = abs(body.direction[2])
        flat = (1.0 - steep**2) ** 0.5
        free = max(reaches, default=BIT_MM) - body.length - bore.from_depth / steep
        if free * steep < DRILL_MM * flat:
            return False
    return True


def _sound(at: Standing) -> bool:
    # Lock and power were judged before: they do not depend on where the unit stands. The lead's way round a narrow
    # case is laid along its skin here, so that only its length is judged.
    return (
        _over_free_face(at)
        and all(family == "narrow-lead-through-case" for family, _, _ in judging_units.judged(at))
        and not any(judging_tools.judged(at))
        and not any(judging_hands.judged(at))
        and not any(judging_hands.spanners(at, SPANNER, OVER_MM))
        and _hand_at_lead(at)
    )


# --- a unit in the edge ---------------------------------------------------------------------------------------------


def _in_edge(bare: Standing, number: str, unit: Cells) -> Witness | None:
    lock_case, leaf, t = bare.lock_case(), bare.leaf, bare.thick
    if bare.locking["kind"] != "mortise-cylinder" or lock_case is None or leaf["material"] not in (*SOLID, "Aluminium"):
        return None
    powered = _fed(bare, number, unit)
    if powered is None:
        return None
    power, more = powered
    if (t - unit["pocket_width"]) / 2 < SIDE_MM:
        return None
    long, (x, y) = unit["pocket_length"], bare.at
    front = bare.lock_front(LONG_FRONT_MM) or lock_case
    above = max(lock_case.high[1] + BRIDGE_MM, front.high[1] + 0.1)
    below = min(lock_case.low[1] - BRIDGE_MM, front.low[1] - 0.1)
    for y0 in (above, below - long):
        if y0 < bare.low + 25.4 or y0 + long > bare.top - 25.4:
            continue
        half = unit["pocket_width"] / 2
        box = Box((0.0, y0, t / 2 - half), (unit["pocket_depth"], y0 + long, t / 2 + half))
        enter = y0 if y0 > y else y0 + long
        sign = 1.0 if y0 > y else -1.0
        run = [
            (x, y, t / 2),
            (x, enter, t / 2),
            (20.0, enter, t / 2),
            (20.0, enter + sign * unit["connector_y"], t / 2),
        ]
        for screw in _screws(bare, unit):
            roles = bare.roles | {"unit": [(number, unit, 1.0)], "fastener": [(*screw, unit["screws"])]} | more
            place = {"face": "edge", "pattern": "in-edge", "x_mm": t / 2 - half, "y_mm": y0}
            bores = [Bore("pocket", "pocket", "lock-edge", box, 0.0, 0.0)]
            at = Standing(bare.opening, bare.parts, roles, place, bores, [], run, bare.stack, power)
            if _sound(at) and _edge_lead(at, unit):
                return _witness(at, "edge", 0.0, y0)
    return None


def _edge_lead(at: Standing, unit: Cells) -> bool:
    needs = judging_units.cable_length(at.lead, judging_units.BEND_MM) + unit["pocket_depth"] + unit["service"]
    return bool(needs <= at.locking["lead"])
