"""What the fit adds to a face: the unit's plate or pocket, holes and pockets, the cable's way."""

from math import radians, tan

from hwsched.attributes.of_parts import POCKET_DEPTH_MM
from hwsched.calc.opening.placement import Rect
from hwsched.drawings.drawing import Callout, Circle, Line, Shape
from hwsched.drawings.handing import Face
from hwsched.drawings.layers import LEAD, UNIT, hole_thing, of_thing
from hwsched.drawings.opening.hole_words import direction_words, size_words
from hwsched.drawings.opening.symbols import box
from hwsched.drawings.opening.through_leaf import face_axes
from hwsched.drawings.sheet import LeafOnSheet
from hwsched.drawings.unknown import known, positive
from hwsched.language import phrase
from hwsched.quantities import LengthStyle
from hwsched.rules.reading import leaf_name, unit_part
from hwsched.values import Fit, Hole, OpeningInput


def new_work(
    given: OpeningInput,
    fit: Fit,
    face: Face,
    leaves: tuple[LeafOnSheet, ...],
    style: LengthStyle,
    *,
    angles: bool = True,
) -> tuple[list[Shape], list[str]]:
    """Draw unit, holes and cable as a face shows them; what is on the other face or inside is hidden lines.

    Without ``angles`` callouts do not say how holes lean: a bore detail beside it says it.
    """
    notes: list[str] = []
    shapes = of_thing(_unit(given, fit, face, leaves), UNIT)
    for hole in sorted(fit.holes, key=lambda h: h.order):
        leaf = _on(leaves, hole.leaf)
        if leaf is None or hole.face not in ("inside", "key"):
            continue
        if hole.by_template or hole.count > 1:
            if hole.face == face:
                notes.append(
                    phrase(
                        "{name} ({size_words}): marked from the part itself.",
                        name=hole.name,
                        size_words=size_words(hole, style),
                    )
                )
            continue
        shapes += of_thing(_hole(hole, face, leaf, style, angles), hole_thing(hole))
    if fit.cable is not None and len(fit.cable.points_mm) > 1:
        leaf = _on(leaves, fit.placement.leaf if fit.placement else "") or leaves[0]
        points = tuple((leaf.across(x), y) for x, y, _ in fit.cable.points_mm)
        if all(known(value) for point in points for value in point):
            shapes.append(Line(points, "hidden", name="cable", about=LEAD))
    return shapes, notes


def _on(leaves: tuple[LeafOnSheet, ...], name: str) -> LeafOnSheet | None:
    if not name:
        return leaves[0]
    return next((leaf for leaf in leaves if name in (leaf_name(leaf.leaf), leaf.leaf.id)), None)


def _unit(given: OpeningInput, fit: Fit, face: Face, leaves: tuple[LeafOnSheet, ...]) -> list[Shape]:
    unit = fit.placement
    leaf = _on(leaves, unit.leaf) if unit is not None else None
    if unit is None or leaf is None:
        return []
    part = unit_part(given, fit)
    label = f"Unit {part.number}" if part is not None else phrase("Unit")
    if unit.face == "edge":
        depth = part.number_of(POCKET_DEPTH_MM) if part is not None else None
        if not positive(depth):
            return []
        rect = Rect(0.0, unit.y_mm, depth, unit.y_mm + unit.height_mm)
        label = f"{label} in the lock edge"
    else:
        rect = Rect(unit.x_mm, unit.y_mm, unit.x_mm + unit.width_mm, unit.y_mm + unit.height_mm)
    x0, x1 = sorted((leaf.across(rect.x0), leaf.across(rect.x1)))
    on_sheet = Rect(x0, rect.y0, x1, rect.y1)
    if unit.face == face:
        shapes: list[Shape] = [box(on_sheet, "new", "new", "unit")]
    elif unit.face == "edge":
        shapes = [box(on_sheet, "hidden", "none", "unit in the edge")]
    else:
        return [box(on_sheet, "hidden", "none", "unit on the other face")]
    if unit.source == "by-hand":
        label += phrase(", placed by hand")
    y = rect.y1 - (rect.y1 - rect.y0) * 0.15
    shapes.append(Callout((x0 + x1) / 2, y, label, "right" if leaf.lock_left else "left"))
    return shapes


def _hole(hole: Hole, face: Face, leaf: LeafOnSheet, style: LengthStyle, angles: bool) -> list[Shape]:
    x, y = hole.x_mm, hole.y_mm
    if hole.from_depth_mm > 0:
        return _inside(hole, face, leaf, style, angles)
    if hole.face != face:
        thick = leaf.leaf.thickness_mm
        if hole.depth_mm is not None or not positive(thick) or hole.diameter_mm <= 0:
            return []
        # Where a through hole comes out: toward the lock edge is toward smaller x, seen from either face.
        x -= thick * tan(radians(hole.edge_deg))
        y += thick * tan(radians(hole.up_deg))
    if not (known(x) and known(y)):
        return []
    x = leaf.across(x)
    if hole.diameter_mm > 0:
        shapes: list[Shape] = [Circle(x, y, hole.diameter_mm, "new", "hole", hole.name)]
    elif positive(hole.width_mm) and positive(hole.height_mm):
        wide, tall = hole.width_mm / 2, hole.height_mm / 2
        shapes = [box(Rect(x - wide, y - tall, x + wide, y + tall), "new", "hole", hole.name)]
    else:
        return []
    arm = max(hole.diameter_mm, 12.0)
    shapes += [
        Line(((x - arm, y), (x + arm, y)), "centre"),
        Line(((x, y - arm), (x, y + arm)), "centre"),
    ]
    if hole.face == face and hole.purpose != "fixing":
        number = f"Hole {hole.order}: " if hole.order else ""
        shapes.append(Callout(x, y, f"{number}{size_words(hole, style)}", "right" if leaf.lock_left else "left"))
    return shapes


def _inside(hole: Hole, face: Face, leaf: LeafOnSheet, style: LengthStyle, angles: bool) -> list[Shape]:
    """Draw a hole that begins below its face, at the bottom of another one: its axis as a hidden line."""
    axes = face_axes(Fit("fits", holes=(hole,)), leaf.leaf.thickness_mm or 0.0)
    if not axes or not positive(leaf.leaf.thickness_mm):
        return []
    (x0, y0, _), (x1, y1, _) = axes[0].start, axes[0].end
    shapes: list[Shape] = [Line(((leaf.across(x0), y0), (leaf.across(x1), y1)), "hidden", name=hole.name)]
    if hole.face == face:
        number = f"Hole {hole.order}: " if hole.order else ""
        words = f"{number}{size_words(hole, style)}" + (f", {direction_words(hole)}" if angles else "")
        shapes.append(Callout(leaf.across(x1), y1, words, "right" if leaf.lock_left else "left"))
    return shapes
