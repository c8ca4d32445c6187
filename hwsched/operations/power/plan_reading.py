"""Openings, places and wires of a project as the planner takes them, and what is missing of each.

Here belongs reading; what is asked of the planner and proved of its answer stands in `power_planning`.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from math import fsum
from typing import Final

from hwsched.attributes.of_parts import (
    CURRENT,
    GAUGE,
    OUTPUT_A,
    OUTPUT_V,
    STANDBY_V,
    STRANDING,
    TOLERANCE_SHARE,
    VOLTAGE_V,
)
from hwsched.calc.parts.cost import LABOUR, Cost, Job, exact
from hwsched.calc.power import circuit_states
from hwsched.calc.power.cable_distance import PlanPoint, route_distance
from hwsched.calc.power.circuit_tree import SUPPLY as AT_SUPPLY
from hwsched.calc.power.conductor import conductor, loop_ohm
from hwsched.calc.power.planning.question import Drawn, Wire
from hwsched.calc.power.supply_practice import wire_waste
from hwsched.calc.project.labour import LabourTable, Task, labour
from hwsched.fitting.costing import cost_in, hours_of, line_of, terms_of
from hwsched.quantities.money import product
from hwsched.rules import limits_of, rule_named
from hwsched.rules.network.circuit_laying import LaidCircuit, laid_circuit
from hwsched.rules.network.circuit_source import CircuitSource, SolvingLimits
from hwsched.rules.network.devices import amps, devices_at
from hwsched.values import Catalogue, Opening, Part, Settings
from hwsched.values.power import Circuit, Device, Run, Supply
from hwsched.values.terms import CostTerms
from hwsched.wiring import ConnectedOpening
from hwsched.wiring.circuits import circuit_source
from hwsched.wiring.distances import Heights

_CIRCUIT_VOLTAGE: Final = rule_named("circuit-voltage")
_SUPPLY_LOADING: Final = rule_named("supply-loading")
_REFERENCE_C: Final = 20.0
_SHORTEST_M: Final = 0.1
"""A run of no length cannot be."""
_LEAST_V: Final = 1e-3
_OTHER_BATTERY_V: Final = 0.5


class Prices:
    """Prices of parts with the work at them, in the project's currency."""

    def __init__(self, catalogue: Catalogue, terms: CostTerms) -> None:
        self._catalogue, self._terms = catalogue, terms_of(terms, catalogue)
        self._hours: LabourTable = hours_of(terms)

    def supply(self, number: str) -> tuple[float, tuple[str, ...], bool]:
        """Return the price of a supply with its mounting, what is missing of it, and whether its work has a price."""
        work = labour([Task("mount-supply", 1)], self._hours).hours
        return self._told(Job([line_of(number, 1, self._catalogue)], work))

    def wire(self, number: str) -> tuple[float, tuple[str, ...], bool]:
        """Return the price of a metre of a wire as it is laid, with what is cut off and the work of laying it."""
        metres = product(exact(1, "length of wire"), exact(wire_waste(), "waste"))
        work = labour([Task("lay-wire", 1)], self._hours).hours
        return self._told(Job([line_of(number, metres, self._catalogue)], work))

    def _told(self, job: Job) -> tuple[float, tuple[str, ...], bool]:
        cost: Cost = cost_in(job, self._terms)
        parts = tuple(need for each in cost.unknown if each.about != LABOUR for need in each.needs)
        return float(cost.total), parts, any(each.about == LABOUR for each in cost.unknown)


def standing_of(
    supply: Supply, part: Part, catalogue: Catalogue, settings: Settings
) -> "tuple[circuit_states.Source, CircuitSource, float, float] | str":
    """Return source, supply as circuits see it, current that may be used and least volts, or what is missing.

    Parameters
    ----------
    supply : Supply
        Of the place.
    part : Part
        That stands there, or may stand there.
    catalogue, settings : Catalogue, Settings
        Parts; limits of the rules.
    """
    battery = catalogue.get(supply.battery) if supply.battery is not None else None
    seen = circuit_source(replace(supply, part=part.number), part, battery, catalogue, settings)
    rated = part.number_of(OUTPUT_A)
    if seen.source is None or rated is None:
        missing = next(n for n in (OUTPUT_V, OUTPUT_A, TOLERANCE_SHARE) if part.number_of(n) is None)
        return f"unknown: needs part {part.number}.{missing}"
    if part.text_of(CURRENT) is None:
        return f"unknown: needs part {part.number}.current"
    if seen.current != "dc":
        return f"{part.number} gives AC, for which no runs are worked out"
    if battery is not None:
        wanted, one_v = part.number_of(STANDBY_V), battery.number_of(VOLTAGE_V)
        count = supply.batteries or 1
        if wanted is not None and one_v is not None and abs(one_v * count - wanted) >= _OTHER_BATTERY_V:
            return f"{part.number} takes a standby battery of {wanted:g} V"
    used = rated * limits_of(_SUPPLY_LOADING, settings)["share"]
    source = seen.source
    least = source.lowest_v - source.ohm * used
    if source.battery_end_v is not None:
        least = min(least, source.battery_end_v - source.battery_ohm * used)
    return source, seen, used, least


def drawn_of(
    connected: ConnectedOpening,
    circuit: Circuit,
    standing: CircuitSource,
    least_v: float,
    limits: SolvingLimits,
) -> Drawn | None:
    """Return what an opening draws of a supply at most, and the voltage that it needs at its frame; None unsuited.

    Notes
    -----
    Constant power is taken at the lowest voltage that its device stands, a resistance at the supply's terminals: both
    are above what flows, so that what suffices here suffices in the proof.
    """
    source = standing.source
    own, missing = devices_at(connected)
    if source is None or missing or not own:
        return None
    opening = connected.given.opening.id
    stub = Run("", circuit.id, AT_SUPPLY, opening, opening, 1e-6, None, "18 AWG", "stranded")
    laid = laid_circuit(
        circuit, standing, [stub], {opening: (own, ())}, {opening: connected}, limits, {}
    )  # fmt: skip
    if laid.problems or laid.unsure or len(laid.at) != len(own):
        return None
    highest = source.highest_v or source.normal_v
    if any(highest > device.maximum_v for device in own):
        return None
    rest = [_amps(device, device.holding, least_v) for device in laid.devices]
    first = [
        max(r, _amps(device, device.peak if device.inrush is None else device.inrush, least_v))
        for device, r in zip(laid.devices, rest, strict=True)
    ]
    held = fsum(
        max(amps(d, d.holding, source.normal_v), amps(d, d.peak, source.normal_v)) for d in own
    )  # fmt: skip
    needed = max(
        device.minimum_v + fsum(ohm * amount for ohm, amount in zip(_shared(laid, node), first, strict=True))
        for device, node in zip(laid.devices, laid.at, strict=True)
    )
    return Drawn(held, fsum(rest), fsum(first), needed)


def _amps(device: Device, value: float, least_v: float) -> float:
    volts = max(device.minimum_v, _LEAST_V) if device.kind == "power" else max(least_v, _LEAST_V)
    return amps(device, value, volts)


def _shared(laid: LaidCircuit, node: str) -> list[float]:
    """Resistance that each device shares with a node behind the opening's frame [ohm]."""
    tree = laid.tree
    on_way = set(tree.path(node)[1:])
    by_run = {run: ohm for run, ohm in zip(tree.run, tree.ohm, strict=True) if run >= 0}
    return [fsum(by_run[run] for run in tree.path(at)[1:] if run in on_way) for at in laid.at]


def wires_of(catalogue: Catalogue, only: str | None, prices: Prices) -> tuple[list[Wire], list[str], bool]:
    """Return the wires that may be bought, why others are left out, and whether work has no price."""
    found, left_out, unpriced = [], [], False
    for part in catalogue.of_kind("wire"):
        if (only is not None and part.number != only) or (only is None and part.superseded_by):
            continue
        gauge, stranding = part.text_of(GAUGE), part.text_of(STRANDING)
        if gauge is None or stranding is None:
            fact = "gauge" if gauge is None else "stranding"
            left_out.append(f"{part.number}: unknown: needs part {part.number}.{fact}")
            continue
        cost, lacking, work = prices.wire(part.number)
        unpriced |= work
        if lacking:
            left_out.append(f"{part.number}: its price is unknown: needs {', '.join(lacking)}")
            cost = float("nan")
        ohm = loop_ohm(1.0, conductor(gauge, stranding, _REFERENCE_C).resistance_ohm_per_km)
        found.append(Wire(part.number, ohm, cost))
    return found, left_out, unpriced


def warmth_of(circuit: Circuit | None, settings: Settings) -> float:
    """Return the resistance of a circuit's warm conductors over that of cold ones, the same for all sizes."""
    warm = circuit.temperature_c if circuit is not None else None
    if warm is None:
        warm = limits_of(_CIRCUIT_VOLTAGE, settings)["temperature_c"]
    cold = conductor("18 AWG", "stranded", _REFERENCE_C).resistance_ohm_per_km
    return conductor("18 AWG", "stranded", warm).resistance_ohm_per_km / cold


def between_m(
    openings: Sequence[Opening], heights: Heights, laid: Mapping[frozenset[str], float]
) -> list[list[float | None]]:
    """Return the cable ways between openings [m]; None where a fact is missing.

    As long as the run that lies there, else estimated from level, plan and rise.
    """
    return [[None if one is other else _way(one, other, heights, laid) for other in openings] for one in openings]


def _way(one: Opening, other: Opening, heights: Heights, laid: Mapping[frozenset[str], float]) -> float | None:
    known = laid.get(frozenset((one.id, other.id)))
    if known is not None:
        return max(known, _SHORTEST_M)
    if one.building != other.building:
        return None
    same = one.level == other.level and one.level is not None
    points = []
    for each in (one, other):
        level_m = 0.0 if same else heights.get((each.building, each.level))
        if level_m is None or each.plan_x_m is None or each.plan_y_m is None or each.rise_m is None:
            return None
        points.append(PlanPoint(level_m, each.plan_x_m, each.plan_y_m, each.rise_m))
    return max(route_distance(points[0], points[1]).metres, _SHORTEST_M)
