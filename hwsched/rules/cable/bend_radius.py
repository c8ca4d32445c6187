"""Rule: every corner of the lead's way has room for its bend."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import BEND_RADIUS_MM
from hwsched.calc.calculator import InputError
from hwsched.calc.opening.cable import route
from hwsched.rules.reading import lock_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import in_units, length
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    # Two points have no corner between them.
    if fit.cable is None or len(fit.cable.points_mm) < 3:
        return
    lock = lock_part(given, fit)
    told = lock.number_of(BEND_RADIUS_MM) if lock is not None else None
    radius = limits["radius_mm"] if told is None else told
    try:
        way = route(fit.cable.points_mm, radius)
    except InputError as error:
        yield Verdict(
            f"The lead's way cannot be followed: {in_units(given, error.message)}.", severity="error", about="lead"
        )
        return
    if way.tight_bends:
        tight, room = len(way.tight_bends), length(given, radius)
        yield Verdict(
            f"One of the lead's bends has no room for a radius of {room}; ease the edges there."
            if tight == 1
            else f"{tight} of the lead's bends have no room for a radius of {room}; ease the edges there.",
            values={"tight_bends": float(tight), "radius_mm": radius},
            about="lead",
        )


RULE = Rule(
    id="bend-radius",
    title="Room for the lead's bends",
    discipline="cable",
    severity="note",
    basis="four times the outside diameter, as ANSI/TIA-568.0-D has it for four-pair cable; the maker's radius decides",
    cure="Round the edges of the holes, fit a sleeve, and pull the lead without a kink.",
    judge=_judge,
    limits=(
        Limit(
            "radius_mm",
            10.0,
            "Least bend radius of the lead.",
            "from memory, unverified: 4 x 2.5 mm",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
