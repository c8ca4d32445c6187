"""Batteries: the worked example, days of the week, change dates, temperature, bad input."""

import doctest
import json
import random
from dataclasses import replace
from datetime import date, timedelta

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.power import battery as module
from hwsched.calc.power.battery import (
    BATTERY_LIFE,
    Battery,
    Drain,
    change_on,
    check_battery,
    life,
    life_by_weekday,
    mah_per_day,
    most_operations_per_day,
)

EXAMPLE = dict(BATTERY_LIFE.example)
DRAIN = Drain(60, 150, 4)


def test_docs():
    assert doctest.testmod(module).failed == 0


def test_worked_example():  # facts 2.6, battery-life example (computed)
    assert mah_per_day(DRAIN, 30) == pytest.approx(6.440)
    assert mah_per_day(Drain(0, 150, 4), 30) == pytest.approx(5.000)
    assert mah_per_day(Drain(60, 0, 0), 30) == pytest.approx(1.440)
    for share, loss, days in ((1.0, 0.0, 388.20), (0.8, 0.0, 310.56), (0.8, 0.03, 300.96)):
        found = BATTERY_LIFE.run(EXAMPLE | {"usable_share": share, "self_discharge_per_year": loss})
        assert round(found["days"], 2) == days
    assert found["mah_per_day"] == pytest.approx(6.440 + 0.20534, abs=5e-6)
    assert set(found) == {"days", "mah_per_day"}


def test_temperature_is_taken_off_only_where_asked():
    plain = BATTERY_LIFE.run(EXAMPLE)["days"]
    assert BATTERY_LIFE.run(EXAMPLE | {"temperature_factor": 0.6})["days"] == pytest.approx(0.6 * plain)


def test_days_of_the_week_against_a_walk_through_the_days():
    rng = random.Random(3)
    for _ in range(200):
        battery = Battery(rng.uniform(50, 3000), rng.uniform(0.5, 1), rng.choice((0, 0.03)))
        drain = Drain(rng.uniform(1, 200), rng.uniform(10, 400), rng.uniform(0.5, 8))
        operations = [rng.choice((0, 5, 40, 300)) for _ in range(7)]
        start = date(2025, 1, 1) + timedelta(days=rng.randrange(700))
        left, day, days = battery.usable_mah, start, 0.0
        while True:
            today = mah_per_day(drain, operations[day.weekday()]) + battery.self_discharge_mah_per_day
            if today > left:
                days += left / today
                break
            left, day, days = left - today, day + timedelta(days=1), days + 1
        assert life_by_weekday(battery, drain, operations, start).days == pytest.approx(days, abs=1e-6)


def test_equal_days_are_the_plain_life():
    battery = Battery(2500, 0.8, 0.03)
    assert life_by_weekday(battery, DRAIN, [30] * 7, date(2025, 1, 1)) == life(battery, DRAIN, 30)
    mean = life_by_weekday(battery, DRAIN, [42, 42, 42, 42, 42, 0, 0], None)
    assert mean.days == pytest.approx(life(battery, DRAIN, 30).days)


def test_calculator_with_days_of_the_week_and_date():
    data = {k: v for k, v in EXAMPLE.items() if k != "operations_per_day"}
    data |= {"operations_by_weekday": [40, 40, 40, 40, 40, 0, 0], "installed_on": "2024-01-01"}
    found = BATTERY_LIFE.run(data)
    # By hand: 44 weeks of 44.8507 mAh leave 26.57 of 2000: three days of 8.312 and 0.197 of the fourth.
    assert found["days"] == pytest.approx(311.197, abs=2e-3)
    assert found["change_on"] == str(date(2024, 1, 1) + timedelta(days=311))
    assert found["limited_by"] == "charge"
    json.dumps(found, allow_nan=False)


def test_change_date():
    assert str(change_on(date(2025, 3, 1), 300.96).on) == "2025-12-26"
    assert str(change_on(date(2024, 2, 28), 1.0).on) == "2024-02-29"
    assert change_on(date(2025, 3, 1), 0.4).on == date(2025, 3, 1)
    # A whole number of days is not lost to rounding.
    assert change_on(date(2025, 3, 1), 10 - 1e-12).on == date(2025, 3, 11)
    shelf = change_on(date(2025, 3, 1), 5000, 10)
    assert (str(shelf.on), shelf.limited_by) == ("2035-03-01", "shelf life")
    assert change_on(date(2025, 3, 1), 1e6) is None
    assert change_on(date(2025, 3, 1), 1e6, 10).limited_by == "shelf life"
    with pytest.raises(InputError, match="9999"):
        change_on(date(9999, 1, 1), 900)


def test_a_battery_that_outlives_all_has_no_change_date():
    found = BATTERY_LIFE.run(
        EXAMPLE | {"capacity_mah": 1e9, "self_discharge_per_year": 0, "installed_on": "2025-01-01"}
    )
    assert found["change_on"] is None
    assert found["limited_by"] is None


def test_busiest_opening_for_a_wanted_life():
    battery = Battery(2500, 0.8, 0.03)
    most = most_operations_per_day(battery, DRAIN, 365.25)
    assert life(battery, DRAIN, most).days == pytest.approx(365.25)
    assert most_operations_per_day(battery, Drain(500, 150, 4), 365.25) is None
    assert most_operations_per_day(battery, Drain(10, 0, 4), 365.25) == float("inf")


def test_properties():
    rng = random.Random(9)
    for _ in range(200):
        battery = Battery(rng.uniform(100, 5000), rng.uniform(0.3, 1), rng.uniform(0, 0.2))
        drain = Drain(rng.uniform(0.1, 500), rng.uniform(0, 500), rng.uniform(0, 10))
        n = rng.uniform(0, 200)
        days = life(battery, drain, n).days
        assert life(battery, drain, n + 1).days <= days
        assert life(Battery(battery.capacity_mah + 1, battery.usable_share, 0), drain, n).days >= days
        assert days * life(battery, drain, n).mah_per_day == pytest.approx(battery.usable_mah)


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"capacity_mah": 0}, "capacity_mah"),
        ({"capacity_mah": None}, "capacity_mah"),
        ({"usable_share": 80}, "usable_share"),
        ({"usable_share": 0}, "usable_share"),
        ({"standing_ua": -1}, "standing_ua"),
        ({"standing_ua": None}, "standing_ua"),
        ({"operations_per_day": -1}, "operations_per_day"),
        ({"operations_per_day": None}, "operations_per_day"),
        ({"operation_ma": "150 mA"}, "operation_ma"),
        ({"operation_s": float("inf")}, "operation_s"),
        ({"self_discharge_per_year": 1}, "self_discharge_per_year"),
        ({"self_discharge_per_year": -0.1}, "self_discharge_per_year"),
        ({"temperature_factor": 0}, "temperature_factor"),
        ({"temperature_factor": 1.2}, "temperature_factor"),
        ({"operations_by_weekday": [1] * 7}, "operations_per_day"),
        ({"operations_per_day": None, "operations_by_weekday": [1] * 5}, "operations_by_weekday"),
        ({"operations_per_day": None, "operations_by_weekday": [1] * 6 + [-1]}, "operations_by_weekday[6]"),
        ({"installed_on": "1/3/2025"}, "installed_on"),
        ({"installed_on": 20250301}, "installed_on"),
        ({"standing_ua": 0, "operations_per_day": 0, "self_discharge_per_year": 0}, "standing_ua"),
        ({"installed_on": "2025-01-01", "shelf_life_years": 0}, "shelf_life_years"),
    ],
)
def test_bad_input(change, field):
    with pytest.raises(InputError) as caught:
        BATTERY_LIFE.run(EXAMPLE | change)
    assert caught.value.field == field


@pytest.mark.parametrize(
    ("name", "value", "accepted"),
    [
        ("capacity_mah", 0.0, 0.5),
        ("capacity_mah", 1.1e9, 1e9),
        ("usable_share", 0.0, 0.01),
        ("usable_share", 1.01, 1.0),
        ("self_discharge_per_year", -0.01, 0.0),
        ("self_discharge_per_year", 1.0, 0.99),
        ("temperature_factor", 0.0, 0.01),
        ("temperature_factor", 1.01, 1.0),
    ],
)
def test_a_battery_from_python_is_checked_too(name, value, accepted):
    sound = Battery(2500, 0.8, 0.03)
    check_battery(replace(sound, **{name: accepted}))
    with pytest.raises(InputError) as caught:
        check_battery(replace(sound, **{name: value}))
    assert caught.value.field == name


@pytest.mark.parametrize("name", ["standing_ua", "operation_ma", "operation_s"])
def test_what_an_opening_takes_is_checked_too(name):
    sound = Drain(60, 150, 4)
    for value in (-0.01, 1.1e9):
        with pytest.raises(InputError) as caught:
            mah_per_day(replace(sound, **{name: value}), 30)
        assert caught.value.field == name
    assert mah_per_day(replace(sound, **{name: 0.0}), 30) < mah_per_day(replace(sound, **{name: 1e9}), 30)
    for value in (-1, 1.1e9):
        with pytest.raises(InputError, match="operations_per_day"):
            mah_per_day(sound, value)
    assert mah_per_day(sound, 0) == pytest.approx(60 * 24 / 1000)
