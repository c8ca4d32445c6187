"""Whole assignments from split ones: move and swap openings until every supply keeps its current, then save wire.

Here belongs the search that gives the integer program of `siting_model` an answer to begin from. It proves nothing: an
answer that it finds is checked and bounded there.
"""

from time import monotonic
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from hwsched.calc.solver import Floats, Ints

_TOUCH_A: Final = 1e-9
_SEED: Final = 1
_MOST_TRIES: Final = 400
_IDLE_TRIES: Final = 120
"""Tries without less wire after which the search ends."""
_STIRRED: Final = 0.03
"""Share of the openings that a new try puts back on their nearest supplies."""
_MOST_MOVES: Final = 4000
_DEAR: Final = 1e9
_REST: Final = 12
"""Moves during which an opening that was moved stays where it is."""
_MOST_ROUNDS: Final = 400
_MOST_SWAPPED: Final = 1500
"""Openings up to which all pairs of them are compared for swaps."""


def search(amps: Floats, capacity_a: Floats, wire_m: Floats, start: Ints, enough_m: float, until: float) -> Ints | None:
    """Find a whole assignment with little wire.

    Parameters
    ----------
    amps, capacity_a, wire_m, start, until
        As in `repair`.
    enough_m : float
        Wire that suffices [m].

    Returns
    -------
    array or None
        Supply of each opening, no supply over its current; None where none was found.

    Notes
    -----
    Repair, save wire, then again and again from the best answer with some openings put back on a near supply, whether
    it has room or not. The random numbers are the same every time.
    """
    # The same project must give the same plan each time it is asked.
    rng = np.random.default_rng(_SEED)
    everyone = np.arange(len(amps))
    nearest = np.argsort(wire_m, axis=1)[:, :3]
    best: Ints | None = None
    best_m = np.inf
    idle = 0
    trial = start
    for _ in range(_MOST_TRIES):
        whole = repair(amps, capacity_a, wire_m, trial, until)
        if whole is not None:
            whole = save_wire(amps, capacity_a, wire_m, whole, until)
            whole_m = float(wire_m[everyone, whole].sum())
            idle = 0 if whole_m < best_m - 1e-9 else idle + 1
            if whole_m < best_m:
                best, best_m = whole, whole_m
        else:
            idle += 1
        if best_m <= enough_m or idle > _IDLE_TRIES or monotonic() > until:
            break
        trial = (start if best is None else best).copy()
        stirred = rng.choice(len(amps), max(1, int(_STIRRED * len(amps))), replace=False)
        near = nearest[stirred, rng.integers(0, nearest.shape[1], len(stirred))].astype(np.int32)
        # An opening may have fewer supplies within reach than three; infinite wire marks the others.
        reached = np.isfinite(wire_m[stirred, near])
        trial[stirred[reached]] = near[reached]
    return best


def repair(amps: Floats, capacity_a: Floats, wire_m: Floats, start: Ints, until: float) -> Ints | None:
    """Move openings off overloaded supplies.

    Parameters
    ----------
    amps : array
        Of each opening [A].
    capacity_a : array
        Of each supply [A].
    wire_m : array, openings by supplies
        Length of the route [m]; infinite where there is none.
    start : array
        Supply of each opening, one that reaches it.
    until : float
        On the clock of `time.monotonic` [s].

    Returns
    -------
    array or None
        Supply of each opening, no supply over its current; None where none was found.

    Notes
    -----
    Tabu search: the best move or swap out of the most overloaded supply, also where it makes matters worse, but never
    soon again for the same opening.
    """
    supply_of = start.copy()
    load: Floats = np.bincount(supply_of, weights=amps, minlength=len(capacity_a)).astype(float)
    free_from = np.zeros(len(amps), dtype=np.int64)
    best_over = np.inf
    everyone = np.arange(len(amps))
    for turn in range(_MOST_MOVES):
        over = np.maximum(load - capacity_a, 0.0)
        total = float(over.sum())
        if total <= _TOUCH_A:
            return supply_of
        if turn % 64 == 0 and monotonic() > until:
            return None
        best_over = min(best_over, total)
        worst = int(over.argmax())
        inside = everyone[supply_of == worst]
        weight = amps[inside][:, None]
        own = wire_m[inside, worst][:, None]
        # Shifts: each opening inside, to each supply.
        shift = np.maximum(load[worst] - weight - capacity_a[worst], 0.0) - over[worst]
        shift = shift + np.maximum(load + weight - capacity_a, 0.0) - over
        shift_m = wire_m[inside] - own
        shift[~np.isfinite(shift_m)] = np.inf
        shift[:, worst] = np.inf
        # Swaps: each opening inside, with each outside.
        more = weight - amps[None, :]
        there = supply_of
        swap = np.maximum(load[worst] - more - capacity_a[worst], 0.0) - over[worst]
        swap = swap + np.maximum(load[there] + more - capacity_a[there], 0.0) - over[there]
        swap_m = wire_m[inside][:, there] - own + (wire_m[:, worst] - wire_m[everyone, there])[None, :]
        swap[~np.isfinite(swap_m)] = np.inf
        swap[:, inside] = np.inf
        resting_in, resting = free_from[inside] > turn, free_from > turn
        # A resting opening may move only where that gives less overload than ever.
        shift[resting_in[:, None] & (total + shift >= best_over - _TOUCH_A)] = np.inf
        swap[(resting_in[:, None] | resting[None, :]) & (total + swap >= best_over - _TOUCH_A)] = np.inf
        if min(shift.min(), swap.min()) == np.inf:
            # Nothing may move while all rest: without this the search would stand still until its end.
            free_from[:] = 0
            continue
        shift, swap = _cost(shift, shift_m), _cost(swap, swap_m)
        i, to = _least(shift)
        j, other = _least(swap)
        if shift[i, to] <= swap[j, other]:
            _move(supply_of, load, amps, int(inside[i]), to)
            free_from[inside[i]] = turn + _REST
        else:
            place = int(supply_of[other])
            _move(supply_of, load, amps, int(inside[j]), place)
            _move(supply_of, load, amps, other, worst)
            free_from[[inside[j], other]] = turn + _REST
    return None


def save_wire(amps: Floats, capacity_a: Floats, wire_m: Floats, start: Ints, until: float) -> Ints:
    """Move and swap openings while that saves wire and keeps every supply within its current.

    Parameters
    ----------
    amps, capacity_a, wire_m, until
        As in `repair`.
    start : array
        Supply of each opening, no supply over its current.

    Returns
    -------
    array
        Supply of each opening, with at most as much wire.
    """
    supply_of = start.copy()
    load: Floats = np.bincount(supply_of, weights=amps, minlength=len(capacity_a)).astype(float)
    everyone = np.arange(len(amps))
    for _ in range(_MOST_ROUNDS):
        if monotonic() > until:
            break
        own = wire_m[everyone, supply_of]
        gain = wire_m - own[:, None]
        gain[load[None, :] + amps[:, None] > capacity_a[None, :] + _TOUCH_A] = np.inf
        moves = [(float(gain[i].min()), int(i), int(gain[i].argmin()), -1) for i in np.nonzero(gain.min(1) < -1e-9)[0]]
        if len(amps) <= _MOST_SWAPPED:
            moves += _swaps(amps, capacity_a, wire_m, supply_of, load, own)
        if not moves:
            break
        touched: set[int] = set()
        for _, i, to, other in sorted(moves):
            places = {int(supply_of[i]), to}
            # One move a supply a round: the next ones would reckon with loads that no longer hold.
            if places & touched:
                continue
            touched |= places
            came_from = int(supply_of[i])
            _move(supply_of, load, amps, i, to)
            if other >= 0:
                _move(supply_of, load, amps, other, came_from)
    return supply_of


def _swaps(
    amps: Floats, capacity_a: Floats, wire_m: Floats, supply_of: Ints, load: Floats, own: Floats
) -> list[tuple[float, int, int, int]]:
    crossed = wire_m[:, supply_of]
    gain = crossed + crossed.T - own[:, None] - own[None, :]
    more = amps[:, None] - amps[None, :]
    room = (capacity_a - load)[supply_of] + _TOUCH_A
    gain[(more > room[None, :]) | (-more > room[:, None])] = np.inf
    first, second = np.nonzero(np.triu(gain, 1) < -1e-9)
    return [(float(gain[i, j]), int(i), int(supply_of[j]), int(j)) for i, j in zip(first, second, strict=True)]


def _cost(added_a: Floats, added_m: Floats) -> Floats:
    """Wire for each ampere of overload that a move takes away; moves that take none away cost more than all others."""
    cost = np.where(np.isfinite(added_a), _DEAR + _DEAR * added_a, np.inf)
    saving = added_a < -_TOUCH_A
    # Wire for each ampere: a short move that helps little is dearer than a long one that mends the overload.
    cost[saving] = added_m[saving] / -added_a[saving]
    return cost


def _least(table: NDArray[Any]) -> tuple[int, int]:
    at = int(table.argmin())
    return at // table.shape[1], at % table.shape[1]


def _move(supply_of: Ints, load: Floats, amps: Floats, opening: int, to: int) -> None:
    load[supply_of[opening]] -= amps[opening]
    load[to] += amps[opening]
    supply_of[opening] = to
