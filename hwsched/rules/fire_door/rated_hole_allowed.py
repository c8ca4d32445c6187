"""Rule: holes in a rated leaf that are of the allowed class are named, so that the listing is read before drilling."""

from collections.abc import Iterable

from hwsched.rules.reading import rated
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if not rated(given):
        return
    made = [h for h in fit.holes if h.purpose in ("cable", "function", "bolt", "fixing") and h.diameter_mm <= 25.4]
    # Cylinder holes may have the size that the cylinder needs; the one inch is for all others (NFPA 80, secondary
    # copies).
    made += [h for h in fit.holes if h.purpose == "function" and h.diameter_mm > 25.4]
    if made:
        count = sum(h.count for h in made)
        yield Verdict(
            f"{count} round hole is made in a rated leaf; it is of the class that may be prepared on site. Verify the "
            "listings before drilling."
            if count == 1
            else f"{count} round holes are made in a rated leaf; they are of the class that may be prepared on site. "
            "Verify the listings before drilling.",
            values={"holes": float(count)},
            about="holes",
        )


RULE = Rule(
    id="rated-hole-allowed",
    title="Allowed holes in a rated leaf: verify the listing",
    discipline="fire-door",
    severity="note",
    basis="NFPA 80, 4.1.3 (to 2019) and 5.1.5.2 (2022), job-site preparation, secondary copies",
    cure="Read the label and the door maker's listing, drill round and no more than shown, record every hole.",
    judge=_judge,
    defers=True,
)
