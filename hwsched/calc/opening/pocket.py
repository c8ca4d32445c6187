"""In-edge unit: where its pocket goes beside the lock's own pocket, what it leaves, how long the lead must be.

Here belongs the leaf's edge as a line and the pocket as a box. A unit on the leaf's face is in ``placement``.
Coordinates: y up from the leaf's bottom, depth from the lock edge, thickness from the leaf's middle toward the key
face.
"""

from dataclasses import dataclass
from math import inf
from typing import Annotated

from hwsched.calc.calculator import Calculator, InputError, Said, check, check_number
from hwsched.calc.limits import NotNegative, Positive

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

    name: Annotated[str, Said("What it is.", numbered="item {}")]
    y0: Annotated[float, Said("Its lower end.")]
    y1: Annotated[float, Said("Its upper end.")]
    clearance_mm: Annotated[NotNegative, Said("Wanted above and below it.")] = 0.0


@dataclass(frozen=True)
class PocketInput:
    """One edge of one leaf and one unit; lengths in mm."""

    leaf_mm: Annotated[Positive, Said("Leaf thickness.")]
    leaf_height_mm: Annotated[Positive, Said("Leaf height.")]
    stile_mm: Annotated[Positive, Said("Solid depth from the edge: to a lite, or the width of the stile or leaf.")]
    lock_y0: Annotated[NotNegative, Said("Its lower end.", at="lock.y0")]
    lock_y1: Annotated[float, Said("Its upper end.", at="lock.y1")]
    length_mm: Annotated[Positive, Said("Clear edge.", at="pocket.length_mm")]
    depth_mm: Annotated[Positive, Said("From the edge inward.", at="pocket.depth_mm")]
    width_mm: Annotated[Positive, Said("Across the leaf's thickness.", at="pocket.width_mm")]
    bridge_mm: Annotated[NotNegative, Said("To be left between the two pockets.")]
    hand_mm: Annotated[NotNegative, Said("Lead for a hand's work where the unit is connected before it slides in.")]
    lead_from_y: Annotated[float, Said("Where the lead leaves the lock's pocket.")]
    lead_mm: Annotated[Positive | None, Said("Lead that the cylinder has.", shown="not known")] = None
    lead_before_mm: Annotated[
        NotNegative, Said("Lead used up from the cylinder to where it leaves the lock's pocket.")
    ] = 0.0
    connector_mm: Annotated[
        NotNegative, Said("Unit's connector from the end of its pocket that is nearer to the lock.")
    ] = 0.0
    offset_mm: Annotated[float, Said("Pocket's middle from the leaf's middle, toward the key face.")] = 0.0
    side_wall_mm: Annotated[NotNegative, Said("Wall wanted on each side, across the thickness.")] = 0.0
    back_wall_mm: Annotated[NotNegative, Said("Material wanted behind the pocket.")] = 0.0
    edge_margin_mm: Annotated[NotNegative, Said("Distance wanted from the leaf's top and bottom.")] = 0.0
    items: Annotated[tuple[EdgeItem, ...], Said("What stays in the edge.")] = ()
    rated: Annotated[bool | None, Said("The leaf is fire rated.", shown="not known")] = None


@dataclass(frozen=True)
class PocketSpot:
    """A stretch of the edge that takes the pocket."""

    side: Annotated[str, Said("Of the lock.", choices=("above", "below"))]
    y0: Annotated[float, Said("Its lower end.")]
    y1: Annotated[float, Said("Its upper end.")]
    bridge_mm: Annotated[float, Said("Left between it and the lock's pocket.")]
    lead_needed_mm: Annotated[float, Said("Lead that it takes.")]
    lead_spare_mm: Annotated[
        float | None, Said("Lead left over; negative when it is short, null where the lead is not known.")
    ]


@dataclass(frozen=True)
class PocketRefusal:
    """Something that is in the way, and by how much."""

    name: Annotated[str, Said("What it is.")]
    short_mm: Annotated[float, Said("How much is short.")]
    text: Annotated[str, Said("A sentence on it.")]


@dataclass(frozen=True)
class PocketResult:
    """What the edge takes."""

    status: Annotated[
        str, Said("What it comes to; unknown where something of needs decides.", choices=("fits", "no", "unknown"))
    ]
    best: Annotated[PocketSpot | None, Said("Spot of the shortest lead.")]
    spots: Annotated[
        tuple[PocketSpot, ...],
        Said("Nearest spot above and below the lock, shortest lead first, also where the lead is short."),
    ]
    key_wall_mm: Annotated[float, Said("Wall left on the key side.")]
    inside_wall_mm: Annotated[float, Said("Wall left on the inside.")]
    back_wall_mm: Annotated[float, Said("Material left behind the pocket.")]
    refusals: Annotated[tuple[PocketRefusal, ...], Said("What is in the way.")]
    needs: Annotated[tuple[str, ...], Said("Facts that are missing.")]
    finding: Annotated[str | None, Said("Caution for a rated leaf; the geometry alone does not refuse it.")]


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
    Source: arithmetic along the edge; pocket and lead are those of the part's own template, whatever they are.

    Examples
    --------
    >>> given = PocketInput(44.45, 2100, 900, 900, 1100, 310.0, 40.0, 18.0, bridge_mm=20, hand_mm=55,
    ...                   lead_from_y=1080, lead_mm=200.0, rated=False)
    >>> got = pocket(given)
    >>> got.status, got.best.side, got.best.y0, got.best.lead_needed_mm
    ('fits', 'above', 1120, 135.0)
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
    # Walls are the same all along the edge; where they are short no place on it helps.
    walls_stand = not any(r.name.endswith("wall") for r in refusals)
    best = spots[0] if spots else None
    needs = []
    # Asked for also where the edge alone decides against it: whoever goes back to measure brings both facts.
    if given.lead_mm is None:
        needs.append("lead_mm")
    if given.rated is None:
        needs.append("rated")
    # Spots come by their lead: where the first is short all are.
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
        # Not refused here: shop work under label service may make the pocket, and who may make it is a rule's affair.
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
    # The leaf's end stands as a last item that never ends, so that the stretch before it is judged like any other.
    for low, high in (*taken, (end, inf)):
        if at + given.length_mm <= min(low, end) + _TOUCH_MM:
            break
        # Items may overlap: one that ends before where the walk stands takes nothing away.
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
    # The whole pocket depth, for the unit is connected before it slides in and its lead must then reach outside the
    # edge.
    needed = given.lead_before_mm + way + given.depth_mm + given.hand_mm
    spare = None if given.lead_mm is None else given.lead_mm - needed
    return PocketSpot(side, y0, y0 + given.length_mm, bridge, needed, spare)


def _check(given: PocketInput) -> None:
    check(given)
    check_number(given.lock_y1, "lock.y1", above=given.lock_y0)
    if given.lock_y1 > given.leaf_height_mm + _TOUCH_MM:
        raise InputError("lock.y1", f"lies outside the leaf: more than {given.leaf_height_mm:g}")
    check_number(
        given.lead_from_y, "lead_from_y", at_least=given.lock_y0 - _TOUCH_MM, at_most=given.lock_y1 + _TOUCH_MM
    )
    check_number(given.connector_mm, "connector_mm", at_most=given.length_mm + _TOUCH_MM)
    for i, item in enumerate(given.items):
        check_number(item.y1, f"items[{i}].y1", above=item.y0)


POCKET = Calculator(
    name="pocket",
    title="Pocket of an in-edge unit",
    basis="common practice; rated leaves NFPA 80, 4.1.3 and 5.1.5, read in commentary",
    work=pocket,
    groups={"lock": "The lock's own pocket on the edge.", "pocket": "The unit's pocket."},
    example={
        "leaf_mm": 44.45,
        "leaf_height_mm": 2100,
        "stile_mm": 120,
        "lock": {"y0": 900, "y1": 1105},
        "pocket": {"length_mm": 310, "depth_mm": 40, "width_mm": 18},
        "bridge_mm": 19,
        "hand_mm": 75,
        "lead_from_y": 1080,
        "lead_mm": 200,
        "side_wall_mm": 10,
        "back_wall_mm": 12,
        "items": [{"name": "bolt", "y0": 1700, "y1": 1760, "clearance_mm": 10}],
        "rated": False,
    },
)
