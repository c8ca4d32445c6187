"""Rule: unit clear of the closer."""

from collections.abc import Iterable
from typing import Final

from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import near
from hwsched.values import Fit, OpeningInput

KINDS: Final = ("closer",)
"""Kinds of existing item that it guards."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return near(given, fit, KINDS, limits)


RULE = Rule(
    id="closer-clear",
    title="Unit clear of the closer",
    discipline="placement",
    severity="error",
    basis="common practice; the closer's template decides",
    cure="Place the unit lower or farther from the closer's arm.",
    judge=_judge,
    slot="unit",
    guards=KINDS,
    limits=(
        Limit(
            "clearance_mm",
            25.4,
            "Least distance of the unit from the closer's body, for its arm.",
            "from memory, unverified; the closer's template decides",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
