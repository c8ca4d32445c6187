"""Rule: the loads of constant power on a circuit have a solution."""

from collections.abc import Iterable

from hwsched.rules.rule import SUPPLIES, Inputs, Limits, Rule, Verdict
from hwsched.values.power import SupplyResult


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[Verdict]:
    for circuit in result.circuits:
        for state, why in circuit.collapsed.items():
            said = state.replace("-", " ")
            # A collapsed circuit has no voltages, so that the rules on voltage would pass it in silence.
            yield Verdict(
                f"Circuit {circuit.circuit.name} collapses in the state {said}: its constant-power loads draw more the "
                "lower the voltage, and no voltage satisfies them.",
                values={"source_v": circuit.source_v[state]},
                about=why and f"circuit {circuit.circuit.name}",
                circuit_id=circuit.circuit.id,
                opening_ids=circuit.openings,
            )


RULE = Rule(
    subject=SUPPLIES,
    id="circuit-collapse",
    title="Voltage collapse",
    discipline="power",
    severity="error",
    basis="circuit theory: constant-power loads beyond what a resistance can carry have no solution",
    cure="Thicker or shorter runs, fewer loads on the circuit, or a higher supply voltage.",
    judge=_judge,
)
