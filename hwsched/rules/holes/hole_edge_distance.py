"""Rule: a hole leaves enough material to the lock edge and to the stile's inner edge."""

from collections.abc import Iterable

from hwsched.rules.carried import between, of_centre
from hwsched.rules.reading import lock_item, lock_leaf, stile_mm
from hwsched.rules.rounding import by_rounding, half_unit
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import ON_FACE, TOUCH_MM
from hwsched.rules.wording import length
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf = lock_leaf(given)
    if leaf is None:
        return
    has_stile, stile = stile_mm(leaf)
    stile = stile if has_stile else leaf.width_mm
    for hole in fit.holes:
        # A lock's own bores have their preparation to answer for them.
        if hole.face not in ON_FACE or hole.by_template or hole.purpose == "bore":
            continue
        own = of_centre(lock_item(given)).across
        sides = [("lock edge", hole.x_mm - hole.diameter_mm / 2, own)]
        if stile is not None:
            inner = (("leaf.stile_mm" if has_stile else "leaf.width_mm", stile, 1.0),)
            sides.append(("stile's inner edge", stile - hole.x_mm - hole.diameter_mm / 2, between(own, inner)))
        for name, wall, facts in sides:
            short = limits["wall_mm"] - wall
            if short <= TOUCH_MM:
                continue
            allowed = half_unit(facts, (hole.diameter_mm,))
            if short <= allowed.mm + TOUCH_MM:
                yield by_rounding(given, allowed, short, hole.name)
            else:
                yield Verdict(
                    f"The hole for the {hole.name} leaves {length(given, wall)} to the {name}; "
                    f"{length(given, limits['wall_mm'])} is needed.",
                    values={"wall_mm": wall, "needed_mm": limits["wall_mm"], "short_mm": short},
                    about=hole.name,
                )


RULE = Rule(
    id="hole-edge-distance",
    title="Material left beside a hole",
    discipline="holes",
    severity="error",
    basis="wall left = backset - half the hole (locksmiths' dictionary); the least wall is common practice",
    cure="Drill farther from the edge, or take a unit that needs a smaller hole.",
    judge=_judge,
    slot="unit",
    limits=(
        Limit(
            "wall_mm",
            6.35,
            "Least material between a hole and the edge.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
