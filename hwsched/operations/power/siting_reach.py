"""How far, and for how much, a supply can feed an opening: what a siting needs to know of each pair.

The siting itself stands in `siting`; the volts of what it proposes are proved afterwards by `hwsched.wiring`.
"""

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from math import fsum
from typing import Final

from hwsched.attributes.of_parts import OUTPUT_A, OUTPUT_V, RATING_A, TOLERANCE_SHARE
from hwsched.calc.power.circuit_tree import Run
from hwsched.calc.power.conductor import conductor, longest_run_m, loop_ohm
from hwsched.model.errors import ValueRefusedError
from hwsched.rules import limits_of, rule_named
from hwsched.rules.network.devices import amps, on_leaf, unsuited
from hwsched.values import Catalogue, Settings
from hwsched.values.power import Circuit, Device, PowerResult, Supply
from hwsched.wiring.circuits import circuit_source

_CIRCUIT_LIMITER: Final = rule_named("circuit-limiter")
_CIRCUIT_VOLTAGE: Final = rule_named("circuit-voltage")
_SUPPLY_LOADING: Final = rule_named("supply-loading")


@dataclass(frozen=True, slots=True)
class CandidatePlace:
    """A supply that stands, or may stand, as its openings see it."""

    amps: float
    """Of its rating, the share that is used [A]."""
    normal_v: float
    least_v: float
    """At its terminals in the worst state, everything drawn that is used [V]."""
    current: str
    """dc or ac."""
    warm_c: float
    """Of the conductors of the circuit that a siting lays [degC]."""


@dataclass(frozen=True, slots=True)
class Demanded:
    """What an opening hangs on its circuit."""

    devices: tuple[Device, ...]
    transfer: Run | None
    """Of its power transfer, from the frame onto the leaf."""


def place_of(supply: Supply, circuit: Circuit | None, catalogue: Catalogue, settings: Settings) -> CandidatePlace:
    """Read a supply; raises ValueRefusedError naming what is missing of it.

    Parameters
    ----------
    supply : Supply
        With its part, and its standby battery where it has one.
    circuit : Circuit or None
        Onto which a siting hangs openings, where it is laid already.
    catalogue, settings : Catalogue, Settings
        Parts; limits of the rules.
    """
    part = catalogue.get(supply.part) if supply.part is not None else None
    if part is None:
        raise ValueRefusedError(supply.name, "unknown: needs the power supply that stands or may stand there")
    rated = part.number_of(OUTPUT_A)
    battery = catalogue.get(supply.battery) if supply.battery is not None else None
    seen = circuit_source(supply, part, battery, catalogue, settings)
    source = seen.source
    if source is None or rated is None:
        missing = next(n for n in (OUTPUT_V, OUTPUT_A, TOLERANCE_SHARE) if part.number_of(n) is None)
        raise ValueRefusedError(supply.name, f"unknown: needs part {part.number}.{missing}")
    if seen.current is None:
        raise ValueRefusedError(supply.name, f"unknown: needs part {part.number}.current")
    used = rated * limits_of(_SUPPLY_LOADING, settings)["share"]
    least = source.lowest_v - source.ohm * used
    if source.battery_end_v is not None:
        least = min(least, source.battery_end_v - source.battery_ohm * used)
    warm = circuit.temperature_c if circuit is not None else None
    if warm is None:
        warm = limits_of(_CIRCUIT_VOLTAGE, settings)["temperature_c"]
    return CandidatePlace(used, source.normal_v, least, seen.current, warm)


def suits(demanded: Demanded, place: CandidatePlace, catalogue: Catalogue) -> bool:
    """Tell whether all devices of an opening take a supply's voltage and kind of current."""
    return not any(
        unsuited(device, catalogue.get(device.part), place.normal_v, place.current) for device in demanded.devices
    )


def held_a(demanded: Demanded, volts: float) -> float:
    """Sum what an opening draws with everything held at once, as the share of a supply is reckoned [A]."""
    return fsum(max(amps(d, d.holding, volts), amps(d, d.peak, volts)) for d in demanded.devices)


def reach_m(demanded: Demanded, place: CandidatePlace, catalogue: Catalogue, ohm_per_km: float) -> float:
    """Longest run of its own on which all devices of an opening keep their lowest voltage, all of them starting [m]."""
    frame = [(d, _most_a(d, place)) for d in demanded.devices if not on_leaf(d, catalogue.get(d.part))]
    leaf = [(d, _most_a(d, place)) for d in demanded.devices if on_leaf(d, catalogue.get(d.part))]
    lost = _transfer_ohm(demanded.transfer, place.warm_c) * fsum(drawn for _, drawn in leaf)
    least = max([*(d.minimum_v for d, _ in frame), *(d.minimum_v + lost for d, _ in leaf)])
    drawn = fsum(each for _, each in (*frame, *leaf))
    if place.least_v <= least:
        return 0.0
    return longest_run_m(place.least_v, least, drawn, ohm_per_km) if drawn > 0 else float("inf")


def limiter_left_a(
    before: PowerResult,
    circuit: Circuit | None,
    demanded: Collection[str],
    catalogue: Catalogue,
    settings: Settings,
) -> float:
    """Return what may be hung on a circuit whose limiter a person has chosen [A]; without one nothing bounds it."""
    part = catalogue.get(circuit.limiter) if circuit is not None and circuit.limiter else None
    rating = part.number_of(RATING_A) if part is not None else None
    if circuit is None or rating is None:
        return float("inf")
    stays = 0.0
    for supply in before.supplies:
        for each in supply.circuits:
            if each.circuit.id == circuit.id and supply.output_v is not None:
                volts = supply.output_v
                held = [d for d in each.devices if d.opening_id not in demanded]
                stays += fsum(max(amps(d, d.holding, volts), amps(d, d.peak, volts)) for d in held)
                stays += each.held_a[1] - each.held_a[0] if each.held_a is not None else 0.0
    return max(rating / limits_of(_CIRCUIT_LIMITER, settings)["margin"] - stays, 0.0)


def _transfer_ohm(transfer: Run | None, warm_c: float) -> float:
    if transfer is None:
        return 0.0
    ohm_per_km = conductor(transfer.gauge, transfer.stranding, warm_c).resistance_ohm_per_km
    return loop_ohm(transfer.length_m, ohm_per_km) + transfer.extra_ohm


def _most_a(device: Device, place: CandidatePlace) -> float:
    """Return the most that a device draws down to its lowest voltage; a constant power draws most there [A]."""
    volts = max(device.minimum_v, 1e-3) if device.kind == "power" else max(place.least_v, 1e-3)
    values: Sequence[float] = [device.holding, device.peak]
    if device.inrush is not None:
        values = [*values, device.inrush]
    return max(amps(device, value, volts) for value in values)
