"""Rule: a way for the supply's wire inside the leaf is clear of spindles, bolts, other locks and the unit's screws."""

from collections.abc import Iterable

from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clashes import clashes
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return clashes(given, fit, RULE.id, limits["wall_mm"])


RULE = Rule(
    id="way-clear",
    title="Way across the leaf clear of what is in it",
    discipline="power",
    severity="error",
    basis="geometry; the least wall is common practice",
    cure="Lay a raceway over the face, take another place for the unit or shorter screws, or feed it from batteries.",
    judge=_judge,
    slot="power",
    limits=(
        Limit(
            "wall_mm",
            3.175,
            "Least material between a way across the leaf and what else is in it.",
            "from memory, unverified, 1/8 in",
            unit="mm",
            low=0.0,
            high=50.0,
        ),
    ),
)
