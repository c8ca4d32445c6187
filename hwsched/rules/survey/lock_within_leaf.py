"""Rule: the lock lies within its leaf."""

from collections.abc import Iterable

from hwsched.rules.reading import leaf_reach_mm, lock_item, lock_leaf
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf, lock = lock_leaf(given), lock_item(given)
    if leaf is None or lock is None:
        return
    x, y = lock.backset_mm, lock.cylinder_height_mm
    if x is not None and leaf.width_mm is not None and x >= leaf.width_mm:
        yield Verdict(
            f"The backset of {length(given, x)} is outside the leaf's width of {length(given, leaf.width_mm)}.",
            values={"backset_mm": x, "width_mm": leaf.width_mm},
            about="lock",
        )
    if y is None or leaf.height_mm is None:
        return
    reach = leaf_reach_mm(given, leaf)
    if reach is None:
        yield unknown(("leaf.undercut_mm",), "lock")
        return
    low, high = reach
    if not low < y < high:
        yield Verdict(
            f"The cylinder stands {length(given, y)} above the floor; the leaf reaches from {length(given, low)} to "
            f"{length(given, high)}.",
            values={"cylinder_mm": y, "low_mm": low, "high_mm": high},
            about="lock",
        )


RULE = Rule(
    id="lock-within-leaf",
    title="Lock within the leaf",
    discipline="survey",
    severity="error",
    basis="geometry",
    cure="Measure backset, cylinder height and leaf again.",
    judge=_judge,
    slot="unit",
)
