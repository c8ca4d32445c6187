"""Elevation of one face of an opening: leaves, frame, existing items, the new lock and unit, holes, cable, dimensions.

Openings without a leaf (lifts, turnstiles) are drawn in `hwsched.drawings.opening.wall`.
"""

from collections.abc import Sequence
from functools import partial

from hwsched.calc.opening.placement import KeepOut
from hwsched.drawings.dimensions import stack_horizontal, stack_vertical
from hwsched.drawings.drawing import Drawing, Shape
from hwsched.drawings.handing import Face
from hwsched.drawings.not_drawn import unknown_drawing
from hwsched.drawings.opening.face_ground import CONVENTION_NOTE, ground_shapes
from hwsched.drawings.opening.face_items import existing_items
from hwsched.drawings.opening.face_lock import keepout_shapes, lock_shapes
from hwsched.drawings.opening.lock_place import LockPlace, lock_place
from hwsched.drawings.opening.new_work import new_work
from hwsched.drawings.opening.other_points import outlined
from hwsched.drawings.opening.wall import wall
from hwsched.drawings.sheet import LeafOnSheet, leaves_on_face
from hwsched.language import phrase
from hwsched.quantities import LengthStyle, format_feet_inches, format_length
from hwsched.rules.reading import leaf_name, leafless
from hwsched.values import Fit, OpeningInput, PointFit

TITLES = {"inside": "Inside", "key": "Key side"}


def elevation(
    given: OpeningInput,
    fit: Fit,
    face: Face,
    length_style: LengthStyle = "fraction",
    *,
    keepouts: Sequence[KeepOut] = (),
    beside: Sequence[PointFit] = (),
    angles: bool = True,
) -> Drawing:
    """Draw a face of an opening as it is after the work.

    Parameters
    ----------
    given : OpeningInput
        Survey facts and catalogue.
    fit : Fit
        Its parts, placement, holes and cable are drawn as new work; an empty one draws the survey alone.
    face : {"inside", "key"}
        Which face is looked at. The lock edge stands left or right as the hand says.
    length_style : LengthStyle
        How dimensions are written.
    keepouts : sequence of KeepOut, optional
        Hatched with their clearance; x from the lock edge of the lock's leaf [mm].
    beside : sequence of PointFit, optional
        The opening's other lock points: what stands new there is drawn as an outline.
    angles : bool
        Whether callouts say how holes lean; a bore detail beside it says it, too.

    Returns
    -------
    Drawing
        To scale; or, while a fact that decides the picture is missing or impossible, words that say which.
    """
    title = TITLES[face]
    if leafless(given):
        return wall(given, fit, face, length_style)
    leaves, problems, notes = leaves_on_face(given, face)
    if problems:
        return unknown_drawing(title, problems)
    place, problems, needs = lock_place(given, leaves[0].leaf, length_style)
    if problems:
        return unknown_drawing(title, problems)
    more = [_size_note(leaves, length_style), *notes]
    if needs:
        more.append(phrase("Lock not drawn: needs {needs}.", needs=", ".join(needs)))
    lock_leaf_on_sheet = leaves[0]
    shapes = ground_shapes(given, leaves, face)
    gone, kept, item_notes = existing_items(given, fit, leaves, face, place)
    shapes += [*kept, *gone]
    for keepout in keepouts:
        shapes += keepout_shapes(keepout, lock_leaf_on_sheet)
    if place is not None:
        shapes += lock_shapes(given, fit, face, place, lock_leaf_on_sheet)
    for other in beside:
        shapes += outlined(other, face, leaves, length_style)
    made, made_notes = new_work(given, fit, face, leaves, length_style, angles=angles)
    shapes += made
    shapes += _dimensions(fit, face, place, leaves, length_style)
    more += [*item_notes, *made_notes, CONVENTION_NOTE]
    x0 = min(leaf.left_mm for leaf in leaves)
    x1 = max(leaf.left_mm + leaf.width_mm for leaf in leaves)
    low = lock_leaf_on_sheet.bottom_mm if lock_leaf_on_sheet.broken else 0.0
    bounds = (x0, low, x1, max(leaf.top_mm for leaf in leaves))
    return Drawing(title, tuple(shapes), bounds, tuple(more), coarsest=100.0)


def _size_note(leaves: tuple[LeafOnSheet, ...], style: LengthStyle) -> str:
    words = []
    for placed in leaves:
        height = placed.leaf.height_mm or 0.0
        show = format_feet_inches if style == "fraction" else (lambda mm: format_length(mm, style))
        words.append(f"{show(placed.width_mm)} × {show(height)}")
    hinge = phrase("left") if not leaves[0].lock_left else phrase("right")
    return phrase("Leaf {words}; hinges on the {hinge} as seen here.", words=phrase(" and ").join(words), hinge=hinge)


def _dimensions(
    fit: Fit, face: Face, place: LockPlace | None, leaves: tuple[LeafOnSheet, ...], style: LengthStyle
) -> list[Shape]:
    leaf = leaves[0]
    upright: list[tuple[float, float, str]] = []
    level: list[tuple[float, float, str]] = []
    # One length has one number on a sheet, so that nothing is rounded coarser here than in the details.
    show = partial(format_length, style=style)
    floor = not leaf.broken
    if place is not None:
        if floor:
            upright.append((0.0, place.y_mm, show(place.y_mm)))
        level.append((leaf.lock_edge, leaf.across(place.x_mm), show(place.x_mm)))
    unit = fit.placement
    if unit is not None and unit.face == face and unit.leaf in ("", leaf_name(leaf.leaf)):
        if floor:
            upright.append((0.0, unit.y_mm, show(unit.y_mm)))
        level.append((leaf.lock_edge, leaf.across(unit.x_mm), show(unit.x_mm)))
        if place is not None:
            up, across = unit.hole_y_mm - place.y_mm, unit.hole_x_mm - place.x_mm
            low, high = sorted((place.y_mm, unit.hole_y_mm))
            upright.append((low, high, show(abs(up))))
            level.append((leaf.across(place.x_mm), leaf.across(unit.hole_x_mm), show(abs(across))))
    # A pair's lock edges meet in the middle, so its heights stand outside at the hinges of the lock's leaf.
    at_hinges = len(leaves) > 1
    edge = leaf.hinge_edge if at_hinges else leaf.lock_edge
    side = leaf.toward_hinge if at_hinges else -leaf.toward_hinge
    bottom = leaf.bottom_mm if leaf.broken else 0.0
    return [*stack_vertical(edge, side, upright), *stack_horizontal(bottom, -1.0, level)]
