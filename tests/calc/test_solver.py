"""The integer solver as the program runs it: answers, limits, prices of a linear model."""

from time import monotonic

import numpy as np
import pytest

from hwsched.calc.solver import Limits, Model, run


def knapsack(count=30, whole=True):
    """Most value within a weight: minimise minus the value."""
    rng = np.random.default_rng(5)
    value, weight = rng.uniform(1, 9, count), rng.uniform(1, 9, count)
    return Model(
        -value,
        np.zeros(count),
        np.ones(count),
        np.full(count, whole),
        np.array([-np.inf]),
        np.array([weight.sum() / 3]),
        np.array([0, count], dtype=np.int32),
        np.arange(count, dtype=np.int32),
        weight,
    )


def best_value(model):
    """By counting in steps of weight of a thousandth."""
    room = int(model.row_high[0] * 1000)
    best = np.zeros(room + 1)
    for value, weight in zip(-model.cost, np.ceil(model.value * 1000).astype(int), strict=True):
        best[weight:] = np.maximum(best[weight:], best[:-weight] + value)
    return best[-1]


def test_whole_numbers():
    model = knapsack()
    found = run(model, Limits())
    assert found.finished
    assert found.objective == pytest.approx(found.bound)
    assert -found.objective == pytest.approx(best_value(model), rel=1e-3)
    assert model.value @ found.x <= model.row_high[0] + 1e-6


def test_linear_model_has_prices():
    model = knapsack(whole=False)
    found = run(model, Limits())
    assert found.objective <= run(knapsack(), Limits()).objective
    # A pound more of room is worth the price of the row.
    wider = Model(**{name: getattr(model, name) for name in model.__slots__} | {"row_high": model.row_high + 0.01})
    assert run(wider, Limits()).objective - found.objective == pytest.approx(0.01 * found.row_price[0], rel=1e-6)
    assert (found.reduced_cost[found.x < 1e-9] >= -1e-9).all()


def test_infeasible():
    model = knapsack()
    found = run(Model(**{n: getattr(model, n) for n in model.__slots__} | {"row_low": model.row_high + 1e3}), Limits())
    assert found.infeasible
    assert found.x is None


def test_a_target_that_suffices():
    found = run(knapsack(), Limits(target=-1.0))
    assert found.finished
    assert found.objective <= -1.0


def test_time_and_cancelling():
    assert run(knapsack(), Limits(until=0.0)).x is None
    assert not run(knapsack(), Limits(cancelled=lambda: True)).finished
    assert run(knapsack(), Limits(cancelled=lambda: False)).finished


def test_a_second_suffices_for_a_small_model():
    assert run(knapsack(), Limits(until=monotonic() + 0.95)).finished


def market_split(count=40, rows=4):
    """Whole numbers that add up to one half in each row: known by how it is made, all but impossible to find."""
    rng = np.random.default_rng(3)
    table = rng.integers(100, 10_000, (rows, count)).astype(float)
    answer = np.zeros(count)
    answer[rng.permutation(count)[: count // 2]] = 1.0
    low, high = table @ answer, table @ answer
    model = Model(
        np.zeros(count),
        np.zeros(count),
        np.ones(count),
        np.full(count, True),
        low,
        high,
        np.arange(0, rows * count + 1, count, dtype=np.int32),
        np.tile(np.arange(count, dtype=np.int32), rows),
        table.ravel(),
    )
    return model, answer


def test_an_answer_to_begin_from_is_not_lost_when_the_person_stops_at_once():
    model, answer = market_split()
    assert run(model, stopped_at_once()).x is None
    found = run(model, stopped_at_once(), answer)
    assert found.x == pytest.approx(answer)


def stopped_at_once():
    """Limits of a person who stops as soon as the solver asks; the first question comes before it begins."""
    asked = []

    def cancelled():
        asked.append(None)
        return len(asked) > 1

    return Limits(cancelled=cancelled)


def test_a_linear_model_that_is_stopped_claims_nothing():
    model, _ = market_split(count=1000, rows=150)
    model.whole[:] = False
    found = run(model, stopped_at_once())
    assert (found.x, found.objective, found.bound) == (None, np.inf, -np.inf)
    assert not found.infeasible
    assert not found.finished


def test_the_gap_is_told_on_the_way(capfd):
    """Most value within ten weights at once: the solver has answers long before it has proven the best."""
    rng = np.random.default_rng(7)
    model, _ = market_split(count=300, rows=10)
    model.value[:] = rng.integers(10, 100, 3000)
    model.cost[:] = -rng.integers(10, 100, 300)
    model.row_low[:], model.row_high[:] = -np.inf, model.value.reshape(10, 300).sum(1) / 3
    told = []
    found = run(
        model, Limits(until=monotonic() + 3.0, progress=lambda step, gap: told.append((step, gap)), step="packing")
    )
    assert {step for step, _ in told} == {"packing"}
    gaps = [gap for _, gap in told if gap is not None]
    assert all(0.0 <= gap < 1.0 for gap in gaps)
    assert gaps[-1] >= (found.objective - found.bound) / abs(found.objective) - 1e-6
    # What it prints would stand among the answers on standard output.
    assert capfd.readouterr() == ("", "")


def test_a_bound_that_says_nothing_is_no_gap():
    """Sums that nobody gets exactly right: what is off counts, none is the bound, and that is a gap of all."""
    model, _ = market_split(30, 3)
    count, off = 30, np.array([1.0, -1.0])
    slack = Model(
        np.concatenate([np.zeros(count), np.ones(6)]),
        np.zeros(count + 6),
        np.concatenate([np.ones(count), np.full(6, 1e5)]),
        np.concatenate([np.full(count, True), np.full(6, False)]),
        model.row_low,
        model.row_high,
        np.arange(0, 3 * (count + 2) + 1, count + 2, dtype=np.int32),
        np.concatenate([[*range(count), count + 2 * row, count + 2 * row + 1] for row in range(3)]).astype(np.int32),
        np.concatenate([[*row, *off] for row in model.value.reshape(3, count)]),
    )
    told = []
    found = run(slack, Limits(until=monotonic() + 0.4, progress=lambda step, gap: told.append(gap)))
    assert found.bound <= 0.0 < found.objective
    assert set(told) == {None}


def test_progress_and_a_start():
    told = []
    model = knapsack()
    best = run(model, Limits())
    again = run(model, Limits(progress=lambda step, gap: told.append((step, gap)), step="packing"), best.x)
    assert again.objective == pytest.approx(best.objective)
    assert told[0] == ("packing", None)
