"""Rule: unit clear of trim."""

from collections.abc import Iterable
from typing import Final

from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import near
from hwsched.values import Fit, OpeningInput

KINDS: Final = ("trim", "lock", "push-plate", "pull")
"""Kinds of existing item that it guards."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return near(given, fit, KINDS, limits)


RULE = Rule(
    id="trim-clear",
    title="Unit clear of trim",
    discipline="placement",
    severity="error",
    basis="common practice",
    cure="Move the unit, take a smaller one, or change the trim.",
    judge=_judge,
    slot="unit",
    guards=KINDS,
    limits=(
        Limit(
            "clearance_mm",
            3 / 16 * 25.4,
            "Least distance of the unit from trim, lock, push plate or pull.",
            "common practice, 3/16 in",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
