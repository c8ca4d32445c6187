"""Where supplies go: the siting of a building's supplies proposed, with what would stand.

Accepting a proposal stands in `siting_accepting`.
"""

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass, field, replace
from math import ceil, fsum
from typing import Final

from sqlalchemy import Connection

from hwsched.attributes.of_parts import GAUGE, STRANDING
from hwsched.calc.calculator import InputError
from hwsched.calc.power.conductor import conductor
from hwsched.calc.power.siting import (
    DEFAULT_TIME_S,
    CandidateSupply,
    Demand,
    NoSitingError,
    Problem,
    Siting,
    place_supplies,
)
from hwsched.fitting.candidate import worth
from hwsched.model.errors import ValueRefusedError
from hwsched.model.power_queries import level_heights, read_power
from hwsched.model.project import Project
from hwsched.model.queries import StoredFit, by_opening, latest_change, read_fits, read_inputs, read_settings
from hwsched.operations.opening.fits_within import FitMemory
from hwsched.operations.opening.lock_points import point_results, standing_of
from hwsched.operations.opening.standings import Standings
from hwsched.operations.power.connecting import beyond
from hwsched.operations.power.known_buildings import no_supply
from hwsched.operations.power.power_results import read_power_result
from hwsched.operations.power.siting_reach import (
    CandidatePlace,
    Demanded,
    held_a,
    limiter_left_a,
    place_of,
    reach_m,
    suits,
)
from hwsched.rules import limits_of, rule_named
from hwsched.rules.network.circuit_laying import SUPPLY
from hwsched.rules.network.devices import amps, devices_at
from hwsched.rules.network.leaf_runs import leaf_runs
from hwsched.rules.wording import run_length
from hwsched.telling.natural import natural
from hwsched.values import Catalogue, OpeningInput, Part, Settings, SupplyLink, exchange_of
from hwsched.values.power import Circuit, PowerFacts, PowerResult, Run, Supply
from hwsched.values.power import Problem as Lacking
from hwsched.values.standing import WHY
from hwsched.wiring import ConnectedOpening, solve_supplies
from hwsched.wiring.distances import Heights, distance, laid_ways

_CIRCUIT_VOLTAGE: Final = rule_named("circuit-voltage")

CIRCUIT_NAME = "S"
"""Name of the circuit that a siting lays at each supply that it uses."""
_TOUCH_M = 1e-9

Progress = Callable[[str, float | None], None]
Cancelled = Callable[[], bool]


@dataclass(frozen=True, slots=True)
class Proposal:
    """A siting of one building's supplies, before it is accepted."""

    building: str
    siting: Siting
    """By identifiers of supplies and openings."""
    lengths_m: Mapping[str, float]
    """Of each opening's run."""
    measured: int
    """How many of them were measured; the others are estimated."""
    wire: str
    """Catalogue number of the wire."""
    left_out: tuple[str, ...]
    """Why openings were left out, a sentence each."""
    names: Mapping[str, str]
    """Of supplies, and marks of openings."""
    before: PowerResult
    after: PowerResult
    before_wire_m: float
    torn_up: tuple[str, ...]
    """Runs that are laid and would be taken up, or would lead to nothing any more, a sentence each."""
    basis: "Basis" = field(compare=False, repr=False)


@dataclass(slots=True)
class Basis:
    """What a proposal stands on, and what was worked out for it."""

    state: int
    """Change set at which it held last."""
    wire: str | None
    """That was asked for."""
    posed: list[tuple[str, Problem, Siting | NoSitingError]] = field(default_factory=list)
    """The problems that were solved, each with its wire and its answer."""
    fits: FitMemory = field(default_factory=FitMemory)


Solve = Callable[[str, Problem], Siting]
"""Answers a problem with some wire; raises NoSitingError, InputError."""


def propose_siting(
    project: Project,
    building: str,
    *,
    wire: str | None = None,
    gap: float | None = None,
    time_limit_s: float = DEFAULT_TIME_S,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> Proposal:
    """Work out which supplies of a building to use and which opening hangs on which: fewest supplies, then least wire.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    building : str
        Its name.
    wire : str, optional
        Catalogue number of the wire; when left out the cheapest of those that need the fewest supplies.
    gap, time_limit_s, progress, cancelled
        As `hwsched.calc.power.siting.site`.

    Returns
    -------
    Proposal
        With the voltages before and after.

    Raises
    ------
    ValueRefusedError
        Names what is missing, the openings that no supply can reach, or the current that is short.
    """
    basis = Basis(0, wire)

    def solve(number: str, problem: Problem) -> Siting:
        try:
            found = place_supplies(problem, gap, time_limit_s, progress, cancelled)
        except NoSitingError as error:
            basis.posed.append((number, problem, error))
            raise
        basis.posed.append((number, problem, found))
        return found

    return proposed_by(project, building, basis, solve)


def proposed_by(project: Project, building: str, basis: Basis, solve: Solve) -> Proposal:
    """Read a building, have its siting solved, and work out what would stand."""
    with project.reading() as connection:
        catalogue = project.catalogue.read(connection)
        facts, heights, settings = read_power(connection), level_heights(connection), read_settings(connection)
        state = latest_change(connection)
        every = list(by_opening(read_inputs(connection, None, catalogue)))
        openings = [inputs for inputs in every if inputs[0].opening.building == building]
        ids = [inputs[0].opening.id for inputs in openings]
        fits = read_fits(connection, ids)
        before = read_power_result(connection, catalogue, facts, {}, None)
        supplies = [supply for supply in facts.supplies if supply.building == building]
        if not supplies:
            raise no_supply(connection, building)
        others = others_of(connection, facts, {s.id for s in supplies}, set(ids), catalogue)
    present = {c.supply_id: c for c in facts.circuits if c.name == CIRCUIT_NAME}
    places = [place_of(supply, present.get(supply.id), catalogue, settings) for supply in supplies]
    connected, demanded, left_out, kept = demands_of(openings, fits, facts, basis.fits)
    if not demanded:
        why = "; ".join(left_out[:3]) or "none of its openings is fed from a supply"
        raise ValueRefusedError("building", f"{building} has nothing to feed: {why}")
    places = [
        replace(
            place,
            amps=min(
                max(place.amps - taken_a(before, supply, demanded), 0.0),
                limiter_left_a(before, present.get(supply.id), list(demanded), catalogue, settings),
            ),
        )
        for supply, place in zip(supplies, places, strict=True)
    ]
    siting, lengths, measured, used = _cheapest(
        catalogue, supplies, places, connected, demanded, heights, facts, _wires(catalogue, settings, basis.wire), solve
    )  # fmt: skip
    names = {supply.id: supply.name for supply in supplies}
    names |= {opening: each.given.opening.mark for opening, each in connected.items()}
    here = [s.id for s in supplies]
    after = _after(facts, {**others, **kept, **connected}, siting, lengths, used, catalogue, settings, here)
    return Proposal(
        building, siting, lengths, measured, used, tuple(left_out), names, only_supplies(before, here),
        only_supplies(after, here), wire_of_supplies(before, here),
        _torn_up(facts, siting, lengths, used, every, settings.length_style),
        replace(basis, state=state),
    )  # fmt: skip


def taken_a(before: PowerResult, supply: Supply, demanded: Collection[str]) -> float:
    """Return what openings take of a supply that stay where they hang: of other buildings, and those left out [A]."""
    held = next((each for each in before.supplies if each.supply.id == supply.id), None)
    if held is None or held.output_v is None:
        return 0.0
    volts = held.output_v
    stays = [d for circuit in held.circuits for d in circuit.devices if d.opening_id not in demanded]
    unknown = [circuit.held_a[1] - circuit.held_a[0] for circuit in held.circuits if circuit.held_a is not None]
    return fsum(max(amps(d, d.holding, volts), amps(d, d.peak, volts)) for d in stays) + fsum(unknown)


def _torn_up(
    facts: PowerFacts,
    siting: Siting,
    lengths: Mapping[str, float],
    wire: str,
    every: Sequence[tuple[OpeningInput, ...]],
    style: str,
) -> tuple[str, ...]:
    """Say which runs that are laid would be taken up, and which would lead to nothing any more."""
    marks = {inputs[0].opening.id: inputs[0].opening.mark for inputs in every}
    circuits = {circuit.id: circuit for circuit in facts.circuits}
    names = {supply.id: supply.name for supply in facts.supplies}

    def said(run: Run) -> str:
        circuit = circuits[run.circuit_id]
        at_supply = names.get(circuit.supply_id, "supply")
        ends = [at_supply if node == SUPPLY else marks.get(node, node) for node in (run.from_node, run.to_node)]
        long = "of unknown length" if run.length_m is None else run_length(style, run.length_m)
        return f"from {ends[0]} to {ends[1]}, {long}, circuit {circuit.name} of {at_supply}"

    taken, dead = [], []
    for run in facts.runs:
        opening = run.opening_id
        if opening is None or opening not in siting.pairs or run.circuit_id not in circuits:
            continue
        circuit = circuits[run.circuit_id]
        same = (
            (circuit.supply_id, circuit.name) == (siting.pairs[opening], CIRCUIT_NAME)
            and run.from_node == SUPPLY
            and run.length_m is not None
            and abs(run.length_m - lengths[opening]) < _TOUCH_M
            and (run.wire or circuit.wire) == wire
        )
        if not same:
            taken.append(said(run))
    stays = [run for run in facts.runs if run.opening_id not in siting.pairs]
    for run in leading_nowhere(stays):
        if run not in leading_nowhere(facts.runs):
            dead.append(said(run))
    # In the order in which people count their ends: rows come by identifiers, which are drawn.
    return (
        *(f"taken up: the run {each}" for each in sorted(taken, key=natural)),
        *(f"leads to nothing any more: the run {each}" for each in sorted(dead, key=natural)),
    )


def leading_nowhere(runs: Sequence[Run]) -> list[Run]:
    """Return the runs behind which no opening hangs."""
    left = [run for run in runs if run.opening_id is None]
    fed_from = {(run.circuit_id, run.from_node) for run in runs if run.opening_id is not None}
    while used := [run for run in left if (run.circuit_id, run.to_node) in fed_from]:
        fed_from |= {(run.circuit_id, run.from_node) for run in used}
        left = [run for run in left if run not in used]
    return left


def limiter_of(work: PowerResult, supply_id: str) -> float | None:
    """Return the limiter that carries the circuit which a siting lays."""
    return next(
        (
            circuit.limiter_a
            for supply in work.supplies
            if supply.supply.id == supply_id
            for circuit in supply.circuits
            if circuit.circuit.name == CIRCUIT_NAME
        ),
        None,
    )


def others_of(
    connection: Connection, facts: PowerFacts, supplies: Collection[str], known: Collection[str], catalogue: Catalogue
) -> dict[str, ConnectedOpening]:
    """Return the openings of other buildings that hang on these supplies."""
    ids = [each for each, circuit in facts.connected().items() if circuit.supply_id in supplies and each not in known]
    fits, standings = read_fits(connection, ids), Standings()
    return {
        inputs[0].opening.id: ConnectedOpening.of([each.at for each in point_results(inputs, fits, None, standings)])
        for inputs in by_opening(read_inputs(connection, ids, catalogue) if ids else ())
    }


def demands_of(
    openings: Sequence[tuple[OpeningInput, ...]],
    fits: Mapping[str, StoredFit],
    facts: PowerFacts,
    memory: FitMemory,
    replanned: str | None = None,
) -> tuple[dict[str, ConnectedOpening], dict[str, Demanded], list[str], dict[str, ConnectedOpening]]:
    """Return what to feed as it is once it hangs, what it draws, why others were left out, and what hangs already.

    A circuit whose limiter a person has chosen stays as it is, unless it is the one that is asked about (`replanned`)
    or the one onto which runs are laid.
    """
    connected: dict[str, ConnectedOpening] = {}
    demanded: dict[str, Demanded] = {}
    left_out: list[str] = []
    kept: dict[str, ConnectedOpening] = {}
    on_circuit = facts.connected()
    standings = Standings()
    for inputs in openings:
        opening = inputs[0].opening
        points = point_results(inputs, fits, None, standings)
        here = ConnectedOpening.of([each.at for each in points])
        stored = here.fit
        hangs = opening.id in on_circuit
        if hangs:
            kept[opening.id] = here
            circuit = on_circuit[opening.id]
            if circuit.limiter and circuit.name != CIRCUIT_NAME and circuit.id != replanned:
                left_out.append(f"{opening.mark} stays on circuit {circuit.name}, of which the limiter is chosen")
                continue
        # What wishes a supply is asked even where its fit waits for the distance that the siting finds.
        elif stored is not None and stored.power != "supply" and opening.power_wish != "supply":
            continue
        elif stored is None:
            left_out.append(f"{opening.mark} has no fit that counts: {WHY[standing_of(points)]}")
            continue
        each = here
        if stored is None or inputs[0].supply_link is None:
            connected_devices = [
                given if given.supply_link is not None else replace(given, supply_link=SupplyLink(None))
                for given in inputs
            ]
            each = ConnectedOpening.of([point.at for point in point_results(connected_devices, {}, memory.of)])
        own, problems = devices_at(each)
        missing = list(problems)
        # Leaves are reckoned as one here, all drawn over one transfer: the volts are proved leaf by leaf afterwards.
        warm = limits_of(_CIRCUIT_VOLTAGE, inputs[0].settings)["temperature_c"]
        onto = list(leaf_runs(each, warm, missing).values())
        transfer = onto[0].run if onto else None
        if any(run.more_ohm for run in onto):
            text = f"the power transfer that stays at {opening.mark} is not measured: no run to it could be proved"
            missing.append(Lacking("unknown", text, ("existing_item.loop_ohm",), opening.id))
        if missing or not own:
            left_out += [problem.message for problem in missing] or [f"{opening.mark} has nothing to feed"]
            continue
        connected[opening.id] = each
        demanded[opening.id] = Demanded(own, transfer)
    return connected, demanded, left_out, kept


def _cheapest(
    catalogue: Catalogue,
    supplies: Sequence[Supply],
    places: Sequence[CandidatePlace],
    connected: Mapping[str, ConnectedOpening],
    demanded: Mapping[str, Demanded],
    heights: Heights,
    facts: PowerFacts,
    wires: Sequence[Part],
    solve: Solve,
) -> tuple[Siting, dict[str, float], int, str]:
    """Solve with the cheapest wire of those that need the fewest supplies."""
    routes = {(route.opening_id, route.supply_id): route for route in facts.routes}
    laid = laid_ways(facts)
    lengths: list[list[tuple[float, bool] | None]] = []
    for opening, each in connected.items():
        row: list[tuple[float, bool] | None] = []
        missing: set[str] = set()
        for supply in supplies:
            found, needs = distance(
                supply, each.given.opening, heights, routes.get((opening, supply.id)),
                laid_m=laid.supply.get((opening, supply.id)),
            )  # fmt: skip
            missing.update(needs)
            row.append(None if found is None else (max(found.metres, 0.1), found.measured))
        if all(entry is None for entry in row):
            needs_said = ", ".join(sorted(missing)) or "a route to a supply"
            raise ValueRefusedError(each.given.opening.mark, f"unknown: needs {needs_said}")
        lengths.append(row)
    pinned = {r.opening_id: r.supply_id for r in facts.routes if r.pinned and r.opening_id in connected}
    must = tuple(supply.id for supply in supplies if supply.use == "must")
    suiting = {o: [suits(demanded[o], place, catalogue) for place in places] for o in connected}
    for opening, each in connected.items():
        if not any(suiting[opening]):
            raise ValueRefusedError(
                each.given.opening.mark, "no supply or place has the voltage and the kind of current that it takes"
            )
    drawn = {
        o: max(held_a(demanded[o], place.normal_v) for place, right in zip(places, suiting[o], strict=True) if right)
        for o in connected
    }
    names = {supply.id: supply.name for supply in supplies}
    names |= {opening: each.given.opening.mark for opening, each in connected.items()}
    sites = tuple(CandidateSupply(s.id, place.amps) for s, place in zip(supplies, places, strict=True))
    demands = tuple(Demand(o, drawn[o]) for o in connected)
    # Not even if every supply were in everybody's reach would fewer do.
    fewest = max(1, len(must), ceil(fsum(drawn.values()) / max(place.amps for place in places) - _TOUCH_M))
    refused: tuple[float, InputError] | None = None
    best: tuple[Siting, str] | None = None
    tried: list[list[list[float | None]]] = []
    for part in wires:
        gauge, stranding = part.text_of(GAUGE) or "", part.text_of(STRANDING) or "stranded"
        ohms = [conductor(gauge, stranding, place.warm_c).resistance_ohm_per_km for place in places]
        distances = [
            [
                entry[0]
                if entry is not None and right and entry[0] <= reach_m(demanded[o], place, catalogue, ohm) + _TOUCH_M
                else None
                for entry, place, right, ohm in zip(row, places, suiting[o], ohms, strict=True)
            ]
            for o, row in zip(connected, lengths, strict=True)
        ]
        # A dearer wire is worth asking only where it reaches what no cheaper one did.
        if any(_reaches_no_more(distances, other) for other in tried):
            continue
        tried.append(distances)
        try:
            siting = solve(part.number, Problem(sites, demands, distances, None, must, pinned))
        except NoSitingError as error:
            # What the thickest wire cannot do is said; a thinner one only reaches less.
            if refused is None or ohms[0] < refused[0]:
                refused = ohms[0], error
            continue
        except InputError as error:
            raise ValueRefusedError("siting", _named(error.message, names)) from error
        # Of as few supplies the cheaper wire stands first.
        if best is None or len(siting.open) < len(best[0].open):
            best = siting, part.number
        if len(best[0].open) <= fewest:
            break
    if best is None:
        raise ValueRefusedError("siting", _named(refused[1].message if refused else "no wire is there", names))
    siting, number = best
    at = {supply.id: i for i, supply in enumerate(supplies)}
    chosen = {o: lengths[i][at[siting.pairs[o]]] for i, o in enumerate(connected)}
    runs = {o: entry[0] for o, entry in chosen.items() if entry is not None}
    return siting, runs, sum(entry is not None and entry[1] for entry in chosen.values()), number


def _reaches_no_more(distances: list[list[float | None]], other: list[list[float | None]]) -> bool:
    """Tell whether every pair within reach was within reach before."""
    return all(
        theirs is not None or mine is None
        for row, other_row in zip(distances, other, strict=True)
        for mine, theirs in zip(row, other_row, strict=True)
    )


def _wires(catalogue: Catalogue, settings: Settings, wire: str | None) -> list[Part]:
    if wire is not None:
        part = catalogue.get(wire)
        if part is None or part.kind != "wire":
            raise ValueRefusedError("wire", f"'{wire}' is no wire of the catalogue")
        return [part]
    found = [p for p in catalogue.of_kind("wire") if p.text_of(GAUGE) is not None and not p.superseded_by]
    if not found:
        raise ValueRefusedError("wire", "the catalogue has no wire")
    exchange = exchange_of(catalogue, settings)
    return sorted(found, key=lambda part: (worth(part, exchange), part.number))


def _after(
    facts: PowerFacts,
    connected: Mapping[str, ConnectedOpening],
    siting: Siting,
    lengths: Mapping[str, float],
    wire: str,
    catalogue: Catalogue,
    settings: Settings,
    here: Collection[str],
) -> PowerResult:
    """Work out what would stand if the siting were accepted."""
    circuits = {c.supply_id: c for c in facts.circuits if c.name == CIRCUIT_NAME}
    # Names that tell alike what is worked out twice: nothing of it is stored.
    fresh = [
        Circuit(f"circuit at {supply_id}", supply_id, CIRCUIT_NAME, wire)
        for supply_id in siting.open
        if supply_id not in circuits
    ]
    circuits |= {circuit.supply_id: circuit for circuit in fresh}
    moved = beyond(facts.runs, siting.pairs)
    kept = tuple(
        replace(run, from_node=moved[run.id][0], length_m=moved[run.id][1]) if run.id in moved else run
        for run in facts.runs
        if run.opening_id not in siting.pairs
    )
    runs = tuple(Run(f"run to {o}", circuits[s].id, "supply", o, o, lengths[o], wire) for o, s in siting.pairs.items())

    def point_results(present: Sequence[Circuit]) -> PowerResult:
        all_present = PowerFacts(facts.supplies, (*facts.circuits, *present), (*kept, *runs), facts.routes)
        return solve_supplies(all_present, connected, catalogue, settings, set(here))

    # The limiter that is laid with a new circuit is the one that carries it, which is known once it is worked out.
    first = point_results(fresh)
    return point_results([replace(c, limiter_a=limiter_of(first, c.supply_id)) for c in fresh])


def only_supplies(work: PowerResult, supplies: Sequence[str]) -> PowerResult:
    """Return what was worked out for some supplies, with what the rules say of them."""
    return PowerResult(
        tuple(each for each in work.supplies if each.supply.id in supplies and each.circuits),
        tuple(each for each in work.findings if each.supply_id in supplies),
    )


def wire_of_supplies(work: PowerResult, supplies: Sequence[str]) -> float:
    """Add up the runs of some supplies [m]."""
    return fsum(
        run.length_m
        for each in work.supplies
        if each.supply.id in supplies
        for circuit in each.circuits
        for run in circuit.runs
        if not run.transfer
    )


def _named(text: str, names: Mapping[str, str]) -> str:
    for identifier, name in names.items():
        text = text.replace(f"'{identifier}'", name).replace(identifier, name)
    return text
