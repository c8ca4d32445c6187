"""Rule: what is in the box of each part is in the catalogue."""

from collections.abc import Iterable

from hwsched.rules.reading import entry
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    for fit_part in fit.parts:
        part = entry(given, fit_part)
        for number, _ in part.kit if part is not None else ():
            if given.catalogue.get(number) is None:
                yield Verdict(
                    f"The box of {fit_part.part} holds {number}, which is not in the catalogue.", about=number
                )


RULE = Rule(
    id="kit-known",
    title="Kit contents in the catalogue",
    discipline="catalogue-and-stock",
    severity="warning",
    basis="common practice",
    cure="Add the contained part to the catalogue, or correct the kit's contents.",
    judge=_judge,
)
