"""Rule: all that decides the voltages of a circuit is known."""

from collections.abc import Iterable

from hwsched.rules.network.circuit_problems import of_problem
from hwsched.rules.rule import SUPPLIES, Inputs, Limits, Rule, Verdict
from hwsched.values.power import SupplyResult


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[Verdict]:
    for problem in result.problems:
        if problem.kind == "unknown":
            yield of_problem(problem, None, result.openings)
    for circuit in result.circuits:
        for problem in circuit.problems:
            if problem.kind == "unknown":
                yield of_problem(problem, circuit, result.openings)


RULE = Rule(
    subject=SUPPLIES,
    id="circuit-known",
    title="Facts of a circuit known",
    discipline="power",
    severity="error",
    basis="common practice: a voltage that was not worked out is not proved",
    cure="Fill in what is named.",
    judge=_judge,
)
