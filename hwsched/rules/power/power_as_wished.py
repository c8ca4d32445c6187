"""Rule: the power source is the one that was asked for."""

from collections.abc import Iterable

from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    wish = given.opening.power_wish
    if wish in ("battery", "supply") and fit.power in ("battery", "supply") and fit.power != wish:
        yield Verdict(f"The survey asks for {wish}; the fit has {fit.power}.", about=fit.power)


RULE = Rule(
    id="power-as-wished",
    title="Power source as wished",
    discipline="power",
    severity="error",
    basis="the survey",
    cure="Take a unit that can be fed as wished, or change the wish.",
    judge=_judge,
    slot="power",
)
