"""The order of the steps where time is short: what is claimed as proven is proven of the answer that is given."""

import numpy as np
import pytest

from hwsched.calc.power import siting_plan
from hwsched.calc.power.siting_model import Pairs, Plan
from hwsched.calc.power.siting_plan import plan
from hwsched.calc.solver import Limits

# Two openings of 1 A, each 1 m from its own supply and 50 m from the other; either supply alone would do.
PAIRS = Pairs(
    np.ones(2),
    np.array([2.0, 2.0]),
    np.array([0, 0, 1, 1], dtype=np.int32),
    np.array([0, 1, 0, 1], dtype=np.int32),
    np.array([1.0, 50.0, 50.0, 1.0]),
    np.zeros(2),
)


@pytest.fixture
def no_time_for_the_count(monkeypatch):
    """A large model whose openings were not assigned in time; of the count two are found, and one not ruled out.

    As where currents are short: else prices settle so small a case.
    """
    monkeypatch.setattr(siting_plan, "by_prices", lambda *_: None)
    found = Plan((0, 1), (0, 1), 2.0, 0.0, 0)
    monkeypatch.setattr(siting_plan, "_DIRECT_PAIRS", 0)
    monkeypatch.setattr(siting_plan, "_fewest", lambda *_: (found, 1))


def test_with_time_one_supply_is_found():
    found = plan(PAIRS, Limits())
    assert (len(found.opened), found.wire_m, found.least_supplies) == (1, 51.0, 1)


def test_where_currents_are_ample_prices_settle_it(monkeypatch):
    monkeypatch.setattr(siting_plan, "_DIRECT_PAIRS", 0)
    monkeypatch.setattr(siting_plan, "_by_choice", None)
    found = plan(PAIRS, Limits())
    assert (len(found.opened), found.wire_m, found.least_supplies) == (1, 51.0, 1)
    assert found.least_wire_m == pytest.approx(51.0)


@pytest.mark.parametrize("assigned", [False, True])
def test_the_bound_is_that_of_as_many_supplies_as_are_given(no_time_for_the_count, monkeypatch, assigned):
    """Two supplies need 2 m of wire; the 51 m that one would need say nothing of them."""
    real, calls = siting_plan._assign, []

    def assign(*asked):
        calls.append(None)
        return real(*asked) if assigned and len(calls) > 1 else None

    monkeypatch.setattr(siting_plan, "_assign", assign)
    found = plan(PAIRS, Limits(gap=0.01))
    assert len(calls) == 2
    assert (found.opened, found.supply_of, found.wire_m) == ((0, 1), (0, 1), 2.0)
    assert 2.0 * 0.99 <= found.least_wire_m <= 2.0
    assert found.least_supplies == 1
