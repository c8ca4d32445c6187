"""Rule: holes, bores and pockets stay clear of lites and louvres, on the face and inside the leaf."""

from collections.abc import Iterable

from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clashes import clashes
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return clashes(given, fit, RULE.id, limits["clearance_mm"])


RULE = Rule(
    id="hole-clear-of-glass",
    title="Holes clear of lites and louvres",
    discipline="holes",
    severity="error",
    basis="geometry; the least distance is common practice",
    cure="Take another place for the unit.",
    judge=_judge,
    slot="unit",
    limits=(
        Limit(
            "clearance_mm",
            12.7,
            "Least distance of a hole from a lite or louvre.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
