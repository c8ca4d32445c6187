"""The power slot: batteries in the unit or a low-voltage supply elsewhere."""

from dataclasses import replace

from hwsched.calc.battery import Battery, Drain, life
from hwsched.calc.calculator import InputError
from hwsched.calc.conductor import conductor
from hwsched.cases import BatteryLife, Case, Fit, FittedPart, Part
from hwsched.fitting.candidate import Judged, fitted, judged, offered, with_parts
from hwsched.rules.reading import leafless, rated, unit_part

SHARE = 0.8
"""Share of a supply's rating that is used; trade articles, 75 to 80 %."""
WASTE = 1.1
"""Allowance on a measured run; common practice."""
_CONDUCTOR_C = 30.0


def power_slot(case: Case, base: Fit) -> list[Judged]:
    """Judge batteries and supply; the wished one first, else batteries first."""
    unit = unit_part(case, base)
    if unit is None:
        return []
    ways = []
    for found in (_battery(case, base, unit), _supply(case, base, unit)):
        if found is not None:
            ways.append(judged(case, found, "power", unit.number, "battery" if found.power == "battery" else "supply"))
    if case.opening.power_wish == "supply":
        ways.sort(key=lambda way: way.fit.power != "supply")
    return ways


def _battery(case: Case, base: Fit, unit: Part) -> Fit | None:
    cell, count = unit.text_of("cell"), unit.number_of("cells")
    if not cell or not count:
        return None
    stocked = next((p for p in offered(case, "battery", "primary-battery") if p.text_of("designation") == cell), None)
    parts: list[FittedPart] = []
    pack: BatteryLife | None = None
    if stocked is not None:
        parts.append(fitted(case, "battery", stocked, f"the unit takes {count:g} cells {cell} in series", count))
        pack = _life(case, unit, stocked)
    parts += _coin(case, unit)
    return replace(with_parts(base, *parts), power="battery", battery=pack)


def _coin(case: Case, unit: Part) -> list[FittedPart]:
    coin = unit.text_of("coin_cell")
    stocked = next((p for p in offered(case, "coin-cell", "coin-cell") if p.text_of("designation") == coin), None)
    return [fitted(case, "coin-cell", stocked, "keeps the unit's clock and memory")] if coin and stocked else []


def _life(case: Case, unit: Part, cell: Part) -> BatteryLife | None:
    numbers = [
        cell.number_of("capacity_mah"),
        cell.number_of("usable_share"),
        cell.number_of("self_discharge_share"),
        unit.number_of("standing_ua"),
        unit.number_of("operation_ma"),
        unit.number_of("operation_s"),
        case.opening.operations_per_day,
    ]
    known = [number for number in numbers if number is not None]
    if len(known) != len(numbers):
        return None
    capacity, share, lost, standing, drawn, seconds, operations = known
    try:
        found = life(Battery(capacity, share, lost), Drain(standing, drawn, seconds), operations)
    except InputError:
        return None
    return BatteryLife(found.days, found.mah_per_day, capacity, share)


def _supply(case: Case, base: Fit, unit: Part) -> Fit | None:
    low, high, draws = (unit.number_of(f"supply_{name}") for name in ("low_v", "high_v", "a"))
    if low is None or high is None or draws is None:
        return None
    supply = _smallest(case, low, high, draws)
    if supply is None:
        return None
    volts = supply.number_of("output_v") or 0.0
    parts = [
        fitted(
            case, "supply", supply, f"the unit takes {low:g} to {high:g} V and {draws:g} A; {SHARE:.0%} of the rating is used"
        )
    ]  # fmt: skip
    transfer = _transfer(case)
    if transfer is not None and not leafless(case):
        parts.append(fitted(case, "power-transfer", transfer, "carries the supply from the frame onto the leaf"))
    run = case.opening.supply_distance_m
    if run is not None:
        least = volts * (1 - (supply.number_of("tolerance_share") or 0.0)) - low
        wire = _wire(case, draws, run, least)
        if wire is not None:
            metres = round(run * WASTE, 2)
            parts.append(
                fitted(case, "wire", wire, f"{run:g} m one way and 10 % allowance; keeps {low:g} V at the unit", metres)
            )
    parts += _coin(case, unit)
    return replace(with_parts(base, *parts), power="supply", battery=None)


def _smallest(case: Case, low: float, high: float, draws: float) -> Part | None:
    fitting = [
        (part.number_of("output_a") or 0.0, part.number, part)
        for part in offered(case, "supply", "power-supply")
        if low <= (part.number_of("output_v") or 0.0) <= high and (part.number_of("output_a") or 0.0) * SHARE >= draws
    ]
    return min(fitting)[2] if fitting else None


def _transfer(case: Case) -> Part | None:
    listed = rated(case) is not False
    found = [
        (part.list_price if part.list_price is not None else 1e9, part.number, part)
        for part in offered(case, "power-transfer", "power-transfer")
        if not listed or part.flag_of("fire_listed")
    ]
    return min(found)[2] if found else None


def _wire(case: Case, amps: float, metres: float, drop_v: float) -> Part | None:
    found = []
    for part in offered(case, "wire", "wire"):
        gauge, stranding = part.text_of("gauge"), part.text_of("stranding") or "stranded"
        if gauge is None:
            continue
        try:
            ohm_per_km = conductor(gauge, stranding, _CONDUCTOR_C).resistance_ohm_per_km
        except InputError:
            continue
        if 2 * metres / 1000 * ohm_per_km * amps <= drop_v:
            found.append((part.list_price if part.list_price is not None else 1e9, part.number, part))
    return min(found)[2] if found else None
