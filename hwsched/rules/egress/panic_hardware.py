"""Rule: where panic hardware is required there is some, and it stays."""

from collections.abc import Iterable

from hwsched.rules.reading import remains
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if given.opening.egress != "panic":
        return
    # That stays: an exit device that comes off for the work leaves the opening without one.
    if not any((i.kind == "exit-device" or i.function == "exit") and remains(i) for i in given.items):
        yield Verdict("Panic hardware is required here; the survey shows no exit device that stays.", about="egress")


RULE = Rule(
    id="panic-hardware",
    title="Panic hardware where it is required",
    discipline="egress",
    severity="error",
    basis="IBC 1010.2.9; UL 305 (release at 15 lbf, 66.7 N), secondary copies",
    cure="Keep or fit a listed exit device; do not convert the opening without it.",
    judge=_judge,
    defers=True,
)
