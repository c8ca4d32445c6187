"""Where a control unit's plate goes on the leaf: the exact free region, and in it the shortest cable.

Here belongs the plane problem of one face: plate, access hole, keep-outs. What counts as a keep-out and how much
clearance it wants is decided by the rules; the run of the cable in three dimensions is in ``cable``.

The plate's lower left corner is the only unknown of the region: each keep-out, grown by its clearance and by the
plate's size, is an open rectangle that the corner may not lie in. Within a rectangle of corners the best corner and
hole have a closed form (`_reach`), so a search that starts from the whole leaf and cuts a keep-out away only where
the best corner lies in it ends at the true optimum; nothing is sampled.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from heapq import heappop, heappush
from math import hypot
from typing import Annotated, NamedTuple

from hwsched.calc.calculator import INLINE, Calculator, InputError, Said, check, check_number
from hwsched.calc.limits import NotNegative, Positive

_TOUCH_MM = 1e-9
"""Overlaps up to this are touching, which is allowed."""
_BLOCKERS = 2
"""Largest set of keep-outs that `blocked_by` names."""


class Rect(NamedTuple):
    """Axis-parallel rectangle on the leaf's face or on the plate [mm]."""

    x0: Annotated[float, Said("Left side.")]
    y0: Annotated[float, Said("Lower side.")]
    x1: Annotated[float, Said("Right side.")]
    y1: Annotated[float, Said("Upper side.")]


XY = tuple[float, float]
"""A point on the leaf's face or on the plate [mm]."""
_XY = ("x", "y")


@dataclass(frozen=True, slots=True)
class KeepOut:
    """Something on the face that the plate may touch with its clearance but not enter."""

    name: Annotated[str, Said("What it is called in the answer.", numbered="keep-out {}")]
    rect: Annotated[Rect, INLINE]
    clearance_mm: Annotated[NotNegative, Said("Added on all four sides.", needed=True)] = 0.0
    part: Annotated[
        Rect | None, Said("What of the plate keeps off, such as a screw, from its lower left; null: the whole plate.")
    ] = None

    def grown(self) -> Rect:
        """Rectangle with its clearance."""
        x0, y0, x1, y1 = self.rect
        c = self.clearance_mm
        return Rect(x0 - c, y0 - c, x1 + c, y1 + c)


@dataclass(frozen=True, slots=True)
class Pattern:
    """One way to bring the cable to the face."""

    name: Annotated[str, Said("What it is called in the answer.")]
    hole: Annotated[Rect, Said("Where the access hole's centre may be; a point or line is allowed.", kind="box")]
    base_mm: Annotated[NotNegative, Said("Cable from the cylinder to the hole, at the hole nearest the cylinder.")]
    cost: Annotated[float, Said("What decides between patterns before the cable does.", needed=True)] = 0.0


@dataclass(frozen=True, slots=True)
class PlacementInput:
    """One face of one leaf, one plate and the patterns that may serve it."""

    leaf_width_mm: Annotated[Positive, Said("From edge to edge.", at="leaf.width_mm")]
    leaf_height_mm: Annotated[Positive, Said("From its bottom to its top.", at="leaf.height_mm")]
    edge_margin_mm: Annotated[NotNegative, Said("Least distance of the plate from every leaf edge.")]
    plate_width_mm: Annotated[Positive, Said("Along the leaf's width.", at="plate.width_mm")]
    plate_height_mm: Annotated[Positive, Said("Along its height.", at="plate.height_mm")]
    window: Annotated[
        Rect, Said("Where on the plate, from its lower left, the access hole may be; within the plate.", kind="box")
    ]
    connector: Annotated[XY, Said("The unit's connector from the plate's lower left.", keys=_XY)]
    cylinder: Annotated[XY, Said("The cylinder's centre line on the face: x from the lock edge, y up.", keys=_XY)]
    keepouts: Annotated[
        tuple[KeepOut, ...], Said("What the plate may touch with its clearance but not enter.", default=())
    ]
    patterns: Annotated[tuple[Pattern, ...], Said("Ways in which the cable may come to the face.")]


@dataclass(frozen=True, slots=True)
class PlatePosition:
    """A plate and its access hole that work."""

    pattern: Annotated[str, Said("The way in which the cable comes.")]
    plate: Annotated[XY, Said("Lower left corner of the plate.", keys=_XY)]
    hole: Annotated[XY, Said("Centre of the access hole.", keys=_XY)]
    cable_mm: Annotated[float, Said("From the cylinder to the connector.")]
    cost: float


@dataclass(frozen=True, slots=True)
class PlacementResult:
    """The best place, or what stands in its way."""

    feasible: Annotated[bool, Said("There is a place.", no="There is no place.")]
    best: Annotated[PlatePosition | None, Said("Place of least cost, then least cable; null where there is none.")]
    alternatives: Annotated[tuple[PlatePosition, ...], Said("The best of every feasible pattern, in that order.")]
    blocked_by: Annotated[
        tuple[str, ...],
        Said("A smallest set of one or two keep-outs without which there would be a place; empty when there is none."),
    ]
    reason: Annotated[str, Said("Why there is no place; empty when there is one.")]


@dataclass(frozen=True, slots=True)
class Shortfall:
    """One thing that is wrong with a position chosen by hand."""

    name: str
    """Keep-out, "lock edge", "hinge edge", "bottom edge", "top edge" or "access hole"."""
    short_mm: float
    """By how much the plate would have to move, by the shortest way [mm]."""
    text: str


@dataclass(frozen=True, slots=True)
class PositionCheck:
    """What is to be said of a position chosen by hand."""

    ok: bool
    reasons: tuple[Shortfall, ...]
    hole: tuple[float, float] | None
    """Access hole that serves best here, also when a keep-out forbids it; None when no hole can be reached."""
    cable_mm: float | None


class Clearance(NamedTuple):
    """How far the plate is from something."""

    name: str
    clearance_mm: float
    """Negative when they overlap; measured along the axis that separates them most."""
    required_mm: float


class _Best(NamedTuple):
    """Closed-form optimum of one rectangle of corners."""

    bars_mm: float
    plate: tuple[float, float]
    hole: tuple[float, float]


def place(given: PlacementInput) -> PlacementResult:
    """Find the plate's place of least cost, then least cable, or what is in its way.

    Parameters
    ----------
    given : PlacementInput
        Lengths in mm; x from the lock edge, y up from the leaf's bottom.

    Returns
    -------
    PlacementResult
        ``cable_mm = base_mm + |hole - a| + |hole - (plate + connector)|``, where a is the point of the pattern's hole
        rectangle nearest to the cylinder. The optimum is exact up to rounding.

    Raises
    ------
    InputError
        Names the value that cannot be taken.

    Notes
    -----
    Source: geometry; a plate may touch a keep-out grown by its clearance, by common practice.

    Examples
    --------
    >>> given = PlacementInput(900, 2000, 10, 60, 100, Rect(10, 10, 50, 90), (30, 20), (70, 1000),
    ...                      (KeepOut("trim", Rect(45, 960, 95, 1040.0), 5),),
    ...                      (Pattern("above", Rect(70, 1055, 70, 1100), 60, 1),))
    >>> best = place(given).best
    >>> best.plate, best.hole, best.cable_mm
    ((40.0, 1045.0), (70.0, 1055.0), 70.0)
    """
    _check(given)
    base = _corners(given)
    blocks = _forbidden(given)
    found: list[PlatePosition] = []
    for pattern in given.patterns:
        best = _search(given, pattern, base, blocks)
        if best is not None:
            found.append(
                PlatePosition(pattern.name, best.plate, best.hole, pattern.base_mm + best.bars_mm, pattern.cost)
            )
    if found:
        found.sort(key=_rank)
        return PlacementResult(True, found[0], tuple(found), (), "")
    blocked_by = _blocked_by(given, base, blocks)
    return PlacementResult(False, None, (), blocked_by, _why(given, base, blocked_by))


def check_position(given: PlacementInput, pattern: Pattern, plate_x: float, plate_y: float) -> PositionCheck:
    """Check a plate position chosen by hand, and give its best hole and cable.

    Parameters
    ----------
    given : PlacementInput
        Its own patterns play no part.
    pattern : Pattern
        The way the cable is to come.
    plate_x, plate_y : float
        Lower left corner of the plate [mm].

    Returns
    -------
    PositionCheck
        Every reason against the position, each with what it is short by.

    Raises
    ------
    InputError
        Names the value that cannot be taken.

    Examples
    --------
    >>> given = PlacementInput(900, 2000, 10, 60, 100, Rect(10, 10, 50, 90), (30, 20), (70, 1000),
    ...                      (KeepOut("trim", Rect(45, 960, 95, 1040), 5),), ())
    >>> check_position(given, Pattern("above", Rect(70, 1055, 70, 1100), 60), 40, 1042).reasons[0].text
    'enters the clearance of trim by 3.00 mm'
    """
    _check(given)
    check(pattern, "pattern")
    _check_rect(pattern.hole, "pattern.hole")
    check_number(plate_x, "plate_x")
    check_number(plate_y, "plate_y")
    reasons = [
        Shortfall(c.name, c.required_mm - c.clearance_mm, _shortfall_text(c))
        for c in nearest_clearance(given, (plate_x, plate_y))
        # Touching is allowed: a plate placed by the program must pass its own check.
        if c.clearance_mm < c.required_mm - _TOUCH_MM
    ]
    best = _reach(given, pattern, Rect(plate_x, plate_y, plate_x, plate_y))
    if best is None:
        wx0, wy0, wx1, wy1 = given.window
        hx0, hy0, hx1, hy1 = pattern.hole
        off = hypot(
            max(0.0, hx0 - plate_x - wx1, plate_x + wx0 - hx1),
            max(0.0, hy0 - plate_y - wy1, plate_y + wy0 - hy1),
        )
        reasons.append(Shortfall("access hole", off, f"does not cover its access hole: {off:.2f} mm off"))
        return PositionCheck(False, tuple(reasons), None, None)
    return PositionCheck(not reasons, tuple(reasons), best.hole, pattern.base_mm + best.bars_mm)


def nearest_clearance(given: PlacementInput, plate_xy: tuple[float, float]) -> list[Clearance]:
    """Clearance from a plate to every keep-out and leaf edge, the scarcest first.

    Parameters
    ----------
    given : PlacementInput
        Keep-outs count at their own size, without their clearance.
    plate_xy : tuple of float
        Lower left corner of the plate [mm].

    Returns
    -------
    list of Clearance
        Sorted by what is left beyond the required clearance.
    """
    px0, py0 = plate_xy
    px1, py1 = px0 + given.plate_width_mm, py0 + given.plate_height_mm
    margin = given.edge_margin_mm
    found = [
        Clearance("lock edge", px0, margin),
        Clearance("hinge edge", given.leaf_width_mm - px1, margin),
        Clearance("bottom edge", py0, margin),
        Clearance("top edge", given.leaf_height_mm - py1, margin),
    ]
    for keepout in given.keepouts:
        x0, y0, x1, y1 = keepout.rect
        # By axis and not round the corner: keep-outs grow as rectangles, so that corners are judged as strictly as
        # sides.
        ax0, ay0, ax1, ay1 = keepout.part or (0.0, 0.0, px1 - px0, py1 - py0)
        gap = max(x0 - px0 - ax1, px0 + ax0 - x1, y0 - py0 - ay1, py0 + ay0 - y1)
        found.append(Clearance(keepout.name, gap, keepout.clearance_mm))
    found.sort(key=lambda c: c.clearance_mm - c.required_mm)
    return found


def _rank(found: PlatePosition) -> tuple[float, float]:
    return found.cost, found.cable_mm


def _shortfall_text(c: Clearance) -> str:
    short = c.required_mm - c.clearance_mm
    if c.name.endswith(" edge"):
        return f"comes nearer to the {c.name} than {c.required_mm:g} mm, by {short:.2f} mm"
    return f"enters the clearance of {c.name} by {short:.2f} mm"


def _corners(given: PlacementInput) -> Rect:
    """Corners that keep the plate within the leaf less its margin; turned inside out when it is too large."""
    m = given.edge_margin_mm
    return Rect(m, m, given.leaf_width_mm - m - given.plate_width_mm, given.leaf_height_mm - m - given.plate_height_mm)


def _forbidden(given: PlacementInput) -> list[Rect]:
    """Open rectangles that the corner may not lie in, one a keep-out."""
    whole = Rect(0.0, 0.0, given.plate_width_mm, given.plate_height_mm)
    blocks = []
    for k in given.keepouts:
        x0, y0, x1, y1 = k.rect
        px0, py0, px1, py1 = k.part or whole
        c = k.clearance_mm
        blocks.append(Rect(x0 - c - px1, y0 - c - py1, x1 + c - px0, y1 + c - py0))
    return blocks


def _squeeze(low: float, high: float) -> tuple[float, float] | None:
    """Return the closed interval: a point when rounding turned it inside out, None when it is empty."""
    if low <= high:
        return low, high
    # Where exactly one position is left, rounding may turn it inside out; it is still a place.
    return (low, low) if low - high <= _TOUCH_MM else None


def _holding(given: PlacementInput, pattern: Pattern, corners: Rect) -> Rect | None:
    """Corners from which the plate's window meets the pattern's hole rectangle."""
    window, hole = given.window, pattern.hole
    x = _squeeze(max(corners.x0, hole.x0 - window.x1), min(corners.x1, hole.x1 - window.x0))
    y = _squeeze(max(corners.y0, hole.y0 - window.y1), min(corners.y1, hole.y1 - window.y0))
    return Rect(x[0], y[0], x[1], y[1]) if x and y else None


def _reach(given: PlacementInput, pattern: Pattern, corners: Rect) -> _Best | None:
    """Shortest |hole - a| + |hole - connector| with the corner in a rectangle; None when no hole can be covered.

    Per axis let u = hole - a and e = connector - hole. The connector's rectangle asks for a sum u + e, the hole
    rectangle bounds u (0 is allowed), the window bounds e. Where u = 0 and the least e do not add up, the missing
    length g is shared: |u| = t, |e| = rest - t, t in [low, high]. In the plane that is the shortest way from
    (0, 0) to (rest_x, rest_y) through the box of t, which lies between them: along the diagonal if it meets the box,
    else by the corner of the box that is nearest to it.
    """
    held = _holding(given, pattern, corners)
    if held is None:
        return None
    hole, window = pattern.hole, given.window
    ax = min(max(given.cylinder[0], hole.x0), hole.x1)
    ay = min(max(given.cylinder[1], hole.y0), hole.y1)
    cx, cy = given.connector
    ex, sx, lowx, highx, restx = _share(
        hole.x0 - ax, hole.x1 - ax, cx - window.x1, cx - window.x0, held.x0 + cx - ax, held.x1 + cx - ax
    )
    ey, sy, lowy, highy, resty = _share(
        hole.y0 - ay, hole.y1 - ay, cy - window.y1, cy - window.y0, held.y0 + cy - ay, held.y1 + cy - ay
    )
    along = max(lowx / restx if restx > 0 else 0.0, lowy / resty if resty > 0 else 0.0)
    tx, ty = min(along * restx, highx), min(along * resty, highy)
    bars = hypot(tx, ty) + hypot(restx - tx, resty - ty)
    px, py = ax + ex - cx, ay + ey - cy
    return _Best(
        bars,
        (min(max(px, held.x0), held.x1), min(max(py, held.y0), held.y1)),
        (min(max(ax + sx * tx, hole.x0), hole.x1), min(max(ay + sy * ty, hole.y0), hole.y1)),
    )


def _share(
    u0: float, u1: float, e0: float, e1: float, b0: float, b1: float
) -> tuple[float, float, float, float, float]:
    """Split of one axis: wanted sum u + e, sign of u, bounds of |u|, and |u| + |e|."""
    e = e0 if e0 > 0 else min(e1, 0.0)
    if e < b0:
        gap, sign, room_u, room_e, total = b0 - e, 1.0, u1, e1 - e, b0
    elif e > b1:
        gap, sign, room_u, room_e, total = e - b1, -1.0, -u0, e - e0, b1
    else:
        return e, 0.0, 0.0, 0.0, abs(e)
    low = max(0.0, gap - room_e)
    high = max(low, min(gap, room_u))
    return total, sign, low, high, abs(e) + gap


def _search(given: PlacementInput, pattern: Pattern, base: Rect, blocks: Sequence[Rect]) -> _Best | None:
    """Best corner outside all forbidden rectangles, by cutting away only what the optimum runs into."""
    start = _holding(given, pattern, base)
    best = _reach(given, pattern, start) if start else None
    if start is None or best is None:
        return None
    heap: list[tuple[float, int, _Best, Rect, list[Rect]]] = [(best.bars_mm, 0, best, start, _within(start, blocks))]
    count = 0
    while heap:
        _, _, best, area, near = heappop(heap)
        px, py = best.plate
        # The heap gives areas in the order of what they promise: the first whose best corner is free is the best of
        # all.
        for block in near:
            if _inside(px, py, block):
                break
        else:
            return best
        bx0, by0, bx1, by1 = block
        x0, y0, x1, y1 = area
        left, right = max(x0, min(bx0, x1)), min(x1, max(bx1, x0))
        for part, exists in (
            # Left and right take the whole height, below and above only what lies between: the parts share no more
            # than borders, so that nothing is searched twice.
            (Rect(x0, y0, left, y1), x0 <= bx0 + _TOUCH_MM),
            (Rect(right, y0, x1, y1), x1 >= bx1 - _TOUCH_MM),
            (Rect(left, y0, right, min(by0, y1)), y0 <= by0 + _TOUCH_MM),
            (Rect(left, max(by1, y0), right, y1), y1 >= by1 - _TOUCH_MM),
        ):
            if exists:
                x, y = _squeeze(part.x0, part.x1), _squeeze(part.y0, part.y1)
                cut = Rect(x[0], y[0], x[1], y[1]) if x and y else None
                there = _reach(given, pattern, cut) if cut else None
                if cut and there:
                    count += 1
                    # The count decides between equals before the areas could: answers are the same each time.
                    heappush(heap, (there.bars_mm, count, there, cut, _within(cut, near)))
    return None


def _inside(px: float, py: float, block: Rect) -> bool:
    # Open on all sides: touching a keep-out's clearance is allowed.
    return block.x0 + _TOUCH_MM < px < block.x1 - _TOUCH_MM and block.y0 + _TOUCH_MM < py < block.y1 - _TOUCH_MM


def _within(area: Rect, blocks: Sequence[Rect]) -> list[Rect]:
    """Forbidden rectangles that reach into an area."""
    x0, y0, x1, y1 = area
    return [
        b
        for b in blocks
        if b.x0 + _TOUCH_MM < x1 and b.x1 - _TOUCH_MM > x0 and b.y0 + _TOUCH_MM < y1 and b.y1 - _TOUCH_MM > y0
    ]


def _blocked_by(given: PlacementInput, base: Rect, blocks: Sequence[Rect]) -> tuple[str, ...]:
    """Name a smallest set of keep-outs whose removal opens a place.

    A corner is opened by removing exactly the keep-outs over it. Moved left or down to the next border it can only
    get out of keep-outs, so the corners at right and upper borders hold a smallest set.
    """
    best: tuple[int, ...] | None = None
    for pattern in given.patterns:
        area = _holding(given, pattern, base)
        if area is None:
            continue
        columns = _covers(area.x0, area.x1, [(b.x0, b.x1) for b in blocks])
        rows = _covers(area.y0, area.y1, [(b.y0, b.y1) for b in blocks])
        for column in columns:
            for row in rows:
                over = column & row
                if over.bit_count() <= _BLOCKERS:
                    names = tuple(i for i in range(len(blocks)) if over >> i & 1)
                    # By their order in the survey among equals: otherwise the order of a set would choose what is
                    # told.
                    if best is None or (len(names), names) < (len(best), best):
                        best = names
    return tuple(given.keepouts[i].name for i in best or ())


def _covers(low: float, high: float, spans: Sequence[tuple[float, float]]) -> set[int]:
    """Collect the sets of spans, as bits, over the low end and over the upper ends within."""
    places = {low, *(b for _, b in spans if low < b <= high)}
    return {sum(1 << i for i, (a, b) in enumerate(spans) if a + _TOUCH_MM < at < b - _TOUCH_MM) for at in places}


def _why(given: PlacementInput, base: Rect, blocked_by: Sequence[str]) -> str:
    """Give the reason in one sentence for the person who placed the unit."""
    if not given.patterns:
        return "No pattern is given by which the cable could come."
    for low, high, what in ((base.x0, base.x1, "wider"), (base.y0, base.y1, "higher")):
        if low > high + _TOUCH_MM:
            return f"The plate is {low - high:.2f} mm {what} than the leaf less its margins."
    if all(_holding(given, p, base) is None for p in given.patterns):
        return "Nowhere on the leaf does the plate's window cover a place where the access hole may be."
    if blocked_by:
        return f"There would be a place without {' and '.join(blocked_by)}."
    return "More than two keep-outs stand in the way."


def _check(given: PlacementInput) -> None:
    """Refuse what cannot be a leaf, a plate, a keep-out or a pattern."""
    check(given)
    _check_rect(given.window, "window")
    wx0, wy0, wx1, wy1 = given.window
    # The plate must cover its access hole: a window past the plate would allow a hole that stays open beside it.
    if wx0 < -_TOUCH_MM or wx1 > given.plate_width_mm + _TOUCH_MM:
        raise InputError("window", "reaches past the plate's width: the plate must cover its access hole")
    if wy0 < -_TOUCH_MM or wy1 > given.plate_height_mm + _TOUCH_MM:
        raise InputError("window", "reaches past the plate's height: the plate must cover its access hole")
    for value, limit, name in (
        (given.cylinder[0], given.leaf_width_mm, "cylinder.x"),
        (given.cylinder[1], given.leaf_height_mm, "cylinder.y"),
    ):
        if not 0 <= value <= limit:
            raise InputError(name, f"lies outside the leaf: from 0 to {limit:g}, got {value:g}")
    for i, keepout in enumerate(given.keepouts):
        x0, y0, x1, y1 = keepout.rect
        # A keep-out without width or height would keep nothing out, and be missed in silence.
        if not (x0 < x1 and y0 < y1):
            _check_rect(keepout.rect, f"keepouts[{i}]")
            raise InputError(f"keepouts[{i}].{'x1' if x1 <= x0 else 'y1'}", "a keep-out needs a width and a height")
    for i, pattern in enumerate(given.patterns):
        _check_rect(pattern.hole, f"patterns[{i}].hole")


def _check_rect(rect: Rect, path: str) -> None:
    x0, y0, x1, y1 = rect
    if x1 < x0:
        raise InputError(f"{path}.x1", f"must be at least x0 = {x0:g}, got {x1:g}")
    if y1 < y0:
        raise InputError(f"{path}.y1", f"must be at least y0 = {y0:g}, got {y1:g}")


PLACEMENT = Calculator(
    name="placement",
    title="Place of the control unit on the leaf's face",
    basis="geometry; touching a grown keep-out is allowed by common practice",
    work=place,
    groups={"leaf": "Leaf on whose face the unit goes.", "plate": "The unit's plate, axis-parallel."},
    example={
        "leaf": {"width_mm": 900, "height_mm": 2100},
        "edge_margin_mm": 6,
        "keepouts": [
            {"x0": 35, "y0": 950, "x1": 105, "y1": 1050, "clearance_mm": 4.7625, "name": "trim"},
            {"x0": 40, "y0": 1180, "x1": 100, "y1": 1240, "clearance_mm": 4.7625, "name": "thumb turn"},
        ],
        "plate": {"width_mm": 70, "height_mm": 110},
        "window": {"x0": 10, "y0": 8, "x1": 60, "y1": 40},
        "connector": {"x": 35, "y": 55},
        "cylinder": {"x": 70, "y": 1000},
        "patterns": [
            {"name": "straight", "hole": {"x0": 70, "y0": 1000, "x1": 70, "y1": 1000}, "base_mm": 40, "cost": 1},
            {"name": "above", "hole": {"x0": 60, "y0": 1063.5, "x1": 80, "y1": 1090}, "base_mm": 95, "cost": 2},
        ],
    },
)
