"""Rule: an opening on an accessible route keeps its clear width."""

from collections.abc import Iterable

from hwsched.rules.reading import active_leaf, leafless
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import TOUCH_MM
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf = active_leaf(given)
    if leaf is None or leafless(given) or not given.opening.accessible or given.opening.form == "cabinet":
        return
    if leaf.width_mm is None:
        yield unknown(("leaf.width_mm",), "clear width")
        return
    clear = leaf.width_mm - limits["lost_mm"]
    if clear < limits["clear_mm"] - TOUCH_MM:
        yield Verdict(
            f"About {length(given, clear)} are clear; {length(given, limits['clear_mm'])} is asked, short by "
            f"{length(given, limits['clear_mm'] - clear)}.",
            values={"clear_mm": clear, "needed_mm": limits["clear_mm"], "short_mm": limits["clear_mm"] - clear},
            about="clear width",
        )


RULE = Rule(
    id="clear-width",
    title="Clear width on an accessible route",
    discipline="accessibility",
    severity="warning",
    basis="ADA 2010, 404.2.3 (32 in from face of leaf to stop, open 90 degrees); about 2 in lost, FHA guidelines",
    cure="Measure the clear width with the leaf at 90 degrees; mount nothing that narrows it.",
    judge=_judge,
    limits=(
        Limit("clear_mm", 812.8, "Clear width.", "ADA 2010, 404.2.3", unit="mm", low=0.0, high=2000.0),
        Limit(
            "lost_mm",
            50.8,
            "Lost to the open leaf and its hinge.",
            "FHA guidelines fig. 1, approximate",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
    defers=True,
)
