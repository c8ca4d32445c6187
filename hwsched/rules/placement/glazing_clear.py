"""Rule: unit clear of lites and louvres."""

from collections.abc import Iterable
from typing import Final

from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import near
from hwsched.values import Fit, OpeningInput

KINDS: Final = ("lite", "louvre")
"""Kinds of existing item that it guards."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return near(given, fit, KINDS, limits)


RULE = Rule(
    id="glazing-clear",
    title="Unit clear of lites and louvres",
    discipline="placement",
    severity="error",
    basis="common practice",
    cure="Move the unit off the glass and its stops.",
    judge=_judge,
    slot="unit",
    guards=KINDS,
    limits=(
        Limit(
            "clearance_mm",
            12.7,
            "Least distance of the unit from a lite or louvre, for its stops.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
