"""Rule: of every opening on a circuit it is proved that its loads find their voltages, whatever is still unknown."""

from collections.abc import Iterable

from hwsched.rules.rule import SUPPLIES, Inputs, Limits, Rule, Verdict
from hwsched.rules.wording import to_complete
from hwsched.values.power import SupplyResult


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[Verdict]:
    for circuit in result.circuits:
        for proof in circuit.unproved:
            what = f"whether every load finds its voltage on circuit {circuit.circuit.name} of {result.supply.name}"
            yield Verdict(
                f"Unknown: {what}." if proof.missing else f"Not proved: {what}; {proof.why}.",
                to_complete(proof.missing),
                about=f"circuit {circuit.circuit.name}",
                # What keeps it from being proved has its own finding; the packet is held whatever this one is.
                severity="warning",
                needs=proof.missing,
                circuit_id=circuit.circuit.id,
                opening_ids=(proof.opening_id,),
            )


RULE = Rule(
    subject=SUPPLIES,
    id="circuit-proved",
    title="Voltages of an opening proved",
    discipline="power",
    severity="warning",
    basis="common practice: what is unknown is reckoned at the least and at the most that catalogue and survey allow; "
    "what is in order at both is proved",
    cure="Fill in what is named, or lay the circuit with more room.",
    judge=_judge,
)
