"""Rule: the pocket of an in-edge unit stays off the fronts of the locks in the edge."""

from collections.abc import Iterable

from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.solid.clashes import clashes
from hwsched.rules.solid.edge import FRONT_LIMITS
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return clashes(given, fit, RULE.id, limits["wall_mm"])


RULE = Rule(
    id="front-clear",
    title="Pocket clear of the lock's front",
    discipline="holes",
    severity="error",
    basis="geometry; the size of a front that nobody measured is common practice, unverified",
    cure="Take another place for the unit; or measure the lock's front, and survey its height.",
    judge=_judge,
    slot="unit",
    limits=FRONT_LIMITS,
)
