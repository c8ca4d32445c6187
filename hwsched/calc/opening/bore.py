"""One bore in the leaf as a solid: where it goes, what it meets, what wall it leaves.

Here belongs the geometry of a single straight bore, square or at one or two angles, and the distances it is judged
by. Two bores that meet are in ``channel``; sizes of holes by material are rules.

Coordinates: x from the lock edge toward the hinge edge, y up, z from the inside face (0) to the key face.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import atan2, degrees, dist, hypot, inf, radians, sqrt, tan
from typing import Annotated, Final, NamedTuple

from hwsched.calc.calculator import Calculator, InputError, Said, check
from hwsched.calc.limits import Angle, NotNegative, Positive

_TOUCH_MM = 1e-9
"""Distances closer than this are equal."""
_ON_FACE_MM = 1e-6
"""A start this near to its face lies on it."""

Vector = tuple[float, float, float]
"""x, y, z; as a place [mm]."""

EARLIER_FACES: Final = {"secured": "inside"}
FACES = ("inside", "key", "lock-edge", "hinge-edge", "top", "bottom")
_INWARD: dict[str, Vector] = {
    # All point into the leaf, so that a depth below any face is one product and positive within.
    "inside": (0.0, 0.0, 1.0),
    "key": (0.0, 0.0, -1.0),
    "lock-edge": (1.0, 0.0, 0.0),
    "hinge-edge": (-1.0, 0.0, 0.0),
    "top": (0.0, -1.0, 0.0),
    "bottom": (0.0, 1.0, 0.0),
}


class Box(NamedTuple):
    """Axis-parallel solid: a lock's pocket, a lite, a reinforcement [mm]."""

    low: Annotated[Vector, Said("Its least x, y, z.", at="min")]
    high: Annotated[Vector, Said("Its greatest x, y, z, each more than the least.", at="max")]


class Rod(NamedTuple):
    """Round solid: another bore, a bolt [mm]."""

    start: Annotated[Vector, Said("One end of its axis, of a round solid.", at="from")]
    end: Annotated[Vector, Said("The other end.", at="to")]
    diameter_mm: Annotated[Positive, Said("Its diameter.")]


@dataclass(frozen=True, slots=True)
class LeafSize:
    """Outer size of a leaf [mm]."""

    width_mm: Annotated[Positive, Said("From edge to edge.")]
    height_mm: Annotated[Positive, Said("From bottom to top.")]
    thickness_mm: Annotated[Positive, Said("From face to face.")]

    @property
    def far_corner(self) -> Vector:
        """Corner at hinge edge, top and key face."""
        return self.width_mm, self.height_mm, self.thickness_mm


@dataclass(frozen=True, slots=True)
class BoreInput:
    """A bore as it is wanted."""

    leaf: Annotated[LeafSize, Said("The leaf.")]
    start: Annotated[Vector, Said("[x, y, z] where the axis starts, on its face.")]
    diameter_mm: Annotated[Positive, Said("Diameter of the bore.")]
    face: Annotated[
        str | None,
        Said("Plane that it starts on; without one it starts within the leaf.", choices=FACES,
             earlier_words=EARLIER_FACES),
    ] = None  # fmt: skip
    up_deg: Annotated[Angle, Said("Angle from the face's normal, upward in the side view.")] = 0.0
    edge_deg: Annotated[Angle, Said("Angle from the face's normal, toward the lock edge in the plan view.")] = 0.0
    direction: Annotated[
        Vector | None,
        Said("[x, y, z] of any length in place of the angles, for starts other than on the two faces."),
    ] = None
    depth_mm: Annotated[Positive | None, Said("Depth where it meets no target; give it, or through, or a target.")] = (
        None
    )
    through: Annotated[bool, Said("It runs to where it leaves the leaf.")] = False
    target: Annotated[Box | None, Said("Cavity that it is meant for.")] = None
    avoid: Annotated[tuple[Box | Rod, ...], Said("Boxes and round solids not to be met.")] = ()
    min_wall_mm: Annotated[NotNegative, Said("Wall to be left to every plane of the leaf.")] = 0.0


@dataclass(frozen=True, slots=True)
class BoreResult:
    """A bore as it comes out."""

    direction: Annotated[Vector, Said("Unit vector of the axis.")]
    enters_target: Annotated[bool, Said("The axis meets the target.", no="The axis misses the target.")]
    entry: Annotated[Vector | None, Said("Where it does.")]
    length_mm: Annotated[float, Said("Length of the axis.")]
    end: Vector
    """Where the axis ends."""
    exit: Annotated[Vector | None, Said("Where it leaves the leaf.")]
    exit_face: Annotated[str | None, Said("The plane that it leaves by.")]
    exit_ellipse: Annotated[
        tuple[float, float] | None, Said("Long and short diameter of the opening there.", kind="list")
    ]
    min_wall_mm: Annotated[float, Said("Least wall to the leaf's planes; negative when it breaks out.")]
    hits: Annotated[tuple[int, ...], Said("Indices of avoid that it runs into.")]
    problems: Annotated[tuple[str, ...], Said("Sentences: wall, target missed, hits.")]


def tilt_and_turn(edge_deg: float, up_deg: float) -> tuple[float, float]:
    """Give the true angles of a compound bore from its two projected angles.

    Parameters
    ----------
    edge_deg, up_deg : float
        Angles from the face's normal in the plan view and in the side view [deg], less than 90 either way.

    Returns
    -------
    tilt_deg : float
        From the face's normal [deg], ``tan C = sqrt(tan(A)**2 + tan(B)**2)``.
    turn_deg : float
        In the face, from the plan view's plane toward the side view's [deg], ``tan R = tan(B) / tan(A)``.

    Notes
    -----
    Source: Machinery's Handbook, 31st edition, "Compound Angles", p. 121 to 122.

    Examples
    --------
    >>> [round(angle, 3) for angle in tilt_and_turn(15, 10)]
    [17.784, 33.347]
    """
    a, b = tan(radians(edge_deg)), tan(radians(up_deg))
    # A square bore has no turn: what would be taken for one is rounding. Tilt by tangents, as in the two-view picture
    # of the handbook: formulas with a product of cosines belong to another picture.
    return degrees(atan2(hypot(a, b), 1.0)), degrees(atan2(b, a)) if a or b else 0.0


def bore(given: BoreInput) -> BoreResult:
    """Follow a bore through the leaf and say what it meets and what wall it leaves.

    The axis runs from the start to where it first meets the target, if one is given and met; else to the depth
    given; else to where it leaves the leaf. A bore that would run past the leaf leaves it.

    Parameters
    ----------
    given : BoreInput
        Lengths in mm, angles in degrees.

    Returns
    -------
    BoreResult
        Wall: over the six planes of the leaf, less the one that the start lies on and the one it exits through, the
        least distance of the axis' two ends from the plane less ``d/2 * sqrt(1 - (direction . normal)**2)``.
        Hits: boxes nearer to the axis than the bore's radius, rods nearer than both radii together.

    Raises
    ------
    InputError
        Names the value that cannot be taken.

    Notes
    -----
    Direction from a face: ``normal + tan(up) * y - tan(edge) * x``. Source: geometry; Machinery's Handbook, 31st
    edition, "Compound Angles".

    Examples
    --------
    >>> got = bore(BoreInput(LeafSize(900, 2100, 44.45), (70, 1000, 0), 12.7, "inside", up_deg=10, edge_deg=15,
    ...                     through=True))
    >>> round(got.length_mm, 4), [round(d, 4) for d in got.exit_ellipse]
    (46.6807, [13.3373, 12.7])
    """
    _check(given)
    direction = _direction(given)
    far = given.leaf.far_corner
    leave, leave_face = _leaves(given.start, direction, far)
    met = _meets(given.start, direction, given.target) if given.target else None
    entry = out = None
    ellipse: tuple[float, float] | None = None
    if met is not None:
        length = met
        entry = end = _along(given.start, direction, met)
    elif given.depth_mm is not None and given.depth_mm < leave - _TOUCH_MM:
        length, end = given.depth_mm, _along(given.start, direction, given.depth_mm)
    else:
        length, out = leave, _along(given.start, direction, leave)
        end = out
        slope = abs(_dot(direction, _INWARD[leave_face]))
        ellipse = (given.diameter_mm / slope, given.diameter_mm)
    # The bore must break these two: asked for a wall there it could never be right.
    skipped = {_start_face(given, direction), leave_face if out else None}
    wall = min(
        min(_depth_below(face, given.start, far), _depth_below(face, end, far))
        # Rounding can make the product of two unit vectors a little more than one.
        - given.diameter_mm / 2 * sqrt(max(0.0, 1 - _dot(direction, normal) ** 2))
        for face, normal in _INWARD.items()
        if face not in skipped
    )
    hits = tuple(i for i, item in enumerate(given.avoid) if _runs_into(given, end, item))
    return BoreResult(
        direction,
        entry is not None,
        entry,
        length,
        end,
        out,
        leave_face if out else None,
        ellipse,
        wall,
        hits,
        _problems(given, end, entry is not None, wall, hits),
    )


def segment_to_box_mm(start: Vector, end: Vector, box: Box) -> float:
    """Least distance between a straight line of finite length and a solid box; 0 where they meet.

    Parameters
    ----------
    start, end : vector
        Ends of the line [mm].
    box : Box
        The solid [mm].

    Returns
    -------
    float
        Distance [mm]. The squared distance is convex along the line and quadratic between the places where the line
        crosses the planes of the box, so the least is found piece by piece, exactly.

    Examples
    --------
    >>> segment_to_box_mm((0, 0, 0), (10, 0, 0), Box((4, 3, 0), (6, 5, 2)))
    3.0
    """
    run = _minus(end, start)
    cuts = {0.0, 1.0}
    for axis in range(3):
        if run[axis]:
            for bound in (box.low[axis], box.high[axis]):
                at = (bound - start[axis]) / run[axis]
                if 0 < at < 1:
                    cuts.add(at)
    places = sorted(cuts)
    least = inf
    for a, b in pairwise(places):
        middle = (a + b) / 2
        slope = curve = 0.0
        for axis in range(3):
            at = start[axis] + middle * run[axis]
            bound = box.low[axis] if at < box.low[axis] else box.high[axis]
            if box.low[axis] <= at <= box.high[axis]:
                continue
            slope += run[axis] * (start[axis] - bound)
            curve += run[axis] * run[axis]
        best = min(max(-slope / curve, a), b) if curve else a
        for t in (a, best, b):
            # The ends of a piece too: where the box's side changes, the best place of a parabola may lie outside its
            # piece.
            least = min(least, _point_to_box(_along(start, run, t), box))
    return least


def segment_to_segment_mm(a0: Vector, a1: Vector, b0: Vector, b1: Vector) -> float:
    """Least distance between two straight lines of finite length.

    Parameters
    ----------
    a0, a1, b0, b1 : vector
        Their ends [mm].

    Returns
    -------
    float
        Distance [mm]: that of the skew lines where the common perpendicular meets both, else from an end of one.

    Examples
    --------
    >>> segment_to_segment_mm((0, 0, 0), (10, 0, 0), (5, -5, 3), (5, 5, 3))
    3.0
    """
    u, v, w = _minus(a1, a0), _minus(b1, b0), _minus(a0, b0)
    uu, uv, vv, uw, vw = _dot(u, u), _dot(u, v), _dot(v, v), _dot(u, w), _dot(v, w)
    # The ends count in any case: parallel axes have no common perpendicular, and crossing ones may have it beyond an
    # end.
    least = min(
        _point_to_segment(a0, b0, b1),
        _point_to_segment(a1, b0, b1),
        _point_to_segment(b0, a0, a1),
        _point_to_segment(b1, a0, a1),
    )
    spread = uu * vv - uv * uv
    # Zero for parallel lines, where rounding would make the quotient anything.
    if spread > 0:
        s, t = (uv * vw - vv * uw) / spread, (uu * vw - uv * uw) / spread
        if 0 < s < 1 and 0 < t < 1:
            least = min(least, dist(_along(a0, u, s), _along(b0, v, t)))
    return least


def _dot(a: Vector, b: Vector) -> float:
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def _minus(a: Vector, b: Vector) -> Vector:
    return a[0] - b[0], a[1] - b[1], a[2] - b[2]


def _along(start: Vector, direction: Vector, t: float) -> Vector:
    return start[0] + t * direction[0], start[1] + t * direction[1], start[2] + t * direction[2]


def _point_to_box(point: Vector, box: Box) -> float:
    return hypot(*(max(low - p, 0.0, p - high) for p, low, high in zip(point, box.low, box.high, strict=True)))


def _point_to_segment(point: Vector, start: Vector, end: Vector) -> float:
    run = _minus(end, start)
    square = _dot(run, run)
    t = min(max(_dot(_minus(point, start), run) / square, 0.0), 1.0) if square else 0.0
    return dist(point, _along(start, run, t))


def _depth_below(face: str, point: Vector, far: Vector) -> float:
    """Distance of a point from one of the leaf's planes, inward."""
    normal = _INWARD[face]
    # Faces that look to positive axes pass through the origin, the others through the far corner.
    corner = (0.0, 0.0, 0.0) if sum(normal) > 0 else far
    return _dot(_minus(point, corner), normal)


def _direction(given: BoreInput) -> Vector:
    """Return the unit vector of the axis."""
    if given.direction is not None:
        x, y, z = given.direction
    else:
        nx, ny, nz = _INWARD[given.face or ""]
        # Tangents and not sines: each angle is the one seen in its own view, as it is set out on the leaf.
        x, y, z = nx - tan(radians(given.edge_deg)), ny + tan(radians(given.up_deg)), nz
    size = hypot(x, y, z)
    # adding zero turns a negative zero into a plain one
    return x / size + 0.0, y / size + 0.0, z / size + 0.0


def _start_face(given: BoreInput, direction: Vector) -> str | None:
    """Plane that the start lies on; of several the one that the axis leaves most steeply."""
    if given.face is not None:
        return given.face
    far = given.leaf.far_corner
    on = [face for face in FACES if abs(_depth_below(face, given.start, far)) <= _ON_FACE_MM]
    # A start on an edge of the leaf lies on two planes; the drill stands on the one that it leaves most steeply.
    return max(on, key=lambda face: _dot(direction, _INWARD[face])) if on else None


def _leaves(start: Vector, direction: Vector, far: Vector) -> tuple[float, str]:
    """How far along the axis it leaves the leaf, and by which plane."""
    best = (inf, "")
    for face, normal in _INWARD.items():
        speed = -_dot(direction, normal)
        if speed > 0:
            # Rounding may put a start outside its own face, and a negative way would let the bore leave before it
            # begins.
            best = min(best, (max(0.0, _depth_below(face, start, far)) / speed, face), key=lambda b: b[0])
    return best


def _meets(start: Vector, direction: Vector, box: Box) -> float | None:
    """How far along the axis it first meets a box; None when it never does."""
    enter, leave = 0.0, inf
    for at, step, low, high in zip(start, direction, box.low, box.high, strict=True):
        # Along this axis it never moves: dividing by the step would be dividing by zero.
        if step == 0:
            if at < low - _TOUCH_MM or at > high + _TOUCH_MM:
                return None
            continue
        near, far = (low - at) / step, (high - at) / step
        enter, leave = max(enter, min(near, far)), min(leave, max(near, far))
    return enter if enter <= leave + _TOUCH_MM else None


def _runs_into(given: BoreInput, end: Vector, item: Box | Rod) -> bool:
    if isinstance(item, Box):
        # Touching is allowed: what rounding makes of an exact fit must not be a clash.
        return segment_to_box_mm(given.start, end, item) < given.diameter_mm / 2 - _TOUCH_MM
    apart = segment_to_segment_mm(given.start, end, item.start, item.end)
    return apart < (given.diameter_mm + item.diameter_mm) / 2 - _TOUCH_MM


def _problems(given: BoreInput, end: Vector, enters: bool, wall_mm: float, hits: Sequence[int]) -> tuple[str, ...]:
    found = []
    if wall_mm < given.min_wall_mm - _TOUCH_MM:
        found.append(f"The wall left is {wall_mm:.2f} mm; at least {given.min_wall_mm:g} mm is wanted.")
    if given.target and not enters:
        off = segment_to_box_mm(given.start, end, given.target)
        found.append(f"The bore misses its target by {off:.2f} mm.")
    found.extend(f"The bore runs into avoid[{i}]." for i in hits)
    return tuple(found)


def _check(given: BoreInput) -> None:
    """Refuse what cannot be a leaf, a start, a direction or an obstacle."""
    check(given)
    far = given.leaf.far_corner
    for i, (value, limit) in enumerate(zip(given.start, far, strict=True)):
        if not -_ON_FACE_MM <= value <= limit + _ON_FACE_MM:
            raise InputError(f"start[{i}]", f"lies outside the leaf: from 0 to {limit:g}, got {value:g}")
    if given.face is not None and abs(_depth_below(given.face, given.start, far)) > _ON_FACE_MM:
        raise InputError("start", f"does not lie on the {given.face} plane of the leaf")
    _check_direction(given)
    if given.depth_mm is None and not given.through and given.target is None:
        raise InputError("depth_mm", "is missing; give a depth, or through, or a target")
    if given.target is not None:
        _check_box(given.target, "target")
        for i, limit in enumerate(far):
            if given.target.low[i] < -_ON_FACE_MM or given.target.high[i] > limit + _ON_FACE_MM:
                raise InputError("target", f"reaches outside the leaf along {'xyz'[i]}: from 0 to {limit:g}")
    for i, item in enumerate(given.avoid):
        if isinstance(item, Box):
            _check_box(item, f"avoid[{i}]")
            continue
        if item.start == item.end:
            raise InputError(f"avoid[{i}].to", "must lie apart from where it starts")


def _check_direction(given: BoreInput) -> None:
    if given.direction is None:
        if given.face is None:
            raise InputError("direction", "is missing; a bore that starts inside the leaf needs it")
        if given.face in ("lock-edge", "hinge-edge") and given.edge_deg:
            raise InputError("edge_deg", "means nothing on an edge of the leaf; give a direction")
        if given.face in ("top", "bottom") and given.up_deg:
            raise InputError("up_deg", "means nothing on the top or bottom of the leaf; give a direction")
        return
    if given.up_deg or given.edge_deg:
        raise InputError("direction", "is given beside angles; give one of them")
    if hypot(*given.direction) == 0:
        raise InputError("direction", "must be three finite numbers, not all zero")
    if given.face is not None and not _dot(given.direction, _INWARD[given.face]) > 0:
        raise InputError("direction", f"does not lead into the leaf from its {given.face} plane")


def _check_box(box: Box, path: str) -> None:
    for i in range(3):
        if not box.low[i] < box.high[i]:
            raise InputError(f"{path}.max[{i}]", "must be more than min: a box needs a size")


BORE = Calculator(
    name="bore",
    title="Bore, square or at an angle",
    basis="geometry; Machinery's Handbook, 31st edition, Compound Angles, p. 121 to 122",
    work=bore,
    example={
        "leaf": {"width_mm": 900, "height_mm": 2100, "thickness_mm": 44.45},
        "start": [70, 1050, 0],
        "face": "inside",
        "up_deg": -30,
        "edge_deg": 10,
        "diameter_mm": 9.525,
        "depth_mm": 40,
        "target": {"min": [0, 900, 15], "max": [100, 1035, 30]},
        "avoid": [{"from": [70, 1100, 0], "to": [70, 1100, 44.45], "diameter_mm": 8}],
        "min_wall_mm": 5,
    },
)
