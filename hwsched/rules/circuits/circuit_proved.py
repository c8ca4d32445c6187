"""Rule: of every opening on a circuit it is proved that its loads find their voltages, whatever is still unknown."""

from collections.abc import Iterable

from hwsched.rules.rule import SUPPLIES, Inputs, Limits, Rule, Verdict
from hwsched.values.power import SupplyResult


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[Verdict]:
    for circuit in result.circuits:
        for proof in circuit.unproved:
            # What is missing is asked for by the rule of what is known; that the proof is lacking is certain, and holds
            # a packet back as a voltage that is too low does.
            why = f"needs {', '.join(proof.missing)}" if proof.missing else proof.why
            yield Verdict(
                f"Not proved: whether every load finds its voltage on circuit {circuit.circuit.name} of "
                f"{result.supply.name}; {why}.",
                f"Complete: {'; '.join(proof.missing)}." if proof.missing else "",
                about=f"circuit {circuit.circuit.name}",
                circuit_id=circuit.circuit.id,
                opening_ids=(proof.opening_id,),
            )


RULE = Rule(
    subject=SUPPLIES,
    id="circuit-proved",
    title="Voltages of an opening proved",
    discipline="power",
    severity="error",
    basis="common practice: what is unknown is reckoned at the least and at the most that catalogue and survey allow; "
    "what is in order at both is proved",
    cure="Fill in what is named, or lay the circuit with more room.",
    judge=_judge,
)
