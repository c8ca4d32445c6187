"""Rule: the facts from which the unit's place follows are known."""

from collections.abc import Iterable

from hwsched.rules.reading import leaf_span_mm, leafless, lock_form, lock_item, lock_leaf, unit_in_lock, unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.solid.footprints import missing
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if unit_part(given, fit) is None or unit_in_lock(given, fit):
        return
    leaf, lock = lock_leaf(given), lock_item(given)
    if leafless(given):
        if lock is None or lock.cylinder_height_mm is None:
            yield unknown(("existing_item.cylinder_height_mm",), "unit")
        return
    if leaf is None:
        yield unknown(("leaf.position",), "unit")
        return
    needs = [f"leaf.{n}" for n in ("width_mm", "height_mm", "thickness_mm", "material") if getattr(leaf, n) is None]
    if not needs and leaf_span_mm(given, leaf) is None:
        needs.append("leaf.undercut_mm")
    if lock is None:
        needs.append("existing_item.lock_form")
    else:
        facts = ["backset_mm", "cylinder_height_mm"]
        if lock.lock_form in ("mortise", "euro-profile") and leaf.material != "glass":
            facts += ["case_above_mm", "case_width_mm"]
        needs += [f"existing_item.{n}" for n in facts if getattr(lock, n) is None]
        if leaf.material == "glass" and lock_form(given) in ("mortise", "euro-profile"):
            needs += missing(lock)
    if needs:
        yield unknown(tuple(needs), "unit")


RULE = Rule(
    id="unit-place-known",
    title="Facts for the unit's place known",
    discipline="placement",
    severity="error",
    basis="common practice",
    cure="Measure what is missing.",
    judge=_judge,
    slot="unit",
)
