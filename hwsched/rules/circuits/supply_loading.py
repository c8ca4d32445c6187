"""Rule: all loads held at once use no more than a share of the supply."""

from collections.abc import Iterable

from hwsched.rules.rule import SUPPLIES, Inputs, Limit, Limits, Rule, Verdict
from hwsched.values.power import SupplyResult


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[Verdict]:
    held, rated = result.holding_a, result.rated_a
    if held is None or rated is None:
        return
    # Trade articles leave 20 to 25 % of a supply unused.
    usable = rated * limits["share"]
    if held <= usable + 1e-9:
        return
    over = held > rated + 1e-9
    what = "its rating" if over else "that"
    yield Verdict(
        f"Everything held at once draws {held:.3g} A; {limits['share']:.0%} of {result.supply.name}'s {rated:g} A is "
        f"{usable:.3g} A, and {what} is exceeded by {held - (rated if over else usable):.3g} A.",
        values={"load_a": held, "usable_a": usable, "rated_a": rated},
        about=result.supply.part or "",
        severity="error" if over else None,
        opening_ids=result.openings if over else (),
    )


RULE = Rule(
    subject=SUPPLIES,
    id="supply-loading",
    title="Share of the supply that is used",
    discipline="power",
    severity="warning",
    basis="trade articles: no more than 75 to 80 % of the rating; above the rating it is an error",
    cure="Take a larger supply, or hang some openings on another one.",
    judge=_judge,
    limits=(
        Limit(
            "share", 0.8, "Share of the rating that is used.", "trade articles, 75 to 80 %", unit="", low=0.1, high=1.0
        ),
    ),
)
