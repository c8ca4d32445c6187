"""Standby batteries: published examples, Peukert's law in both forms, temperature, bad input."""

import doctest
import json

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.power import standby as module
from hwsched.calc.power.standby import (
    STANDBY,
    Peukert,
    Phase,
    equivalent_a,
    needed_ah,
    one_ampere_capacity_ah,
    peukert_one_ampere_h,
    peukert_stated_hours_h,
    size_ah,
    sizing,
    temperature_factor,
)
from hwsched.calc.tables import rows

DUTY = [Phase(0.42, 24), Phase(3.8, 5 / 60)]
EXAMPLE = {
    "loads": [{"amps": 0.42, "hours": 24}, {"amps": 3.8, "hours": 5 / 60}],
    "margin": 1.2,
    "sizes_ah": [7, 12, 18, 26],
}


def test_docs():
    assert doctest.testmod(module).failed == 0


def test_published_example():  # facts 2.5: NFPA 72 style, published 12.48 Ah, next size above 12 Ah
    assert needed_ah(DUTY, 1.0) == pytest.approx(10.3967, abs=5e-5)
    found = STANDBY.run(EXAMPLE)
    assert found["needed_ah"] == pytest.approx(12.476, abs=5e-4)
    assert found["size_ah"] == 18
    assert STANDBY.run(EXAMPLE | {"margin": 1.25})["needed_ah"] == pytest.approx(12.996, abs=5e-4)
    assert set(found) == {"needed_ah", "size_ah"}


def test_ageing():  # facts 2.5: 10.3967 / 0.8 = 12.996 Ah
    assert needed_ah(DUTY, 1.0, ageing_factor=1.25) == pytest.approx(10.3967 / 0.8, abs=1e-4)


def test_temperature():  # facts 2.5: fit quoted beside IEEE 485; table values from memory, within 1 %
    assert temperature_factor(25) == pytest.approx(1.000, abs=1e-3)
    assert temperature_factor(10) == pytest.approx(1.1947, abs=5e-5)
    assert temperature_factor(0) == pytest.approx(1.405)
    assert temperature_factor(20) == pytest.approx(1.0514, abs=5e-5)
    for r in rows("lead_acid_temperature"):
        assert temperature_factor(r.number("temperature_c")) == pytest.approx(r.number("factor"), rel=1e-2)
    assert needed_ah(DUTY, 1.2, temperature_c=10) == pytest.approx(12.476 * 1.1947, abs=1e-3)
    # Warmth gives no credit.
    assert needed_ah(DUTY, 1.2, temperature_c=40) == needed_ah(DUTY, 1.2)


def test_peukert_stated_hours_form():  # facts 2.5
    assert peukert_stated_hours_h(120, 20, 120, 1.4) == pytest.approx(0.3017, abs=5e-5)  # text: about 18 min
    assert peukert_stated_hours_h(100, 20, 10, 1.2) == pytest.approx(8.7055, abs=5e-5)
    hours = peukert_stated_hours_h(7, 20, 1.4, 1.25)
    assert hours == pytest.approx(3.5355, abs=5e-5)
    assert 1.4 * hours == pytest.approx(4.9497, abs=5e-5)
    assert peukert_stated_hours_h(7, 20, 0.35, 1.25) == pytest.approx(20)


def test_peukert_one_ampere_form():  # facts 2.5, two texts
    assert peukert_one_ampere_h(250, 20, 1.3) == pytest.approx(5.08863, abs=5e-6)
    assert 20 * peukert_one_ampere_h(250, 20, 1.3) == pytest.approx(101.7726, abs=5e-5)
    assert peukert_one_ampere_h(100, 5, 1.2) == pytest.approx(14.496, abs=5e-4)


def test_the_two_forms_take_different_capacities():
    assert peukert_one_ampere_h(100, 10, 1.2) != pytest.approx(peukert_stated_hours_h(100, 20, 10, 1.2), rel=0.1)
    own = one_ampere_capacity_ah(100, 20, 1.2)
    for amps in (0.5, 5, 10, 40):
        assert peukert_one_ampere_h(own, amps, 1.2) == pytest.approx(peukert_stated_hours_h(100, 20, amps, 1.2))


def test_sizing_by_peukert():
    law = Peukert(20, 1.25)
    for amps in (0.5, 1.4, 7):
        # One current until the battery is empty: its rating, exactly.
        hours = peukert_stated_hours_h(7, 20, amps, 1.25)
        assert sizing([Phase(amps, hours)], 1.0, [7], peukert=law).size_ah == 7
        assert sizing([Phase(amps, hours * 1.001)], 1.0, [7], peukert=law).size_ah is None
        assert equivalent_a(amps, 7, law) * hours == pytest.approx(7)
    # Below the rated current there is no credit.
    assert equivalent_a(0.1, 7, law) == 0.1
    plain = STANDBY.run(EXAMPLE)
    asked = STANDBY.run(EXAMPLE | {"peukert": {"form": "stated-hours", "rated_hours": 20, "exponent": 1.2}})
    assert asked["peukert_form"] == "stated-hours"
    assert asked["needed_ah"] >= plain["needed_ah"]
    assert asked["size_ah"] >= plain["size_ah"]


def test_sizes():
    assert size_ah(12.0, [26, 12, 18]) == 12
    assert size_ah(12.1, [12]) is None
    assert size_ah(1.0, []) is None
    assert size_ah(0.1 + 0.2, [0.3]) == 0.3  # not lost to rounding
    found = STANDBY.run(EXAMPLE | {"sizes_ah": [7, 12]})
    assert found["size_ah"] is None
    json.dumps(found, allow_nan=False)


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"loads": []}, "loads"),
        ({"loads": None}, "loads"),
        ({"loads": [{"amps": -1, "hours": 1}]}, "loads[0].amps"),
        ({"loads": [{"hours": 1}]}, "loads[0].amps"),
        ({"loads": [{"amps": 1, "hours": float("nan")}]}, "loads[0].hours"),
        ({"loads": [{"amps": 1}]}, "loads[0].hours"),
        ({"margin": 0.2}, "margin"),  # a share in place of a factor
        ({"margin": None}, "margin"),
        ({"margin": 120}, "margin"),
        ({"sizes_ah": [7, 0]}, "sizes_ah[1]"),
        ({"sizes_ah": 7}, "sizes_ah"),
        ({"sizes_ah": ["7 Ah"]}, "sizes_ah[0]"),
        ({"ageing_factor": 0.8}, "ageing_factor"),
        ({"temperature_c": -40}, "temperature_c"),
        ({"temperature_c": 80}, "temperature_c"),
        ({"peukert": {"form": "one-ampere", "rated_hours": 20, "exponent": 1.2}}, "peukert.form"),
        ({"peukert": {"form": "stated-hours", "exponent": 1.2}}, "peukert.rated_hours"),
        ({"peukert": {"form": "stated-hours", "rated_hours": 20, "exponent": 0.9}}, "peukert.exponent"),
        ({"peukert": 1.2}, "peukert"),
    ],
)
def test_bad_input(change, field):
    with pytest.raises(InputError) as caught:
        STANDBY.run(EXAMPLE | change)
    assert caught.value.field == field


@pytest.mark.parametrize(
    "call",
    [
        lambda: peukert_stated_hours_h(0, 20, 1, 1.2),
        lambda: peukert_stated_hours_h(7, 20, 0, 1.2),
        lambda: peukert_one_ampere_h(7, 1, 3),
        lambda: peukert_one_ampere_h(-7, 1, 1.2),
    ],
)
def test_bad_values_for_peukert(call):
    with pytest.raises(InputError):
        call()
