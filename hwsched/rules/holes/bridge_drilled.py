"""Rule: the hole through the bridge can be drilled, the long bit leaning in the unit's pocket."""

from collections.abc import Iterable, Iterator
from math import cos, hypot, radians, sin, sqrt
from typing import Final

from hwsched.attributes.of_parts import POCKET_DEPTH_MM
from hwsched.rules.reading import lock_item, lock_leaf, unit_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.bores import bit_mm
from hwsched.rules.solid.clearances import TOUCH_MM
from hwsched.rules.solid.edge import bridge_is_solid, lock_pocket_span
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, Hole, Item, OpeningInput

_LEANS_DEG: Final = tuple(degrees / 2 for degrees in range(2, 121))
"""How far the bit may lean off the edge's line; steeper it would come out of the pocket's side."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, place, leaf, lock = unit_part(given, fit), fit.placement, lock_leaf(given), lock_item(given)
    if unit is None or unit.kind != "edge-unit" or place is None or leaf is None or lock is None:
        return
    span, deep = lock_pocket_span(given), unit.number_of(POCKET_DEPTH_MM)
    if not bridge_is_solid(leaf) or span is None or deep is None:
        return
    needs = _needs(lock)
    for hole in fit.holes:
        if hole.purpose != "channel" or hole.face != "lock-edge":
            continue
        if needs:
            yield unknown(needs, hole.name)
            continue
        bit, thick = bit_mm(given, hole, limits["bit_mm"]), limits["drill_radius_mm"]
        enter = place.y_mm if place.y_mm >= span[1] - TOUCH_MM else place.y_mm + place.height_mm
        off = min(abs(enter - span[0]), abs(enter - span[1]))
        tries = list(_tries(lock, hole, deep, off))
        short = min((_short(bit, thick, *each) for each in tries), default=None)
        if short is None:
            yield Verdict(
                f"No straight bit comes from the unit's pocket into the lock's, {length(given, off)} away: the one is "
                f"{length(given, deep)} deep.",
                values={"bridge_mm": off},
                about=hole.name,
            )
        elif short > TOUCH_MM:
            yield Verdict(
                f"The bridge is {length(given, off)} long: with a bit of {length(given, bit)} leaning as far as the "
                f"lock's pocket lets it, the drill comes {length(given, short)} into the edge.",
                values={"bridge_mm": off, "short_mm": short},
                about=hole.name,
            )


def _needs(lock: Item) -> tuple[str, ...]:
    names = ("backset_mm", "cross_bore_mm") if lock.lock_form == "bored" else ("case_depth_mm",)
    return tuple(f"existing_item.{name}" for name in names if getattr(lock, name) is None)


def _tries(lock: Item, hole: Hole, deep: float, off: float) -> Iterator[tuple[float, float, float]]:
    """Yield ways to lean: off the edge's line [degrees], how deep in the pocket's end it begins, how far it drills."""
    half = hole.diameter_mm / 2
    for lean in _LEANS_DEG:
        for begins in (half, deep - half):
            far = _bored(lock, lean, begins, off, half) if lock.lock_form == "bored" else off / cos(radians(lean))
            if far is None:
                continue
            if lock.lock_form != "bored" and begins + far * sin(radians(lean)) > (lock.case_depth_mm or 0.0) - half:
                continue
            yield lean, begins, far


def _bored(lock: Item, lean: float, begins: float, off: float, half: float) -> float | None:
    """Return how far a leaning bit drills until it is wholly in the round bore; None where it passes beside."""
    radius = (lock.cross_bore_mm or 0.0) / 2
    # Seen from where the bit begins: how far in and how far along the edge the bore's middle lies.
    inward, along = (lock.backset_mm or 0.0) - begins, off + radius
    beside = inward * cos(radians(lean)) - along * sin(radians(lean))
    if abs(beside) > radius - half:
        return None
    return sqrt(hypot(inward, along) ** 2 - beside**2) - sqrt(radius**2 - beside**2)


def _short(bit: float, thick: float, lean: float, begins: float, far: float) -> float:
    """Return how far a drill's side comes into the edge when the hole is through [mm]; negative: it stands clear."""
    return begins + thick * cos(radians(lean)) - (bit - far) * sin(radians(lean))


RULE = Rule(
    id="bridge-drilled",
    title="The hole through the bridge can be drilled",
    discipline="holes",
    severity="error",
    basis="geometry; sizes of drills from memory, unverified",
    cure="Place the unit nearer to the lock, take a longer bit, or another unit.",
    judge=_judge,
    slot="unit",
    limits=(
        Limit(
            "drill_radius_mm",
            28.0,
            "From a drill's axis to the side of its housing.",
            "from memory, unverified: 28 to 35 mm, head of a right-angle drill 22 to 28 mm",
            unit="mm",
            low=5.0,
            high=100.0,
        ),
        Limit(
            "bit_mm",
            304.8,
            "Length of the long bit, where the catalogue gives none of that diameter.",
            "encyclopedia: long bits of 6, 8, 12 and 18 in; 12 in taken",
            unit="mm",
            low=50.0,
            high=2000.0,
        ),
    ),
)
