"""Rule: unit clear of other items."""

from collections.abc import Iterable
from typing import Final

from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import near
from hwsched.values import Fit, OpeningInput

KINDS: Final = (
    "kick-plate",
    "flush-bolt",
    "astragal",
    "electric-strike",
    "electromagnetic-lock",
    "power-transfer",
    "hinge",
    "strike",
    "deadbolt",
    "other",
    "unit",
)
"""Kinds of existing item that it guards, and the units of other lock points."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return near(given, fit, KINDS, limits)


RULE = Rule(
    id="item-clear",
    title="Unit clear of other items",
    discipline="placement",
    severity="error",
    basis="common practice",
    cure="Move the unit or the item.",
    judge=_judge,
    slot="unit",
    guards=KINDS,
    limits=(
        Limit(
            "clearance_mm",
            3.175,
            "Least distance of the unit from any other item that stays.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
