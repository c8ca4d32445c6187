"""Rule: the unit's plate lies within the leaf, and within the stile where only the stile is solid."""

from collections.abc import Iterable

from hwsched.rules.carried import Facts, between, of_centre
from hwsched.rules.reading import leaf_reach_mm, leaf_span_mm, lock_item, lock_leaf, unit_part
from hwsched.rules.rounding import by_rounding, half_unit
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import ON_FACE, TOUCH_MM, plate_sizes
from hwsched.rules.solid.housing import housing_rect
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    place, leaf = fit.placement, lock_leaf(given)
    if place is None or leaf is None or place.face not in ON_FACE:
        return
    span = leaf_span_mm(given, leaf)
    needs = [f"leaf.{name}" for name in ("width_mm", "height_mm") if getattr(leaf, name) is None]
    if leaf.width_mm is None or span is None:
        yield unknown(tuple(needs) or ("leaf.undercut_mm",), "unit")
        return
    margin = limits["edge_margin_mm"]
    # The housing and not the plate alone: its window may reach past the plate.
    unit, lock = unit_part(given, fit), lock_item(given)
    housing = housing_rect(place, unit)
    across, up = (housing.x0, leaf.width_mm - housing.x1), (housing.y0 - span[0], span[1] - housing.y1)
    if min(*across, *up) >= margin - TOUCH_MM:
        return
    reach = leaf_reach_mm(given, leaf) or span
    may = (housing.y0 - reach[0], reach[1] - housing.y1)
    if reach != span and min(*across, *may) >= margin - TOUCH_MM:
        yield unknown(("leaf.undercut_mm",), "unit")
        return
    # Of a leaf whose undercut nobody measured it counts as near as it may come.
    up = may
    own = of_centre(lock)
    width: Facts = (("leaf.width_mm", leaf.width_mm, 1.0),)
    low: Facts = (("leaf.undercut_mm", leaf.undercut_mm, 1.0),)
    high: Facts = (("leaf.height_mm", leaf.height_mm, 1.0), *low)
    for edge, gap, facts in (
        ("lock edge", across[0], own.across),
        ("hinge edge", across[1], between(own.across, width)),
        ("leaf's bottom", up[0], between(own.up, low)),
        ("leaf's top", up[1], between(own.up, high)),
    ):
        if gap >= margin - TOUCH_MM:
            continue
        allowed = half_unit(facts, plate_sizes(unit) if unit is not None else ())
        if margin - gap <= allowed.mm + TOUCH_MM:
            yield by_rounding(given, allowed, margin - gap, edge)
        else:
            yield Verdict(
                f"The unit stands {length(given, gap)} from the {edge}; {length(given, margin)} is needed, short by "
                f"{length(given, margin - gap)}.",
                values={"gap_mm": gap, "needed_mm": margin, "short_mm": margin - gap},
                about=edge,
            )


RULE = Rule(
    id="plate-within-leaf",
    title="Unit within the leaf",
    discipline="placement",
    severity="error",
    basis="common practice",
    cure="Take a smaller unit or another place.",
    judge=_judge,
    slot="unit",
    limits=(
        Limit(
            "edge_margin_mm",
            3.175,
            "Least distance of the unit from every edge of the leaf.",
            "common practice",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
