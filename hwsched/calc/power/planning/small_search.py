"""A plan for few openings: every leg of every outlet is looked at, and sets of openings are put together exactly."""

from collections.abc import Iterator
from itertools import combinations
from typing import Final

import numpy as np

from hwsched.calc.power.planning.legs import (
    TOUCH,
    Ints,
    LegShape,
    Outlet,
    Ways,
    chain_positions,
    chain_shared,
    junction_leg,
    junction_shared,
    most_ohm,
    taps,
    wire_for,
)
from hwsched.calc.power.planning.question import Question

MOST_OPENINGS: Final = 8
_AT_A_TIME: Final = 20_000


class SmallSearch:
    """All legs of few openings, the best for each set."""

    def __init__(self, question: Question, outlets: tuple[Outlet, ...], ways: Ways) -> None:
        self.question, self.outlets, self.ways = question, outlets, ways
        self.count = len(question.openings)
        self.tried = 0
        self.best: list[dict[int, LegShape]] = []
        """For each outlet the best one leg for each set of openings."""
        self.cut: list[dict[int, tuple[float, tuple[LegShape, ...]]]] = []
        """For each outlet the best legs for each set."""
        for number in range(len(outlets)):
            self.best.append({})
            self._chains(number)
            self._junctions(number)
            self.cut.append(self._put_together(number))

    def _keep(self, shape: LegShape) -> None:
        key = sum(1 << i for i in shape.order)
        held = self.best[shape.outlet].get(key)
        if held is None or shape.weight < held.weight:
            self.best[shape.outlet][key] = shape

    def _chains(self, number: int) -> None:
        outlet, ways = self.outlets[number], self.ways
        order: Ints = np.flatnonzero(np.isfinite(outlet.way_m))[:, None]
        for size in range(1, min(self.count, ways.most) + 1):
            going = []
            for begin in range(0, len(order), _AT_A_TIME):
                some = order[begin : begin + _AT_A_TIME]
                self.tried += len(some)
                positions = chain_positions(outlet, ways, some)
                wire = wire_for(ways, most_ohm(outlet, some, chain_shared(positions)))
                # What does not carry what hangs on it carries no more either.
                can = wire < len(ways.ohm)
                some, wire, metres = some[can], wire[can], positions[can, -1]
                weight = metres * ways.weight[wire]
                keys = (1 << some).sum(axis=1)
                # The lightest of each set comes first.
                first = np.lexsort((weight, keys))
                _, at = np.unique(keys[first], return_index=True)
                for i in first[at]:
                    self._keep(LegShape(number, int(wire[i]), tuple(map(int, some[i])), False, float(weight[i]),
                                        float(metres[i])))  # fmt: skip
                going.append(some)
            order = np.concatenate(going) if going else order[:0]
            if not ways.chains or size == self.count or not len(order):
                return
            order = self._longer(outlet, order)

    def _longer(self, outlet: Outlet, order: Ints) -> Ints:
        """Every order with every further opening behind it."""
        ways = self.ways
        rows = np.repeat(order, self.count, axis=0)
        further = np.tile(np.arange(self.count), len(order))
        can = outlet.suits[further] & np.isfinite(ways.between_m[rows[:, -1], further])
        can &= ~(rows == further[:, None]).any(axis=1)
        return np.column_stack([rows[can], further[can]])

    def _junctions(self, number: int) -> None:
        outlet, ways = self.outlets[number], self.ways
        if not ways.junctions:
            return
        for end in np.flatnonzero(np.isfinite(outlet.way_m)).tolist():
            tap, arm = taps(outlet, ways, end)
            others = [i for i in np.flatnonzero(np.isfinite(tap)).tolist() if i != end]
            for size in range(1, min(len(others), ways.most - 1) + 1):
                which = np.array([(*each, end) for each in combinations(others, size)], dtype=np.intp)
                self.tried += len(which)
                wires = wire_for(ways, most_ohm(outlet, which, junction_shared(tap, arm, which)))
                for row, wire in zip(which.tolist(), wires.tolist(), strict=True):
                    if wire < len(ways.ohm):
                        self._keep(junction_leg(number, outlet, ways, row, wire, tap, arm))

    def _put_together(self, number: int) -> dict[int, tuple[float, tuple[LegShape, ...]]]:
        """Return the best legs of an outlet for each set of openings."""
        best = self.best[number]
        found: dict[int, tuple[float, tuple[LegShape, ...]]] = {0: (0.0, ())}
        for key in range(1, 1 << self.count):
            low = key & -key
            chosen: tuple[float, tuple[LegShape, ...]] | None = None
            # The leg of its first opening is one of the subsets that hold it.
            for part in _subsets(key ^ low):
                leg = best.get(part | low)
                rest = found.get(key ^ (part | low))
                if leg is None or rest is None:
                    continue
                if chosen is None or leg.weight + rest[0] < chosen[0]:
                    chosen = leg.weight + rest[0], (leg, *rest[1])
            if chosen is not None:
                found[key] = chosen
        return found

    def answer(
        self, supply_weight: float, cost_weight: float
    ) -> tuple[float, tuple[LegShape, ...], dict[int, int]] | None:
        """Return the best plan: what it weighs, its legs, and the size at each place that is used; None without one."""
        held = [
            [sum(float(outlet.held_a[i]) for i in range(self.count) if key >> i & 1) for key in range(1 << self.count)]
            for outlet in self.outlets
        ]
        every = (1 << self.count) - 1
        known: dict[int, tuple[float, tuple[LegShape, ...], dict[int, int]]] = {0: (0.0, (), {})}
        for p, place in enumerate(self.question.places):
            options: dict[int, tuple[float, tuple[LegShape, ...], dict[int, int]]] = {}
            if not place.must:
                options[0] = 0.0, (), {}
            for number, outlet in enumerate(self.outlets):
                if outlet.place != p:
                    continue
                for key, (weight, legs) in self.cut[number].items():
                    size = self._least_size(outlet, held[number][key], key, place.must)
                    if size is None:
                        continue
                    own = cost_weight * place.sizes[size].cost + (supply_weight if place.counts else 0.0)
                    if key not in options or weight + own < options[key][0]:
                        options[key] = weight + own, legs, {p: size}
            merged: dict[int, tuple[float, tuple[LegShape, ...], dict[int, int]]] = {}
            for key in range(every + 1):
                for part in _subsets(key):
                    mine, before = options.get(part), known.get(key ^ part)
                    if mine is None or before is None:
                        continue
                    if key not in merged or mine[0] + before[0] < merged[key][0]:
                        merged[key] = mine[0] + before[0], (*before[1], *mine[1]), {**before[2], **mine[2]}
            known = merged
        return known.get(every)

    def _least_size(self, outlet: Outlet, held_a: float, key: int, must: bool) -> int | None:
        """Return the cheapest size of an outlet that gives a current."""
        sizes = self.question.places[outlet.place].sizes
        can = [s for s in outlet.sizes if sizes[s].left_a >= held_a - TOUCH] if key or must else []
        return min(can, key=lambda s: sizes[s].cost, default=None)


def _subsets(key: int) -> Iterator[int]:
    part = key
    while True:
        yield part
        if not part:
            return
        part = (part - 1) & key
