"""View onto the lock edge: thickness, lock front, bores, the in-edge unit's pocket, what stands proud of each face."""

from dataclasses import dataclass
from typing import Literal

from hwsched.attributes.of_parts import CASE_DEPTH_MM, CASE_HEIGHT_MM, DEPTH_MM
from hwsched.calc.opening.placement import Rect
from hwsched.drawings.dimensions import stack_horizontal, stack_vertical
from hwsched.drawings.drawing import Callout, Circle, Drawing, Line, Shape, Text
from hwsched.drawings.layers import UNIT, hole_thing, of_thing
from hwsched.drawings.not_drawn import unknown_drawing
from hwsched.drawings.opening.lock_place import LockPlace, case_problem, lock_place
from hwsched.drawings.opening.symbols import box
from hwsched.drawings.opening.through_leaf import bore_outline, face_axes, thick_leaf
from hwsched.drawings.unknown import known, positive
from hwsched.language import phrase, to_phrase
from hwsched.quantities import LengthStyle, format_length
from hwsched.rules.reading import CASE_IN_LEAF, leaf_hand, leafless, lock_item, lock_part, on_leaf, remains, unit_part
from hwsched.rules.saying import label_said
from hwsched.rules.solid.edge import front_of
from hwsched.rules.solid.footprints import face_of, rectangle
from hwsched.values import Fit, Leaf, OpeningInput

TITLE = to_phrase("Lock edge")
_AROUND_MM = 55.0


@dataclass(frozen=True, slots=True)
class _View:
    """How z stands on the sheet."""

    thickness_mm: float
    key_left: bool

    def across(self, z: float) -> float:
        return self.thickness_mm - z if self.key_left else z


def edge_view(given: OpeningInput, fit: Fit, length_style: LengthStyle = "fraction") -> Drawing:
    """Draw the lock edge as somebody sees it who looks from the lock edge toward the hinges.

    Parameters
    ----------
    given, fit : OpeningInput, Fit
        Survey and fit.
    length_style : LengthStyle
        How dimensions are written.

    Returns
    -------
    Drawing
        The part of the edge about the lock and the unit, between break lines; words while facts are missing.
    """
    if leafless(given):
        return unknown_drawing(TITLE, [phrase("this opening has no leaf")])
    leaf, thickness, missing = thick_leaf(given)
    problems = list(missing)
    if given.opening.hand is None:
        problems.append(phrase("unknown: needs {label_of}", label_of=label_said("opening.hand")))
    if leaf is None or problems:
        return unknown_drawing(TITLE, problems)
    place, problems_of_lock, needs = lock_place(given, leaf, length_style)
    if place is None:
        return unknown_drawing(
            TITLE, problems_of_lock or [phrase("unknown: needs {need}", need=need) for need in needs]
        )
    contradiction = case_problem(place, thickness, length_style)
    if contradiction:
        return unknown_drawing(TITLE, contradiction)
    # Somebody at the lock edge of a leaf hinged left (from the key side) has the key side on the left.
    view = _View(thickness, leaf_hand(given) in ("LH", "LHR"))
    low, high = _span(given, fit, leaf, place)
    shapes = _body(leaf, view, low, high)
    shapes += _existing(given, leaf, view, place, low, high)
    shapes += _made(given, fit, view)
    leftmost = min(x for shape in shapes if isinstance(shape, Line) for x, _ in shape.points)
    shapes += _dimensions(fit, view, place, leftmost, low, length_style)
    notes = []
    lacks = place.case_rect() is None or place.case_across(thickness) is None
    if lacks and place.item.lock_form in (*CASE_IN_LEAF, "rim"):
        notes.append(phrase("Lock case not drawn: its size was not surveyed in full."))
    front = front_of(place.item) if place.in_leaf else None
    if front is not None and front.taken:
        notes.append(
            phrase("Lock front drawn as usual of its form (common practice, unverified): it was not surveyed.")
        )
    return Drawing(TITLE, tuple(shapes), (0.0, low, thickness, high), tuple(notes))


def _span(given: OpeningInput, fit: Fit, leaf: Leaf, place: LockPlace) -> tuple[float, float]:
    levels = [place.y_mm - 40.0, place.y_mm + 40.0]
    front = front_of(place.item) if place.in_leaf else None
    if front is not None:
        levels += [front.low, front.high]
    inside = place.case_rect()
    if inside is not None:
        levels += [inside.y0, inside.y1]
    unit = fit.placement
    if unit is not None:
        levels += [unit.y_mm, unit.y_mm + unit.height_mm]
    levels += [hole.y_mm for hole in fit.holes if known(hole.y_mm) and hole.face in ("inside", "key", "lock-edge")]
    low, high = min(levels) - _AROUND_MM, max(levels) + _AROUND_MM
    if known(leaf.undercut_mm) and positive(leaf.height_mm):
        low, high = max(low, leaf.undercut_mm), min(high, leaf.undercut_mm + leaf.height_mm)
    return low, high


def _body(leaf: Leaf, view: _View, low: float, high: float) -> list[Shape]:
    thick = view.thickness_mm
    tooth = thick * 0.12
    corners: list[tuple[float, float]] = []
    for y, xs in ((high, (0.0, 0.4, 0.47, 0.53, 0.6, 1.0)), (low, (1.0, 0.6, 0.53, 0.47, 0.4, 0.0))):
        ends_here = known(leaf.undercut_mm) and positive(leaf.height_mm) and (
            abs(y - leaf.undercut_mm) < 0.01 or abs(y - leaf.undercut_mm - leaf.height_mm) < 0.01
        )  # fmt: skip
        for number, share in enumerate(xs):
            jump = {2: tooth, 3: -tooth}.get(number, 0.0) if not ends_here else 0.0
            corners.append((thick * share, y + jump))
    name_key, name_inside = view.across(thick), view.across(0.0)
    shapes: list[Shape] = [Line(tuple(corners), "outline", True, "leaf", "leaf edge")]
    for x, words in ((name_key, phrase("Key side")), (name_inside, phrase("Inside"))):
        left = x == 0.0
        shapes.append(Text(x, high, words, "small", "right" if left else "left", dx=-2.0 if left else 2.0, dy=-1.8))
    return shapes


def _proud(view: _View, face: str, depth_mm: float, y0: float, y1: float) -> Rect:
    """Return what stands proud of a face by a depth."""
    z0, z1 = (-depth_mm, 0.0) if face == "inside" else (view.thickness_mm, view.thickness_mm + depth_mm)
    x0, x1 = sorted((view.across(z0), view.across(z1)))
    return Rect(x0, y0, x1, y1)


def _existing(given: OpeningInput, leaf: Leaf, view: _View, place: LockPlace, low: float, high: float) -> list[Shape]:
    shapes: list[Shape] = []
    inside, through = place.case_rect(), place.case_across(view.thickness_mm)
    front = front_of(place.item) if place.in_leaf else None
    if front is not None:
        middle, half = view.thickness_mm / 2 + (place.item.case_offset_mm or 0.0), front.width_mm / 2
        x0, x1 = sorted(view.across(z) for z in (max(middle - half, 0.0), min(middle + half, view.thickness_mm)))
        plate = Rect(x0, max(front.low, low), x1, min(front.high, high))
        shapes += of_thing([box(plate, "thin", "existing", "lock front")], place.item.id)
    if inside is not None and through is not None:
        x0, x1 = sorted(view.across(z) for z in through)
        shapes += of_thing(
            [box(Rect(x0, inside.y0, x1, inside.y1), "existing", "existing", "lock case")], place.item.id
        )
    if positive(place.item.edge_bore_mm):
        shapes.append(
            Circle(view.thickness_mm / 2, place.y_mm, place.item.edge_bore_mm, "existing", "hole", "edge bore")
        )  # fmt: skip
    for item in given.items:
        rect, out = rectangle(item), item.projection_mm
        if rect is None or not positive(out) or not remains(item) or not on_leaf(item, leaf):
            continue
        y0, y1 = max(rect.y0, low), min(rect.y1, high)
        if y1 <= y0:
            continue
        for face in ("inside", "key"):
            if face_of(item) in (face, "both"):
                there = box(_proud(view, face, out, y0, y1), "existing", "existing", item.kind or "other")
                shapes += of_thing([there], item.id)
    across = (-8.0, view.thickness_mm + 8.0)
    shapes.append(Line(((across[0], place.y_mm), (across[1], place.y_mm)), "centre", name="cylinder centre line"))
    return shapes


def _gate_lock(given: OpeningInput, fit: Fit, view: _View) -> list[Shape]:
    """Draw a gate's new lock, whose case stands proud of the key side."""
    part, item = lock_part(given, fit), lock_item(given)
    if part is None or part.kind != "gate-lock" or item is None or not known(item.cylinder_height_mm):
        return []
    tall, deep = part.number_of(CASE_HEIGHT_MM), part.number_of(CASE_DEPTH_MM)
    if not positive(tall) or not positive(deep):
        return []
    low = item.cylinder_height_mm - tall / 2
    return [box(_proud(view, "key", deep, low, low + tall), "new", "new", "gate lock")]


def _made(given: OpeningInput, fit: Fit, view: _View) -> list[Shape]:
    shapes = _gate_lock(given, fit, view)
    for axis in face_axes(fit, view.thickness_mm):
        start = (view.across(axis.start[2]), axis.start[1])
        end = (view.across(axis.end[2]), axis.end[1])
        corners = tuple((view.across(z), y) for z, y in bore_outline(axis, 1))
        if corners:
            drawn = (Line(corners, "hidden", True, name=axis.hole.name), Line((start, end), "centre"))
            shapes += of_thing(drawn, hole_thing(axis.hole))
    for hole in fit.holes:
        if hole.face == "lock-edge" and hole.diameter_mm > 0 and hole.count == 1 and not hole.by_template:
            made = Circle(view.across(hole.x_mm), hole.y_mm, hole.diameter_mm, "new", "hole", hole.name)
            shapes += of_thing([made], hole_thing(hole))
    unit, part = fit.placement, unit_part(given, fit)
    if unit is None:
        return shapes
    label = f"Unit {part.number}" if part is not None else phrase("Unit")
    stands: list[Shape] = []
    if unit.face == "edge":
        x0, x1 = sorted((view.across(unit.x_mm), view.across(unit.x_mm + unit.width_mm)))
        rect = Rect(x0, unit.y_mm, x1, unit.y_mm + unit.height_mm)
        stands.append(box(rect, "new", "new", "unit pocket"))
        stands.append(Callout((x0 + x1) / 2, rect.y1 - 10.0, phrase("{label}, pocket", label=label), "right"))
    elif unit.face in ("inside", "key"):
        depth = part.number_of(DEPTH_MM) if part is not None else None
        rect = _proud(view, unit.face, depth if positive(depth) else 0.0, unit.y_mm, unit.y_mm + unit.height_mm)
        if positive(depth):
            stands.append(box(rect, "new", "new", "unit"))
            side: Literal["left", "right"] = "right" if rect.x1 > view.thickness_mm else "left"
            stands.append(Callout((rect.x0 + rect.x1) / 2, (rect.y0 + rect.y1) / 2, label, side))
        else:
            stands.append(Line(((rect.x0, rect.y0), (rect.x0, rect.y1)), "new", name="unit, depth unknown"))
    return [*shapes, *of_thing(stands, UNIT)]


def _dimensions(
    fit: Fit, view: _View, place: LockPlace, leftmost: float, low: float, style: LengthStyle
) -> list[Shape]:
    thick = view.thickness_mm
    level = [(0.0, thick, format_length(thick, style))]
    upright: list[tuple[float, float, str]] = []
    unit = fit.placement
    inside = place.case_rect()
    if unit is not None and unit.face == "edge":
        y0, y1 = unit.y_mm, unit.y_mm + unit.height_mm
        upright.append((y0, y1, format_length(y1 - y0, style)))
        if inside is not None:
            gap = (inside.y1, y0) if y0 >= inside.y1 else (y1, inside.y0)
            if gap[1] > gap[0]:
                upright.append((*gap, format_length(gap[1] - gap[0], style)))
        near = y0 if y0 > place.y_mm else y1
        ends = sorted((place.y_mm, near))
        upright.append((ends[0], ends[1], format_length(ends[1] - ends[0], style)))
        z0, z1 = unit.x_mm, unit.x_mm + unit.width_mm
        x_inside, x_near = view.across(0.0), view.across(z0)
        level.append((x_inside, x_near, format_length(z0, style)))
        level.append((view.across(z0), view.across(z1), format_length(z1 - z0, style)))
    elif inside is not None:
        upright.append((inside.y0, inside.y1, format_length(inside.y1 - inside.y0, style)))
        upright.append((place.y_mm, inside.y1, format_length(inside.y1 - place.y_mm, style)))
    return [*stack_vertical(leftmost, -1.0, upright), *stack_horizontal(low, -1.0, level)]
