"""Judges whether drill and screwdriver come to what is printed: straight, square to the face, the leaf standing open.

What practice takes off for the work and puts back is not in the way; tools are the slimmest and longest of the trade.
"""

from collections.abc import Iterable
from math import atan2, cos, sin
from typing import Final

from tests.verifier.bodies import Box, Rod, meet
from tests.verifier.standing import INCH, Standing
from tests.verifier.violation import Found

REACH_MM: Final = 18 * INCH
"""The longest of the fixed long bits; encyclopedia. A blade on an extension is no longer."""
CHUCK_MM: Final = 17.0
"""Half of the slimmest chuck; from memory, unverified."""
TOOL_MM: Final = 150.0
"""A drill without its bit at its shortest; from memory, unverified."""
BLADE_MM: Final = 3.0
"""Half of the blade that turns a No. 6 screw; from memory, unverified."""
FIST_MM: Final = 40.0
"""Half of a hand round a handle; a clenched hand is 95 across in the MIL-STD-1472 family, from memory."""
COMES_OFF: Final = (
    "Lever or knob",
    "Thumb turn",
    "Pull",
    "Trim or escutcheon",
    "Push plate",
    "Kick plate",
    "Astragal",
    "Fire label",
)


def judged(at: Standing) -> Iterable[Found]:
    """Yield each hole and screw to which no tool comes straight."""
    if not at.leaf:
        return
    yield from _bridge(at)
    for face, out in (("inside", -1.0), ("key", 1.0)):
        start = 0.0 if face == "inside" else at.thick
        standing = [*standing_out(at, face, start, out)]
        if not standing:
            continue
        for bore in at.bores:
            body = bore.body
            if bore.face == face and isinstance(body, Rod) and abs(body.direction[2]) > 0.9999:
                bit = max(REACH_MM - INCH - body.length, 0.0)
                yield from _blocked(standing, bore.name, body.start, body.radius, start, out, bit, CHUCK_MM)
        for x, y, _ in at.pilots if at.place and at.place["face"] == face else ():
            yield from _blocked(standing, "screw", (x, y, start), BLADE_MM, start, out, REACH_MM, FIST_MM)


def _bridge(at: Standing) -> Iterable[Found]:
    """Yield a bridge between the pockets of unit and case through which no bit comes that leans in the unit's."""
    held = at.lock_case()
    if not at.place or at.place["face"] != "edge" or held is None or at.locking["kind"] != "mortise-cylinder":
        return
    if at.unit is None or at.leaf.get("material") == "Aluminium":
        return
    y0, y1 = at.place["y_mm"], at.place["y_mm"] + at.unit["pocket_length"]
    off, half = max(y0 - held.high[1], held.low[1] - y1), 3 / 16 * INCH
    # From the edge itself to the case's back: no line through the bridge leans more.
    most = atan2(held.high[0] - 2 * half, off)
    clear = (
        (REACH_MM - off / cos(lean)) * sin(lean) - CHUCK_MM * cos(lean) - half
        for lean in (most * step / 60 for step in range(1, 61))
    )
    if max(clear) < 0:
        yield ("bridge-not-drilled", {"off_mm": off}, f"no bit comes through {off:.0f} mm of bridge")


def standing_out(at: Standing, face: str, start: float, out: float) -> Iterable[tuple[str, Box]]:
    """Yield what stays out of a face while one works there: kind and body."""
    for item, rect in at.items("Inside" if face == "inside" else "Key side", "Both faces"):
        if item["kind"] in COMES_OFF or item["kind"] in ("Lite or vision panel", "Louvre"):
            continue
        low, high = sorted((start, start + out * (item.get("proud") or 0.0)))
        yield item["kind"], Box((rect[0], rect[1], low), (rect[2], rect[3], high))


def _blocked(
    standing: list[tuple[str, Box]],
    name: str,
    at: tuple[float, float, float],
    radius: float,
    start: float,
    out: float,
    reach: float,
    behind: float,
) -> Iterable[Found]:
    x, y, _ = at
    bit = Rod((x, y, start), (x, y, start + out * reach), radius)
    body = Rod((x, y, start + out * reach), (x, y, start + out * (reach + TOOL_MM)), behind)
    for kind, box in standing:
        if meet(bit, box) or meet(body, box):
            yield ("no-room-for-tool", {"x_mm": x, "y_mm": y}, f"no tool comes to the {name}: the {kind.lower()}")
