"""How long the pack of a unit lasts at its opening. Whether that is long enough is said by the rule `battery-life`."""

from hwsched.attributes.of_parts import (
    CAPACITY_MAH,
    OPERATION_MA,
    OPERATION_S,
    SELF_DISCHARGE_SHARE,
    STANDING_UA,
    USABLE_SHARE,
)
from hwsched.calc.calculator import InputError
from hwsched.calc.power.battery import Battery, Drain, Life, life_by_weekday
from hwsched.values import OpeningInput, Part


def pack_life(given: OpeningInput, unit: Part, cell: Part, left_share: float) -> Life | None:
    """Return how long cells last of whose charge a share is left in the cold; None while a fact is missing."""
    capacity, share, lost = (cell.number_of(name) for name in (CAPACITY_MAH, USABLE_SHARE, SELF_DISCHARGE_SHARE))
    standing, drawn, seconds = (unit.number_of(name) for name in (STANDING_UA, OPERATION_MA, OPERATION_S))
    operations = given.opening.operations_per_day
    if capacity is None or share is None or lost is None or operations is None:
        return None
    if standing is None or drawn is None or seconds is None:
        return None
    off = given.opening.operations_day_off
    # Five days and two, whichever they are: only their number enters while no first day is known.
    week = (operations,) * 5 + (operations if off is None else off,) * 2
    try:
        return life_by_weekday(Battery(capacity, share, lost, left_share), Drain(standing, drawn, seconds), week, None)
    except InputError:
        return None
