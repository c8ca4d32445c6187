"""Wire take-off: how much of which wire, how many reels, transfers and boxes, by building."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from math import ceil, floor
from typing import Final

from hwsched.attributes.of_parts import REEL_M
from hwsched.calc.parts.cutting import cut
from hwsched.calc.power.supply_practice import wire_waste
from hwsched.values import Catalogue
from hwsched.values.power import RunResult, SupplyResult

_STEPS_A_METRE: Final = 100
_TOUCH: Final = 1e-6


@dataclass(frozen=True, slots=True)
class WireLine:
    """One wire in one building."""

    building: str
    part: str
    """Catalogue number; empty where runs name a gauge only."""
    gauge: str
    stranding: str
    length_m: float
    """Of the runs, conductors in parallel counted [m]."""
    with_waste_m: float
    reel_m: float | None
    reels: int | None
    """Whole reels, each run cut from one; None where the catalogue does not say how long one is."""
    runs: int
    fewest: int | None = None
    """No cutting needs fewer reels; equal to the reels where that is proved."""
    cuts: tuple[tuple[str, ...], ...] = ()
    """Runs that are cut from each reel."""
    spliced: int = 0
    """Runs that are longer than a reel."""


@dataclass(frozen=True, slots=True)
class DeviceLine:
    """Transfers or boxes in one building."""

    building: str
    part: str
    text: str
    quantity: int


def wire_lines(supplies: tuple[SupplyResult, ...], catalogue: Catalogue) -> tuple[WireLine, ...]:
    """Add up the runs by building and conductor.

    Parameters
    ----------
    supplies : tuple of SupplyResult
        With their circuits.
    catalogue : Catalogue
        Says how long a reel is.
    """
    totals: dict[tuple[str, str, str, str], tuple[float, int]] = {}
    pieces: dict[tuple[str, str, str, str], list[tuple[str, float]]] = {}
    for supply in supplies:
        for circuit in supply.circuits:
            for run in (*circuit.runs, *circuit.unsolved_runs):
                # A transfer is bought by the piece, its wire with it.
                if run.transfer:
                    continue
                key = (supply.supply.building or "", run.part, run.gauge, run.stranding)
                length, count = totals.get(key, (0.0, 0))
                # Conductors side by side are bought as often as they lie there.
                totals[key] = length + run.length_m * run.parallel, count + 1
                name = f"{supply.supply.name}/{circuit.circuit.name} {run.from_name} to {run.to_name}"
                pieces.setdefault(key, []).extend([(name, run.length_m)] * run.parallel)
    lines = []
    for (building, number, gauge, stranding), (length, count) in sorted(totals.items()):
        part = catalogue.get(number) if number else None
        reel = part.number_of(REEL_M) if part is not None else None
        needed = length * wire_waste()
        line = WireLine(building, number, gauge, stranding, length, needed, reel, None, count)
        lines.append(_cut(line, pieces[building, number, gauge, stranding], reel) if reel else line)
    return tuple(lines)


def _cut(line: WireLine, runs: Sequence[tuple[str, float]], reel_m: float) -> WireLine:
    """Cut every run from one reel; one that is longer takes whole reels and its rest from another."""
    stock = floor(reel_m * _STEPS_A_METRE + _TOUCH)
    names: list[str] = []
    lengths: list[int] = []
    spliced = 0
    for name, length_m in runs:
        # Ends and slack are cut with their run. Up to the centimetre, less a touch of what binary adds.
        left = ceil(length_m * wire_waste() * _STEPS_A_METRE - _TOUCH)
        spliced += left > stock
        while left > 0:
            names.append(name)
            lengths.append(min(left, stock))
            left -= stock
    found = cut(lengths, stock)
    cuts = tuple(tuple(names[i] for i in each) for each in found.stock)
    return replace(line, reels=len(cuts), fewest=found.fewest, cuts=cuts, spliced=spliced)


def device_lines(supplies: tuple[SupplyResult, ...]) -> tuple[DeviceLine, ...]:
    """Count transfers at the leaves, and a junction box at every place where runs meet."""
    counts: dict[tuple[str, str, str], int] = {}
    for supply in supplies:
        building = supply.supply.building or ""
        for circuit in supply.circuits:
            joints: Mapping[str, int] = _ends((*circuit.runs, *circuit.unsolved_runs))
            for run in (*circuit.runs, *circuit.unsolved_runs):
                # One that stands there already is bought no more, and what leads back through one came with it.
                if run.transfer and run.part:
                    key = (building, run.part, "power transfer")
                    counts[key] = counts.get(key, 0) + 1
            # At the supply the terminals are its own.
            boxes = sum(count > 1 for node, count in joints.items() if node != "supply")
            if boxes:
                counts[building, "", "junction box"] = counts.get((building, "", "junction box"), 0) + boxes
    return tuple(DeviceLine(building, part, text, n) for (building, part, text), n in sorted(counts.items()))


def _ends(runs: tuple[RunResult, ...]) -> dict[str, int]:
    ends: dict[str, int] = {}
    for run in runs:
        if not run.transfer:
            for node in (run.from_node, run.to_node):
                ends[node] = ends.get(node, 0) + 1
    return ends
