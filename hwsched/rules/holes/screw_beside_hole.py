"""Rule: screws beside holes hold."""

from collections.abc import Iterable

from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clashes import clashes
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return clashes(given, fit, RULE.id, limits["wall_mm"])


RULE = Rule(
    id="screw-beside-hole",
    title="Screws beside holes hold",
    discipline="holes",
    severity="error",
    basis="geometry; the least wall is common practice",
    cure="Take another place for the unit, or one with other screw places.",
    judge=_judge,
    slot="unit",
    limits=(
        Limit(
            "wall_mm",
            1.5875,
            "Least material between a screw and a hole.",
            "from memory, unverified, 1/16 in",
            unit="mm",
            low=0.0,
            high=50.0,
        ),
    ),
)
