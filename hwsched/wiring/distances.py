"""How far an opening is from a supply along the cable route: measured, else estimated from level, plan and rise."""

from collections.abc import Mapping

from hwsched.calc.power.cable_distance import Distance, PlanPoint, route_distance
from hwsched.values import Opening
from hwsched.values.power import Route, Supply

Heights = Mapping[tuple[str | None, str | None], float | None]
"""Height of each level's floor [m], by building and level."""


def distance(
    supply: Supply, opening: Opening, heights: Heights, route: Route | None, detour_factor: float = 1.0
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

    Returns
    -------
    distance : Distance or None
        None in another building, or while a fact is missing.
    needs : tuple of str
        Missing facts as ``entity.attribute``.
    """
    if route is not None and route.length_m is not None:
        return Distance(route.length_m, True), ()
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
