"""How long a pack lasts at an opening, by how busy the place is and how cold it gets."""

from hwsched.attributes.of_parts import (
    CAPACITY_MAH,
    OPERATION_MA,
    OPERATION_S,
    SELF_DISCHARGE_SHARE,
    STANDING_UA,
    USABLE_SHARE,
)
from hwsched.calc.power.battery import Battery, Drain, life_by_weekday
from hwsched.rules.network.cold import cold_share_of
from hwsched.values import BatteryLife, OpeningInput, Part


def pack_life(given: OpeningInput, unit: Part, cell: Part, left_share: float | None = None) -> BatteryLife | None:
    """Work out how long a pack of that cell lasts in that unit.

    Parameters
    ----------
    given, unit, cell : OpeningInput, Part, Part
        The opening, its unit and what is put into it.
    left_share : float, optional
        Share of the charge that is counted on in place of what the cold of the opening leaves.

    Returns
    -------
    BatteryLife or None
        None where a fact is missing.

    Raises
    ------
    InputError
        Where the facts contradict each other.
    """
    capacity, share, lost = (cell.number_of(name) for name in (CAPACITY_MAH, USABLE_SHARE, SELF_DISCHARGE_SHARE))
    standing, drawn, seconds = (unit.number_of(name) for name in (STANDING_UA, OPERATION_MA, OPERATION_S))
    operations = given.opening.operations_per_day
    if capacity is None or share is None or lost is None or operations is None:
        return None
    if standing is None or drawn is None or seconds is None:
        return None
    # At the lowest temperature of the place, not at its mean: the battery has to open the door on the coldest day.
    cold = cold_share_of(cell, given.opening.temperature_low_c) if left_share is None else left_share
    if cold is None:
        return None
    off = given.opening.operations_day_off
    # Five days and two, whichever they are: only their number enters while no first day is known.
    week = (operations,) * 5 + (operations if off is None else off,) * 2
    found = life_by_weekday(Battery(capacity, share, lost, cold), Drain(standing, drawn, seconds), week, None)
    return BatteryLife(found.days, found.mah_per_day, capacity, share, cold)
