"""Rule: something feeds the unit, in the way that it takes."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import CELL, SUPPLY_HIGH_V, SUPPLY_LOW_V
from hwsched.rules.reading import unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit = unit_part(given, fit)
    if unit is None:
        return
    if fit.power == "none":
        yield Verdict("Nothing feeds the unit.", about=unit.number)
    elif fit.power == "battery" and not unit.text_of(CELL):
        yield Verdict("The unit takes no cells and needs a supply.", about=unit.number)
    elif fit.power == "supply" and (unit.number_of(SUPPLY_LOW_V) is None or unit.number_of(SUPPLY_HIGH_V) is None):
        yield Verdict("The unit is not declared to take a remote supply.", about=unit.number)


RULE = Rule(
    id="unit-fed",
    title="Unit fed in the way that it takes",
    discipline="power",
    severity="error",
    basis="the maker's declaration in the catalogue",
    cure="Take a unit for the source that the opening has, or the source that the unit takes.",
    judge=_judge,
    slot="power",
)
