"""Rule: it is said who may open, with what, and whether events are kept."""

from collections.abc import Iterable

from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if not (given.opening.access_policy or "").strip():
        yield Verdict("Nobody has said who may open here, with which credential, and whether events are kept.")


RULE = Rule(
    id="access-policy",
    title="Credentials and audit said",
    discipline="commissioning",
    severity="warning",
    basis="common practice: keys are programmed and events kept by what the owner has decided",
    cure="Ask the owner once for the building, and write his answer with it under Credentials and audit.",
    judge=_judge,
)
