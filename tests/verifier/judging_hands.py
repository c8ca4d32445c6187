"""Judges whether hands come to what is printed: to nuts, to a thumb turn and to the lead's plug.

Sizes are the least that surely is in the way:

| what | taken as | source |
|---|---|---|
| nut or head of a bolt that passes the leaf | 1/2 in across | 5/16 in nut across its flats, from memory |
| thumb turn narrower than 1 in | what its longer side sweeps, at most 2 in across | trade usage, from memory |
| thumb and finger at a lead's hole | 5/8 in across, 2 in out | from memory |
| bolt of a gate lock | 1/2 in inside the corners of its case | from memory |
| spanner | 60 degrees of an open one, 30 of a ring; of eight widths across the flats | trade usage, from memory |
| width across the flats | as bolts have it | ISO 272 and ASME B18.2.1, secondary copies |
"""

from collections.abc import Iterable
from math import cos, radians, sin
from typing import Final

from tests.verifier.bodies import Rod, circle_meets, meet, rects_meet
from tests.verifier.cells import Cells
from tests.verifier.judging_tools import standing_out
from tests.verifier.standing import INCH, Rect, Standing
from tests.verifier.violation import Found

NUT_MM: Final = 0.25 * INCH
TURN_MM: Final = 1.0 * INCH
PINCH_MM: Final = 0.3125 * INCH
FINGER_MM: Final = 2.0 * INCH
CORNER_MM: Final = 0.5 * INCH
FLATS_MM: Final = {"M8": 13.0, "#6": 6.35, "#8": 6.35}
"""Of tapping screws 1/4 in, ASME B18.6.4, from memory."""
STUBBY: Final = (8.0, 0.25)
"""Length and half the width of the shortest spanner, in widths across the flats."""
OVER_MM: Final = 6.0
"""What stands out of a face no farther than a nut is high is passed over."""
_SWINGS: Final = {"Open spanner": 60, "Ring spanner": 30}
_BOLTED: Final = ("Pull", "Lever or knob")
_FACES: Final = {"Inside": "key", "Key side": "inside"}
_LIES_UNDER: Final = ("Trim or escutcheon", "Push plate", "Kick plate", "Fire label")


def judged(at: Standing) -> Iterable[Found]:
    """Yield what no hand can do."""
    if not at.leaf:
        return
    yield from _nuts(at)
    yield from _turns(at)
    yield from _plug(at)
    yield from _gate(at)
    yield from spanners(at, STUBBY, OVER_MM)


def nuts(at: Standing, face: str) -> list[tuple[str, float, float]]:
    """Nuts on a face of what is bolted through the leaf from the other one, unless under something that stays."""
    other = "Key side" if face == "inside" else "Inside"
    under = [rect for _, rect in at.items("Inside" if face == "inside" else "Key side", "Both faces")]
    found = []
    for item, rect in at.items(other):
        if item["kind"] not in _BOLTED or not item.get("bolts"):
            continue
        for y in (rect[1] + item["bolts"], rect[3] - item["bolts"]):
            if not any(r[0] <= item["ix"] <= r[2] and r[1] <= y <= r[3] for r in under):
                found.append((item["kind"], item["ix"], y))
    return found


def turns(at: Standing) -> list[tuple[float, float, Rect]]:
    """Thumb turns on the inside, with the lock's own that is part of its trim: middle and footprint."""
    found = [(i["ix"], i["iy"], rect) for i, rect in at.items("Inside", "Both faces") if i["kind"] == "Thumb turn"]
    own = at.lock.get("thumb_turn") == "yes" or at.locking.get("thumb_turn") == "yes"
    if own and not found and at.lock["lock"].startswith(("Mortise", "Euro")):
        x, y = at.at
        found.append((x, y, (x - TURN_MM / 4, y - TURN_MM / 2, x + TURN_MM / 4, y + TURN_MM / 2)))
    return found


def _nuts(at: Standing) -> Iterable[Found]:
    plate = at.plate
    for kind, x, y in nuts(at, at.place["face"]) if plate is not None else ():
        if plate is not None and circle_meets(x, y, NUT_MM, plate):
            yield ("unit-on-nut", {"x_mm": x, "y_mm": y}, f"the plate lies on a nut of the {kind.lower()}")


def _turns(at: Standing) -> Iterable[Found]:
    plate = at.plate
    if plate is None or at.place["face"] != "inside":
        return
    for x, y, rect in turns(at):
        wide, high = rect[2] - rect[0], rect[3] - rect[1]
        if min(wide, high) > TURN_MM:
            continue
        radius = min(max(wide, high), 2 * TURN_MM) / 2
        if circle_meets(x, y, radius, plate):
            yield ("unit-in-turn", {"x_mm": x, "y_mm": y, "sweeps_mm": radius}, "the thumb turn turns into the unit")


def _plug(at: Standing) -> Iterable[Found]:
    face = at.place.get("face")
    if face not in ("inside", "key"):
        return
    start, out = (0.0, -1.0) if face == "inside" else (at.thick, 1.0)
    for bore in at.bores:
        if bore.purpose == "cable" and bore.face == face and isinstance(bore.body, Rod):
            x, y, _ = bore.body.start
            hand = Rod((x, y, start), (x, y, start + out * FINGER_MM), PINCH_MM)
            for kind, box in standing_out(at, face, start, out):
                if meet(hand, box):
                    yield ("no-room-for-fingers", {"x_mm": x, "y_mm": y}, f"no fingers at the lead: the {kind.lower()}")


def _gate(at: Standing) -> Iterable[Found]:
    part = at.locking
    if part["kind"] != "gate-lock":
        return
    (x, y), w, h = at.at, part["case_width"] / 2, part["case_height"] / 2
    lock_case: Rect = (x - w, y - h, x + w, y + h)
    for item, rect in at.items("Key side", "Both faces"):
        if item["kind"] not in _LIES_UNDER and rects_meet(lock_case, rect):
            yield ("gate-case-on-item", {"x_mm": rect[0], "y_mm": rect[1]}, f"the case stands on {_name(item)}")
    if part["mounting"] != "Bolted on":
        return
    spots = [
        (a, b)
        for a in (lock_case[0] + CORNER_MM, lock_case[2] - CORNER_MM)
        for b in (lock_case[1] + CORNER_MM, lock_case[3] - CORNER_MM)
    ]
    for item, rect in at.items("Inside", "Both faces"):
        for a, b in spots if item["kind"] not in _LIES_UNDER else ():
            if circle_meets(a, b, NUT_MM, rect):
                yield ("gate-nut-under-item", {"x_mm": a, "y_mm": b}, f"a nut of the lock stands under {_name(item)}")


def spanners(at: Standing, size: tuple[float, float], over: float) -> Iterable[Found]:
    """Yield each nut or hexagon head whose spanner, of some length and width, cannot be swung on to the next side."""
    for fastener, x, y, rects in _hexagons(at, over):
        flats, needed = FLATS_MM[fastener["size"]], _SWINGS[fastener["turned_by"]]
        reach, half = size[0] * flats, size[1] * flats
        free = [not any(_meets(x, y, degree, reach, half, rect) for rect in rects) for degree in range(360)]
        widest = run = 0
        for each in free + free:
            run = run + 1 if each else 0
            widest = max(widest, run)
        # One more place than degrees between them; two are left to the steps of the count.
        if widest + 1 < needed:
            yield (
                "spanner-not-swung",
                {"x_mm": x, "y_mm": y, "swing_deg": float(widest), "needed_deg": float(needed)},
                f"a spanner at {x:.1f}, {y:.1f} is swung {widest} degrees of {needed}",
            )


def _hexagons(at: Standing, over: float) -> Iterable[tuple[Cells, float, float, list[Rect]]]:
    """Yield what is turned by a spanner, where, and what stands beside it."""
    face = at.place.get("face")
    bolts = at.fasteners("Through bolt") if at.locking["kind"] == "gate-lock" else []
    for _, fastener, _ in at.fasteners():
        if fastener.get("turned_by") not in _SWINGS:
            continue
        if any(fastener is bolt for _, bolt, _ in bolts):
            (x, y), w, h = at.at, at.locking["case_width"] / 2 - CORNER_MM, at.locking["case_height"] / 2 - CORNER_MM
            beside = _out(at, "inside", over) + ([at.plate] if at.plate is not None and face == "inside" else [])
            for a, b in ((x - w, y - h), (x - w, y + h), (x + w, y - h), (x + w, y + h)):
                yield fastener, a, b, beside
        elif fastener.get("head") == "Hexagon" and face in ("inside", "key"):
            for x, y, _ in at.pilots:
                yield fastener, x, y, _out(at, face, over)


def _out(at: Standing, face: str, over: float) -> list[Rect]:
    faces = ("Inside" if face == "inside" else "Key side", "Both faces")
    cut = ("Lite or vision panel", "Louvre")
    return [r for item, r in at.items(*faces) if (item.get("proud") or 0.0) > over and item["kind"] not in cut]


def _meets(x: float, y: float, degree: int, reach: float, half: float, rect: Rect) -> bool:
    """Tell whether a spanner that points in some direction meets a rectangle, by points along its middle."""
    dx, dy = cos(radians(degree)), sin(radians(degree))
    steps = max(int(reach / max(half, 1.0)), 1)
    return any(
        circle_meets(x + dx * reach * i / steps, y + dy * reach * i / steps, half, rect) for i in range(steps + 1)
    )


def _name(item: Cells) -> str:
    return f"the {item['kind'].lower()}"
