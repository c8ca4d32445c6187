"""Rule: a rated leaf latches by itself; a dead bolt is no latch."""

from collections.abc import Iterable

from hwsched.rules.reading import LATCHING, entry, lock_leaf, on_leaf, rated, remains
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.ways_out import is_door, latches
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf = lock_leaf(given)
    if not rated(given) or not is_door(given) or leaf is None:
        return
    # A new bored lever lock brings its own latch.
    if any((part := entry(given, each)) is not None and part.kind == "bored-lever-lock" for each in fit.parts):
        return
    holds = [latches(i) for i in given.items if i.kind in LATCHING and remains(i) and on_leaf(i, leaf)]
    if any(holds):
        return
    if None in holds:
        yield unknown(("existing_item.latch_form",), "latch")
    else:
        yield Verdict(
            "Nothing on this rated leaf latches by itself: a dead bolt or a roller is no latch.", about="latch"
        )


RULE = Rule(
    id="rated-latch",
    title="A rated leaf latches",
    discipline="fire-door",
    severity="error",
    basis="NFPA 80 commentary: positive latching; a deadbolt alone is none (secondary copies)",
    cure="Keep or fit a lock with an active latch bolt that is listed for the rating.",
    judge=_judge,
    defers=True,
)
