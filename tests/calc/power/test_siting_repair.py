"""Search for whole assignments: what it finds keeps every limit, saving wire costs none, and it may find nothing."""

from itertools import product
from time import monotonic

import numpy as np
import pytest

from hwsched.calc.power.siting_repair import repair, save_wire, search


def given(seed, openings=40, supplies=5, free=1.05):
    rng = np.random.default_rng(seed)
    amps = rng.choice([0.3, 0.5, 0.8, 1.2], openings)
    wire_m = rng.uniform(1, 50, (openings, supplies))
    wire_m[rng.uniform(size=wire_m.shape) < 0.2] = np.inf
    wire_m[np.arange(openings), rng.integers(0, supplies, openings)] = 25.0
    capacity_a = np.full(supplies, free * amps.sum() / supplies)
    return amps, capacity_a, wire_m, wire_m.argmin(axis=1).astype(np.int32)


def wire(wire_m, supply_of):
    return float(wire_m[np.arange(len(supply_of)), supply_of].sum())


def keeps(amps, capacity_a, wire_m, supply_of):
    load = np.bincount(supply_of, weights=amps, minlength=len(capacity_a))
    return (load <= capacity_a + 1e-6).all() and np.isfinite(wire(wire_m, supply_of))


@pytest.mark.parametrize("seed", range(10))
def test_answers_keep_every_limit(seed):
    amps, capacity_a, wire_m, start = given(seed)
    until = monotonic() + 20
    whole = repair(amps, capacity_a, wire_m, start, until)
    assert whole is not None
    assert keeps(amps, capacity_a, wire_m, whole)
    saved = save_wire(amps, capacity_a, wire_m, whole, until)
    assert keeps(amps, capacity_a, wire_m, saved)
    assert wire(wire_m, saved) <= wire(wire_m, whole)
    found = search(amps, capacity_a, wire_m, start, -np.inf, until)
    assert keeps(amps, capacity_a, wire_m, found)
    assert wire(wire_m, found) <= wire(wire_m, saved) + 1e-9
    assert (search(amps, capacity_a, wire_m, start, -np.inf, until) == found).all()


def test_against_every_way_on_small_cases():
    """Nearly always the best; never better than it."""
    hits = 0
    for seed in range(30):
        amps, capacity_a, wire_m, start = given(seed, 7, 3, 1.3)
        best = min(
            (
                wire(wire_m, np.array(way))
                for way in product(range(3), repeat=7)
                if keeps(amps, capacity_a, wire_m, np.array(way))
            ),
            default=None,
        )
        found = search(amps, capacity_a, wire_m, start, -np.inf, monotonic() + 5)
        if best is None:
            assert found is None
        elif found is not None:
            assert wire(wire_m, found) >= best - 1e-9
            hits += wire(wire_m, found) <= best + 1e-9
    assert hits >= 24


def test_the_opening_whose_move_costs_least_wire_is_moved():
    """One of two must go: 10 m more for the first, 1 m more for the second."""
    amps, capacity_a = np.array([1.0, 1.0]), np.array([1.0, 1.0])
    wire_m = np.array([[5.0, 15.0], [5.0, 6.0]])
    start = np.zeros(2, dtype=np.int32)
    assert repair(amps, capacity_a, wire_m, start, monotonic() + 5).tolist() == [0, 1]
    # For each ampere: 4 m for 2 A are cheaper than 3 m for 1 A, where either mends it.
    amps, capacity_a = np.array([1.0, 2.0]), np.array([2.0, 2.0])
    wire_m = np.array([[5.0, 8.0], [5.0, 9.0]])
    assert repair(amps, capacity_a, wire_m, start, monotonic() + 5).tolist() == [1, 0]


def test_two_change_places_where_no_one_can_move():
    """3 A on 2 A, and 2 A on 3 A: neither has room for one more, but they can be swapped."""
    amps, capacity_a = np.array([3.0, 2.0]), np.array([2.0, 3.0])
    wire_m = np.array([[1.0, 7.0], [4.0, 1.0]])
    start = np.array([0, 1], dtype=np.int32)
    assert repair(amps, capacity_a, wire_m, start, monotonic() + 5).tolist() == [1, 0]


def test_the_first_answer_is_taken_where_any_wire_suffices():
    """Though there are better ones, which are found where they are asked for."""
    bettered = 0
    for seed in range(4, 8):
        amps, capacity_a, wire_m, start = given(seed)
        until = monotonic() + 20
        first = save_wire(amps, capacity_a, wire_m, repair(amps, capacity_a, wire_m, start, until), until)
        assert (search(amps, capacity_a, wire_m, start, np.inf, until) == first).all()
        bettered += wire(wire_m, search(amps, capacity_a, wire_m, start, -np.inf, until)) < wire(wire_m, first) - 0.1
    assert bettered


def test_nothing_is_found_where_there_is_nothing():
    amps, capacity_a, wire_m, start = given(1)
    assert search(amps, capacity_a * 0.9, wire_m, start, -np.inf, monotonic() + 0.5) is None


def test_enough_is_enough():
    amps, capacity_a, wire_m, start = given(2)
    until = monotonic() + 20
    best = wire(wire_m, search(amps, capacity_a, wire_m, start, -np.inf, until))
    assert best <= wire(wire_m, search(amps, capacity_a, wire_m, start, 1.5 * best, until)) <= 1.5 * best
