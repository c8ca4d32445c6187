"""Rule: head, collar and rose clear of the frame's stop."""

from collections.abc import Iterable

from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clashes import clashes
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return clashes(given, fit, RULE.id, limits["clearance_mm"])


RULE = Rule(
    id="head-clear-of-stop",
    title="Head, collar and rose clear of the frame's stop",
    discipline="lock-and-cylinder",
    severity="error",
    basis="geometry of handing (SDI 111 chart, secondary copy); common practice",
    cure="Take a lock with a longer backset or a smaller head, collar or rose.",
    judge=_judge,
    slot="lock",
    limits=(
        Limit(
            "clearance_mm",
            0.0,
            "Least distance of a head, collar or rose from the band that the stop hides.",
            "common practice: what does not touch is free",
            unit="mm",
            low=0.0,
            high=50.0,
        ),
    ),
)
