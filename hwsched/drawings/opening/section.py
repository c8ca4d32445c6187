"""Horizontal section through the lock at the cylinder's height, seen from above: key side below, inside above."""

from dataclasses import replace
from typing import Final, Literal

from hwsched.attributes.of_parts import DEPTH_MM
from hwsched.calc.opening.placement import Rect
from hwsched.drawings.conventions import FIRST_DIMENSION_MM
from hwsched.drawings.dimensions import stack_horizontal, stack_vertical
from hwsched.drawings.drawing import Callout, Drawing, Fill, Line, Shape, Text
from hwsched.drawings.handing import lock_edge_left
from hwsched.drawings.layers import LEAD, LOCK, UNIT, hole_thing, of_thing
from hwsched.drawings.not_drawn import unknown_drawing
from hwsched.drawings.opening.cylinder_section import Cut, cylinder_shapes
from hwsched.drawings.opening.lock_place import LockPlace, case_problem, lock_place
from hwsched.drawings.opening.symbols import box
from hwsched.drawings.opening.through_leaf import bore_outline, cut_of, face_axes, thick_leaf
from hwsched.drawings.unknown import known, positive
from hwsched.language import phrase, to_phrase
from hwsched.quantities import LengthStyle, format_length
from hwsched.rules.reading import CASE_IN_LEAF, by_cylinder, leaf_hand, leafless, lock_part, unit_part
from hwsched.rules.saying import label_said
from hwsched.rules.solid.footprints import rectangle
from hwsched.values import Fit, Leaf, OpeningInput

_TITLES: Final = {True: to_phrase("Section A-A, at the cylinder"), False: to_phrase("Section A-A, at the lock")}
"""By whether it cuts a cylinder."""
_BEYOND_MM = 45.0
_NAMES_MM = 7.0
"""Room for the names of the faces inside the dimension of the thickness [paper mm]."""


def section(given: OpeningInput, fit: Fit, length_style: LengthStyle = "fraction") -> Drawing:
    """Cut the leaf level with the cylinder: leaf, lock case, cylinder with its collar, trim, unit, holes.

    Parameters
    ----------
    given, fit : OpeningInput, Fit
        Survey and fit.
    length_style : LengthStyle
        How dimensions are written.

    Returns
    -------
    Drawing
        From the lock edge to a break line; words while hand, thickness or the lock's centre are unknown.
    """
    title = _TITLES[by_cylinder(given)]
    if leafless(given):
        return unknown_drawing(title, [phrase("this opening has no leaf")])
    leaf, thick, missing = thick_leaf(given)
    problems = list(missing)
    if given.opening.hand is None:
        problems.append(phrase("unknown: needs {label_of}", label_of=label_said("opening.hand")))
    if leaf is None or problems or given.opening.hand is None:
        return unknown_drawing(title, problems)
    place, problems_of_lock, needs = lock_place(given, leaf, length_style)
    if place is None:
        return unknown_drawing(
            title, problems_of_lock or [phrase("unknown: needs {need}", need=need) for need in needs]
        )
    contradiction = case_problem(place, thick, length_style)
    if contradiction:
        return unknown_drawing(title, contradiction)
    # Seen from above with the key side below, left and right are those of somebody on the key side.
    way = 1.0 if lock_edge_left(leaf_hand(given) or given.opening.hand, "key") else -1.0
    reach = _reach(leaf, fit, place)
    shapes = _leaf(leaf, way, reach, thick)
    notes: list[str] = []
    inside, through = place.case_rect(), place.case_across(thick)
    if inside is not None and through is not None:
        x0, x1 = sorted((0.0, way * inside.x1))
        fill: Fill = "hole" if place.in_leaf else "existing"
        shapes += of_thing([box(Rect(x0, -through[1], x1, -through[0]), "existing", fill, "lock case")], place.item.id)
    elif place.item.lock_form in (*CASE_IN_LEAF, "rim"):
        notes.append(phrase("Lock case not drawn: its size was not surveyed in full."))
    shapes += of_thing(_trim(place, way, thick), place.item.id)
    part = lock_part(given, fit)
    if part is not None:
        drawn, more = cylinder_shapes(Cut(way * place.x_mm, thick, place.item, part, fit, length_style, way))
        shapes += of_thing(drawn, LOCK)
        notes += more
    made, more = _made(given, fit, place, way, thick)
    shapes += made
    notes += more
    axis = way * place.x_mm
    shapes.append(Line(((axis, -thick - 22.0), (axis, 22.0)), "centre", name="cylinder axis"))
    low = min(y for shape in shapes if isinstance(shape, Line) for _, y in shape.points)
    top = max(y for shape in shapes if isinstance(shape, Line) for _, y in shape.points)
    shapes += [
        *stack_horizontal(low, -1.0, [(0.0, axis, format_length(place.x_mm, length_style))]),
        *(
            replace(each, offset=each.offset - way * _NAMES_MM)
            for each in stack_vertical(way * reach, way, [(-thick, 0.0, format_length(thick, length_style))])
        ),
        # The faces are named beyond the end that goes on, where nothing is drawn: at the lock edge stand the callouts.
        Text(way * reach, 0.0, phrase("Inside"), "small", "left" if way > 0 else "right", dx=way * 1.2, dy=1.0),
        Text(way * reach, -thick, phrase("Key side"), "small", "left" if way > 0 else "right", dx=way * 1.2, dy=-3.4),
        # Beside its extension line, under all that callouts lead to.
        Text(
            0.0,
            low,
            phrase("Lock edge"),
            "small",
            "right" if way > 0 else "left",
            dx=-way * 1.5,
            dy=-FIRST_DIMENSION_MM + 2.0,
        ),
    ]
    bounds = (min(0.0, way * reach), low, max(0.0, way * reach), top)
    # Smaller a leaf is a few millimetres thick, and what goes through it is not told apart.
    return Drawing(title, tuple(shapes), bounds, tuple(notes), coarsest=5.0)


def _reach(leaf: Leaf, fit: Fit, place: LockPlace) -> float:
    ends = [place.x_mm + 30.0]
    inside = place.case_rect()
    if inside is not None:
        ends.append(inside.x1)
    if fit.placement is not None and fit.placement.face in ("inside", "key"):
        ends.append(fit.placement.x_mm + fit.placement.width_mm)
    ends += [hole.x_mm for hole in fit.holes if hole.face in ("inside", "key") and known(hole.x_mm)]
    reach = max(ends) + _BEYOND_MM
    return min(reach, leaf.width_mm) if positive(leaf.width_mm) else reach


def _leaf(leaf: Leaf, way: float, reach: float, thick: float) -> list[Shape]:
    x = way * reach
    tooth = thick * 0.15
    corners: tuple[tuple[float, float], ...] = (
        (x, 0.0), (0.0, 0.0), (0.0, -thick), (x, -thick),
        (x, -thick * 0.6), (x + tooth, -thick * 0.53), (x - tooth, -thick * 0.47), (x, -thick * 0.4),
    )  # fmt: skip
    fill: Fill = "glass" if leaf.material == "glass" else "leaf"
    return [Line(corners, "outline", True, fill, "leaf", cut_of(leaf))]


def _trim(place: LockPlace, way: float, thick: float) -> list[Shape]:
    """Draw trims by their thickness; as wide as the lock's footprint, or a stump by convention."""
    rect = rectangle(place.item)
    half = (rect.x1 - rect.x0) / 2 if rect is not None and rect.x1 > rect.x0 else 22.0
    middle = way * ((rect.x0 + rect.x1) / 2 if rect is not None else place.x_mm)
    shapes: list[Shape] = []
    key, inside = place.item.trim_key_mm, place.item.trim_inside_mm
    if positive(key):
        shapes.append(
            box(Rect(middle - half, -thick - key, middle + half, -thick), "existing", "existing", "trim, key side")
        )
    if positive(inside):
        shapes.append(box(Rect(middle - half, 0.0, middle + half, inside), "existing", "existing", "trim, inside"))
    return shapes


def _made(given: OpeningInput, fit: Fit, place: LockPlace, way: float, thick: float) -> tuple[list[Shape], list[str]]:
    """Draw holes, unit and cable; what is not at the cylinder's height is hidden lines."""
    shapes: list[Shape] = []
    notes: list[str] = []
    for axis in face_axes(fit, thick):
        (ax, _, az), (bx, _, bz) = axis.start, axis.end
        corners = tuple((way * x, -z) for z, x in bore_outline(axis, 0))
        if not corners:
            continue
        # Only what the plane of the section meets is drawn as cut; the rest would be looked for at the wrong height.
        cut = abs(axis.start[1] - place.y_mm) <= axis.hole.diameter_mm / 2
        drawn = (
            Line(corners, "new" if cut else "hidden", True, "hole" if cut else "none", axis.hole.name),
            Line(((way * ax, -az), (way * bx, -bz)), "centre"),
        )
        shapes += of_thing(drawn, hole_thing(axis.hole))
    unit, part = fit.placement, unit_part(given, fit)
    if unit is not None and unit.face in ("inside", "key"):
        depth = part.number_of(DEPTH_MM) if part is not None else None
        label = f"Unit {part.number}" if part is not None else phrase("Unit")
        if positive(depth):
            x0, x1 = sorted((way * unit.x_mm, way * (unit.x_mm + unit.width_mm)))
            low = 0.0 if unit.face == "inside" else -thick - depth
            cut = unit.y_mm <= place.y_mm <= unit.y_mm + unit.height_mm
            body = box(Rect(x0, low, x1, low + depth), "new" if cut else "hidden", "new" if cut else "none", "unit")
            words = (
                label
                if cut
                else phrase("{label} (above this section)", label=label)
                if unit.y_mm > place.y_mm
                else phrase("{label} (below this section)", label=label)
            )
            side: Literal["left", "right"] = "left" if way > 0 else "right"
            said = Callout((x0 + x1) / 2, low + depth * 0.7, words, side, (x1 - x0, depth * 0.5))
            shapes += of_thing((body, said), UNIT)
        else:
            notes.append(phrase("{label} not drawn: needs its depth.", label=label))
    if fit.cable is not None and len(fit.cable.points_mm) > 1:
        points = tuple((way * x, -z) for x, _, z in fit.cable.points_mm)
        shapes.append(Line(points, "hidden", name="cable", about=LEAD))
    return shapes, notes
