"""Rule: a supply that is declared as power-limited keeps the limits of its class."""

from collections.abc import Iterable
from typing import Final

from hwsched.calc.power.power_limits import class_2_limit, excesses, limited_power_source_limit
from hwsched.rules.rule import SUPPLIES, Inputs, Limits, Rule, Verdict
from hwsched.values.power import SupplyResult

_SAID: Final = {
    "nameplate-a": "The rated current",
    "nameplate-va": "The rated power",
    "output-a": "The current under load",
    "output-va": "The power under load",
}


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[Verdict]:
    volts, amps = result.output_v, result.rated_a
    if volts is None or amps is None:
        return
    for name, limit in (
        ("Class 2 supply", class_2_limit(volts, result.limiting)),
        ("limited power source", limited_power_source_limit(volts, result.limiting)),
    ):
        if result.class_2 is False and name.startswith("Class 2"):
            # It is not declared as one: that is said of every opening that hangs there.
            continue
        if limit is None:
            yield Verdict(f"{volts:g} V is above what a {name} can have.", about=result.supply.part or "")
            continue
        # Under load it gives what it is rated for, at the least.
        for excess in excesses(limit, volts, amps, most_a=amps):
            what = "VA" if excess.quantity.endswith("va") else "A"
            yield Verdict(
                f"{_SAID[excess.quantity]} is {excess.value:.4g} {what}; a {name} of {volts:g} V has "
                f"{excess.limit:.4g} {what} at most.",
                values={"value": excess.value, "limit": excess.limit},
                about=result.supply.part or "",
            )


RULE = Rule(
    subject=SUPPLIES,
    id="supply-power-limited",
    title="Supply within the power-limited classes",
    discipline="power",
    severity="note",
    basis="NEC Chapter 9 Tables 11(A) and 11(B) (in part from memory); IEC 60950-1 Tables 2B and 2C",
    cure="Read the supply's own marking; take one marked as Class 2 or limited power source where the wiring needs it.",
    judge=_judge,
    defers=True,
)
