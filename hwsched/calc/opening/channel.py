"""Angled channel: a short square bore from the face, then one along the leaf into the lock's pocket.

Here belong the two bores as one way for the cable, where the unit cannot stand opposite the cylinder. A single bore
is in ``bore``, whose coordinates hold here too.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import atan2, cos, degrees, radians, sin, sqrt
from typing import Any

from hwsched.calc.calculator import Calculator, Field, InputError, Reader, check_number
from hwsched.calc.opening.bore import BoreInput, BoreResult, Box, LeafSize, Rod, Vector, bore, read_items
from hwsched.calc.opening.cable import route, turn_rad

_TOUCH_MM = 1e-6
"""An entry this near to the pocket's top lies in it."""


@dataclass(frozen=True)
class ChannelInput:
    """A channel as it is wanted; lengths in mm, angles in degrees."""

    leaf: LeafSize
    face: str
    """"inside" or "key": where the access hole is drilled."""
    hole_x: float
    hole_y: float
    """Access hole's centre."""
    pocket: Box
    """The lock's pocket, which the channel is to enter from above or below."""
    square_mm: float
    """Depth of the square bore's axis, more than 0 and less than the leaf."""
    angle_deg: float
    """Between the second bore and the leaf's face, more than 0 and less than 90."""
    diameter_mm: float
    lean_deg: float = 0.0
    """Second bore in the leaf's plane: from the vertical toward the lock edge, less than 90 either way."""
    square_diameter_mm: float | None = None
    """Diameter of the square bore; None is that of the second."""
    bend_radius_mm: float = 0.0
    """Cable's least bend radius; 0 leaves its corners sharp."""
    connector: Vector | None = None
    """Where in the pocket the cable goes on to."""
    avoid: tuple[Box | Rod, ...] = ()
    min_wall_mm: float = 0.0


@dataclass(frozen=True)
class ChannelResult:
    """A channel as it comes out."""

    ok: bool
    square: BoreResult
    slanted: BoreResult
    enters: bool
    run_mm: float
    """Length of the second bore."""
    enters_at_mm: float | None
    """Depth from the drilled face where its axis enters the pocket."""
    entry_clear_mm: float | None
    """Least distance of the opening's rim from the border of the pocket's top or bottom; negative where the bore cuts
    past it. None where it does not enter by the top or bottom."""
    angles_deg: tuple[float, float] | None
    """Least and greatest angle that lead the axis into the pocket's top or bottom; None when there are none."""
    knee_deg: float
    """How far the cable turns where the two bores meet."""
    path: tuple[Vector, ...]
    """Way of the pull wire: face, knee, entry, connector."""
    path_mm: float
    """Its length, with corners rounded to the bend radius where they can be."""
    tight_bends: tuple[int, ...]
    """Indices of `path` where the bend radius has no room."""
    min_wall_mm: float
    problems: tuple[str, ...]


def lock_pocket(
    leaf: LeafSize,
    cylinder_y: float,
    case_height_mm: float,
    case_top_above_mm: float,
    case_width_mm: float,
    case_depth_mm: float,
    *,
    case_offset_mm: float = 0.0,
) -> Box:
    """Lay out the lock's pocket as a box from what the survey measures.

    Parameters
    ----------
    leaf : LeafSize
        The leaf [mm].
    cylinder_y : float
        Height of the cylinder's centre line [mm].
    case_height_mm, case_width_mm, case_depth_mm : float
        Case along the edge, across the leaf's thickness, and from the edge inward [mm], more than 0.
    case_top_above_mm : float
        Its top above the cylinder's centre line [mm].
    case_offset_mm : float
        Its middle from the leaf's middle, toward the key face [mm].

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
    check_number(case_height_mm, "case.height_mm", above=0)
    check_number(case_width_mm, "case.width_mm", above=0)
    check_number(case_depth_mm, "case.depth_mm", above=0)
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
    if slanted.entry and given.connector and given.connector != slanted.entry:
        path.append(given.connector)
    wire = route(path, given.bend_radius_mm)
    problems = [
        *(f"Square bore: {text}" for text in square.problems),
        *(f"Slanted bore: {text}" for text in slanted.problems),
    ]
    clear = _entry_clear(given, slanted, down)
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
    if drop <= 0 or not given.pocket.low[0] <= aside <= given.pocket.high[0]:
        return None
    way = drop / cos(radians(given.lean_deg))
    depths = sorted(abs(z - face_z) - given.square_mm for z in (given.pocket.low[2], given.pocket.high[2]))
    if depths[1] <= 0:
        return None
    least = depths[0] if depths[0] > _TOUCH_MM else 0.0
    return degrees(atan2(least, way)), degrees(atan2(depths[1], way))


def _check(given: ChannelInput) -> bool:
    """Refuse what cannot be; true when the second bore goes down."""
    if given.face not in ("inside", "key"):
        raise InputError("face", f"must be inside or key; got {given.face!r}")
    check_number(given.leaf.thickness_mm, "leaf.thickness_mm", above=0)
    for value, limit, name in (
        (given.hole_x, given.leaf.width_mm, "hole_x_mm"),
        (given.hole_y, given.leaf.height_mm, "hole_above_mm"),
    ):
        if not 0 <= value <= limit:
            raise InputError(name, f"puts the hole outside the leaf: from 0 to {limit:g}, got {value:g}")
    if given.pocket.low[1] <= given.hole_y <= given.pocket.high[1]:
        raise InputError("hole_above_mm", "lies beside the lock's pocket; a channel comes from above or below it")
    check_number(given.square_mm, "square_mm", above=0)
    if not given.square_mm < given.leaf.thickness_mm:
        raise InputError("square_mm", f"goes through the leaf of {given.leaf.thickness_mm:g} mm")
    for value, low, name in ((given.angle_deg, 0, "angle_deg"), (given.lean_deg, -90, "lean_deg")):
        if not low < value < 90:
            raise InputError(name, f"must be more than {low} and less than 90, got {value:g}")
    check_number(given.diameter_mm, "diameter_mm", above=0)
    if given.square_diameter_mm is not None:
        check_number(given.square_diameter_mm, "square_diameter_mm", above=0)
    check_number(given.bend_radius_mm, "bend_radius_mm", at_least=0)
    if given.connector is not None:
        for i, (value, near, far) in enumerate(zip(given.connector, given.pocket.low, given.pocket.high, strict=True)):
            check_number(value, f"connector[{i}]", at_least=near - _TOUCH_MM, at_most=far + _TOUCH_MM)
    return given.hole_y > given.pocket.high[1]


def _read(reader: Reader) -> ChannelInput:
    size, cylinder, lock = reader.object("leaf"), reader.object("cylinder"), reader.object("case")
    leaf = LeafSize(
        size.number("width_mm", above=0), size.number("height_mm", above=0), size.number("thickness_mm", above=0)
    )
    x, y = cylinder.number("x"), cylinder.number("y")
    for value, limit, name in ((x, leaf.width_mm, "x"), (y, leaf.height_mm, "y")):
        if not 0 <= value <= limit:
            raise InputError(cylinder.at(name), f"lies outside the leaf: from 0 to {limit:g}, got {value:g}")
    connector = None if reader.raw("connector", None) is None else reader.point("connector", 3)
    return ChannelInput(
        leaf,
        reader.choice("face", ("inside", "key"), "inside"),
        reader.number("hole_x_mm", x),
        y + reader.number("hole_above_mm"),
        lock_pocket(
            leaf,
            y,
            lock.number("height_mm"),
            lock.number("top_above_mm"),
            lock.number("width_mm"),
            lock.number("depth_mm"),
            case_offset_mm=lock.number("offset_mm", 0.0),
        ),
        reader.number("square_mm"),
        reader.number("angle_deg"),
        reader.number("diameter_mm"),
        reader.number("lean_deg", 0.0),
        reader.optional_number("square_diameter_mm"),
        reader.number("bend_radius_mm", 0.0),
        None if connector is None else (connector[0], connector[1], connector[2]),
        read_items(reader, "avoid"),
        reader.number("min_wall_mm", 0.0),
    )


def _run(data: Mapping[str, Any]) -> dict[str, Any]:
    result = channel(_read(Reader(data)))
    return {
        "ok": result.ok,
        "enters": result.enters,
        "square_mm": result.square.length_mm,
        "run_mm": result.run_mm,
        "direction": list(result.slanted.direction),
        "knee": list(result.square.end),
        "entry": list(result.slanted.entry) if result.slanted.entry else None,
        "enters_at_mm": result.enters_at_mm,
        "entry_clear_mm": result.entry_clear_mm,
        "angles_deg": list(result.angles_deg) if result.angles_deg else None,
        "knee_deg": result.knee_deg,
        "path": [list(point) for point in result.path],
        "path_mm": result.path_mm,
        "tight_bends": list(result.tight_bends),
        "min_wall_mm": result.min_wall_mm,
        "hits": sorted({*result.square.hits, *result.slanted.hits}),
        "problems": list(result.problems),
    }


CHANNEL = Calculator(
    name="channel",
    title="Angled channel of two bores into the lock's pocket",
    basis="geometry; hole and angle of the example are common practice",
    inputs=(
        Field("leaf", "object", "Leaf of width_mm, height_mm, thickness_mm."),
        Field("cylinder", "point", "Cylinder's centre line on the face: x from the lock edge, y up."),
        Field(
            "case",
            "object",
            "Lock case: height_mm, top_above_mm (its top above the cylinder's centre), width_mm (thickness), "
            "depth_mm (from the edge), offset_mm (its middle toward the key face).",
        ),
        Field("face", "choice", "Face that the access hole is drilled in.", "inside", ("inside", "key")),
        Field("hole_above_mm", "number", "Access hole above the cylinder's centre; negative is below."),
        Field("hole_x_mm", "number", "Access hole from the lock edge.", "the cylinder's x"),
        Field("square_mm", "number", "Depth of the square bore."),
        Field("angle_deg", "number", "Between the second bore and the leaf's face."),
        Field("lean_deg", "number", "Second bore from the vertical toward the lock edge.", "0"),
        Field("diameter_mm", "number", "Diameter of the second bore."),
        Field("square_diameter_mm", "number", "Diameter of the square bore.", "the same"),
        Field("bend_radius_mm", "number", "Least bend radius of the cable; 0 for sharp corners.", "0"),
        Field("connector", "point", "[x, y, z] in the pocket where the cable goes on to.", "none"),
        Field("avoid", "list", "Boxes and round solids not to be met, as in bore.", "[]"),
        Field("min_wall_mm", "number", "Wall to be left to every plane of the leaf.", "0"),
    ),
    outputs=(
        Field("ok", "flag", "There are no problems."),
        Field("enters", "flag", "The second bore's axis enters the pocket."),
        Field("square_mm", "number", "Length of the square bore."),
        Field("run_mm", "number", "Length of the second bore."),
        Field("direction", "point", "Unit vector of the second bore."),
        Field("knee", "point", "Where the two axes meet."),
        Field("entry", "point", "Where the second enters the pocket, or null."),
        Field("enters_at_mm", "number", "Depth of that point from the drilled face, or null."),
        Field("entry_clear_mm", "number", "Opening's rim from the border of the pocket's top or bottom, or null."),
        Field("angles_deg", "list", "Least and greatest angle that lead into it, or null."),
        Field("knee_deg", "number", "How far the cable turns at the knee."),
        Field("path", "list", "Way of the pull wire."),
        Field("path_mm", "number", "Its length, corners rounded where they can be."),
        Field("tight_bends", "list", "Indices of path where the bend radius has no room."),
        Field("min_wall_mm", "number", "Least wall of both bores to the leaf's planes."),
        Field("hits", "list", "Indices of avoid that either bore runs into."),
        Field("problems", "list", "Sentences: wall, target missed, entry by the pocket's side, hits."),
    ),
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
    run=_run,
)
