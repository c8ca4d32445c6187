"""Rule: holes clear of spindles and bolts."""

from collections.abc import Iterable

from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clashes import clashes
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return clashes(given, fit, RULE.id, limits["wall_mm"])


RULE = Rule(
    id="hole-clear",
    title="Holes clear of spindles and bolts",
    discipline="holes",
    severity="error",
    basis="geometry; the least wall is common practice",
    cure="Take another place for the unit.",
    judge=_judge,
    slot="unit",
    limits=(
        Limit(
            "wall_mm",
            3.175,
            "Least material between a hole and a spindle's or bolt's hole.",
            "from memory, unverified, 1/8 in",
            unit="mm",
            low=0.0,
            high=50.0,
        ),
    ),
)
