"""Rule: unit clear of a thumb turn and of the fingers that turn it."""

from collections.abc import Iterable
from typing import Final

from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.solid.clearances import near
from hwsched.rules.solid.turns import LIMITS
from hwsched.values import Fit, OpeningInput

KINDS: Final = ("thumb-turn",)
"""Kinds of existing item that it guards."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return near(given, fit, KINDS, limits)


RULE = Rule(
    id="thumb-turn-clear",
    title="Unit clear of a thumb turn and fingers round it",
    discipline="placement",
    severity="error",
    basis="common practice; room for fingers and length of a turn from memory, unverified",
    cure="Place the unit higher or beside it, or replace the thumb turn.",
    judge=_judge,
    slot="unit",
    guards=KINDS,
    limits=LIMITS,
)
