"""Judges whether hands come to what is printed: to nuts, to a thumb turn and to the lead's plug.

Sizes are the least that surely is in the way:

| what | taken as | source |
|---|---|---|
| nut or head of a bolt that passes the leaf | 1/2 in across | 5/16 in nut across its flats, from memory |
| thumb turn narrower than 1 in | what its longer side sweeps, at most 2 in across | trade usage, from memory |
| thumb and finger at a lead's hole | 5/8 in across, 2 in out | from memory |
| bolt of a gate lock | 1/2 in inside the corners of its case | from memory |
"""

from collections.abc import Iterable
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


def _name(item: Cells) -> str:
    return f"the {item['kind'].lower()}"
