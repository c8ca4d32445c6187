"""Rule: a supply is loaded to no more than a share of its rating."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import OUTPUT_A
from hwsched.rules.reading import drawn_a, on_supply, supply_part, unit_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, supply = unit_part(given, fit), supply_part(given, fit)
    if fit.power != "supply" or given.supply_link is not None or unit is None or supply is None:
        return
    draws, rated = drawn_a(given, fit), supply.number_of(OUTPUT_A)
    if draws is None or rated is None:
        fact = f"{unit.number}.supply_a" if draws is None else f"{supply.number}.output_a"
        yield unknown((f"part {fact}",), supply.number)
        return
    usable = rated * limits["share"]
    if draws > usable + 1e-9:
        who = "The unit draws" if len(on_supply(given, fit)) == 1 else "The opening's units draw"
        yield Verdict(
            f"{who} {draws:g} A; {limits['share']:.0%} of the supply's {rated:g} A is {usable:g} A, short by "
            f"{draws - usable:.3g} A.",
            values={"load_a": draws, "usable_a": usable, "rated_a": rated},
            about=supply.number,
        )


RULE = Rule(
    id="supply-share",
    title="Share of the supply's rating",
    discipline="power",
    severity="error",
    basis="trade articles: no more than 75 to 80 % of the rating",
    cure="Take a larger supply.",
    judge=_judge,
    slot="power",
    limits=(
        Limit(
            "share", 0.8, "Share of the rating that is used.", "trade articles, 75 to 80 %", unit="", low=0.1, high=1.0
        ),
    ),
)
