"""Rule: the panel is neither thicker nor thinner than the cabinet bolt grips."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import GRIP_LOW_MM, GRIP_MM
from hwsched.rules.reading import lock_leaf, lock_part, part_fact
from hwsched.rules.rounding import EQUAL_MM, allowance, by_rounding
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    part, leaf = lock_part(given, fit), lock_leaf(given)
    if part is None or part.kind != "cabinet-lock":
        return
    low, high = part.number_of(GRIP_LOW_MM), part.number_of(GRIP_MM)
    thickness = leaf.thickness_mm if leaf is not None else None
    facts = {part_fact(part, GRIP_LOW_MM): low, part_fact(part, GRIP_MM): high, "leaf.thickness_mm": thickness}
    if low is None or high is None or thickness is None:
        yield unknown(tuple(fact for fact, value in facts.items() if value is None), part.number)
        return
    short = max(thickness - high, low - thickness)
    allowed = allowance([("leaf.thickness_mm", thickness, 1.0)], (low, high))
    if short <= EQUAL_MM:
        return
    if short <= allowed.mm + EQUAL_MM:
        yield by_rounding(given, allowed, short, part.number)
        return
    thick = thickness > high
    yield Verdict(
        f"The panel is {length(given, thickness)} thick, the bolt grips {length(given, low)} to {length(given, high)}: "
        f"{'too thick' if thick else 'too thin'} by {length(given, short)}.",
        "" if thick else "Take a cabinet bolt with a shorter body, or a packing behind the panel.",
        values={"leaf_mm": thickness, "grip_low_mm": low, "grip_mm": high, "short_mm": short},
        about=part.number,
    )


RULE = Rule(
    id="cabinet-grip",
    title="Cabinet bolt grips the panel",
    discipline="lock-and-cylinder",
    severity="error",
    basis="common practice",
    cure="Take a cabinet bolt with a longer body.",
    judge=_judge,
    slot="lock",
)
