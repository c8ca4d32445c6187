"""Rule: a key and its unit are programmed together before work starts at the opening."""

from collections.abc import Iterable

from hwsched.rules.reading import unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit = unit_part(given, fit)
    if unit is None:
        return
    yield Verdict(
        "Program a key and this unit together, with its cells or its supply connected, and try them before the old "
        "cylinder comes out; set the unit's clock.",
        about=unit.number,
    )


RULE = Rule(
    id="programmed-before-work",
    title="Key and unit programmed before work starts",
    discipline="commissioning",
    severity="note",
    basis="common practice",
    cure="Do it at the bench, and tick it in the packet.",
    judge=_judge,
)
