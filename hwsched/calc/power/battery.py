"""Life of a battery in a control unit: standing current, operations, self-discharge, temperature, change date.

Here belong batteries that feed an opening on their own. The table of cells stands in `cells`, standby batteries of
a supply in `standby`.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from math import floor
from typing import Annotated, Final

from msgspec import UNSET, UnsetType

from hwsched.calc.calculator import INLINE, Calculator, InputError, Said, Within, check, check_arguments
from hwsched.calc.limits import NotNegative, Positive
from hwsched.quantities.adding import added

DAYS_PER_YEAR: Final = 365.25
_LONGEST_DAYS: Final = 200 * DAYS_PER_YEAR
"""Beyond that a change date says nothing."""
_LARGEST: Final = 1e9
"""Of any input; larger is a slip of the pen."""
_Amount = Annotated[float, Within(at_least=0, at_most=_LARGEST)]
_PerDay = Annotated[_Amount, Said("Operations a day.")]
_Share = Annotated[float, Within(above=0, at_most=1)]
_ShelfLife = Annotated[Positive | None, Said("End of the cell's shelf life, which may come first [years].")]
_LEAST_MAH_PER_DAY: Final = 1e-9
_TOUCH_DAYS: Final = 1e-9


@dataclass(frozen=True, slots=True)
class Drain:
    """What an opening takes from its battery."""

    standing_ua: Annotated[_Amount, Said("Current drawn all the time [µA].")]
    operation_ma: Annotated[_Amount, Said("Current during an operation [mA].")]
    operation_s: Annotated[_Amount, Said("Duration of an operation [s].")]


@dataclass(frozen=True, slots=True)
class Battery:
    """Battery as fitted: cells in series keep their mAh, cells side by side add theirs."""

    capacity_mah: Annotated[
        float,
        Within(above=0, at_most=_LARGEST),
        Said("Nominal capacity to the end voltage that the unit needs [mAh]."),
    ]
    usable_share: Annotated[_Share, Said("Share of it that is counted on.")]
    self_discharge_per_year: Annotated[
        float, Within(at_least=0, below=1), Said("Simple share of nominal lost in 365.25 days.")
    ]
    temperature_factor: Annotated[
        _Share, Said("Share of the usable charge that is left at the place's temperature; 1 takes none off.")
    ] = 1.0

    @property
    def usable_mah(self) -> float:
        """Charge that is counted on [mAh]."""
        return self.capacity_mah * self.usable_share * self.temperature_factor

    @property
    def self_discharge_mah_per_day(self) -> float:
        """Charge lost unused [mAh a day]."""
        # Of nominal and not of what is left: simple and on the safe side, as in the worked example of common
        # practice.
        return self.capacity_mah * self.self_discharge_per_year / DAYS_PER_YEAR


@dataclass(frozen=True, slots=True)
class Life:
    """How long a battery lasts."""

    days: Annotated[float, Said("Life [days].")]
    mah_per_day: Annotated[float, Said("Charge used a day, self-discharge included; mean of the week [mAh].")]


@dataclass(frozen=True, slots=True)
class Change:
    """When to change a battery."""

    on: date
    """Whole days of life after the first day in service."""
    limited_by: str
    """charge, or shelf life."""


def mah_per_day(drain: Annotated[Drain, INLINE], operations_per_day: _PerDay) -> float:
    """Charge that standing current and operations take in a day, without self-discharge.

    Returns
    -------
    float
        standing · 24 h / 1000 + operations · current · duration / 3600 [mAh a day].

    Examples
    --------
    >>> round(mah_per_day(Drain(60, 150, 4), 30), 3)
    6.44
    """
    check_arguments(mah_per_day, locals())
    return drain.standing_ua * 24.0 / 1000.0 + operations_per_day * drain.operation_ma * drain.operation_s / 3600.0


def life(battery: Battery, drain: Drain, operations_per_day: _PerDay) -> Life:
    """How long a battery lasts at the same number of operations every day.

    Returns
    -------
    Life
        days = usable charge / (daily charge + self-discharge).

    Raises
    ------
    InputError
        Names the value that cannot be taken; also where nothing at all draws on the battery.

    Notes
    -----
    Source: arithmetic; worked example of common practice. The capacity is the data sheet's for this load and end
    voltage: standards for primary cells give discharge tests, not mAh.

    Examples
    --------
    >>> found = life(Battery(2500, 0.8, 0.03), Drain(60, 150, 4), 30)
    >>> round(found.days, 2), round(found.mah_per_day, 5)
    (300.96, 6.64534)
    """
    return life_by_weekday(battery, drain, (operations_per_day,) * 7, None)


def life_by_weekday(battery: Battery, drain: Drain, operations: Sequence[_Amount], installed_on: date | None) -> Life:
    """How long a battery lasts with another number of operations on each day of the week.

    Parameters
    ----------
    battery, drain : Battery, Drain
        As fitted, and what the opening takes.
    operations : sequence of 7 floats
        From Monday to Sunday.
    installed_on : date
        First day in service, counted whole; None where the day of the week is not known, and then the mean of the week
        is taken for every day.

    Returns
    -------
    Life
        Whole weeks at the week's sum, then day by day.

    Raises
    ------
    InputError
        Names the value that cannot be taken.

    Examples
    --------
    >>> office = (40, 40, 40, 40, 40, 0, 0)
    >>> round(life_by_weekday(Battery(2500, 0.8, 0.03), Drain(60, 150, 4), office, date(2024, 1, 1)).days, 2)
    311.2
    """
    check_battery(battery)
    if len(operations) != 7:
        raise InputError("operations_by_weekday", f"needs 7 numbers, Monday to Sunday; got {len(operations)}")
    lost = battery.self_discharge_mah_per_day
    daily = [mah_per_day(drain, n) + lost for n in operations]
    week = added(daily)
    # A life without end is a slip of the pen: some current always flows, and a change date is what is asked for.
    if week < 7.0 * _LEAST_MAH_PER_DAY:
        raise InputError("standing_ua", "nothing draws on the battery: its life has no end by this arithmetic")
    usable = battery.usable_mah
    # Without the first day's name no day of the week can be counted from it.
    if installed_on is None or len(set(daily)) == 1:
        return Life(usable / (week / 7.0), week / 7.0)
    weeks = floor(usable / week)
    left = usable - weeks * week
    days = 7.0 * weeks
    # The rest is under one week's charge, so that seven days always end it, save for rounding.
    for offset in range(7):
        today = daily[(installed_on.weekday() + offset) % 7]
        if left < today:
            return Life(days + left / today, week / 7.0)
        left -= today
        days += 1.0
    return Life(days, week / 7.0)


def change_on(
    installed_on: date,
    days: Annotated[NotNegative, Said("Life by charge [days].")],
    shelf_life_years: _ShelfLife = None,
) -> Change | None:
    """Day by which to change a battery.

    Parameters
    ----------
    installed_on : date
        Day on which the fresh battery went into service.

    Returns
    -------
    Change or None
        As many whole days later as the battery lasts, or the end of its shelf life if that comes first; None where that
        is more than 200 years ahead, which says that the shelf life must be known.

    Raises
    ------
    InputError
        Names the value that cannot be taken.

    Examples
    --------
    >>> change_on(date(2025, 3, 1), 300.96)
    Change(on=datetime.date(2025, 12, 26), limited_by='charge')
    """
    check_arguments(change_on, locals())
    limited_by = "charge"
    if shelf_life_years is not None:
        shelf_days = shelf_life_years * DAYS_PER_YEAR
        # A cell that is hardly used comes to the end of its shelf life long before its charge is gone.
        if shelf_days < days:
            days, limited_by = shelf_days, "shelf life"
    if days > _LONGEST_DAYS:
        return None
    try:
        # Down to whole days: by that day it is changed, and the day after it may be dead.
        return Change(installed_on + timedelta(days=floor(days + _TOUCH_DAYS)), limited_by)
    except OverflowError:
        raise InputError("installed_on", "the change date is beyond the year 9999") from None


def most_operations_per_day(
    battery: Annotated[Battery, INLINE], drain: Drain, wanted_days: Annotated[Positive, Said("Least life.")]
) -> float | None:
    """Operations a day up to which a battery lasts as long as wanted.

    A busier opening should be fed from a supply.

    Returns
    -------
    float or None
        None where standing current and self-discharge alone end the battery earlier; infinite where operations take
        nothing.

    Examples
    --------
    >>> most = most_operations_per_day(Battery(2500, 0.8, 0.03), Drain(60, 150, 4), 365.25)
    >>> round(most, 2)
    22.98
    """
    check_arguments(most_operations_per_day, locals())
    spare = battery.usable_mah / wanted_days - battery.self_discharge_mah_per_day - mah_per_day(drain, 0.0)
    if spare < 0.0:
        return None
    each = mah_per_day(drain, 1.0) - mah_per_day(drain, 0.0)
    return spare / each if each > 0.0 else float("inf")


def check_battery(battery: Battery) -> None:
    """Refuse a battery with impossible values; raises InputError naming the field."""
    check(battery)


@dataclass(frozen=True, slots=True)
class _Answer:
    life: Annotated[Life, INLINE]
    change_on: Annotated[
        str | UnsetType | None, Said("Day by which to change it; with installed_on. Null beyond 200 years.")
    ] = UNSET
    limited_by: Annotated[
        str | UnsetType | None, Said("What ends it; with installed_on.", choices=("charge", "shelf life"))
    ] = UNSET


def _battery_life(
    battery: Annotated[Battery, INLINE],
    drain: Annotated[Drain, INLINE],
    operations_per_day: Annotated[
        _Amount | None,
        Said("Operations a day; or give operations_by_weekday.", unless="operations_by_weekday"),
    ],
    operations_by_weekday: Annotated[Sequence[_Amount] | None, Said("Seven numbers, Monday to Sunday.")],
    installed_on: Annotated[date | None, Said("First day in service, such as 2025-03-01, for a change date.")],
    shelf_life_years: _ShelfLife,
) -> _Answer:
    if operations_by_weekday is None:
        found = life(battery, drain, operations_per_day or 0.0)
    elif operations_per_day is not None:
        raise InputError("operations_per_day", "stands beside operations_by_weekday: give one of the two")
    else:
        found = life_by_weekday(battery, drain, operations_by_weekday, installed_on)
    if installed_on is None:
        return _Answer(found)
    change = change_on(installed_on, found.days, shelf_life_years)
    return _Answer(found, change.on.isoformat(), change.limited_by) if change else _Answer(found, None, None)


BATTERY_LIFE = Calculator(
    name="battery-life",
    title="Life of a battery at an opening",
    basis="arithmetic; common practice. Capacity by the data sheet for this load and end voltage",
    work=_battery_life,
    example={
        "capacity_mah": 2500,
        "usable_share": 0.8,
        "standing_ua": 60,
        "operations_per_day": 30,
        "operation_ma": 150,
        "operation_s": 4,
        "self_discharge_per_year": 0.03,
    },
)
