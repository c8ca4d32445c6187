"""Fewest kinds as an integer program: what can be dropped, the model, and how an answer is read.

Here belong parts as bits and costs as whole numbers. What is asked, what is refused and how the answer is told stand in
`fewest_part_numbers`.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import inf
from typing import Final

import numpy as np

from hwsched.calc.solver import Floats, Limits, Model, run

WHOLE: Final = 1e-6
"""What the solver takes for a whole number, and for no difference."""
_LARGEST_COST: Final = 1e6
"""Costs are scaled down to this for the solver, whose tolerances are absolute."""


@dataclass(frozen=True, slots=True)
class Pool:
    """Openings that have the same alternatives at the same extra cost."""

    count: int
    offers: tuple[tuple[int, int], ...]
    """Cost of one opening over its cheapest, and the parts as bits; cheapest first."""


def rank(offer: tuple[int, int]) -> tuple[int, int, int]:
    """Order of alternatives: the cheapest first, of equally cheap ones that with the fewest parts."""
    cost, mask = offer
    return cost, mask.bit_count(), mask


def reduced(pools: Sequence[Pool], price: int | None) -> tuple[list[Pool], int]:
    """Drop what no best answer needs, join pools alike, and tell the parts that every answer has.

    An alternative is dropped for a cheaper one of the same openings that uses no part besides its own and those that
    are in use anyway; with a price of a part also where buying the parts it lacks costs no more than what it saves. The
    parts in use anyway are those without which some openings have no alternative left; what comes back is without them.
    """
    needed = 0
    while True:
        joined: dict[tuple[tuple[int, int], ...], int] = {}
        for pool in pools:
            offers = _undominated(pool, needed, price)
            joined[offers] = joined.get(offers, 0) + pool.count
        before, pools = pools, [Pool(count, offers) for offers, count in joined.items()]
        found = needed
        for pool in pools:
            shared = pool.offers[0][1]
            for _, mask in pool.offers:
                shared &= mask
            found |= shared
        if found == needed and pools == before:
            return [pool for pool in pools if len(pool.offers) > 1], needed
        needed = found


def _undominated(pool: Pool, needed: int, price: int | None) -> tuple[tuple[int, int], ...]:
    kept: list[tuple[int, int]] = []
    for cost, mask in sorted(((cost, mask & ~needed) for cost, mask in pool.offers), key=rank):
        for less, other in kept:
            lacks = (other & ~mask).bit_count()
            if lacks == 0 or (price is not None and (cost - less) * pool.count >= price * lacks):
                break
        else:
            kept.append((cost, mask))
    return tuple(kept)


def first_offers(pools: Sequence[Pool]) -> int:
    """Parts that are in use where every pool takes its first offer."""
    mask = 0
    for pool in pools:
        mask |= pool.offers[0][1]
    return mask


def solve(pools: Sequence[Pool], price: int, most: int | None, limits: Limits, start: int) -> tuple[int, float]:
    """Parts in use at the least of cost and price, from a choice in hand; and what is proven of that least."""
    if not pools:
        return 0, 0.0
    largest = max(price, *(pool.count * cost for pool in pools for cost, _ in pool.offers))
    scale = min(1.0, _LARGEST_COST / largest) if largest else 1.0
    bits = sorted({bit for pool in pools for _, mask in pool.offers for bit in _bits(mask)})
    model = _model(pools, bits, price, most, scale)
    found = run(model, limits, _columns(pools, bits, start))
    bound = max(0.0, found.bound / scale) if found.bound < inf else 0.0
    if found.x is None:
        return start, bound
    in_use = found.x[-len(bits) :] > 0.5
    return sum(1 << bit for bit, used in zip(bits, in_use, strict=True) if used), bound


def _model(pools: Sequence[Pool], bits: Sequence[int], price: int, most: int | None, scale: float) -> Model:
    """Build the model: a column an offer of a pool, then a column a part, which alone must be whole.

    Each pool takes one offer. A row a pool and part: the offers with that part are taken only as far as it is in use.
    With the parts decided the offers are whole by themselves.
    """
    width = sum(len(pool.offers) for pool in pools)
    part = {bit: width + i for i, bit in enumerate(bits)}
    cost = [scale * (pool.count * extra) for pool in pools for extra, _ in pool.offers] + [scale * price] * len(bits)
    start, column, value = [0], list[int](), list[float]()
    row_low, row_high = list[float](), list[float]()

    def add(columns: Sequence[int], values: Sequence[float], low: float, high: float) -> None:
        column.extend(columns)
        value.extend(values)
        start.append(len(column))
        row_low.append(low)
        row_high.append(high)

    at = 0
    for pool in pools:
        add(range(at, at + len(pool.offers)), [1.0] * len(pool.offers), 1.0, 1.0)
        with_part: dict[int, list[int]] = {}
        for place, (_, mask) in enumerate(pool.offers, start=at):
            for bit in _bits(mask):
                with_part.setdefault(bit, []).append(place)
        for bit, places in with_part.items():
            add([*places, part[bit]], [1.0] * len(places) + [-1.0], -inf, 0.0)
        at += len(pool.offers)
    if most is not None:
        add(list(part.values()), [1.0] * len(part), -inf, float(most))
    count = width + len(bits)
    return Model(
        np.array(cost),
        np.zeros(count),
        np.ones(count),
        np.arange(count) >= width,
        np.array(row_low),
        np.array(row_high),
        np.array(start, dtype=np.int32),
        np.array(column, dtype=np.int32),
        np.array(value),
    )


def _columns(pools: Sequence[Pool], bits: Sequence[int], mask: int) -> Floats:
    """Write the choice with those parts in use as the columns of the model."""
    x: list[float] = []
    for pool in pools:
        taken = next((i for i, (_, parts) in enumerate(pool.offers) if not parts & ~mask), None)
        x += [float(i == taken) for i in range(len(pool.offers))]
    return np.array(x + [float(mask >> bit & 1) for bit in bits])


def _bits(mask: int) -> Iterator[int]:
    while mask:
        low = mask & -mask
        yield low.bit_length() - 1
        mask ^= low
