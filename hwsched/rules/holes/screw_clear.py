"""Rule: screws clear of lock, spindles and bolts."""

from collections.abc import Iterable

from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clashes import clashes
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return clashes(given, fit, RULE.id, limits["gap_mm"])


RULE = Rule(
    id="screw-clear",
    title="Screws clear of lock, spindles and bolts",
    discipline="holes",
    severity="error",
    basis="geometry: no screw is longer than what stands before the lock's pocket (common practice)",
    cure="Take a shorter screw of that size into the catalogue, or another place for the unit.",
    judge=_judge,
    slot="unit",
    limits=(
        Limit(
            "gap_mm",
            0.0,
            "Least distance of a screw from what is in the leaf.",
            "common practice: what does not touch is free",
            unit="mm",
            low=0.0,
            high=25.0,
        ),
    ),
)
