"""Elevation of one face of an opening: leaves, frame, existing items, the new lock and unit, holes, cable, dimensions.

Openings without a leaf (lifts, turnstiles) are drawn in `hwsched.drawings.wall`.
"""

from collections.abc import Sequence
from functools import partial
from typing import Literal

from hwsched.calc.placement import KeepOut, Rect
from hwsched.cases import Case, Fit, Item
from hwsched.drawings.dimensions import stack_horizontal, stack_vertical
from hwsched.drawings.drawing import Callout, Circle, Drawing, Line, Shape
from hwsched.drawings.face_ground import ground_shapes
from hwsched.drawings.handing import Face
from hwsched.drawings.lock_place import LockPlace, face_diameter, lock_place
from hwsched.drawings.new_work import new_work
from hwsched.drawings.sheet import LeafOnSheet, leaves_on_face
from hwsched.drawings.symbols import box, euro_outline, item_shapes
from hwsched.drawings.unknown import known, positive, unknown_drawing
from hwsched.drawings.wall import wall
from hwsched.quantities import LengthStyle, format_feet_inches, format_length
from hwsched.rules.footprints import face_of, missing, rectangle
from hwsched.rules.reading import leaf_name, leafless, on_leaf, remains
from hwsched.rules.wording import label_of
from hwsched.survey import ITEM

TITLES = {"secured": "Secured side", "key": "Key side"}
_HEIGHT_DENOMINATOR = 16
"""Heights of hardware are given to 1/16 in (trade practice)."""


def elevation(
    case: Case, fit: Fit, face: Face, length_style: LengthStyle = "fraction", *, keepouts: Sequence[KeepOut] = ()
) -> Drawing:
    """Draw a face of an opening as it is after the work.

    Parameters
    ----------
    case : Case
        Survey facts and catalogue.
    fit : Fit
        Its parts, placement, holes and cable are drawn as new work; an empty one draws the survey alone.
    face : {"secured", "key"}
        Which face is looked at. The lock edge stands left or right as the hand says.
    length_style : LengthStyle
        How dimensions are written.
    keepouts : sequence of KeepOut, optional
        Hatched with their clearance; x from the lock edge of the lock's leaf [mm].

    Returns
    -------
    Drawing
        To scale; or, while a fact that decides the picture is missing or impossible, words that say which.
    """
    title = TITLES[face]
    if leafless(case):
        return wall(case, fit, face, length_style)
    leaves, problems, notes = leaves_on_face(case, face)
    if problems:
        return unknown_drawing(title, problems)
    place, problems, needs = lock_place(case, leaves[0].leaf, length_style)
    if problems:
        return unknown_drawing(title, problems)
    more = [_size_note(leaves, length_style), *notes]
    if needs:
        more.append(f"Lock not drawn: needs {', '.join(needs)}.")
    lock_leaf_on_sheet = leaves[0]
    shapes = ground_shapes(case, leaves, face)
    gone, kept, item_notes = _items(case, leaves, face, place)
    shapes += [*kept, *gone]
    for keepout in keepouts:
        shapes += _keepout(keepout, lock_leaf_on_sheet)
    if place is not None:
        shapes += _lock(case, fit, face, place, lock_leaf_on_sheet)
    made, made_notes = new_work(case, fit, face, leaves, length_style)
    shapes += made
    shapes += _dimensions(fit, face, place, leaves, length_style)
    more += [*item_notes, *made_notes]
    x0 = min(leaf.left_mm for leaf in leaves)
    x1 = max(leaf.left_mm + leaf.width_mm for leaf in leaves)
    low = lock_leaf_on_sheet.bottom_mm if lock_leaf_on_sheet.broken else 0.0
    bounds = (x0, low, x1, max(leaf.top_mm for leaf in leaves))
    return Drawing(title, tuple(shapes), bounds, tuple(more))


def _size_note(leaves: tuple[LeafOnSheet, ...], style: LengthStyle) -> str:
    words = []
    for placed in leaves:
        height = placed.leaf.height_mm or 0.0
        show = format_feet_inches if style == "fraction" else (lambda mm: format_length(mm, style))
        words.append(f"{show(placed.width_mm)} × {show(height)}")
    hinge = "left" if not leaves[0].lock_left else "right"
    return f"Leaf {' and '.join(words)}; hinges on the {hinge} as seen here."


def _name(item: Item) -> str:
    choice = ITEM.attribute("kind").choice(item.kind or "other")
    label = choice.label if choice else (item.kind or "other")
    return f"{label}: {item.disposition}" if item.disposition else label


def _items(
    case: Case, leaves: tuple[LeafOnSheet, ...], face: Face, place: LockPlace | None
) -> tuple[list[Shape], list[Shape], list[str]]:
    """Draw existing items of a face; what goes away, what stays, and notes on what cannot be drawn."""
    gone: list[Shape] = []
    kept: list[Shape] = []
    notes: list[str] = []
    for item in case.items:
        where = face_of(item)
        if where not in (face, "both", "frame") or item.kind is None:
            continue
        on = [leaf for leaf in leaves if on_leaf(item, leaf.leaf)]
        rect = rectangle(item)
        is_lock = place is not None and item is place.item
        if not on or (len(on) > 1 and item.leaf is None):
            notes.append(f"{_name(item)}, not drawn: needs {label_of('existing_item.leaf')}.")
            continue
        if rect is None or not all(known(value) for value in rect):
            if not is_lock and where != "frame":
                needed = ", ".join(label_of(fact) for fact in missing(item)) or "its place and size"
                notes.append(f"{_name(item)}, not drawn: needs {needed}.")
            continue
        leaf = on[0]
        if rect.x1 <= rect.x0 or rect.y1 <= rect.y0:
            notes.append(f"{_name(item)}, not drawn: its footprint has no size.")
            continue
        middle_x, middle_y = (rect.x0 + rect.x1) / 2, (rect.y0 + rect.y1) / 2
        outside = not (0 <= middle_x <= leaf.width_mm and leaf.bottom_mm <= middle_y <= leaf.top_mm)
        if outside and where != "frame":
            why = "its height in the leaf is unknown" if leaf.broken else "its surveyed place is outside of the leaf"
            notes.append(f"{_name(item)}, not drawn: {why}.")
            continue
        ends = sorted((leaf.across(rect.x0), leaf.across(rect.x1)))
        on_sheet = Rect(ends[0], rect.y0, ends[1], rect.y1)
        target = kept if remains(item) else gone
        target += item_shapes(item, on_sheet, leaf.toward_hinge)
        target.append(
            Callout((ends[0] + ends[1]) / 2, middle_y, _name(item), _words_side(leaf),
                    (ends[1] - ends[0], rect.y1 - rect.y0))
        )  # fmt: skip
    return gone, kept, notes


def _words_side(leaf: LeafOnSheet) -> Literal["left", "right"]:
    """Words stand on the hinge side of their leaf; dimensions of a single leaf on its lock side."""
    return "right" if leaf.lock_left else "left"


def _keepout(keepout: KeepOut, leaf: LeafOnSheet) -> list[Shape]:
    grown = keepout.grown()
    if not all(known(value) for value in grown):
        return []
    x0, x1 = sorted((leaf.across(grown.x0), leaf.across(grown.x1)))
    return [box(Rect(x0, grown.y0, x1, grown.y1), "keepout", "keepout", f"keep-out {keepout.name}")]


def _lock(case: Case, fit: Fit, face: Face, place: LockPlace, leaf: LeafOnSheet) -> list[Shape]:
    """Draw the lock's case, bore and centre lines, and the new cylinder or lock as it is seen on this face."""
    x, y = leaf.across(place.x_mm), place.y_mm
    shapes: list[Shape] = []
    inside = place.case_rect()
    if inside is not None:
        x0, x1 = sorted((leaf.across(inside.x0), leaf.across(inside.x1)))
        shapes.append(box(Rect(x0, inside.y0, x1, inside.y1), "hidden", "none", "lock case"))
    bore = place.item.cross_bore_mm
    if positive(bore):
        shapes.append(Circle(x, y, bore, "hidden", "none", "cross bore"))
    part, diameter = face_diameter(case, fit)
    seen = part is not None and (face == "key" or part.kind == "bored-lever-lock")
    if part is not None and seen:
        if diameter is not None:
            shapes.append(Circle(x, y, diameter, "new", "new", part.kind))
        elif part.kind == "euro-cylinder":
            shapes += euro_outline(x, y)
        shapes.append(Callout(x, y, f"New {part.kind.replace('-', ' ')} {part.number}", _words_side(leaf)))
    reach = 55.0
    shapes += [
        Line(((leaf.lock_edge, y), (x + leaf.toward_hinge * reach, y)), "centre", name="cylinder centre line"),
        Line(((x, y - reach), (x, y + reach)), "centre", name="backset line"),
    ]
    return shapes


def _dimensions(
    fit: Fit, face: Face, place: LockPlace | None, leaves: tuple[LeafOnSheet, ...], style: LengthStyle
) -> list[Shape]:
    leaf = leaves[0]
    upright: list[tuple[float, float, str]] = []
    level: list[tuple[float, float, str]] = []
    show = partial(format_length, style=style, denominator=_HEIGHT_DENOMINATOR)
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
