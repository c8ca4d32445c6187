"""What could not be worked out of a supply or a circuit, as a verdict: several rules of circuits say it alike."""

from hwsched.rules.rule import Verdict
from hwsched.rules.wording import to_complete
from hwsched.values.power import CircuitResult, Problem


def of_problem(problem: Problem, circuit: CircuitResult | None, all_openings: tuple[str, ...]) -> Verdict:
    """Turn a problem into a verdict: it concerns its opening, else all that hang there."""
    text = problem.message[:1].upper() + problem.message[1:]
    concerned = all_openings if circuit is None else circuit.openings
    return Verdict(
        f"Unknown: {problem.message}." if problem.needs else f"{text}.",
        to_complete(problem.needs),
        about=problem.about,
        needs=problem.needs,
        circuit_id="" if circuit is None else circuit.circuit.id,
        opening_ids=(problem.opening_id,) if problem.opening_id else concerned,
    )
