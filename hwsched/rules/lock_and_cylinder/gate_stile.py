"""Rule: a gate lock's case is no wider than the gate's stile and the plate that carries it."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import CASE_WIDTH_MM
from hwsched.rules.reading import lock_leaf, lock_part
from hwsched.rules.rounding import EQUAL_MM, allowance, by_rounding
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    part, leaf = lock_part(given, fit), lock_leaf(given)
    if part is None or part.kind != "gate-lock":
        return
    width = part.number_of(CASE_WIDTH_MM)
    # A plate that is welded on counts as stile: what carries the case is asked, not what the gate was built with.
    stile = leaf.stile_mm if leaf is not None else None
    if width is None or stile is None:
        yield unknown((f"part {part.number}.case_width_mm" if width is None else "leaf.stile_mm",), part.number)
    elif EQUAL_MM < width - stile <= (allowed := allowance([("leaf.stile_mm", stile, 1.0)], (width,))).mm + EQUAL_MM:
        yield by_rounding(given, allowed, width - stile, part.number)
    elif width > stile + EQUAL_MM:
        yield Verdict(
            f"The lock's case is {length(given, width)} wide, the gate's stile {length(given, stile)}: short by "
            f"{length(given, width - stile)}.",
            values={"stile_mm": stile, "needed_mm": width, "short_mm": width - stile},
            about=part.number,
        )


RULE = Rule(
    id="gate-stile",
    title="Gate lock's case on the stile",
    discipline="lock-and-cylinder",
    severity="error",
    basis="common practice",
    cure="Have a mounting plate welded to the gate and survey its width as the stile, or take a narrower lock.",
    judge=_judge,
    slot="lock",
)
