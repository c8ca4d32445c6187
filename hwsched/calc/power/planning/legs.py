"""Legs of one outlet: which orders and ways carry their openings, with which wire, and what they cost.

Here belong the arithmetic on many legs at a time and the one leg as it is told. Which legs make a plan is chosen in
`small_search` and `large_search`.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from hwsched.calc.power.planning.question import Leg, PlannedRun, Question

Floats = NDArray[np.float64]
Ints = NDArray[np.intp]
TOUCH: Final = 1e-9
_NEAR_M: Final = 1e-6
"""Junctions nearer than this are one [m]."""
CHAIN: Final = "daisy-chain"
JUNCTIONS: Final = "junctions"
HOME: Final = "home-run"


@dataclass(frozen=True, slots=True)
class Outlet:
    """A place with supplies alike in kind and voltage: where its legs begin."""

    place: int
    kind: str
    terminals_v: float
    at_once: int
    warmth: float
    sizes: tuple[int, ...]
    """Of the place, by index."""
    suits: NDArray[np.bool_]
    """Openings that it suits and can carry."""
    way_m: Floats
    """To each opening; infinite where there is none, or it does not suit [m]."""
    held_a: Floats
    rest_a: Floats
    added_a: Floats
    """By operating."""
    room_v: Floats
    """That may be lost on the way to each opening [V]."""


@dataclass(frozen=True, slots=True)
class Ways:
    """What all outlets share: ways between openings, wires from cheap to dear that are worth having, and weights."""

    between_m: Floats
    wire: Ints
    """Of the question, by index."""
    ohm: Floats
    """Falling [ohm/m]."""
    weight: Floats
    """What a metre of each wire adds to what is aimed at; rising."""
    junction: float
    """What a junction adds."""
    most: int
    chains: bool
    junctions: bool


@dataclass(frozen=True, slots=True)
class Weights:
    """What counts, and how much."""

    cost: float
    metre: float
    supply: float = 0.0


def ways_of(question: Question, weights: Weights) -> Ways:
    """Return ways and wires; a wire that is dearer and thinner than another one is left out."""
    count = len(question.openings)
    between = _metres(question.between_m, count) if question.between_m else np.full((count, count), np.inf)
    np.fill_diagonal(between, np.inf)
    between = np.where(np.isfinite(between), between, between.T)
    weight = [weights.cost * wire.cost_per_m + weights.metre for wire in question.wires]
    kept: list[int] = []
    for i in sorted(range(len(weight)), key=lambda i: (weight[i], question.wires[i].ohm_per_m)):
        if not kept or question.wires[i].ohm_per_m < question.wires[kept[-1]].ohm_per_m:
            kept.append(i)
    return Ways(
        between, np.array(kept, dtype=np.intp), np.array([question.wires[i].ohm_per_m for i in kept]),
        np.array([weight[i] for i in kept]), weights.cost * question.junction_cost, question.most_on_leg,
        CHAIN in question.shapes and bool(np.isfinite(between).any()),
        JUNCTIONS in question.shapes and bool(np.isfinite(between).any()),
    )  # fmt: skip


def outlets_of(question: Question, margin_v: float = 0.0) -> tuple[Outlet, ...]:
    """Return the outlets of all places, each opening asking for a margin beyond what it needs."""
    way = _metres(question.to_place_m, len(question.places))
    found = []
    for p, place in enumerate(question.places):
        alike: dict[tuple[str, float], list[int]] = {}
        for s, size in enumerate(place.sizes):
            alike.setdefault((size.kind, size.terminals_v), []).append(s)
        for (kind, volts), sizes in alike.items():
            drawn = [opening.drawn.get(kind) for opening in question.openings]
            suits = np.array([each is not None for each in drawn])
            held, rest, work, needed = (
                np.array([0.0 if each is None else getattr(each, name) for each in drawn])
                for name in ("held_a", "rest_a", "work_a", "needed_v")
            )
            room = volts - needed - margin_v
            most = max(place.sizes[s].left_a for s in sizes)
            carried = suits & (room >= -TOUCH) & (held <= most + TOUCH)
            found.append(
                Outlet(p, kind, volts, place.at_once, place.warmth, tuple(sizes), carried,
                       np.where(carried, way[:, p], np.inf), held, rest, np.maximum(work - rest, 0.0),
                       np.maximum(room, 0.0))
            )  # fmt: skip
    return tuple(found)


def _metres(rows: Sequence[Sequence[float | None]], width: int) -> Floats:
    found = np.full((len(rows), width), np.inf)
    for i, row in enumerate(rows):
        for j, metres in enumerate(row):
            if metres is not None:
                found[i, j] = metres
    return found


def most_drop(outlet: Outlet, which: Ints, shared_m: Floats) -> Floats:
    """Greatest drop on the way to each opening of legs, for a wire of 1 ohm/m at its own temperature [V].

    Parameters
    ----------
    outlet : Outlet
        Where they begin.
    which : array of int
        Openings; a row a leg.
    shared_m : array
        Way that each two openings of a leg share from the outlet; shape (legs, openings, openings).

    Notes
    -----
    V_b = V0 - r · (Σ_c shared_bc · rest_c + the largest of shared_bc · added_c, so many as operate at one time): exact
    for constant currents.
    """
    drop: Floats = (shared_m * outlet.rest_a[which][:, None, :]).sum(axis=2)
    added = shared_m * outlet.added_a[which][:, None, :]
    count, at_once = which.shape[1], outlet.at_once
    if at_once >= count:
        drop += added.sum(axis=2)
    elif at_once:
        drop += np.partition(added, count - at_once, axis=2)[:, :, count - at_once :].sum(axis=2)
    return drop


def most_ohm(outlet: Outlet, which: Ints, shared_m: Floats) -> Floats:
    """Greatest resistance of a metre, there and back, with which legs carry their openings [ohm/m]."""
    drop = most_drop(outlet, which, shared_m)
    room = outlet.room_v[which] + TOUCH
    with np.errstate(divide="ignore"):
        each = np.where(drop > 0.0, room / np.where(drop > 0.0, drop, 1.0), np.inf)
    found: Floats = each.min(axis=1) / outlet.warmth
    return found


def wire_for(ways: Ways, ohm: Floats) -> Ints:
    """Return the cheapest wire for each greatest resistance; the count of wires where none does."""
    # Wires stand from cheap and thin to dear and thick.
    return np.searchsorted(-ways.ohm, -ohm, side="left")


def chain_positions(outlet: Outlet, ways: Ways, order: Ints) -> Floats:
    """Way from the outlet to each opening of daisy chains, in their order [m]."""
    steps = np.empty(order.shape)
    steps[:, 0] = outlet.way_m[order[:, 0]]
    if order.shape[1] > 1:
        steps[:, 1:] = ways.between_m[order[:, :-1], order[:, 1:]]
    return np.cumsum(steps, axis=1)


def chain_shared(positions: Floats) -> Floats:
    """Way that each two openings of chains share."""
    return np.minimum(positions[:, :, None], positions[:, None, :])


def shortest_m(outlet: Outlet, ways: Ways) -> Floats:
    """Shortest way from an outlet to each opening, over however many others: no leg reaches it by a shorter one [m]."""
    count = len(outlet.way_m)
    found = np.full((count + 1, count + 1), np.inf)
    found[:count, :count] = ways.between_m
    found[count, :count] = found[:count, count] = outlet.way_m
    for through in range(count + 1):
        found = np.minimum(found, found[:, through, None] + found[None, through, :])
    return found[count, :count]


def taps(outlet: Outlet, ways: Ways, end: int) -> tuple[Floats, Floats]:
    """Where each opening's run leaves the way to an opening, and how long it is from there; infinite where it cannot.

    Notes
    -----
    Of three points with their ways the ones to two part at half of what these are longer than the third: the median,
    which there is wherever cable ways go along the axes of a building.
    """
    to_end = outlet.way_m[end]
    with np.errstate(invalid="ignore"):
        tap = (to_end + outlet.way_m - ways.between_m[end]) / 2.0
        arm = outlet.way_m - tap
        can = np.isfinite(tap) & (tap >= -_NEAR_M) & (tap <= to_end + _NEAR_M) & (arm >= -_NEAR_M)
    tap = np.where(can, np.clip(tap, 0.0, to_end), np.inf)
    arm = np.where(can, np.maximum(arm, 0.0), np.inf)
    tap[end], arm[end] = to_end, 0.0
    return tap, arm


def junction_shared(tap: Floats, arm: Floats, which: Ints) -> Floats:
    """Way that each two openings share that branch off one way."""
    at = tap[which]
    shared = np.minimum(at[:, :, None], at[:, None, :])
    own = np.arange(which.shape[1])
    shared[:, own, own] = at + arm[which]
    return shared


def junctions_on(tap: Sequence[float], arm: Sequence[float], to_end: float) -> int:
    """Count the junctions of a way: places where runs leave it that are neither an opening nor the supply."""
    places: list[float] = []
    at_opening = [t for t, a in zip(tap, arm, strict=True) if a <= _NEAR_M] + [to_end]
    for t, a in zip(tap, arm, strict=True):
        if a <= _NEAR_M or t <= _NEAR_M or any(abs(t - other) <= _NEAR_M for other in (*at_opening, *places)):
            continue
        places.append(t)
    return len(places)


@dataclass(frozen=True, slots=True)
class LegShape:
    """A leg by numbers: its outlet, wire, openings in order, and for one with junctions where its way ends."""

    outlet: int
    wire: int
    """Of the ways."""
    order: tuple[int, ...]
    """Of a leg with junctions the end of its way stands last."""
    junctions: bool
    weight: float
    metres: float


def junction_leg(
    number: int, outlet: Outlet, ways: Ways, order: Sequence[int], wire: int, tap: Floats, arm: Floats
) -> LegShape:
    """Return a leg with junctions, by where its branches leave the way to its last opening and how long they are."""
    inner = list(order[:-1])
    to_end = float(outlet.way_m[order[-1]])
    metres = to_end + float(arm[inner].sum())
    weight = metres * float(ways.weight[wire])
    if ways.junction:
        weight += ways.junction * junctions_on(tap[inner].tolist(), arm[inner].tolist(), to_end)
    return LegShape(number, wire, tuple(order), True, weight, metres)


def told(question: Question, outlets: Sequence[Outlet], ways: Ways, shape: LegShape) -> Leg:
    """Put a leg together as it is laid."""
    outlet = outlets[shape.outlet]
    wire = question.wires[ways.wire[shape.wire]]
    points, runs = _junction_runs(outlet, ways, shape) if shape.junctions else _chain_runs(outlet, ways, shape)
    which = np.array([shape.order], dtype=np.intp)
    if shape.junctions:
        tap, arm = taps(outlet, ways, shape.order[-1])
        shared = junction_shared(tap, arm, which)
    else:
        shared = chain_shared(chain_positions(outlet, ways, which))
    name = HOME if len(shape.order) == 1 else JUNCTIONS if shape.junctions else CHAIN
    metres = sum(run.metres for run in runs)
    extra = sum(point is None for point in points) * question.junction_cost
    ids = tuple(question.openings[i].id for i in shape.order)
    return Leg(
        question.places[outlet.place].id, name, wire.id, ids,
        tuple(None if i is None else question.openings[i].id for i in points), tuple(runs), metres,
        metres * wire.cost_per_m + extra, _margin(outlet, which, shared, wire.ohm_per_m),
    )  # fmt: skip


def _margin(outlet: Outlet, which: Ints, shared_m: Floats, ohm: float) -> float:
    added = shared_m * outlet.added_a[which][:, None, :]
    count = min(outlet.at_once, which.shape[1])
    largest = np.sort(added, axis=2)[:, :, which.shape[1] - count :].sum(axis=2)
    drop = (shared_m * outlet.rest_a[which][:, None, :]).sum(axis=2) + largest
    return float((outlet.room_v[which] - drop * ohm * outlet.warmth).min())


def _chain_runs(outlet: Outlet, ways: Ways, shape: LegShape) -> tuple[list[int | None], list[PlannedRun]]:
    runs, before = [], -1
    for at, opening in enumerate(shape.order):
        metres = outlet.way_m[opening] if before < 0 else ways.between_m[shape.order[before], opening]
        runs.append(PlannedRun(before, at, float(metres)))
        before = at
    return list(shape.order), runs


def _junction_runs(outlet: Outlet, ways: Ways, shape: LegShape) -> tuple[list[int | None], list[PlannedRun]]:
    end = shape.order[-1]
    tap, arm = taps(outlet, ways, end)
    points: list[int | None] = []
    runs: list[PlannedRun] = []
    at_m, at = 0.0, -1

    def go_to(metres: float, opening: int | None) -> None:
        nonlocal at_m, at
        points.append(opening)
        runs.append(PlannedRun(at, len(points) - 1, metres - at_m))
        at_m, at = metres, len(points) - 1

    # Openings on the way itself come before those that branch off at the same place: a junction there is theirs.
    inner = sorted(shape.order[:-1], key=lambda i: (round(float(tap[i]) / _NEAR_M), bool(arm[i] > _NEAR_M)))
    branches: list[tuple[int, int]] = []
    for opening in inner:
        if arm[opening] <= _NEAR_M and tap[opening] > _NEAR_M:
            go_to(float(tap[opening]), opening)
            continue
        if tap[opening] > at_m + _NEAR_M and tap[opening] < outlet.way_m[end] - _NEAR_M:
            go_to(float(tap[opening]), None)
        # At the far end it hangs at the opening there, which is reached below.
        branches.append((at if tap[opening] < outlet.way_m[end] - _NEAR_M else -2, opening))
    go_to(float(outlet.way_m[end]), end)
    last = at
    for begin, opening in branches:
        points.append(opening)
        runs.append(PlannedRun(last if begin == -2 else begin, len(points) - 1, float(arm[opening])))
    return points, runs


def with_margin(leg: Leg, added_v: float) -> Leg:
    """Return a leg of which a margin was asked, with its whole margin."""
    return replace(leg, margin_v=leg.margin_v + added_v)
