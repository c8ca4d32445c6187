"""Rule: unit clear of a thumb turn."""

from collections.abc import Iterable
from typing import Final

from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import near
from hwsched.values import Fit, OpeningInput

KINDS: Final = ("thumb-turn",)
"""Kinds of existing item that it guards."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return near(given, fit, KINDS, limits["clearance_mm"])


RULE = Rule(
    id="thumb-turn-clear",
    title="Unit clear of a thumb turn",
    discipline="placement",
    severity="error",
    basis="common practice",
    cure="Place the unit higher or beside it, or replace the thumb turn.",
    judge=_judge,
    slot="unit",
    guards=KINDS,
    limits=(
        Limit(
            "clearance_mm",
            3 / 16 * 25.4,
            "Least distance of the unit from a thumb turn.",
            "common practice, 3/16 in",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
