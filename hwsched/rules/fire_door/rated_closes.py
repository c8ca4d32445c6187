"""Rule: a rated leaf closes and latches by itself, and does so with the new parts on it."""

from collections.abc import Iterable

from hwsched.rules.reading import rated
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.ways_out import is_door
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if not rated(given) or not is_door(given):
        return
    told = [leaf.self_closes for leaf in given.leaves]
    if False in told:
        yield Verdict("A leaf of this rated opening does not close and latch by itself.", about="closer")
    if None in told:
        yield unknown(("leaf.self_closes",), "closer")
    if any(item.kind == "closer" and item.disposition == "remove" for item in given.items):
        yield Verdict("The closer of this rated opening comes off and nothing takes its place.", about="closer")
    elif told and all(told) and (fit.parts or fit.placement is not None):
        yield Verdict(
            "The leaf closed and latched by itself when it was surveyed; with the new parts on it that is tried "
            "again from "
            "every position.",
            about="closer",
            severity="note",
        )


RULE = Rule(
    id="rated-closes",
    title="A rated leaf closes and latches by itself",
    discipline="fire-door",
    severity="error",
    basis="NFPA 80, chapters 5 and 6: self-closing and positive latching, tried after maintenance; from memory, "
    "unverified",
    cure="Have the closer mended or set before the work, and try it after: from a hand's breadth, from half, "
    "from wide open.",
    judge=_judge,
    defers=True,
)
