"""Rule: what cautions depend on is known before a packet is issued."""

from collections.abc import Iterable

from hwsched.rules.reading import leafless
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    facts = ["accessible", "egress"]
    if not leafless(given) and given.opening.form not in ("cabinet", "gate"):
        facts += ["stair", "hand"]
    needs = [f"opening.{n}" for n in facts if getattr(given.opening, n) is None]
    if needs:
        yield unknown(tuple(needs), "issue")


RULE = Rule(
    id="known-before-issue",
    title="Known before a packet is issued",
    discipline="survey",
    severity="error",
    basis="common practice: cautions follow from egress, stair, reach and hand",
    cure="Ask or look; issue no packet before.",
    judge=_judge,
)
