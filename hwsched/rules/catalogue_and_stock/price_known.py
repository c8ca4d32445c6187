"""Rule: every part of the fit has a price, in currencies that can be converted into one."""

from collections.abc import Iterable

from hwsched.rules.reading import entry
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    parts = [part for fit_part in fit.parts if (part := entry(given, fit_part))]
    free = sorted({part.number for part in parts if part.list_price is None})
    if free:
        yield Verdict(
            f"No price is known for {', '.join(free)}; the opening's cost is without them.",
            values={"parts": float(len(free))},
            about=free[0],
        )
    exchange = given.exchange
    lacking: dict[str, list[str]] = {}
    for part in sorted(parts, key=lambda part: part.number):
        missing = exchange.missing(part.currency) if part.list_price is not None else ""
        if missing and part.number not in lacking.setdefault(missing, []):
            lacking[missing].append(part.number)
    for missing, numbers in lacking.items():
        yield Verdict(
            f"The opening's cost is unknown: needs {missing} ({', '.join(numbers)}).",
            "Tell the project's currency and what the others are worth in it: hwsched parts terms PROJECT --currency "
            "USD --rate EUR=1.08; or complete the currencies of the catalogue.",
            values={"parts": float(len(numbers))},
            about="currency",
            severity="warning",
        )


RULE = Rule(
    id="price-known",
    title="Prices of the parts",
    discipline="catalogue-and-stock",
    severity="note",
    basis="common practice",
    cure="Complete the catalogue's prices.",
    judge=_judge,
)
