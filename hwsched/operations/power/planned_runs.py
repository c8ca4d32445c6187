"""What a plan lays and takes up: circuits, runs with their junctions, supplies; shown, and then written."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from hwsched.calc.power.planning.question import Plan
from hwsched.operations.power.supply_siting import CIRCUIT_NAME, leading_nowhere
from hwsched.rules.network.circuit_laying import SUPPLY
from hwsched.rules.wording import run_length
from hwsched.telling.natural import natural
from hwsched.values.power import Circuit, PowerFacts, Run

_TOUCH_M: Final = 1e-6


@dataclass(frozen=True, slots=True)
class Laying:
    """What changes on supplies, circuits and runs."""

    parts: Mapping[str, str]
    """Supply to the part that is to stand there, where that is another one."""
    used: tuple[str, ...]
    """Supplies that the plan uses."""
    circuits: tuple[Circuit, ...]
    """That are new; their identifiers stand for those that they get."""
    runs: tuple[Run, ...]
    """That are new."""
    taken_up: tuple[str, ...]
    """Runs, by identifier."""


def laying_of(
    facts: PowerFacts, plan: Plan, planned: Collection[str], onto: Mapping[str, str], parts: Mapping[str, str]
) -> Laying:
    """Say what is laid and taken up for a plan; a run that lies as planned stays as it is.

    Parameters
    ----------
    facts : PowerFacts
        As laid.
    plan : Plan
        By identifiers of supplies and openings.
    planned : collection of str
        Openings that it supplies.
    onto : mapping
        Supply to the circuit that takes the runs, where there is one.
    parts : mapping
        Supply to the part that it has now.
    """
    leaving = [run for run in facts.runs if run.opening_id in planned]
    staying = [run for run in facts.runs if run.opening_id not in planned]
    nowhere = {run.id for run in leading_nowhere(facts.runs)}
    leaving += [run for run in leading_nowhere(staying) if run.id not in nowhere]
    gone = {run.id for run in leaving}
    used = tuple(dict.fromkeys(leg.place for leg in plan.legs))
    circuits = {supply: onto[supply] for supply in used if supply in onto}
    fresh = []
    for supply in used:
        if supply not in circuits:
            wire = next(leg.wire for leg in plan.legs if leg.place == supply)
            fresh.append(Circuit(f"circuit at {supply}", supply, CIRCUIT_NAME, wire))
            circuits[supply] = fresh[-1].id
    runs: list[Run] = []
    for supply in used:
        circuit = circuits[supply]
        names = {n for run in facts.runs if run.circuit_id == circuit and run.id not in gone
                 for n in (run.from_node, run.to_node)}  # fmt: skip
        number = 0
        for leg in plan.legs:
            if leg.place != supply:
                continue
            nodes: list[str] = []
            for point in leg.points:
                if point is None:
                    number += 1
                    while f"J{number}" in names:
                        number += 1
                nodes.append(point if point is not None else f"J{number}")
            for run in leg.runs:
                begin = SUPPLY if run.begin < 0 else nodes[run.begin]
                end, opening = nodes[run.end], leg.points[run.end]
                runs.append(Run(f"run to {circuit} {end}", circuit, begin, end, opening, run.metres, leg.wire))
    kept = {old.id: new.id for old, new in _alike(leaving, runs, {c.id: c.wire for c in facts.circuits})}
    new = tuple(run for run in runs if run.id not in kept.values())
    changed = {supply: size for supply, size in plan.sizes.items() if supply in used and parts.get(supply) != size}
    return Laying(changed, used, tuple(fresh), new, tuple(run.id for run in leaving if run.id not in kept))


def _alike(
    old: Sequence[Run], new: Sequence[Run], wires: Mapping[str, str | None]
) -> list[tuple[Run, Run]]:  # fmt: skip
    left = {(r.circuit_id, r.from_node, r.to_node, r.opening_id): r for r in new}
    found = []
    for run in old:
        other = left.get((run.circuit_id, run.from_node, run.to_node, run.opening_id))
        if other is None or run.length_m is None or other.length_m is None:
            continue
        plain = run.gauge is None and (run.parallel or 1) == 1 and not run.extra_ohm
        if (
            plain
            and abs(run.length_m - other.length_m) < _TOUCH_M
            and (run.wire or wires.get(run.circuit_id)) == other.wire
        ):
            found.append((run, other))
    return found


def with_laying(facts: PowerFacts, laying: Laying, limiters: Mapping[str, float | None] | None = None) -> PowerFacts:
    """Return what is laid once a plan is accepted."""
    gone, told = set(laying.taken_up), limiters or {}
    supplies = tuple(
        replace(s, part=laying.parts.get(s.id, s.part), use=s.use if s.use == "must" else "laid")
        if s.id in laying.used
        else s
        for s in facts.supplies
    )
    fresh = tuple(replace(c, limiter_a=told.get(c.supply_id)) for c in laying.circuits)
    runs = (*(run for run in facts.runs if run.id not in gone), *laying.runs)
    return PowerFacts(supplies, (*facts.circuits, *fresh), runs, facts.routes)


def told_runs(facts: PowerFacts, runs: Collection[str], marks: Mapping[str, str], style: str) -> tuple[str, ...]:
    """Say which runs are taken up, in the order in which people count their ends; style: how lengths are shown."""
    circuits = {circuit.id: circuit for circuit in facts.circuits}
    names = {supply.id: supply.name for supply in facts.supplies}
    told = []
    for run in facts.runs:
        if run.id not in runs:
            continue
        circuit = circuits[run.circuit_id]
        at = names.get(circuit.supply_id, SUPPLY)
        ends = [at if node == SUPPLY else marks.get(node, node) for node in (run.from_node, run.to_node)]
        long = "of unknown length" if run.length_m is None else run_length(style, run.length_m)
        told.append(f"the run from {ends[0]} to {ends[1]}, {long}, circuit {circuit.name} of {at}")
    return tuple(sorted(told, key=natural))
