"""What holds an existing item in its leaf, and an exit device's rods: by the cells, at their least.

| what | taken as | source |
|---|---|---|
| bolt or screw | 5/16 in, through the leaf | usual function holes, from memory |
| end of an exit device's case | as its rim lock was measured, else 8 in from the bar's end | from memory |
| rod | 3/8 in, in the leaf's middle or on the face | from memory |
| latch at its end | 1 in wide and 3 in high | from memory |
"""

from typing import Final

from tests.verifier.bodies import Body, Box, Point, Rod
from tests.verifier.cells import Cells

Rect = tuple[float, float, float, float]
BOLT_MM: Final = 5 / 32 * 25.4
"""Half of its diameter."""
ROD_MM: Final = 3 / 16 * 25.4
CASE_MM: Final = 8 * 25.4
LATCH_MM: Final = (12.7, 76.2)
ON_LINE: Final = ("Pull", "Lever or knob")
"""Bolted above each other on the middle line; what else is fixed, near the corners."""
FIXED: Final = (*ON_LINE, "Closer", "Exit device")
ON_FACE: Final = "Vertical rods on the face"
IN_LEAF: Final = "Vertical rods in the leaf"


def fixings(item: Cells, rect: Rect, thick: float, case_mm: float | None) -> list[Body]:
    """Bolts or screws of an item; none where their place is not in its cells, or nothing of it enters the leaf."""
    inset = item.get("bolts")
    if item["kind"] not in FIXED or not inset:
        return []
    low, high = rect[1] + inset, rect[3] - inset
    if item["kind"] in ON_LINE:
        xs = [item["ix"]]
    else:
        xs = [rect[0] + inset, rect[2] - inset]
        if item["kind"] == "Exit device":
            xs.append(min(rect[0] + CASE_MM if case_mm is None else case_mm, rect[2]) - inset)
    return [Rod((x, y, 0.0), (x, y, thick), BOLT_MM) for x in xs for y in (low, high)]


def runs(item: Cells, low: float, top: float) -> list[tuple[float, float, float]]:
    """Where a device's rods run: from the lock edge, from and to above the floor, up first."""
    if item["kind"] != "Exit device" or item.get("device") not in (ON_FACE, IN_LEAF) or item.get("rod_x") is None:
        return []
    found = [(item["rod_x"], item["iy"], top)]
    if item.get("rod_ends") == "Up and down":
        found.append((item["rod_x"], low, item["iy"]))
    return found


def in_leaf(item: Cells, low: float, top: float, thick: float) -> list[Body]:
    """Rods in the leaf, with their latches."""
    found: list[Body] = []
    for x, y0, y1 in runs(item, low, top) if item.get("device") == IN_LEAF else []:
        a: Point = (x, y0, thick / 2)
        found.append(Rod(a, (x, y1, thick / 2), ROD_MM))
        wide, high = LATCH_MM
        start, end = (y1 - high, y1) if y1 == top else (y0, y0 + high)
        found.append(Box((x - wide, start, thick / 2 - ROD_MM), (x + wide, end, thick / 2 + ROD_MM)))
    return found


def on_face(item: Cells, low: float, top: float, half: float = ROD_MM, latch: float = LATCH_MM[0]) -> list[Rect]:
    """What rods on the face and their latches take of it."""
    found = []
    for x, y0, y1 in runs(item, low, top) if item.get("device") == ON_FACE else []:
        found.append((x - half, y0, x + half, y1))
        found.append((x - latch, y1 - 127.0, x + latch, y1) if y1 == top else (x - latch, y0, x + latch, y0 + 127.0))
    return found
