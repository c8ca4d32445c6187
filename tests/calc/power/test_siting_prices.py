"""Prices of openings: never a bound over the least wire, never a plan over a limit; tried against every choice."""

import random
from itertools import combinations
from time import monotonic

import numpy as np
import pytest

from hwsched.calc.power.siting_model import Pairs
from hwsched.calc.power.siting_prices import by_prices, exchanged
from hwsched.calc.solver import Limits, Model, run


def pairs_of(wire_m, amps, capacity_a, must=()):
    table = np.array(wire_m, dtype=float)
    opening, supply = np.nonzero(np.isfinite(table))
    must_open = np.zeros(table.shape[1])
    must_open[list(must)] = 1.0
    return Pairs(
        np.array(amps, dtype=float), np.array(capacity_a, dtype=float), opening.astype(np.int32),
        supply.astype(np.int32), table[opening, supply], must_open,
    )  # fmt: skip


def drawn(rng, openings, supplies, reach_m):
    """Wire with some routes too long, and a choice of supplies that reaches all; None where there is none."""
    places = [(rng.uniform(0, 50), rng.uniform(0, 50)) for _ in range(supplies)]
    doors = [(rng.uniform(0, 50), rng.uniform(0, 50)) for _ in range(openings)]
    table = np.array([[abs(d[0] - p[0]) + abs(d[1] - p[1]) for p in places] for d in doors])
    table[table > reach_m] = np.inf
    for count in range(1, supplies + 1):
        choices = [each for each in combinations(range(supplies), count) if np.isfinite(table[:, each]).any(1).all()]
        if choices:
            return table, choices
    return None


def limits(**more):
    return Limits(until=monotonic() + 60.0, **more)


def test_against_every_choice_of_places():
    rng = random.Random(4)
    settled = 0
    for _ in range(150):
        found = drawn(rng, rng.randrange(4, 20), rng.randrange(2, 9), rng.uniform(25, 70))
        if found is None:
            continue
        table, choices = found
        must = (choices[-1][0],) if rng.random() < 0.3 else ()
        allowed = [each for each in choices if set(must) <= set(each)]
        least_m = min(table[:, each].min(axis=1).sum() for each in allowed)
        pairs = pairs_of(table, [1.0] * len(table), [100.0] * table.shape[1], must)
        plan = by_prices(pairs, np.array(allowed[-1]), 0.0, limits())
        assert plan is not None
        assert plan.least_wire_m <= least_m + 1e-6
        assert plan.wire_m >= least_m - 1e-6
        assert plan.wire_m == pytest.approx(sum(table[i, j] for i, j in enumerate(plan.supply_of)))
        assert set(plan.supply_of) | set(must) <= set(plan.opened)
        assert len(plan.opened) == len(choices[0])
        settled += plan.least_wire_m >= 0.99 * plan.wire_m
    # Only a bound that is close is of any use.
    assert settled >= 120


def least_of_parts(table, count):
    """Least wire where an opening may hang on parts of several supplies, so many in all: a linear program."""
    pairs = np.argwhere(np.isfinite(table))
    openings, supplies = table.shape
    wholes = [[(k, 1.0) for k, (i, _) in enumerate(pairs) if i == opening] for opening in range(openings)]
    opened = [[(k, 1.0), (len(pairs) + j, -1.0)] for k, (_, j) in enumerate(pairs)]
    rows = [*wholes, *opened, [(len(pairs) + j, 1.0) for j in range(supplies)]]
    columns = len(pairs) + supplies
    model = Model(
        np.array([*(table[i, j] for i, j in pairs), *[0.0] * supplies]), np.zeros(columns), np.ones(columns),
        np.zeros(columns, dtype=bool), np.array([*[1.0] * openings, *[-np.inf] * len(pairs), count]),
        np.array([*[1.0] * openings, *[0.0] * len(pairs), count]),
        np.cumsum([0, *map(len, rows)]).astype(np.int32),
        np.array([c for row in rows for c, _ in row], dtype=np.int32), np.array([v for row in rows for _, v in row]),
    )  # fmt: skip
    return run(model, Limits()).objective


def test_the_bound_comes_as_near_as_prices_can_bring_it():
    """The best prices leave the bound of the linear program: Geoffrion, Lagrangean relaxation (1974), from memory."""
    rng, compared = random.Random(9), 0
    for _ in range(30):
        found = drawn(rng, rng.randrange(30, 80), rng.randrange(8, 20), rng.uniform(25, 70))
        if found is None:
            continue
        table, choices = found
        pairs = pairs_of(table, [1.0] * len(table), [100.0] * table.shape[1])
        plan = by_prices(pairs, np.array(choices[-1]), 0.0, limits())
        assert plan.least_wire_m >= least_of_parts(table, len(choices[0])) * (1 - 2e-4)
        compared += 1
    assert compared >= 25


def test_where_an_opening_cannot_hang_on_its_nearest_supply_nothing_is_answered():
    table = [[1.0, 9.0], [2.0, 9.0], [9.0, 1.0]]
    choice = np.array([0, 1])
    assert by_prices(pairs_of(table, [1, 1, 1], [1.5, 9]), choice, 0.0, limits()) is None
    plan = by_prices(pairs_of(table, [1, 1, 1], [2.0, 9]), choice, 0.0, limits())
    assert (plan.supply_of, plan.wire_m, plan.least_wire_m) == ((0, 0, 1), 4.0, pytest.approx(4.0))


def test_a_better_choice_without_room_is_not_taken():
    # All on the first supply is least wire, and more than it gives.
    table = [[1.0, 3.0], [1.0, 3.0]]
    plan = by_prices(pairs_of(table, [1, 1], [2.0, 2.0]), np.array([1]), 0.0, limits())
    assert plan.opened == (0,)
    assert by_prices(pairs_of(table, [1, 1], [1.5, 2.0]), np.array([1]), 0.0, limits()) is None


def test_cancelled_it_answers_with_what_it_has():
    table, choices = drawn(random.Random(2), 15, 8, 40.0)
    pairs = pairs_of(table, [1.0] * 15, [100.0] * 8)
    plan = by_prices(pairs, np.array(choices[0]), 0.0, limits(cancelled=lambda: True))
    assert plan.least_wire_m == 0.0
    assert plan.wire_m == pytest.approx(sum(table[i, j] for i, j in enumerate(plan.supply_of)))


def test_what_must_stay_is_not_exchanged():
    table = np.array([[9.0, 1.0], [8.0, 2.0]])
    assert exchanged(table, np.array([0]), np.array([True, False]))[1] == 17.0
    assert exchanged(table, np.array([0]), np.array([False, False]))[1] == 3.0
