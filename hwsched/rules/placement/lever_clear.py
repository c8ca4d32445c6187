"""Rule: unit clear of a lever and its sweep."""

from collections.abc import Iterable
from typing import Final

from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.solid.clearances import near
from hwsched.rules.solid.levers import LIMITS
from hwsched.values import Fit, OpeningInput

KINDS: Final = ("lever",)
"""Kinds of existing item that it guards."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return near(given, fit, KINDS, limits)


RULE = Rule(
    id="lever-clear",
    title="Unit clear of a lever and its sweep",
    discipline="placement",
    severity="error",
    basis="common practice",
    cure="Move the unit out of the lever's sweep.",
    judge=_judge,
    slot="unit",
    guards=KINDS,
    limits=LIMITS,
)
