"""Working out supplies and their circuits: trees, voltages in every state, shares, standby, and what the rules say."""

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import replace
from math import fsum
from typing import Final

from hwsched.attributes.of_parts import (
    CLASS_2,
    END_V,
    INSIDE_OHM,
    LIMITING,
    OUTPUT_A,
    OUTPUT_V,
    STANDBY_V,
    TOLERANCE_SHARE,
    VOLTAGE_V,
)
from hwsched.calc.calculator import InputError
from hwsched.rules import limits_of, rule_named
from hwsched.rules.judging import judge_supply
from hwsched.rules.network.circuit_source import taken_of_supply
from hwsched.rules.network.connected_opening import ConnectedOpening
from hwsched.rules.network.devices import Known, devices_at
from hwsched.rules.rule_titles import title_of
from hwsched.telling.natural import natural
from hwsched.values import Catalogue, OpeningInput, Part, Settings
from hwsched.values.power import (
    Circuit,
    CircuitResult,
    Device,
    Growth,
    PowerFacts,
    PowerResult,
    Problem,
    Proof,
    Run,
    Supply,
    SupplyResult,
)
from hwsched.wiring.chosen_parts import cabinet_problems, chosen_limiter
from hwsched.wiring.circuits import circuit_source, solve_circuits
from hwsched.wiring.growth import Grower, Judged
from hwsched.wiring.standby import size_standby

_SUPPLY_GROWTH: Final = rule_named("supply-growth")
_END_SHARE: Final = "standby-capacity.end_share"


def solve_supplies(
    facts: PowerFacts,
    openings: Mapping[str, ConnectedOpening],
    catalogue: Catalogue,
    settings: Settings,
    only: Collection[str] | None = None,
) -> PowerResult:
    """Work out the power of a project.

    Parameters
    ----------
    facts : PowerFacts
        All that is laid.
    openings : mapping
        By identifier; those that hang on a circuit are needed.
    catalogue : Catalogue
        Supplies, wires, batteries.
    settings : Settings
        Limits of the rules.
    only : collection of str, optional
        Supplies to work out, by identifier; all when left out.

    Returns
    -------
    PowerResult
        Supplies in the order of the facts, with what the rules say of them.
    """
    circuits: dict[str, list[Circuit]] = {}
    for circuit in facts.circuits:
        circuits.setdefault(circuit.supply_id, []).append(circuit)
    runs: dict[str, list[Run]] = {}
    for run in facts.runs:
        runs.setdefault(run.circuit_id, []).append(run)
    result = [
        _supply(supply, circuits.get(supply.id, []), runs, openings, catalogue, settings)
        for supply in facts.supplies
        if only is None or supply.id in only
    ]
    asked = round(limits_of(_SUPPLY_GROWTH, settings)["openings"])
    if asked and _SUPPLY_GROWTH.id not in settings.rules_off:
        growers = growers_of(result, facts, openings, catalogue, settings)
        result = [replace(each, growth=_growth(growers[each.supply.id], asked)) for each in result]
    inputs = {opening_id: connected.given for opening_id, connected in openings.items()}
    findings = [found for supply in result for found in judge_supply(supply, inputs, settings)]
    return PowerResult(tuple(result), tuple(findings))


def growers_of(
    results: Iterable[SupplyResult],
    facts: PowerFacts,
    openings: Mapping[str, ConnectedOpening],
    catalogue: Catalogue,
    settings: Settings,
) -> dict[str, Grower]:
    """Return by supply what says how many later openings its circuits bear.

    Parameters
    ----------
    results : iterable of SupplyResult
        As worked out of the same facts.
    facts, openings, catalogue, settings
        As for `solve_supplies`.
    """
    runs: dict[str, list[Run]] = {circuit.id: [] for circuit in facts.circuits}
    for run in facts.runs:
        runs.setdefault(run.circuit_id, []).append(run)
    found = {}
    for result in results:
        circuits = [each.circuit for each in result.circuits]
        here = {circuit.id: tuple(runs[circuit.id]) for circuit in circuits}
        supply = result.supply

        def judged(
            laid: Mapping[str, Sequence[Run]],
            connected: Mapping[str, ConnectedOpening],
            supply: Supply = supply,
            circuits: Sequence[Circuit] = tuple(circuits),
        ) -> Judged:
            grown = _supply(supply, circuits, laid, connected, catalogue, settings)
            inputs = {opening_id: each.given for opening_id, each in connected.items()}
            return grown, judge_supply(grown, inputs, settings)

        inputs = {opening_id: each.given for opening_id, each in openings.items()}
        before = judge_supply(replace(result, growth=()), inputs, settings)
        found[supply.id] = Grower(result, before, here, openings, judged)
    return found


def _in_order(runs: Sequence[Run], openings: Mapping[str, ConnectedOpening]) -> Sequence[Run]:
    """Return runs by where they lead to, as people count: those laid in several steps have no order of their own."""

    def name(node: str) -> str:
        return openings[node].given.opening.mark if node in openings else node

    return sorted(runs, key=lambda run: (natural(name(run.to_node)), natural(name(run.from_node))))


def _growth(grower: Grower, asked: int) -> tuple[Growth, ...]:
    return tuple(grower.bears(circuit, asked) for circuit in grower.result.circuits if circuit.openings)


def _supply(
    supply: Supply,
    circuits: Sequence[Circuit],
    runs: Mapping[str, Sequence[Run]],
    openings: Mapping[str, ConnectedOpening],
    catalogue: Catalogue,
    settings: Settings,
) -> SupplyResult:
    part = catalogue.get(supply.part) if supply.part else None
    battery = catalogue.get(supply.battery) if supply.battery else None
    of_battery = _battery_problems(supply, part, battery)
    of_part = _part_problems(supply, part)
    chosen = cabinet_problems(supply, battery, catalogue)
    limiters = {circuit.id: chosen_limiter(circuit, catalogue) for circuit in circuits if circuit.limiter}
    circuits = [limiters[circuit.id][0] if circuit.id in limiters else circuit for circuit in circuits]
    chosen += [problem for _, problem in limiters.values() if problem is not None]
    # A battery that does not suit would give end voltages of another supply.
    if of_battery:
        battery = None
    source = circuit_source(supply, part, battery, catalogue, settings)
    devices: dict[str, tuple[tuple[Device, ...], tuple[Problem, ...]]] = {}
    known: Known = {}
    for circuit in circuits:
        for run in runs.get(circuit.id, ()):
            if run.opening_id is not None and run.opening_id in openings:
                connected = openings[run.opening_id]
                devices[run.opening_id] = devices_at(connected, known)
    result = solve_circuits(
        [(circuit, _in_order(runs.get(circuit.id, []), openings)) for circuit in circuits],
        source, devices, openings, settings,
    )  # fmt: skip
    # A sum without one circuit would pass the share of the supply as smaller than it is.
    complete = not (circuits and of_part) and not any(each.problems for each in result if each.holding_a is None)
    holding = fsum(c.holding_a for c in result if c.holding_a is not None) if complete else None
    held = [each.held_a for each in result if each.held_a is not None]
    bounds = (fsum(low for low, _ in held), fsum(high for _, high in held)) if len(held) == len(result) else None
    if of_part:
        result = tuple(replace(each, proofs=_lacking(each, of_part)) for each in result)
    if battery is not None and battery.number_of(END_V) is None and _END_SHARE not in settings.limits:
        # What the volts sink to on the battery is then not known: a share that the project states is a statement.
        result = tuple(replace(each, proofs=_end_unknown(each, battery)) for each in result)
    found = SupplyResult(
        supply,
        result,
        part.number_of(OUTPUT_V) if part else None,
        part.number_of(OUTPUT_A) if part else None,
        source.source.lowest_v if source.source else None,
        source.source.battery_end_v if source.source else None,
        holding,
        # Each circuit at its worst state, all together: the supply has to carry them when they coincide.
        fsum(max(c.current_a.values(), default=0.0) for c in result) if complete else None,
        problems=(*of_part, *of_battery, *chosen) if circuits else (),
        assumed=(*taken_of_supply(part), *_assumed(supply, part, battery)),
        class_2=part.flag_of(CLASS_2) if part else None,
        limiting=(part.text_of(LIMITING) if part else None) or "inherent",
        held_a=bounds,
        inrush_a=fsum(c.inrush_a for c in result if c.inrush_a is not None) if complete else None,
        known_inrush_a=fsum(c.known_inrush_a for c in result if c.known_inrush_a is not None),
    )
    try:
        standby = size_standby(found, inputs_of_openings(openings, result), catalogue, settings)
        assumed = (*found.assumed, *(standby.assumed if standby is not None else ()))
        return replace(found, standby=standby, assumed=assumed)
    except InputError as error:
        text = f"the standby battery of {supply.name} cannot be sized: {error.field} {error.message}"
        problem = Problem("unknown", text, (f"standby-capacity.{error.field}",), about=supply.name)
        return replace(found, problems=(*found.problems, problem))


def _end_unknown(circuit: CircuitResult, battery: Part) -> tuple[Proof, ...]:
    """Take back what is proved on a battery of which the end voltage is not known."""
    fact = f"part {battery.number}.end_v"
    return tuple(
        proof if proof.standing == "failed" else Proof(proof.opening_id, "not-proved", (*proof.missing, fact))
        for proof in circuit.proofs
    )


def _lacking(circuit: CircuitResult, of_part: list[Problem]) -> tuple[Proof, ...]:
    """Say of what is not proved what of the supply is missing."""
    needs = [need for problem in of_part for need in problem.needs]
    return tuple(
        replace(proof, missing=tuple(dict.fromkeys((*needs, *proof.missing))), why=proof.why or of_part[0].message)
        if proof.standing == "not-proved"
        else proof
        for proof in circuit.proofs
    )


def inputs_of_openings(
    openings: Mapping[str, ConnectedOpening], circuits: tuple[CircuitResult, ...]
) -> dict[str, OpeningInput]:
    """Return the inputs of the openings on some circuits."""
    return {each: openings[each].given for circuit in circuits for each in circuit.openings if each in openings}


def _part_problems(supply: Supply, part: Part | None) -> list[Problem]:
    if supply.part is None:
        return [Problem("unknown", f"no power supply is chosen for {supply.name}", ("supply.part",), about=supply.name)]
    if part is None or part.kind != "power-supply":
        what = "is not in the catalogue" if part is None else f"is no power supply but a {part.kind}"
        return [Problem("mismatch", f"{supply.part} of {supply.name} {what}", about=supply.part)]
    if part.number_of(TOLERANCE_SHARE) is None:
        fact = f"part {part.number}.tolerance_share"
        text = f"how low {part.number} falls is unknown: the catalogue does not say its tolerance"
        return [Problem("unknown", text, (fact,), about=part.number)]
    return []


_STANDBY: Final = "standby-capacity"
"""The rule that has the end voltage of a battery that tells none."""


def _assumed(supply: Supply, part: Part | None, battery: Part | None) -> tuple[str, ...]:
    """Say what of a supply and its battery is reckoned with though nothing is stated."""
    taken = []
    if part is not None and part.text_of(LIMITING) is None:
        taken.append(f"{part.number} limited by its own design")
    if battery is not None and battery.number_of(INSIDE_OHM) is None:
        taken.append(f"no resistance inside {battery.number}")
    if battery is not None and battery.number_of(END_V) is None:
        taken.append(f"the end voltage of {battery.number} as the rule '{title_of(_STANDBY)}' has it")
    if battery is not None and supply.batteries is None:
        taken.append("one battery")
    if battery is not None and part is not None and part.number_of(STANDBY_V) is None:
        taken.append(f"{part.number} to take batteries of what is laid")
    if supply.standby_hours is None:
        taken.append(f"no standby asked of {supply.name}")
    return tuple(taken)


def _battery_problems(supply: Supply, part: Part | None, battery: Part | None) -> list[Problem]:
    if supply.battery is None:
        return []
    if battery is None or battery.kind != "standby-battery":
        what = "is not in the catalogue" if battery is None else f"is no standby battery but a {battery.kind}"
        return [Problem("mismatch", f"{supply.battery} of {supply.name} {what}", about=supply.battery)]
    wanted = part.number_of(STANDBY_V) if part is not None else None
    each = battery.number_of(VOLTAGE_V)
    count = supply.batteries or 1
    # Batteries come in steps of volts: half a volt tells another battery from a rounded figure.
    if wanted is None or each is None or abs(each * count - wanted) < 0.5:
        return []
    text = f"{count} × {battery.number} give {each * count:g} V; {supply.name} takes a battery of {wanted:g} V"
    return [Problem("mismatch", text, about=battery.number)]
