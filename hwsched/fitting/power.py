"""The power slot: batteries in the unit or a low-voltage supply elsewhere."""

from dataclasses import replace
from typing import Final

from hwsched.attributes.of_parts import (
    CAPACITY_MAH,
    CELL,
    CELLS,
    CHEMISTRY,
    CLASS_2,
    COIN_CELL,
    DESIGNATION,
    FIRE_LISTED,
    GAUGE,
    OPERATION_MA,
    OPERATION_S,
    OUTPUT_A,
    OUTPUT_V,
    REGULATED,
    SELF_DISCHARGE_SHARE,
    STANDING_UA,
    STRANDING,
    SUPPLY_A,
    SUPPLY_HIGH_V,
    SUPPLY_LOW_V,
    TOLERANCE_SHARE,
    USABLE_SHARE,
)
from hwsched.calc.calculator import InputError
from hwsched.calc.power.battery import Battery, Drain, life_by_weekday
from hwsched.calc.power.cells import cold_share
from hwsched.calc.power.conductor import conductor, drop_v
from hwsched.calc.power.supply_practice import wire_waste
from hwsched.fitting.candidate import Judged, by_hand, cheapest, chosen_by, fit_part, judged, offered, with_parts, worth
from hwsched.rules import judge, limits_of, rule_named
from hwsched.rules.reading import carries_power, electric_release, in_role, leafless, rated, shared_supply, unit_part
from hwsched.values import BatteryLife, Fit, FitPart, OpeningInput, Part, Role

_BUSY_ON_SUPPLY: Final = rule_named("busy-on-supply")
_SUPPLY_DROP: Final = rule_named("supply-drop")
_SUPPLY_SHARE: Final = rule_named("supply-share")


def power_slot(given: OpeningInput, base: Fit) -> tuple[Judged, ...]:
    """Judge the ways to feed the unit, the preferred one first: as wished, else by how busy the opening is."""
    unit = unit_part(given, base)
    if unit is None:
        return ()
    base = with_parts(base, *_strikes(given))
    found = []
    for source in _sources(given):
        partial = _battery(given, base, unit) if source == "battery" else _supply(given, base, unit)
        role: Role = "battery" if source == "battery" else "supply"
        found.append(judged(given, partial, "power", unit.number, role))
    return tuple(found)


def undecided(given: OpeningInput) -> tuple[str, ...]:
    """Name what is missing to choose between batteries and a supply."""
    if (
        given.supply_link is not None
        or given.opening.power_wish in ("battery", "supply")
        or by_hand(given, "battery")
        or by_hand(given, "supply")
    ):
        return ()
    # How busy it is decides between batteries and a supply; taken as idle, every unknown opening would get batteries.
    if given.opening.operations_per_day is None and not electric_release(given):
        return ("opening.operations_per_day",)
    return ()


def _sources(given: OpeningInput) -> tuple[str, ...]:
    wish = given.opening.power_wish
    if given.supply_link is not None or by_hand(given, "supply"):
        return ("supply",)
    if by_hand(given, "battery"):
        return ("battery",)
    if wish in ("battery", "supply"):
        return (wish,)
    most = limits_of(_BUSY_ON_SUPPLY, given.settings)["operations"]
    # An electric release is fed from a supply in any case.
    if (given.opening.operations_per_day or 0.0) > most or electric_release(given):
        return ("supply", "battery")
    return ("battery", "supply")


# --- batteries ----------------------------------------------------------------------------------------------------


def _battery(given: OpeningInput, base: Fit, unit: Part) -> Fit:
    cell, count = unit.text_of(CELL), unit.number_of(CELLS)
    parts: list[FitPart] = []
    pack: BatteryLife | None = None
    stock = offered(given, "battery", "primary-battery")
    stocked = cheapest(
        given, [part for part in stock if by_hand(given, "battery") or part.text_of(DESIGNATION) == cell]
    )
    if stocked is not None and cell and count:
        parts.append(fit_part(given, "battery", stocked, f"the unit takes {count:g} cells {cell} in series", count))
        pack = _life(given, unit, stocked)
    parts += _coin(given, unit)
    return replace(with_parts(base, *parts), power="battery", battery=pack)


def _coin(given: OpeningInput, unit: Part) -> list[FitPart]:
    coin = unit.text_of(COIN_CELL)
    stocked = cheapest(given, [p for p in offered(given, "coin-cell", "coin-cell") if p.text_of(DESIGNATION) == coin])
    return [fit_part(given, "coin-cell", stocked, "keeps the unit's clock and memory")] if coin and stocked else []


def _life(given: OpeningInput, unit: Part, cell: Part) -> BatteryLife | None:
    capacity, share, lost = (cell.number_of(name) for name in (CAPACITY_MAH, USABLE_SHARE, SELF_DISCHARGE_SHARE))
    standing, drawn, seconds = (unit.number_of(name) for name in (STANDING_UA, OPERATION_MA, OPERATION_S))
    operations = given.opening.operations_per_day
    if capacity is None or share is None or lost is None or operations is None:
        return None
    if standing is None or drawn is None or seconds is None:
        return None
    # At the lowest temperature of the place, not at its mean: the battery has to open the door on the coldest day.
    cold = cold_share(cell.text_of(CHEMISTRY), given.opening.temperature_low_c)
    if cold is None:
        return None
    off = given.opening.operations_day_off
    # Five days and two, whichever they are: only their number enters while no first day is known.
    week = (operations,) * 5 + (operations if off is None else off,) * 2
    try:
        found = life_by_weekday(Battery(capacity, share, lost, cold), Drain(standing, drawn, seconds), week, None)
    except InputError:
        return None
    return BatteryLife(found.days, found.mah_per_day, capacity, share, cold)


# --- supply -------------------------------------------------------------------------------------------------------


def _supply(given: OpeningInput, base: Fit, unit: Part) -> Fit:
    low, high, draws = (unit.number_of(name) for name in (SUPPLY_LOW_V, SUPPLY_HIGH_V, SUPPLY_A))
    connected = replace(base, power="supply", battery=None)
    if low is None or high is None or draws is None:
        return connected
    if given.supply_link is not None:
        # Supply and wire belong to the circuit: they are counted once for all that hang on it.
        return with_parts(connected, *_onto_leaf(given), *_coin(given, unit))
    if not by_hand(given, "supply") and _shares(given, connected, low, high):
        # The supply and the wire of an earlier lock point of the opening carry this one too.
        return with_parts(connected, *_onto_leaf(given), *_coin(given, unit))
    share = limits_of(_SUPPLY_SHARE, given.settings)["share"]
    # The trade loads a supply to 75 to 80 % of its rating; a supply just large enough would be too small.
    source = _smallest(given, low, high, draws / share)
    if source is None:
        return connected
    why = f"the unit takes {low:g} to {high:g} V and {draws:g} A; {share:.0%} of the rating is used"
    parts = [fit_part(given, "supply", source, why), *_onto_leaf(given)]
    run, volts = given.opening.supply_distance_m, source.number_of(OUTPUT_V)
    tolerance = source.number_of(TOLERANCE_SHARE)
    if run is not None and volts is not None and tolerance is not None:
        # At its low tolerance: the drop that is allowed there is the least.
        least = volts * (1 - tolerance)
        wire = _wire(given, draws, run, least - low)
        if wire is not None:
            waste = wire_waste()
            why = f"{run:g} m one way and {waste - 1:.0%} allowance; keeps {low:g} V at the unit"
            # Two decimals, since a product of floats would show as 12.600000000000001 m on the order.
            parts.append(fit_part(given, "wire", wire, why, round(run * waste, 2)))
    parts += _coin(given, unit)
    return with_parts(connected, *parts)


def _shares(given: OpeningInput, connected: Fit, low: float, high: float) -> bool:
    """Tell whether the supply of an earlier lock point suits and carries this one as well, its wire included."""
    shared = shared_supply(given)
    supply = in_role(given, shared, "supply") if shared is not None else None
    volts = supply.number_of(OUTPUT_V) if supply is not None else None
    if volts is None or not low <= volts <= high:
        return False
    return not any(judge(rule, given, connected, settings=given.settings) for rule in (_SUPPLY_SHARE, _SUPPLY_DROP))


def _smallest(given: OpeningInput, low: float, high: float, needed_a: float) -> Part | None:
    """Return the cheapest supply that serves; the one chosen by hand as it is; failing that the strongest that is."""
    stock = offered(given, "supply", "power-supply")
    if by_hand(given, "supply"):
        return stock[0] if stock else None
    right = [part for part in stock if low <= (part.number_of(OUTPUT_V) or -1.0) <= high and part.flag_of(REGULATED)]
    serving = [part for part in right if (part.number_of(OUTPUT_A) or 0.0) >= needed_a - 1e-9]
    if serving:
        # Class 2 goes before the price: with another source the wiring of the door is no longer that of a
        # power-limited circuit.
        return min(serving, key=lambda part: (not part.flag_of(CLASS_2), worth(part, given.exchange), part.number))
    return max(right or stock, key=lambda part: (part.number_of(OUTPUT_A) or 0.0, part.number), default=None)


def _strikes(given: OpeningInput) -> list[FitPart]:
    """Return what was chosen by hand, or by the hardware set, to let go of the latch from the frame."""
    return [
        fit_part(given, "strike", part, chosen_by(given, "strike"), choice.quantity)
        for choice in given.chosen
        if choice.role == "strike" and (part := given.catalogue.get(choice.part)) is not None
    ]


def _onto_leaf(given: OpeningInput) -> list[FitPart]:
    transfer = _transfer(given)
    if transfer is None:
        return []
    return [fit_part(given, "power-transfer", transfer, "carries the supply from the frame onto the leaf")]


def _transfer(given: OpeningInput) -> Part | None:
    if leafless(given) or carries_power(given):
        return None
    # Unknown counts as rated: an unlisted transfer on a labelled leaf is the dearer mistake.
    must_be_listed = rated(given) is not False
    return cheapest(
        given,
        [
            part
            for part in offered(given, "power-transfer", "power-transfer")
            if part.flag_of(FIRE_LISTED) or not must_be_listed
        ],
    )


def _wire(given: OpeningInput, amps: float, metres: float, drop_allowed_v: float) -> Part | None:
    """Return the cheapest wire that leaves the unit its voltage; failing that the thickest."""
    # Copper resists more when it is warm: the drop is that of the warmest conductor.
    warm = limits_of(_SUPPLY_DROP, given.settings)["temperature_c"]
    resisting: list[tuple[float, Part]] = []
    for part in offered(given, "wire", "wire"):
        gauge = part.text_of(GAUGE)
        if gauge is None:
            continue
        try:
            found = conductor(gauge, part.text_of(STRANDING) or "stranded", warm)
        except InputError:
            continue
        resisting.append((found.resistance_ohm_per_km, part))
    serving = [part for ohm, part in resisting if drop_v(metres, amps, ohm) <= drop_allowed_v + 1e-9]
    if serving:
        return cheapest(given, serving)
    return min(resisting, key=lambda entry: (entry[0], entry[1].number))[1] if resisting else None
