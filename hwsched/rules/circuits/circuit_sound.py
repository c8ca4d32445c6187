"""Rule: the runs of a circuit are a tree from its supply, each with a conductor and a length."""

from collections.abc import Iterable

from hwsched.rules.network.circuit_problems import of_problem
from hwsched.rules.rule import SUPPLIES, Inputs, Limits, Rule, Verdict
from hwsched.values.power import SupplyResult


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[Verdict]:
    for circuit in result.circuits:
        for problem in circuit.problems:
            if problem.kind == "unsound":
                yield of_problem(problem, circuit, result.openings)


RULE = Rule(
    subject=SUPPLIES,
    id="circuit-sound",
    title="Runs of a circuit sound",
    discipline="power",
    severity="error",
    basis="circuit theory: without a tree from the supply nothing can be worked out",
    cure="Mend the run that is named: every node fed by one run, lengths above zero, conductors of the catalogue.",
    judge=_judge,
)
