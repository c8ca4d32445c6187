"""Rule: a unit leaves room for the socket on the nuts of bolts that come through the leaf."""

from collections.abc import Iterable

from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.solid.clashes import clashes
from hwsched.rules.solid.nuts import LIMITS
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return clashes(given, fit, RULE.id, 0.0)


RULE = Rule(
    id="nut-room",
    title="Room for a socket at nuts of through-bolts",
    discipline="placement",
    severity="error",
    basis="common practice: a plate lies flat beside nuts, never on them; sizes from memory, unverified",
    cure="Move the unit off the nuts, or have what they hold moved or removed and survey it so; where the bolts end "
    "flush in this face, place the unit by hand and accept the finding.",
    judge=_judge,
    slot="unit",
    limits=LIMITS,
)
