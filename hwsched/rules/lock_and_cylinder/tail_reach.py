"""Rule: a rim cylinder's tailpiece reaches through the leaf into the case."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import BODY_LENGTH_MM, LENGTH_MM, TAIL_LENGTH_MM
from hwsched.rules.clearances import TOUCH_MM
from hwsched.rules.reading import in_role, lock_item, lock_leaf, lock_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    part = lock_part(given, fit)
    if part is None or part.kind != "rim-cylinder":
        return
    tail = in_role(given, fit, "tailpiece")
    leaf, lock = lock_leaf(given), lock_item(given)
    thickness = leaf.thickness_mm if leaf is not None else None
    trim = lock.trim_key_mm if lock is not None else None
    body = part.number_of(BODY_LENGTH_MM)
    long = tail.number_of(LENGTH_MM) if tail is not None else part.number_of(TAIL_LENGTH_MM)
    needs = [
        name
        for name, value in (
            ("leaf.thickness_mm", thickness),
            ("existing_item.trim_key_mm", trim),
            (f"part {part.number}.body_length_mm", body),
            (f"part {(tail or part).number}.{'length_mm' if tail else 'tail_length_mm'}", long),
        )
        if value is None
    ]
    if thickness is None or trim is None or body is None or long is None:
        yield unknown(tuple(needs), part.number)
        return
    # The trim holds the cylinder off the leaf, so that its back lies by as much nearer to the key face.
    needed = thickness - (body - trim) + limits["engagement_mm"]
    engagement = limits["engagement_mm"]
    if long < needed - TOUCH_MM:
        yield Verdict(
            f"The tailpiece is {length(given, long)}; {length(given, needed)} reaches {length(given, engagement)} "
            f"into the case, short by {length(given, needed - long)}.",
            values={"tail_mm": long, "needed_mm": needed, "short_mm": needed - long},
            about=part.number,
        )


RULE = Rule(
    id="tail-reach",
    title="Tailpiece reaches into the case",
    discipline="lock-and-cylinder",
    severity="error",
    basis="trade practice, from memory, unverified; the arithmetic is geometry",
    cure="Take a cylinder with a longer tailpiece, or a longer tailpiece.",
    judge=_judge,
    slot="lock",
    limits=(
        Limit(
            "engagement_mm",
            9.525,
            "How far the tailpiece must reach into the case.",
            "from memory, unverified, 3/8 in",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
