"""Rule: an electric strike or electromagnetic lock that the unit drives has its power from the unit's supply."""

from collections.abc import Iterable

from hwsched.rules.reading import electric_release, unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit = unit_part(given, fit)
    if unit is not None and fit.power == "battery" and electric_release(given):
        yield Verdict(
            "An electric strike or electromagnetic lock is on this opening; cells in the unit cannot feed it.",
            about=unit.number,
        )


RULE = Rule(
    id="release-powered",
    title="Electric release powered",
    discipline="power",
    severity="error",
    basis="common practice: the unit drives the strike, which draws tenths of an ampere (trade sizing guide)",
    cure="Feed the opening from a supply and survey the distance to it, or take the release off.",
    judge=_judge,
    slot="power",
)
