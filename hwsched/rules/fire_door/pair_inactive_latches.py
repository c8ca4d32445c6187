"""Rule: the inactive leaf of a rated pair latches."""

from collections.abc import Iterable

from hwsched.rules.reading import LATCHING, rated, remains
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.ways_out import latches
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput

_ABOUT = "inactive leaf"


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if not rated(given) or given.opening.form != "pair":
        return
    # Bolts stand on the inactive leaf, though the survey need not say so; any other lock only where it does.
    there = [
        item
        for item in given.items
        if item.kind in LATCHING and remains(item)
        and (item.leaf == "inactive" or (item.kind == "flush-bolt" and item.leaf is None))
    ]  # fmt: skip
    told = [True if item.kind == "flush-bolt" and item.bolt_form else latches(item) for item in there]
    if any(told):
        return
    if not there or None in told:
        fact = "bolt_form" if not there or any(item.kind == "flush-bolt" for item in there) else "latch_form"
        yield unknown((f"existing_item.{fact}",), _ABOUT)
    else:
        yield Verdict("Nothing latches the inactive leaf of this rated pair.", about=_ABOUT)


RULE = Rule(
    id="pair-inactive-latches",
    title="Inactive leaf of a rated pair latches",
    discipline="fire-door",
    severity="error",
    basis="NFPA 80, chapter 6: both leaves of a rated pair latch; from memory, unverified",
    cure="Survey what holds the inactive leaf; where nothing does, have bolts fitted that are listed for the pair.",
    judge=_judge,
    defers=True,
)
