"""Rule: for a supply the distance to it is known."""

from collections.abc import Iterable

from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if fit.power == "supply" and given.supply_link is None and given.opening.supply_distance_m is None:
        yield unknown(("opening.supply_distance_m",), "supply")


RULE = Rule(
    id="supply-distance-known",
    title="Distance to the supply known",
    discipline="power",
    severity="error",
    basis="common practice",
    cure="Measure the way along the cable route to the nearest place for a supply.",
    judge=_judge,
    slot="power",
)
