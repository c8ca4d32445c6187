"""Rule: holes that earlier hardware has left in a rated leaf are filled as the standard has it."""

from collections.abc import Iterable

from hwsched.rules.reading import rated
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.ways_out import is_door
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput

_NO_REPAIR = {
    "open": "are open",
    "covered": "are covered by a plate, which is no repair",
    "filler": "are filled with putty or body filler, which is no repair",
}


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if not rated(given) or not is_door(given):
        return
    told = [leaf.unused_holes for leaf in given.leaves]
    if None in told:
        yield unknown(("leaf.unused_holes",), "unused holes")
    for state in dict.fromkeys(told):
        if state in _NO_REPAIR:
            yield Verdict(f"Unused holes in this rated leaf {_NO_REPAIR[state]}.", about="unused holes")


RULE = Rule(
    id="rated-unused-holes",
    title="Unused holes in a rated leaf filled",
    discipline="fire-door",
    severity="error",
    basis="NFPA 80, 5.x (2013: 5.5.7), left-over fastener holes, secondary copies: steel fasteners that fill them, the "
    "leaf's own material, or a listed material by its instructions",
    cure="Have them filled by one of the three ways before the new parts cover them, and record it.",
    judge=_judge,
    defers=True,
)
