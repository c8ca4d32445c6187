"""Rule: what is in the box of each part is in the catalogue."""

from collections.abc import Iterable

from hwsched.rules.reading import entry
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Case, Fit


def _judge(case: Case, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    for fitted in fit.parts:
        part = entry(case, fitted)
        for number, _ in part.kit if part is not None else ():
            if case.catalogue.get(number) is None:
                yield Verdict(f"The box of {fitted.part} holds {number}, which is not in the catalogue.", about=number)


RULE = Rule(
    id="kit-known",
    title="Kit contents in the catalogue",
    discipline="catalogue-and-stock",
    severity="warning",
    basis="common practice",
    cure="Add the contained part to the catalogue, or correct the kit's contents.",
    judge=_judge,
)
