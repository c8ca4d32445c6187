"""The search for the fewest stock lengths: columns made by a knapsack, whole numbers over them, bounds on what is left.

Here belongs what needs arrays and a solver; what is asked and answered stands in `cutting`.
"""

from collections.abc import Sequence
from math import ceil
from time import monotonic
from typing import Final

import numpy as np
from numpy.typing import NDArray

from hwsched.calc.solver import Limits, Model, run

_TOUCH: Final = 1e-6
_MOST_ROUNDS: Final = 500
_MOST_CELLS: Final = 20_000
"""Steps into which a stock length is divided where the lengths have no common measure: cuts are rounded up to them."""
_SECONDS: Final = 20.0

Ints = NDArray[np.int64]
Pattern = tuple[int, ...]


def search(
    sizes: Sequence[int], counts: Sequence[int], room: int, packed: Sequence[Pattern]
) -> tuple[list[Pattern], int]:
    """Return the cutting, a pattern a stock length, and how few it could be.

    Parameters
    ----------
    sizes, counts : sequence of int
        Lengths with their cut, and how many of each are wanted.
    room : int
        Length of the stock and one cut more.
    packed : sequence of Pattern
        A cutting that is known.
    """
    patterns, wanted = list(dict.fromkeys(packed)), np.array(counts)
    floor_ = ceil(float(wanted @ np.array(sizes)) / room - _TOUCH)
    for _ in range(_MOST_ROUNDS):
        outcome = run(_model(patterns, wanted, False), Limits())
        if outcome.row_price is None:
            return list(packed), floor_
        worth, pattern = _knapsack(sizes, wanted, room, outcome.row_price)
        # What no pattern beats bounds every cutting (Farley): the prices, scaled until none is worth more than one.
        # Where lengths were rounded up to a step, patterns are missed, and it bounds nothing.
        if _step(sizes, room)[1]:
            floor_ = max(floor_, ceil(outcome.objective / max(worth, 1.0) - _TOUCH))
        if worth <= 1.0 + _TOUCH or pattern in patterns:
            break
        patterns.append(pattern)
    outcome = run(_model(patterns, wanted, True), Limits(target=floor_ + 0.5, until=monotonic() + _SECONDS))
    best = list(packed)
    if outcome.x is not None and round(outcome.objective) < len(packed):
        best = _chosen(patterns, outcome.x, wanted)
    while floor_ < len(best):
        tried = run(_by_stock(sizes, wanted, room, floor_), Limits(until=monotonic() + _SECONDS))
        if tried.x is not None:
            return [tuple(each) for each in np.round(tried.x).astype(int).reshape(floor_, -1).tolist()], floor_
        if not tried.infeasible:
            break
        floor_ += 1
    return best, floor_


def _chosen(patterns: Sequence[Pattern], counts: NDArray[np.float64], wanted: Ints) -> list[Pattern]:
    chosen: list[Pattern] = []
    left = wanted.copy()
    for pattern, count in zip(patterns, np.round(counts).astype(int).tolist(), strict=True):
        for _ in range(count):
            # More than is wanted is not cut.
            taken = np.minimum(np.array(pattern), left)
            left -= taken
            chosen.append(tuple(taken.tolist()))
    return chosen


def _by_stock(sizes: Sequence[int], wanted: Ints, room: int, count: int) -> Model:
    """Ask whether so many stock lengths are enough: how many pieces of each size come from each of them."""
    kinds = len(sizes)
    at = np.arange(count * kinds).reshape(count, kinds)
    column = np.concatenate([at.ravel(), at.T.ravel()]).astype(np.int32)
    value = np.concatenate([np.tile(np.array(sizes, dtype=float), count), np.ones(count * kinds)])
    start = np.concatenate([np.arange(count + 1) * kinds, count * kinds + np.arange(1, kinds + 1) * count])
    size = count * kinds
    return Model(
        np.zeros(size), np.zeros(size), np.tile(wanted.astype(float), count), np.full(size, True),
        np.concatenate([np.full(count, -np.inf), wanted.astype(float)]),
        np.concatenate([np.full(count, float(room)), wanted.astype(float)]),
        start.astype(np.int32), column, value,
    )  # fmt: skip


def _step(sizes: Sequence[int], room: int) -> tuple[int, bool]:
    """Return the step in which lengths are counted, and whether all are whole steps."""
    step = int(np.gcd.reduce(np.array([*sizes, room])))
    return (step, True) if room // step <= _MOST_CELLS else (ceil(room / _MOST_CELLS), False)


def _model(patterns: Sequence[Pattern], wanted: Ints, whole: bool) -> Model:
    matrix = np.array(patterns, dtype=float).T
    rows, columns = np.nonzero(matrix)
    count = len(patterns)
    return Model(
        np.ones(count), np.zeros(count), np.full(count, float(wanted.sum())), np.full(count, whole),
        wanted.astype(float), np.full(len(wanted), np.inf),
        np.searchsorted(rows, np.arange(len(wanted) + 1)).astype(np.int32), columns.astype(np.int32),
        matrix[rows, columns],
    )  # fmt: skip


def _knapsack(sizes: Sequence[int], wanted: Ints, room: int, prices: NDArray[np.float64]) -> tuple[float, Pattern]:
    """Return the pattern that is worth most at these prices, and its worth."""
    # Pieces are rounded up to a step, so that a pattern always fits.
    step = _step(sizes, room)[0]
    cells = room // step
    best = np.zeros(cells + 1)
    taken: list[tuple[int, int, NDArray[np.bool_]]] = []
    for kind, size in enumerate(sizes):
        more, need = int(min(wanted[kind], room // size)), ceil(size / step)
        part = 1
        while more > 0 and prices[kind] > _TOUCH:
            part = min(part, more)
            more -= part
            if need * part <= cells:
                other = best[: cells + 1 - need * part] + part * prices[kind]
                better = np.zeros(cells + 1, dtype=bool)
                better[need * part :] = other > best[need * part :] + 1e-12
                best[need * part :] = np.where(better[need * part :], other, best[need * part :])
                taken.append((kind, part, better))
            part *= 2
    at, pattern = cells, [0] * len(sizes)
    for kind, part, better in reversed(taken):
        if better[at]:
            pattern[kind] += part
            at -= ceil(sizes[kind] / step) * part
    return float(best[cells]), tuple(pattern)
