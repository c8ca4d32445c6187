"""What goes into an opening, drawn apart in the order in which it goes together, numbered as the steps of the work.

Sizes are those of the catalogue; heads of cylinders and screws, and what a cam is thick, are drawn by convention.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final, Literal

from hwsched.attributes.of_parts import (
    BODY_DIAMETER_MM,
    BODY_LENGTH_MM,
    CASE_DEPTH_MM,
    CASE_HEIGHT_MM,
    CASE_WIDTH_MM,
    CROSS_BORE_MM,
    DEPTH_MM,
    EDGE_BORE_MM,
    HEAD_DIAMETER_MM,
    HEIGHT_MM,
    INNER_DIAMETER_MM,
    INSIDE_HALF_MM,
    KEY_HALF_MM,
    LATCH_LENGTH_MM,
    LENGTH_MM,
    OUTER_DIAMETER_MM,
    POCKET_DEPTH_MM,
    TAIL_LENGTH_MM,
    THREAD_DIAMETER_MM,
    TRIM_DIAMETER_MM,
    NumberName,
)
from hwsched.calc.opening.bore import Box, Rod, Vector
from hwsched.calc.opening.solid import Solid, bounds
from hwsched.drawings.axonometric import Seen, project, shapes_of_bodies
from hwsched.drawings.drawing import Callout, Drawing, Line, Shape
from hwsched.drawings.not_drawn import unknown_drawing
from hwsched.drawings.unknown import positive
from hwsched.language import phrase, to_phrase
from hwsched.quantities.adding import added
from hwsched.rules.reading import leafless, lock_item, lock_leaf
from hwsched.rules.saying import label_said
from hwsched.rules.solid.bodies import screws_of
from hwsched.values import Fit, FitPart, OpeningInput, Part
from hwsched.values.amounts import part_words
from hwsched.work.plan import plan
from hwsched.work.situation import Situation

TITLE: Final = to_phrase("Drawn apart")
_HEAD_MM: Final = 4.0
_CAM_MM: Final = 3.0
_RIM_MM: Final = 8.0
"""A ring is so much wider than its hole."""
_AIR_MM: Final = 22.0
_AROUND_MM: Final = 45.0
_EURO: Final = (10.0, 33.0, 17.0)
"""Web's width, height in all and round part of a euro profile [mm] (from memory, DIN 18252, unverified)."""
_NOT_IN: Final = ("tool", "credential")
_NOTE: Final = to_phrase(
    "Numbers are the steps of the work; not to scale; heads, cams and rims of rings by convention."
)


@dataclass(frozen=True, slots=True)
class _Piece:
    """A part with its bodies about the place where it goes in."""

    part: FitPart
    way: str
    """key, inside or edge: to which side it is drawn apart."""
    solids: tuple[Solid, ...]
    """On its way from 0 outward; across it where it stands."""


def exploded(given: OpeningInput, fit: Fit) -> Drawing:
    """Draw what goes in apart along the ways by which it goes together.

    Parameters
    ----------
    given, fit : OpeningInput, Fit
        An opening with a leaf, and a fit that fits.

    Returns
    -------
    Drawing
        Not to scale; words where there is nothing to draw.
    """
    leaf, lock = lock_leaf(given), lock_item(given)
    if leafless(given):
        return unknown_drawing(TITLE, [phrase("this opening has no leaf")])
    if fit.status != "fits":
        return unknown_drawing(TITLE, [phrase("nothing fits yet")])
    missing = [
        phrase("unknown: needs {label_of}", label_of=label_said(fact))
        for fact, value in (
            ("leaf.thickness_mm", leaf.thickness_mm if leaf else None),
            ("existing_item.backset_mm", lock.backset_mm if lock else None),
            ("existing_item.cylinder_height_mm", lock.cylinder_height_mm if lock else None),
        )
        if value is None
    ]
    if missing or leaf is None or lock is None:
        return unknown_drawing(TITLE, missing)
    style = given.settings.length_style
    thick, x, y = leaf.thickness_mm or 0.0, lock.backset_mm or 0.0, lock.cylinder_height_mm or 0.0
    pieces = list(_pieces(given, fit, x, y, thick))
    numbers = _numbers(Situation(given, fit, leaf, lock), fit)
    slab = _slab(pieces, x, y, thick)
    bore = _bore_mm(given, fit)
    holes = (((x, y, thick), bore),) if bore is not None else ()
    bodies = [Seen(slab, "leaf", pen="outline", fill="glass" if leaf.material == "glass" else "leaf", marks=holes)]
    words: list[Callout] = []
    lines: list[Shape] = []
    for piece, solids in _apart(pieces, slab):
        name = f"{piece.part.role} {piece.part.part}"
        bodies += [Seen(solid, name, piece.part.role) for solid in solids]
        boxes = [bounds(solid) for solid in solids]
        middle = tuple(added(b.low[n] + b.high[n] for b in boxes) / (2 * len(boxes)) for n in range(3))
        at = project((middle[0], middle[1], middle[2]))
        step = numbers.get((piece.part.role, piece.part.part))
        many = part_words(piece.part.part, given.catalogue.get(piece.part.part), piece.part.quantity, style)
        said = f"{step}: " if step is not None else ""
        side: Literal["left", "right"] = "right" if piece.way == "key" else "left"
        words.append(Callout(*at, f"{said}{phrase(piece.part.role)} {many}", side, about=piece.part.role))
    for way in ("key", "inside", "edge"):
        lines += _way(way, [b for b in bodies if b.name != "leaf"], (x, y, thick))
    shapes = [*lines, *shapes_of_bodies(bodies)]
    xs = [px for shape in shapes if isinstance(shape, Line) for px, _ in shape.points]
    ys = [py for shape in shapes if isinstance(shape, Line) for _, py in shape.points]
    return Drawing(
        TITLE,
        (*shapes, *words),
        (min(xs), min(ys), max(xs), max(ys)),
        (phrase(_NOTE), *_left_out(given, fit, pieces, numbers)),
        to_scale=False,
    )


def _numbers(situation: Situation, fit: Fit) -> Mapping[tuple[str, str], int]:
    """Return the first step that takes each part."""
    found: dict[tuple[str, str], int] = {}
    for step in plan(situation).steps:
        for part in step.parts:
            found.setdefault((part.role, part.part), step.number)
    return {key: found[key] for key in found if any((p.role, p.part) == key for p in fit.parts)}


def _pieces(given: OpeningInput, fit: Fit, x: float, y: float, thick: float) -> Iterator[_Piece]:
    """Yield parts from the leaf outward on each way: what goes in last is drawn farthest out."""
    of: dict[str, list[FitPart]] = {}
    for each in fit.parts:
        of.setdefault(each.role, []).append(each)
    for role in ("ring", "collar", "cam", "tailpiece", "cylinder", "lock", "reader"):
        for taken in of.get(role, ()):
            part = given.catalogue.get(taken.part)
            if part is not None:
                yield from _at_lock(taken, part, x, y, thick)
    place = fit.placement
    for taken in of.get("unit", ()):
        unit = given.catalogue.get(taken.part)
        if unit is None or place is None:
            continue
        depth = unit.number_of(POCKET_DEPTH_MM if place.face == "edge" else DEPTH_MM)
        if not positive(depth):
            continue
        x0, y0, x1, y1 = place.x_mm, place.y_mm, place.x_mm + place.width_mm, place.y_mm + place.height_mm
        if place.face == "edge":
            yield _Piece(taken, "edge", (Box((0.0, y0, x0), (depth, y1, x1)),))
        elif place.face in ("inside", "key"):
            yield _Piece(taken, place.face, (Box((x0, y0, 0.0), (x1, y1, depth)),))
    for taken in of.get("fastener", ()):
        screw = given.catalogue.get(taken.part)
        long = screw.number_of(LENGTH_MM) if screw is not None else None
        rods = [b.solid for b in screws_of(given, fit, thick) if b.about == taken.part and isinstance(b.solid, Rod)]
        if place is None or not positive(long) or not rods:
            continue
        solids: list[Solid] = []
        for rod in rods:
            cx, cy, wide = rod.start[0], rod.start[1], rod.diameter_mm
            solids += [
                Rod((cx, cy, 0.0), (cx, cy, long), wide),
                Rod((cx, cy, long), (cx, cy, long + 2.0), 2 * wide),
            ]
        yield _Piece(taken, place.face, tuple(solids))


def _at_lock(taken: FitPart, part: Part, x: float, y: float, thick: float) -> Iterator[_Piece]:
    def rod(start: float, end: float, wide: float) -> Rod:
        return Rod((x, y, start), (x, y, end), wide)

    def number(name: NumberName) -> float | None:
        value = part.number_of(name)
        return value if positive(value) else None

    solids: tuple[Solid, ...] = ()
    if taken.role in ("ring", "collar"):
        tall, wide, hole = number(HEIGHT_MM), number(OUTER_DIAMETER_MM), number(INNER_DIAMETER_MM)
        wide = wide or (hole + _RIM_MM if hole else None)
        if tall and wide:
            solids = (rod(0.0, tall * max(taken.quantity, 1.0), wide),)
    elif taken.role == "cam":
        radius = part.attributes.get("radius_mm")
        if isinstance(radius, int | float):
            solids = (Box((x - 6.0, y - 6.0, 0.0), (x + 6.0, y + float(radius), _CAM_MM)),)
    elif taken.role == "tailpiece":
        long = number(LENGTH_MM) or number(TAIL_LENGTH_MM)
        if long is not None:
            solids = (Box((x - 3.0, y - 1.0, 0.0), (x + 3.0, y + 1.0, long)),)
    elif part.kind == "mortise-cylinder":
        long, wide, head = number(LENGTH_MM), number(THREAD_DIAMETER_MM), number(HEAD_DIAMETER_MM)
        if long and wide and head:
            solids = (rod(0.0, long, wide), rod(long, long + _HEAD_MM, head))
    elif part.kind == "rim-cylinder":
        long, wide, head = number(BODY_LENGTH_MM), number(BODY_DIAMETER_MM), number(HEAD_DIAMETER_MM)
        tail = number(TAIL_LENGTH_MM)
        if long and wide and head:
            tails = (Box((x - 3.0, y - 1.0, 0.0), (x + 3.0, y + 1.0, tail)),) if tail else ()
            start = tail or 0.0
            solids = (*tails, rod(start, start + long, wide), rod(start + long, start + long + _HEAD_MM, head))
    elif part.kind == "euro-cylinder":
        key, inside = number(KEY_HALF_MM), number(INSIDE_HALF_MM)
        if key and inside:
            web, profile, round_mm = _EURO
            solids = (
                Box((x - web / 2, y + round_mm / 2 - profile, 0.0), (x + web / 2, y - round_mm / 2, key + inside)),
                rod(0.0, key + inside, round_mm),
            )
    elif part.kind == "bored-lever-lock":
        rose, cross, edge = number(TRIM_DIAMETER_MM), number(CROSS_BORE_MM), number(EDGE_BORE_MM)
        latch = number(LATCH_LENGTH_MM)
        if rose and cross:
            yield _Piece(taken, "key", (rod(0.0, thick, cross), rod(thick, thick + 2 * _HEAD_MM, rose)))
        if edge and latch:
            yield _Piece(taken, "edge", (Rod((0.0, y, thick / 2), (latch, y, thick / 2), edge),))
        return
    elif part.kind in ("gate-lock", "electrified-lock"):
        wide, high, deep = number(CASE_WIDTH_MM), number(CASE_HEIGHT_MM), number(CASE_DEPTH_MM)
        if wide and high and deep:
            solids = (Box((x - wide / 2, y - high / 2, 0.0), (x + wide / 2, y + high / 2, deep)),)
    elif part.kind == "cabinet-lock":
        thread, through = number(THREAD_DIAMETER_MM), number(LENGTH_MM) or thick
        if thread:
            solids = (rod(0.0, through, thread), rod(through, through + _HEAD_MM, thread * 1.3))
    if solids:
        yield _Piece(taken, "key", solids)


def _slab(pieces: list[_Piece], x: float, y: float, thick: float) -> Box:
    """Return the part of the leaf that is drawn: about the lock and what stands beside it."""
    boxes = [bounds(solid) for piece in pieces if piece.way != "edge" for solid in piece.solids]
    along = [bounds(solid) for piece in pieces if piece.way == "edge" for solid in piece.solids]
    right = max([x + _AROUND_MM, *(box.high[0] + 15.0 for box in boxes), *(box.high[0] + 15.0 for box in along)])
    low = min([y - _AROUND_MM, *(box.low[1] - 15.0 for box in (*boxes, *along))])
    high = max([y + _AROUND_MM, *(box.high[1] + 15.0 for box in (*boxes, *along))])
    return Box((0.0, low, 0.0), (right, high, thick))


def _apart(pieces: list[_Piece], slab: Box) -> Iterator[tuple[_Piece, tuple[Solid, ...]]]:
    """Move the pieces of each way outward, one behind the other, so far that each is seen."""
    at = {"key": slab.high[2] + _AIR_MM, "inside": slab.high[0] + _AIR_MM, "edge": _AIR_MM}
    for piece in pieces:
        boxes = [bounds(solid) for solid in piece.solids]
        axis = 0 if piece.way == "edge" else 2
        long = max(box.high[axis] for box in boxes)
        across = max(box.high[0] for box in boxes) - min(box.low[0] for box in boxes)
        start = at[piece.way]
        yield piece, tuple(_shifted(solid, piece.way, start) for solid in piece.solids)
        at[piece.way] = start + long + _AIR_MM + (0.6 * across if axis == 2 else 0.0)


def _shifted(solid: Solid, way: str, by: float) -> Solid:
    """Bring a solid that was made outward from 0 to its way: along +z, along -z mirrored, along -x mirrored."""

    def to(point: Vector) -> Vector:
        px, py, pz = point
        return {"key": (px, py, pz + by), "inside": (px, py, -pz - by), "edge": (-px - by, py, pz)}[way]

    if isinstance(solid, Rod):
        return Rod(to(solid.start), to(solid.end), solid.diameter_mm)
    a, b = to(solid.low), to(solid.high)
    low, high = tuple(map(min, a, b)), tuple(map(max, a, b))
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _bore_mm(given: OpeningInput, fit: Fit) -> float | None:
    """Return the diameter of what the lock goes through on the key face."""
    for part in fit.parts:
        if part.role in ("cylinder", "lock"):
            known = given.catalogue.get(part.part)
            names = (THREAD_DIAMETER_MM, CROSS_BORE_MM, BODY_DIAMETER_MM)
            sizes = [known.number_of(name) for name in names] if known is not None else []
            return next((size for size in sizes if positive(size)), None)
    return None


def _way(way: str, bodies: list[Seen], at: Vector) -> list[Shape]:
    """Draw the line along which parts go together, from the leaf to the farthest of them."""
    x, y, thick = at
    boxes = [bounds(body.solid) for body in bodies]
    if way == "key":
        far = max((box.high[2] for box in boxes if box.low[2] >= thick), default=None)
        ends = ((x, y, thick), (x, y, far)) if far is not None else None
    elif way == "inside":
        behind = [box for box in boxes if box.high[2] <= 0]
        far = min((box.low[2] for box in behind), default=None)
        middle = (
            [(min(b.low[n] for b in behind) + max(b.high[n] for b in behind)) / 2 for n in (0, 1)] if behind else []
        )
        ends = ((middle[0], middle[1], 0.0), (middle[0], middle[1], far)) if far is not None else None
    else:
        before = [box for box in boxes if box.high[0] <= 0]
        far = min((box.low[0] for box in before), default=None)
        mid = [(min(b.low[n] for b in before) + max(b.high[n] for b in before)) / 2 for n in (1, 2)] if before else []
        ends = ((0.0, mid[0], mid[1]), (far, mid[0], mid[1])) if far is not None else None
    return [Line((project(ends[0]), project(ends[1])), "centre", name=f"way, {way}")] if ends is not None else []


def _left_out(
    given: OpeningInput, fit: Fit, pieces: list[_Piece], numbers: Mapping[tuple[str, str], int]
) -> Iterator[str]:
    drawn = {id(piece.part) for piece in pieces}
    rest = [part for part in fit.parts if id(part) not in drawn and part.role not in _NOT_IN]
    if rest:
        said = [
            (f"{numbers[part.role, part.part]}: " if (part.role, part.part) in numbers else "")
            + f"{phrase(part.role)} "
            + part_words(part.part, given.catalogue.get(part.part), part.quantity, given.settings.length_style)
            for part in rest
        ]  # fmt: skip
        yield phrase("Goes in too, without a size to draw: {said}.", said=", ".join(said))
