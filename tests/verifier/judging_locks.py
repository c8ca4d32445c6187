"""Judges the lock: its case, cylinder, collar and rings, halves, tail, bores, rose, bolts, listing, egress."""

from collections.abc import Iterable
from math import cos, hypot, radians, sin
from typing import Final

from tests.verifier.bodies import TOLERANCE_MM, Rod, circle_meets, meet, rects_meet
from tests.verifier.standing import CYLINDER_HOLE_MM, Rect, Standing
from tests.verifier.violation import Found

BLIND_HALF_MM: Final = 10.0
"""Blind side of a half cylinder; DIN 18252 / EN 1303, read in three secondary copies."""
KEY_PROUD_MM: Final = 3.0
"""Projection past the fitting; insurance practice, trade glossary."""
INSIDE_PROUD_MM: Final = 10.0
"""From memory, unverified."""
TURNS_BEYOND: Final = 2
"""Whole turns past the case's centre; common practice."""
TAIL_GRIP_MM: Final = 6.0
"""Least length of a tailpiece inside its case; from memory, unverified."""
CASE_WALL_MM: Final = 1.5
"""Sheet of a rim lock's case; from memory, unverified."""
NUT_MM: Final = 6.5
"""Height of an M8 nut, ISO 4032, from memory: what a bolt needs past the gate."""
BORE_SLIP_MM: Final = 25.4 / 16
"""SDI 111-24: linear tolerance unless noted."""
BAR_MM: Final = 19.05
TURN_DEG: Final = 35
"""A lever's handle at its thinnest, and how far each turns down; from memory, unverified."""
BY_SENSOR: Final = ("A", "B", "E", "I-1", "I-2", "I-4", "M", "R-1", "R-2")
"""Groups in which a sensor may release a magnet that holds a way out; IBC 2021, 1010.2.12, from memory."""
_FLAT: Final = ("Fire label", "Kick plate", "Push plate")


def judged(at: Standing) -> Iterable[Found]:
    """Yield what is wrong with the lock."""
    if not at.leaf:
        return
    yield from _case(at)
    kind = at.locking["kind"]
    if kind == "mortise-cylinder":
        yield from _threaded(at)
    elif kind == "rim-cylinder":
        yield from _rim(at)
    elif kind == "euro-cylinder":
        yield from _euro(at)
    elif kind == "bored-lever-lock":
        yield from _bored(at)
    elif kind == "cabinet-lock":
        yield from _cabinet(at)
    elif kind == "gate-lock":
        yield from _gate(at)
    yield from _egress(at)
    yield from _listing(at)
    if at.opening.facts.get("exposure") == "Exterior" and at.locking.get("exposure") == "Interior":
        yield ("lock-weather", {}, "the opening is outside, the lock's part is declared for inside")


def _case(at: Standing) -> Iterable[Found]:
    lock_case = at.lock_case()
    form = at.lock["lock"]
    if lock_case is None or form.startswith("Rim"):
        return
    if at.stile is not None and lock_case.high[0] > at.stile + TOLERANCE_MM:
        yield (
            "case-deeper-than-stile",
            {"case_mm": lock_case.high[0], "stile_mm": at.stile},
            f"the case reaches {lock_case.high[0]:.2f} mm from the lock edge, the stile is {at.stile:.2f} mm wide",
        )
    if lock_case.high[1] > at.top + TOLERANCE_MM or lock_case.low[1] < at.low - TOLERANCE_MM:
        yield (
            "case-off-leaf",
            {
                "case_low_mm": lock_case.low[1],
                "case_top_mm": lock_case.high[1],
                "leaf_low_mm": at.low,
                "leaf_top_mm": at.top,
            },
            f"the case stands from {lock_case.low[1]:.1f} to {lock_case.high[1]:.1f} mm, the leaf from {at.low:.1f} "
            f"to {at.top:.1f}",
        )
    # A patch clamps round glass: its case stands out of it, between its plates.
    glass = at.leaf["material"] == "Glass"
    inside, key = (at.lock.get(name) or 0.0 if glass else 0.0 for name in ("trim_inside", "trim_key"))
    if lock_case.low[2] < -inside - TOLERANCE_MM or lock_case.high[2] > at.thick + key + TOLERANCE_MM:
        yield (
            "case-thicker-than-leaf",
            {"case_mm": lock_case.high[2] - lock_case.low[2], "leaf_mm": at.thick},
            f"the case stands out of the {'plates of the patch' if glass else 'faces of the leaf'}",
        )
    yield from _glazed(at, (lock_case.low[0], lock_case.low[1], lock_case.high[0], lock_case.high[1]))


def _glazed(at: Standing, lock: Rect) -> Iterable[Found]:
    for item, rect in at.items("Inside", "Key side", "Both faces"):
        if item["kind"] in ("Lite or vision panel", "Louvre") and rects_meet(lock, rect):
            yield (
                "lite-over-lock",
                {"lite_x0_mm": rect[0], "lock_x1_mm": lock[2]},
                f"a lite from x {rect[0]:.1f} overlaps the lock to x {lock[2]:.1f}",
            )


def _threaded(at: Standing) -> Iterable[Found]:
    part, lock = at.locking, at.lock
    under = at.under_head()
    cam = part["length"] + part["cam_offset"] - under
    centre = at.thick - at.middle
    beyond = cam - centre
    if not -TOLERANCE_MM <= beyond <= TURNS_BEYOND * part["pitch"] + 25.4 / 32 + TOLERANCE_MM:
        yield (
            "cam-off-case",
            {"cam_mm": cam, "centre_mm": centre, "beyond_mm": beyond},
            f"shell {part['length']:.3f} less {under:.3f} under the head puts the cam {cam:.3f} mm from the key face; "
            f"the case's middle lies at {centre:.3f} mm",
        )
    form = (at.part("cam") or {}).get("cam_form") or (at.part("tailpiece") or {}).get("tail_form")
    if form != lock["cam"]:
        yield ("cam-mismatch", {}, f"the case needs {lock['cam']}, the cylinder carries {form}")
    radius = part["head"] / 2
    for role in ("collar", "ring"):
        for _, each, _ in at.roles.get(role, []):
            if each["inner"] < part["thread"]:
                yield ("collar-bore", {"inner_mm": each["inner"]}, f"a {role} does not pass over the thread")
            radius = max(radius, each.get("outer", 0.0) / 2)
    yield from _head(at, radius)


def _head(at: Standing, radius: float) -> Iterable[Found]:
    x, y = at.at
    for band in at.stops("key"):
        if circle_meets(x, y, radius, band):
            yield (
                "head-in-stop",
                {"radius_mm": radius, "backset_mm": x, "stop_mm": at.opening.facts["stop"]},
                f"head or collar of radius {radius:.2f} mm at x {x:.2f} stands in the frame's stop on the key face",
            )
    for item, rect in at.items("Key side", "Both faces"):
        if item["kind"] in ("Trim or escutcheon", "Thumb turn", *_FLAT[:1]):
            continue
        if circle_meets(x, y, radius, rect):
            yield (
                "collar-on-item",
                {"radius_mm": radius, "item_x0_mm": rect[0], "item_y0_mm": rect[1], "item_y1_mm": rect[3]},
                f"head or collar of radius {radius:.2f} mm at {y:.2f} overlaps the {item['kind'].lower()} from "
                f"{rect[1]:.2f} to {rect[3]:.2f}",
            )
    yield from _turned(at, radius)
    if x - radius < -TOLERANCE_MM or (at.stile is not None and x + radius > at.stile + TOLERANCE_MM):
        yield (
            "head-off-stile",
            {"radius_mm": radius, "backset_mm": x, "stile_mm": at.stile or 0.0},
            "head or collar reaches past the edge of the leaf or onto the glass stop",
        )


def _turned(at: Standing, radius: float) -> Iterable[Found]:
    """Judge a head against the levers of its face as they are turned down toward the hinges."""
    x, y = at.at
    for item, rect in at.items("Key side", "Both faces"):
        if item["kind"] != "Lever or knob":
            continue
        pivot = x if rect[0] < x < rect[2] else item["ix"]
        long = rect[2] - pivot - BAR_MM / 2
        for down in range(5, TURN_DEG + 1, 5) if long > 0.0 else ():
            dx, dy = cos(radians(down)), -sin(radians(down))
            along = min(max((x - pivot) * dx + (y - item["iy"]) * dy, 0.0), long)
            off = hypot(x - pivot - along * dx, y - item["iy"] - along * dy) - BAR_MM / 2
            if off < radius - TOLERANCE_MM:
                yield (
                    "head-in-lever-sweep",
                    {"radius_mm": radius, "off_mm": off, "down_deg": float(down)},
                    f"{down} degrees down the lever stands {off:.2f} mm from the middle of a head or collar of radius "
                    f"{radius:.2f} mm",
                )
                break


def _rim(at: Standing) -> Iterable[Found]:
    part, lock = at.locking, at.lock
    tail = at.part("tailpiece")
    long = (tail["length"] if tail else part["tail"]) - (at.stack.get("cut_off_mm") or 0.0)
    reach = part["body"] - lock["trim_key"] + long - at.thick
    room = lock["case_width"] - CASE_WALL_MM
    numbers = {"reach_mm": reach, "case_mm": lock["case_width"]}
    said = (
        f"body {part['body']:.2f} less trim {lock['trim_key']:.2f} and {long:.2f} of tail in a leaf of {at.thick:.2f}: "
        f"it reaches {reach:.2f} mm into a case of {lock['case_width']:.2f} mm"
    )
    if reach < TAIL_GRIP_MM - TOLERANCE_MM:
        yield ("tail-short", numbers, said)
    elif reach > room + TOLERANCE_MM:
        yield ("tail-bottoms", numbers, said)
    form = tail["tail_form"] if tail else part["tail_form"]
    if form != lock["cam"]:
        yield ("cam-mismatch", {}, f"the case needs {lock['cam']}, the tail is {form}")
    if part["body"] - lock["trim_key"] > at.thick + TOLERANCE_MM:
        yield ("cylinder-through-leaf", {"body_mm": part["body"]}, "the body stands out of the inside face")
    yield from _head(at, part["head"] / 2)
    x, y = at.at
    r = CYLINDER_HOLE_MM / 2
    yield from _glazed(at, (x - r, y - r, x + r, y + r))


def _euro(at: Standing) -> Iterable[Found]:
    part, lock = at.locking, at.lock
    key = part["key_half"] - (at.thick - at.middle + lock["trim_key"])
    inside = part["inside_half"] - (at.middle + lock["trim_inside"])
    if not -TOLERANCE_MM <= key <= KEY_PROUD_MM + TOLERANCE_MM:
        yield ("euro-half", {"proud_mm": key}, f"on the key side it stands {key:.2f} mm past its trim")
    blind = part["inside_half"] <= BLIND_HALF_MM
    if not blind and not -TOLERANCE_MM <= inside <= INSIDE_PROUD_MM + TOLERANCE_MM:
        yield ("euro-half", {"proud_mm": inside}, f"on the inside it stands {inside:.2f} mm past its trim")
    if lock.get("thumb_turn") == "yes" and part.get("thumb_turn") != "yes":
        yield ("turn-lost", {}, "there is a thumb turn inside, the new cylinder has none")


def _bored(at: Standing) -> Iterable[Found]:
    part, lock, (x, y) = at.locking, at.lock, at.at
    if abs(part["backset"] - x) > BORE_SLIP_MM + TOLERANCE_MM:
        yield ("backset-off", {"part_mm": part["backset"], "leaf_mm": x}, "the lock is made for another backset")
    if not part["leaf_low"] - TOLERANCE_MM <= at.thick <= part["leaf_high"] + TOLERANCE_MM:
        yield ("leaf-off-range", {"leaf_mm": at.thick}, "the lock is made for other leaves")
    if part["function"] != lock["function"]:
        yield ("function-changed", {}, f"a lock of {lock['function']} gets {part['function']}")
    yield from _rose(at, part["trim"] / 2)
    enlarged = part["cross_bore"] > lock["cross_bore"] + BORE_SLIP_MM + TOLERANCE_MM
    bore = max(part["cross_bore"], lock["cross_bore"]) / 2
    made = any(b.purpose == "bore" and b.face != "lock-edge" for b in at.bores)
    if enlarged and not made and not any("cross bore" in name for name in at.templates):
        yield (
            "enlargement-missing",
            {"has_mm": lock["cross_bore"]},
            "the cross bore is too small, no hole enlarges it",
        )
    if at.stile is not None and x + bore > at.stile + TOLERANCE_MM:
        yield (
            "bore-off-stile",
            {"bore_mm": bore * 2, "backset_mm": x, "stile_mm": at.stile},
            f"a cross bore of {bore * 2:.2f} mm at {x:.2f} reaches past the stile of {at.stile:.2f} mm",
        )
    body = Rod((x, y, 0.0), (x, y, at.thick), bore)
    for kind, other in at.bodies():
        if meet(body, other):
            family = "bore-in-lite" if kind in ("Lite or vision panel", "Louvre") else "bore-in-item"
            yield (family, {"bore_mm": bore * 2}, f"the cross bore of {bore * 2:.2f} mm meets the {kind.lower()}")


def _rose(at: Standing, radius: float) -> Iterable[Found]:
    x, y = at.at
    numbers = {"radius_mm": radius, "backset_mm": x}
    for face, names in (("key", ("Key side", "Both faces")), ("inside", ("Inside", "Both faces"))):
        for band in at.stops(face):
            if circle_meets(x, y, radius, band):
                yield (
                    "rose-in-stop",
                    numbers | {"stop_mm": at.opening.facts["stop"]},
                    f"a rose of radius {radius:.2f} mm at x {x:.2f} stands in the stop of "
                    f"{at.opening.facts['stop']:.2f} mm on the {face} face",
                )
        for item, rect in at.items(*names):
            if item["kind"] in ("Fire label", "Trim or escutcheon") or not circle_meets(x, y, radius, rect):
                continue
            family = "rose-on-lite" if item["kind"] in ("Lite or vision panel", "Louvre") else "rose-on-item"
            yield (family, numbers | {"item_y0_mm": rect[1]}, f"the rose stands on the {item['kind'].lower()}")
    if at.stile is not None and x + radius > at.stile + TOLERANCE_MM:
        yield ("rose-off-stile", numbers | {"stile_mm": at.stile}, "the rose reaches past the stile")
    if x - radius < -TOLERANCE_MM:
        yield ("rose-off-leaf", numbers, "the rose reaches past the lock edge")


def _cabinet(at: Standing) -> Iterable[Found]:
    part, (x, _) = at.locking, at.at
    if not part["grip_low"] - TOLERANCE_MM <= at.thick <= part["grip"] + TOLERANCE_MM:
        yield ("cabinet-grip", {"grip_mm": part["grip"], "leaf_mm": at.thick}, "the bolt is made for other doors")
    if x - part["thread"] / 2 < TOLERANCE_MM:
        yield ("hole-off-leaf", {"backset_mm": x}, "the bolt's hole breaks out of the lock edge")


def _gate(at: Standing) -> Iterable[Found]:
    part = at.locking
    # Its bolt comes out of the lock edge: the case stands from there inward, wherever in it the cylinder is.
    if at.stile is not None and part["case_width"] > at.stile + TOLERANCE_MM:
        yield ("gate-case-off-stile", {"stile_mm": at.stile}, "the case reaches past the stile")
    if part["mounting"] != "Bolted on":
        return
    bolts = at.fasteners("Through bolt")
    if not bolts:
        yield ("gate-bolt-missing", {}, "a lock that is bolted on gets no bolts")
    for number, bolt, _ in bolts:
        deep = part["case_depth"]
        if bolt["length"] < at.thick + deep + NUT_MM - TOLERANCE_MM:
            yield (
                "gate-bolt-short",
                {"bolt_mm": bolt["length"], "gate_mm": at.thick, "case_mm": deep},
                f"{number} of {bolt['length']:.1f} mm passes a gate of {at.thick:.1f} and a case of {deep:.1f} mm "
                "without room for its nut",
            )
        if bolt.get("head") == "Round, with a square neck":
            yield ("gate-bolt-turns", {}, f"the square neck of {number} does not bed in a round hole in steel tube")


def _egress(at: Standing) -> Iterable[Found]:
    role = at.opening.facts.get("egress")
    if role in (None, "Not on an egress path"):
        return
    lock, part = at.lock, at.locking
    turn = part["thumb_turn"] == "yes" if part["kind"] == "euro-cylinder" else lock.get("thumb_turn") == "yes"
    # IBC 1010.2, NFPA 101 7.2.1.5: no key, no knowledge, no effort from the egress side.
    if lock.get("function") == "Deadlock" and not turn:
        yield ("egress-locked", {}, "a deadlock without a turn inside keeps the way out locked")
    # A lever that stays beside it moves a lock of its own, not this one's bolt.
    if part["kind"] == "gate-lock" and part.get("release") != "yes":
        yield ("egress-locked", {}, "the gate's lock has nothing inside that lets people out")
    held, group = {item["kind"] for item in at.opening.items}, at.opening.facts.get("group")
    if held >= {"Electromagnetic lock", "Release sensor"} and group is not None and group not in BY_SENSOR:
        yield ("egress-held", {}, f"a magnet holds the way out, which no sensor may release in group {group}")
    device = any(i["kind"] == "Exit device" for i, _ in at.items("Inside", "Both faces"))
    if role == "Egress, panic hardware required" and not device:
        yield ("egress-no-panic", {}, "panic hardware is required and there is none")


def _listing(at: Standing) -> Iterable[Found]:
    if at.opening.facts.get("rating") in (None, "Not rated"):
        return
    for role in ("cylinder", "lock", "unit", "power-transfer"):
        for number, part, _ in at.roles.get(role, []):
            if part.get("listed") == "no":
                yield ("rated-unlisted", {}, f"{number} ({role}) on a rated leaf has no listing for it")
