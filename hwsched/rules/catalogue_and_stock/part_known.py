"""Rule: every part of the fit is in the catalogue."""

from collections.abc import Iterable

from hwsched.rules.reading import entry
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    for fit_part in fit.parts:
        if entry(given, fit_part) is None:
            yield Verdict(f"{fit_part.part} is not in the catalogue.", about=fit_part.part)
    held = {choice.part for choice in given.chosen if given.catalogue.get(choice.part) is None}
    for number in sorted(held - {fit_part.part for fit_part in fit.parts}):
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
