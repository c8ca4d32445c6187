"""Rule: what decides holes and places is known before anything is drilled."""

from collections.abc import Iterable
from typing import Final

from hwsched.rules.reading import leafless, lock_form, lock_item, lock_leaf, on_leaf, remains, stile_mm, unit_in_lock
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.solid.footprints import face_of, missing
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput

BY_FORM: Final = {
    "mortise": ("case_height_mm", "case_above_mm", "case_width_mm"),
    "euro-profile": ("case_height_mm", "case_above_mm", "case_width_mm"),
    "rim": ("case_height_mm", "case_above_mm", "case_depth_mm"),
}
"""Facts of the existing lock that decide holes, by its form."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf, lock = lock_leaf(given), lock_item(given)
    if leafless(given) or leaf is None:
        return
    needs = [f"leaf.{n}" for n in ("width_mm", "height_mm", "thickness_mm", "material") if getattr(leaf, n) is None]
    if given.opening.rating is None:
        needs.append("opening.rating")
    has_stile, stile = stile_mm(leaf)
    if has_stile and stile is None:
        needs.append("leaf.stile_mm")
    if lock is not None:
        facts = ("backset_mm", "cylinder_height_mm", *BY_FORM.get(lock_form(given) or "", ()))
        needs += [f"existing_item.{n}" for n in facts if getattr(lock, n) is None]
        if lock.leaf is None and len(given.leaves) > 1 and given.point.others:
            needs.append("existing_item.leaf")
    # A unit in the lock's case takes no place on a face.
    for item in () if unit_in_lock(given, fit) else given.items:
        # What is known of the other locks that are converted is asked at their own lock points.
        if item is lock or item.id in given.point.others or item.kind is None:
            continue
        if not remains(item) or not on_leaf(item, leaf):
            continue
        if face_of(item) in ("inside", "both"):
            needs += missing(item)
    if needs:
        yield unknown(tuple(needs), "drill")


RULE = Rule(
    id="known-before-drill",
    title="Known before it is drilled",
    discipline="survey",
    severity="error",
    basis="common practice: the leaf and what stands on it decide where the unit goes",
    cure="Go back and measure; drill nothing at this opening before.",
    judge=_judge,
)
