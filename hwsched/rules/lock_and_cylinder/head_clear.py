"""Rule: head, collar and rose clear of what stands on the face."""

from collections.abc import Iterable

from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clashes import clashes
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return clashes(given, fit, RULE.id, limits["clearance_mm"])


RULE = Rule(
    id="head-clear",
    title="Head, collar, rose or gate lock clear of what stands on the face",
    discipline="lock-and-cylinder",
    severity="error",
    basis="geometry; common practice",
    cure="Move or change what stands there, or take a lock with a smaller head, collar or rose.",
    judge=_judge,
    slot="lock",
    limits=(
        Limit(
            "clearance_mm",
            0.0,
            "Least distance of a head, collar or rose from an item that stays.",
            "common practice: what does not touch is free",
            unit="mm",
            low=0.0,
            high=50.0,
        ),
    ),
)
