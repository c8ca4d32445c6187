"""Rule: a pair has two leaves, anything else one."""

from collections.abc import Iterable

from hwsched.rules.reading import leafless
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    form = given.opening.form
    if form is None or leafless(given):
        return
    wanted = 2 if form == "pair" else 1
    count = len(given.leaves)
    if count != wanted:
        yield Verdict(
            f"The opening is a {form} and has {count} leaf/leaves in the survey; {wanted} belong to it.",
            values={"leaves": float(count), "needed_leaves": float(wanted)},
            about="leaf",
        )
    elif form == "pair" and {leaf.position for leaf in given.leaves} != {"active", "inactive"}:
        yield Verdict("Of a pair one leaf is the active, the other the inactive one.", about="leaf")


RULE = Rule(
    id="leaf-count",
    title="Leaves of the opening",
    discipline="survey",
    severity="warning",
    basis="trade words: a pair is an active and an inactive leaf",
    cure="Add or correct the leaves in the survey.",
    judge=_judge,
)
