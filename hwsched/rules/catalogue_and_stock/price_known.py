"""Rule: every part of the fit has a price, all in one currency."""

from collections.abc import Iterable

from hwsched.cases import Case, Fit
from hwsched.rules.reading import entry
from hwsched.rules.rule import Limits, Rule, Verdict


def _judge(case: Case, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    parts = [part for fitted in fit.parts if (part := entry(case, fitted))]
    free = sorted({part.number for part in parts if part.list_price is None})
    if free:
        yield Verdict(
            f"No price is known for {', '.join(free)}; the opening's cost is without them.",
            values={"parts": float(len(free))},
            about=free[0],
        )
    currencies = sorted({part.currency for part in parts if part.list_price is not None and part.currency})
    if len(currencies) > 1:
        yield Verdict(
            f"The parts are priced in {', '.join(currencies)}; their sum says nothing.",
            about="currency",
            severity="warning",
        )


RULE = Rule(
    id="price-known",
    title="Prices of the parts",
    discipline="catalogue-and-stock",
    severity="note",
    basis="common practice",
    cure="Complete the catalogue's prices, in one currency.",
    judge=_judge,
)
