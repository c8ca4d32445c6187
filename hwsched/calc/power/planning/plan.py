"""One search over places, sizes and number of supplies, wires and the ways of the runs.

Here belong the aims, what is refused and how the answer is told. Few openings are searched whole (`small_search`), more
by legs that pay (`large_search`), with a bound under which no plan of this kind lies.
"""

from collections.abc import Sequence
from dataclasses import replace
from math import inf
from time import monotonic
from typing import Final

import numpy as np

from hwsched.calc.calculator import InputError
from hwsched.calc.power.planning.large_search import LargeSearch
from hwsched.calc.power.planning.legs import (
    TOUCH,
    LegShape,
    Outlet,
    Ways,
    Weights,
    outlets_of,
    shortest_m,
    told,
    ways_of,
    with_margin,
)
from hwsched.calc.power.planning.margins import Chain, Margin, greatest_margin
from hwsched.calc.power.planning.question import AIMS, Leg, NoPlanError, Plan, Question, check_question
from hwsched.calc.power.planning.small_search import MOST_OPENINGS, SmallSearch
from hwsched.calc.solver import Cancelled, Limits, Progress

_SECOND: Final = 1e-6
"""Weight of what decides only between plans alike in what is aimed at."""
_ONE_MORE: Final = 1e7
"""Weight of one more supply, where few are searched: above all that wire and work can cost."""
_LARGE_GAP: Final = 0.01
_PROVED: Final = 1e-7
_MARGIN_V: Final = 1e-5
"""Under which what is not proved of a margin is not told [V]."""
_MARGIN_SHARE: Final = 0.5
"""Of the time, for the greatest margin; the rest for the least cost with it."""
DEFAULT_TIME_S: Final = 120.0


def plan_power(
    question: Question,
    aim: str = "least-cost",
    *,
    gap: float | None = None,
    time_limit_s: float = DEFAULT_TIME_S,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> Plan:
    """Choose supplies, wires and runs for all openings.

    Parameters
    ----------
    question : Question
        Places, openings, wires and ways.
    aim : str
        One of `AIMS`. Fewest supplies, then least cost; most margin: the greatest that all openings can have at one
        time, then least cost with it.
    gap : float
        Share that may stay unproved beyond so many openings as are searched whole; by default 0.01.
    time_limit_s, progress, cancelled
        As `hwsched.calc.power.siting.place_supplies`.

    Returns
    -------
    Plan
        The best that was found, and what is proved of it.

    Raises
    ------
    NoPlanError
        Names the openings for which there is none.
    InputError
        Names the value that cannot be taken.

    Notes
    -----
    Up to eight openings every leg is looked at: exact for currents that do not depend on the voltage. Beyond, legs are
    found by the prices of a linear program; its optimum over all walks and branchings, of which the legs are a part, is
    the bound.

    Examples
    --------
    >>> from hwsched.calc.power.planning.question import Drawn, PlanOpening, PlanPlace, Size, Wire
    >>> openings = tuple(PlanOpening(mark, {"12 V": Drawn(0.5, 0.1, 0.5, 10.0)}) for mark in ("101", "102"))
    >>> place = PlanPlace("closet", (Size("S", "12 V", 2.0, 11.4, 100.0),), 1)
    >>> asked = Question((place,), openings, (Wire("18", 0.044, 4.0),), [[20], [25]], [[None, 6], [6, None]])
    >>> found = plan_power(asked)
    >>> [(leg.shape, leg.openings, leg.wire_m) for leg in found.legs], found.cost, found.proved_best
    ([('junctions', ('102', '101'), 25.5)], 202.0, True)
    """
    check_question(question)
    if aim not in AIMS:
        raise InputError("aim", f"must be one of {', '.join(AIMS)}, got {aim!r}")
    until = monotonic() + time_limit_s
    limits = Limits(_LARGE_GAP if gap is None else gap, until, None, cancelled, progress)
    _refuse_unreached(question, ways_of(question, Weights(1.0, _SECOND)))
    most: Margin | None = None
    if aim == "most-margin":
        most = greatest_margin(question, replace(limits, until=monotonic() + _MARGIN_SHARE * time_limit_s))
    margin_v = most.margin_v if most is not None else 0.0
    weights = Weights(_SECOND, 1.0) if aim == "least-wire" else Weights(1.0, _SECOND)
    outlets, ways = outlets_of(question, margin_v), ways_of(question, weights)
    if len(question.openings) <= MOST_OPENINGS and len(question.openings) <= question.most_on_leg:
        plan = _small(question, outlets, ways, weights, aim, margin_v)
    else:
        plan = _large(question, outlets, ways, weights, aim, margin_v, limits, most.legs if most is not None else ())
    if most is None or most.bound_v - margin_v <= _MARGIN_V:
        return plan
    return replace(plan, margin_left_v=most.bound_v - margin_v)


def _refuse_unreached(question: Question, ways: Ways) -> None:
    """Name the openings that not even a run of their own of the thickest wire, by the shortest way, carries."""
    ohm = min(wire.ohm_per_m for wire in question.wires)
    reached: set[int] = set()
    for outlet in outlets_of(question):
        near = np.where(outlet.suits, shortest_m(outlet, ways), np.inf)
        own = outlet.rest_a + (outlet.added_a if outlet.at_once else 0.0)
        lost = ohm * outlet.warmth * np.where(np.isfinite(near), near, 0.0) * own
        reached |= set(np.flatnonzero(np.isfinite(near) & (lost <= outlet.room_v + TOUCH)).tolist())
    beyond = tuple(o.id for i, o in enumerate(question.openings) if i not in reached)
    if beyond:
        raise NoPlanError("openings", f"no supply can reach or carry: {', '.join(beyond)}", beyond)


def _small(
    question: Question, outlets: Sequence[Outlet], ways: Ways, weights: Weights, aim: str, margin_v: float
) -> Plan:
    search = SmallSearch(question, tuple(outlets), ways)
    found = search.answer(_ONE_MORE if aim == "fewest-supplies" else 0.0, weights.cost)
    if found is None:
        raise NoPlanError(
            "openings",
            "no supplies and wires carry all openings together",
            tuple(opening.id for opening in question.openings),
        )
    _, shapes, sizes = found
    plan = _told(question, outlets, ways, shapes, sizes, margin_v, search.tried)
    return replace(plan, bound=_aimed(plan, aim), least_supplies=plan.supplies)


def _large(
    question: Question,
    outlets: Sequence[Outlet],
    ways: Ways,
    weights: Weights,
    aim: str,
    margin_v: float,
    limits: Limits,
    begun: Sequence[Chain],
) -> Plan:
    fewest: int | None = None
    least = 0
    if aim == "fewest-supplies":
        counting = Weights(0.0, 0.0, 1.0)
        fewest, least = LargeSearch(question, outlets, ways_of(question, counting), counting, limits).fewest()
    search = LargeSearch(question, outlets, ways, weights, limits, fewest, begun)
    shapes, sizes, bound = search.answer()
    plan = _told(question, outlets, ways, shapes, sizes, margin_v, search.tried)
    reached = _aimed(plan, aim)
    bound = min(bound, reached)
    left = (reached - bound) / reached if reached > 0.0 else 0.0
    if aim == "fewest-supplies":
        left = max(left, (plan.supplies - least) / plan.supplies if plan.supplies else 0.0)
    return replace(plan, bound=bound, gap=left if left > _PROVED else 0.0, least_supplies=least)


def _aimed(plan: Plan, aim: str) -> float:
    return plan.wire_m if aim == "least-wire" else plan.cost


def _told(
    question: Question,
    outlets: Sequence[Outlet],
    ways: Ways,
    shapes: Sequence[LegShape],
    sizes: dict[int, int],
    margin_v: float,
    tried: int,
) -> Plan:
    legs: list[Leg] = [with_margin(told(question, outlets, ways, shape), margin_v) for shape in shapes]
    named = {question.places[p].id: question.places[p].sizes[s] for p, s in sizes.items()}
    counted = sum(question.places[p].counts for p in sizes)
    return Plan(
        tuple(legs), {place: size.id for place, size in named.items()}, counted,
        sum(leg.cost for leg in legs) + sum(size.cost for size in named.values()), sum(leg.wire_m for leg in legs),
        min((leg.margin_v for leg in legs), default=None), 0.0, -inf, 0, tried,
    )  # fmt: skip
