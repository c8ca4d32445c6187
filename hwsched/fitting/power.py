"""The power slot: batteries in the unit or a low-voltage supply elsewhere."""

from dataclasses import replace

from hwsched.calc.calculator import InputError
from hwsched.calc.power.battery import Battery, Drain, life_by_weekday
from hwsched.calc.power.cells import cold_share
from hwsched.calc.power.conductor import conductor, drop_v
from hwsched.fitting.candidate import Judged, by_hand, cheapest, chosen_by, fitted, judged, offered, with_parts, worth
from hwsched.rules import judge, limits_of
from hwsched.rules.power.busy_on_supply import RULE as BUSY_ON_SUPPLY
from hwsched.rules.power.busy_on_supply import electric_release
from hwsched.rules.power.supply_drop import RULE as SUPPLY_DROP
from hwsched.rules.power.supply_share import RULE as SUPPLY_SHARE
from hwsched.rules.reading import carries_power, in_role, leafless, rated, shared_supply, unit_part
from hwsched.values import BatteryLife, Case, Fit, FittedPart, Part, Role

_WASTE = 1.1
"""Allowance on a measured run; common practice."""


def power_slot(case: Case, base: Fit) -> tuple[Judged, ...]:
    """Judge the ways to feed the unit, the preferred one first: as wished, else by how busy the opening is."""
    unit = unit_part(case, base)
    if unit is None:
        return ()
    base = with_parts(base, *_strikes(case))
    found = []
    for source in _sources(case):
        partial = _battery(case, base, unit) if source == "battery" else _supply(case, base, unit)
        role: Role = "battery" if source == "battery" else "supply"
        found.append(judged(case, partial, "power", unit.number, role))
    return tuple(found)


def undecided(case: Case) -> tuple[str, ...]:
    """Name what is missing to choose between batteries and a supply."""
    if (
        case.feed is not None
        or case.opening.power_wish in ("battery", "supply")
        or by_hand(case, "battery")
        or by_hand(case, "supply")
    ):
        return ()
    if case.opening.operations_per_day is None and not electric_release(case):
        return ("opening.operations_per_day",)
    return ()


def _sources(case: Case) -> tuple[str, ...]:
    wish = case.opening.power_wish
    if case.feed is not None or by_hand(case, "supply"):
        return ("supply",)
    if by_hand(case, "battery"):
        return ("battery",)
    if wish in ("battery", "supply"):
        return (wish,)
    most = limits_of(BUSY_ON_SUPPLY, case.settings)["operations"]
    if (case.opening.operations_per_day or 0.0) > most or electric_release(case):
        return ("supply", "battery")
    return ("battery", "supply")


# --- batteries ----------------------------------------------------------------------------------------------------


def _battery(case: Case, base: Fit, unit: Part) -> Fit:
    cell, count = unit.text_of("cell"), unit.number_of("cells")
    parts: list[FittedPart] = []
    pack: BatteryLife | None = None
    stock = offered(case, "battery", "primary-battery")
    stocked = cheapest(
        case, [part for part in stock if by_hand(case, "battery") or part.text_of("designation") == cell]
    )
    if stocked is not None and cell and count:
        parts.append(fitted(case, "battery", stocked, f"the unit takes {count:g} cells {cell} in series", count))
        pack = _life(case, unit, stocked)
    parts += _coin(case, unit)
    return replace(with_parts(base, *parts), power="battery", battery=pack)


def _coin(case: Case, unit: Part) -> list[FittedPart]:
    coin = unit.text_of("coin_cell")
    stocked = cheapest(case, [p for p in offered(case, "coin-cell", "coin-cell") if p.text_of("designation") == coin])
    return [fitted(case, "coin-cell", stocked, "keeps the unit's clock and memory")] if coin and stocked else []


def _life(case: Case, unit: Part, cell: Part) -> BatteryLife | None:
    capacity, share, lost = (cell.number_of(name) for name in ("capacity_mah", "usable_share", "self_discharge_share"))
    standing, drawn, seconds = (unit.number_of(name) for name in ("standing_ua", "operation_ma", "operation_s"))
    operations = case.opening.operations_per_day
    if capacity is None or share is None or lost is None or operations is None:
        return None
    if standing is None or drawn is None or seconds is None:
        return None
    cold = cold_share(cell.text_of("chemistry"), case.opening.temperature_low_c)
    if cold is None:
        return None
    off = case.opening.operations_day_off
    week = (operations,) * 5 + (operations if off is None else off,) * 2
    try:
        found = life_by_weekday(Battery(capacity, share, lost, cold), Drain(standing, drawn, seconds), week, None)
    except InputError:
        return None
    return BatteryLife(found.days, found.mah_per_day, capacity, share, cold)


# --- supply -------------------------------------------------------------------------------------------------------


def _supply(case: Case, base: Fit, unit: Part) -> Fit:
    low, high, draws = (unit.number_of(f"supply_{name}") for name in ("low_v", "high_v", "a"))
    fed = replace(base, power="supply", battery=None)
    if low is None or high is None or draws is None:
        return fed
    if case.feed is not None:
        # Supply and wire belong to the circuit: they are counted once for all that hang on it.
        return with_parts(fed, *_onto_leaf(case), *_coin(case, unit))
    if not by_hand(case, "supply") and _shares(case, fed, low, high):
        # The supply and the wire of an earlier lock point of the opening carry this one too.
        return with_parts(fed, *_onto_leaf(case), *_coin(case, unit))
    share = limits_of(SUPPLY_SHARE, case.settings)["share"]
    source = _smallest(case, low, high, draws / share)
    if source is None:
        return fed
    why = f"the unit takes {low:g} to {high:g} V and {draws:g} A; {share:.0%} of the rating is used"
    parts = [fitted(case, "supply", source, why), *_onto_leaf(case)]
    run, volts = case.opening.supply_distance_m, source.number_of("output_v")
    tolerance = source.number_of("tolerance_share")
    if run is not None and volts is not None and tolerance is not None:
        least = volts * (1 - tolerance)
        wire = _wire(case, draws, run, least - low)
        if wire is not None:
            why = f"{run:g} m one way and {_WASTE - 1:.0%} allowance; keeps {low:g} V at the unit"
            parts.append(fitted(case, "wire", wire, why, round(run * _WASTE, 2)))
    parts += _coin(case, unit)
    return with_parts(fed, *parts)


def _shares(case: Case, fed: Fit, low: float, high: float) -> bool:
    """Tell whether the supply of an earlier lock point suits and carries this one as well, its wire included."""
    shared = shared_supply(case)
    supply = in_role(case, shared, "supply") if shared is not None else None
    volts = supply.number_of("output_v") if supply is not None else None
    if volts is None or not low <= volts <= high:
        return False
    return not any(judge(rule, case, fed) for rule in (SUPPLY_SHARE, SUPPLY_DROP))


def _smallest(case: Case, low: float, high: float, needed_a: float) -> Part | None:
    """Return the cheapest supply that serves; the one chosen by hand as it is; failing that the strongest that is."""
    stock = offered(case, "supply", "power-supply")
    if by_hand(case, "supply"):
        return stock[0] if stock else None
    right = [
        part for part in stock if low <= (part.number_of("output_v") or -1.0) <= high and part.flag_of("regulated")
    ]
    serving = [part for part in right if (part.number_of("output_a") or 0.0) >= needed_a - 1e-9]
    if serving:
        return min(serving, key=lambda part: (not part.flag_of("class_2"), worth(part, case.exchange), part.number))
    return max(right or stock, key=lambda part: (part.number_of("output_a") or 0.0, part.number), default=None)


def _strikes(case: Case) -> list[FittedPart]:
    """Return what was chosen by hand, or by the hardware set, to let go of the latch from the frame."""
    return [
        fitted(case, "strike", part, chosen_by(case, "strike"), choice.quantity)
        for choice in case.chosen
        if choice.role == "strike" and (part := case.catalogue.get(choice.part)) is not None
    ]


def _onto_leaf(case: Case) -> list[FittedPart]:
    transfer = _transfer(case)
    if transfer is None:
        return []
    return [fitted(case, "power-transfer", transfer, "carries the supply from the frame onto the leaf")]


def _transfer(case: Case) -> Part | None:
    if leafless(case) or carries_power(case):
        return None
    must_be_listed = rated(case) is not False
    return cheapest(
        case,
        [
            part
            for part in offered(case, "power-transfer", "power-transfer")
            if part.flag_of("fire_listed") or not must_be_listed
        ],
    )


def _wire(case: Case, amps: float, metres: float, drop_allowed_v: float) -> Part | None:
    """Return the cheapest wire that leaves the unit its voltage; failing that the thickest."""
    warm = limits_of(SUPPLY_DROP, case.settings)["temperature_c"]
    resisting: list[tuple[float, Part]] = []
    for part in offered(case, "wire", "wire"):
        gauge = part.text_of("gauge")
        if gauge is None:
            continue
        try:
            found = conductor(gauge, part.text_of("stranding") or "stranded", warm)
        except InputError:
            continue
        resisting.append((found.resistance_ohm_per_km, part))
    serving = [part for ohm, part in resisting if drop_v(metres, amps, ohm) <= drop_allowed_v + 1e-9]
    if serving:
        return cheapest(case, serving)
    return min(resisting, key=lambda entry: (entry[0], entry[1].number))[1] if resisting else None
