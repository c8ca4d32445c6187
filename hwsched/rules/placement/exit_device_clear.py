"""Rule: unit clear of the exit device."""

from collections.abc import Iterable
from typing import Final

from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import near
from hwsched.values import Fit, OpeningInput

KINDS: Final = ("exit-device",)
"""Kinds of existing item that it guards."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return near(given, fit, KINDS, limits)


RULE = Rule(
    id="exit-device-clear",
    title="Unit clear of the exit device",
    discipline="placement",
    severity="error",
    basis="common practice; the exit device's template decides",
    cure="Place the unit above or below the device, outside its body and rail.",
    judge=_judge,
    slot="unit",
    guards=KINDS,
    limits=(
        Limit(
            "clearance_mm",
            12.7,
            "Least distance of the unit from the exit device's body and rail.",
            "from memory, unverified; the device's template decides",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
