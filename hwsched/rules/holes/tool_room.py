"""Rule: drill, screwdriver and fingers come square to each hole and screw: nothing that stays is in their way."""

from collections.abc import Iterable

from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.solid.clashes import clashes
from hwsched.rules.solid.tools import LIMITS
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return clashes(given, fit, RULE.id, 0.0)


RULE = Rule(
    id="tool-room",
    title="Room for drill, screwdriver and hand",
    discipline="holes",
    severity="error",
    basis="geometry; sizes of tools and hands common practice or from memory, unverified",
    cure="Take another place for the unit, or have what stands there moved or removed and survey it so.",
    judge=_judge,
    slot="unit",
    limits=LIMITS,
)
