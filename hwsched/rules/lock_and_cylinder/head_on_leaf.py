"""Rule: head, collar and rose on the leaf."""

from collections.abc import Iterable

from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clashes import clashes
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return clashes(given, fit, RULE.id, limits["margin_mm"])


RULE = Rule(
    id="head-on-leaf",
    title="Head, collar and rose on the leaf",
    discipline="lock-and-cylinder",
    severity="error",
    basis="geometry; common practice",
    cure="Take a lock with a smaller head, collar or rose.",
    judge=_judge,
    slot="lock",
    limits=(
        Limit(
            "margin_mm",
            0.0,
            "Least distance of a head, collar or rose from the leaf's or stile's edge and from glass.",
            "common practice",
            unit="mm",
            low=0.0,
            high=50.0,
        ),
    ),
)
