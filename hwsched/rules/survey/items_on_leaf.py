"""Rule: what is said to stand on the leaf stands on it."""

from collections.abc import Iterable

from hwsched.rules.reading import leaf_span_mm, lock_leaf, on_leaf
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.footprints import face_of, rectangle
from hwsched.rules.wording import length
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf = lock_leaf(given)
    if leaf is None or leaf.width_mm is None:
        return
    span = leaf_span_mm(given, leaf)
    for item in given.items:
        rect = rectangle(item)
        if rect is None or face_of(item) not in ("inside", "key", "both") or not on_leaf(item, leaf):
            continue
        off = max(-rect.x0, rect.x1 - leaf.width_mm)
        if span is not None:
            high = span[1] if leaf.undercut_mm is not None else span[1] + span[0]
            off = max(off, rect.y1 - high)
        if off > limits["over_mm"]:
            kind = (item.kind or "item").replace("-", " ")
            yield Verdict(
                f"The {kind} reaches {length(given, off)} past the leaf's edge.",
                values={"off_mm": off, "allowed_mm": limits["over_mm"]},
                about=kind,
            )


RULE = Rule(
    id="items-on-leaf",
    title="Existing items on the leaf",
    discipline="survey",
    severity="warning",
    basis="geometry",
    cure="Measure the item's place and size again.",
    judge=_judge,
    limits=(
        Limit(
            "over_mm",
            50.8,
            "How far an item may reach past the leaf, as closers and astragals do.",
            "common practice",
            unit="mm",
            low=0.0,
            high=500.0,
        ),
    ),
)
