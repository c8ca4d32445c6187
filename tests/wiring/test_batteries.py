"""When batteries are due: days by hand, weekdays apart, shelf life, cold, and what is missing."""

from datetime import date

import pytest

from hwsched.wiring.batteries import dues
from tests.rules.scenario import catalogue, fit, given, opening

# By hand, for the usual unit and cells (60 uA, 150 mA for 4 s, 2500 mAh of which 80 %, 3 % a year): standing
# 0.060 x 24 = 1.44 mAh a day; an operation 150 x 4 / 3600 = 0.16667 mAh; self-discharge 2500 x 0.03 / 365.25 = 0.20534.
STANDING, EACH, LOST, USABLE = 1.44, 150 * 4 / 3600, 2500 * 0.03 / 365.25, 2000.0


def due_of(cat=None, power="battery", **facts):
    return dues([(given(opening(**facts), cat=cat), fit(power=power))])


def test_days_by_hand_and_the_day_of_change():
    (due,) = due_of(operations_per_day=30.0, installed_on="2025-03-01")
    # 1.44 + 30 x 0.16667 + 0.20534 = 6.64534 mAh a day; 2000 / 6.64534 = 300.96 days: 2025-12-26.
    assert due.days == pytest.approx(300.96, abs=0.01)
    assert due.mah_per_day == pytest.approx(6.64534, abs=1e-4)
    assert (due.due_on, due.limited_by, due.needs) == (date(2025, 12, 26), "charge", ())
    assert (due.cell, due.designation, due.count, due.operations) == ("CELL", "AA", 6, 30.0)


def test_days_off_are_days_apart():
    (due,) = due_of(operations_per_day=40.0, operations_day_off=0.0, installed_on="2024-01-01")
    # A week: 5 x (1.44 + 6.66667 + 0.20534) + 2 x (1.44 + 0.20534) = 44.8508 mAh; 44 weeks take 1973.43 and leave
    # 26.566 mAh, which is Monday to Wednesday (8.31201 each, 24.936) and 0.196 of Thursday: 311.2 days.
    assert due.days == pytest.approx(311.2, abs=0.01)
    assert due.due_on == date(2024, 11, 7)
    (always,) = due_of(operations_per_day=40.0, installed_on="2024-01-01")
    assert always.days == pytest.approx(USABLE / (STANDING + 40 * EACH + LOST), abs=0.01)


def test_shelf_life_ends_it_where_that_comes_first():
    # Alkaline: 5 years by an encyclopedia (table of self-discharge); 5 x 365.25 = 1826 whole days.
    (due,) = due_of(
        catalogue(CELL={"chemistry": "alkaline", "self_discharge_share": 0.0}, UNIT={"standing_ua": 10.0}),
        operations_per_day=1.0, installed_on="2025-01-01", temperature_low_c=20.0,
    )  # fmt: skip
    assert due.days > 1826.25
    assert (due.limited_by, due.due_on) == ("shelf life", date(2030, 1, 1))


def test_the_cold_takes_its_share():
    cells = catalogue(CELL={"chemistry": "alkaline"})
    (warm,), (cold,) = due_of(cells), due_of(cells, temperature_low_c=0.0)
    # Alkaline at 0 C: 60 % at least (data books, from memory: marked as unverified).
    assert cold.cold_share == 0.6
    assert cold.days == pytest.approx(0.6 * warm.days)
    assert cold.unverified
    assert not warm.unverified
    (at_ten,) = due_of(cells, temperature_low_c=10.0)
    assert at_ten.cold_share == pytest.approx(0.8)


@pytest.mark.parametrize(
    ("cells", "celsius", "need"),
    [
        ({"chemistry": "alkaline"}, -30.0, ("part CELL.cold_c", "part CELL.cold_share")),
        ({"chemistry": "lithium-manganese-dioxide"}, -5.0, ("part CELL.cold_c", "part CELL.cold_share")),
        ({"chemistry": None}, -5.0, ("part CELL.chemistry",)),
    ],
)
def test_a_cold_for_which_nothing_is_known_is_not_taken_as_warmth(cells, celsius, need):
    (due,) = due_of(catalogue(CELL=cells), temperature_low_c=celsius, installed_on="2025-01-01")
    assert due.needs == need
    assert (due.days, due.due_on) == (None, None)
    assert due_of(catalogue(CELL=cells), temperature_low_c=20.0, installed_on="2025-01-01")[0].needs == ()


@pytest.mark.parametrize(
    ("changed", "facts", "needs"),
    [
        ({}, {"operations_per_day": None}, ("opening.operations_per_day",)),
        ({"CELL": {"capacity_mah": None}}, {}, ("part CELL.capacity_mah",)),
        ({"CELL": {"usable_share": None, "self_discharge_share": None}}, {},
         ("part CELL.usable_share", "part CELL.self_discharge_share")),
        ({"UNIT": {"standing_ua": None}}, {}, ("part UNIT.standing_ua",)),
        ({"UNIT": {"operation_ma": None, "operation_s": None}}, {},
         ("part UNIT.operation_ma", "part UNIT.operation_s")),
    ],
)  # fmt: skip
def test_what_is_missing_is_named(changed, facts, needs):
    (due,) = due_of(catalogue(**changed), installed_on="2025-01-01", **facts)
    assert due.needs == needs
    assert (due.days, due.due_on, due.mah_per_day) == (None, None, None)


def test_without_a_day_of_installation_there_is_a_life_but_no_day():
    (due,) = due_of()
    assert due.needs == ("opening.installed_on",)
    assert due.days == pytest.approx(300.96, abs=0.01)
    assert due.due_on is None


def test_nothing_drawn_has_no_end():
    still = catalogue(UNIT={"standing_ua": 0.0}, CELL={"self_discharge_share": 0.0})
    (due,) = due_of(still, operations_per_day=0.0, installed_on="2025-01-01")
    assert due.days is None
    assert due.needs


def test_only_batteries_the_weakest_first_the_unknown_last():
    stated = [
        (given(opening(id=name, mark=name, operations_per_day=day)), fit(power=power))
        for name, day, power in (("1", 30.0, "battery"), ("2", 90.0, "battery"), ("3", None, "battery"),
                                 ("4", 30.0, "supply"), ("5", 30.0, "none"))
    ]  # fmt: skip
    assert [due.mark for due in dues([*stated, (given(opening(id="6", mark="6")), None)])] == ["2", "1", "3"]


def test_cells_that_are_not_in_the_catalogue_are_left_to_the_rules():
    assert due_of(catalogue(drop=("CELL",))) == ()
