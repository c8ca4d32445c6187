"""Where supplies go: the siting of a building's supplies proposed, compared with what stands, and accepted."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from math import fsum

from hwsched.calc.calculator import InputError
from hwsched.calc.conductor import conductor, longest_run_m
from hwsched.calc.siting import DEFAULT_TIME_S, Demand, NoSitingError, Problem, Siting, SupplyPlace, site
from hwsched.cases import Case, Catalogue, Feed, Part, Settings
from hwsched.cases.case_key import case_key
from hwsched.cases.power import Circuit, Device, PowerFacts, PowerWork, Run, Supply
from hwsched.fitting import fit
from hwsched.model.bulk import new_ids
from hwsched.model.errors import ValueRefusedError
from hwsched.model.power_queries import level_heights, read_power
from hwsched.model.project import Project
from hwsched.model.queries import StoredFit, latest_change, read_cases, read_fits, read_settings
from hwsched.model.tables import CIRCUIT_TABLE, SUPPLY_TABLE
from hwsched.operations.changes import Changes
from hwsched.operations.hanging import hang_on
from hwsched.operations.powering import read_work
from hwsched.rules.circuits.circuit_voltage import RULE as CIRCUIT_VOLTAGE
from hwsched.rules.circuits.supply_loading import RULE as SUPPLY_LOADING
from hwsched.rules.judging import limits_of
from hwsched.wiring import Fed, work_out
from hwsched.wiring.devices import amps, devices_of
from hwsched.wiring.distances import Heights, distance

CIRCUIT_NAME = "S"
"""Name of the circuit that a siting lays at each supply that it uses."""

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
    before: PowerWork
    after: PowerWork
    before_wire_m: float
    state: int
    """Change set that it was worked out on."""


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
        Catalogue number of the wire; the cheapest that reaches every opening when left out.
    gap, time_limit_s, progress, cancelled
        As `hwsched.calc.siting.site`.

    Returns
    -------
    Proposal
        With the voltages before and after.

    Raises
    ------
    ValueRefusedError
        Names what is missing, the openings that no supply can reach, or the current that is short.
    """
    with project.reading() as connection:
        catalogue = project.catalogue.read(connection)
        facts, heights, settings = read_power(connection), level_heights(connection), read_settings(connection)
        state = latest_change(connection)
        cases = [case for case in read_cases(connection, None, catalogue) if case.opening.building == building]
        fits = read_fits(connection, [case.opening.id for case in cases])
        before = read_work(connection, catalogue, facts, {}, None)
    supplies = [supply for supply in facts.supplies if supply.building == building]
    if not supplies:
        raise ValueRefusedError("building", f"{building} has no supply and no place for one; lay one first")
    sources = [_source(supply, catalogue, settings) for supply in supplies]
    fed, devices, left_out = _demands(cases, fits, facts)
    if not devices:
        why = "; ".join(left_out[:3]) or "none of its openings is fed from a supply"
        raise ValueRefusedError("building", f"{building} has nothing to feed: {why}")
    found = _cheapest(
        catalogue, supplies, sources, fed, devices, heights, facts, settings, wire,
        (gap, time_limit_s, progress, cancelled),
    )  # fmt: skip
    siting, lengths, measured, used = found
    names = {supply.id: supply.name for supply in supplies}
    names |= {opening: each.case.opening.mark for opening, each in fed.items()}
    after = _after(facts, fed, siting, lengths, used, catalogue, settings)
    here = [s.id for s in supplies]
    return Proposal(
        building, siting, lengths, measured, used, tuple(left_out), names, _only(before, here), _only(after, here),
        _wire_of(before, here), state,
    )  # fmt: skip


def accept_siting(project: Project, proposal: Proposal, *, who: str) -> Changes:
    """Lay what a siting proposes: a circuit at each supply that it uses, every opening on a run of its own.

    Raises
    ------
    ValueRefusedError
        When the project has changed since it was worked out.
    """
    siting = proposal.siting
    text = f"Site {len(siting.open)} supplies of {proposal.building} for {len(siting.pairs)} openings"
    with project.change("accept-siting", text, who) as change:
        if latest_change(change.connection) != proposal.state:
            raise ValueRefusedError("siting", "the project has changed since it was worked out; ask for it again")
        facts = read_power(change.connection)
        change.update(SUPPLY_TABLE, [(s.id, {"use": "laid"}) for s in _opened(facts, siting) if s.use != "must"])
        circuits = {c.supply_id: c.id for c in facts.circuits if c.name == CIRCUIT_NAME}
        for supply_id in siting.open:
            if supply_id not in circuits:
                limiter = _limiter_of(proposal.after, supply_id)
                row = {"supply_id": supply_id, "name": CIRCUIT_NAME, "wire": proposal.wire, "limiter_a": limiter}
                circuits[supply_id] = change.insert(CIRCUIT_TABLE, [row])[0]
            hung = {o: proposal.lengths_m[o] for o, s in siting.pairs.items() if s == supply_id}
            hang_on(change, circuits[supply_id], hung, wire=proposal.wire)
    return Changes.of(change)


def _limiter_of(work: PowerWork, supply_id: str) -> float | None:
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


def _opened(facts: PowerFacts, siting: Siting) -> list[Supply]:
    return [supply for supply in facts.supplies if supply.id in siting.open]


@dataclass(frozen=True, slots=True)
class _Source:
    amps: float
    lowest_v: float


def _source(supply: Supply, catalogue: Catalogue, settings: Settings) -> _Source:
    part = catalogue.get(supply.part) if supply.part is not None else None
    if part is None:
        raise ValueRefusedError(supply.name, "unknown: needs the power supply that stands or may stand there")
    volts, rated, tolerance = (part.number_of(name) for name in ("output_v", "output_a", "tolerance_share"))
    if volts is None or rated is None or tolerance is None:
        missing = "output_v" if volts is None else "output_a" if rated is None else "tolerance_share"
        raise ValueRefusedError(supply.name, f"unknown: needs part {part.number}.{missing}")
    return _Source(rated * limits_of(SUPPLY_LOADING, settings)["share"], volts * (1 - tolerance))


def _demands(
    cases: Sequence[Case], fits: Mapping[str, StoredFit], facts: PowerFacts
) -> tuple[dict[str, Fed], dict[str, tuple[Device, ...]], list[str]]:
    """Return the openings to feed, as they are once they hang on a circuit, and why others were left out."""
    fed: dict[str, Fed] = {}
    devices: dict[str, tuple[Device, ...]] = {}
    left_out: list[str] = []
    on_circuit = facts.fed()
    for case in cases:
        stored = fits.get(case.opening.id)
        sound = stored is not None and stored.case_key == case_key(case)
        if case.opening.id not in on_circuit and stored is not None and sound and stored.fit.power != "supply":
            continue
        if case.opening.id not in on_circuit and not sound:
            left_out.append(f"{case.opening.mark} is not fitted for the facts as they stand")
            continue
        hung = case if case.feed is not None else replace(case, feed=Feed(None))
        fitted = stored.fit if stored is not None and sound and hung is case else fit(hung)
        own, problems = devices_of(hung, fitted)
        if problems or not own:
            left_out += [problem.message for problem in problems] or [f"{case.opening.mark} has nothing to feed"]
            continue
        fed[case.opening.id] = Fed(hung, fitted)
        devices[case.opening.id] = own
    return fed, devices, left_out


def _cheapest(
    catalogue: Catalogue,
    supplies: Sequence[Supply],
    sources: Sequence[_Source],
    fed: Mapping[str, Fed],
    devices: Mapping[str, tuple[Device, ...]],
    heights: Heights,
    facts: PowerFacts,
    settings: Settings,
    wire: str | None,
    how: tuple[float | None, float, Progress | None, Cancelled | None],
) -> tuple[Siting, dict[str, float], int, str]:
    """Solve with the cheapest wire for which there is a siting."""
    wires = _wires(catalogue, wire)
    routes = {(route.opening_id, route.supply_id): route for route in facts.routes}
    lengths: list[list[tuple[float, bool] | None]] = []
    for opening, each in fed.items():
        row: list[tuple[float, bool] | None] = []
        missing: set[str] = set()
        for supply in supplies:
            found, needs = distance(supply, each.case.opening, heights, routes.get((opening, supply.id)))
            missing.update(needs)
            row.append(None if found is None else (max(found.metres, 0.1), found.measured))
        if all(entry is None for entry in row):
            needs_said = ", ".join(sorted(missing)) or "a route to a supply"
            raise ValueRefusedError(each.case.opening.mark, f"unknown: needs {needs_said}")
        lengths.append(row)
    pinned = {r.opening_id: r.supply_id for r in facts.routes if r.pinned and r.opening_id in fed}
    must = tuple(supply.id for supply in supplies if supply.use == "must")
    gap, time_limit_s, progress, cancelled = how
    warm = limits_of(CIRCUIT_VOLTAGE, settings)["temperature_c"]
    names = {supply.id: supply.name for supply in supplies}
    names |= {opening: each.case.opening.mark for opening, each in fed.items()}
    last: InputError | None = None
    for part in wires:
        ohm = conductor(part.text_of("gauge") or "", part.text_of("stranding") or "stranded", warm)
        distances = [
            [
                entry[0] if entry is not None and entry[0] <= _reach(devices[o], s, ohm.resistance_ohm_per_km) else None
                for entry, s in zip(row, sources, strict=True)
            ]
            for o, row in zip(fed, lengths, strict=True)
        ]
        places = tuple(SupplyPlace(s.id, source.amps) for s, source in zip(supplies, sources, strict=True))
        demands = tuple(Demand(o, fsum(_held(d) for d in devices[o])) for o in fed)
        try:
            siting = site(
                Problem(places, demands, distances, None, must, pinned), gap, time_limit_s, progress, cancelled
            )
        except NoSitingError as error:
            last = error
            continue
        except InputError as error:
            raise ValueRefusedError("siting", _named(error.message, names)) from error
        at = {supply.id: i for i, supply in enumerate(supplies)}
        chosen = {o: lengths[i][at[siting.pairs[o]]] for i, o in enumerate(fed)}
        runs = {o: entry[0] for o, entry in chosen.items() if entry is not None}
        return siting, runs, sum(entry is not None and entry[1] for entry in chosen.values()), part.number
    raise ValueRefusedError("siting", _named(last.message if last else "no wire is in the catalogue", names))


def _wires(catalogue: Catalogue, wire: str | None) -> list[Part]:
    if wire is not None:
        part = catalogue.get(wire)
        if part is None or part.kind != "wire":
            raise ValueRefusedError("wire", f"'{wire}' is no wire of the catalogue")
        return [part]
    found = [p for p in catalogue.of_kind("wire") if p.text_of("gauge") is not None and not p.superseded_by]
    if not found:
        raise ValueRefusedError("wire", "the catalogue has no wire")
    return sorted(found, key=lambda part: (part.list_price is None, part.list_price or 0.0, part.number))


def _held(device: Device) -> float:
    volts = (device.minimum_v + device.maximum_v) / 2
    return max(amps(device, device.holding, volts), amps(device, device.peak, volts))


def _reach(devices: Sequence[Device], source: _Source, ohm_per_km: float) -> float:
    """Longest run on which all devices of an opening keep their lowest voltage, everything held or starting [m]."""
    least = max(device.minimum_v for device in devices)
    drawn = fsum(max(_held(d), amps(d, d.inrush, d.minimum_v) if d.inrush is not None else 0.0) for d in devices)
    if source.lowest_v <= least:
        return 0.0
    return longest_run_m(source.lowest_v, least, drawn, ohm_per_km) if drawn > 0 else float("inf")


def _after(
    facts: PowerFacts,
    fed: Mapping[str, Fed],
    siting: Siting,
    lengths: Mapping[str, float],
    wire: str,
    catalogue: Catalogue,
    settings: Settings,
) -> PowerWork:
    """Work out what would stand if the siting were accepted."""
    circuits = {c.supply_id: c for c in facts.circuits if c.name == CIRCUIT_NAME}
    made = new_ids(len(siting.open) + len(siting.pairs))
    fresh = [
        Circuit(made[i], supply_id, CIRCUIT_NAME, wire)
        for i, supply_id in enumerate(siting.open)
        if supply_id not in circuits
    ]
    circuits |= {circuit.supply_id: circuit for circuit in fresh}
    kept = tuple(run for run in facts.runs if run.opening_id not in siting.pairs)
    runs = tuple(
        Run(made[len(siting.open) + i], circuits[s].id, "supply", o, o, lengths[o], wire)
        for i, (o, s) in enumerate(siting.pairs.items())
    )
    laid = PowerFacts(facts.supplies, (*facts.circuits, *fresh), (*kept, *runs), facts.routes)
    return work_out(laid, fed, catalogue, settings, set(siting.open))


def _only(work: PowerWork, supplies: Sequence[str]) -> PowerWork:
    return PowerWork(
        tuple(each for each in work.supplies if each.supply.id in supplies and each.circuits),
        tuple(each for each in work.findings if each.supply_id in supplies),
    )


def _wire_of(work: PowerWork, supplies: Sequence[str]) -> float:
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
