"""Rule: there is a way for the lead from the lock to a face of its leaf."""

from collections.abc import Iterable

from hwsched.rules.reading import leafless, lock_form, lock_leaf, unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.solid.cavity import way_kinds
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, leaf, form = unit_part(given, fit), lock_leaf(given), lock_form(given)
    if unit is None or leafless(given) or unit.kind != "surface-unit" or leaf is None or leaf.material is None:
        return
    if form is not None and not way_kinds(given, fit):
        yield Verdict(
            f"From a lock of the form {form} in a leaf of {leaf.material.replace('-', ' ')} no way for the lead to the "
            "face is known.",
            about=unit.number,
        )


RULE = Rule(
    id="way-for-lead",
    title="Way for the lead to the face",
    discipline="cable",
    severity="error",
    basis="common practice: glass is not drilled, and only what stands in a patch or rail can be led along it",
    cure="Place reader and unit beside the leaf, or have the leaf prepared by its maker.",
    judge=_judge,
    slot="unit",
)
