"""The lock's case, bore, centre lines and new part on a face, and hatched keep-outs."""

from typing import Literal

from hwsched.attributes.of_parts import CASE_HEIGHT_MM, CASE_WIDTH_MM
from hwsched.calc.opening.placement import KeepOut, Rect
from hwsched.drawings.drawing import Callout, Circle, Line, Shape
from hwsched.drawings.handing import Face
from hwsched.drawings.layers import LOCK, of_thing
from hwsched.drawings.opening.lock_place import LockPlace, face_diameter
from hwsched.drawings.opening.symbols import box, euro_outline
from hwsched.drawings.sheet import LeafOnSheet
from hwsched.drawings.unknown import known, positive
from hwsched.values import Fit, OpeningInput, Part


def words_side(leaf: LeafOnSheet) -> Literal["left", "right"]:
    """Words stand on the hinge side of their leaf; dimensions of a single leaf on its lock side."""
    return "right" if leaf.lock_left else "left"


def keepout_shapes(keepout: KeepOut, leaf: LeafOnSheet) -> list[Shape]:
    """Hatch what a unit must keep off, its clearance included."""
    grown = keepout.grown()
    if not all(known(value) for value in grown):
        return []
    x0, x1 = sorted((leaf.across(grown.x0), leaf.across(grown.x1)))
    return [box(Rect(x0, grown.y0, x1, grown.y1), "keepout", "keepout", f"keep-out {keepout.name}")]


def _gate_case(part: Part, x: float, y: float) -> list[Shape]:
    wide, tall = part.number_of(CASE_WIDTH_MM), part.number_of(CASE_HEIGHT_MM)
    if not positive(wide) or not positive(tall):
        return []
    return [box(Rect(x - wide / 2, y - tall / 2, x + wide / 2, y + tall / 2), "new", "new", "gate lock")]


def lock_shapes(
    given: OpeningInput, fit: Fit, face: Face, place: LockPlace, leaf: LeafOnSheet, region: Rect | None = None
) -> list[Shape]:
    """Draw the lock's case, bore and centre lines, and the new cylinder or lock as it is seen on this face."""
    x, y = leaf.across(place.x_mm), place.y_mm
    shapes: list[Shape] = []
    fresh: list[Shape] = []
    inside = place.case_rect()
    if inside is not None:
        x0, x1 = sorted((leaf.across(inside.x0), leaf.across(inside.x1)))
        y0, y1 = inside.y0, inside.y1
        if region is not None:
            y0, y1 = max(y0, region.y0), min(y1, region.y1)
        shapes.append(box(Rect(x0, y0, x1, y1), "hidden", "none", "lock case"))
    bore = place.item.cross_bore_mm
    if positive(bore):
        shapes.append(Circle(x, y, bore, "hidden", "none", "cross bore"))
    part, diameter = face_diameter(given, fit)
    seen = part is not None and (face == "key" or part.kind == "bored-lever-lock")
    if part is not None and seen:
        if diameter is not None:
            fresh.append(Circle(x, y, diameter, "new", "new", part.kind))
        elif part.kind == "gate-lock":
            fresh += _gate_case(part, x, y)
        elif part.kind == "euro-cylinder":
            fresh += euro_outline(x, y)
        fresh.append(Callout(x, y, f"New {part.kind.replace('-', ' ')} {part.number}", words_side(leaf)))
    reach = 55.0
    return [
        *of_thing(shapes, place.item.id),
        *of_thing(fresh, LOCK),
        Line(((leaf.lock_edge, y), (x + leaf.toward_hinge * reach, y)), "centre", name="cylinder centre line"),
        Line(((x, y - reach), (x, y + reach)), "centre", name="backset line"),
    ]
