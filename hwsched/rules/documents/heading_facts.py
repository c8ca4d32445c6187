"""Rule: the schedule's heading can say hand, size, materials and rating."""

from collections.abc import Iterable

from hwsched.rules.reading import leafless, lock_leaf
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if leafless(given):
        return
    leaf, opening = lock_leaf(given), given.opening
    needs = [f"opening.{n}" for n in ("hand", "rating", "frame_material") if getattr(opening, n) is None]
    if leaf is not None:
        needs += [f"leaf.{n}" for n in ("width_mm", "height_mm", "material") if getattr(leaf, n) is None]
    if needs:
        yield unknown(tuple(needs), "heading")


RULE = Rule(
    id="heading-facts",
    title="Facts of the schedule's heading",
    discipline="documents",
    severity="warning",
    basis="heading block of a hardware schedule: hand, size, materials, label (SDI 111-D, secondary copy)",
    cure="Complete the survey.",
    judge=_judge,
)
