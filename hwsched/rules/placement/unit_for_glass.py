"""Rule: on glass only a unit that may be bonded."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import GLASS_MOUNT
from hwsched.rules.reading import lock_leaf, unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, leaf = unit_part(given, fit), lock_leaf(given)
    if unit is None or leaf is None or leaf.material not in ("glass", None):
        return
    if leaf.material is None:
        yield unknown(("leaf.material",), unit.number)
        return
    mounts = unit.flag_of(GLASS_MOUNT)
    if unit.kind == "surface-unit" and mounts is None:
        yield unknown((f"part {unit.number}.glass_mount",), unit.number)
    elif not mounts:
        yield Verdict("Glass is neither drilled nor cut, and this unit may not be bonded to glass.", about=unit.number)


RULE = Rule(
    id="unit-for-glass",
    title="Unit made for glass",
    discipline="placement",
    severity="error",
    basis="common practice: tempered glass bursts when it is drilled",
    cure="Take a unit that is made to be bonded to glass, or place the unit beside the leaf.",
    judge=_judge,
    slot="unit",
)
