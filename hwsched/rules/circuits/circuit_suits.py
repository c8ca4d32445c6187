"""Rule: a load is on a supply of its voltage and its kind of current."""

from collections.abc import Iterable

from hwsched.rules.network.circuit_problems import of_problem
from hwsched.rules.rule import SUPPLIES, Inputs, Limits, Rule, Verdict
from hwsched.values.power import SupplyResult


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[Verdict]:
    for problem in result.problems:
        if problem.kind == "mismatch":
            yield of_problem(problem, None, result.openings)
    for circuit in result.circuits:
        for problem in circuit.problems:
            if problem.kind == "mismatch":
                yield of_problem(problem, circuit, result.openings)


RULE = Rule(
    subject=SUPPLIES,
    id="circuit-suits",
    title="Supply suits its loads",
    discipline="power",
    severity="error",
    basis="the makers' declarations; a default window of 85 to 110 % of nominal is NFPA 72 (secondary copy)",
    cure="Put the load on a supply of its voltage and its kind of current.",
    judge=_judge,
)
