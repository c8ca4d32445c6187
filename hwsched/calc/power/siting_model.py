"""Siting as an integer program: its pairs, its models, and how an answer is read.

Here belong the models themselves. In which order they are solved stands in `siting_plan`; what is asked, what is
refused and how the answer is told in `siting`.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from hwsched.calc.solver import Floats, Ints, Limits, Model, run

WHOLE: Final = 1e-6
"""What the solver takes for a whole number, and for no difference."""


@dataclass(frozen=True, slots=True)
class Pairs:
    """Which opening can hang on which supply; one entry a pair, by opening and then by supply."""

    amps: Floats
    """Of each opening [A]."""
    capacity_a: Floats
    """Of each supply [A]."""
    opening: Ints
    supply: Ints
    wire_m: Floats
    must_open: Floats
    """1 for a supply that must be used, else 0."""

    @property
    def openings(self) -> int:
        """Count of openings."""
        return len(self.amps)

    @property
    def supplies(self) -> int:
        """Count of supplies."""
        return len(self.capacity_a)


@dataclass(frozen=True, slots=True)
class Plan:
    """An answer and what is proven of it."""

    opened: tuple[int, ...]
    supply_of: tuple[int, ...]
    """Supply of each opening."""
    wire_m: float
    least_wire_m: float
    """No plan with as many supplies has less wire than this [m]."""
    least_supplies: int
    """No plan has fewer supplies than this."""


def shortage(pairs: Pairs, limits: Limits, whole: bool) -> tuple[float, tuple[int, ...], tuple[int, ...]] | None:
    """Least current by which the supplies fall short, with the openings and supplies among which it does.

    Parameters
    ----------
    pairs : Pairs
        Each opening has one at least.
    limits : Limits
        When to stop.
    whole : bool
        Whether an opening must hang whole on one supply; then openings and supplies are not told.

    Returns
    -------
    (float, openings, supplies) or None
        Current [A], 0 where nothing is short; None where that was not settled in time.
    """
    count = len(pairs.opening)
    at = np.arange(count)
    rows: list[NDArray[Any]] = [
        pairs.opening,
        pairs.openings + pairs.supply,
        pairs.openings + np.arange(pairs.supplies),
    ]
    columns: list[NDArray[Any]] = [at, at, count + np.arange(pairs.supplies)]
    values = [np.ones(count), pairs.amps[pairs.opening], -np.ones(pairs.supplies)]
    start, column, value = _by_rows(rows, columns, values, pairs.openings + pairs.supplies)
    model = Model(
        np.concatenate([np.zeros(count), np.ones(pairs.supplies)]),
        np.zeros(count + pairs.supplies),
        np.concatenate([np.ones(count), np.full(pairs.supplies, np.inf)]),
        np.concatenate([np.full(count, whole), np.zeros(pairs.supplies, dtype=bool)]),
        np.concatenate([np.ones(pairs.openings), np.full(pairs.supplies, -np.inf)]),
        np.concatenate([np.ones(pairs.openings), pairs.capacity_a]),
        start,
        column,
        value,
    )
    found = run(model, replace(limits, gap=0.0, target=None, step="what is short"))
    if whole or found.row_price is None:
        return None if found.bound <= WHOLE and not found.finished else (max(found.bound, 0.0), (), ())
    # A price of one ampere a ampere marks the supplies that are full in every plan; the openings beside them hang on
    # none but these.
    full = found.row_price[pairs.openings :] < -0.5
    hangs = np.zeros(pairs.openings, dtype=bool)
    hangs[pairs.opening[~full[pairs.supply]]] = True
    return found.objective, tuple(np.nonzero(~hangs)[0].tolist()), tuple(np.nonzero(full)[0].tolist())


def cover_model(pairs: Pairs) -> Model:
    """Fewest supplies of which one at least reaches every opening, and whose sum of currents suffices."""
    supplies = np.arange(pairs.supplies)
    start, column, value = _by_rows(
        [pairs.opening, np.full(pairs.supplies, pairs.openings)],
        [pairs.supply, supplies],
        [np.ones(len(pairs.opening)), pairs.capacity_a],
        pairs.openings + 1,
    )
    return Model(
        np.ones(pairs.supplies),
        pairs.must_open,
        np.ones(pairs.supplies),
        np.ones(pairs.supplies, dtype=bool),
        np.append(np.ones(pairs.openings), pairs.amps.sum() - WHOLE),
        np.full(pairs.openings + 1, np.inf),
        start,
        column,
        value,
    )


def choice_model(pairs: Pairs, worth: Floats, count: int) -> Model:
    """So many supplies of the least worth, of which one at least reaches every opening and whose currents suffice."""
    reach = np.zeros((pairs.openings, pairs.supplies), dtype=bool)
    reach[pairs.opening, pairs.supply] = True
    opening, supply = np.nonzero(_narrowest(reach))
    height = int(opening[-1]) + 1 if len(opening) else 0
    supplies = np.arange(pairs.supplies)
    start, column, value = _by_rows(
        [opening, np.full(pairs.supplies, height), np.full(pairs.supplies, height + 1)],
        [supply, supplies, supplies],
        [np.ones(len(opening)), pairs.capacity_a, np.ones(pairs.supplies)],
        height + 2,
    )
    return Model(
        worth,
        pairs.must_open,
        np.ones(pairs.supplies),
        np.ones(pairs.supplies, dtype=bool),
        np.concatenate([np.ones(height), [pairs.amps.sum() - WHOLE, count]]),
        np.concatenate([np.full(height + 1, np.inf), [count]]),
        start,
        column,
        value,
    )


def _narrowest(reach: NDArray[np.bool_]) -> NDArray[np.bool_]:
    """Leave out openings that are reached wherever some other one is."""
    rows = np.unique(reach, axis=0)
    counted = rows.astype(np.float64)
    wider = counted @ counted.T == counted.sum(axis=1)[None, :]
    np.fill_diagonal(wider, False)
    narrowest: NDArray[np.bool_] = rows[~wider.any(axis=1)]
    return narrowest


def wire_or_count_model(pairs: Pairs, count: int | None, strong: bool, least: int = 0) -> Model:
    """Build the model: with a count, least wire with exactly so many supplies; without, fewest supplies but `least`.

    The columns are the pairs and then the supplies. `strong` adds a row a pair: a tighter bound, a larger model.
    Without a count a row an opening says that a supply in its reach is opened.
    """
    number, openings, supplies = len(pairs.opening), pairs.openings, pairs.supplies
    at, places = np.arange(number), np.arange(supplies)
    rows: list[NDArray[Any]] = [
        pairs.opening,
        openings + pairs.supply,
        openings + places,
        np.full(supplies, openings + supplies),
    ]
    columns: list[NDArray[Any]] = [at, at, number + places, number + places]
    values = [np.ones(number), pairs.amps[pairs.opening], -pairs.capacity_a, np.ones(supplies)]
    height = openings + supplies + 1
    if strong:
        rows += [height + at, height + at]
        columns += [at, number + pairs.supply]
        values += [np.ones(number), -np.ones(number)]
        height += number
    cover = height
    if count is None:
        rows.append(height + pairs.opening)
        columns.append(number + pairs.supply)
        values.append(np.ones(number))
        height += openings
    start, column, value = _by_rows(rows, columns, values, height)
    row_low = np.full(height, -np.inf)
    row_high = np.zeros(height)
    row_low[cover:], row_high[cover:] = 1.0, np.inf
    row_low[:openings] = row_high[:openings] = 1.0
    row_low[openings + supplies] = least if count is None else count
    row_high[openings + supplies] = supplies if count is None else count
    by_wire = [np.zeros(number), np.ones(supplies)] if count is None else [pairs.wire_m, np.zeros(supplies)]
    width = number + supplies
    return Model(
        np.concatenate(by_wire),
        np.concatenate([np.zeros(number), pairs.must_open]),
        np.ones(width),
        np.ones(width, dtype=bool),
        row_low,
        row_high,
        start,
        column,
        value,
    )


def _by_rows(
    rows: Sequence[NDArray[Any]], columns: Sequence[NDArray[Any]], values: Sequence[Floats], height: int
) -> tuple[Ints, Ints, Floats]:
    row = np.concatenate(rows)
    order = np.argsort(row, kind="stable")
    start = np.searchsorted(row[order], np.arange(height + 1)).astype(np.int32)
    return start, np.concatenate(columns)[order].astype(np.int32), np.concatenate(values)[order]


def columns_of(pairs: Pairs, known: Plan) -> Floats:
    """Write a plan as the columns of the model, to begin from it."""
    supply_of = np.array(known.supply_of, dtype=np.int32)
    x = (supply_of[pairs.opening] == pairs.supply).astype(float) if pairs.openings else np.zeros(0)
    y = np.zeros(pairs.supplies)
    y[list(known.opened)] = 1.0
    return np.concatenate([x, y])


def read_plan(pairs: Pairs, x: Floats) -> Plan:
    """Read a plan from the columns of the model; raises RuntimeError where it breaks a limit."""
    taken = np.nonzero(x[: len(pairs.opening)] > 0.5)[0]
    supply_of = np.full(pairs.openings, -1, dtype=np.int32)
    supply_of[pairs.opening[taken]] = pairs.supply[taken]
    opened = np.nonzero(x[len(pairs.opening) :] > 0.5)[0]
    if (supply_of < 0).any():
        raise RuntimeError("the solver's answer does not hold: an opening without supply")
    load_a = np.bincount(supply_of, weights=pairs.amps, minlength=pairs.supplies) if pairs.openings else np.zeros(0)
    if (load_a > pairs.capacity_a[: len(load_a)] + 1e-4).any():
        raise RuntimeError("the solver's answer does not hold: a supply over its current")
    return Plan(tuple(opened.tolist()), tuple(supply_of.tolist()), float(pairs.wire_m[taken].sum()), 0.0, 0)
