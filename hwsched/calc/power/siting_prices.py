"""Siting where currents are ample: prices of openings bound the wire, and places are exchanged for better ones.

Here belongs what answers without an integer program over all pairs. What it answers is within every limit and bounded;
where each opening cannot hang on the nearest of the chosen supplies, it answers nothing.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from time import monotonic
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from hwsched.calc.power.siting_model import WHOLE, Pairs, Plan, choice_model
from hwsched.calc.solver import Floats, Ints, Limits, run

_UNREACHED_M: Final = 1e7
"""Stands for a route that there is not, so that places can be exchanged until all openings are reached."""
_TOUCH_A: Final = 1e-9
_STEP: Final = 1.5
_SMALLEST_STEP: Final = 0.02
_PATIENCE: Final = 20
"""Rounds without a better bound after which the steps get shorter."""
_MOST_ROUNDS: Final = 1500
_BETTER: Final = 5e-5
"""Share by which a bound must be better to count as progress."""
_LAST: Final = 0.5
"""Share of the last direction that is kept: prices would else swing between two choices."""
_MOST_EXCHANGED: Final = 40
_CHOICES: Final = 12
"""Rounds in which the choice at given prices is solved as it is, every opening reached."""
_CHOICE_STEP: Final = 0.6


@dataclass(slots=True)
class _Found:
    """The best choice of places so far, and the best bound with its prices."""

    opened: Ints
    wire_m: float
    bound_m: float
    prices: Floats


def by_prices(pairs: Pairs, choice: Ints, closely: float, limits: Limits) -> Plan | None:
    """Least wire with as many supplies as a choice has.

    Parameters
    ----------
    pairs : Pairs
        Each opening has one at least.
    choice : array
        Supplies that reach every opening, with all that must be used.
    closely : float
        Gap at which no better answer is looked for; beyond `limits.gap` it is only sought.
    limits : Limits
        When to stop.

    Returns
    -------
    Plan or None
        With its bound, which may leave a larger gap than allowed; None where an opening cannot hang on the nearest of
        the supplies that were chosen.

    Notes
    -----
    Lagrange: each opening may hang on no supply or on several, and pays its price for each; the prices are moved until
    most hang on one. The choice of supplies at given prices is then the cheapest of so many, or, solved as a small
    program, the cheapest that reaches all and has current for all: a tighter bound. Currents of single supplies do not
    enter the bound. Held, Wolfe, Crowder, Mathematical Programming 6 (1974): the steps (from memory).
    """
    wire_m = np.full((pairs.openings, pairs.supplies), np.inf)
    wire_m[pairs.opening, pairs.supply] = pairs.wire_m
    far_m = np.where(np.isfinite(wire_m), wire_m, _UNREACHED_M)
    must = pairs.must_open > 0.5
    opened, sum_m = exchanged(far_m, choice, must)
    if not _has_room(pairs, far_m, opened):
        return None
    found = _Found(opened, sum_m, 0.0, far_m[:, opened].min(axis=1))
    seen: set[bytes] = set()
    for chosen in _rounds(pairs, wire_m, found, len(choice), limits):
        key = np.sort(chosen).tobytes()
        if key not in seen and len(seen) < _MOST_EXCHANGED and far_m[:, chosen].min(axis=1).max() < _UNREACHED_M:
            seen.add(key)
            better, better_m = exchanged(far_m, chosen, must)
            if better_m < found.wire_m - WHOLE and _has_room(pairs, far_m, better):
                found.opened, found.wire_m = better, better_m
        if found.bound_m >= (1.0 - closely) * found.wire_m:
            break
        if limits.progress is not None:
            limits.progress(limits.step, 1.0 - found.bound_m / found.wire_m)
    supply_of = found.opened[far_m[:, found.opened].argmin(axis=1)]
    bound_m = min(found.bound_m, found.wire_m)
    return Plan(tuple(sorted(found.opened.tolist())), tuple(supply_of.tolist()), found.wire_m, bound_m, 0)


def exchanged(wire_m: Floats, opened: Ints, must: NDArray[np.bool_]) -> tuple[Ints, float]:
    """Exchange one place for another while that saves wire; returns the places and the wire, each opening's nearest.

    Examples
    --------
    >>> places, wire = exchanged(np.array([[9.0, 1.0], [8.0, 2.0]]), np.array([0]), np.array([False, False]))
    >>> places.tolist(), wire
    ([1], 3.0)
    """
    kept = opened.copy()
    sum_m = float(wire_m[:, kept].min(axis=1).sum())
    while True:
        best_m, gone, comes = sum_m - WHOLE, -1, -1
        for place in np.nonzero(~must[kept])[0]:
            rest = np.delete(kept, place)
            near = wire_m[:, rest].min(axis=1, initial=np.inf)
            tried = np.minimum(near[:, None], wire_m).sum(axis=0)
            tried[kept] = np.inf
            at = int(tried.argmin())
            if tried[at] < best_m:
                best_m, gone, comes = float(tried[at]), int(place), at
        if gone < 0:
            return kept, sum_m
        kept[gone] = comes
        sum_m = best_m


def _has_room(pairs: Pairs, far_m: Floats, opened: Ints) -> bool:
    """Whether each opening can hang on the nearest of these."""
    near = far_m[:, opened]
    load_a = np.bincount(near.argmin(axis=1), weights=pairs.amps, minlength=len(opened))
    return bool(near.min(axis=1).max() < _UNREACHED_M and (load_a <= pairs.capacity_a[opened] + _TOUCH_A).all())


def _rounds(pairs: Pairs, wire_m: Floats, found: _Found, count: int, limits: Limits) -> Iterator[Ints]:
    """Move the prices, round by round; yields the supplies that were chosen at them."""
    first = np.where(pairs.must_open > 0.5, -np.inf, 0.0)

    def cheapest(worth: Floats) -> tuple[Ints, float]:
        chosen = _as_places(np.argsort(worth + first, kind="stable")[:count])
        return chosen, float(worth[chosen].sum())

    def reaching(worth: Floats) -> tuple[Ints, float] | None:
        solved = run(choice_model(pairs, worth, count), replace(limits, gap=0.0, target=None, progress=None))
        return None if solved.x is None else (_as_places(np.nonzero(solved.x > 0.5)[0]), solved.bound)

    step, idle, last = _STEP, 0, np.zeros(pairs.openings)
    prices = found.prices
    for _ in range(_MOST_ROUNDS):
        if _stopped(limits) or step < _SMALLEST_STEP:
            break
        saved = np.minimum(wire_m - prices[:, None], 0.0)
        chosen, worth = cheapest(saved.sum(axis=0))
        bound = float(prices.sum()) + worth
        idle = 0 if bound > found.bound_m * (1.0 + _BETTER) else idle + 1
        if bound > found.bound_m:
            found.bound_m, found.prices = bound, prices
        yield chosen
        last = 1.0 - (saved[:, chosen] < 0.0).sum(axis=1) + _LAST * last
        prices = prices + _along(last, step * (found.wire_m - bound))
        if idle > _PATIENCE:
            step, idle, last, prices = step / 1.5, 0, np.zeros(pairs.openings), found.prices
    last, prices = np.zeros(pairs.openings), found.prices
    for _ in range(_CHOICES):
        saved = np.minimum(wire_m - prices[:, None], 0.0)
        solved = None if _stopped(limits) else reaching(saved.sum(axis=0))
        if solved is None:
            return
        chosen, worth = solved
        bound = float(prices.sum()) + worth
        if bound > found.bound_m:
            found.bound_m, found.prices = bound, prices
        yield chosen
        last = 1.0 - (saved[:, chosen] < 0.0).sum(axis=1) + _LAST * last
        prices = prices + _along(last, _CHOICE_STEP * (found.wire_m - bound))


def _as_places(found: NDArray[Any]) -> Ints:
    return found.astype(np.int32)


def _along(direction: Floats, far: float) -> Any:
    square = float(direction @ direction)
    return direction * (far / square) if square > 0.0 else 0.0


def _stopped(limits: Limits) -> bool:
    return monotonic() > limits.until or (limits.cancelled is not None and limits.cancelled())
