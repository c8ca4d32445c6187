"""Rule: a weld-on gate lock goes onto steel only."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import MOUNTING
from hwsched.rules.reading import lock_leaf, lock_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput

_WELDABLE = ("steel-gate",)


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    part, leaf = lock_part(given, fit), lock_leaf(given)
    if part is None or part.kind != "gate-lock" or part.text_of(MOUNTING) != "weld-on":
        return
    material = leaf.material if leaf is not None else None
    if material is None:
        yield unknown(("leaf.material",), part.number)
    elif material not in _WELDABLE:
        yield Verdict(f"A weld-on lock cannot be fixed to a leaf of {material.replace('-', ' ')}.", about=part.number)


RULE = Rule(
    id="gate-mounting",
    title="Weld-on gate lock on steel only",
    discipline="lock-and-cylinder",
    severity="error",
    basis="common practice",
    cure="Take a bolt-on lock.",
    judge=_judge,
    slot="lock",
)
