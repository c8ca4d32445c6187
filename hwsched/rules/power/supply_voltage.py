"""Rule: the supply is regulated direct current of a voltage that the unit takes."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import OUTPUT_V, REGULATED, SUPPLY_HIGH_V, SUPPLY_LOW_V
from hwsched.rules.reading import supply_part, unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, supply = unit_part(given, fit), supply_part(given, fit)
    if fit.power != "supply" or unit is None:
        return
    if supply is None and given.supply_link is not None:
        # The rules of circuits say that its supply is not chosen yet.
        return
    if supply is None:
        yield Verdict("No supply of the catalogue feeds this unit.", about=unit.number)
        return
    low, high, volts = unit.number_of(SUPPLY_LOW_V), unit.number_of(SUPPLY_HIGH_V), supply.number_of(OUTPUT_V)
    if low is None or high is None or volts is None:
        fact = f"{supply.number}.output_v" if volts is None else f"{unit.number}.supply_low_v"
        yield unknown((f"part {fact}",), supply.number)
    elif not low <= volts <= high:
        yield Verdict(
            f"The supply gives {volts:g} V; the unit takes {low:g} to {high:g} V.",
            values={"supply_v": volts, "low_v": low, "high_v": high},
            about=supply.number,
        )
    regulated = supply.flag_of(REGULATED)
    if regulated is None:
        yield unknown((f"part {supply.number}.regulated",), supply.number)
    elif not regulated:
        yield Verdict("The supply is not regulated.", about=supply.number)


RULE = Rule(
    id="supply-voltage",
    title="Supply regulated and of the unit's voltage",
    discipline="power",
    severity="error",
    basis="common practice: remote supply 12 V DC regulated; the unit's declaration decides",
    cure="Take a regulated direct-current supply of the unit's voltage.",
    judge=_judge,
    slot="power",
)
