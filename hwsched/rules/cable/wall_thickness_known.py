"""Rule: where a reader and its unit stand on a wall, the wall's thickness is known before the lead is ordered."""

from collections.abc import Iterable

from hwsched.rules.reading import leafless
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import length
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    cable = fit.cable
    if not leafless(given) or cable is None or any(leaf.thickness_mm is not None for leaf in given.leaves):
        return
    left = cable.available_mm - cable.length_mm
    yield Verdict(
        f"Unknown: needs the thickness of wall or enclosure; behind the reader the lead leaves {length(given, left)} "
        "for it.",
        values={"left_mm": left},
        about="lead",
        severity="warning",
        needs=("leaf.thickness_mm",),
    )


RULE = Rule(
    id="wall-thickness-known",
    title="Way through the wall known",
    discipline="cable",
    severity="error",
    basis="common practice",
    cure="Measure the wall or enclosure between reader and unit; record it as the leaf's thickness.",
    judge=_judge,
)
