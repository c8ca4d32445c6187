"""Rule: no lite or louvre is said to be where the lock's cylinder or case is."""

from collections.abc import Iterable, Iterator

from hwsched.calc.opening.placement import Rect
from hwsched.rules.practice import distance_mm
from hwsched.rules.reading import CASE_IN_LEAF, leafless, lock_item, lock_leaf, on_leaf
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import gap_mm
from hwsched.rules.solid.footprints import rectangle
from hwsched.rules.wording import length, unless_glass
from hwsched.values import Fit, Item, Leaf, OpeningInput

_CUT_OUT = ("lite", "louvre")


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf, lock = lock_leaf(given), lock_item(given)
    if leaf is not None and lock is not None and not leafless(given) and leaf.material != "glass":
        yield from unless_glass(leaf, _in_one_place(given, lock, leaf, limits))


def _in_one_place(given: OpeningInput, lock: Item, leaf: Leaf, limits: Limits) -> Iterable[Verdict]:
    for item in given.items:
        rect = rectangle(item) if item.kind in _CUT_OUT and on_leaf(item, leaf) else None
        if rect is None:
            continue
        for name, body in _bodies(lock):
            overlap = -gap_mm(rect, body)
            if overlap > limits["overlap_mm"]:
                yield Verdict(
                    f"The {item.kind} is said to reach from {length(given, rect.x0)} to {length(given, rect.x1)} off "
                    f"the lock edge and from {length(given, rect.y0)} to {length(given, rect.y1)} above the floor, the "
                    f"lock's {name} from {length(given, body.x0)} to {length(given, body.x1)} and from "
                    f"{length(given, body.y0)} to {length(given, body.y1)}: {length(given, overlap)} of both are one "
                    "place.",
                    values={"overlap_mm": overlap, "allowed_mm": limits["overlap_mm"]},
                    about=item.kind or "lite",
                )
                # Over the cylinder and over its case is one slip.
                break


def _bodies(lock: Item) -> Iterator[tuple[str, Rect]]:
    x, y = lock.backset_mm, lock.cylinder_height_mm
    if x is not None and y is not None:
        half = distance_mm("cylinder-hole") / 2
        yield "cylinder", Rect(x - half, y - half, x + half, y + half)
    above, high, deep = lock.case_above_mm, lock.case_height_mm, lock.case_depth_mm
    if lock.lock_form in CASE_IN_LEAF and y is not None and above is not None and high is not None and deep is not None:
        yield "case", Rect(0.0, y + above - high, deep, y + above)


RULE = Rule(
    id="lite-clear-of-lock",
    title="Lites clear of cylinder and case",
    discipline="survey",
    severity="error",
    basis="geometry: where glass is there is no lock",
    cure="Measure lite and lock again: one of them is wrong.",
    judge=_judge,
    limits=(
        Limit(
            "overlap_mm",
            6.35,
            "Overlap that is taken for a survey's tolerance.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
