"""Enlarged part of a face about the lock and the unit, with every hole dimensioned from the cylinder."""

from hwsched.calc.opening.placement import Rect
from hwsched.drawings.dimensions import stack_horizontal, stack_vertical
from hwsched.drawings.drawing import Callout, Drawing, Fill, Line, Pen, Shape, Text
from hwsched.drawings.handing import Face
from hwsched.drawings.not_drawn import unknown_drawing
from hwsched.drawings.opening.face_items import existing_items
from hwsched.drawings.opening.face_lock import lock_shapes
from hwsched.drawings.opening.lock_place import LockPlace, lock_place
from hwsched.drawings.opening.new_work import new_work
from hwsched.drawings.opening.symbols import box
from hwsched.drawings.sheet import LeafOnSheet, leaves_on_face
from hwsched.drawings.unknown import known, positive
from hwsched.language import phrase
from hwsched.quantities import LengthStyle, format_length
from hwsched.rules.reading import leaf_name, leafless
from hwsched.rules.solid.footprints import stop_bands
from hwsched.values import Fit, Hole, OpeningInput
from hwsched.work.situation import spare_lead_mm

TITLES = {"inside": "Lock and unit, inside", "key": "Lock and unit, key side"}
_AROUND_MM = 35.0
_IN_EDGE_MM = 15.0
"""How deep in the edge a callout for what lies in its pocket points."""
_CUT_MM = 20.0
"""Of a stroke that marks a section, beyond the part that is shown."""


def face_detail(
    given: OpeningInput,
    fit: Fit,
    face: Face,
    length_style: LengthStyle = "fraction",
    *,
    cut: str = "",
    angles: bool = True,
) -> Drawing:
    """Draw the part of a face on which work is done, larger than an elevation can.

    Parameters
    ----------
    given, fit : OpeningInput, Fit
        Survey and fit.
    face : {"inside", "key"}
        Which face is looked at.
    length_style : LengthStyle
        How dimensions are written; distances to be marked are given to 1/64 in.
    cut : str, optional
        Letter of the section at the cylinder, where one is drawn: its plane is marked.
    angles : bool
        Whether callouts say how holes lean; a bore detail beside it says it, too.

    Returns
    -------
    Drawing
        From the lock edge to a break line; words while facts are missing.
    """
    title = TITLES[face]
    if leafless(given):
        return unknown_drawing(title, [phrase("this opening has no leaf")])
    leaves, problems, _ = leaves_on_face(given, face)
    if problems:
        return unknown_drawing(title, problems)
    leaf = leaves[0]
    place, problems, needs = lock_place(given, leaf.leaf, length_style)
    if place is None:
        return unknown_drawing(title, problems or [phrase("unknown: needs {need}", need=need) for need in needs])
    region = _region(fit, leaf, place)
    shapes = _ground(given, leaf, face, region)
    gone, kept, _ = existing_items(given, fit, (leaf,), face, place, region)
    shapes += [*kept, *gone, *lock_shapes(given, fit, face, place, leaf, region)]
    made, notes = new_work(given, fit, face, (leaf,), length_style, angles=angles)
    shapes += made
    shapes += _spare_lead(fit, face, leaf, length_style)
    shapes += _dimensions(fit, face, place, leaf, region, length_style)
    if cut:
        shapes += _cutting_plane(place, region, cut)
    return Drawing(title, tuple(shapes), region, tuple(notes), coarsest=15.0)


def _spare_lead(fit: Fit, face: Face, leaf: LeafOnSheet, style: LengthStyle) -> list[Shape]:
    """Say where the spare lead lies: in the unit, beside it where that stands in the edge."""
    spare, unit = spare_lead_mm(fit), fit.placement
    if spare is None or unit is None or (unit.face != face and not (unit.face == "edge" and face == "inside")):
        return []
    where = phrase("in the pocket") if unit.face == "edge" else phrase("in the unit")
    words = phrase("Spare lead {length}: {where}", length=format_length(spare, style), where=where)
    across = unit.width_mm / 2 if unit.face != "edge" else _IN_EDGE_MM
    x, y = unit.x_mm + across if unit.face != "edge" else across, unit.y_mm + unit.height_mm * 0.25
    return [Callout(leaf.across(x), y, words, "right" if leaf.lock_left else "left")]


def _cutting_plane(place: LockPlace, region: Rect, letter: str) -> list[Shape]:
    """Mark where the section is: strokes at both ends, arrows the way it is looked, its letter.

    The section is seen from above, so that the arrows point down.
    """
    long = _CUT_MM * 0.6
    shapes: list[Shape] = []
    for x, way in ((region.x0, -1.0), (region.x1, 1.0)):
        end = x + way * _CUT_MM
        tip = place.y_mm - long
        shapes += [
            Line(((x + way * 2.0, place.y_mm), (end, place.y_mm), (end, tip)), "cut", name="cutting plane"),
            Line(((end - 3.0, tip + 6.0), (end, tip), (end + 3.0, tip + 6.0)), "outline", name="way it is looked"),
            Text(end, place.y_mm, letter, "label", "centre", dy=1.0),
        ]
    return shapes


def _made_here(fit: Fit, leaf: LeafOnSheet, face: Face) -> list[Hole]:
    return [
        hole for hole in fit.holes
        if hole.face == face and hole.count == 1 and not hole.by_template and hole.purpose != "fixing"
        and hole.leaf in ("", leaf_name(leaf.leaf)) and known(hole.x_mm) and known(hole.y_mm)
    ]  # fmt: skip


def _region(fit: Fit, leaf: LeafOnSheet, place: LockPlace) -> Rect:
    xs, ys = [place.x_mm + 45.0], [place.y_mm - 55.0, place.y_mm + 55.0]
    unit = fit.placement
    if unit is not None:
        if unit.face in ("inside", "key"):
            xs.append(unit.x_mm + unit.width_mm)
        ys += [unit.y_mm, unit.y_mm + unit.height_mm]
    for hole in fit.holes:
        if hole.face in ("inside", "key") and known(hole.x_mm) and known(hole.y_mm):
            xs.append(hole.x_mm + hole.diameter_mm / 2)
            ys += [hole.y_mm - hole.diameter_mm, hole.y_mm + hole.diameter_mm]
    inside = place.case_rect()
    if inside is not None:
        xs.append(inside.x1)
    far = min(max(xs) + _AROUND_MM, leaf.width_mm)
    x0, x1 = sorted((leaf.lock_edge, leaf.across(far)))
    return Rect(x0, max(min(ys) - _AROUND_MM, leaf.bottom_mm), x1, min(max(ys) + _AROUND_MM, leaf.top_mm))


def _ground(given: OpeningInput, leaf: LeafOnSheet, face: Face, region: Rect) -> list[Shape]:
    fill: Fill = "glass" if leaf.leaf.material == "glass" else "leaf"
    shapes: list[Shape] = [box(region, "thin", fill, "part of the leaf")]
    bands, _ = stop_bands(given, leaf.leaf, face)
    pen: Pen = "outline"
    for band in bands:
        if band.x0 == 0 and band.x1 < leaf.width_mm / 2:
            x0, x1 = sorted((leaf.across(band.x0), leaf.across(band.x1)))
            shapes.append(box(Rect(x0, region.y0, x1, region.y1), "frame", "frame", "frame stop"))
            pen = "hidden"
    stile = leaf.leaf.stile_mm
    if positive(stile) and region.x0 < leaf.across(stile) < region.x1:
        x = leaf.across(stile)
        shapes.append(Line(((x, region.y0), (x, region.y1)), "outline", name="lock stile"))
    shapes.append(Line(((leaf.lock_edge, region.y0), (leaf.lock_edge, region.y1)), pen, name="lock edge"))
    return shapes


def _dimensions(
    fit: Fit, face: Face, place: LockPlace, leaf: LeafOnSheet, region: Rect, style: LengthStyle
) -> list[Shape]:
    upright: list[tuple[float, float, str]] = []
    level = [(leaf.lock_edge, leaf.across(place.x_mm), format_length(place.x_mm, style))]
    for hole in _made_here(fit, leaf, face):
        low, high = sorted((place.y_mm, hole.y_mm))
        upright.append((low, high, format_length(high - low, style)))
        level.append((leaf.lock_edge, leaf.across(hole.x_mm), format_length(hole.x_mm, style)))
    unit = fit.placement
    if unit is not None and unit.face == face and unit.leaf in ("", leaf_name(leaf.leaf)):
        near = unit.y_mm if unit.y_mm >= place.y_mm else min(unit.y_mm + unit.height_mm, place.y_mm)
        near = unit.y_mm if unit.y_mm < place.y_mm < unit.y_mm + unit.height_mm else near
        low, high = sorted((place.y_mm, near))
        upright.append((low, high, format_length(high - low, style)))
        level.append((leaf.lock_edge, leaf.across(unit.x_mm), format_length(unit.x_mm, style)))
    return [
        *stack_vertical(leaf.lock_edge, -leaf.toward_hinge, upright),
        *stack_horizontal(region.y0, -1.0, level),
    ]
