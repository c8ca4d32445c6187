"""Which openings lose their power when one thing fails, and which keep it on the fire alarm.

Here belongs who falls out; how a door stands without power is said by its devices, whether people still get out by the
rules.
"""

from collections import deque
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from typing import Literal

from hwsched.calc.power.circuit_tree import SUPPLY
from hwsched.telling.natural import natural
from hwsched.values.power import CircuitResult, RunResult, SupplyResult

What = Literal["supply", "mains", "battery", "circuit", "run"]
Without = Literal["released", "locked", "unit"]


@dataclass(frozen=True, slots=True)
class Failure:
    """One thing that fails, and what falls out with it."""

    what: What
    name: str
    """Of the supply, circuit or run."""
    opening_ids: tuple[str, ...]
    """Openings that lose their power."""
    after_h: float | None = 0.0
    """How long they still have it [h]; None where that is not known."""


@dataclass(frozen=True, slots=True)
class OnAlarm:
    """Who keeps power on the fire alarm."""

    dropped: tuple[str, ...]
    kept: tuple[str, ...]
    unknown: tuple[str, ...]
    """Of their circuit nobody said what it does."""


def failures(result: SupplyResult) -> tuple[Failure, ...]:
    """Return what falls out when the supply, its mains, its battery, a circuit or a run fails.

    A run that is cut takes what lies behind it; one that is shorted takes its whole circuit. A battery that fails takes
    nothing by itself: what is told is who has nothing when the mains fail too.
    """
    supply = result.supply
    every = _ordered(result.openings, result.marks)
    found = [Failure("supply", supply.name, every), Failure("mains", supply.name, every, lasts_h(result))]
    if supply.battery:
        found.append(Failure("battery", supply.name, every))
    for circuit in result.circuits:
        name = f"{supply.name}/{circuit.circuit.name}"
        found.append(Failure("circuit", name, _ordered(circuit.openings, result.marks)))
        for run, openings in _behind(circuit, result.marks):
            ends = f"{name} {supply.name if run.from_node == SUPPLY else run.from_name} to {run.to_name}"
            found.append(Failure("run", ends, openings))
    return tuple(found)


def _ordered(openings: Iterable[str], marks: Mapping[str, str]) -> tuple[str, ...]:
    """Return openings once each, as their marks are counted."""
    return tuple(sorted(set(openings), key=lambda each: natural(marks[each])))


def lasts_h(result: SupplyResult) -> float | None:
    """Return how long a supply's battery carries what it feeds without mains [h]; None where that is not known."""
    if not result.supply.battery:
        return 0.0
    standby = result.standby
    if standby is None or standby.held_ah is None or standby.at_least:
        return None
    if standby.held_ah >= standby.needed_ah:
        return standby.hours
    # By Peukert's law it lasts yet shorter than in proportion.
    return None if standby.peukert or not standby.needed_ah else standby.hours * standby.held_ah / standby.needed_ah


def _wires(circuit: CircuitResult) -> list[RunResult]:
    return [run for run in (*circuit.runs, *circuit.unsolved_runs) if not run.transfer]


def _behind(circuit: CircuitResult, marks: Mapping[str, str]) -> list[tuple[RunResult, tuple[str, ...]]]:
    """Return each run with the openings that no other way joins to the supply; those joined to nothing are left out."""
    runs = _wires(circuit)
    ways: dict[str, list[tuple[str, int]]] = {}
    for i, run in enumerate(runs):
        ways.setdefault(run.from_node, []).append((run.to_node, i))
        ways.setdefault(run.to_node, []).append((run.from_node, i))
    order = _reached(ways, None)
    openings = [each for each in _ordered(circuit.openings, marks) if each in order]
    if len(order) - 1 < sum(run.from_node in order for run in runs):
        # Runs that close a loop: where one of them is cut, power comes the other way round.
        lost = [_reached(ways, i) for i in range(len(runs))]
        return [
            (run, tuple(each for each in openings if each not in left)) for run, left in zip(runs, lost, strict=True)
        ]
    place = {each: i for i, each in enumerate(openings)}
    behind: dict[str, list[int]] = {node: [place[node]] if node in place else [] for node in order}
    found: dict[int, tuple[str, ...]] = {}
    for node, (before, run_at) in reversed(order.items()):
        if run_at is not None:
            found[run_at] = tuple(openings[i] for i in sorted(behind[node]))
            behind[before] += behind.pop(node)
    return [(run, found.get(i, ())) for i, run in enumerate(runs)]


def _reached(ways: Mapping[str, list[tuple[str, int]]], cut: int | None) -> dict[str, tuple[str, int | None]]:
    """Return the nodes that are joined to the supply, nearest first, each with the node and the run before it."""
    found: dict[str, tuple[str, int | None]] = {SUPPLY: (SUPPLY, None)}
    waiting = deque([SUPPLY])
    while waiting:
        here = waiting.popleft()
        for node, run_at in ways.get(here, ()):
            if node not in found and run_at != cut:
                found[node] = here, run_at
                waiting.append(node)
    return found


def on_alarm(result: SupplyResult) -> OnAlarm:
    """Return which openings of a supply lose and which keep their power on the fire alarm."""
    by_alarm: dict[str | None, list[str]] = {}
    for circuit in result.circuits:
        by_alarm.setdefault(circuit.circuit.alarm, []).extend(circuit.openings)
    told = {name: _ordered(openings, result.marks) for name, openings in by_alarm.items()}
    return OnAlarm(told.get("drops", ()), told.get("stays", ()), told.get(None, ()))


def without_power(result: SupplyResult, openings: Collection[str] | None = None) -> Mapping[str, Without]:
    """Say how openings stand without power: released, locked, or only their unit dead; as their devices declare it."""
    found: dict[str, Without] = {}
    for circuit in result.circuits:
        for opening in circuit.openings:
            if openings is None or opening in openings:
                found.setdefault(opening, "unit")
        for device in circuit.devices:
            if device.opening_id not in found or not device.fail:
                continue
            # One that stays locked holds the door, whatever else is released there.
            if device.fail == "fail-secure":
                found[device.opening_id] = "locked"
            elif found[device.opening_id] == "unit":
                found[device.opening_id] = "released"
    return found
