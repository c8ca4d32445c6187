"""Rule: the leaf is high enough and thick enough for the lock's case that is said to stand in it."""

from collections.abc import Iterable

from hwsched.rules.reading import leaf_span_mm, lock_item, lock_leaf
from hwsched.rules.rounding import MEASURE_MM, allowance, by_rounding
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.edge import pocket_span
from hwsched.rules.wording import length, unless_glass
from hwsched.values import Fit, Item, Leaf, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf, lock = lock_leaf(given), lock_item(given)
    if leaf is None or lock is None or lock.lock_form not in ("mortise", "euro-profile"):
        return
    yield from _height(given, lock, leaf)
    # On glass it stands in a patch or rail that is thicker than the leaf.
    if leaf.material != "glass":
        yield from unless_glass(leaf, _thickness(given, lock, leaf, limits))


def _thickness(given: OpeningInput, lock: Item, leaf: Leaf, limits: Limits) -> Iterable[Verdict]:
    thickness, wide = leaf.thickness_mm, lock.case_width_mm
    if thickness is None or wide is None:
        return
    needed = wide + 2 * abs(lock.case_offset_mm or 0.0) + 2 * limits["wall_mm"]
    # An offset tells that a case stands off the middle on purpose: its own rounding excuses no case that is too wide.
    facts = (("leaf.thickness_mm", thickness, 1.0), ("existing_item.case_width_mm", wide, 1.0))
    allowed = allowance(facts, ())
    if MEASURE_MM < needed - thickness <= allowed.mm:
        yield by_rounding(given, allowed, needed - thickness, "lock")
    elif thickness < needed - MEASURE_MM:
        yield Verdict(
            f"The lock's case of {length(given, wide)} wants a leaf of {length(given, needed)}; the leaf is said to be "
            f"{length(given, thickness)}, short by {length(given, needed - thickness)}.",
            values={"leaf_mm": thickness, "needed_mm": needed, "short_mm": needed - thickness},
            about="lock",
        )


def _height(given: OpeningInput, lock: Item, leaf: Leaf) -> Iterable[Verdict]:
    pocket, span, y = pocket_span(lock), leaf_span_mm(given, leaf), lock.cylinder_height_mm
    if pocket is None or span is None or y is None or leaf.undercut_mm is None:
        return
    # Of a cylinder that is outside itself another rule speaks.
    if not span[0] < y < span[1]:
        return
    out = max(span[0] - pocket[0], pocket[1] - span[1])
    if out > MEASURE_MM:
        yield Verdict(
            f"The lock's case is said to reach from {length(given, pocket[0])} to {length(given, pocket[1])} above the "
            f"floor, the leaf from {length(given, span[0])} to {length(given, span[1])}: {length(given, out)} of the "
            "case stands out of it.",
            values={"case_low_mm": pocket[0], "case_top_mm": pocket[1], "out_mm": out},
            about="lock",
        )


RULE = Rule(
    id="case-within-leaf",
    title="Leaf high and thick enough for the lock's case",
    discipline="survey",
    severity="error",
    basis="86 preparation: 1 1/4 in case opening leaves 1/4 in each side of a 1 3/4 in leaf; the least is our own",
    cure="Measure leaf thickness and case again: one of them is wrong.",
    judge=_judge,
    slot="lock",
    limits=(
        Limit(
            "wall_mm",
            0.8,
            "Least wall on each side of the case: the face sheet.",
            "ANSI/SDI A250.8, 20 gauge",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
