"""Rule: all loads held at once use no more than a share of the supply."""

from collections.abc import Iterable

from hwsched.rules.rule import SUPPLIES, Inputs, Limit, Limits, Rule, Verdict
from hwsched.values.power import SupplyResult


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[Verdict]:
    # What is unknown can only add to it: what is exceeded already is exceeded for sure.
    rated, first = result.rated_a, result.known_inrush_a
    if rated is None:
        return
    yield from _held(result, rated, limits)
    over = result.held_a is not None and result.held_a[0] > rated + 1e-9
    # What it bears for a moment above its rating is for its sheet to say; what is over already is over then too.
    if first is not None and first > rated + 1e-9 and not over:
        least = "" if result.inrush_a is not None else "At least "
        yield Verdict(
            f"{least}{first:.3g} A flow in the first moment of the worst operations at one time, above the {rated:g} A "
            f"of {result.supply.name}, by {first - rated:.3g} A.",
            "Take a supply whose sheet allows that for a moment, a larger one, or fewer operations at one time.",
            values={"inrush_a": first, "rated_a": rated},
            about=result.supply.part or "",
        )


def _held(result: SupplyResult, rated: float, limits: Limits) -> Iterable[Verdict]:
    if result.held_a is None:
        return
    # What is unknown may draw nothing at all: what is exceeded then is exceeded for sure.
    held, most = result.held_a
    # Trade articles leave 20 to 25 % of a supply unused.
    usable = rated * limits["share"]
    if held <= usable + 1e-9:
        if most > usable + 1e-9:
            yield Verdict(
                f"Unknown: whether {limits['share']:.0%} of {result.supply.name}'s {rated:g} A suffice; {held:.3g} to "
                f"{most:.3g} A are held, and {usable:.3g} A may be.",
                values={"load_a": held, "most_a": most, "usable_a": usable, "rated_a": rated},
                about=result.supply.part or "",
                needs=result.needs,
            )
        return
    over, least = held > rated + 1e-9, "at least " if most > held else ""
    what = "its rating" if over else "that"
    yield Verdict(
        f"Everything held at once draws {least}{held:.3g} A; {limits['share']:.0%} of {result.supply.name}'s {rated:g} "
        f"A is {usable:.3g} A, and {what} is exceeded by {held - (rated if over else usable):.3g} A.",
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
    cure="Take a larger supply, or put some openings on another one.",
    judge=_judge,
    limits=(
        Limit(
            "share", 0.8, "Share of the rating that is used.", "trade articles, 75 to 80 %", unit="", low=0.1, high=1.0
        ),
    ),
)
