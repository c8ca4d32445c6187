"""The models of siting: a plan written as columns keeps every row, and is read again as it was."""

import numpy as np
import pytest

from hwsched.calc.power.siting_model import (
    Pairs,
    Plan,
    columns_of,
    cover_model,
    read_plan,
    shortage,
    wire_or_count_model,
)
from hwsched.calc.solver import Limits, run

# Three openings of 1, 2 and 1 A; supplies of 2 and 3 A. The first opening is out of the second's reach.
PAIRS = Pairs(
    np.array([1.0, 2.0, 1.0]),
    np.array([2.0, 3.0]),
    np.array([0, 1, 1, 2, 2], dtype=np.int32),
    np.array([0, 0, 1, 0, 1], dtype=np.int32),
    np.array([5.0, 7.0, 9.0, 4.0, 6.0]),
    np.zeros(2),
)
PLAN = Plan((0, 1), (0, 1, 0), 5.0 + 9.0 + 4.0, 0.0, 0)


def rows_of(model, x):
    """What each row adds up to."""
    ends = zip(model.start[:-1], model.start[1:], strict=True)
    return np.array([model.value[a:b] @ x[model.column[a:b]] for a, b in ends])


def keeps(model, x):
    rows = rows_of(model, x)
    within = (model.low - 1e-9 <= x).all() and (x <= model.high + 1e-9).all()
    return within and (model.row_low - 1e-9 <= rows).all() and (rows <= model.row_high + 1e-9).all()


@pytest.mark.parametrize("strong", [False, True])
@pytest.mark.parametrize("count", [None, 2])
def test_a_plan_keeps_every_row(strong, count):
    model = wire_or_count_model(PAIRS, count, strong)
    x = columns_of(PAIRS, PLAN)
    assert keeps(model, x)
    assert model.cost @ x == (2 if count is None else PLAN.wire_m)
    assert model.whole.all()


@pytest.mark.parametrize("strong", [False, True])
@pytest.mark.parametrize("count", [None, 2])
@pytest.mark.parametrize(
    ("fault", "columns"),
    [
        ("an opening on two supplies", [1, 0, 1, 1, 1, 1, 1]),
        ("an opening on none", [1, 0, 0, 1, 0, 1, 1]),
        ("a supply over its current", [1, 1, 0, 1, 0, 1, 1]),
        ("a supply that is not opened", [1, 0, 1, 1, 0, 1, 0]),
    ],
)
def test_a_fault_breaks_a_row(strong, count, fault, columns):
    model = wire_or_count_model(PAIRS, count, strong)
    # What counts the supplies is another row.
    model.row_low[PAIRS.openings + PAIRS.supplies], model.row_high[PAIRS.openings + PAIRS.supplies] = 0, 9
    assert not keeps(model, np.array(columns, dtype=float)), fault


def test_the_number_of_supplies_is_kept():
    x = columns_of(PAIRS, PLAN)
    assert not keeps(wire_or_count_model(PAIRS, 1, False), x)
    assert keeps(wire_or_count_model(PAIRS, None, False, least=2), x)
    assert not keeps(wire_or_count_model(PAIRS, None, False, least=3), x)


def test_a_supply_that_must_open_does():
    must = Pairs(*(getattr(PAIRS, name) for name in PAIRS.__slots__[:-1]), np.array([0.0, 1.0]))
    assert wire_or_count_model(must, None, False).low.tolist() == [0, 0, 0, 0, 0, 0, 1]
    assert cover_model(must).low.tolist() == [0, 1]


def test_a_plan_is_read_as_it_was_written():
    read = read_plan(PAIRS, columns_of(PAIRS, PLAN))
    assert (read.opened, read.supply_of, read.wire_m) == (PLAN.opened, PLAN.supply_of, PLAN.wire_m)


@pytest.mark.parametrize("columns", [[1, 0, 0, 1, 0, 1, 1], [1, 1, 0, 1, 0, 1, 1]])
def test_an_answer_that_does_not_hold_is_refused(columns):
    with pytest.raises(RuntimeError, match="does not hold"):
        read_plan(PAIRS, np.array(columns, dtype=float))


def test_fewest_supplies_by_reach_and_sum():
    """4 A want both supplies though the first reaches every opening."""
    assert run(cover_model(PAIRS), Limits()).objective == pytest.approx(2)
    light = Pairs(PAIRS.amps / 2, *(getattr(PAIRS, name) for name in PAIRS.__slots__[1:]))
    assert run(cover_model(light), Limits()).objective == pytest.approx(1)


def test_what_is_short():
    """On one supply of 3 A, 4 A are 1 A too many; on the two nothing is short, whole or divided."""
    one = Pairs(
        PAIRS.amps,
        np.array([3.0]),
        np.arange(3, dtype=np.int32),
        np.zeros(3, dtype=np.int32),
        np.ones(3),
        np.zeros(1),
    )
    amount_a, openings, supplies = shortage(one, Limits(), whole=False)
    assert (amount_a, openings, supplies) == (pytest.approx(1), (0, 1, 2), (0,))
    assert shortage(one, Limits(), whole=True)[0] == pytest.approx(1)
    for whole in (False, True):
        assert shortage(PAIRS, Limits(), whole=whole)[0] == pytest.approx(0)
    assert shortage(one, Limits(until=0.0), whole=False) is None
    # 1.5 and 2 A on two supplies of 1.75 A: divided they fill both, whole one is 0.25 A over.
    tight = Pairs(
        np.array([1.5, 2.0]),
        np.array([1.75, 1.75]),
        np.array([0, 0, 1, 1], dtype=np.int32),
        np.array([0, 1, 0, 1], dtype=np.int32),
        np.ones(4),
        np.zeros(2),
    )
    assert shortage(tight, Limits(), whole=False)[0] == pytest.approx(0)
    assert shortage(tight, Limits(), whole=True)[0] == pytest.approx(0.25)
