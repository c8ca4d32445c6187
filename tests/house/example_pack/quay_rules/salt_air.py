"""Rule: an exterior opening by the water has a rain hood over its unit."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import NumberName
from hwsched.rules.reading import in_role, unit_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit = unit_part(given, fit)
    if unit is None or given.opening.exposure != "exterior":
        return
    hood = in_role(given, fit, "mounting")
    deep = hood.number_of(NumberName("overhang_mm")) if hood is not None and hood.kind == "rain-hood" else None
    if deep is None or deep < limits["overhang_mm"]:
        yield Verdict(
            f"Exterior by the water: a rain hood of {limits['overhang_mm']:g} mm or more is wanted over the unit.",
            values={"needed_mm": limits["overhang_mm"], "overhang_mm": deep or 0.0},
            about=unit.number,
        )


RULE = Rule(
    id="quay-rain-hood",
    title="Rain hood by the water",
    discipline="placement",
    severity="warning",
    basis="common practice of the shop that adds this rule",
    cure="Choose a rain hood: hwsched opening choose PROJECT MARK mounting PART.",
    judge=_judge,
    limits=(
        Limit("overhang_mm", 40.0, "Least overhang of the hood.", "common practice", unit="mm", low=0.0, high=300.0),
    ),
)
