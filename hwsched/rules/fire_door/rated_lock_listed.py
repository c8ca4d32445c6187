"""Rule: lock listed for the rated opening."""

from collections.abc import Iterable
from typing import Final

from hwsched.rules.listing import judge_listed
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput

ROLES: Final = ("cylinder", "lock", "reader")
"""Roles whose parts stand on the opening."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    return judge_listed(given, fit, ROLES)


RULE = Rule(
    id="rated-lock-listed",
    title="Lock listed for the rated opening",
    discipline="fire-door",
    severity="error",
    basis="NFPA 80 (2016), read in secondary copies: what is added to a rated opening needs its own fire listing; "
    "UL 1034 and UL 294 say nothing of fire",
    cure="Take a part whose listing names rated leaves. A UL 294 or UL 1034 mark alone does not.",
    judge=_judge,
    slot="lock",
    defers=True,
)
