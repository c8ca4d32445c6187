"""Rule: what decides the parts is known before anything is ordered."""

from collections.abc import Iterable
from typing import Final

from hwsched.rules.reading import leafless, lock_form, lock_item, lock_leaf, removed_lock
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput

BY_FORM: Final = {
    "mortise": ("trim_key_mm", "cam_form"),
    "rim": ("trim_key_mm", "case_width_mm", "cam_form"),
    "euro-profile": ("trim_key_mm", "trim_inside_mm", "thumb_turn"),
    "bored": ("backset_mm", "cross_bore_mm", "edge_bore_mm", "function"),
}
"""Facts of the existing lock that decide the part, by its form."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    needs = [f"opening.{n}" for n in ("form", "exposure") if getattr(given.opening, n) is None]
    if not leafless(given):
        leaf, lock = lock_leaf(given), lock_item(given)
        if given.opening.rating is None:
            needs.append("opening.rating")
        if leaf is None:
            needs.append("leaf.position")
        else:
            needs += [f"leaf.{n}" for n in ("thickness_mm", "material") if getattr(leaf, n) is None]
        form = lock_form(given)
        if form is None and removed_lock(given) is not None:
            # Its form is not what is missing: another rule says that nothing is left to convert.
            pass
        elif form is None:
            needs.append("existing_item.lock_form")
        elif lock is not None:
            needs += [f"existing_item.{n}" for n in BY_FORM.get(form, ()) if getattr(lock, n) is None]
    if needs:
        yield unknown(tuple(needs), "order")


RULE = Rule(
    id="known-before-order",
    title="Known before it is ordered",
    discipline="survey",
    severity="error",
    basis="common practice: the existing lock and the leaf decide the parts",
    cure="Go back and measure; order nothing for this opening before.",
    judge=_judge,
)
