"""Rule: the supply is a power-limited (Class 2) source."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import CLASS_2, OUTPUT_A, OUTPUT_V
from hwsched.rules.reading import supply_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    supply = supply_part(given, fit)
    if fit.power != "supply" or supply is None:
        return
    marked = supply.flag_of(CLASS_2)
    volts, amps = supply.number_of(OUTPUT_V), supply.number_of(OUTPUT_A)
    if marked is None:
        yield unknown((f"part {supply.number}.class_2",), supply.number)
    elif not marked:
        yield Verdict("The supply is not declared as Class 2; its wiring is then other work.", about=supply.number)
    if marked and volts is not None and amps is not None and volts * amps > limits["power_va"] + 1e-9:
        yield Verdict(
            f"{volts:g} V and {amps:g} A are {volts * amps:g} VA; a Class 2 source up to 30 V has "
            f"{limits['power_va']:g} VA at most.",
            values={"power_va": volts * amps, "allowed_va": limits["power_va"]},
            about=supply.number,
        )


RULE = Rule(
    id="supply-class-2",
    title="Supply is a Class 2 source",
    discipline="power",
    severity="warning",
    basis="NEC Article 725 (2023: 725.60, 722), Chapter 9 Tables 11(A) and 11(B), commentary",
    cure="Take a supply marked as a Class 2 source.",
    judge=_judge,
    limits=(
        Limit(
            "power_va",
            100.0,
            "Greatest power of a Class 2 source up to 30 V.",
            "NEC Ch. 9 Table 11, commentary",
            unit="VA",
            low=1.0,
            high=1000.0,
        ),
    ),
    defers=True,
)
