"""Rule: on a rated leaf a round hole for surface-applied hardware is not over one inch, cylinder holes excepted."""

from collections.abc import Iterable

from hwsched.rules.reading import rated
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import TOUCH_MM
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput

_FREE = ("function", "bore", "pocket", "channel")
"""Purposes that another rule judges, or that may have any size (holes for cylinders and spindles)."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    carries = rated(given)
    if carries is False:
        return
    for hole in fit.holes:
        if hole.purpose in _FREE or hole.diameter_mm <= limits["diameter_mm"] + TOUCH_MM:
            continue
        if carries is None:
            yield unknown(("opening.rating",), hole.name)
            continue
        yield Verdict(
            f"A hole of {length(given, hole.diameter_mm)} for the {hole.name} in a rated leaf; over "
            f"{length(given, limits['diameter_mm'])} is allowed only if both the door maker's and the hardware maker's "
            "listings allow it, and where the 2016 or a later edition is adopted.",
            values={"diameter_mm": hole.diameter_mm, "allowed_mm": limits["diameter_mm"]},
            about=hole.name,
        )


RULE = Rule(
    id="rated-hole-size",
    title="Holes in a rated leaf not over 1 in",
    discipline="fire-door",
    severity="error",
    basis="NFPA 80, 4.1.3 (to 2019) and 5.1.5.2 (2022), job-site preparation; over 1 in since 2016; secondary copies",
    cure="Take hardware that needs a smaller hole, or get both listings in writing and record a waiver.",
    judge=_judge,
    slot="unit",
    limits=(
        Limit(
            "diameter_mm",
            25.4,
            "Largest round hole, cylinder holes excepted.",
            "NFPA 80, secondary copies",
            unit="mm",
            low=0.0,
            high=300.0,
        ),
    ),
    defers=True,
)
