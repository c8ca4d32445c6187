"""A plan for many openings: legs that pay by the prices of a linear program, then the best set of those found.

The bound comes from the same program over relaxed legs (`relaxed_legs`), of which every leg is one. Here belongs the
program; the legs themselves stand in `legs`.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from math import ceil, inf
from time import monotonic
from typing import Final

import numpy as np

from hwsched.calc.power.planning.columns import RowsOfModel
from hwsched.calc.power.planning.legs import (
    TOUCH,
    Floats,
    Ints,
    LegShape,
    Outlet,
    Ways,
    Weights,
    chain_positions,
    chain_shared,
    junction_leg,
    junction_shared,
    most_ohm,
    taps,
    wire_for,
)
from hwsched.calc.power.planning.question import NoPlanError, Question
from hwsched.calc.power.planning.relaxed_legs import RelaxedLeg, RelaxedLegs
from hwsched.calc.solver import Limits, Model, Outcome, run

_BEAM: Final = 60
"""Chains of each length that are made longer."""
_NEAREST: Final = 10
"""Openings that are tried behind each."""
_TAKEN: Final = 40
"""Legs of an outlet that are taken at a time."""
_PAYS: Final = 1e-6
_MOST_ROUNDS: Final = 60
_SEARCH_SHARE: Final = 0.7
"""Of the time, for finding legs and their bound; the rest chooses among them."""
_MOST_SCALED: Final = 8
_WHOLE: Final = 1e-6


@dataclass(frozen=True, slots=True)
class _Prices:
    """What an opening's supply is worth at each outlet, by the linear program."""

    worth: Floats
    """Shape (outlets, openings)."""
    objective: float
    short: bool
    """Whether some opening is not supplied."""


class LargeSearch:
    """Legs of many openings, and what is chosen among them.

    Parameters
    ----------
    question, outlets, ways, weights
        What is asked.
    limits : Limits
        Gap and time.
    most_supplies : int, optional
        That may be used.
    begun : sequence of (outlet, openings in order)
        Daisy chains that are known to do; among them a plan, where that is not found by prices alone.
    """

    def __init__(
        self,
        question: Question,
        outlets: Sequence[Outlet],
        ways: Ways,
        weights: Weights,
        limits: Limits,
        most_supplies: int | None = None,
        begun: Sequence[tuple[int, tuple[int, ...]]] = (),
    ) -> None:
        self.question, self.outlets, self.ways, self.weights = question, outlets, ways, weights
        self.limits, self.most_supplies = limits, most_supplies
        self.count, self.tried = len(question.openings), 0
        self.sizes = [(g, s) for g, outlet in enumerate(outlets) for s in outlet.sizes]
        self.legs: dict[tuple[int, int, bool, tuple[int, ...]], LegShape] = {}
        self.relaxed: dict[tuple[int, int, bool, tuple[int, ...]], RelaxedLeg] = {}
        self.relaxed_of = [RelaxedLegs(outlet, ways, g) for g, outlet in enumerate(outlets)]
        for number, outlet in enumerate(outlets):
            self._keep(self._carried(number, np.flatnonzero(np.isfinite(outlet.way_m))[:, None]))
        for number, order in begun:
            self._keep(self._carried(number, np.array([order], dtype=np.intp)))
        self._dear = 10.0 * (1.0 + sum(
            max((leg.weight for leg in self.legs.values() if leg.order == (i,)), default=0.0)
            for i in range(self.count)
        ) + sum(self._size_weight(g, s) for g, s in self.sizes))  # fmt: skip

    def answer(self) -> tuple[tuple[LegShape, ...], dict[int, int], float]:
        """Return legs, sizes by place, and a bound; raises NoPlanError."""
        now = monotonic()
        until = now + _SEARCH_SHARE * max(0.0, self.limits.until - now) if self.limits.until < inf else inf
        bound, prices = self._find_legs(until)
        return self._choose(bound, prices)

    def fewest(self) -> tuple[int, int]:
        """Return the count of the fewest supplies found, and of how many it is proved that fewer do not do."""
        _, sizes, bound = self.answer()
        counted = sum(self.question.places[p].counts for p in sizes)
        return counted, min(counted, max(0, ceil(bound - _WHOLE)))

    def model(self) -> Model:
        """Return the model of the legs that were found, as it is given to the solver."""
        return self._model(list(self.legs.values()), (), whole=True)

    def _size_weight(self, outlet: int, size: int) -> float:
        place = self.question.places[self.outlets[outlet].place]
        return self.weights.cost * place.sizes[size].cost + (self.weights.supply if place.counts else 0.0)

    def _keep(self, shapes: Iterable[LegShape]) -> int:
        before = len(self.legs)
        for shape in shapes:
            # Of one set of openings in one shape only the lightest is worth choosing.
            key = shape.outlet, 0, False, tuple(sorted(shape.order))
            held = self.legs.get(key)
            if held is None or shape.weight < held.weight - _PAYS:
                self.legs[key] = shape
        return len(self.legs) - before

    def _carried(self, number: int, order: Ints) -> list[LegShape]:
        """Return the daisy chains, in these orders, that some wire carries, with the cheapest."""
        if not len(order):
            return []
        outlet, ways = self.outlets[number], self.ways
        self.tried += len(order)
        positions = chain_positions(outlet, ways, order)
        wire = wire_for(ways, most_ohm(outlet, order, chain_shared(positions)))
        return [
            LegShape(number, int(w), tuple(row), False, float(metres * ways.weight[w]), float(metres))
            for row, w, metres in zip(order.tolist(), wire, positions[:, -1], strict=True)
            if w < len(ways.ohm)
        ]

    def _model(self, legs: Sequence[LegShape], relaxed: Sequence[RelaxedLeg], *, whole: bool) -> Model:
        """Cover every opening; what hangs on an outlet is within the sizes that stand there; one size a place."""
        rows = RowsOfModel(whole=whole)
        cover: list[list[tuple[int, float]]] = [[] for _ in range(self.count)]
        held: list[list[tuple[int, float]]] = [[] for _ in self.outlets]
        link: dict[tuple[int, int], list[tuple[int, float]]] = {}
        every: list[LegShape | RelaxedLeg] = [*legs, *relaxed]
        for leg in every:
            column = rows.column(leg.weight, 1.0 if whole else inf)
            amps = self.outlets[leg.outlet].held_a
            held[leg.outlet].append((column, float(sum(amps[i] for i in leg.order))))
            for i in set(leg.order):
                entry = column, float(leg.order.count(i))
                cover[i].append(entry)
                link.setdefault((leg.outlet, i), []).append(entry)
        # What is not supplied costs more than any plan: so there is always an answer, and it names them.
        for own in cover:
            own.append((rows.column(self._dear), 1.0))
        size_at = [rows.column(self._size_weight(g, s)) for g, s in self.sizes]
        self._rows_of_sizes(rows, cover, held, link, size_at, whole)
        return rows.model()

    def _rows_of_sizes(
        self,
        rows: RowsOfModel,
        cover: Sequence[Sequence[tuple[int, float]]],
        held: Sequence[Sequence[tuple[int, float]]],
        link: dict[tuple[int, int], list[tuple[int, float]]],
        size_at: Sequence[int],
        whole: bool,
    ) -> None:
        places = self.question.places
        for own in cover:
            rows.row(own, 1.0, 1.0 if whole else inf)
        at_outlet: list[list[int]] = [[] for _ in self.outlets]
        at_place: list[list[int]] = [[] for _ in places]
        left: list[list[tuple[int, float]]] = [[] for _ in self.outlets]
        for column, (g, s) in zip(size_at, self.sizes, strict=True):
            at_outlet[g].append(column)
            at_place[self.outlets[g].place].append(column)
            left[g].append((column, -places[self.outlets[g].place].sizes[s].left_a))
        for g in range(len(self.outlets)):
            rows.row([*held[g], *left[g]], -inf, TOUCH)
        for g in range(len(self.outlets)):
            for i in range(self.count):
                rows.row([*link.get((g, i), ()), *((column, -1.0) for column in at_outlet[g])], -inf, 0.0)
        for place, columns in zip(places, at_place, strict=True):
            rows.row([(column, 1.0) for column in columns], 1.0 if place.must and columns else -inf, 1.0)
        if self.most_supplies is not None:
            counted = [
                (column, 1.0)
                for place, columns in zip(places, at_place, strict=True)
                if place.counts
                for column in columns
            ]
            rows.row(counted, -inf, float(self.most_supplies))

    def _priced(self) -> _Prices | None:
        legs, relaxed = list(self.legs.values()), list(self.relaxed.values())
        found = run(self._model(legs, relaxed, whole=False), replace(self.limits, gap=0.0, step="what legs are worth"))
        if found.x is None or found.row_price is None:
            return None
        price, n = found.row_price, self.count
        worth = np.empty((len(self.outlets), n))
        for g, outlet in enumerate(self.outlets):
            links = price[n + len(self.outlets) + g * n : n + len(self.outlets) + (g + 1) * n]
            worth[g] = price[:n] + outlet.held_a * price[n + g] + links
        unfed = found.x[len(legs) + len(relaxed) : len(legs) + len(relaxed) + n]
        return _Prices(worth, found.objective, bool((unfed > _WHOLE).any()))

    def _find_legs(self, until: float) -> tuple[float, _Prices | None]:
        """Add legs until none pays any more; returns a bound of the plan's weight, and the last prices."""
        best_bound, prices, relaxing = 0.0, None, False
        for _ in range(_MOST_ROUNDS):
            if monotonic() > until or (self.limits.cancelled is not None and self.limits.cancelled()):
                break
            found = self._priced()
            if found is None:
                break
            prices = found
            if not relaxing:
                added = sum(self._keep(self._paying(g, prices.worth[g])) for g in range(len(self.outlets)))
                relaxing = added < len(self.outlets)
                if not relaxing:
                    continue
            added, bound = self._relax(prices)
            best_bound = max(best_bound, bound)
            if not added or best_bound >= prices.objective * (1.0 - 0.1 * self.limits.gap):
                break
        if prices is not None and best_bound < prices.objective * (1.0 - self.limits.gap):
            best_bound = max(best_bound, self._scaled(prices))
        return best_bound, prices

    def _scaled(self, prices: _Prices) -> float:
        """Return the bound of the greatest share of prices at which no leg pays (Dinkelbach's steps)."""
        share = 1.0
        for _ in range(_MOST_SCALED):
            pays = False
            least = share
            for g, maker in enumerate(self.relaxed_of):
                paying, own_share = maker.paying(share * prices.worth[g])
                for leg in paying:
                    pays = True
                    least = min(least, leg.weight / float(sum(prices.worth[g][i] for i in leg.order)))
                if not own_share:
                    return 0.0
            if not pays:
                return share * prices.objective
            share = least
        # The last share is not known to be small enough; what its legs pay more takes the rest.
        for g, maker in enumerate(self.relaxed_of):
            share = min(share, share * maker.paying(share * prices.worth[g])[1])
        return share * prices.objective

    def _relax(self, prices: _Prices) -> tuple[int, float]:
        """Add relaxed legs that pay; returns how many, and the bound that they leave."""
        added, share = 0, 1.0
        for g, maker in enumerate(self.relaxed_of):
            paying, own_share = maker.paying(prices.worth[g])
            # Prices that are all made less by this share pay for no leg: so they are a bound.
            share = min(share, own_share)
            for leg in paying:
                key = g, leg.wire, leg.junctions, leg.order
                if key in self.relaxed:
                    continue
                self.relaxed[key] = leg
                added += 1
                if len(set(leg.order)) == len(leg.order):
                    self._keep(self._made(g, leg))
        return added, share * prices.objective

    def _made(self, number: int, leg: RelaxedLeg) -> list[LegShape]:
        """Return the leg that a relaxed one is, with the cheapest wire that carries it."""
        order = np.array([leg.order], dtype=np.intp)
        if not leg.junctions:
            return self._carried(number, order)
        outlet, ways = self.outlets[number], self.ways
        tap, arm = taps(outlet, ways, leg.order[-1])
        wire = int(wire_for(ways, most_ohm(outlet, order, junction_shared(tap, arm, order)))[0])
        return [junction_leg(number, outlet, ways, leg.order, wire, tap, arm)] if wire < len(ways.ohm) else []

    def _paying(self, number: int, worth: Floats) -> list[LegShape]:
        """Return legs of an outlet that pay by these prices: chains made longer step by step, ways with branches."""
        found: list[tuple[float, LegShape]] = []
        outlet, ways = self.outlets[number], self.ways
        if ways.chains:
            near = np.argsort(ways.between_m, axis=1, kind="stable")[:, :_NEAREST]
            order = np.flatnonzero(np.isfinite(outlet.way_m))[:, None]
            for _ in range(min(ways.most, self.count) - 1):
                order = self._longer(number, order, near)
                made = self._carried(number, order)
                if not made:
                    break
                left = np.array([leg.weight - sum(worth[i] for i in leg.order) for leg in made])
                first = np.argsort(left, kind="stable")
                found += [(left[i], made[i]) for i in first[:_BEAM] if left[i] < -_PAYS]
                order = np.array([made[i].order for i in first[:_BEAM]], dtype=np.intp)
        if ways.junctions:
            found += self._branching(number, worth)
        found.sort(key=lambda pair: pair[0])
        return [shape for _, shape in found[:_TAKEN]]

    def _longer(self, number: int, order: Ints, near: Ints) -> Ints:
        rows = np.repeat(order, near.shape[1], axis=0)
        further = near[order[:, -1]].ravel()
        can = np.isfinite(self.ways.between_m[rows[:, -1], further]) & ~(rows == further[:, None]).any(axis=1)
        can &= self.outlets[number].suits[further]
        return np.column_stack([rows[can], further[can]])

    def _branching(self, number: int, worth: Floats) -> list[tuple[float, LegShape]]:
        """Return for each end the way with the branches that pay best, taken one by one while a wire carries them."""
        found = []
        outlet, ways = self.outlets[number], self.ways
        for end in np.flatnonzero(np.isfinite(outlet.way_m)).tolist():
            tap, arm = taps(outlet, ways, end)
            for wire in sorted({0, len(ways.ohm) // 2, len(ways.ohm) - 1}):
                weight = float(ways.weight[wire])
                gain = np.where(np.isfinite(tap), np.where(np.isfinite(arm), arm, 0.0) * weight - worth, inf)
                gain[end] = inf
                first = np.argsort(gain, kind="stable")
                paying = first[gain[first] < -_PAYS].tolist()
                taken = self._taken(number, wire, paying, end, tap, arm)
                for count in sorted({len(taken), len(taken) // 2} - {0}):
                    leg = junction_leg(number, outlet, ways, (*taken[:count], end), wire, tap, arm)
                    left = leg.weight - sum(worth[i] for i in leg.order)
                    if left < -_PAYS:
                        found.append((left, leg))
        return found

    def _taken(self, number: int, wire: int, paying: Sequence[int], end: int, tap: Floats, arm: Floats) -> list[int]:
        """Return as many of the branches that pay, the best first, as a wire carries."""
        # What is carried with more branches is carried with fewer.
        low, high = 0, min(len(paying), self.ways.most - 1)
        while low < high:
            middle = (low + high + 1) // 2
            which = np.array([[*paying[:middle], end]], dtype=np.intp)
            self.tried += 1
            shared = junction_shared(tap, arm, which)
            if most_ohm(self.outlets[number], which, shared)[0] >= self.ways.ohm[wire]:
                low = middle
            else:
                high = middle - 1
        return list(paying[:low])

    def _choose(self, bound: float, prices: _Prices | None) -> tuple[tuple[LegShape, ...], dict[int, int], float]:
        """Return the best choice among the legs that were found."""
        legs = list(self.legs.values())
        limits = replace(self.limits, step="the best of the legs")
        found = run(self._model(legs, (), whole=True), limits)
        if found.x is None:
            raise NoPlanError("time_limit_s", "no plan was found in that time; there may be one")
        self._refuse_short(found, len(legs))
        chosen = tuple(leg for leg, x in zip(legs, found.x, strict=False) if x > 0.5)
        stands = found.x[len(legs) + self.count :]
        sizes = {self.outlets[g].place: s for (g, s), x in zip(self.sizes, stands, strict=True) if x > 0.5}
        return chosen, sizes, bound

    def _refuse_short(self, found: Outcome, legs: int) -> None:
        if found.x is None:
            return
        short = [i for i, x in enumerate(found.x[legs : legs + self.count]) if x > 0.5]
        if short:
            ids = tuple(self.question.openings[i].id for i in short)
            raise NoPlanError("openings", f"no supplies and wires were found that carry: {', '.join(ids)}", ids)
