"""Working out supplies and their circuits: trees, voltages in every state, shares, standby, and what the rules say."""

from collections.abc import Collection, Mapping
from dataclasses import replace
from math import fsum

from hwsched.calc.calculator import InputError
from hwsched.rules.circuit_judging import judge_supply
from hwsched.values import Case, Catalogue, Part, Settings
from hwsched.values.power import (
    Circuit,
    Device,
    PowerFacts,
    PowerWork,
    Problem,
    Run,
    Supply,
    WorkedCircuit,
    WorkedSupply,
)
from hwsched.wiring.circuits import Feeding, work_circuit
from hwsched.wiring.connected_opening import Fed
from hwsched.wiring.devices import devices_at
from hwsched.wiring.standby import work_standby


def work_out(
    facts: PowerFacts,
    openings: Mapping[str, Fed],
    catalogue: Catalogue,
    settings: Settings,
    only: Collection[str] | None = None,
) -> PowerWork:
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
    PowerWork
        Supplies in the order of the facts, with what the rules say of them.
    """
    circuits: dict[str, list[Circuit]] = {}
    for circuit in facts.circuits:
        circuits.setdefault(circuit.supply_id, []).append(circuit)
    runs: dict[str, list[Run]] = {}
    for run in facts.runs:
        runs.setdefault(run.circuit_id, []).append(run)
    worked = [
        _supply(supply, circuits.get(supply.id, []), runs, openings, catalogue, settings)
        for supply in facts.supplies
        if only is None or supply.id in only
    ]
    cases = {opening_id: fed.case for opening_id, fed in openings.items()}
    findings = [found for supply in worked for found in judge_supply(supply, cases, settings)]
    return PowerWork(tuple(worked), tuple(findings))


def _supply(
    supply: Supply,
    circuits: list[Circuit],
    runs: Mapping[str, list[Run]],
    openings: Mapping[str, Fed],
    catalogue: Catalogue,
    settings: Settings,
) -> WorkedSupply:
    part = catalogue.get(supply.part) if supply.part else None
    battery = catalogue.get(supply.battery) if supply.battery else None
    of_battery = _battery_problems(supply, part, battery)
    of_part = _part_problems(supply, part)
    if of_battery:
        battery = None
    feeding = Feeding.of(supply, part, battery, catalogue, settings)
    devices: dict[str, tuple[tuple[Device, ...], tuple[Problem, ...]]] = {}
    for circuit in circuits:
        for run in runs.get(circuit.id, ()):
            if run.opening_id is not None and run.opening_id in openings:
                fed = openings[run.opening_id]
                devices[run.opening_id] = devices_at(fed)
    worked = tuple(
        work_circuit(
            circuit,
            feeding,
            runs.get(circuit.id, []),
            devices,
            {
                # Where a run begins too: an opening that hangs elsewhere, or on nothing, is named by its mark.
                each: openings[each]
                for run in runs.get(circuit.id, ())
                for each in (run.opening_id, run.from_node)
                if each is not None and each in openings
            },
        )
        for circuit in circuits
    )
    complete = not (circuits and of_part) and not any(each.problems for each in worked if each.holding_a is None)
    holding = fsum(c.holding_a for c in worked if c.holding_a is not None) if complete else None
    found = WorkedSupply(
        supply,
        worked,
        part.number_of("output_v") if part else None,
        part.number_of("output_a") if part else None,
        feeding.source.lowest_v if feeding.source else None,
        feeding.source.battery_end_v if feeding.source else None,
        holding,
        fsum(max(c.current_a.values(), default=0.0) for c in worked) if complete else None,
        problems=(*of_part, *of_battery) if circuits else (),
        assumed=_assumed(supply, part, battery),
        class_2=part.flag_of("class_2") if part else None,
        limiting=(part.text_of("limiting") if part else None) or "inherent",
    )
    try:
        return replace(found, standby=work_standby(found, openings_cases(openings, worked), catalogue, settings))
    except InputError as error:
        text = f"the standby battery of {supply.name} cannot be sized: {error.field} {error.message}"
        problem = Problem("unknown", text, (f"standby-capacity.{error.field}",), about=supply.name)
        return replace(found, problems=(*found.problems, problem))


def openings_cases(openings: Mapping[str, Fed], circuits: tuple[WorkedCircuit, ...]) -> dict[str, Case]:
    """Return the cases of the openings on some circuits."""
    return {each: openings[each].case for circuit in circuits for each in circuit.openings if each in openings}


def _part_problems(supply: Supply, part: Part | None) -> list[Problem]:
    if supply.part is None:
        return [Problem("unknown", f"no power supply is chosen for {supply.name}", ("supply.part",), about=supply.name)]
    if part is None or part.kind != "power-supply":
        what = "is not in the catalogue" if part is None else f"is no power supply but a {part.kind}"
        return [Problem("mismatch", f"{supply.part} of {supply.name} {what}", about=supply.part)]
    if part.number_of("tolerance_share") is None:
        fact = f"part {part.number}.tolerance_share"
        text = f"how low {part.number} falls is unknown: the catalogue does not say its tolerance"
        return [Problem("unknown", text, (fact,), about=part.number)]
    return []


def _assumed(supply: Supply, part: Part | None, battery: Part | None) -> tuple[str, ...]:
    """Say what of a supply and its battery is reckoned with though nothing is stated."""
    taken = []
    if part is not None and part.number_of("inside_ohm") is None:
        taken.append(f"no resistance inside {part.number} beyond its tolerance")
    if battery is not None and battery.number_of("inside_ohm") is None:
        taken.append(f"no resistance inside {battery.number}")
    if battery is not None and battery.number_of("end_v") is None:
        taken.append(f"the end voltage of {battery.number} as the rule standby-capacity has it")
    if battery is not None and supply.batteries is None:
        taken.append("one battery")
    return tuple(taken)


def _battery_problems(supply: Supply, part: Part | None, battery: Part | None) -> list[Problem]:
    if supply.battery is None:
        return []
    if battery is None or battery.kind != "standby-battery":
        what = "is not in the catalogue" if battery is None else f"is no standby battery but a {battery.kind}"
        return [Problem("mismatch", f"{supply.battery} of {supply.name} {what}", about=supply.battery)]
    wanted = part.number_of("standby_v") if part is not None else None
    each = battery.number_of("voltage_v")
    count = supply.batteries or 1
    if wanted is None or each is None or abs(each * count - wanted) < 0.5:
        return []
    text = f"{count} × {battery.number} give {each * count:g} V; {supply.name} takes a battery of {wanted:g} V"
    return [Problem("mismatch", text, about=battery.number)]
