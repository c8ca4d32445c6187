"""Rule: unit clear of labels and viewers."""

from collections.abc import Iterable
from typing import Final

from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import near
from hwsched.values import Fit, OpeningInput

KINDS: Final = ("label", "viewer")
"""Kinds of existing item that it guards."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return near(given, fit, KINDS, limits)


RULE = Rule(
    id="label-clear",
    title="Unit clear of labels and viewers",
    discipline="placement",
    severity="error",
    basis="common practice; NFPA 80 chapter 5 (labels stay legible), secondary copy",
    cure="Move the unit so that the label can be read.",
    judge=_judge,
    slot="unit",
    guards=KINDS,
    limits=(
        Limit(
            "clearance_mm",
            3.175,
            "Least distance of the unit from a label or viewer, so that it can be read and used.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
