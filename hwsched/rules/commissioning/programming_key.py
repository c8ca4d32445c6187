"""Rule: there is a programming key with which the unit is commissioned."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import FOR_PART, FORM
from hwsched.rules.reading import unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit = unit_part(given, fit)
    if unit is None:
        return
    for part in given.catalogue.of_kind("credential"):
        if part.text_of(FORM) == "programming-key" and part.text_of(FOR_PART) in (None, "", unit.number):
            return
    yield Verdict("No programming key of the catalogue commissions this unit.", about=unit.number)


RULE = Rule(
    id="programming-key",
    title="Programming key for the unit",
    discipline="commissioning",
    severity="note",
    basis="common practice",
    cure="Add the programming key to the catalogue, or note how the unit is commissioned.",
    judge=_judge,
)
