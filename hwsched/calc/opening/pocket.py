"""In-edge unit: where its pocket goes beside the lock's own pocket, what it leaves, how long the lead must be.

Here belongs the leaf's edge as a line and the pocket as a box. A unit on the leaf's face is in ``placement``.
Coordinates: y up from the leaf's bottom, depth from the lock edge, thickness from the leaf's middle toward the key
face.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import inf
from typing import Any

from hwsched.calc.calculator import Calculator, Field, InputError, Reader, check_number

RATED_FINDING = (
    "The leaf is fire rated: a new pocket in its edge is not among the job-site preparations that NFPA 80 lists. It is "
    "work under label service, or a field modification that the listing laboratory approves in advance. This is a "
    "planning note, not a code ruling: the adopted code edition, the authority having jurisdiction, the listings of "
    "door and product, and a qualified person decide."
)
"""Source: NFPA 80, 4.1.3 (to 2019) and 5.1.5 (2022), read in commentary."""

_TOUCH_MM = 1e-9
"""Overlaps up to this are touching, which is allowed."""


@dataclass(frozen=True)
class EdgeItem:
    """Something in or on the leaf's edge that stays: a bolt, a closer's fixing, a second lock."""

    name: str
    y0: float
    y1: float
    clearance_mm: float = 0.0
    """Wanted above and below it [mm], 0 or more."""


@dataclass(frozen=True)
class PocketInput:
    """One edge of one leaf and one unit; lengths in mm."""

    leaf_mm: float
    """Thickness."""
    leaf_height_mm: float
    stile_mm: float
    """Solid depth from the edge: to a lite, or the width of the stile or leaf."""
    lock_y0: float
    lock_y1: float
    """The lock's own pocket on the edge."""
    length_mm: float
    depth_mm: float
    width_mm: float
    """The unit's pocket: clear edge, depth, across the thickness."""
    bridge_mm: float
    """To be left between the two pockets, 0 or more."""
    hand_mm: float
    """Lead for a hand's work where the unit is connected before it slides in, 0 or more."""
    lead_from_y: float
    """Where the lead leaves the lock's pocket."""
    lead_mm: float | None = None
    """Lead that the cylinder has; None where it is not known."""
    lead_before_mm: float = 0.0
    """Lead used up from the cylinder to where it leaves the lock's pocket."""
    connector_mm: float = 0.0
    """Unit's connector from the end of its pocket that is nearer to the lock."""
    offset_mm: float = 0.0
    """Pocket's middle from the leaf's middle, toward the key face."""
    side_wall_mm: float = 0.0
    """Wall wanted on each side, across the thickness."""
    back_wall_mm: float = 0.0
    """Material wanted behind the pocket."""
    edge_margin_mm: float = 0.0
    """Distance wanted from the leaf's top and bottom."""
    items: tuple[EdgeItem, ...] = ()
    rated: bool | None = None
    """Fire rated; None where it is not known."""


@dataclass(frozen=True)
class PocketSpot:
    """A stretch of the edge that takes the pocket."""

    side: str
    """"above" or "below" the lock."""
    y0: float
    y1: float
    bridge_mm: float
    """Left between it and the lock's pocket."""
    lead_needed_mm: float
    lead_spare_mm: float | None
    """Lead left over; negative when it is short, None where the lead is not known."""


@dataclass(frozen=True)
class PocketRefusal:
    """Something that is in the way, and by how much."""

    name: str
    short_mm: float
    text: str


@dataclass(frozen=True)
class PocketResult:
    """What the edge takes."""

    status: str
    """"fits", "no" or "unknown" (something of `needs` decides)."""
    best: PocketSpot | None
    """Shortest lead among the spots."""
    spots: tuple[PocketSpot, ...]
    """Nearest spot above and below the lock, shortest lead first, also where the lead is short."""
    key_wall_mm: float
    inside_wall_mm: float
    back_wall_mm: float
    refusals: tuple[PocketRefusal, ...]
    needs: tuple[str, ...]
    finding: str | None
    """Caution for a rated leaf; the geometry alone does not refuse it."""


def pocket(given: PocketInput) -> PocketResult:
    """Find where on the lock edge an in-edge unit's pocket fits, with its walls, its bridge and its lead.

    Parameters
    ----------
    given : PocketInput
        Lengths in mm.

    Returns
    -------
    PocketResult
        The nearest clear stretch above and below the lock. Lead needed: the way used up in the lock, from where it
        leaves the lock's pocket to the unit's connector, the whole pocket depth and the hand's allowance, since the
        unit is connected before it slides in.

    Raises
    ------
    InputError
        Names the value that cannot be taken.

    Notes
    -----
    Source: common practice (13 3/4 in clear edge, 1 3/4 in depth and 11/16 in width for a usual unit; a 9 in lead
    limits its distance).

    Examples
    --------
    >>> given = PocketInput(44.45, 2100, 900, 900, 1100, 349.25, 44.45, 17.4625, bridge_mm=20, hand_mm=60,
    ...                   lead_from_y=1080, lead_mm=228.6, rated=False)
    >>> got = pocket(given)
    >>> got.status, got.best.side, got.best.y0, got.best.lead_needed_mm
    ('fits', 'above', 1120, 144.45)
    """
    _check(given)
    refusals: list[PocketRefusal] = []
    key_wall = given.leaf_mm / 2 - given.offset_mm - given.width_mm / 2
    inside_wall = given.leaf_mm / 2 + given.offset_mm - given.width_mm / 2
    back_wall = given.stile_mm - given.depth_mm
    for name, wall, wanted in (
        ("key side wall", key_wall, given.side_wall_mm),
        ("inside wall", inside_wall, given.side_wall_mm),
        ("back wall", back_wall, given.back_wall_mm),
    ):
        if wall < wanted - _TOUCH_MM:
            text = f"the {name} would be {wall:.2f} mm; {wanted:g} mm is wanted"
            refusals.append(PocketRefusal(name, wanted - wall, text))
    spots = [spot for side in ("above", "below") if (spot := _spot(given, side, refusals))]
    spots.sort(key=lambda spot: spot.lead_needed_mm)
    walls_stand = not any(r.name.endswith("wall") for r in refusals)
    best = spots[0] if spots else None
    needs = []
    if given.lead_mm is None:
        needs.append("lead_mm")
    if given.rated is None:
        needs.append("rated")
    if best and best.lead_spare_mm is not None and best.lead_spare_mm < -_TOUCH_MM:
        short = -best.lead_spare_mm
        refusals.append(PocketRefusal("lead", short, f"the lead is {short:.2f} mm short even at the nearest spot"))
        best = None
    status = "no" if not (best and walls_stand) else "unknown" if given.lead_mm is None else "fits"
    return PocketResult(
        status,
        best if walls_stand else None,
        tuple(spots),
        key_wall,
        inside_wall,
        back_wall,
        tuple(refusals),
        tuple(needs),
        RATED_FINDING if given.rated else None,
    )


def _spot(given: PocketInput, side: str, refusals: list[PocketRefusal]) -> PocketSpot | None:
    """Nearest clear stretch on one side of the lock; where there is none, the refusal says how much is short."""
    up = side == "above"
    # measured away from the lock, so that one walk serves both sides
    start = (given.lock_y1 if up else -given.lock_y0) + given.bridge_mm
    end = given.leaf_height_mm - given.edge_margin_mm if up else -given.edge_margin_mm
    taken = sorted(
        (i.y0 - i.clearance_mm, i.y1 + i.clearance_mm) if up else (-i.y1 - i.clearance_mm, -i.y0 + i.clearance_mm)
        for i in given.items
    )
    clear = 0.0
    at = start
    for low, high in (*taken, (end, inf)):
        if at + given.length_mm <= min(low, end) + _TOUCH_MM:
            break
        if high > at + _TOUCH_MM:
            clear = max(clear, min(low, end) - at)
            at = high
    if at == inf:
        short = given.length_mm - clear
        text = f"{side} the lock the longest clear edge is {clear:.2f} mm; {given.length_mm:g} mm is wanted"
        refusals.append(PocketRefusal(f"clear edge {side}", short, text))
        return None
    y0 = at if up else -(at + given.length_mm)
    bridge = at - (given.lock_y1 if up else -given.lock_y0)
    way = abs(at - (given.lead_from_y if up else -given.lead_from_y)) + given.connector_mm
    needed = given.lead_before_mm + way + given.depth_mm + given.hand_mm
    spare = None if given.lead_mm is None else given.lead_mm - needed
    return PocketSpot(side, y0, y0 + given.length_mm, bridge, needed, spare)


def _check(given: PocketInput) -> None:
    for name in ("leaf_mm", "leaf_height_mm", "stile_mm"):
        check_number(getattr(given, name), name, above=0)
    for name in ("length_mm", "depth_mm", "width_mm"):
        check_number(getattr(given, name), f"pocket.{name}", above=0)
    for name in (
        "bridge_mm", "hand_mm", "lead_before_mm", "connector_mm", "side_wall_mm", "back_wall_mm", "edge_margin_mm",
    ):  # fmt: skip
        check_number(getattr(given, name), name, at_least=0)
    check_number(given.offset_mm, "offset_mm")
    if given.lead_mm is not None:
        check_number(given.lead_mm, "lead_mm", above=0)
    check_number(given.lock_y0, "lock.y0", at_least=0)
    check_number(given.lock_y1, "lock.y1", above=given.lock_y0)
    if given.lock_y1 > given.leaf_height_mm + _TOUCH_MM:
        raise InputError("lock.y1", f"lies outside the leaf: more than {given.leaf_height_mm:g}")
    check_number(
        given.lead_from_y, "lead_from_y", at_least=given.lock_y0 - _TOUCH_MM, at_most=given.lock_y1 + _TOUCH_MM
    )
    check_number(given.connector_mm, "connector_mm", at_most=given.length_mm + _TOUCH_MM)
    _check_items(given.items)


def _check_items(items: Sequence[EdgeItem]) -> None:
    for i, item in enumerate(items):
        check_number(item.y0, f"items[{i}].y0")
        check_number(item.y1, f"items[{i}].y1", above=item.y0)
        check_number(item.clearance_mm, f"items[{i}].clearance_mm", at_least=0)


def _spot_out(spot: PocketSpot) -> dict[str, Any]:
    return {
        "side": spot.side,
        "y0": spot.y0,
        "y1": spot.y1,
        "bridge_mm": spot.bridge_mm,
        "lead_needed_mm": spot.lead_needed_mm,
        "lead_spare_mm": spot.lead_spare_mm,
    }


def _run(data: Mapping[str, Any]) -> dict[str, Any]:
    reader = Reader(data)
    lock, unit = reader.object("lock"), reader.object("pocket")
    result = pocket(
        PocketInput(
            reader.number("leaf_mm"),
            reader.number("leaf_height_mm"),
            reader.number("stile_mm"),
            lock.number("y0"),
            lock.number("y1"),
            unit.number("length_mm"),
            unit.number("depth_mm"),
            unit.number("width_mm"),
            reader.number("bridge_mm"),
            reader.number("hand_mm"),
            reader.number("lead_from_y"),
            reader.optional_number("lead_mm"),
            reader.number("lead_before_mm", 0.0),
            reader.number("connector_mm", 0.0),
            reader.number("offset_mm", 0.0),
            reader.number("side_wall_mm", 0.0),
            reader.number("back_wall_mm", 0.0),
            reader.number("edge_margin_mm", 0.0),
            tuple(
                EdgeItem(r.text("name", f"item {i + 1}"), r.number("y0"), r.number("y1"), r.number("clearance_mm", 0.0))
                for i, r in enumerate(reader.objects("items", []))
            ),
            None if reader.raw("rated", None) is None else reader.flag("rated"),
        )
    )
    return {
        "status": result.status,
        "best": _spot_out(result.best) if result.best else None,
        "spots": [_spot_out(spot) for spot in result.spots],
        "key_wall_mm": result.key_wall_mm,
        "inside_wall_mm": result.inside_wall_mm,
        "back_wall_mm": result.back_wall_mm,
        "refusals": [{"name": r.name, "short_mm": r.short_mm, "text": r.text} for r in result.refusals],
        "needs": list(result.needs),
        "finding": result.finding,
    }


POCKET = Calculator(
    name="pocket",
    title="Pocket of an in-edge unit",
    basis="common practice; rated leaves NFPA 80, 4.1.3 and 5.1.5, read in commentary",
    inputs=(
        Field("leaf_mm", "number", "Leaf thickness."),
        Field("leaf_height_mm", "number", "Leaf height."),
        Field("stile_mm", "number", "Solid depth from the edge: stile width, or to a lite."),
        Field("lock", "object", "The lock's own pocket on the edge: y0, y1."),
        Field("pocket", "object", "The unit's pocket: length_mm (clear edge), depth_mm, width_mm (thickness)."),
        Field("bridge_mm", "number", "To be left between the two pockets."),
        Field("hand_mm", "number", "Lead for a hand's work before the unit slides in."),
        Field("lead_from_y", "number", "Where the lead leaves the lock's pocket."),
        Field("lead_mm", "number", "Lead that the cylinder has.", "not known"),
        Field("lead_before_mm", "number", "Lead used up before it leaves the lock's pocket.", "0"),
        Field("connector_mm", "number", "Unit's connector from the end of its pocket nearer the lock.", "0"),
        Field("offset_mm", "number", "Pocket's middle from the leaf's middle, toward the key face.", "0"),
        Field("side_wall_mm", "number", "Wall wanted on each side.", "0"),
        Field("back_wall_mm", "number", "Material wanted behind the pocket.", "0"),
        Field("edge_margin_mm", "number", "Distance wanted from the leaf's top and bottom.", "0"),
        Field("items", "list", "What stays in the edge: objects of name, y0, y1, clearance_mm.", "[]"),
        Field("rated", "flag", "The leaf is fire rated.", "not known"),
    ),
    outputs=(
        Field("status", "choice", "What it comes to.", "", ("fits", "no", "unknown")),
        Field("best", "object", "side, y0, y1, bridge_mm, lead_needed_mm, lead_spare_mm, or null."),
        Field("spots", "list", "The nearest spot above and below the lock, shortest lead first."),
        Field("key_wall_mm", "number", "Wall left on the key side."),
        Field("inside_wall_mm", "number", "Wall left on the inside."),
        Field("back_wall_mm", "number", "Material left behind the pocket."),
        Field("refusals", "list", "Objects of name, short_mm, text."),
        Field("needs", "list", "Facts that are missing."),
        Field("finding", "text", "Caution for a rated leaf, or null."),
    ),
    example={
        "leaf_mm": 44.45,
        "leaf_height_mm": 2100,
        "stile_mm": 120,
        "lock": {"y0": 900, "y1": 1105},
        "pocket": {"length_mm": 349.25, "depth_mm": 44.45, "width_mm": 17.4625},
        "bridge_mm": 19,
        "hand_mm": 75,
        "lead_from_y": 1080,
        "lead_mm": 228.6,
        "side_wall_mm": 10,
        "back_wall_mm": 12,
        "items": [{"name": "bolt", "y0": 1700, "y1": 1760, "clearance_mm": 10}],
        "rated": False,
    },
    run=_run,
)
