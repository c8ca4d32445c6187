"""Rule: what was taken by common practice in working out a supply is said."""

from collections.abc import Iterable
from typing import Final

from hwsched.rules.rule import SUPPLIES, Inputs, Limits, Rule, Verdict
from hwsched.rules.rule_titles import title_of
from hwsched.values.power import SupplyResult

_VOLTAGE: Final = "circuit-voltage"


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[Verdict]:
    taken = list(result.assumed)
    for circuit in result.circuits:
        name = circuit.circuit.name
        if circuit.circuit.temperature_c is None:
            taken.append(f"conductors of {name} at the temperature of the rule '{title_of(_VOLTAGE)}'")
        if circuit.circuit.at_once is None:
            taken.append(f"operations at one time on {name} as the rule '{title_of(_VOLTAGE)}' has them")
        taken += circuit.assumed
        taken += [f"{device.part}: {each}" for device in circuit.devices for each in device.assumed]
    if taken:
        yield Verdict(
            f"Taken by common practice, since nothing is stated: {'; '.join(dict.fromkeys(taken))}.",
            about=result.supply.name,
        )


RULE = Rule(
    subject=SUPPLIES,
    id="circuit-assumed",
    title="What was taken by common practice",
    discipline="power",
    severity="note",
    basis="common practice",
    cure="State it where it is known: on the supply, on the circuit, or in the catalogue.",
    judge=_judge,
)
