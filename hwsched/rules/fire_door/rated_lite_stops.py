"""Rule: glass in a rated leaf stands in stops that are listed with it."""

from collections.abc import Iterable

from hwsched.rules.reading import rated, remains
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.ways_out import is_door
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if not rated(given) or not is_door(given):
        return
    stops = [item.stops for item in given.items if item.kind == "lite" and remains(item)]
    if None in stops:
        yield unknown(("existing_item.stops",), "lite")
    if "unlisted" in stops:
        yield Verdict("The stops of the glass in this rated leaf are not listed with it.", about="lite")


RULE = Rule(
    id="rated-lite-stops",
    title="Stops of the glass listed",
    discipline="fire-door",
    severity="error",
    basis="NFPA 80, chapter 4: glazing and its frame in rated doors are listed; from memory, unverified",
    cure="Report it to the owner before work starts: it is there already and is not cured by this work.",
    judge=_judge,
    defers=True,
)
