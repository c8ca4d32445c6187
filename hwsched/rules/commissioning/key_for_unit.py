"""Rule: there is a key or credential for the unit."""

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
        if part.text_of(FORM) != "programming-key" and part.text_of(FOR_PART) in (None, "", unit.number):
            return
    yield Verdict("No key, card or fob of the catalogue is made for this unit.", about=unit.number)


RULE = Rule(
    id="key-for-unit",
    title="Key or credential for the unit",
    discipline="commissioning",
    severity="warning",
    basis="common practice: a key and its unit are programmed before work starts",
    cure="Add the key, card or fob to the catalogue.",
    judge=_judge,
)
