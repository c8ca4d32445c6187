"""Rule: a supply is loaded to no more than a share of its rating, and never beyond its rating."""

from collections.abc import Iterable
from math import fsum

from hwsched.attributes.of_parts import OUTPUT_A, OUTPUT_V
from hwsched.rules.network.devices import amps
from hwsched.rules.network.own_circuit import devices_of_opening
from hwsched.rules.reading import supply_part, unit_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import short_a, unknown
from hwsched.values import Fit, OpeningInput
from hwsched.values.power import Device


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, supply = unit_part(given, fit), supply_part(given, fit)
    if fit.power != "supply" or given.supply_link is not None or unit is None or supply is None:
        return
    devices, problems = devices_of_opening(given, fit)
    if problems:
        yield unknown(tuple(need for problem in problems for need in problem.needs), supply.number)
        return
    rated, volts = supply.number_of(OUTPUT_A), supply.number_of(OUTPUT_V)
    if rated is None or volts is None:
        yield unknown((f"part {supply.number}.{'output_a' if rated is None else 'output_v'}",), supply.number)
        return
    held = fsum(max(amps(d, d.holding, volts), amps(d, d.peak, volts)) for d in devices)
    first = fsum(max(_first_a(d, volts), amps(d, d.holding, volts)) for d in devices)
    usable = rated * limits["share"]
    who = "The unit draws" if len(devices) == 1 else "All that is connected at the opening draws"
    if held > usable + 1e-9:
        yield Verdict(
            f"{who} {held:.3g} A; {limits['share']:.0%} of the supply's {rated:g} A is {usable:g} A, short by "
            f"{short_a(held - usable)} A.",
            values={"load_a": held, "usable_a": usable, "rated_a": rated},
            about=supply.number,
        )
    elif first > rated + 1e-9:
        yield Verdict(
            f"{who} {first:.3g} A in the first moment; the supply is rated {rated:g} A, short by "
            f"{short_a(first - rated)} A.",
            values={"load_a": first, "usable_a": rated, "rated_a": rated},
            about=supply.number,
        )


def _first_a(device: Device, volts: float) -> float:
    return amps(device, device.peak if device.inrush is None else device.inrush, volts)


RULE = Rule(
    id="supply-share",
    title="Share of the supply's rating",
    discipline="power",
    severity="error",
    basis="trade articles: no more than 75 to 80 % of the rating held; trade sizing guide: supply peak on the worst "
    "simultaneous inrush",
    cure="Take a larger supply.",
    judge=_judge,
    slot="power",
    limits=(
        Limit(
            "share", 0.8, "Share of the rating that is used.", "trade articles, 75 to 80 %", unit="", low=0.1, high=1.0
        ),
    ),
)
