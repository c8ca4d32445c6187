"""Rule: an opening hangs on one run of one circuit."""

from collections import Counter
from collections.abc import Iterable

from hwsched.rules.circuit_rule import CircuitRule, CircuitVerdict, Inputs
from hwsched.rules.rule import Limits
from hwsched.values.power import SupplyResult


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[CircuitVerdict]:
    counts = Counter(opening for circuit in result.circuits for opening in circuit.openings)
    for circuit in result.circuits:
        for opening, mark in zip(circuit.openings, circuit.marks, strict=True):
            if counts[opening] > 1:
                yield CircuitVerdict(
                    f"{mark} hangs on {counts[opening]} circuits of {result.supply.name}.",
                    about=mark,
                    circuit_id=circuit.circuit.id,
                    opening_ids=(opening,),
                )


RULE = CircuitRule(
    id="fed-once",
    title="Fed once",
    discipline="power",
    severity="error",
    basis="NEC 725.124, secondary copy: outputs of two sources are not joined unless listed for it",
    cure="Take one of the runs away.",
    judge=_judge,
)
