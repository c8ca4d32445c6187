"""Fewest supplies, then least wire: the order in which the models of siting are solved.

Here belong the steps and their shares of the time. The models stand in `siting_model`, the search for whole assignments
in `siting_repair`.
"""

from dataclasses import dataclass, replace
from math import ceil
from time import monotonic
from typing import Final

import numpy as np

from hwsched.calc.power.siting_model import WHOLE, Pairs, Plan, columns_of, cover_model, read_plan, wire_or_count_model
from hwsched.calc.power.siting_prices import by_prices
from hwsched.calc.power.siting_repair import search
from hwsched.calc.solver import Floats, Ints, Limits, run

_CHEAP_M: Final = 4.0
"""Reduced cost up to which an assignment is tried first when the supplies are chosen [m]."""
_SPLIT_SHARE: Final = 0.5
"""Share of the allowed gap for the choice of supplies, where openings may still be split."""
_START_GAP: Final = 0.01
"""Gap of the answer from which a large model begins when it is to be solved more closely than that."""
_LIGHT: Final = 1e-3
"""Share of the largest supply below which a current does not by itself open a supply in the solver's tolerance."""
_COUNT_SHARE: Final = 0.4
_ASSIGN_SHARE: Final = 0.3
_SEARCH_SHARE: Final = 0.2
_POLISH_SHARE: Final = 0.8
"""Shares of the time left for the steps that may not end by themselves."""
_GROUP: Final = 5
"""Neighbouring supplies that are solved again together."""
_GROUP_S: Final = 1.0
_CLOSER_S: Final = 10.0
"""Time for each model that is to better an answer in hand [s]."""
_FAR_M: Final = 1e4
_DIRECT_PAIRS: Final = 2000
"""Models up to this size are given to the solver whole."""


@dataclass(frozen=True, slots=True)
class NoPlan:
    """No answer: there is none, or none was found in time."""

    proven: bool


def plan(pairs: Pairs, limits: Limits) -> Plan | NoPlan:
    """Fewest supplies, then least wire.

    Parameters
    ----------
    pairs : Pairs
        Each opening has one at least.
    limits : Limits
        The gap holds for the wire; the count of supplies is always proven where time allows.

    Returns
    -------
    Plan or NoPlan
        The best answer found.

    Notes
    -----
    A bound on the count comes from reach and the sum of currents. Where so many supplies have current for every opening
    on the nearest of them, prices settle a large model (`siting_prices`). Else it is solved with that count and with
    openings that may be split over supplies, in which only the choice of supplies is whole: that proves a larger
    count, or gives a choice and a bound on the wire. With the choice made, whole assignments are searched
    (`siting_repair`) and solved as a small model. Only where that gives no answer is the count solved for with whole
    assignments, and only where a larger gap than allowed is left, the wire.
    """
    counted_by_reach = _least_count(pairs, limits)
    if counted_by_reach is None:
        return NoPlan(True)
    least, reaching = counted_by_reach
    best: Plan | None = None
    near = replace(limits, gap=max(limits.gap, _START_GAP))
    if len(pairs.opening) > _DIRECT_PAIRS and reaching is not None:
        step = f"least wire with {least} supplies"
        best = by_prices(pairs, reaching, _SPLIT_SHARE * near.gap, replace(near, step=step))
    if len(pairs.opening) > _DIRECT_PAIRS and (best is None or _gap(best) > near.gap):
        priced = best
        choice = _by_choice(pairs, least, near)
        while choice.infeasible and least < pairs.supplies:
            least += 1
            choice = _by_choice(pairs, least, near)
        if choice.infeasible:
            return NoPlan(True)
        best = choice.plan
        if priced is not None and len(priced.opened) == least and (best is None or priced.wire_m < best.wire_m):
            best = replace(priced, least_wire_m=min(priced.wire_m, max(priced.least_wire_m, choice.bound)))
    if best is None:
        counted = _fewest(pairs, least, replace(limits, until=_part(limits, _COUNT_SHARE)))
        if isinstance(counted, NoPlan):
            return counted
        best, least = counted
        if len(pairs.opening) > _DIRECT_PAIRS and len(best.opened) > least:
            choice = _by_choice(pairs, len(best.opened), replace(limits, gap=max(limits.gap, _START_GAP)))
            better = choice.plan is not None and choice.plan.wire_m < best.wire_m
            best = choice.plan if choice.plan is not None and better else replace(best, least_wire_m=choice.bound)
    best = replace(best, least_supplies=least)
    return best if _gap(best) <= limits.gap else _least_wire(pairs, best, limits)


def _least_wire(pairs: Pairs, best: Plan, limits: Limits) -> Plan:
    """Solve for the wire with as many supplies as there are, from the answer in hand."""
    count = len(best.opened)
    target = best.least_wire_m / (1.0 - limits.gap) if limits.gap > 0.0 and best.least_wire_m > 0.0 else None
    wire = replace(limits, target=target, step=f"least wire with {count} supplies")
    found = run(wire_or_count_model(pairs, count, strong=True), wire, columns_of(pairs, best))
    bound = max(best.least_wire_m, found.bound)
    if found.x is not None and found.objective < best.wire_m - WHOLE:
        best = replace(read_plan(pairs, found.x), least_supplies=best.least_supplies)
    return replace(best, least_wire_m=min(bound, best.wire_m))


def _least_count(pairs: Pairs, limits: Limits) -> tuple[int, Ints | None] | None:
    """Bound on the count by reach and the sum of currents, and supplies of that count; None where there is no way."""
    cover = run(cover_model(pairs), replace(limits, gap=0.0, step="fewest supplies by reach and sum of currents"))
    if cover.infeasible:
        return None
    least = max(0, ceil(cover.bound - WHOLE)) if cover.bound > -np.inf else 0
    chosen = None if cover.x is None else np.nonzero(cover.x > 0.5)[0].astype(np.int32)
    return least, chosen if chosen is not None and len(chosen) == least else None


def _fewest(pairs: Pairs, least: int, limits: Limits) -> tuple[Plan, int] | NoPlan:
    """Solve for the count with whole assignments."""
    light = pairs.openings > 0 and bool(pairs.amps.min() < _LIGHT * pairs.capacity_a.max())
    model = wire_or_count_model(pairs, None, strong=light, least=least)
    found = run(model, replace(limits, gap=0.0, target=float(least), step="fewest supplies"))
    if found.x is None:
        return NoPlan(found.infeasible)
    first = read_plan(pairs, found.x)
    if found.finished:
        return first, len(first.opened)
    return first, max(least, ceil(found.bound - WHOLE))


@dataclass(frozen=True, slots=True)
class _Choice:
    """What is known of one count of supplies."""

    infeasible: bool
    """So many supplies do not do, even with openings split over them."""
    bound: float
    """Of the wire [m]."""
    plan: Plan | None


def _by_choice(pairs: Pairs, count: int, limits: Limits) -> _Choice:
    """Choose the supplies with openings that may be split, then assign the openings whole."""
    limits = replace(limits, step=f"least wire with {count} supplies")
    split = wire_or_count_model(pairs, count, strong=True)
    split = replace(split, whole=np.arange(len(split.cost)) >= len(pairs.opening))
    chosen = run(split, replace(limits, gap=_SPLIT_SHARE * limits.gap))
    bound = max(0.0, chosen.bound)
    if chosen.infeasible or chosen.x is None:
        return _Choice(chosen.infeasible, bound, None)
    opened = np.nonzero(chosen.x[len(pairs.opening) :] > 0.5)[0]
    some = np.isin(pairs.supply, opened)
    place = np.full(pairs.supplies, -1, dtype=np.int32)
    place[opened] = np.arange(len(opened), dtype=np.int32)
    few = Pairs(
        pairs.amps,
        pairs.capacity_a[opened],
        pairs.opening[some],
        place[pairs.supply[some]],
        pairs.wire_m[some],
        np.ones(len(opened)),
    )
    enough_m = bound / (1.0 - limits.gap)
    part = replace(limits, until=_part(limits, _ASSIGN_SHARE), target=enough_m, gap=WHOLE)
    assigned = _assign(few, chosen.x[: len(pairs.opening)][some], part)
    if assigned is None:
        return _Choice(False, bound, None)
    supply_of = tuple(int(opened[s]) for s in assigned.supply_of)
    least_m = min(bound, assigned.wire_m)
    return _Choice(False, least_m, Plan(tuple(opened.tolist()), supply_of, assigned.wire_m, least_m, 0))


def _assign(pairs: Pairs, shares: Floats, limits: Limits) -> Plan | None:
    """Assign whole openings when every supply is opened, from the shares of a split assignment.

    By search first; then as a model, along cheap pairs only, and where that does not do along all.
    """
    best = _search(pairs, shares, limits)
    if best is not None:
        best = _polish(pairs, best, replace(limits, until=_part(limits, _POLISH_SHARE)))
        if _suffices(best, limits):
            return best
    model = wire_or_count_model(pairs, pairs.supplies, strong=False)
    split = run(replace(model, whole=np.zeros(len(model.cost), dtype=bool)), replace(limits, target=None))
    if split.reduced_cost is None:
        return best
    dear = split.reduced_cost > _CHEAP_M
    dear[len(pairs.opening) :] = False
    for high in (np.where(dear, 0.0, model.high), model.high):
        start = None if best is None else columns_of(pairs, best)
        until = limits.until if best is None else min(limits.until, monotonic() + _CLOSER_S)
        found = run(replace(model, high=high), replace(limits, until=until), start)
        if found.x is not None and (best is None or found.objective < best.wire_m):
            best = read_plan(pairs, found.x)
        if best is not None and _suffices(best, limits):
            break
    return best


def _polish(pairs: Pairs, best: Plan, limits: Limits) -> Plan:
    """Solve groups of neighbouring supplies again, with the openings that hang on them, until no group saves wire."""
    wire_m = np.full((pairs.openings, pairs.supplies), np.inf)
    wire_m[pairs.opening, pairs.supply] = pairs.wire_m
    supply_of = np.array(best.supply_of, dtype=np.int32)
    everyone = np.arange(pairs.openings)
    pending = list(range(pairs.supplies))
    while pending and monotonic() < limits.until and not _suffices(best, limits):
        # The supply whose openings lie furthest from their nearest place promises most.
        excess = wire_m[everyone, supply_of] - wire_m.min(axis=1)
        centre = max(pending, key=lambda j: float(excess[supply_of == j].sum()))
        pending.remove(centre)
        beside = np.where(np.isfinite(wire_m[supply_of == centre]), wire_m[supply_of == centre], _FAR_M).mean(axis=0)
        group = np.argsort(beside, kind="stable")[:_GROUP]
        inside = np.isin(supply_of, group)
        some = inside[pairs.opening] & np.isin(pairs.supply, group)
        row = np.cumsum(inside) - 1
        place = np.zeros(pairs.supplies, dtype=np.int32)
        place[group] = np.arange(len(group))
        few = Pairs(
            pairs.amps[inside],
            pairs.capacity_a[group],
            row[pairs.opening[some]].astype(np.int32),
            place[pairs.supply[some]],
            pairs.wire_m[some],
            np.ones(len(group)),
        )
        known = Plan(tuple(range(len(group))), tuple(place[supply_of[inside]].tolist()), 0.0, 0.0, 0)
        part = replace(limits, until=min(limits.until, monotonic() + _GROUP_S), target=None)
        found = run(wire_or_count_model(few, len(group), strong=False), part, columns_of(few, known))
        before_m = float(wire_m[everyone, supply_of][inside].sum())
        if found.x is None or found.objective > before_m - WHOLE:
            continue
        supply_of[inside] = group[list(read_plan(few, found.x).supply_of)]
        pending = [j for j in range(pairs.supplies) if j != centre]
        best = replace(best, supply_of=tuple(supply_of.tolist()), wire_m=float(wire_m[everyone, supply_of].sum()))
    return best


def _suffices(known: Plan, limits: Limits) -> bool:
    return limits.target is not None and known.wire_m <= limits.target


def _search(pairs: Pairs, shares: Floats, limits: Limits) -> Plan | None:
    wire_m = np.full((pairs.openings, pairs.supplies), np.inf)
    wire_m[pairs.opening, pairs.supply] = pairs.wire_m
    share = np.full((pairs.openings, pairs.supplies), -1.0)
    share[pairs.opening, pairs.supply] = shares
    begin = share.argmax(axis=1).astype(np.int32)
    enough_m = -np.inf if limits.target is None else limits.target
    whole = search(pairs.amps, pairs.capacity_a, wire_m, begin, enough_m, _part(limits, _SEARCH_SHARE))
    if whole is None:
        return None
    wire = float(wire_m[np.arange(pairs.openings), whole].sum())
    return Plan(tuple(range(pairs.supplies)), tuple(whole.tolist()), wire, 0.0, 0)


def _part(limits: Limits, share: float) -> float:
    """End of a share of the time that is left."""
    now = monotonic()
    return now + share * max(0.0, limits.until - now)


def _gap(known: Plan) -> float:
    return (known.wire_m - known.least_wire_m) / known.wire_m if known.wire_m > 0.0 else 0.0
