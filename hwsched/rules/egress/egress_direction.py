"""Rule: of an opening on an egress path it is known from which side people leave."""

from collections.abc import Iterable

from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.ways_out import on_exit
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    toward = given.opening.egress_toward
    if given.opening.form == "cabinet":
        return
    if not on_exit(given):
        if given.opening.egress == "none" and toward not in (None, "none"):
            yield Verdict(
                "The opening is said to be not on an egress path, and yet people are said to leave through it.",
                about="egress",
            )
        return
    if toward is None:
        yield unknown(("opening.egress_toward",), "egress")
    elif toward == "none":
        yield Verdict(
            "The opening is said to be on an egress path, and yet nobody is said to leave through it.", about="egress"
        )


RULE = Rule(
    id="egress-direction",
    title="Direction of egress known",
    discipline="egress",
    severity="error",
    basis="IBC 1010.2 (2021), text: openable from the egress side; which side that is stands in no label",
    cure="Look at the exit signs and the egress plan, and say towards which side people leave.",
    judge=_judge,
    defers=True,
)
