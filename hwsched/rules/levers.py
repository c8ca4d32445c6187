"""How far a lever turns: one limit, which the rule on levers has and the bodies of their handles follow."""

from typing import Final

from hwsched.rules.rule import Limit
from hwsched.values import Settings

SWEEP: Final = Limit(
    "sweep_deg",
    50.0,
    "How far the lever turns down.",
    "from memory, unverified",
    unit="deg",
    low=0.0,
    high=180.0,
)


def sweep_deg(settings: Settings) -> float:
    """Return how far a lever turns down [deg], as the project has it."""
    return settings.limits_for("lever-clear", {SWEEP.name: SWEEP.value})[SWEEP.name]
