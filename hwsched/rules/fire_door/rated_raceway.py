"""Rule: no way for the lead is bored along the inside of a rated leaf."""

from collections.abc import Iterable

from hwsched.rules.reading import rated
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    carries = rated(given)
    if carries is False:
        return
    for hole in fit.holes:
        if hole.purpose != "channel":
            continue
        if carries is None:
            yield unknown(("opening.rating",), hole.name)
        else:
            long = f" of {length(given, hole.depth_mm)}" if hole.depth_mm is not None else ""
            yield Verdict(
                f"The {hole.name}{long} runs inside the rated leaf: stop, a raceway is bored only where the listing "
                "laboratory and the door maker's listing permit it.",
                about=hole.name,
            )


RULE = Rule(
    id="rated-raceway",
    title="No raceway bored in a rated leaf",
    discipline="fire-door",
    severity="error",
    basis="NFPA 80 (2016), raceways in rated leaves, secondary copies",
    cure="Place the unit opposite the cylinder, or have the leaf prepared under label service.",
    judge=_judge,
    slot="unit",
    defers=True,
)
