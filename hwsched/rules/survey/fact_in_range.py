"""Rule: every number of the survey can be true."""

from collections.abc import Iterable
from math import isfinite

from hwsched.rules.impossible_facts import impossible_facts
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    for impossible in impossible_facts(given):
        if not isfinite(impossible.value):
            yield Verdict(f"{impossible.label} is no number: {impossible.value}.", about=impossible.fact)
            continue
        span = (
            f"from {impossible.low:g} to {impossible.high:g}"
            if impossible.low is not None and impossible.high is not None
            else "in range"
        )
        where = f" ({impossible.about})" if impossible.about else ""
        yield Verdict(
            f"{impossible.label}{where} is {impossible.value:g}; what can be true lies {span}. "
            "It is put aside as unknown.",
            values={"value": impossible.value},
            about=impossible.fact,
        )


RULE = Rule(
    id="fact-in-range",
    title="Numbers that can be true",
    discipline="survey",
    severity="error",
    basis="limits declared with the survey's facts",
    cure="Measure again.",
    judge=_judge,
    sees_all=True,
)
