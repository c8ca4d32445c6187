"""Rule: the undercut of a rated wood or composite leaf is not over three quarters of an inch."""

from collections.abc import Iterable

from hwsched.rules.reading import rated
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import TOUCH_MM
from hwsched.rules.wording import length
from hwsched.values import Fit, OpeningInput

_MATERIALS = ("wood", "mineral-core", "composite")


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if not rated(given):
        return
    for leaf in given.leaves:
        undercut = leaf.undercut_mm
        # The 3/4 in are the undercut of wood and composite leaves, often mistaken for the size of a hole, which is
        # one inch.
        if leaf.material in _MATERIALS and undercut is not None and undercut > limits["undercut_mm"] + TOUCH_MM:
            yield Verdict(
                f"The undercut is {length(given, undercut)}; {length(given, limits['undercut_mm'])} is the most for a "
                f"rated leaf of this material, {length(given, undercut - limits['undercut_mm'])} too much.",
                values={"undercut_mm": undercut, "allowed_mm": limits["undercut_mm"]},
                about="leaf",
            )


RULE = Rule(
    id="rated-undercut",
    title="Undercut of a rated leaf",
    discipline="fire-door",
    severity="warning",
    basis="NFPA 80, 4.1.3 (to 2019): undercut of wood and composite doors to 3/4 in, secondary copies",
    cure="Report it to the owner before work starts; it is there already and is not cured by this work.",
    judge=_judge,
    limits=(
        Limit("undercut_mm", 19.05, "Greatest undercut.", "NFPA 80, secondary copies", unit="mm", low=0.0, high=200.0),
    ),
    defers=True,
)
