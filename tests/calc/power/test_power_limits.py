"""Limits of power-limited sources: rows of the published tables, boundaries, cautions."""

import doctest

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.power import power_limits
from hwsched.calc.power.power_limits import (
    battery_counts_as_class_2,
    caution,
    class_2_limit,
    excesses,
    limited_power_source_limit,
)
from hwsched.calc.tables import rows


def names(volts, amps, limiting="inherent", **more):
    return [e.quantity for e in excesses(class_2_limit(volts, limiting), volts, amps, **more)]


def test_docs():
    assert doctest.testmod(power_limits).failed == 0


def test_class_2_nameplate():  # NEC Chapter 9 Tables 11(A), 11(B) as read in facts 2.1
    assert names(24, 4) == []  # 96 VA
    assert "nameplate-va" in names(24, 5)  # 120 VA
    assert class_2_limit(24, "inherent").nameplate_a == pytest.approx(4.17, abs=5e-3)
    assert class_2_limit(30, "inherent").nameplate_a == pytest.approx(3.33, abs=5e-3)
    twelve = class_2_limit(12, "inherent")
    assert (twelve.nameplate_va, twelve.nameplate_a, twelve.output_a) == (60, 5, 8)
    forty_eight = class_2_limit(48, "inherent")
    assert forty_eight.output_a == pytest.approx(3.125)
    assert forty_eight.nameplate_va == 100
    # "100/Vmax": divide by the source's maximum voltage; trade-journal series on Chapter 9 (2021).
    assert class_2_limit(50, "inherent").nameplate_a == 2.0


def test_class_2_with_overcurrent_device():  # facts 2.1
    limit = class_2_limit(24, "overcurrent-device")
    assert limit.output_a == pytest.approx(41.7, abs=0.05)
    assert limit.overcurrent_a == pytest.approx(4.17, abs=5e-3)
    assert limit.output_va == 250
    assert class_2_limit(12, "overcurrent-device").overcurrent_a == 5
    assert names(24, 4, "overcurrent-device", most_a=10, overcurrent_a=4) == []
    assert names(24, 4, "overcurrent-device", most_a=11, overcurrent_a=5) == ["output-va", "overcurrent-a"]


def test_boundaries_belong_to_the_lower_row():
    assert class_2_limit(20, "inherent").nameplate_a == 5
    assert class_2_limit(20.01, "inherent").nameplate_a == pytest.approx(100 / 20.01)
    assert class_2_limit(30, "inherent").output_a == 8
    assert class_2_limit(30.01, "inherent").output_a == pytest.approx(150 / 30.01)
    assert class_2_limit(60, "inherent") is not None
    assert class_2_limit(60.01, "inherent") is None
    assert names(20, 5) == []
    assert names(30, 100 / 30) == []


def test_what_is_not_known_is_not_checked():
    assert names(24, 4, most_a=None) == []
    assert names(24, 4, most_a=8.1) == ["output-a"]


def test_limited_power_source():  # IEC 60950-1 Tables 2B (read), 2C (read in part)
    assert limited_power_source_limit(48, "inherent").output_a == 3.125
    assert limited_power_source_limit(48, "inherent").verified
    assert limited_power_source_limit(24, "overcurrent-device").output_a == pytest.approx(1000 / 24)
    assert limited_power_source_limit(24, "overcurrent-device").output_va == 250
    assert limited_power_source_limit(12, "inherent").output_va == 60
    assert not limited_power_source_limit(12, "inherent").verified
    assert limited_power_source_limit(61, "inherent") is None


def test_values_from_memory_are_marked():
    assert not class_2_limit(24, "inherent").verified
    assert not excesses(class_2_limit(24, "inherent"), 24, 9)[0].verified


def test_dry_cells():  # NEC 725.121(A): dry-cell battery of at most 30 V
    assert battery_counts_as_class_2(True, 6)
    assert battery_counts_as_class_2(True, 30)
    assert not battery_counts_as_class_2(True, 36)
    assert not battery_counts_as_class_2(False, 12)


def test_cautions():
    for name in ("mains-on-leaf", "separation", "parallel-outputs", "marking", "suppressor-place"):
        assert caution(name).endswith(".")
    assert "authority having jurisdiction" in caution("separation")
    assert len({r.text("id") for r in rows("cautions")}) == len(rows("cautions"))
    with pytest.raises(KeyError):
        caution("none")


@pytest.mark.parametrize(
    ("volts", "limiting"), [(0, "inherent"), (-5, "inherent"), (24, "fuse"), (float("nan"), "inherent")]
)
def test_bad_input(volts, limiting):
    with pytest.raises(InputError):
        class_2_limit(volts, limiting)
    with pytest.raises(InputError):
        limited_power_source_limit(volts, limiting)
