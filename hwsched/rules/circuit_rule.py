"""What a rule of supplies and circuits is. The rules themselves stand one a file in `hwsched.rules.circuits`.

Like a rule of an opening it has title, basis, limits and cure; it judges a supply with its circuits as worked out.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from hwsched.rules.rule import Limit, Limits, Verdict
from hwsched.values import Discipline, OpeningInput, Severity
from hwsched.values.power import CircuitResult, Problem, SupplyResult

Inputs = Mapping[str, OpeningInput]
"""The openings that are fed, by identifier."""


@dataclass(frozen=True, slots=True)
class CircuitVerdict(Verdict):
    """One statement on a supply or a circuit."""

    circuit_id: str = ""
    """Empty: the whole supply."""
    opening_ids: tuple[str, ...] = ()
    """Openings that it concerns: it stands among their findings."""


CircuitJudge = Callable[[SupplyResult, Inputs, Limits], Iterable[CircuitVerdict]]


@dataclass(frozen=True, slots=True)
class CircuitRule:
    """One rule of supplies and circuits."""

    id: str
    title: str
    discipline: Discipline
    severity: Severity
    basis: str
    cure: str
    judge: CircuitJudge
    limits: tuple[Limit, ...] = ()
    defers: bool = False
    declared: Mapping[str, float] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "declared", MappingProxyType({limit.name: limit.value for limit in self.limits}))


def of_problem(problem: Problem, circuit: CircuitResult | None, all_openings: tuple[str, ...]) -> CircuitVerdict:
    """Turn a problem into a verdict: it concerns its opening, else all that hang there."""
    text = problem.message[:1].upper() + problem.message[1:]
    concerned = all_openings if circuit is None else circuit.openings
    return CircuitVerdict(
        f"Unknown: {problem.message}." if problem.needs else f"{text}.",
        f"Complete: {'; '.join(problem.needs)}." if problem.needs else "",
        about=problem.about,
        needs=problem.needs,
        circuit_id="" if circuit is None else circuit.circuit.id,
        opening_ids=(problem.opening_id,) if problem.opening_id else concerned,
    )
