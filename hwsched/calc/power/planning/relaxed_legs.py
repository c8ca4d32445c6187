"""Legs without some of what a leg must be: among them is every leg, so that prices at which none pays are a bound.

A relaxed chain may come back to an opening after two others, a relaxed leg may lose a little too much on its way. Found
whole by stages over what they lose, in steps rounded down.
"""

from dataclasses import dataclass
from itertools import pairwise
from math import inf
from typing import Final

import numpy as np
from numpy.typing import NDArray

from hwsched.calc.power.planning.legs import Floats, Outlet, Ways, shortest_m, taps

Steps = NDArray[np.intp]
_STEPS: Final = 12
"""Of what may be lost on a way."""
_TAKEN: Final = 12
"""Relaxed legs of an outlet and a wire that are told."""
_NEVER: Final = 1e-9
_PAYS: Final = 1e-6


@dataclass(frozen=True, slots=True)
class RelaxedLeg:
    """A leg, or what is less than one; openings may stand in it more than once."""

    outlet: int
    wire: int
    order: tuple[int, ...]
    junctions: bool
    weight: float


class RelaxedLegs:
    """Relaxed legs of an outlet.

    Parameters
    ----------
    outlet : Outlet
        Where they begin.
    ways : Ways
        Between its openings.
    number : int
        Of the outlet.
    """

    def __init__(self, outlet: Outlet, ways: Ways, number: int) -> None:
        self.outlet, self.ways, self.number = outlet, ways, number
        self.near_m: Floats = shortest_m(outlet, ways)
        self.reached = outlet.suits & np.isfinite(self.near_m)
        self.taps = [
            taps(outlet, ways, end) if np.isfinite(outlet.way_m[end]) else None for end in range(len(outlet.way_m))
        ]

    def paying(self, worth: Floats) -> tuple[list[RelaxedLeg], float]:
        """Return the relaxed legs that pay most for each wire, and the share of the prices at which none pays.

        Parameters
        ----------
        worth : array
            What supplying each opening from this outlet is worth.
        """
        found: list[RelaxedLeg] = []
        share = 1.0
        nearest_m = float(self.outlet.way_m.min(initial=inf))
        for wire in range(len(self.ways.ohm)):
            made = self._of_wire(wire, worth)
            paying = [(gain, leg) for gain, leg in made if gain > _PAYS]
            if not paying:
                continue
            # Every leg of this wire weighs this at the least, and earns no more than that over its weight.
            least = nearest_m * float(self.ways.weight[wire])
            share = min(share, least / (least + max(gain for gain, _ in paying)))
            found += [leg for _, leg in paying]
        return found, share

    def _of_wire(self, wire: int, worth: Floats) -> list[tuple[float, RelaxedLeg]]:
        """Return relaxed legs of a wire with what they earn over their weight, the best ones."""
        outlet, ohm = self.outlet, self.ways.ohm[wire] * self.outlet.warmth
        near = np.where(np.isfinite(self.near_m), self.near_m, 0.0)
        own = outlet.rest_a + (outlet.added_a if outlet.at_once else 0.0)
        # What an end can bear that others lose on its way.
        left_v = np.where(self.reached, outlet.room_v - ohm * near * own, -inf) + _NEVER
        ends = left_v >= 0.0
        if not ends.any():
            return []
        step = float(left_v[ends].max()) / _STEPS or 1.0
        steps = np.where(ends, np.floor(np.minimum(np.maximum(left_v, 0.0) / step, _STEPS)), -1).astype(np.intp)
        made = self._chains(wire, worth, ohm, near, steps, step)
        if self.ways.junctions:
            made += self._branching(wire, worth, ohm, steps, step)
        earned = [(float(sum(worth[i] for i in leg.order)) - leg.weight, leg) for leg in made]
        earned.sort(key=lambda pair: -pair[0])
        return earned[:_TAKEN]

    def _chains(
        self, wire: int, worth: Floats, ohm: float, near: Floats, steps: Steps, step: float
    ) -> list[RelaxedLeg]:
        """Walk from the outlet over no run and back, by count of openings, the last one and what is lost."""
        ways, outlet, weight = self.ways, self.outlet, float(self.ways.weight[wire])
        some = np.flatnonzero(self.reached & (steps >= 0))
        if not len(some):
            return []
        takes = np.minimum(np.floor(ohm * near * outlet.rest_a / step), _STEPS + 1).astype(np.intp)[some]
        between_m = ways.between_m[np.ix_(some, some)]
        between = np.where(np.isfinite(between_m), between_m, 0.0) * weight - worth[some][None, :]
        between[~np.isfinite(between_m)] = inf
        n, levels = len(some), _STEPS + 1
        every, at_level = np.arange(n), np.arange(levels)
        first = np.full((n, levels), inf)
        # An end takes nothing of what it can bear itself: only those before it do.
        direct = np.isfinite(outlet.way_m[some])
        first[direct, 0] = outlet.way_m[some][direct] * weight - worth[some][direct]
        second, from_first = np.full((n, levels), inf), np.full((n, levels), -1)
        from_second = np.full((n, levels), -1)
        stages = [(first, second, from_first, from_second)]
        best: list[tuple[float, int, int, int]] = []
        # Behind an opening that is passed, what it takes is lost: shifted by the levels that it takes.
        behind = at_level[None, :] - takes[:, None]
        valid = behind >= 0
        behind = np.where(valid, behind, 0)
        allowed = at_level[None, :] <= steps[some][:, None]
        for stage in range(ways.most if ways.chains else 1):
            values = np.where(allowed, first, inf)
            at = values.argmin(axis=1)
            best += [
                (float(values[i, at[i]]), stage, int(i), int(at[i])) for i in every if np.isfinite(values[i, at[i]])
            ]
            if stage + 1 == ways.most or not ways.chains:
                break
            one = np.where(valid, np.take_along_axis(first, behind, axis=1), inf)
            two = np.where(valid, np.take_along_axis(second, behind, axis=1), inf)
            came = np.take_along_axis(from_first, behind, axis=1)
            # (before, level, next): over the second best where the best comes from the next.
            source = np.where(came[:, :, None] == every[None, None, :], two[:, :, None], one[:, :, None])
            source = source + between[:, None, :]
            pick = source.argmin(axis=0)
            first = np.take_along_axis(source, pick[None], axis=0)[0].T
            np.put_along_axis(source, pick[None], inf, axis=0)
            pick_two = source.argmin(axis=0)
            second = np.take_along_axis(source, pick_two[None], axis=0)[0].T
            from_first, from_second = pick.T, pick_two.T
            stages.append((first, second, from_first, from_second))
            if not np.isfinite(first).any():
                break
        best.sort()
        return [self._walk(wire, some, takes, stages, stage, end, level) for _, stage, end, level in best[:_TAKEN]]

    def _walk(
        self, wire: int, some: Steps, takes: Steps, stages: list[tuple[Floats, Floats, Steps, Steps]], stage: int,
        end: int, level: int,
    ) -> RelaxedLeg:  # fmt: skip
        order = [end]
        over_second = False
        while stage:
            from_one, from_two = stages[stage][2], stages[stage][3]
            before = int((from_two if over_second else from_one)[end, level])
            level -= int(takes[before])
            stage -= 1
            # Where the best way to the one before comes from here, its second best was taken.
            over_second = stage > 0 and int(stages[stage][2][before, level]) == end
            end = before
            order.append(end)
        walk = [int(some[i]) for i in reversed(order)]
        metres = float(self.outlet.way_m[walk[0]]) + sum(float(self.ways.between_m[a, b]) for a, b in pairwise(walk))
        return RelaxedLeg(self.number, wire, tuple(walk), False, metres * float(self.ways.weight[wire]))

    def _branching(self, wire: int, worth: Floats, ohm: float, steps: Steps, step: float) -> list[RelaxedLeg]:
        """For each end the branches that pay most, within what is lost on the way to it."""
        outlet, weight, found = self.outlet, float(self.ways.weight[wire]), []
        for end in np.flatnonzero(steps >= 0).tolist():
            known = self.taps[end]
            if known is None:
                continue
            tap, arm = known
            gain = np.where(np.isfinite(tap), worth - np.where(np.isfinite(arm), arm, 0.0) * weight, -inf)
            gain[end] = -inf
            items = np.flatnonzero(gain > 0.0)
            if not len(items):
                continue
            takes = np.floor(ohm * tap[items] * outlet.rest_a[items] / step).astype(np.intp)
            own = float(outlet.rest_a[end] + (outlet.added_a[end] if outlet.at_once else 0.0))
            room = min(int((outlet.room_v[end] - ohm * outlet.way_m[end] * own + _NEVER) // step), _STEPS)
            if room < 0:
                continue
            taken = _knapsack(gain[items], takes, room, self.ways.most - 1)
            order = (*(int(items[i]) for i in taken), end)
            metres = float(outlet.way_m[end] + arm[list(order[:-1])].sum())
            found.append(RelaxedLeg(self.number, wire, order, True, metres * weight))
        return found


def _knapsack(gain: Floats, takes: Steps, room: int, most: int) -> list[int]:
    """Return the items of most gain that take no more than there is room for, so many at most."""
    first = np.argsort(-gain, kind="stable")
    if int(takes[first[:most]].sum()) <= room:
        # The best so many have room: no other choice gains more.
        return [int(i) for i in first[:most]]
    items = [int(i) for i in first if takes[i] <= room]
    value = np.full((min(most, len(items)) + 1, room + 1), 0.0)
    chosen: list[NDArray[np.bool_]] = []
    for item in items:
        take = int(takes[item])
        with_it = np.full_like(value, -inf)
        with_it[1:, take:] = value[:-1, : room + 1 - take] + gain[item]
        better = with_it > value
        chosen.append(better)
        value = np.where(better, with_it, value)
    count, at = len(value) - 1, room
    taken = []
    for item, better in zip(reversed(items), reversed(chosen), strict=True):
        if better[count, at]:
            taken.append(item)
            count, at = count - 1, at - int(takes[item])
    return taken
