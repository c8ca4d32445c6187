"""How supplies are loaded: published examples, boundaries, bad input."""

import doctest

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.power import supply_practice
from hwsched.calc.power.supply_practice import (
    duty_equivalent_a,
    limiter_a,
    mismatch,
    operating_window_v,
    supply_share,
    with_margin_a,
    worst_inrush_a,
)


def test_docs():
    assert doctest.testmod(supply_practice).failed == 0


def test_share():  # trade articles: at most 75 to 80 %; 2.5 A supply, 2.0 A usable (facts 2.2)
    assert supply_share(2.0, 2.5).advised_a == pytest.approx(2.0)
    assert supply_share(2.0, 2.5).within_advice
    assert not supply_share(2.01, 2.5).within_advice
    assert supply_share(2.01, 2.5).within_rating
    assert not supply_share(2.51, 2.5).within_rating
    assert supply_share(2.0, 2.5, 0.75).advised_a == pytest.approx(1.875)


def test_margin():  # trade practice (facts 2.2): 0.762 A times 1.25
    assert with_margin_a([0.110] * 3 + [0.280] + [0.038] * 4, 1.0) == pytest.approx(0.762)
    assert with_margin_a([0.110] * 3 + [0.280] + [0.038] * 4) == pytest.approx(0.9525)


def test_duty_equivalent_current():  # controller installation guide (2003): published 35 mA
    assert 1000 * duty_equivalent_a(0.5, 5, 50) == pytest.approx(34.7, abs=0.05)
    assert duty_equivalent_a(0.5, 3600, 1) == 0.5
    with pytest.raises(InputError, match="more than an hour"):
        duty_equivalent_a(0.5, 3601, 1)


@pytest.mark.parametrize(
    ("on_s", "times", "share"), [(0.0, 60, 0.0), (0.25, 1440, 0.1), (0.5, 7200, 1.0), (30, 0, 0.0)]
)
def test_a_pulse_may_be_as_short_as_it_is(on_s, times, share):
    """Half a second, 7200 times an hour, is the whole hour; a lock is pulsed for a quarter of a second."""
    assert duty_equivalent_a(2.0, on_s, times) == pytest.approx(2.0 * share)


def test_window():  # NFPA 72 as read in a secondary copy: 85 to 110 %
    assert operating_window_v(12) == pytest.approx((10.2, 13.2))
    assert operating_window_v(24) == pytest.approx((20.4, 26.4))


def test_worst_inrush():
    assert worst_inrush_a([0.1, 0.1], [1, 2], 0) == pytest.approx(0.2)
    assert worst_inrush_a([0.1, 0.1], [1, 2], 1) == pytest.approx(2.1)
    assert worst_inrush_a([0.1, 0.1], [1, 2], 9) == pytest.approx(3.0)
    assert worst_inrush_a([0.5, 0.1], [0.0, 0.4], 2) == pytest.approx(0.9)  # a released lock gives nothing back
    assert worst_inrush_a([], [], 1) == 0
    with pytest.raises(InputError):
        worst_inrush_a([], [], -1)
    with pytest.raises(ValueError):
        worst_inrush_a([1], [], 1)


def test_limiter():
    assert limiter_a(1.6, 4.17) == 2.0
    assert limiter_a(1.601, 4.17) == 2.5
    assert limiter_a(1.6, 1.9) is None
    assert limiter_a(1.0, 5, [3, 2], 1.0) == 2
    assert limiter_a(9, 50) is None


def test_mismatch():
    assert mismatch(12, "dc", 10.2, 13.2, "dc") is None
    assert mismatch(12, "dc", 10.2, 13.2, "either") is None
    assert mismatch(24, "dc", 12, 24, "dc") is None
    assert "over the highest" in mismatch(24, "dc", 10.2, 13.2, "dc")
    assert "under the lowest" in mismatch(12, "dc", 20.4, 26.4, "dc")
    assert "AC" in mismatch(24, "ac", 20.4, 26.4, "dc")
    for bad in (("rms", "dc"), ("dc", "3-phase")):
        with pytest.raises(InputError):
            mismatch(24, bad[0], 20, 26, bad[1])


@pytest.mark.parametrize(
    "call",
    [
        lambda: supply_share(-1, 2),
        lambda: supply_share(1, 0),
        lambda: supply_share(1, 2, 80),
        lambda: with_margin_a([1], 0.8),
        lambda: duty_equivalent_a(-1, 1, 1),
        lambda: limiter_a(float("nan"), 1),
        lambda: operating_window_v(0),
    ],
)
def test_bad_input(call):
    with pytest.raises(InputError):
        call()
