"""Rule: all that decides the voltages of a circuit is known."""

from collections.abc import Iterable

from hwsched.rules.circuit_rule import Cases, CircuitRule, CircuitVerdict, of_problem
from hwsched.rules.rule import Limits
from hwsched.values.power import WorkedSupply


def _judge(worked: WorkedSupply, cases: Cases, limits: Limits) -> Iterable[CircuitVerdict]:
    for problem in worked.problems:
        if problem.kind == "unknown":
            yield of_problem(problem, None, worked.openings)
    for circuit in worked.circuits:
        for problem in circuit.problems:
            if problem.kind == "unknown":
                yield of_problem(problem, circuit, worked.openings)


RULE = CircuitRule(
    id="circuit-known",
    title="Facts of a circuit known",
    discipline="power",
    severity="error",
    basis="common practice: a voltage that was not worked out is not proved",
    cure="Fill in what is named.",
    judge=_judge,
)
