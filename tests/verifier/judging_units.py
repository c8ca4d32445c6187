"""Judges the unit and its lead: plate, screws, holes, channels, pockets, the lead's way and length."""

from collections.abc import Iterable
from math import hypot
from typing import Final

from tests.verifier.bodies import TOLERANCE_MM, Box, Point, Rod, cable_length, circle_meets, distance, meet, rects_meet
from tests.verifier.held import ON_LINE, on_face
from tests.verifier.standing import INCH, PLATE_MM, SKINNED, SOLID, Bore, Rect, Standing, mouth, screw_spots, within
from tests.verifier.violation import Found

LONGEST_BIT_MM: Final = 18 * INCH
"""Longest of the fixed long bits; encyclopedia."""
CHUCK_MM: Final = 17.0
"""Half of a 3/8 in chuck's sleeve, the slimmest that turns a 3/8 in bit; from memory, unverified."""
FIELD_HOLE_MM: Final = 25.4
"""NFPA 80, job-site preparations, read in four copies: larger ones for cylinders only."""
PIN_MM: Final = 5.0
"""Centre of the hinge pins off the leaf's face at the least; from memory, unverified."""
END_MM: Final = 25.4
"""From each end of a pull within which its bolt stands; from memory, unverified."""
BOLT_MM: Final = 4.0
"""Half of a through-bolt of 5/16 in; usual function holes, from memory."""
POCKET_WALL_MM: Final = 3.175
"""From memory, unverified."""
TOP_TO_HOLE_MM: Final = 1.375 * INCH
TOP_TO_PLATE_MM: Final = 0.75 * INCH
"""Narrow stile, common practice: hole and plate above the top of the hole that is there on the backset line."""
HOLE_CLEAR_MM: Final = 3.175
"""Between that hole and a case that reaches so high; from memory, unverified."""
PLACE_SLIP_MM: Final = 1.0
SLEEVE_MM: Final = 12.7
"""What a sleeve nut reaches into the leaf to meet a through screw; from memory, unverified."""
BEND_MM: Final = 10.0
"""4 x a lead of 2.5 mm: TIA-568 factor, read in four copies; the diameter from memory."""
_LEAD_MM: Final = 1.25
"""Half of a lead of 2.5 mm; from memory, unverified."""
_GLAZED: Final = ("Lite or vision panel", "Louvre")
_THROUGH: Final = ("Machine screw", "Through bolt")


def judged(at: Standing) -> Iterable[Found]:
    """Yield what is wrong with the unit, its screws, its holes and its lead."""
    if at.unit is None or not at.place:
        return
    if at.place["face"] == "wall":
        if not at.fasteners():
            yield ("unit-unfixed", {}, "the unit on the wall gets nothing that fixes it")
        wall = at.opening.facts.get("wall")
        for number, fixing, _ in at.fasteners():
            if wall is not None and fixing.get("wall") != wall:
                yield ("fixing-for-other-wall", {}, f"{number} is for {fixing.get('wall')}, the wall is {wall}")
    elif at.place["face"] == "edge":
        yield from _pocket(at)
    else:
        yield from _plate(at)
        yield from _screws(at)
        yield from _mouths(at)
        if at.leaf.get("construction") == "Narrow stile" and at.place["pattern"] == "above":
            yield from _narrow(at)
    yield from _bores(at)
    yield from _lead(at)


# --- the plate ------------------------------------------------------------------------------------------------------


def _plate(at: Standing) -> Iterable[Found]:
    plate, unit = at.plate, at.unit
    if plate is None or unit is None:
        return
    numbers = {"x0_mm": plate[0], "y0_mm": plate[1], "x1_mm": plate[2], "y1_mm": plate[3]}
    leaf = (0.0, at.low, at.leaf["width"], at.top)
    if within(plate, leaf):
        yield ("plate-off-leaf", numbers, f"the plate reaches {within(plate, leaf):.2f} mm past the leaf")
    if at.stile is not None and plate[2] > at.stile + TOLERANCE_MM:
        yield ("plate-off-stile", numbers | {"stile_mm": at.stile}, "the plate reaches past the stile")
    face = at.place["face"]
    for band in at.stops(face):
        if rects_meet(plate, band):
            yield ("plate-in-stop", numbers, "the plate stands in the band that the frame's stop hides")
        elif band[0] == 0.0 and band[3] - band[1] > band[2] - band[0]:
            yield from _swings(at, plate, band[2], unit["depth"])
    names = ("Inside", "Both faces") if face == "inside" else ("Key side", "Both faces")
    for item, rect in at.items(*names):
        if rects_meet(plate, rect):
            family = {"Exit device": "unit-on-exit-device", "Fire label": "unit-on-label"}.get(
                item["kind"], "unit-on-item"
            )
            yield (
                "unit-on-lite" if item["kind"] in _GLAZED else family,
                numbers | {"item_x0_mm": rect[0], "item_y0_mm": rect[1], "item_y1_mm": rect[3]},
                f"the plate overlaps the {item['kind'].lower()}",
            )
    for item, _ in at.items(*names):
        for rod in on_face(item, at.low, at.top):
            if rects_meet(plate, rod):
                yield (
                    "unit-on-rod",
                    numbers | {"rod_x0_mm": rod[0]},
                    "the plate overlaps an exit device's rod or latch",
                )
    yield from _own_trim(at, plate, numbers)
    if at.leaf["material"] == "Glass" and unit.get("glass") != "yes":
        yield ("unit-on-glass", {}, "a unit that may not be bonded stands on glass")


def _swings(at: Standing, plate: Rect, stop: float, proud: float) -> Iterable[Found]:
    """Judge the unit's front corner on its arc about the hinge pins, until it has come back past the stop."""
    reach, face = at.leaf["width"] - plate[0], PIN_MM + at.thick
    out = (reach**2 + (face + proud) ** 2 - face**2) ** 0.5 - reach
    room = plate[0] - stop
    if out > room + TOLERANCE_MM:
        yield (
            "unit-hits-stop-in-swing",
            {"out_mm": out, "room_mm": room},
            f"{proud:.1f} mm proud, it comes {out:.2f} mm nearer to the stop as the leaf opens, {room:.2f} off it",
        )


def _own_trim(at: Standing, plate: Rect, numbers: dict[str, float]) -> Iterable[Found]:
    part, (x, y) = at.locking, at.at
    lock_case = at.lock_case()
    if at.place["face"] != "inside":
        return
    if part["kind"] == "bored-lever-lock" and circle_meets(x, y, part["trim"] / 2, plate):
        yield ("unit-on-rose", numbers, "the plate overlaps the new lock's rose")
    on_case = lock_case is not None and rects_meet(
        plate, (lock_case.low[0], lock_case.low[1], lock_case.high[0], lock_case.high[1])
    )
    if part["kind"] == "rim-cylinder" and lock_case is not None and on_case:
        device = any(item["kind"] == "Exit device" for item in at.opening.items)
        yield (
            "unit-on-exit-device" if device else "unit-on-case",
            numbers | {"case_y0_mm": lock_case.low[1], "case_y1_mm": lock_case.high[1]},
            f"the plate overlaps the case from {lock_case.low[1]:.1f} to {lock_case.high[1]:.1f} mm on the inside face",
        )
    if part["kind"] == "cabinet-lock" and circle_meets(x, y, part["thread"] / 2, plate):
        yield ("unit-on-cylinder", numbers, "the plate covers the thread on which the lock's nut is turned")
    if part["kind"] == "gate-lock":
        half = part["case_width"] / 2, part["case_height"] / 2
        if rects_meet(plate, (x - half[0], y - half[1], x + half[0], y + half[1])):
            yield ("unit-on-case", numbers, "the plate overlaps the gate lock's case")
    whole = part["kind"] == "euro-cylinder" and part["inside_half"] > 10.0
    if whole and rects_meet(plate, (x - 8.5, y - 16.5, x + 8.5, y + 16.5)):
        yield ("unit-on-cylinder", numbers, "the plate covers the cylinder's inside end")
    own_plates = at.own_plates("inside")
    if own_plates is not None and rects_meet(plate, own_plates):
        yield ("unit-on-item", numbers | {"item_y0_mm": own_plates[1]}, "the plate overlaps the lock's own")
    turned = any(item["kind"] == "Thumb turn" for item in at.opening.items)
    own_turn = at.lock.get("thumb_turn") == "yes" and not turned and part["kind"] == "mortise-cylinder"
    if own_turn and circle_meets(x, y, 12.0, plate):
        yield ("unit-on-item", numbers, "the plate covers the lock's thumb turn")


def _screws(at: Standing) -> Iterable[Found]:
    unit = at.unit
    if unit is None:
        return
    held = [
        each for each in at.fasteners() if each[1]["form"] != "Through bolt" or each[1]["size"] == unit.get("screw")
    ]
    if not held:
        yield ("unit-unfixed", {}, "the unit gets nothing that fixes it")
        return
    number, screw, _ = held[0]
    if screw["form"] == "Adhesive pad":
        return
    if screw.get("material") != at.leaf["material"]:
        yield ("screw-for-other-material", {}, f"{number} is for {screw.get('material')}")
    if unit["kind"] == "surface-unit" and at.place["face"] in ("inside", "key"):
        spots = {(at.place["x_mm"] + dx, at.place["y_mm"] + dy) for dx, dy in screw_spots(unit)}
        told = {(round(x, 2), round(y, 2)) for x, y, _ in at.pilots}
        if told != {(round(x, 2), round(y, 2)) for x, y in spots}:
            yield ("screws-told-elsewhere", {}, f"screws are told at {sorted(told)}, the plate has them elsewhere")
    seat = PLATE_MM if unit.get("seat") is None else unit["seat"]
    deep = screw["length"] - seat
    said = f"{number} of {screw['length']:.2f} mm less a plate of {seat:g} mm"
    numbers = {"screw_mm": screw["length"], "leaf_mm": at.thick}
    if screw["form"] in _THROUGH:
        if deep + SLEEVE_MM < at.thick - TOLERANCE_MM:
            said += f" and a sleeve nut of {SLEEVE_MM:g} mm"
            yield ("bolt-too-short", numbers, f"{said} do not pass a leaf of {at.thick:.2f} mm")
        deep = at.thick
    elif deep > at.thick + TOLERANCE_MM:
        yield ("screw-through-leaf", numbers, f"{said} comes out of the other face of {at.thick:.2f} mm")
    gauge = int(screw["size"].lstrip("#"))
    radius = (0.060 + 0.013 * gauge) * INCH / 2
    for x, y, _ in at.pilots:
        body = Rod((x, y, 0.0), (x, y, min(deep, at.thick)), radius)
        spot = {"x_mm": x, "y_mm": y, "reach_mm": deep}
        if at.stile is not None and x + radius > at.stile + TOLERANCE_MM:
            yield ("screw-off-stile", spot | {"stile_mm": at.stile}, "a screw stands past the stile")
        for name, own in at.own_bores():
            if meet(body, own):
                yield (
                    "screw-in-case",
                    spot | {"from_z_mm": own.bounds().low[2]},
                    f"{said} at {x:.1f}, {y:.1f} reaches z {min(deep, at.thick):.1f}; the {name} begins at z "
                    f"{own.bounds().low[2]:.1f}",
                )
        for bore in at.bores:
            if bore.purpose in ("cable", "channel") and any(meet(body, each) for each in (bore.body, *slot_of(bore))):
                yield ("screw-in-hole", spot, f"{said} at {x:.1f}, {y:.1f} stands in the {bore.name}")
        for kind, other in at.bodies():
            if meet(body, other):
                family = "screw-in-lite" if kind in _GLAZED else "screw-in-item"
                yield (family, spot, f"{said} at {x:.1f}, {y:.1f} enters the {kind.lower()}")


# --- holes ----------------------------------------------------------------------------------------------------------


def _mouths(at: Standing) -> Iterable[Found]:
    """Judge what the holes for the lead cut out of the face: the plate must cover all of it."""
    plate, part, (x, y) = at.plate, at.locking, at.at
    covers = [plate] if plate is not None else []
    if part["kind"] == "gate-lock":
        half = part["case_width"] / 2, part["case_height"] / 2
        covers.append((x - half[0], y - half[1], x + half[0], y + half[1]))
    for bore in at.bores:
        if bore.purpose not in ("cable", "channel") or bore.face != "inside" or not isinstance(bore.body, Rod):
            continue
        rect = mouth(bore.body) if bore.from_depth == 0.0 else None
        if rect is not None and bore.slot > 0.0:
            rect = (rect[0], rect[1], rect[2], max(rect[3], bore.body.start[1] + bore.slot))
        elif rect is not None and bore.slot < 0.0:
            rect = (rect[0], min(rect[1], bore.body.start[1] + bore.slot), rect[2], rect[3])
        if rect is None or not covers:
            continue
        out = min(within(rect, cover) for cover in covers)
        if out:
            yield (
                "lead-hole-uncovered",
                {"hole_y0_mm": rect[1], "plate_y0_mm": covers[0][1], "out_mm": out},
                f"the {bore.name} of {bore.diameter:.2f} mm reaches {out:.2f} mm out from under the plate",
            )


def _bores(at: Standing) -> Iterable[Found]:
    rated = at.opening.facts.get("rating") not in (None, "Not rated")
    for bore in at.bores:
        if bore.purpose not in ("cable", "channel") or not isinstance(bore.body, Rod) or not at.leaf:
            continue
        cut = [bore.body, *slot_of(bore)]
        for kind, other in at.bodies():
            if any(meet(each, other) for each in cut):
                family = "lead-hole-cuts-item"
                if bore.purpose == "channel":
                    family = (
                        "channel-through-spindle" if kind in ("Lever or knob", "Thumb turn") else "channel-through-item"
                    )
                b = bore.body.bounds()
                yield (
                    family,
                    {"y0_mm": b.low[1], "y1_mm": b.high[1], "diameter_mm": bore.diameter},
                    f"the {bore.name} from {b.low[1]:.1f} to {b.high[1]:.1f} mm meets the {kind.lower()}",
                )
        yield from _drilled(at, bore)
        if rated and bore.diameter > FIELD_HOLE_MM:
            yield ("rated-hole", {"diameter_mm": bore.diameter}, "more than 1 in, and not for a cylinder")
        if rated and bore.purpose == "channel":
            yield ("rated-raceway", {}, "a raceway in a rated leaf is not drilled on site without its listing")


def slot_of(bore: Bore) -> list[Rod]:
    """Return what a tilted bit takes between the bottom of the square hole that it starts in and the face."""
    body = bore.body
    if not isinstance(body, Rod) or bore.from_depth <= 0.0 or abs(body.direction[2]) < 1e-9:
        return []
    d, s, out = body.direction, body.start, bore.from_depth / abs(body.direction[2])
    return [Rod(s, (s[0] - d[0] * out, s[1] - d[1] * out, s[2] - d[2] * out), body.radius)]


def _drilled(at: Standing, bore: Bore) -> Iterable[Found]:
    body = bore.body
    if not isinstance(body, Rod) or body.length == 0.0:
        return
    d = body.direction
    ends = body.bounds()
    if bore.face == "inside" and ends.high[2] > at.thick + TOLERANCE_MM and bore.purpose in ("cable", "channel"):
        yield ("bore-breaks-through", {"z_mm": ends.high[2]}, f"the {bore.name} comes out of the key face")
    if at.stile is not None and ends.high[0] > at.stile + TOLERANCE_MM and bore.purpose == "cable":
        yield (
            "lead-hole-off-stile",
            {"x1_mm": ends.high[0], "stile_mm": at.stile},
            f"the {bore.name} leaves the stile",
        )
    steep = abs(d[2])
    if bore.face != "inside" or steep > 0.999:
        return
    # How far the bit's axis stands off the face where the chuck begins, once the bit is in to its full depth.
    off = (LONGEST_BIT_MM - body.length) * steep - bore.from_depth
    if off < CHUCK_MM:
        yield (
            "bore-undrillable",
            {"off_mm": off, "needed_mm": CHUCK_MM, "depth_mm": body.length},
            f"at {LONGEST_BIT_MM:.0f} mm of bit and {body.length:.1f} mm of depth the chuck's axis stands {off:.1f} mm "
            f"off the face; the slimmest chuck needs {CHUCK_MM:g}",
        )
    if bore.from_depth > 0.0:
        square = next((b for b in at.bores if b is not bore and b.purpose == "cable" and b.face == "inside"), None)
        if square is not None:
            # From the bottom of the square bore to the face the tilted bit moves aside, and widens as an ellipse.
            side = bore.from_depth * hypot(d[0], d[1]) / steep + body.radius / steep
            # The slot that is printed gives the bit its room; what covers it is judged with the hole.
            if side > max(square.diameter / 2, abs(square.slot)) + TOLERANCE_MM:
                yield (
                    "bit-binds-in-square-hole",
                    {"side_mm": side, "radius_mm": square.diameter / 2},
                    f"a bit of {bore.diameter:.2f} mm out of the bottom of a hole {bore.from_depth:.2f} mm deep wants "
                    f"{side:.1f} mm to the side at the face; the hole has {square.diameter / 2:.2f}",
                )


def _narrow(at: Standing) -> Iterable[Found]:
    plate, (_, y) = at.plate, at.at
    turns = [i for i, _ in at.items("Inside", "Both faces") if i["kind"] == "Thumb turn" and i["iy"] > y + 1.0]
    hole = next((b for b in at.bores if b.purpose == "cable" and b.face == "inside"), None)
    if plate is None or turns or hole is None or not isinstance(hole.body, Rod):
        return
    top, unit = y + 0.625 * INCH, at.unit or {}
    # Over a case that ends higher the hole goes up with it, out of the sheet clear of its end.
    lock_case, off = at.lock_case(), hole.diameter / 2 + HOLE_CLEAR_MM
    past = lock_case.high[1] + off if lock_case is not None else 0.0
    over = max(top + (unit.get("hole_above") or TOP_TO_HOLE_MM), past)
    for family, is_at, wanted in (
        ("narrow-stile-hole-place", hole.body.start[1], over),
        ("narrow-stile-plate-place", plate[1], top + (unit.get("plate_above") or TOP_TO_PLATE_MM)),
    ):
        if abs(is_at - wanted) > PLACE_SLIP_MM:
            yield (
                family,
                {"is_mm": is_at, "wanted_mm": wanted},
                f"the existing hole ends at {top:.2f} mm; wanted {wanted:.2f}, printed {is_at:.2f}",
            )


# --- a unit in the edge ---------------------------------------------------------------------------------------------


def _pocket(at: Standing) -> Iterable[Found]:
    for bore in at.bores:
        box = bore.body
        if bore.purpose != "pocket" or not isinstance(box, Box):
            continue
        wall = min(box.low[2], at.thick - box.high[2])
        if wall < POCKET_WALL_MM - TOLERANCE_MM:
            yield ("pocket-wall-thin", {"wall_mm": wall}, "the pocket leaves too little wall to a face")
        if box.low[1] < at.low or box.high[1] > at.top:
            yield ("pocket-off-leaf", {"y0_mm": box.low[1], "y1_mm": box.high[1]}, "the pocket leaves the leaf")
        if at.stile is not None and box.high[0] > at.stile + TOLERANCE_MM:
            yield ("pocket-off-stile", {"depth_mm": box.high[0], "stile_mm": at.stile}, "deeper than the stile")
        for name, own in at.own_bores():
            if meet(box, own):
                yield ("pocket-in-case", {}, f"the pocket meets the {name}")
        rect = (box.low[0], box.low[1], box.high[0], box.high[1])
        for item, other in at.items("Inside", "Key side", "Both faces", "Lock edge"):
            # Labels, closers and plates are held by short screws.
            if item["kind"] in ("Fire label", "Closer", "Kick plate", "Push plate"):
                continue
            if item["kind"] in ON_LINE and item.get("bolts") is not None:
                # Its bolts are told: the pocket meets them or not, and a lever's spindle besides.
                if any(meet(box, each) for each in at.held(item, other)):
                    yield (
                        "pocket-meets-item",
                        {"y0_mm": rect[1], "y1_mm": rect[3], "item_y0_mm": other[1]},
                        f"the pocket from {rect[1]:.1f} to {rect[3]:.1f} mm meets a bolt of the {item['kind'].lower()}",
                    )
                if item["kind"] == "Pull":
                    continue
            if item["kind"] not in (*_GLAZED, "Exit device", "Deadbolt"):
                # Spindle and bolts stand on the middle line of what they hold; a pull is bolted at its ends.
                other = (item["ix"] - BOLT_MM, other[1], item["ix"] + BOLT_MM, other[3])
            near = min(END_MM, (other[3] - other[1]) / 2)
            ends = ((other[1], other[1] + near), (other[3] - near, other[3]))
            held = [(other[0], y0, other[2], y1) for y0, y1 in ends] if item["kind"] == "Pull" else [other]
            # Where in that stretch the bolt stands nobody told: the pocket meets it surely where it takes all of it.
            if not any(rects_meet(rect, each) and _takes(rect, each, item["kind"]) for each in held):
                continue
            yield (
                "pocket-meets-lite" if item["kind"] in _GLAZED else "pocket-meets-item",
                {"y0_mm": rect[1], "y1_mm": rect[3], "item_x0_mm": other[0], "item_y0_mm": other[1]},
                f"the pocket from {rect[1]:.1f} to {rect[3]:.1f} mm, {rect[2]:.1f} deep, meets the "
                f"{item['kind'].lower()}",
            )
        if at.opening.facts.get("rating") not in (None, "Not rated"):
            yield ("rated-cut", {}, "a pocket in a rated leaf is no job-site preparation")
        if at.leaf["material"] == "Hollow metal":
            yield ("pocket-in-sheet", {}, "no pocket is cut on site into hollow metal")


def _takes(rect: Rect, part: Rect, kind: str) -> bool:
    return kind != "Pull" or (rect[1] <= part[1] and rect[3] >= part[3])


# --- the lead -------------------------------------------------------------------------------------------------------


def _lead(at: Standing) -> Iterable[Found]:
    unit, part = at.unit, at.locking
    if unit is None or len(at.lead) < 2:
        yield ("lead-without-way", {}, "no way is printed for the lead")
        return
    chain = [each for _, each, count in at.roles.get("lead-extension", []) for _ in range(round(count))]
    has = part["lead"] + sum(each["length"] for each in chain)
    plugs = [part["plug"], *(each["plug"] for each in chain)]
    sockets = [*(each["socket"] for each in chain), unit["socket"]]
    if plugs != sockets:
        yield ("plug-mismatch", {}, f"plugs {plugs} meet sockets {sockets}")
    edge = at.place["face"] == "edge"
    # A unit in the edge is connected in the hand before it slides in: the pocket's depth and the hand's allowance.
    more = unit["pocket_depth"] + unit["service"] if edge else unit["slack"]
    needs = cable_length(at.lead, BEND_MM) + more
    if needs > has + 1.0 and not edge:
        yield (
            "lead-short",
            {"needs_mm": needs, "has_mm": has},
            f"the printed way is {needs - more:.1f} mm and {more:.1f} of slack; lead and extension have {has:.1f}",
        )
    if not edge:
        end = (at.place["x_mm"] + unit["connector_x"], at.place["y_mm"] + unit["connector_y"], 0.0)
        if distance(end, at.lead[-1]) > 1.0:
            yield ("lead-ends-elsewhere", {}, "the printed lead does not end at the unit's connector")
    if not at.leaf or edge:
        return
    if at.leaf.get("construction") == "Narrow stile":
        yield from _round_case(at, has, more)
    elif at.leaf["material"] in SOLID:
        yield from _in_solid(at)


def _round_case(at: Standing, has: float, more: float) -> Iterable[Found]:
    lock_case, (x, y) = at.lock_case(), at.at
    hole = next((b.body for b in at.bores if b.purpose == "cable" and isinstance(b.body, Rod)), None)
    if (
        lock_case is None
        or hole is None
        or at.locking["kind"] != "mortise-cylinder"
        or at.leaf["material"] not in SKINNED
    ):
        return
    for a, b in zip(at.lead, at.lead[1:], strict=False):
        # Where the cylinder stands the case is open: out of it the lead comes beside the cylinder's own axis.
        if a[:2] == b[:2] == at.lead[0][:2]:
            continue
        if meet(Rod(a, b, _LEAD_MM - TOLERANCE_MM), lock_case):
            yield (
                "narrow-lead-through-case",
                {"case_z0_mm": lock_case.low[2], "case_top_mm": lock_case.high[1]},
                f"the printed lead runs through the case, which fills z {lock_case.low[2]:.1f} to "
                f"{lock_case.high[2]:.1f} up to {lock_case.high[1]:.1f} mm; it must go round its key side "
                "and over its top",
            )
            break
    mouth_at = (hole.start[0], hole.start[1], 0.0)
    # Past the end of the case that is nearer to the hole.
    end = lock_case.low[1] if mouth_at[1] < lock_case.low[1] else lock_case.high[1]
    over: list[Point] = [(x, y, lock_case.high[2]), (x, end, lock_case.high[2])]
    if lock_case.low[1] <= mouth_at[1] < lock_case.high[1]:
        over.append((x, end, lock_case.low[2]))
    needs = cable_length([*over, mouth_at, at.lead[-1]], BEND_MM) + more
    if needs > has + 1.0:
        yield (
            "narrow-lead-short",
            {"needs_mm": needs, "has_mm": has},
            f"round the key side of the case and over its top the lead needs {needs:.1f} mm, it has {has:.1f}",
        )


def _in_solid(at: Standing) -> Iterable[Found]:
    ways = [*at.hollows(), *(b.body for b in at.bores if b.purpose in ("cable", "channel", "function"))]
    for a, b in zip(at.lead, at.lead[1:], strict=False):
        steps = max(2, int(distance(a, b) / 3.0))
        for i in range(steps + 1):
            t = i / steps
            p: Point = (a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t)
            if not 0.5 < p[2] < at.thick - 0.5:
                continue
            if all(distance(p, way.nearest(p)) > 0.5 for way in ways):
                yield (
                    "lead-through-solid",
                    {"x_mm": p[0], "y_mm": p[1], "z_mm": p[2]},
                    f"at {p[0]:.1f}, {p[1]:.1f}, {p[2]:.1f} the printed lead runs where nothing is hollow",
                )
                return
