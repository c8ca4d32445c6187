"""Rule: a unit that is only bonded belongs on glass."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import GLASS_MOUNT, SCREWS
from hwsched.rules.reading import lock_leaf, unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, leaf = unit_part(given, fit), lock_leaf(given)
    if unit is None or leaf is None or leaf.material in ("glass", None):
        return
    if unit.flag_of(GLASS_MOUNT) and unit.number_of(SCREWS) == 0:
        yield Verdict(f"This unit is bonded, it takes no screws, and the leaf is {leaf.material}.", about=unit.number)


RULE = Rule(
    id="unit-for-no-glass",
    title="Bonded unit only on glass",
    discipline="placement",
    severity="error",
    basis="common practice",
    cure="Take a unit that is screwed to the leaf.",
    judge=_judge,
    slot="unit",
)
