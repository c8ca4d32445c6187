"""Rule: bores and pockets stay in the stile."""

from collections.abc import Iterable

from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clashes import clashes
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return clashes(given, fit, RULE.id, limits["wall_mm"])


RULE = Rule(
    id="bore-in-stile",
    title="Bores and pockets stay in the stile",
    discipline="holes",
    severity="error",
    basis="geometry; the least wall is common practice",
    cure="Take a lock with a smaller bore, or with a shorter backset.",
    judge=_judge,
    slot="lock",
    limits=(
        Limit(
            "wall_mm",
            3.175,
            "Least material between a bore and the stile's inner edge.",
            "from memory, unverified, 1/8 in",
            unit="mm",
            low=0.0,
            high=50.0,
        ),
    ),
)
