"""Bore detail: how each hole that starts in a face runs through the leaf, from the side and from above, with angles."""

from dataclasses import replace
from math import atan2, copysign, degrees

from hwsched.calc.opening.placement import Rect
from hwsched.drawings.dimensions import stack_horizontal
from hwsched.drawings.drawing import Arc, Callout, Drawing, Hatch, Line, Shape, Text
from hwsched.drawings.not_drawn import unknown_drawing
from hwsched.drawings.opening.hole_words import direction_words, size_words
from hwsched.drawings.opening.lock_place import LockPlace, case_problem, lock_place
from hwsched.drawings.opening.symbols import box
from hwsched.drawings.opening.through_leaf import Axis, bore_outline, cut_of, face_axes, thick_leaf
from hwsched.drawings.unknown import known
from hwsched.language import phrase, to_phrase
from hwsched.quantities import LengthStyle, format_length
from hwsched.rules.reading import leafless
from hwsched.values import Fit, OpeningInput

TITLE = to_phrase("Bore detail")
_AROUND_MM = 22.0
_BETWEEN_MM = 120.0
_TALL_MM = 150.0
"""Views up to this height are drawn at 1:5 at least, taller ones at half of that and twice as far apart."""
_ARC_MM = 16.0


def bore_detail(
    given: OpeningInput, fit: Fit, length_style: LengthStyle = "fraction", *, listed: bool = False
) -> Drawing:
    """Draw the bores side by side in two views: upright section (left) and plan (right), inside face on the left.

    Parameters
    ----------
    given, fit : OpeningInput, Fit
        Survey and fit.
    length_style : LengthStyle
        How dimensions are written.
    listed : bool
        Whether a table of the holes stands beside it: then no note says them again.

    Returns
    -------
    Drawing
        Angles are those of the fit's holes: up or down in the upright section, toward an edge in the plan. Words where
        no hole starts in a face or the thickness is unknown.
    """
    if leafless(given):
        return unknown_drawing(TITLE, [phrase("this opening has no leaf")])
    leaf, thick, missing = thick_leaf(given)
    if leaf is None or missing:
        return unknown_drawing(TITLE, missing)
    # Screws have their pilots by template, and would cover the bores that this view is for.
    axes = [axis for axis in face_axes(fit, thick) if axis.hole.purpose != "fixing"]
    if not axes:
        return unknown_drawing(TITLE, [phrase("no hole starts in a face of the leaf")])
    place, problems, _ = lock_place(given, leaf, length_style)
    if place is not None:
        problems = case_problem(place, thick, length_style)
    if problems:
        return unknown_drawing(TITLE, problems)
    cut = cut_of(leaf)
    upright, up_span = _view(axes, thick, 1, 0.0, place, length_style, cut)
    tall = up_span[1] - up_span[0] > _TALL_MM
    between = 2 * _BETWEEN_MM if tall else _BETWEEN_MM
    plan, plan_span = _view(axes, thick, 0, thick + between, place, length_style, cut)
    # Both views hang from one level, so that they stand side by side whatever heights they show.
    shapes = [*_moved(upright, 0.0, -up_span[1]), *_moved(plan, 0.0, -plan_span[1])]
    deep = max(up_span[1] - up_span[0], plan_span[1] - plan_span[0])
    for x, words in ((0.0, phrase("Upright section")), (thick + between, phrase("Plan, hinge edge on top"))):
        shapes.append(Text(x + thick / 2, 0.0, words, "label", "centre", dy=3.0))
    shapes += stack_horizontal(-(up_span[1] - up_span[0]), -1.0, [(0.0, thick, format_length(thick, length_style))])
    notes = tuple(
        phrase(
            "{part}{name}, {size_words}, {direction_words}, from the {part_2}.",
            part=phrase("Hole {order}: ", order=a.hole.order) if a.hole.order else "",
            name=a.hole.name,
            size_words=size_words(a.hole, length_style),
            direction_words=direction_words(a.hole),
            part_2=phrase("inside") if a.hole.face == "inside" else phrase("{face} side", face=phrase(a.hole.face)),
        )
        for a in (() if listed else axes)
    )
    return Drawing(TITLE, tuple(shapes), (0.0, -deep, 2 * thick + between, 0.0), notes, coarsest=10.0 if tall else 5.0)


def _view(
    axes: list[Axis],
    thick: float,
    along: int,
    left: float,
    place: LockPlace | None,
    style: LengthStyle,
    cut: Hatch = "",
) -> tuple[list[Shape], tuple[float, float]]:
    """Draw one view: z to the right, y (along 1) or x (along 0) upward; returns the levels that it spans."""
    levels = [value for axis in axes for value in (axis.start[along], axis.end[along])]
    if place is not None:
        levels.append(place.y_mm if along == 1 else place.x_mm)
    low, high = min(levels) - _AROUND_MM, max(levels) + _AROUND_MM
    if along == 0:
        low = 0.0
    starts = [axis.start[along] for axis in axes]
    far, down = (high, -1.8) if min(starts) - low < high - max(starts) else (low, 0.4)
    tooth = thick * 0.1
    corners: list[tuple[float, float]] = [(left, low), (left, high)]
    corners += [(left + thick * 0.42, high), (left + thick * 0.47, high + tooth), (left + thick * 0.53, high - tooth)]
    corners += [(left + thick * 0.58, high), (left + thick, high), (left + thick, low)]
    if along == 1:
        corners += [(left + thick * 0.58, low), (left + thick * 0.53, low - tooth), (left + thick * 0.47, low + tooth)]
        corners += [(left + thick * 0.42, low)]
    shapes: list[Shape] = [
        Line(tuple(corners), "outline", True, "leaf", "leaf", cut),
        # At the end that is farther from where bores begin: callouts lead to those.
        Text(left, far, phrase("Inside"), "small", "right", dx=-1.5, dy=down),
        Text(left + thick, far, phrase("Key side"), "small", "left", dx=1.5, dy=down),
    ]
    shapes += _case(place, thick, along, left, low, high)
    # The widest first, so that none covers another where they overlap in this view.
    for axis in sorted(axes, key=lambda a: -a.hole.diameter_mm):
        shapes += _bore(axis, along, left, style)
    return shapes, (low, high)


def _case(place: LockPlace | None, thick: float, along: int, left: float, low: float, high: float) -> list[Shape]:
    if place is None:
        return []
    inside, through = place.case_rect(), place.case_across(thick)
    shapes: list[Shape] = []
    if inside is not None and through is not None and place.in_leaf:
        y0, y1 = (inside.y0, inside.y1) if along == 1 else (inside.x0, inside.x1)
        rect = Rect(left + through[0], max(y0, low), left + through[1], min(y1, high))
        if rect.y1 > rect.y0:
            shapes.append(box(rect, "existing", "hole", "lock pocket"))
    level = place.y_mm if along == 1 else place.x_mm
    words = "cylinder" if along == 1 else "backset"
    shapes += [
        Line(((left - 6.0, level), (left + thick + 6.0, level)), "centre", name=f"{words} centre line"),
        Text(left + thick + 6.0, level, words, "small", "left", dx=1.0, dy=-0.9),
    ]
    return shapes


def _bore(axis: Axis, along: int, left: float, style: LengthStyle) -> list[Shape]:
    start = (left + axis.start[2], axis.start[along])
    end = (left + axis.end[2], axis.end[along])
    outline = tuple((left + z, level) for z, level in bore_outline(axis, along))
    if not outline or not all(known(value) for point in outline for value in point):
        return []
    shapes: list[Shape] = [
        Line(outline, "new", True, "hole", axis.hole.name),
        Line((start, end), "centre", name=f"{axis.hole.name} axis"),
    ]
    angle = axis.hole.up_deg if along == 1 else axis.hole.edge_deg
    if abs(angle) >= 0.05:
        dx, dy = end[0] - start[0], end[1] - start[1]
        square = 0.0 if dx > 0 else 180.0
        runs = degrees(atan2(dy, dx))
        # atan2 jumps from 180 to -180 degrees, and the arc would run round the other way.
        if square == 180.0 and runs < 0:
            runs += 360.0
        first, last = sorted((square, runs))
        away = copysign(_ARC_MM + 10.0, dx)
        shapes += [
            Line((start, (start[0] + away, start[1])), "centre", name="square to the face"),
            Arc(start[0], start[1], _ARC_MM, first, last, "dimension", f"{abs(angle):.3g} degrees"),
        ]
    if along == 1:
        number = f"Hole {axis.hole.order}: " if axis.hole.order else ""
        words = f"{number}{size_words(axis.hole, style)}, {direction_words(axis.hole)}"
        shapes.append(Callout(start[0], start[1], words, "left"))
    elif abs(angle) >= 0.05:
        toward = "lock" if angle > 0 else "hinge"
        shapes.append(
            Callout(
                start[0],
                start[1],
                phrase("{angle:.3g}° toward the {toward} edge", angle=abs(angle), toward=toward),
                "right",
            )
        )
    return shapes


def _moved(shapes: list[Shape], dx: float, dy: float) -> list[Shape]:
    """Move a view on the sheet."""
    moved: list[Shape] = []
    for shape in shapes:
        if isinstance(shape, Line):
            points = tuple((x + dx, y + dy) for x, y in shape.points)
            moved.append(replace(shape, points=points))
        elif isinstance(shape, Arc):
            moved.append(
                Arc(shape.x + dx, shape.y + dy, shape.radius, shape.start_deg, shape.end_deg, shape.pen, shape.name)
            )
        elif isinstance(shape, Text | Callout):
            moved.append(replace(shape, x=shape.x + dx, y=shape.y + dy))
    return moved
