"""How far an opening is from a supply along the cable route: measured, else as laid, else from level, plan and rise."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from hwsched.calc.power.cable_distance import Distance, PlanPoint, route_distance
from hwsched.rules.network.circuit_laying import SUPPLY
from hwsched.values import Opening
from hwsched.values.power import PowerFacts, Route, Supply

Heights = Mapping[tuple[str | None, str | None], float | None]
"""Height of each level's floor [m], by building and level."""

_AS_ESTIMATED_M: Final = 1e-3


@dataclass(frozen=True, slots=True)
class LaidWays:
    """How long the ways are on which a run of known length lies, straight from one to the other.

    What is reached over a junction was led there by choice: its length says nothing of the way without it.
    """

    supply: Mapping[tuple[str, str], float]
    """From a supply to an opening [m], by opening and supply; the shorter of two."""
    between: Mapping[frozenset[str], float]
    """From opening to opening [m]."""


def laid_ways(facts: PowerFacts) -> LaidWays:
    """Return the ways on which runs of known length lead from a supply, or from an opening, to the next opening."""
    at = {circuit.id: circuit.supply_id for circuit in facts.circuits}
    openings = {(run.circuit_id, run.to_node): run.opening_id for run in facts.runs}
    from_supply: dict[tuple[str, str], float] = {}
    between: dict[frozenset[str], float] = {}
    for run in facts.runs:
        if run.opening_id is None or run.length_m is None:
            continue
        before = openings.get((run.circuit_id, run.from_node))
        if run.from_node == SUPPLY:
            key = (run.opening_id, at[run.circuit_id])
            from_supply[key] = min(run.length_m, from_supply.get(key, run.length_m))
        elif before is not None:
            pair = frozenset((before, run.opening_id))
            between[pair] = min(run.length_m, between.get(pair, run.length_m))
    return LaidWays(from_supply, between)


def distance(
    supply: Supply,
    opening: Opening,
    heights: Heights,
    route: Route | None,
    detour_factor: float = 1.0,
    laid_m: float | None = None,
) -> tuple[Distance | None, tuple[str, ...]]:
    """Return the distance, or what is missing to know it.

    Parameters
    ----------
    supply : Supply
        With its place.
    opening : Opening
        With its place on the plan.
    heights : mapping
        Of the levels of the building.
    route : Route or None
        What was measured between the two.
    detour_factor : float
        On an estimate, 1 or more.
    laid_m : float, optional
        Of the run that lies between the two [m]: it goes before an estimate, and is none where it is as estimated.

    Returns
    -------
    distance : Distance or None
        None in another building, or while a fact is missing.
    needs : tuple of str
        Missing facts as ``entity.attribute``.
    """
    if route is not None and route.length_m is not None:
        return Distance(route.length_m, True), ()
    estimated, needs = _estimate(supply, opening, heights, detour_factor)
    if laid_m is None:
        return estimated, needs
    as_estimated = estimated is not None and abs(estimated.metres - laid_m) < _AS_ESTIMATED_M
    return Distance(laid_m, not as_estimated), ()


def _estimate(
    supply: Supply, opening: Opening, heights: Heights, detour_factor: float
) -> tuple[Distance | None, tuple[str, ...]]:
    # Across buildings a plan distance means nothing: only a measured route counts.
    if supply.building != opening.building:
        return None, ()
    needs = [f"supply.{name}" for name in ("x_m", "y_m", "rise_m") if getattr(supply, name) is None]
    needs += [f"opening.{name}" for name in ("plan_x_m", "plan_y_m", "rise_m") if getattr(opening, name) is None]
    level_m, other_m = supply.level_m, heights.get((opening.building, opening.level))
    if supply.level == opening.level and supply.level is not None:
        # On one level its height does not matter.
        level_m = other_m = 0.0
    if level_m is None or other_m is None:
        needs.append("level.height_m")
    if needs:
        return None, tuple(needs)
    here = PlanPoint(level_m or 0.0, supply.x_m or 0.0, supply.y_m or 0.0, supply.rise_m or 0.0)
    there = PlanPoint(other_m or 0.0, opening.plan_x_m or 0.0, opening.plan_y_m or 0.0, opening.rise_m or 0.0)
    return route_distance(here, there, None, detour_factor), ()
