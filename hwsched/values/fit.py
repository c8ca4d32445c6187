"""The fit: parts, place, holes and runs worked out for one opening, with the reason for each and each refusal.

Coordinates: x from the lock edge toward the hinge edge, y up from the finished floor, z from the inside face (0) to
the key face (leaf thickness); all mm and degrees.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from decimal import Decimal
from typing import Literal

from hwsched.quantities.money import summed

Status = Literal["fits", "does-not-fit", "to-measure"]
Role = Literal[
    "cylinder",
    "lock",
    "reader",
    "cam",
    "tailpiece",
    "collar",
    "ring",
    "unit",
    "mounting",
    "lead-extension",
    "battery",
    "coin-cell",
    "supply",
    "standby-battery",
    "power-transfer",
    "wire",
    "raceway",
    "strike",
    "fastener",
    "tool",
    "consumable",
    "credential",
]
Source = Literal["worked-out", "set", "by-hand"]
Purpose = Literal["cable", "channel", "function", "bolt", "fixing", "bore", "pocket", "raceway"]
"""What a hole is for: the lead, the lead's way inside the leaf, a cylinder or spindle, a through-bolt, a screw, a bored
lock's cross or edge bore, a pocket that is not round, the supply's wire across the leaf."""


@dataclass(frozen=True, slots=True)
class FitPart:
    """One part in one role."""

    role: Role
    part: str
    """Catalogue number."""
    kind: str
    quantity: float
    reason: str
    """Which fact or number it follows from."""
    description: str = ""
    source: Source = "worked-out"


@dataclass(frozen=True, slots=True)
class Stack:
    """How a cylinder stands in the leaf."""

    form: str
    """threaded, euro-profile, rim."""
    projection_mm: float
    """How far the head stands proud of the trim on the key side."""
    gap_mm: float = 0.0
    """Space left under the collar; 0 when flush."""
    turns: int = 0
    rings: tuple[str, ...] = ()
    cut_off_mm: float = 0.0
    """For a tailpiece: length to break off."""
    key_half_mm: float = 0.0
    inside_half_mm: float = 0.0
    short_mm: float = 0.0
    """What is missing until it stands right [mm]; 0 when it does, else this is the nearest miss."""
    impossible: str = ""
    """Why none of it can be worked out; empty where it can."""


@dataclass(frozen=True, slots=True)
class Alternative:
    """Another place where the unit could stand."""

    pattern: str
    x_mm: float
    y_mm: float
    cable_mm: float
    cost: float


@dataclass(frozen=True, slots=True)
class Placement:
    """Where the control unit stands: lower left corner of its plate on a face, or of its pocket in the edge."""

    leaf: str
    """Position of the leaf: single, active, inactive; empty for openings without a leaf."""
    face: str
    """inside, key, edge, or wall for openings without a leaf."""
    pattern: str
    """straight, above, below, in-edge, beside."""
    x_mm: float
    """From the lock edge; for a pocket in the edge from the inside face; on a wall from the reader's centre."""
    y_mm: float
    width_mm: float
    height_mm: float
    hole_x_mm: float
    """Access hole's centre."""
    hole_y_mm: float
    source: Source = "worked-out"
    alternatives: tuple[Alternative, ...] = ()
    clearances: tuple[tuple[str, float], ...] = ()
    """Named neighbour and the free distance to it [mm], nearest first."""


@dataclass(frozen=True, slots=True)
class CablePath:
    """The lead's way from the connector at the cylinder to the unit's connector."""

    points_mm: tuple[tuple[float, float, float], ...]
    length_mm: float
    """Needed, slack and bends included."""
    available_mm: float
    """The part's lead plus its extension."""
    slack_mm: float
    segments: tuple[tuple[str, float], ...] = ()
    """What each stretch is, and its length [mm]."""


@dataclass(frozen=True, slots=True)
class Hole:
    """One hole to be made or enlarged."""

    name: str
    """What it is for."""
    leaf: str
    """Position of the leaf: single, active, inactive; empty for openings without a leaf."""
    face: str
    """Face in which it starts: inside, key, lock-edge, hinge-edge, frame, wall."""
    x_mm: float
    """From the lock edge; for holes that start in an edge, from the inside face."""
    y_mm: float
    diameter_mm: float
    """0 for a pocket."""
    pilot_mm: float | None = None
    depth_mm: float | None = None
    """Length along its axis; None: through."""
    up_deg: float = 0.0
    edge_deg: float = 0.0
    from_cylinder_mm: tuple[float, float] | None = None
    """Centre relative to the cylinder's centre: toward the hinge edge, up."""
    tool: str = ""
    jig: str = ""
    order: int = 0
    enlarges_mm: float | None = None
    """Diameter of the existing hole that it enlarges."""
    count: int = 1
    purpose: Purpose = "cable"
    width_mm: float | None = None
    """For a pocket: its size along x (along z for a pocket in the edge)."""
    height_mm: float | None = None
    from_depth_mm: float = 0.0
    """Where it begins below its face: a channel starts at the bottom of its square bore."""
    by_template: bool = False
    """True: taken from the part as template; x and y are the centre of the part's plate, not of the hole."""
    slot_mm: float = 0.0
    """How far along its face, from its centre, the slot reaches that a bit makes as it is tilted in the hole: up
    positive; 0: no slot."""


@dataclass(frozen=True, slots=True)
class BatteryLife:
    """What the pack lasts."""

    days: float
    mah_per_day: float
    capacity_mah: float
    usable_share: float
    cold_share: float = 1.0
    """Share of the usable charge that is left at the lowest temperature of the opening."""


@dataclass(frozen=True, slots=True)
class Refusal:
    """A part that was considered and refused."""

    part: str
    role: Role
    rule: str
    reason: str
    """With the number that was short, by how much, and what would cure it."""
    values: Mapping[str, float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class RunnerUp:
    """Another complete combination that fits."""

    parts: tuple[str, ...]
    """Its main parts: lock or cylinder, unit, and what feeds it."""
    pattern: str
    power: str
    cost: Decimal
    """As of the fit."""
    holes: int
    cost_needs: tuple[str, ...] = ()
    """As of the fit."""


@dataclass(frozen=True, slots=True)
class Need:
    """A missing fact: unknown until somebody measures or asks."""

    fact: str
    """``entity.attribute`` as declared in the survey, or ``part NUMBER.attribute``."""
    label: str
    blocks: str
    """What cannot be worked out without it."""


@dataclass(frozen=True, slots=True)
class Fit:
    """All that was worked out for one lock point. Equal inputs have equal fits: it names no mark."""

    status: Status
    parts: tuple[FitPart, ...] = ()
    stack: Stack | None = None
    placement: Placement | None = None
    cable: CablePath | None = None
    holes: tuple[Hole, ...] = ()
    power: Literal["battery", "supply", "none"] = "none"
    battery: BatteryLife | None = None
    refused: tuple[Refusal, ...] = ()
    needs: tuple[Need, ...] = ()
    cost: Decimal = Decimal(0)
    """Sum of list prices of the parts, tools left out, exact; of those that can be told in its currency."""
    currency: str = ""
    """Of the cost; empty where parts tell none."""
    cost_needs: tuple[str, ...] = ()
    """What is missing to know the whole cost, such as ``list price (C-1)`` or ``exchange rate EUR to USD``."""
    nearest_miss: Refusal | None = None
    """When nothing fits: the refusal that was least short."""
    runners_up: tuple[RunnerUp, ...] = ()
    """The best of what else fits, best first."""

    def part(self, role: str) -> FitPart | None:
        """Return the first part in a role."""
        return next((p for p in self.parts if p.role == role), None)


def together(fits: Sequence[Fit | None]) -> Fit | None:
    """Return the fits of an opening's lock points as one: what goes into its box, and whether the opening fits.

    Parameters
    ----------
    fits : sequence of Fit or None
        One a lock point; that of an opening with one point is returned as it is.

    Returns
    -------
    Fit or None
        Fitted where all are. Equal parts are added up; place, cable, stack and battery are each point's own and left
        out. None where one of them is not worked out.
    """
    known = [fit for fit in fits if fit is not None]
    # One lock point that is not worked out leaves the opening unknown: half a box would be packed for it.
    if len(known) != len(fits) or not known:
        return None
    if len(known) == 1:
        return known[0]
    statuses = {fit.status for fit in known}
    status: Status = (
        # The worst decides: what cannot fit stays so whatever is measured at the other points.
        "does-not-fit" if "does-not-fit" in statuses else "to-measure" if "to-measure" in statuses else "fits"
    )
    parts: dict[tuple[Role, str], FitPart] = {}
    for part in (part for fit in known for part in fit.parts):
        held = parts.get((part.role, part.part))
        # A tool is brought once, however many holes it makes.
        more = 0.0 if part.role == "tool" else part.quantity
        parts[part.role, part.part] = part if held is None else replace(held, quantity=held.quantity + more)
    misses = [fit.nearest_miss for fit in known if fit.nearest_miss is not None]
    powers = {fit.power for fit in known}
    return Fit(
        status,
        tuple(parts.values()),
        holes=tuple(hole for fit in known for hole in fit.holes),
        # Where one point is on a supply there is wiring at the opening, and that is what its packet must say.
        power="supply" if "supply" in powers else "battery" if "battery" in powers else "none",
        refused=tuple(refusal for fit in known for refusal in fit.refused),
        needs=tuple(dict.fromkeys(need for fit in known for need in fit.needs)),
        cost=summed(fit.cost for fit in known),
        currency=next((fit.currency for fit in known if fit.currency), ""),
        cost_needs=tuple(dict.fromkeys(need for fit in known for need in fit.cost_needs)),
        nearest_miss=misses[0] if misses else None,
    )
