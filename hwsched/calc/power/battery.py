"""Life of a battery in a control unit: standing current, operations, self-discharge, temperature, change date.

Here belong batteries that feed an opening on their own. The table of cells stands in `cells`, standby batteries of
a supply in `standby`.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from math import floor
from typing import Any, Final

from hwsched.calc.calculator import Calculator, Field, InputError, Reader, check_number

DAYS_PER_YEAR: Final = 365.25
_LONGEST_DAYS: Final = 200 * DAYS_PER_YEAR
"""Beyond that a change date says nothing."""
_LARGEST: Final = 1e9
"""Of any input; larger is a slip of the pen."""
_LEAST_MAH_PER_DAY: Final = 1e-9
_TOUCH_DAYS: Final = 1e-9


@dataclass(frozen=True, slots=True)
class Drain:
    """What an opening takes from its battery."""

    standing_ua: float
    """All the time [µA], 0 or more."""
    operation_ma: float
    """While it operates [mA], 0 or more."""
    operation_s: float
    """Duration of one operation [s], 0 or more."""


@dataclass(frozen=True, slots=True)
class Battery:
    """Battery as fitted: cells in series keep their mAh, cells side by side add theirs."""

    capacity_mah: float
    """Nominal, down to the end voltage that the unit needs [mAh], above 0."""
    usable_share: float
    """Of the nominal that is counted on, above 0 to 1."""
    self_discharge_per_year: float
    """Simple share of the nominal lost in a year of 365.25 days, 0 to below 1."""
    temperature_factor: float = 1.0
    """Share of the usable charge that is left at the temperature of the place, above 0 to 1; 1 takes none off."""

    @property
    def usable_mah(self) -> float:
        """Charge that is counted on [mAh]."""
        return self.capacity_mah * self.usable_share * self.temperature_factor

    @property
    def self_discharge_mah_per_day(self) -> float:
        """Charge lost unused [mAh a day]."""
        return self.capacity_mah * self.self_discharge_per_year / DAYS_PER_YEAR


@dataclass(frozen=True, slots=True)
class Life:
    """How long a battery lasts."""

    days: float
    mah_per_day: float
    """Mean over the days of the week, self-discharge included."""


@dataclass(frozen=True, slots=True)
class Change:
    """When to change a battery."""

    on: date
    """Whole days of life after the first day in service."""
    limited_by: str
    """charge, or shelf life."""


def mah_per_day(drain: Drain, operations_per_day: float) -> float:
    """Charge that standing current and operations take in a day, without self-discharge.

    Parameters
    ----------
    drain : Drain
        Of the opening.
    operations_per_day : float
        0 or more.

    Returns
    -------
    float
        standing · 24 h / 1000 + operations · current · duration / 3600 [mAh a day].

    Examples
    --------
    >>> round(mah_per_day(Drain(60, 150, 4), 30), 3)
    6.44
    """
    check_number(drain.standing_ua, "standing_ua", at_least=0, at_most=_LARGEST)
    check_number(drain.operation_ma, "operation_ma", at_least=0, at_most=_LARGEST)
    check_number(drain.operation_s, "operation_s", at_least=0, at_most=_LARGEST)
    check_number(operations_per_day, "operations_per_day", at_least=0, at_most=_LARGEST)
    return drain.standing_ua * 24.0 / 1000.0 + operations_per_day * drain.operation_ma * drain.operation_s / 3600.0


def life(battery: Battery, drain: Drain, operations_per_day: float) -> Life:
    """How long a battery lasts at the same number of operations every day.

    Parameters
    ----------
    battery, drain : Battery, Drain
        As fitted, and what the opening takes.
    operations_per_day : float
        0 or more.

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


def life_by_weekday(battery: Battery, drain: Drain, operations: Sequence[float], installed_on: date | None) -> Life:
    """How long a battery lasts with another number of operations on each day of the week.

    Parameters
    ----------
    battery, drain : Battery, Drain
        As fitted, and what the opening takes.
    operations : sequence of 7 floats
        From Monday to Sunday, each 0 or more.
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
    week = sum(daily)
    if week < 7.0 * _LEAST_MAH_PER_DAY:
        raise InputError("standing_ua", "nothing draws on the battery: its life has no end by this arithmetic")
    usable = battery.usable_mah
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


def change_on(installed_on: date, days: float, shelf_life_years: float | None = None) -> Change | None:
    """Day by which to change a battery.

    Parameters
    ----------
    installed_on : date
        Day on which the fresh battery went into service.
    days : float
        Life by charge [days].
    shelf_life_years : float
        After which the cell's maker no longer answers for it [years]; None where it is not known.

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
    check_number(days, "days", at_least=0)
    limited_by = "charge"
    if shelf_life_years is not None:
        shelf_days = check_number(shelf_life_years, "shelf_life_years", above=0) * DAYS_PER_YEAR
        if shelf_days < days:
            days, limited_by = shelf_days, "shelf life"
    if days > _LONGEST_DAYS:
        return None
    try:
        return Change(installed_on + timedelta(days=floor(days + _TOUCH_DAYS)), limited_by)
    except OverflowError:
        raise InputError("installed_on", "the change date is beyond the year 9999") from None


def most_operations_per_day(battery: Battery, drain: Drain, wanted_days: float) -> float | None:
    """Operations a day up to which a battery lasts as long as wanted.

    A busier opening should be fed from a supply.

    Parameters
    ----------
    battery, drain : Battery, Drain
        As fitted, and what the opening takes.
    wanted_days : float
        Least life [days], above 0.

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
    check_battery(battery)
    check_number(wanted_days, "wanted_days", above=0)
    spare = battery.usable_mah / wanted_days - battery.self_discharge_mah_per_day - mah_per_day(drain, 0.0)
    if spare < 0.0:
        return None
    each = mah_per_day(drain, 1.0) - mah_per_day(drain, 0.0)
    return spare / each if each > 0.0 else float("inf")


def check_battery(battery: Battery) -> None:
    """Refuse a battery with impossible values; raises InputError naming the field."""
    check_number(battery.capacity_mah, "capacity_mah", above=0, at_most=_LARGEST)
    check_number(battery.usable_share, "usable_share", above=0, at_most=1)
    check_number(battery.self_discharge_per_year, "self_discharge_per_year", at_least=0)
    if battery.self_discharge_per_year >= 1.0:
        raise InputError(
            "self_discharge_per_year", f"is a share and must be below 1, got {battery.self_discharge_per_year:g}"
        )
    check_number(battery.temperature_factor, "temperature_factor", above=0, at_most=1)


def read_date(reader: Reader, name: str) -> date | None:
    """Read a date written as 2025-03-01; None when absent or null."""
    if reader.raw(name, None) is None:
        return None
    text = reader.text(name)
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise InputError(reader.at(name), f"must be a date such as 2025-03-01, got {text!r}") from None


def _run(data: Mapping[str, Any]) -> dict[str, Any]:
    reader = Reader(data)
    battery = Battery(
        reader.number("capacity_mah", above=0),
        reader.number("usable_share", above=0, at_most=1),
        reader.number("self_discharge_per_year", at_least=0),
        reader.number("temperature_factor", 1.0, above=0, at_most=1),
    )
    drain = Drain(
        reader.number("standing_ua", at_least=0, at_most=_LARGEST),
        reader.number("operation_ma", at_least=0, at_most=_LARGEST),
        reader.number("operation_s", at_least=0, at_most=_LARGEST),
    )
    installed_on = read_date(reader, "installed_on")
    if reader.raw("operations_by_weekday", None) is None:
        found = life(battery, drain, reader.number("operations_per_day", at_least=0, at_most=_LARGEST))
    else:
        if reader.raw("operations_per_day", None) is not None:
            raise InputError("operations_per_day", "stands beside operations_by_weekday: give one of the two")
        operations = [
            check_number(n, f"operations_by_weekday[{i}]", at_least=0, at_most=_LARGEST)
            for i, n in enumerate(reader.items("operations_by_weekday"))
        ]
        found = life_by_weekday(battery, drain, operations, installed_on)
    answer: dict[str, Any] = {"days": found.days, "mah_per_day": found.mah_per_day}
    if installed_on is not None:
        shelf_life_years = reader.optional_number("shelf_life_years", above=0)
        change = change_on(installed_on, found.days, shelf_life_years)
        answer["change_on"] = change.on.isoformat() if change else None
        answer["limited_by"] = change.limited_by if change else None
    return answer


BATTERY_LIFE = Calculator(
    name="battery-life",
    title="Life of a battery at an opening",
    basis="arithmetic; common practice. Capacity by the data sheet for this load and end voltage",
    inputs=(
        Field("capacity_mah", "number", "Nominal capacity to the end voltage that the unit needs [mAh]."),
        Field("usable_share", "number", "Share of it that is counted on, above 0 to 1."),
        Field("standing_ua", "number", "Current drawn all the time [µA]."),
        Field("operations_per_day", "number", "Operations a day; or give operations_by_weekday."),
        Field("operation_ma", "number", "Current during an operation [mA]."),
        Field("operation_s", "number", "Duration of an operation [s]."),
        Field("self_discharge_per_year", "number", "Simple share of nominal lost in 365.25 days."),
        Field(
            "temperature_factor",
            "number",
            "Share of the charge left at the place's temperature; 1 takes none off.",
            "1",
        ),
        Field(
            "operations_by_weekday", "list", "Seven numbers, Monday to Sunday, in place of operations_per_day.", "none"
        ),
        Field("installed_on", "text", "First day in service, such as 2025-03-01, for a change date.", "none"),
        Field("shelf_life_years", "number", "End of the cell's shelf life, which may come first.", "none"),
    ),
    outputs=(
        Field("days", "number", "Life [days]."),
        Field("mah_per_day", "number", "Charge used a day, self-discharge included; mean of the week [mAh]."),
        Field("change_on", "text", "Day by which to change it; with installed_on. Null beyond 200 years."),
        Field("limited_by", "text", "charge or shelf life; with installed_on."),
    ),
    example={
        "capacity_mah": 2500,
        "usable_share": 0.8,
        "standing_ua": 60,
        "operations_per_day": 30,
        "operation_ma": 150,
        "operation_s": 4,
        "self_discharge_per_year": 0.03,
    },
    run=_run,
)
