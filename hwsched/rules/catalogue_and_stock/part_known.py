"""Rule: every part of the fit is in the catalogue."""

from collections.abc import Iterable

from hwsched.rules.reading import entry
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Case, Fit


def _judge(case: Case, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    for fitted in fit.parts:
        if entry(case, fitted) is None:
            yield Verdict(f"{fitted.part} is not in the catalogue.", about=fitted.part)
    held = {choice.part for choice in case.chosen if case.catalogue.get(choice.part) is None}
    for number in sorted(held - {fitted.part for fitted in fit.parts}):
        yield Verdict(f"{number}, chosen by hand, is not in the catalogue.", about=number)


RULE = Rule(
    id="part-known",
    title="Parts in the catalogue",
    discipline="catalogue-and-stock",
    severity="error",
    basis="common practice",
    cure="Import the part, or choose another.",
    judge=_judge,
)
