"""Conductors: published tables, published drops, limits, bad input."""

import doctest

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.power import conductor as module
from hwsched.calc.power.conductor import (
    CONDUCTOR,
    M_PER_FOOT,
    conductor,
    drop_v,
    highest_allowed_ohm_per_km,
    longest_run_m,
    loop_ohm,
    published_ohm_per_km,
)
from hwsched.calc.tables import rows


def per_kft(ohm_per_km):
    return ohm_per_km * M_PER_FOOT


def test_docs():
    assert doctest.testmod(module).failed == 0


@pytest.mark.parametrize(
    ("gauge", "ohm_per_kft"),
    # Bench wire table at 20 °C, read (facts 1.2).
    [
        ("14 AWG", 2.525),
        ("16 AWG", 4.016),
        ("18 AWG", 6.385),
        ("19 AWG", 8.051),
        ("20 AWG", 10.15),
        ("22 AWG", 16.14),
        ("23 AWG", 20.36),
        ("24 AWG", 25.67),
    ],
)
def test_wire_table_at_20_degrees(gauge, ohm_per_kft):
    assert per_kft(conductor(gauge, "solid", 20).resistance_ohm_per_km) == pytest.approx(ohm_per_kft, rel=1e-3)


@pytest.mark.parametrize(
    ("gauge", "area_mm2", "ohm_per_km"),
    # ASTM B258 and IEC 60028, computed in facts 1.2.
    [
        ("14 AWG", 2.0809, 8.29),
        ("16 AWG", 1.3087, 13.17),
        ("18 AWG", 0.8230, 20.95),
        ("20 AWG", 0.5176, 33.31),
        ("22 AWG", 0.3255, 52.96),
        ("24 AWG", 0.2047, 84.22),
    ],
)
def test_area_and_resistance(gauge, area_mm2, ohm_per_km):
    found = conductor(gauge, "solid", 20)
    assert found.area_mm2 == pytest.approx(area_mm2, abs=6e-5)
    assert found.resistance_ohm_per_km == pytest.approx(ohm_per_km, abs=6e-3)


def test_second_published_list_is_the_same_copper_at_25_degrees():  # facts 1.2: 6.505, 4.091, 2.573
    for gauge, ohm_per_kft in (("18 AWG", 6.505), ("16 AWG", 4.091), ("14 AWG", 2.573)):
        assert per_kft(conductor(gauge, "solid", 25).resistance_ohm_per_km) == pytest.approx(ohm_per_kft, rel=2e-3)


def test_table_8_against_the_formula():  # NFPA 70 Chapter 9 Table 8 at 75 °C, uncoated (facts 1.3)
    uncoated = [r for r in rows("nec_table_8") if r.text("coating") == "uncoated"]
    assert len(uncoated) == 8
    for r in uncoated:
        solid = r.text("strands") == "1"
        found = conductor(r.text("gauge"), "solid" if solid else "stranded", 75).resistance_ohm_per_km
        assert per_kft(found) == pytest.approx(r.number("ohm_per_kft"), rel=2e-3 if solid else 6e-3)
        # The two columns of the table are one value in two units, each rounded to three figures.
        assert r.number("ohm_per_kft") / M_PER_FOOT == pytest.approx(r.number("ohm_per_km"), rel=4e-3)


def test_table_8_values():  # facts 1.3
    assert published_ohm_per_km("18 AWG", "stranded") == 7.95 / M_PER_FOOT
    assert published_ohm_per_km("16 AWG", "solid") == 4.89 / M_PER_FOOT
    assert published_ohm_per_km("14 AWG", "stranded", coated=True) == 3.26 / M_PER_FOOT
    assert published_ohm_per_km("20 AWG", "solid") is None  # the table begins at 18 AWG


def test_iec_60228_maxima_lie_4_to_8_percent_above_the_ideal():  # facts 1.4
    ratios = {0.5: 1.0440, 0.75: 1.0658, 1.0: 1.0498, 1.5: 1.0527, 2.5: 1.0745}
    assert len(rows("iec_60228")) == len(ratios)
    for area_mm2, ratio in ratios.items():
        ideal = conductor(f"{area_mm2} mm2", "solid", 20).resistance_ohm_per_km
        assert highest_allowed_ohm_per_km(area_mm2) / ideal == pytest.approx(ratio, abs=6e-5)
        assert highest_allowed_ohm_per_km(area_mm2, flexible=True) > highest_allowed_ohm_per_km(area_mm2)
        assert highest_allowed_ohm_per_km(area_mm2, coated=True) > highest_allowed_ohm_per_km(area_mm2)
    assert highest_allowed_ohm_per_km(0.6) is None
    with pytest.raises(InputError, match="coated"):
        highest_allowed_ohm_per_km(1.0, flexible=True, coated=True)


def test_temperature():  # facts 1.1: R75/R20 = 1.21615; IEC 60228 annex factor 0.893 at 50 °C
    cold = conductor("1.0 mm2", "solid", 20).resistance_ohm_per_km
    assert cold == pytest.approx(1000 / 58)
    assert conductor("1.0 mm2", "solid", 75).resistance_ohm_per_km / cold == pytest.approx(1.21615, abs=1e-9)
    assert cold / conductor("1.0 mm2", "solid", 50).resistance_ohm_per_km == pytest.approx(0.893, abs=2e-3)


def test_stranding_factor():
    solid, stranded = (conductor("0,75 mm²", s, 40).resistance_ohm_per_km for s in ("solid", "stranded"))
    assert stranded / solid == pytest.approx(1.02)


@pytest.mark.parametrize("gauge", ["4/0 AWG", "0000 AWG", "AWG 4/0"])
def test_four_aught(gauge):  # ASTM B258: 0.46 in
    assert conductor(gauge, "solid", 20).area_mm2 == pytest.approx((0.46 * 25.4) ** 2 * 3.14159265 / 4)


def test_published_drops():  # facts 1.5
    # Low-voltage wiring training course citing Table 8: 16 AWG stranded, 100 ft, 4 A, 24 V.
    drop = drop_v(100 * M_PER_FOOT, 4, published_ohm_per_km("16 AWG", "stranded"))
    assert drop == pytest.approx(3.992)
    assert drop / 24 == pytest.approx(0.1663, abs=5e-5)
    # Electrician maths text: 400 ft of single wire of 6.505 ohm/kft.
    assert loop_ohm(200 * M_PER_FOOT, 6.505 / M_PER_FOOT) == pytest.approx(2.602)
    # 12 V lock, 0.5 A, 150 ft one way, 18 AWG stranded; and 24 V, 0.25 A on the same wire (computed).
    wire = published_ohm_per_km("18 AWG", "stranded")
    assert loop_ohm(150 * M_PER_FOOT, wire) == pytest.approx(2.385)
    assert drop_v(150 * M_PER_FOOT, 0.5, wire) == pytest.approx(1.1925)
    assert drop_v(150 * M_PER_FOOT, 0.25, wire) == pytest.approx(0.59625)
    # 30 m of 0.5 mm² at the IEC 60228 maximum, 0.35 A (computed).
    assert drop_v(30, 0.35, highest_allowed_ohm_per_km(0.5)) == pytest.approx(0.756)


def test_longest_runs():  # facts 1.5
    # At most 5 % of 12 V at 0.5 A on 18 AWG stranded: 75.47 ft.
    wire = published_ohm_per_km("18 AWG", "stranded")
    assert longest_run_m(12, 11.4, 0.5, wire) / M_PER_FOOT == pytest.approx(75.47, abs=5e-3)
    # Fire-alarm panel installation worksheet (2018): 20.4 V less 2 A times 0.20 V/A, 16 V, 0.002 ohm/ft: 500 ft.
    assert longest_run_m(20.4 - 2 * 0.20, 16, 2, 2 / M_PER_FOOT) / M_PER_FOOT == pytest.approx(500)


def test_k_factor_form():  # facts 1.5: about 12.9 for copper at 75 °C by training practice, from memory
    table = {(r.text("gauge"), r.text("strands"), r.text("coating")): r for r in rows("nec_table_8")}
    for key, k in ((("14 AWG", "1", "uncoated"), 12.62), (("12 AWG", "7", "uncoated"), 12.93)):
        assert table[key].number("ohm_per_kft") * table[key].number("circular_mils") / 1000 == pytest.approx(
            k, abs=5e-3
        )


def test_calculator():
    found = CONDUCTOR.run({"gauge": "18 AWG", "stranding": "stranded", "temperature_c": 75})
    assert per_kft(found["resistance_ohm_per_km"]) == pytest.approx(7.920, abs=5e-4)
    assert set(found) == {f.name for f in CONDUCTOR.outputs}
    CONDUCTOR.run(CONDUCTOR.example)


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"gauge": "18"}, "gauge"),
        ({"gauge": "50 AWG"}, "gauge"),
        ({"gauge": "0 mm2"}, "gauge"),
        ({"gauge": "-1 mm2"}, "gauge"),
        ({"gauge": "1e-9 mm2"}, "gauge"),
        ({"gauge": "18/2"}, "gauge"),
        ({"gauge": ""}, "gauge"),
        ({"gauge": 18}, "gauge"),
        ({"gauge": None}, "gauge"),
        ({"stranding": "braided"}, "stranding"),
        ({"stranding": None}, "stranding"),
        ({"temperature_c": float("nan")}, "temperature_c"),
        ({"temperature_c": -300}, "temperature_c"),
        ({"temperature_c": 1000}, "temperature_c"),
        ({"temperature_c": "warm"}, "temperature_c"),
        ({"temperature_c": None}, "temperature_c"),
    ],
)
def test_bad_input(change, field):
    with pytest.raises(InputError) as caught:
        CONDUCTOR.run({"gauge": "18 AWG", "stranding": "solid", "temperature_c": 20} | change)
    assert caught.value.field == field


def test_nothing_left_to_drop():
    with pytest.raises(InputError, match="minimum_v"):
        longest_run_m(12, 12, 1, 20)
    with pytest.raises(InputError, match="current_a"):
        longest_run_m(12, 10, 0, 20)
    with pytest.raises(InputError, match="ohm_per_km"):
        longest_run_m(12, 10, 1, 0)
    # Of very little current and resistance a run may be very long.
    assert longest_run_m(12, 10, 0.5, 0.5) == pytest.approx(2 / (2 * 0.5 * 0.5 / 1000))
