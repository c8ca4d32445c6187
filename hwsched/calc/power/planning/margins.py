"""The greatest margin that all openings can have at one time, with a bound over which no plan has one.

Of all legs to an opening a run of its own with the thickest wire leaves it most, unless it is nearer over others than
by its own way, or has none: only there are daisy chains asked too, and only such as end in an opening of this kind.
"""

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass, field, replace
from time import monotonic
from typing import Final

import numpy as np
from numpy.typing import NDArray

from hwsched.calc.power.planning.columns import RowsOfModel
from hwsched.calc.power.planning.large_search import LargeSearch
from hwsched.calc.power.planning.legs import (
    JUNCTIONS,
    Floats,
    Ints,
    Outlet,
    Ways,
    Weights,
    chain_positions,
    chain_shared,
    most_drop,
    outlets_of,
    shortest_m,
    ways_of,
)
from hwsched.calc.power.planning.question import NoPlanError, Question
from hwsched.calc.solver import Limits, run

_TOUCH: Final = 1e-7
_NEARER_M: Final = 1e-6
_WHOLE: Final = 50_000
"""Chains of a length up to which all are looked at."""
_TIMES: Final = 6
"""That chains are then looked for by prices, each time for another margin."""
_STEP_V: Final = 0.005
"""Of a margin, finer than which none is looked for then [V]."""

Chain = tuple[int, tuple[int, ...]]
"""An outlet by number, and openings in order."""


@dataclass(frozen=True, slots=True)
class Margin:
    """The greatest margin that was found."""

    margin_v: float
    """Less a touch of what binary adds [V]."""
    bound_v: float
    """No plan has a greater one [V]."""
    legs: tuple[Chain, ...]
    """With which all have it, with the thickest wire."""


@dataclass(slots=True)
class _Parts:
    """What may hang as one on a supply, with the margin that it leaves; of each set of openings the best one."""

    legs: list[Chain] = field(default_factory=list)
    margins: list[float] = field(default_factory=list)
    _at: dict[tuple[int, frozenset[int]], int] = field(default_factory=dict)

    def add(self, outlet: int, order: tuple[int, ...], margin_v: float) -> None:
        """Take a leg."""
        at = self._at.setdefault((outlet, frozenset(order)), len(self.legs))
        if at == len(self.legs):
            self.legs.append((outlet, order))
            self.margins.append(margin_v)
        elif margin_v > self.margins[at]:
            self.legs[at], self.margins[at] = (outlet, order), margin_v


@dataclass(frozen=True, slots=True)
class _Best:
    """The greatest margin with which parts feed all, with those parts; without any, none was found."""

    margin_v: float
    legs: tuple[Chain, ...]
    bound_v: float
    sure: bool
    """Whether the solver answered every question in its time."""

    def told(self, question: Question, bound_v: float) -> Margin:
        """Return it as it is told; raises NoPlanError."""
        if not self.legs:
            raise _no_plan(question, sure=self.sure)
        return Margin(max(self.margin_v - _TOUCH, 0.0), max(bound_v, self.margin_v), self.legs)


def greatest_margin(question: Question, limits: Limits) -> Margin:
    """Return the greatest margin that all can have, and its bound; raises NoPlanError where none was found."""
    outlets, ways = outlets_of(question), ways_of(question, Weights(1.0, 0.0))
    ohm = min(wire.ohm_per_m for wire in question.wires)
    near = [shortest_m(outlet, ways) if ways.chains else outlet.way_m for outlet in outlets]
    beyond = [outlet.suits & (own < outlet.way_m - _NEARER_M) for outlet, own in zip(outlets, near, strict=True)]
    alone = _best(question, outlets, _alone(outlets, near, ohm), limits)
    if not any(each.any() for each in beyond):
        return alone.told(question, alone.bound_v)
    if not alone.legs and alone.sure:
        raise _no_plan(question, sure=True)
    own_m = [outlet.way_m for outlet in outlets]
    parts = _alone(outlets, own_m, ohm)
    if all(_chains(g, outlet, ways, ohm, beyond[g], parts) for g, outlet in enumerate(outlets) if beyond[g].any()):
        found = _best(question, outlets, parts, limits)
        return found.told(question, min(alone.bound_v, found.bound_v))
    # Of very many chains those that prices bring: first such as do at all, then such as leave more.
    parts = _alone(outlets, own_m, ohm)
    found = _best(question, outlets, parts, limits)
    found = replace(found, sure=False)
    high_v = alone.bound_v
    for _ in range(_TIMES):
        if found.legs and found.margin_v >= high_v - _STEP_V:
            break
        asked_v = (found.margin_v + high_v) / 2.0 if found.legs else 0.0
        for number, order in _priced(question, asked_v, limits):
            margins = _margins(outlets[number], ways, np.array([order], dtype=np.intp), ohm)
            parts.add(number, order, float(margins[0]))
        better = _best(question, outlets, parts, limits)
        if better.legs and better.margin_v > found.margin_v:
            found = replace(better, sure=False)
        elif not found.legs:
            break
        if found.margin_v < asked_v:
            high_v = asked_v
    return found.told(question, alone.bound_v)


def _priced(question: Question, margin_v: float, limits: Limits) -> list[Chain]:
    """Return the chains of the thickest wire that a search by prices finds with a margin."""
    thick = min(question.wires, key=lambda wire: wire.ohm_per_m)
    asked = replace(question, wires=(thick,), shapes=question.shapes - {JUNCTIONS})
    until = monotonic() + max(0.0, limits.until - monotonic()) / _TIMES
    weights = Weights(0.0, 1.0)
    search = LargeSearch(
        asked, outlets_of(asked, margin_v), ways_of(asked, weights), weights, replace(limits, until=until)
    )
    # With others of the legs that are known there may be a plan all the same.
    with suppress(NoPlanError):
        search.answer()
    return [(leg.outlet, leg.order) for leg in search.legs.values()]


def _no_plan(question: Question, *, sure: bool) -> NoPlanError:
    if not sure:
        return NoPlanError("time_limit_s", "no plan was found; there may be one")
    return NoPlanError("openings", "no supplies and wires carry all openings together",
                       tuple(o.id for o in question.openings))  # fmt: skip


def _alone(outlets: Sequence[Outlet], way_m: Sequence[Floats], ohm: float) -> _Parts:
    """Return each opening on a run of its own with the thickest wire, at each outlet, by such ways."""
    parts = _Parts()
    for number, (outlet, way) in enumerate(zip(outlets, way_m, strict=True)):
        drawn = outlet.rest_a + (outlet.added_a if outlet.at_once else 0.0)
        for i in np.flatnonzero(outlet.suits & np.isfinite(way)).tolist():
            parts.add(number, (i,), float(outlet.room_v[i] - ohm * outlet.warmth * way[i] * drawn[i]))
    return parts


def _chains(number: int, outlet: Outlet, ways: Ways, ohm: float, beyond: NDArray[np.bool_], parts: _Parts) -> bool:
    """Add daisy chains that end in an opening that is nearer over others; returns whether they are all."""
    near = np.argsort(ways.between_m, axis=1, kind="stable")
    order: Ints = np.flatnonzero(np.isfinite(outlet.way_m))[:, None]
    margins = _margins(outlet, ways, order, ohm)
    for _ in range(min(ways.most, len(outlet.way_m)) - 1):
        # What is behind takes from all before it: a chain made longer never leaves more.
        order = order[margins >= -_TOUCH]
        if len(order) * len(near) > _WHOLE:
            return False
        order = _longer(outlet, ways, order, near)
        if not len(order):
            break
        margins = _margins(outlet, ways, order, ohm)
        for at in np.flatnonzero(beyond[order[:, -1]] & (margins >= -_TOUCH)).tolist():
            parts.add(number, tuple(order[at].tolist()), float(margins[at]))
    return True


def _longer(outlet: Outlet, ways: Ways, order: Ints, near: Ints) -> Ints:
    rows = np.repeat(order, near.shape[1], axis=0)
    further = near[order[:, -1]].ravel()
    can = np.isfinite(ways.between_m[rows[:, -1], further]) & ~(rows == further[:, None]).any(axis=1)
    can &= outlet.suits[further]
    return np.column_stack([rows[can], further[can]])


def _margins(outlet: Outlet, ways: Ways, order: Ints, ohm: float) -> Floats:
    """Least room that each chain leaves to an opening of it."""
    drop = most_drop(outlet, order, chain_shared(chain_positions(outlet, ways, order)))
    found: Floats = (outlet.room_v[order] - ohm * outlet.warmth * drop).min(axis=1, initial=np.inf)
    return found


def _best(question: Question, outlets: Sequence[Outlet], parts: _Parts, limits: Limits) -> _Best:
    """Return the greatest margin with which parts feed all."""
    margins = np.array(parts.margins)
    every = np.unique(margins[np.isfinite(margins) & (margins >= -_TOUCH)])
    best = _Best(0.0, (), 0.0, True)
    low, high, not_refuted = 0, len(every) - 1, len(every) - 1
    while low <= high:
        # The least one first: mostly the question is whether there is a plan at all.
        middle = (low + high + 1) // 2 if best.legs else 0
        chosen, sure = _together(question, outlets, parts, margins, float(every[middle]), limits)
        if chosen:
            best, low = replace(best, margin_v=float(every[middle]), legs=chosen), middle + 1
            continue
        if sure:
            not_refuted = min(not_refuted, middle - 1)
        best, high = replace(best, sure=best.sure and sure), middle - 1
    return replace(best, bound_v=float(every[not_refuted]) if not_refuted >= 0 else 0.0)


def _together(
    question: Question, outlets: Sequence[Outlet], parts: _Parts, margins: Floats, margin_v: float, limits: Limits
) -> tuple[tuple[Chain, ...], bool]:
    """Return parts with a margin that feed every opening once, within what the supplies give; none: whether sure."""
    legs = [parts.legs[n] for n in np.flatnonzero(margins >= margin_v - _TOUCH).tolist()]
    if len({i for _, order in legs for i in order}) < len(question.openings):
        return (), True
    rows = RowsOfModel(len(legs), whole=True)
    options = [(g, s) for g, outlet in enumerate(outlets) for s in outlet.sizes]
    size_at = [rows.column(0.0, 1.0) for _ in options]
    cover: list[list[tuple[int, float]]] = [[] for _ in question.openings]
    held: list[list[tuple[int, float]]] = [[] for _ in outlets]
    for n, (g, order) in enumerate(legs):
        for i in order:
            cover[i].append((n, 1.0))
        held[g].append((n, float(sum(outlets[g].held_a[i] for i in order))))
    for own in cover:
        rows.row(own, 1.0, 1.0)
    for g, outlet in enumerate(outlets):
        left = [(at, -question.places[outlet.place].sizes[s].left_a)
                for at, (h, s) in zip(size_at, options, strict=True) if h == g]  # fmt: skip
        rows.row([*held[g], *left], -np.inf, _TOUCH)
    for p in range(len(question.places)):
        here = [(at, 1.0) for at, (g, _) in zip(size_at, options, strict=True) if outlets[g].place == p]
        rows.row(here, -np.inf, 1.0)
    found = run(rows.model(), limits)
    if found.x is None:
        return (), found.infeasible
    return tuple(leg for leg, x in zip(legs, found.x, strict=False) if x > 0.5), True
