"""Rule: the control unit stays on the inside."""

from collections.abc import Iterable

from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    # What lets the lock go is decided in the unit: on the key side it would be in reach of whoever wants in.
    if fit.placement is not None and fit.placement.face == "key":
        yield Verdict("The control unit stands on the key side, where anybody can reach it.", about="unit")


RULE = Rule(
    id="unit-on-inside",
    title="Unit on the inside",
    discipline="placement",
    severity="error",
    basis="common practice",
    cure="Place the unit on the inside face, in the leaf's edge or behind the wall.",
    judge=_judge,
    slot="unit",
)
