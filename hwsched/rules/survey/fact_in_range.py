"""Rule: every number of the survey can be true."""

from collections.abc import Iterable
from math import isfinite

from hwsched.rules.impossible_facts import doubts
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Case, Fit


def _judge(case: Case, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    for doubt in doubts(case):
        if not isfinite(doubt.value):
            yield Verdict(f"{doubt.label} is no number: {doubt.value}.", about=doubt.fact)
            continue
        span = (
            f"from {doubt.low:g} to {doubt.high:g}" if doubt.low is not None and doubt.high is not None else "in range"
        )
        where = f" ({doubt.about})" if doubt.about else ""
        yield Verdict(
            f"{doubt.label}{where} is {doubt.value:g}; what can be true lies {span}. It is put aside as unknown.",
            values={"value": doubt.value},
            about=doubt.fact,
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
