"""Rule: a mortise case is no deeper than the stile that holds it is wide, and no longer than its leaf is high."""

from collections.abc import Iterable

from hwsched.rules.reading import CASE_IN_LEAF, lock_item, lock_leaf, stile_mm
from hwsched.rules.rounding import MEASURE_MM, allowance, by_rounding
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import length, unless_glass
from hwsched.values import Fit, Item, Leaf, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf, lock = lock_leaf(given), lock_item(given)
    # On glass the case stands in a patch or rail, whatever its leaf measures.
    if leaf is not None and lock is not None and leaf.material != "glass":
        yield from unless_glass(leaf, _too_large(given, lock, leaf))


def _too_large(given: OpeningInput, lock: Item, leaf: Leaf) -> Iterable[Verdict]:
    high, deep = lock.case_height_mm, lock.case_depth_mm
    if high is not None and leaf.height_mm is not None and high > leaf.height_mm + MEASURE_MM:
        facts = (("existing_item.case_height_mm", high, 1.0), ("leaf.height_mm", leaf.height_mm, 1.0))
        if high - leaf.height_mm <= (allowed := allowance(facts, ())).mm:
            yield by_rounding(given, allowed, high - leaf.height_mm, "lock")
        else:
            yield Verdict(
                f"The lock's case is said to be {length(given, high)} high, its leaf {length(given, leaf.height_mm)}: "
                f"{length(given, high - leaf.height_mm)} too long.",
                "Measure case and leaf height again: one of them is wrong.",
                values={"case_mm": high, "leaf_mm": leaf.height_mm, "short_mm": high - leaf.height_mm},
                about="lock",
            )
    has, stile = stile_mm(leaf)
    if lock.lock_form in CASE_IN_LEAF and has and stile is not None and deep is not None and deep > stile + MEASURE_MM:
        facts = (("existing_item.case_depth_mm", deep, 1.0), ("leaf.stile_mm", stile, 1.0))
        if deep - stile <= (allowed := allowance(facts, ())).mm:
            yield by_rounding(given, allowed, deep - stile, "lock")
        else:
            yield Verdict(
                f"The lock's case is said to be {length(given, deep)} deep, the stile that holds it "
                f"{length(given, stile)} wide: {length(given, deep - stile)} too deep.",
                values={"case_mm": deep, "stile_mm": stile, "short_mm": deep - stile},
                about="lock",
            )


RULE = Rule(
    id="case-within-stile",
    title="Lock case within stile and leaf",
    discipline="survey",
    severity="error",
    basis="geometry: behind a stile lies glass or a panel",
    cure="Measure stile and case again: one of them is wrong.",
    judge=_judge,
)
