"""Rule: every coil on a circuit has its suppressor, and the right one."""

from collections.abc import Iterable

from hwsched.rules.rule import SUPPLIES, Inputs, Limits, Rule, Verdict
from hwsched.values.power import SupplyResult


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[Verdict]:
    for circuit in result.circuits:
        for device in dict.fromkeys(circuit.devices):
            if device.suppression:
                yield Verdict(
                    f"{device.part} at {device.mark} has a coil. {device.suppression}",
                    about=device.part,
                    circuit_id=circuit.circuit.id,
                    opening_ids=(device.opening_id,),
                )


RULE = Rule(
    subject=SUPPLIES,
    id="coil-suppression",
    title="Suppression of coils",
    discipline="power",
    severity="note",
    basis="access-controller installation manual; general electronics references",
    cure="Fit what is named at the coil's terminals, unless the product has it inside.",
    judge=_judge,
)
