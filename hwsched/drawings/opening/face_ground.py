"""What stands behind everything else on a face: floor, frame with its stop, leaves, stile, swing, hinges.

Frame face, hinges that were not surveyed and swing lines are drawn by convention; they are never dimensioned.
"""

import math
from typing import Final

from hwsched.calc.opening.placement import Rect
from hwsched.drawings.drawing import Fill, Line, Pen, Shape
from hwsched.drawings.handing import Face, swings_toward_viewer
from hwsched.drawings.opening.symbols import box
from hwsched.drawings.sheet import LeafOnSheet
from hwsched.drawings.unknown import known, positive
from hwsched.rules.reading import on_leaf
from hwsched.rules.solid.footprints import stop_bands
from hwsched.values import OpeningInput

_GAP_MM: Final = 3.0
_FRAME_FACE_MM: Final = 50.0
_POST_MM: Final = 70.0
_HINGE_MM: Final = (12.0, 100.0)
_FLOOR_MM: Final = 120.0
CONVENTION_NOTE: Final = (
    "By convention: frame, hinges, swing lines. These meet at the hinges; dashed: the leaf opens away from the viewer."
)


def ground_shapes(given: OpeningInput, leaves: tuple[LeafOnSheet, ...], face: Face) -> list[Shape]:
    """Draw floor, frame, leaves, swing and hinges of a face, in the order in which they cover each other."""
    x0 = min(leaf.left_mm for leaf in leaves)
    x1 = max(leaf.left_mm + leaf.width_mm for leaf in leaves)
    top = max(leaf.top_mm for leaf in leaves)
    broken = leaves[0].broken
    shapes: list[Shape] = []
    if not broken:
        shapes += _frame(given, x0, x1, top)
    for leaf in leaves:
        shapes += _leaf(given, leaf, face)
    if not broken:
        reach = _FLOOR_MM if given.opening.frame_material != "none" else _POST_MM + 30.0
        shapes.append(Line(((x0 - reach, 0.0), (x1 + reach, 0.0)), "outline", name="finished floor"))
    return shapes


def _frame(given: OpeningInput, x0: float, x1: float, top: float) -> list[Shape]:
    if given.opening.form == "gate":
        return [
            box(Rect(x0 - _GAP_MM - _POST_MM, 0.0, x0 - _GAP_MM, top + 40.0), "frame", "frame", "post"),
            box(Rect(x1 + _GAP_MM, 0.0, x1 + _GAP_MM + _POST_MM, top + 40.0), "frame", "frame", "post"),
        ]
    # A cabinet door hangs in its cabinet and not in a frame that stands on the floor.
    if given.opening.frame_material == "none" or given.opening.form == "cabinet":
        return []
    inner, outer = _GAP_MM, _GAP_MM + _FRAME_FACE_MM
    outline = (
        (x0 - inner, 0.0), (x0 - inner, top + inner), (x1 + inner, top + inner), (x1 + inner, 0.0),
        (x1 + outer, 0.0), (x1 + outer, top + outer), (x0 - outer, top + outer), (x0 - outer, 0.0),
    )  # fmt: skip
    return [Line(outline, "frame", True, "frame", "frame")]


def _leaf(given: OpeningInput, leaf: LeafOnSheet, face: Face) -> list[Shape]:
    left, right = leaf.left_mm, leaf.left_mm + leaf.width_mm
    rect = Rect(left, leaf.bottom_mm, right, leaf.top_mm)
    fill: Fill = "glass" if leaf.leaf.material == "glass" else "leaf"
    shapes: list[Shape] = []
    if leaf.broken:
        shapes.append(Line(_break_outline(rect), "outline", True, fill, "part of the leaf"))
        return shapes
    shapes.append(box(rect, "outline", fill, f"leaf {leaf.leaf.position or ''}".strip()))
    stile = leaf.leaf.stile_mm
    if positive(stile) and stile < leaf.width_mm:
        x = leaf.across(stile)
        shapes.append(Line(((x, rect.y0), (x, rect.y1)), "thin", name="lock stile"))
    hand = given.opening.hand
    if hand is not None:
        pen: Pen = "thin" if swings_toward_viewer(hand, face) else "hidden"
        middle = (rect.y0 + rect.y1) / 2
        corners = ((leaf.lock_edge, rect.y1), (leaf.hinge_edge, middle), (leaf.lock_edge, rect.y0))
        shapes.append(Line(corners, pen, name="swing"))
    shapes += _stop(given, leaf, face)
    shapes += _hinges(given, leaf)
    return shapes


def _stop(given: OpeningInput, leaf: LeafOnSheet, face: Face) -> list[Shape]:
    """Cover the bands that lie behind the frame's stop; the leaf's edges under it become hidden lines."""
    bands, _ = stop_bands(given, leaf.leaf, face)
    shapes: list[Shape] = []
    for band in bands:
        ends = sorted((leaf.across(band.x0), leaf.across(band.x1)))
        y0, y1 = max(band.y0, leaf.bottom_mm), leaf.top_mm
        if band.y0 > leaf.bottom_mm:
            # A band that runs across hangs from the top edge, wherever that is drawn.
            y0 = leaf.top_mm - (band.y1 - band.y0)
        if ends[1] > ends[0] and y1 > y0:
            shapes.append(box(Rect(ends[0], y0, ends[1], y1), "frame", "frame", "frame stop"))
    if shapes:
        corners = (
            (leaf.lock_edge, leaf.bottom_mm), (leaf.lock_edge, leaf.top_mm),
            (leaf.hinge_edge, leaf.top_mm), (leaf.hinge_edge, leaf.bottom_mm),
        )  # fmt: skip
        shapes.append(Line(corners, "hidden", name="leaf behind the stop"))
    return shapes


def _hinges(given: OpeningInput, leaf: LeafOnSheet) -> list[Shape]:
    if leaf.leaf.material == "glass" and given.opening.frame_material == "none":
        return []
    surveyed = [
        item.y_mm for item in given.items
        if item.kind == "hinge" and known(item.y_mm) and on_leaf(item, leaf.leaf)
    ]  # fmt: skip
    heights = surveyed or _usual_heights(leaf)
    wide, tall = _HINGE_MM
    x = leaf.hinge_edge
    return [
        box(Rect(x - wide / 2, y - tall / 2, x + wide / 2, y + tall / 2), "frame", "metal", "hinge") for y in heights
    ]


def _usual_heights(leaf: LeafOnSheet) -> list[float]:
    """Spread hinges for the picture: two up to 60 in of height, one more per further 30 in (NFPA 80)."""
    tall = leaf.top_mm - leaf.bottom_mm
    count = 2 + max(0, math.ceil((tall - 1524.0) / 762.0 - 1e-9))
    low = leaf.bottom_mm + min(300.0, tall * 0.2)
    high = leaf.top_mm - min(250.0, tall * 0.2)
    return [low + (high - low) * number / (count - 1) for number in range(count)]


def _break_outline(rect: Rect) -> tuple[tuple[float, float], ...]:
    """Return an outline whose upper and lower ends are zigzag break lines."""
    x0, y0, x1, y1 = rect
    middle, step, tooth = (x0 + x1) / 2, (x1 - x0) * 0.04, (x1 - x0) * 0.05
    up = ((x1, y1), (middle + 2 * step, y1), (middle + step, y1 + tooth), (middle - step, y1 - tooth),
          (middle - 2 * step, y1), (x0, y1))  # fmt: skip
    down = ((x0, y0), (middle - 2 * step, y0), (middle - step, y0 - tooth), (middle + step, y0 + tooth),
            (middle + 2 * step, y0), (x1, y0))  # fmt: skip
    return (*up, *down)
