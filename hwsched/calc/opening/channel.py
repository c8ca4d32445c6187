"""Angled channel: a short square bore from the face, then one along the leaf into the lock's pocket.

Here belong the two bores as one way for the cable, where the unit cannot stand opposite the cylinder. A single bore
is in ``bore``, whose coordinates hold here too.
"""

from dataclasses import dataclass
from math import atan2, cos, degrees, radians, sin, sqrt
from typing import Annotated

from hwsched.calc.calculator import (
    Calculator,
    FieldsOf,
    InputError,
    Said,
    Values,
    Within,
    check,
    check_arguments,
    check_number,
)
from hwsched.calc.limits import Angle, NotNegative, Positive
from hwsched.calc.opening.bore import EARLIER_FACES, BoreInput, BoreResult, Box, LeafSize, Rod, Vector, bore
from hwsched.calc.opening.cable import route, turn_rad

_DRILLED = ("inside", "key")
"""Faces in which the access hole may be."""
_TOUCH_MM = 1e-6
"""An entry this near to the pocket's top lies in it."""


@dataclass(frozen=True)
class ChannelInput:
    """A channel as it is wanted; lengths in mm, angles in degrees."""

    leaf: LeafSize
    face: Annotated[
        str,
        Said("Face that the access hole is drilled in.", choices=_DRILLED, default="inside",
             earlier_words=EARLIER_FACES),
    ]  # fmt: skip
    hole_x: float
    hole_y: float
    """Access hole's centre."""
    pocket: Box
    """The lock's pocket, which the channel is to enter from above or below."""
    square_mm: Annotated[Positive, Said("Depth of the square bore's axis, less than the leaf.")]
    angle_deg: Annotated[float, Within(above=0, below=90), Said("Between the second bore and the leaf's face.")]
    diameter_mm: Annotated[Positive, Said("Diameter of the second bore.")]
    lean_deg: Annotated[Angle, Said("Second bore from the vertical toward the lock edge, in the leaf's plane.")] = 0.0
    square_diameter_mm: Annotated[Positive | None, Said("Diameter of the square bore.", shown="the same")] = None
    bend_radius_mm: Annotated[NotNegative, Said("Least bend radius of the cable; 0 for sharp corners.")] = 0.0
    connector: Annotated[Vector | None, Said("[x, y, z] in the pocket where the cable goes on to.")] = None
    avoid: Annotated[tuple[Box | Rod, ...], Said("Boxes and round solids not to be met, as in bore.")] = ()
    min_wall_mm: Annotated[NotNegative, Said("Wall to be left to every plane of the leaf.")] = 0.0


@dataclass(frozen=True)
class ChannelResult:
    """A channel as it comes out."""

    ok: Annotated[bool, Said("There are no problems.", no="There are problems.")]
    square: BoreResult
    slanted: BoreResult
    enters: Annotated[
        bool, Said("The second bore's axis enters the pocket.", no="The second bore's axis misses the pocket.")
    ]

    @property
    def square_mm(self) -> Annotated[float, Said()]:
        """Length of the square bore."""
        return self.square.length_mm

    run_mm: Annotated[float, Said("Length of the second bore.")]

    @property
    def direction(self) -> Annotated[Vector, Said()]:
        """Unit vector of the second bore."""
        return self.slanted.direction

    @property
    def knee(self) -> Annotated[Vector, Said()]:
        """Where the two axes meet."""
        return self.square.end

    @property
    def entry(self) -> Annotated[Vector | None, Said()]:
        """Where the second enters the pocket."""
        return self.slanted.entry

    enters_at_mm: Annotated[float | None, Said("Depth of that point from the drilled face.")]
    entry_clear_mm: Annotated[
        float | None,
        Said("Least distance of the opening's rim from the border of the pocket's top or bottom; negative where the "
             "bore cuts past it, null where it does not enter there."),
    ]  # fmt: skip
    angles_deg: Annotated[
        tuple[float, float] | None,
        Said("Least and greatest angle that lead the axis into the pocket's top or bottom.", kind="list"),
    ]
    knee_deg: Annotated[float, Said("How far the cable turns at the knee.")]
    path: Annotated[tuple[Vector, ...], Said("Way of the pull wire: face, knee, entry, connector.")]
    path_mm: Annotated[float, Said("Its length, corners rounded to the bend radius where they can be.")]
    tight_bends: Annotated[tuple[int, ...], Said("Indices of path where the bend radius has no room.")]
    min_wall_mm: Annotated[float, Said("Least wall of both bores to the leaf's planes.")]

    @property
    def hits(self) -> Annotated[tuple[int, ...], Said()]:
        """Indices of avoid that either bore runs into."""
        return tuple(sorted({*self.square.hits, *self.slanted.hits}))

    problems: Annotated[tuple[str, ...], Said("Sentences: wall, target missed, entry by the pocket's side, hits.")]


def lock_pocket(
    leaf: LeafSize,
    cylinder_y: float,
    case_height_mm: Annotated[Positive, Said("Along the edge.", at="case.height_mm")],
    case_top_above_mm: Annotated[float, Said("Its top above the cylinder's centre line.", at="case.top_above_mm")],
    case_width_mm: Annotated[Positive, Said("Across the leaf's thickness.", at="case.width_mm")],
    case_depth_mm: Annotated[Positive, Said("From the edge inward.", at="case.depth_mm")],
    *,
    case_offset_mm: Annotated[
        float, Said("Its middle from the leaf's middle, toward the key face.", at="case.offset_mm")
    ] = 0.0,
) -> Box:
    """Lay out the lock's pocket as a box from what the survey measures.

    Returns
    -------
    Box
        The pocket.

    Raises
    ------
    InputError
        Names the value that cannot be taken, such as a case wider than the leaf is thick.

    Examples
    --------
    >>> lock_pocket(LeafSize(900, 2100, 44.45), 1000, 150, 44.45, 25.4, 100)
    Box(low=(0.0, 894.45, 9.525000000000002), high=(100, 1044.45, 34.925))
    """
    check_arguments(lock_pocket, locals())
    # z counts from the inside face, the offset from the leaf's middle toward the key face.
    middle = leaf.thickness_mm / 2 + case_offset_mm
    top = cylinder_y + case_top_above_mm
    if case_width_mm / 2 + abs(case_offset_mm) > leaf.thickness_mm / 2 + _TOUCH_MM:
        raise InputError("case.width_mm", f"does not go into the leaf's thickness of {leaf.thickness_mm:g} mm")
    if case_depth_mm > leaf.width_mm + _TOUCH_MM:
        raise InputError("case.depth_mm", f"is more than the leaf's width of {leaf.width_mm:g} mm")
    if top > leaf.height_mm + _TOUCH_MM or top - case_height_mm < -_TOUCH_MM:
        raise InputError("case.top_above_mm", "puts the lock outside the leaf")
    return Box(
        (0.0, top - case_height_mm, middle - case_width_mm / 2), (case_depth_mm, top, middle + case_width_mm / 2)
    )


def channel(given: ChannelInput) -> ChannelResult:
    """Work out the two bores that bring the cable from an access hole along the leaf into the lock's pocket.

    Parameters
    ----------
    given : ChannelInput
        The hole lies above or below the pocket.

    Returns
    -------
    ChannelResult
        Both bores with the walls that they leave, and the way of the pull wire.

    Raises
    ------
    InputError
        Names the value that cannot be taken.

    Notes
    -----
    Without lean, over a drop h the second bore runs ``h / cos(angle)`` and goes ``h * tan(angle)`` deeper. Source:
    geometry; the usual hole (2 1/2 in above the cylinder, square for 3/8 in, 10 degrees) is common practice.

    Examples
    --------
    >>> inch = 25.4
    >>> leaf = LeafSize(900, 2100, 1.75 * inch)
    >>> lock = lock_pocket(leaf, 1000, 150, 1.75 * inch, 25.4, 100)
    >>> got = channel(ChannelInput(leaf, "inside", 70, 1000 + 2.5 * inch, lock, 0.375 * inch, 10, 6.35))
    >>> round(got.run_mm / inch, 3), round(got.enters_at_mm / inch, 3)
    (0.762, 0.507)
    """
    down = _check(given)
    into = 1.0 if given.face == "inside" else -1.0
    start: Vector = (given.hole_x, given.hole_y, 0.0 if given.face == "inside" else given.leaf.thickness_mm)
    square = bore(
        BoreInput(
            given.leaf,
            start,
            given.square_diameter_mm or given.diameter_mm,
            given.face,
            depth_mm=given.square_mm,
            avoid=given.avoid,
            min_wall_mm=given.min_wall_mm,
        )
    )
    angle, lean = radians(given.angle_deg), radians(given.lean_deg)
    along = (-sin(lean) * cos(angle), (-1 if down else 1) * cos(lean) * cos(angle), into * sin(angle))
    knee = square.end
    slanted = bore(
        BoreInput(
            given.leaf,
            knee,
            given.diameter_mm,
            direction=along,
            target=given.pocket,
            avoid=given.avoid,
            min_wall_mm=given.min_wall_mm,
        )
    )
    path = [start, knee, slanted.end]
    # A segment of no length has no direction, and the route could not be rounded at it.
    if slanted.entry and given.connector and given.connector != slanted.entry:
        path.append(given.connector)
    wire = route(path, given.bend_radius_mm)
    problems = [
        *(f"Square bore: {text}" for text in square.problems),
        *(f"Slanted bore: {text}" for text in slanted.problems),
    ]
    clear = _entry_clear(given, slanted, down)
    # The axis meets the box all the same, so that the bore has its target; but a channel is laid out to come from
    # above or below.
    if slanted.enters_target and clear is None:
        problems.append(f"The slanted bore enters the pocket by its side, not by its {'top' if down else 'bottom'}.")
    return ChannelResult(
        not problems,
        square,
        slanted,
        slanted.enters_target,
        slanted.length_mm,
        abs(slanted.entry[2] - start[2]) if slanted.entry else None,
        clear,
        _angles(given, start[2], down),
        degrees(turn_rad(start, knee, slanted.end)),
        tuple(path),
        wire.length_mm,
        wire.tight_bends,
        min(square.min_wall_mm, slanted.min_wall_mm),
        tuple(problems),
    )


def _entry_clear(given: ChannelInput, slanted: BoreResult, down: bool) -> float | None:
    """Rim of the opening in the pocket's top or bottom, from its border."""
    near = given.pocket.high[1] if down else given.pocket.low[1]
    if slanted.entry is None or abs(slanted.entry[1] - near) > _TOUCH_MM:
        return None
    clear = []
    for axis in (0, 2):
        # half the opening's extent along this axis
        half = given.diameter_mm / 2 * sqrt(1 + (slanted.direction[axis] / slanted.direction[1]) ** 2)
        at = slanted.entry[axis]
        clear.append(min(at - given.pocket.low[axis], given.pocket.high[axis] - at) - half)
    return min(clear)


def _angles(given: ChannelInput, face_z: float, down: bool) -> tuple[float, float] | None:
    """Angles to the face that end in the pocket's top or bottom, with hole, square bore and lean as they are."""
    drop = given.hole_y - given.pocket.high[1] if down else given.pocket.low[1] - given.hole_y
    aside = given.hole_x - drop * sin(radians(given.lean_deg)) / cos(radians(given.lean_deg))
    # The lean carries the bore past the pocket's depth: then no angle to the face helps.
    if drop <= 0 or not given.pocket.low[0] <= aside <= given.pocket.high[0]:
        return None
    way = drop / cos(radians(given.lean_deg))
    depths = sorted(abs(z - face_z) - given.square_mm for z in (given.pocket.low[2], given.pocket.high[2]))
    if depths[1] <= 0:
        return None
    # The square bore already ends beyond the pocket's near side: straight along the leaf leads into it.
    least = depths[0] if depths[0] > _TOUCH_MM else 0.0
    return degrees(atan2(least, way)), degrees(atan2(depths[1], way))


def _check(given: ChannelInput) -> bool:
    """Refuse what cannot be; true when the second bore goes down."""
    if given.face not in _DRILLED:
        raise InputError("face", f"must be {' or '.join(_DRILLED)}; got {given.face!r}")
    check(given)
    check(given.leaf, "leaf")
    for value, limit, name in (
        (given.hole_x, given.leaf.width_mm, "hole_x_mm"),
        (given.hole_y, given.leaf.height_mm, "hole_above_mm"),
    ):
        if not 0 <= value <= limit:
            raise InputError(name, f"puts the hole outside the leaf: from 0 to {limit:g}, got {value:g}")
    # Beside the pocket a straight square bore reaches it, and there is no need of a channel.
    if given.pocket.low[1] <= given.hole_y <= given.pocket.high[1]:
        raise InputError("hole_above_mm", "lies beside the lock's pocket; a channel comes from above or below it")
    if not given.square_mm < given.leaf.thickness_mm:
        raise InputError("square_mm", f"goes through the leaf of {given.leaf.thickness_mm:g} mm")
    if given.connector is not None:
        for i, (value, near, far) in enumerate(zip(given.connector, given.pocket.low, given.pocket.high, strict=True)):
            check_number(value, f"connector[{i}]", at_least=near - _TOUCH_MM, at_most=far + _TOUCH_MM)
    return given.hole_y > given.pocket.high[1]


def _channel(
    leaf: Annotated[LeafSize, Said("The leaf.")],
    cylinder: Annotated[
        tuple[float, float],
        Said("Cylinder's centre line on the face: x from the lock edge, y up.", keys=("x", "y")),
    ],
    lock: Annotated[Values, FieldsOf(lock_pocket)],
    hole_above_mm: Annotated[float, Said("Access hole above the cylinder's centre; negative is below.")],
    hole_x_mm: Annotated[float | None, Said("Access hole from the lock edge.", shown="the cylinder's x")],
    bores: Annotated[Values, FieldsOf(ChannelInput)],
) -> ChannelResult:
    x, y = cylinder
    for value, limit, name in ((x, leaf.width_mm, "x"), (y, leaf.height_mm, "y")):
        if not 0 <= value <= limit:
            raise InputError(f"cylinder.{name}", f"lies outside the leaf: from 0 to {limit:g}, got {value:g}")
    hole_x = x if hole_x_mm is None else hole_x_mm
    pocket = lock_pocket(leaf, y, **lock)
    return channel(ChannelInput(leaf=leaf, hole_x=hole_x, hole_y=y + hole_above_mm, pocket=pocket, **bores))


CHANNEL = Calculator(
    name="channel",
    title="Angled channel of two bores into the lock's pocket",
    basis="geometry; hole and angle of the example are common practice",
    work=_channel,
    groups={"case": "Lock case."},
    example={
        "leaf": {"width_mm": 900, "height_mm": 2100, "thickness_mm": 44.45},
        "cylinder": {"x": 70, "y": 1000},
        "case": {"height_mm": 150, "top_above_mm": 44.45, "width_mm": 25.4, "depth_mm": 100},
        "face": "inside",
        "hole_above_mm": 63.5,
        "square_mm": 9.525,
        "angle_deg": 10,
        "diameter_mm": 6.35,
        "bend_radius_mm": 6,
        "min_wall_mm": 3,
    },
)
