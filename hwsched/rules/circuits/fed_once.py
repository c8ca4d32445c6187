"""Rule: an opening is on one run of one circuit."""

from collections import Counter
from collections.abc import Iterable

from hwsched.rules.rule import SUPPLIES, Inputs, Limits, Rule, Verdict
from hwsched.values.power import SupplyResult


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[Verdict]:
    counts = Counter(opening for circuit in result.circuits for opening in circuit.openings)
    for circuit in result.circuits:
        for opening, mark in zip(circuit.openings, circuit.marks, strict=True):
            # Two sources at one load would be joined through it, which needs a listing (NEC 725.124, secondary copy).
            if counts[opening] > 1:
                yield Verdict(
                    f"{mark} is on {counts[opening]} circuits of {result.supply.name}.",
                    about=mark,
                    circuit_id=circuit.circuit.id,
                    opening_ids=(opening,),
                )


RULE = Rule(
    subject=SUPPLIES,
    id="fed-once",
    title="Fed once",
    discipline="power",
    severity="error",
    basis="NEC 725.124, secondary copy: outputs of two sources are not joined unless listed for it",
    cure="Take one of the runs away.",
    judge=_judge,
)
