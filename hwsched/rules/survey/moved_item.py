"""Rule: where an item is moved, its new place is thought of."""

from collections.abc import Iterable

from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.solid.footprints import face_of
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    moved = [i for i in given.items if i.disposition == "move" and face_of(i) in ("inside", "both", "edge")]
    if moved:
        kinds = ", ".join(sorted({(item.kind or "item").replace("-", " ") for item in moved}))
        yield Verdict(
            f"To be moved: {kinds}. The new place is not in the survey, so nothing keeps the unit off it.",
            values={"items": float(len(moved))},
            about=kinds,
        )


RULE = Rule(
    id="moved-item",
    title="New place of a moved item",
    discipline="survey",
    severity="warning",
    basis="common practice",
    cure="Record the item at its new place as one that stays.",
    judge=_judge,
)
