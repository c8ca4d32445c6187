"""Rule: the unit covers its access hole, within its window."""

from collections.abc import Iterable

from hwsched.rules.reading import unit_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import ON_FACE
from hwsched.rules.solid.housing import window_of
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, place = unit_part(given, fit), fit.placement
    if unit is None or place is None or place.face not in ON_FACE or unit.kind != "surface-unit":
        return
    window = window_of(unit)
    if window is None:
        yield unknown((f"part {unit.number}.window_x0_mm",), unit.number)
        return
    x, y = place.hole_x_mm - place.x_mm, place.hole_y_mm - place.y_mm
    off = max(window.x0 - x, x - window.x1, window.y0 - y, y - window.y1)
    if off > limits["tolerance_mm"]:
        yield Verdict(
            f"The unit's window misses its access hole by {length(given, off)}.",
            values={"off_mm": off, "allowed_mm": limits["tolerance_mm"]},
            about="access hole",
        )


RULE = Rule(
    id="plate-covers-hole",
    title="Unit covers its access hole",
    discipline="placement",
    severity="error",
    basis="common practice",
    cure="Move the unit over the hole, or drill the hole where the unit covers it.",
    judge=_judge,
    slot="unit",
    limits=(
        Limit(
            "tolerance_mm",
            0.01,
            "How far the hole may lie outside the unit's window.",
            "common practice",
            unit="mm",
            low=0.0,
            high=25.0,
        ),
    ),
)
