"""Rule: a fixed reader's body goes into what carries it."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import DEPTH_MM
from hwsched.rules.reading import leafless, lock_leaf, lock_part
from hwsched.rules.rounding import EQUAL_MM, allowance, by_rounding
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    part, leaf = lock_part(given, fit), lock_leaf(given)
    if part is None or part.kind != "fixed-reader" or leafless(given):
        return
    depth = part.number_of(DEPTH_MM)
    thickness = leaf.thickness_mm if leaf is not None else None
    if depth is None or thickness is None:
        yield unknown((f"part {part.number}.depth_mm" if depth is None else "leaf.thickness_mm",), part.number)
        return
    allowed = allowance([("leaf.thickness_mm", thickness, 1.0)], (depth,))
    if EQUAL_MM < depth - thickness <= allowed.mm + EQUAL_MM:
        yield by_rounding(given, allowed, depth - thickness, part.number)
    elif depth > thickness + EQUAL_MM:
        yield Verdict(
            f"The reader's body is {length(given, depth)} deep, the leaf {length(given, thickness)} thick: it would "
            f"stand {length(given, depth - thickness)} out of the inside face.",
            values={"depth_mm": depth, "leaf_mm": thickness, "short_mm": depth - thickness},
            about=part.number,
        )


RULE = Rule(
    id="reader-in-leaf",
    title="Reader's body within the leaf",
    discipline="lock-and-cylinder",
    severity="error",
    basis="common practice",
    cure="Take a shallower reader, or mount it beside the leaf.",
    judge=_judge,
    slot="lock",
)
