"""Rule: on a leaf of stiles the unit's plate lies on the lock stile."""

from collections.abc import Iterable

from hwsched.rules.carried import between, of_centre
from hwsched.rules.reading import lock_item, lock_leaf, stile_mm, unit_part
from hwsched.rules.rounding import by_rounding, half_unit
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import ON_FACE, TOUCH_MM, plate_sizes
from hwsched.rules.solid.housing import housing_rect
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, leaf, place = unit_part(given, fit), lock_leaf(given), fit.placement
    if unit is None or leaf is None or unit.kind != "surface-unit":
        return
    has_stile, stile = stile_mm(leaf)
    if not has_stile:
        return
    if stile is None:
        yield unknown(("leaf.stile_mm",), "stile")
        return
    if place is None or place.face not in ON_FACE:
        return
    margin = limits["stile_margin_mm"]
    gap = stile - housing_rect(place, unit).x1
    if gap >= margin - TOUCH_MM:
        return
    facts = between((("leaf.stile_mm", stile, 1.0),), of_centre(lock_item(given)).across)
    allowed = half_unit(facts, plate_sizes(unit))
    if margin - gap <= allowed.mm + TOUCH_MM:
        yield by_rounding(given, allowed, margin - gap, "stile")
    else:
        yield Verdict(
            f"The unit needs {length(given, stile - gap + margin)} of stile, the lock stile has "
            f"{length(given, stile)}: short by {length(given, margin - gap)}.",
            values={"stile_mm": stile, "needed_mm": stile - gap + margin, "short_mm": margin - gap},
            about="stile",
        )


RULE = Rule(
    id="plate-on-stile",
    title="Unit on the lock stile",
    discipline="placement",
    severity="error",
    basis="common practice",
    cure="Take a narrow housing, a unit in the leaf's edge, or another place.",
    judge=_judge,
    slot="unit",
    limits=(
        Limit(
            "stile_margin_mm",
            0.0,
            "Least distance of the unit from the stile's inner edge.",
            "common practice",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
