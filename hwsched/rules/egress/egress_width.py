"""Rule: an egress opening keeps its clear width."""

from collections.abc import Iterable

from hwsched.rules.reading import active_leaf
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf = active_leaf(given)
    if leaf is None or given.opening.egress in ("none", None) or given.opening.form in ("cabinet",):
        return
    if leaf.width_mm is None:
        yield unknown(("leaf.width_mm",), "egress")
        return
    # About 2 in are lost to leaf and hinge on ordinary hinges (FHA guidelines): a nominal width is not the clear one.
    clear = leaf.width_mm - limits["lost_mm"]
    if clear < limits["new_mm"]:
        # NFPA 101 asks less of a leaf that stands already: between the two it is worth a note, and no warning.
        existing = clear >= limits["existing_mm"]
        yield Verdict(
            f"About {length(given, clear)} are clear, {length(given, limits['lost_mm'])} lost to leaf and hinge; "
            f"{length(given, limits['new_mm'])} is asked of a new egress opening, "
            f"{length(given, limits['existing_mm'])} of an existing one.",
            values={"clear_mm": clear, "new_mm": limits["new_mm"], "existing_mm": limits["existing_mm"]},
            about="egress",
            severity="note" if existing else "warning",
        )


RULE = Rule(
    id="egress-width",
    title="Clear width for egress",
    discipline="egress",
    severity="warning",
    basis="NFPA 101, 7.2.1.2.3 (32 in new, 28 in existing leaf), secondary copy; 2 in lost on ordinary hinges, FHA "
    "guidelines, approximate",
    cure="Measure the clear width at the opening, and mount nothing that narrows it.",
    judge=_judge,
    limits=(
        Limit(
            "new_mm",
            812.8,
            "Clear width of a new opening.",
            "NFPA 101, 7.2.1.2.3, secondary copy",
            unit="mm",
            low=0.0,
            high=2000.0,
        ),
        Limit(
            "existing_mm",
            711.2,
            "Width of an existing leaf.",
            "NFPA 101, 7.2.1.2.3, secondary copy",
            unit="mm",
            low=0.0,
            high=2000.0,
        ),
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
