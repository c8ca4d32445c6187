"""A plan of a building's supplies, wires and runs, or of one circuit's: asked, proved in every state, and shown.

What is pinned stays as it is laid. How a plan is made stands in `building_planning`; accepting one in
`planning_accepting`.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from hwsched.calc.parts.cost import Cost, combined
from hwsched.calc.power.planning.plan import DEFAULT_TIME_S, plan_power
from hwsched.calc.power.planning.question import (
    NoPlanError,
    Plan,
    Question,
)
from hwsched.calc.solver import Cancelled, Progress
from hwsched.model.errors import ValueRefusedError
from hwsched.model.power_queries import level_heights, read_power
from hwsched.model.project import Project
from hwsched.model.queries import by_opening, latest_change, read_fits, read_inputs, read_settings, read_terms
from hwsched.operations.opening.fits_within import FitMemory
from hwsched.operations.power.building_planning import Asked, BuildingPlanning, Solve
from hwsched.operations.power.known_buildings import no_supply
from hwsched.operations.power.planned_runs import Laying, told_runs
from hwsched.operations.power.power_results import read_power_result
from hwsched.operations.power.supply_siting import (
    demands_of,
    only_supplies,
    others_of,
)
from hwsched.rules.network.circuit_laying import SUPPLY
from hwsched.telling.natural import natural
from hwsched.values import Catalogue
from hwsched.values.power import PowerFacts, PowerResult
from hwsched.values.terms import CostTerms
from hwsched.wiring.costing import price_supplies


@dataclass(frozen=True, slots=True)
class PowerProposal:
    """A plan as it would be laid, before it is accepted."""

    building: str
    circuit: str
    """SUPPLY/CIRCUIT where only that is planned; else empty."""
    aim: str
    plan: Plan
    """By identifiers of supplies and openings."""
    laying: Laying
    names: Mapping[str, str]
    """Of supplies, and marks of openings."""
    kept: tuple[str, ...]
    """Marks of openings that stay as they are laid."""
    left_out: tuple[str, ...]
    """Why openings, supplies and wires were left out, a sentence each."""
    torn_up: tuple[str, ...]
    """Runs that are laid and would be taken up, a sentence each."""
    assumed: tuple[str, ...]
    before: PowerResult
    after: PowerResult
    before_cost: Cost
    """Of the supplies that it touches, with their batteries, wire in whole reels and the work."""
    after_cost: Cost
    already: bool
    """Whether what is laid is as good as the plan, so that nothing would be changed."""
    basis: "PlanBasis" = field(compare=False, repr=False)


@dataclass(slots=True)
class PlanBasis:
    """What was asked, what a proposal stands on, and what was worked out for it."""

    state: int
    asked: "Asked"
    posed: list[tuple[Question, Plan | NoPlanError]] = field(default_factory=list)
    fits: FitMemory = field(default_factory=FitMemory)


def propose_plan(
    project: Project,
    building: str = "",
    *,
    circuit_id: str | None = None,
    aim: str = "least-cost",
    wire: str | None = None,
    keep: Sequence[str] = (),
    gap: float | None = None,
    time_limit_s: float = DEFAULT_TIME_S,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> PowerProposal:
    """Plan supplies, wires and runs of a building, or of one circuit with everything else as it is.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    building : str
        Its name; with a circuit it is left out.
    circuit_id : str, optional
        Only the openings of this circuit, on its own supply where that does.
    aim : str
        least-cost, fewest-supplies, least-wire, most-margin.
    wire : str, optional
        Catalogue number of the only wire that may be used.
    keep : sequence of str
        Openings that stay as they are laid; those pinned to the supply on which they hang do so in any case.
    gap, time_limit_s, progress, cancelled
        As `hwsched.calc.power.planning.plan.plan_power`.

    Returns
    -------
    PowerProposal
        Proved in every state: no opening on a supply that it touches is low.

    Raises
    ------
    ValueRefusedError
        Names what is missing, the openings for which there is no plan, or what remains low.
    """
    asked = Asked(building, circuit_id, aim, wire, tuple(keep))
    basis = PlanBasis(0, asked)

    def solve(question: Question) -> Plan:
        try:
            found = plan_power(
                question, aim, gap=gap, time_limit_s=time_limit_s, progress=progress, cancelled=cancelled
            )
        except NoPlanError as error:
            basis.posed.append((question, error))
            raise
        basis.posed.append((question, found))
        return found

    return planned_by(project, basis, solve)


def planned_by(project: Project, basis: PlanBasis, solve: Solve) -> PowerProposal:
    """Read a building, have it planned, and prove what would stand."""
    asked = basis.asked
    with project.reading() as connection:
        catalogue = project.catalogue.read(connection)
        facts, heights, settings = read_power(connection), level_heights(connection), read_settings(connection)
        terms = read_terms(connection)
        building = _building_of(facts, asked)
        state = latest_change(connection)
        every = list(by_opening(read_inputs(connection, None, catalogue)))
        openings = [inputs for inputs in every if inputs[0].opening.building == building]
        ids = [inputs[0].opening.id for inputs in openings]
        fits = read_fits(connection, ids)
        before = read_power_result(connection, catalogue, facts, {}, None)
        here = [supply for supply in facts.supplies if supply.building == building]
        if not here:
            raise no_supply(connection, building)
        others = others_of(connection, facts, {s.id for s in here}, set(ids), catalogue)
    connected, demanded, left_out, hanging = demands_of(openings, fits, facts, basis.fits, asked.circuit_id)
    marks = {inputs[0].opening.id: inputs[0].opening.mark for inputs in every}
    planned = _planned(facts, asked, list(demanded))
    if not planned:
        why = "; ".join(left_out[:3]) or "nothing that is not kept as it is laid is to be supplied"
        raise ValueRefusedError(
            "building", f"{(asked.circuit_id and 'the circuit') or building} has nothing to plan: {why}"
        )
    work = BuildingPlanning(
        facts, here, catalogue, settings, terms, heights, {o: connected[o] for o in planned}, before, asked, marks,
        {**others, **hanging, **connected}, left_out, basis.fits,
    )  # fmt: skip
    plan, laying, after = work.proved(solve)
    touched = work.touched(laying)
    already = work.as_good(plan, laying)
    if already:
        laying, after = Laying({}, laying.used, (), (), ()), before
    kept = sorted((marks[o] for o in hanging if o not in planned), key=natural)
    names = {supply.id: supply.name for supply in facts.supplies} | marks
    circuit = "" if asked.circuit_id is None else work.circuit_name(asked.circuit_id)
    stands, stood = only_supplies(after, touched), only_supplies(before, touched)
    return PowerProposal(
        building, circuit, asked.aim, plan, laying, names, tuple(kept), tuple(work.left_out),
        told_runs(facts, laying.taken_up, marks, settings.length_style), tuple(work.assumed), stood, stands,
        _cost(stood, catalogue, terms), _cost(stands, catalogue, terms), already, replace(basis, state=state),
    )  # fmt: skip


def _cost(work: PowerResult, catalogue: Catalogue, terms: CostTerms) -> Cost:
    return combined(price_supplies(work.supplies, catalogue, terms).values())


def _building_of(facts: PowerFacts, asked: Asked) -> str:
    if asked.circuit_id is None:
        return asked.building
    circuit = next((each for each in facts.circuits if each.id == asked.circuit_id), None)
    if circuit is None:
        raise ValueRefusedError("circuit", "this circuit is not in the project any more")
    return next((each.building or "" for each in facts.supplies if each.id == circuit.supply_id), "")


def _planned(facts: PowerFacts, asked: Asked, demanded: Sequence[str]) -> list[str]:
    """Return the openings that are planned anew: those asked for, less what stays and what lies on the way to it."""
    on = facts.connected()
    stays = {o for o in asked.keep if o in on}
    stays |= {
        r.opening_id
        for r in facts.routes
        if r.pinned and r.opening_id in on and on[r.opening_id].supply_id == r.supply_id
    }
    if asked.circuit_id is not None:
        stays |= {o for o, circuit in on.items() if circuit.id != asked.circuit_id}
    # What hangs already and cannot be planned stays as it is, too.
    stays |= {o for o in on if o not in demanded}
    begin = {(run.circuit_id, run.to_node): run.from_node for run in facts.runs}
    for opening in list(stays):
        node, seen = opening, set[str]()
        while node != SUPPLY and node not in seen:
            seen.add(node)
            stays.add(node)
            node = begin.get((on[opening].id, node), SUPPLY)
    found = [o for o in demanded if o not in stays]
    return [o for o in found if o in on] if asked.circuit_id is not None else found
