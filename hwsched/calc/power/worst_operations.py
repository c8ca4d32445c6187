"""Which operations at one time are worst for each place of a supply's network, proved by a search with bounds.

Here belongs the search; what is drawn at rest and in operation, and from which voltage, is said by `circuit_states`.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from heapq import heappop, heappush
from itertools import combinations
from math import comb, fsum
from typing import Final

import numpy as np
from numpy.typing import NDArray

from hwsched.calc.power.circuit_tree import Network
from hwsched.calc.power.many_solutions import Draws, Floats, ManySolutions

_FEW: Final = 100
"""Sets of a circuit that are simply all solved."""
_MOST: Final = 10_000
"""Sets of a circuit that are solved at most; what they leave open is stated as a bound."""
_AT_A_TIME: Final = 1000
"""Sets that are solved together: more would not stay in the processor's cache."""
_MOST_ROUNDS: Final = 200
_SETTLED_V: Final = 1e-9
_TOUCH_V: Final = 1e-6
"""A bound nearer than this to a solved set proves it [V]."""
_NOTHING: Final = 1e-12
"""What rounding leaves of a load that is taken away."""

Ints = NDArray[np.intp]
Groups = tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Operating:
    """Devices of a network, and which of them operate together."""

    at: Ints
    """Node of each device."""
    rest: Draws
    """Of each device at rest; arrays of one number a device."""
    work: Draws
    """Of each device that operates."""
    group: Ints
    """Group of each device: those of a group operate together."""
    circuit: Ints
    """Circuit of each group."""
    at_once: Sequence[int]
    """Groups of each circuit that operate at one time, at most."""


@dataclass(frozen=True, slots=True)
class Worst:
    """The operations that are worst for one place."""

    volts: float
    """There under these operations [V]; -inf where they have no solution."""
    groups: Groups
    """That operate at one time, of all circuits."""
    bound_v: float
    """No operations bring it lower [V]; equal to the voltage where the operations are proved to be the worst."""


def worst_operations(
    tree: Network, operating: Operating, source: tuple[float, float], places: Sequence[tuple[int, int]]
) -> tuple[Worst, ...]:
    """Search the worst operations of each place.

    Parameters
    ----------
    tree : Network
        Of all circuits, joined at the supply.
    operating : Operating
        Its devices.
    source : (float, float)
        Voltage [V] and resistance inside [ohm].
    places : sequence of (int, int)
        Node and its circuit.

    Returns
    -------
    tuple of Worst
        One a place.

    Notes
    -----
    The voltage at j is V0 - Σ Zji · Ii with Z the resistance shared on the ways from the source. Where only constant
    currents change, the operations worst for j are those with the largest Σ Zji · ΔIi: exact. Else a device's current
    is bounded from above over all operations: constant power at the lowest voltage that the largest sums leave (the
    greatest fixed point, approached from above), a resistance at its voltage with nothing else in operation. The same
    sums over these currents are lower bounds of the voltage; sets are solved in the order of their bounds until none
    that is left can be worse. Another circuit touches j by the voltage at the terminals only: there it operates as
    draws most.
    Source: circuit theory (Kirchhoff's laws, monotone equations); checked against every set in the tests.

    Examples
    --------
    >>> from hwsched.calc.power.circuit_tree import Run, network
    >>> tree = network([Run("supply", "a", 58, "1 mm2", "solid"), Run("a", "b", 58, "1 mm2", "solid")], 20)
    >>> none, amps = np.zeros(2), np.array([1.0, 0.8])
    >>> both = Operating(np.array([1, 2]), Draws(none, none, none), Draws(amps, none, none), np.array([0, 1]),
    ...                  np.array([0, 0]), [1])
    >>> [(round(w.volts, 6), w.groups) for w in worst_operations(tree, both, (24.0, 0.0), [(1, 0), (2, 0)])]
    [(22.0, (0,)), (20.8, (1,))]
    """
    search = _Search(tree, operating, source)
    return search.by_sums(places) if search.plain else search.by_solving(places)


class _Search:
    def __init__(self, tree: Network, operating: Operating, source: tuple[float, float]) -> None:
        self.operating = operating
        at: list[int] = operating.at.tolist()
        nodes = sorted({0, *at})
        self.place_of = {node: i for i, node in enumerate(nodes)}
        self.at: Ints = np.array([self.place_of[node] for node in at], dtype=np.intp)
        """Place of each device among the nodes where one hangs; the first of these is the supply's."""
        self.nodes, self.groups = len(nodes), len(operating.circuit)
        rest, work = operating.rest, operating.work
        self.plain = not (rest.watts.any() or work.watts.any() or (rest.siemens != work.siemens).any())
        added = [(work.amps - rest.amps), (work.watts - rest.watts), (work.siemens - rest.siemens)]
        rises, falls = set(), set()
        for each in added:
            if each.any():
                rises.update(operating.group[each > 0.0].tolist())
                falls.update(operating.group[each < 0.0].tolist())
        self.rising = np.array([group not in falls for group in range(self.groups)], dtype=bool)
        """Whether all devices of a group draw more as they operate: then a larger set is the worse one."""
        self.of_circuit: list[list[int]] = [[] for _ in operating.at_once]
        """Groups of each circuit that are worth operating: one that only draws less harms nobody."""
        for group, circuit in enumerate(operating.circuit.tolist()):
            if group in rises:
                self.of_circuit[circuit].append(group)
        self.base = [self._by_node(each) for each in (rest.amps, rest.watts, rest.siemens)]
        self.added = [self._by_node_and_group(each) for each in added]
        self.known: dict[Groups, Floats] = {}
        least = Draws(*(self._by_node(np.minimum(*pair)) for pair in self._pairs()))
        self.many = ManySolutions(tree, np.array(nodes, dtype=np.intp), least, source)

    def _pairs(self) -> tuple[tuple[Floats, Floats], ...]:
        rest, work = self.operating.rest, self.operating.work
        return (rest.amps, work.amps), (rest.watts, work.watts), (rest.siemens, work.siemens)

    def _by_node(self, drawn: Floats) -> Floats:
        if not drawn.any():
            return np.zeros(self.nodes)
        found: Floats = np.bincount(self.at, drawn, self.nodes).astype(np.float64, copy=False)
        return found

    def _by_node_and_group(self, drawn: Floats) -> Floats:
        if not drawn.any():
            return np.zeros((self.nodes, self.groups))
        places = self.at * self.groups + self.operating.group
        found: Floats = np.bincount(places, drawn, self.nodes * self.groups).astype(np.float64, copy=False)
        return found.reshape(self.nodes, self.groups)

    def by_sums(self, places: Sequence[tuple[int, int]]) -> tuple[Worst, ...]:
        """Constant currents alone: the largest sums are the worst."""
        rest_v = (self.many.open_v - self.many.through @ self.base[0]).tolist()
        drops_v = (self.many.through @ self.added[0]).tolist()
        found = []
        for node, _ in places:
            at = self.place_of[node]
            drops = drops_v[at]
            chosen = [g for c in range(len(self.of_circuit)) for g in self._largest(drops, c)]
            volts = rest_v[at] - fsum([drops[g] for g in chosen])
            found.append(Worst(volts, tuple(sorted(chosen)), volts))
        return tuple(found)

    def _largest(self, scores: Sequence[float], circuit: int) -> list[int]:
        groups = [g for g in self.of_circuit[circuit] if scores[g] > 0.0]
        groups.sort(key=lambda g: -scores[g])
        return groups[: self.operating.at_once[circuit]]

    def by_solving(self, places: Sequence[tuple[int, int]]) -> tuple[Worst, ...]:
        """Any loads: sets of operations solved until none that is left can be worse."""
        best = {place: Worst(float("inf"), (), float("inf")) for place in places}
        if self.many.upper_v is None:
            return tuple(Worst(-float("inf"), (), -float("inf")) for _ in places)
        for circuit in dict.fromkeys(c for _, c in places):
            here = [node for node, c in places if c == circuit]
            at = [self.place_of[node] for node in here]
            for others in self._beside(circuit):
                for node, worst in zip(here, self._in_circuit(circuit, at, others), strict=True):
                    if worst.volts < best[node, circuit].volts:
                        best[node, circuit] = worst
        return tuple(best[place] for place in places)

    def _beside(self, circuit: int) -> list[Groups]:
        """Return what operates on the other circuits while they draw most, with this one at its worst and at rest."""
        others = [c for c in range(len(self.of_circuit)) if c != circuit and self.of_circuit[c]]
        if not others:
            return [()]
        found = []
        for here in (self._drawing_most([*others, circuit], ()), ()):
            mine = tuple(g for g in here if self.operating.circuit[g] == circuit)
            drawing = self._drawing_most(others, mine)
            found.append(tuple(g for g in drawing if self.operating.circuit[g] != circuit))
        return list(dict.fromkeys(found))

    def _drawing_most(self, circuits: Sequence[int], fixed: Groups) -> Groups:
        """Operations that lower the voltage at the terminals most, circuit by circuit until none changes."""
        chosen: dict[int, Groups] = dict.fromkeys(circuits, ())
        for _ in range(_MOST_ROUNDS):
            before = dict(chosen)
            for circuit in circuits:
                beside = (*fixed, *(g for c, each in chosen.items() if c != circuit for g in each))
                (worst,) = self._in_circuit(circuit, [0], beside)
                chosen[circuit] = tuple(g for g in worst.groups if self.operating.circuit[g] == circuit)
            if chosen == before or len(circuits) == 1:
                break
        return tuple(sorted((*fixed, *(g for each in chosen.values() for g in each))))

    def _in_circuit(self, circuit: int, nodes: Sequence[int], beside: Groups) -> list[Worst]:
        """Worst operations of one circuit for some nodes, the other circuits operating as is said."""
        groups, at_once = self.of_circuit[circuit], self.operating.at_once[circuit]
        at_once = min(at_once, len(groups))
        rising = bool(self.rising[groups].all())
        sizes = [at_once] if rising else list(range(at_once + 1))
        if sum(comb(len(groups), size) for size in sizes) <= _FEW:
            return self._lowest((tuple(s) for size in sizes for s in combinations(groups, size)), nodes, beside)
        return self._by_bounds(circuit, nodes, beside, rising)

    def _lowest(self, sets: Iterable[Groups], nodes: Sequence[int], beside: Groups) -> list[Worst]:
        tried = [tuple(sorted((*each, *beside))) for each in sets]
        volts = self._solved(tried)
        found = []
        for node in nodes:
            at = int(np.argmin(volts[:, node]))
            found.append(Worst(float(volts[at, node]), tried[at], float(volts[at, node])))
        return found

    def _by_bounds(self, circuit: int, nodes: Sequence[int], beside: Groups, rising: bool) -> list[Worst]:
        base_v, drops_v = self.bounds
        at_once = self.operating.at_once[circuit]
        ranked = []
        for node in nodes:
            scores = drops_v[node]
            rest_v = base_v[node] - scores[list(beside)].sum()
            ranked.append((rest_v, _by_sum([(float(scores[g]), g) for g in self.of_circuit[circuit]], at_once, rising)))
        first = [next(sets)[1] for _, sets in ranked]
        found = self._lowest(dict.fromkeys(first), nodes, beside)
        each_most, bounds = _MOST // len(nodes), []
        sets: dict[Groups, None] = {}
        for (rest_v, ordered), worst in zip(ranked, found, strict=True):
            bound_v = worst.volts
            for count, (total, groups) in enumerate(ordered):
                if rest_v - total >= worst.volts - _TOUCH_V:
                    break
                if count >= each_most:
                    bound_v = rest_v - total
                    break
                sets[groups] = None
            bounds.append(bound_v)
        if sets:
            found = [
                min(pair, key=lambda worst: worst.volts)
                for pair in zip(found, self._lowest(sets, nodes, beside), strict=True)
            ]
        return [
            Worst(w.volts, w.groups, min(w.volts, float(bound_v)) if bound_v < w.volts - _TOUCH_V else w.volts)
            for w, bound_v in zip(found, bounds, strict=True)
        ]

    def _solved(self, sets: Sequence[Groups]) -> Floats:
        """Voltages at every node under sets of operations, a row a set."""
        new = [each for each in dict.fromkeys(sets) if each not in self.known]
        for begin in range(0, len(new), _AT_A_TIME):
            batch = new[begin : begin + _AT_A_TIME]
            chosen = np.zeros((self.groups, len(batch)))
            for column, groups in enumerate(batch):
                chosen[list(groups), column] = 1.0
            drawn = []
            for base, added in zip(self.base, self.added, strict=True):
                total = np.repeat(base[:, None], len(batch), axis=1)
                if added.any():
                    total += added @ chosen
                    total[total < _NOTHING] = 0.0
                drawn.append(total)
            self.known.update(zip(batch, self.many.solve(Draws(*drawn)).T, strict=True))
        return np.array([self.known[each] for each in sets])

    @cached_property
    def bounds(self) -> tuple[Floats, Floats]:
        """Least voltage of every node, and what each group takes of it at most, operations of all circuits counted."""
        rest, work, at, group = self.operating.rest, self.operating.work, self.at, self.operating.group
        upper_v = self.many.open_v if self.many.upper_v is None else self.many.upper_v
        always = np.minimum(rest.siemens, work.siemens)
        # A device in operation finds no more than with nothing else in operation.
        alone_v = self._alone()[group, at]
        through = self.many.through[:, at]
        held = (rest.siemens - always) * upper_v[at]
        working_held = (work.siemens - always) * alone_v
        low_v = upper_v.copy()
        for _ in range(_MOST_ROUNDS):
            resting = rest.amps + rest.watts / low_v[at] + held
            working = work.amps + work.watts / low_v[at] + working_held
            drops_v = np.zeros((self.nodes, self.groups))
            np.add.at(drops_v.T, group, (through * (working - resting)).T)
            base_v = self.many.open_v - through @ resting
            lower_v = base_v - self._largest_sums(drops_v)
            if (lower_v[at] <= 0.0).any():
                break
            step = np.abs(lower_v - low_v).max()
            low_v = np.minimum(low_v, lower_v)
            if step < _SETTLED_V:
                return base_v, drops_v
        # Some operations may have no solution: no bound but by solving them.
        return np.full(self.nodes, -np.inf), drops_v

    def _largest_sums(self, drops_v: Floats) -> Floats:
        total = np.zeros(len(drops_v))
        for circuit, groups in enumerate(self.of_circuit):
            count = min(self.operating.at_once[circuit], len(groups))
            if not count:
                continue
            of_groups = np.maximum(drops_v[:, groups], 0.0)
            if count < len(groups):
                of_groups = np.partition(of_groups, len(groups) - count, axis=1)[:, len(groups) - count :]
            total += of_groups.sum(axis=1)
        return total

    def _alone(self) -> Floats:
        """Voltages with one group in operation and all others at the least that they draw, a row a group."""
        drawn = []
        for rest, work in self._pairs():
            least = np.minimum(rest, work)
            total = self._by_node(least)[:, None] + self._by_node_and_group(work - least)
            total[total < _NOTHING] = 0.0
            drawn.append(total)
        volts = self.many.solve(Draws(*drawn))
        return np.where(np.isfinite(volts), volts, 0.0).T


def _by_sum(scored: list[tuple[float, int]], at_once: int, rising: bool) -> Iterator[tuple[float, Groups]]:
    """Give sets of groups, the largest sum first; no smaller ones where a larger set is always the worse one."""
    # A group that takes nothing may stand for one that is left out.
    if not rising:
        scored = [*scored, *((0.0, -1 - i) for i in range(at_once))]
    scored = sorted(scored, reverse=True)
    count = min(at_once, len(scored))
    first = tuple(range(count))
    heap = [(-sum(score for score, _ in scored[:count]), first)]
    met, told = {first}, set()
    while heap:
        total, places = heappop(heap)
        groups = tuple(sorted(scored[i][1] for i in places if scored[i][1] >= 0))
        if groups not in told:
            told.add(groups)
            yield -total, groups
        for n, i in enumerate(places):
            if i + 1 < (places[n + 1] if n + 1 < count else len(scored)):
                moved = (*places[:n], i + 1, *places[n + 1 :])
                if moved not in met:
                    met.add(moved)
                    heappush(heap, (total + scored[i][0] - scored[i + 1][0], moved))
