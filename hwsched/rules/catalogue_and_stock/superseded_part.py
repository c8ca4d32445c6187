"""Rule: no part of the fit has a successor."""

from collections.abc import Iterable

from hwsched.rules.reading import entry
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    for fit_part in fit.parts:
        part = entry(given, fit_part)
        if part is not None and part.superseded_by:
            successor = given.catalogue.get(part.superseded_by)
            known = "" if successor is not None else ", which is not in the catalogue"
            yield Verdict(f"{part.number} is superseded by {part.superseded_by}{known}.", about=part.number)


RULE = Rule(
    id="superseded-part",
    title="Superseded part",
    discipline="catalogue-and-stock",
    severity="warning",
    basis="the catalogue",
    cure="Fit the opening again with the successor, or make sure that the old part is still to be had.",
    judge=_judge,
)
