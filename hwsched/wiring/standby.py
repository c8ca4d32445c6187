"""The standby battery of a supply: what it must hold for the hours asked."""

from collections.abc import Mapping
from math import fsum
from typing import Final

from hwsched.attributes.of_parts import CAPACITY_AH, HOURS_RATE, OPERATION_S, VOLTAGE_V
from hwsched.calc.power import standby as sizing_of
from hwsched.calc.power.supply_practice import duty_equivalent_a
from hwsched.calc.tables import rows
from hwsched.rules import limits_of, rule_named
from hwsched.rules.network.devices import amps
from hwsched.values import Catalogue, OpeningInput, Settings
from hwsched.values.power import Standby, SupplyResult

_STANDBY_CAPACITY: Final = rule_named("standby-capacity")


def size_standby(
    result: SupplyResult, inputs: Mapping[str, OpeningInput], catalogue: Catalogue, settings: Settings
) -> Standby | None:
    """Size the standby battery of a supply; None where no hours are asked or nothing of it is worked out.

    Notes
    -----
    Load: what is drawn at rest, and operations by their charge (current, time and number a day); what is unknown is not
    counted, and the result says so. Capacity: sum of
    current and time, by margin, ageing and temperature; source of each in `hwsched.calc.power.standby`.
    """
    supply = result.supply
    if not supply.standby_hours or result.held_a is None or result.output_v is None:
        return None
    if result.holding_a is None and not any(circuit.devices for circuit in result.circuits):
        return None
    limits = limits_of(_STANDBY_CAPACITY, settings)
    loads: list[float] = []
    needs: dict[str, None] = {}
    assumed: dict[str, None] = {}
    held_s = _held_s(result, catalogue)
    for circuit in result.circuits:
        for device in circuit.devices:
            rest = amps(device, device.holding, result.output_v)
            loads.append(rest)
            added = max(0.0, amps(device, device.peak, result.output_v) - rest)
            given = inputs.get(device.opening_id)
            if added <= 0.0 or given is None:
                continue
            day = given.opening.operations_per_day
            if day is None:
                needs["opening.operations_per_day"] = None
                continue
            seconds = held_s.get(device.opening_id)
            if seconds is None:
                seconds = limits["release_s"]
                assumed[f"{device.part} at {device.mark} held {seconds:g} s an operation"] = None
            if seconds and day:
                # Spread over the whole day, and never more than an hour can hold: standby is a matter of charge, not
                # of one busy hour.
                loads.append(duty_equivalent_a(added, seconds, min(day / 24, 3600 / seconds)))
    load_a = fsum(loads)
    battery = catalogue.get(supply.battery) if supply.battery else None
    volts = battery.number_of(VOLTAGE_V) if battery is not None else None
    # Without batteries in the catalogue the usual sizes still tell what has to be bought.
    sizes = sorted(
        capacity
        for part in catalogue.of_kind("standby-battery")
        if (capacity := part.number_of(CAPACITY_AH)) is not None
        and (volts is None or part.number_of(VOLTAGE_V) == volts)
    ) or [row.number("size_ah") for row in rows("standby_sizes")]
    peukert = None
    # At an exponent of one the law says nothing; leaving it out keeps the plain sum of currents and hours.
    if limits["peukert"] > 1.0:
        hours = battery.number_of(HOURS_RATE) if battery is not None else None
        # The battery's own rate where its sheet tells one: the law's capacity belongs to the hours of its rating.
        if hours is None:
            assumed[f"capacity rated over {limits['rated_hours']:g} h"] = None
        peukert = sizing_of.Peukert(hours or limits["rated_hours"], limits["peukert"])
    needed = sizing_of.sizing(
        [sizing_of.Phase(load_a, supply.standby_hours)],
        limits["margin"],
        sizes,
        limits["ageing"],
        supply.temperature_c,
        peukert,
    )
    held = battery.number_of(CAPACITY_AH) if battery is not None else None
    return Standby(
        supply.standby_hours, load_a, limits["margin"], limits["ageing"], supply.temperature_c, needed.needed_ah,
        needed.size_ah, held, "" if peukert is None else f"Peukert, {sizing_of.STATED_HOURS_FORM} form, exponent "
        f"{peukert.exponent:g} at {peukert.rated_hours:g} h", result.holding_a is None or bool(needs), tuple(needs),
        tuple(assumed),
    )  # fmt: skip


def _held_s(result: SupplyResult, catalogue: Catalogue) -> dict[str, float]:
    """Return how long an operation lasts, by opening: what hangs beside a unit is held as long as the unit has it."""
    found: dict[str, float] = {}
    for circuit in result.circuits:
        for device in circuit.devices:
            part = catalogue.get(device.part)
            seconds = part.number_of(OPERATION_S) if part is not None else None
            if seconds is not None:
                found[device.opening_id] = max(seconds, found.get(device.opening_id, 0.0))
    return found
