"""What keeps off a lever and how far it turns: limits which the rule on levers has and the bodies of handles follow."""

from typing import Final

from hwsched.rules.rule import Limit
from hwsched.values import Settings

LIMITS: Final = (
    Limit(
        "clearance_mm",
        3 / 16 * 25.4,
        "Least distance of the unit from a lever or knob at rest and turned.",
        "common practice, 3/16 in as for trim",
        unit="mm",
        low=0.0,
        high=200.0,
    ),
    Limit(
        "sweep_deg",
        50.0,
        "How far the lever turns down.",
        "from memory, unverified",
        unit="deg",
        low=0.0,
        high=180.0,
    ),
)
_DECLARED: Final = {limit.name: limit.value for limit in LIMITS}


def sweep_deg(settings: Settings) -> float:
    """Return how far a lever turns down [deg], as the project has it."""
    # All limits of the rule at once: settings remember what they gave for it.
    return settings.limits_for("lever-clear", _DECLARED)["sweep_deg"]
