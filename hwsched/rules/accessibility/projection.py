"""Rule: what stands out of the leaf does not narrow an accessible opening below or within the reach band."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import DEPTH_MM
from hwsched.rules.reading import unit_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import ON_FACE, TOUCH_MM
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, place = unit_part(given, fit), fit.placement
    if unit is None or place is None or place.face not in ON_FACE or not given.opening.accessible:
        return
    depth = unit.number_of(DEPTH_MM)
    if depth is None:
        yield unknown((f"part {unit.number}.depth_mm",), unit.number)
        return
    # By the unit's lower end: it is the lowest part of it that may not stand into the clear width.
    if place.y_mm < limits["low_mm"] - TOUCH_MM:
        yield Verdict(
            f"The unit starts {length(given, place.y_mm)} above the floor and stands {length(given, depth)} out; below "
            f"{length(given, limits['low_mm'])} nothing may stand into the clear width.",
            values={"y_mm": place.y_mm, "low_mm": limits["low_mm"], "depth_mm": depth},
            about=unit.number,
        )
    elif depth > limits["depth_mm"] + TOUCH_MM:
        yield Verdict(
            f"The unit stands {length(given, depth)} out; {length(given, limits['depth_mm'])} is the most.",
            values={"depth_mm": depth, "allowed_mm": limits["depth_mm"]},
            about=unit.number,
        )


RULE = Rule(
    id="projection",
    title="Projection into the clear width",
    discipline="accessibility",
    severity="warning",
    basis="ADA 2010, 404.2.3 and 307 (none below 34 in, 4 in between 34 and 80 in), from memory, unverified",
    cure="Place the unit higher, or take a flatter one.",
    judge=_judge,
    limits=(
        Limit(
            "low_mm",
            863.6,
            "Height below which nothing may stand out.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=2500.0,
        ),
        Limit(
            "depth_mm", 101.6, "Most projection above it.", "from memory, unverified", unit="mm", low=0.0, high=500.0
        ),
    ),
    defers=True,
)
