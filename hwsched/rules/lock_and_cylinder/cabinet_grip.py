"""Rule: the panel is no thicker than the cabinet bolt grips."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import GRIP_MM
from hwsched.rules.clearances import TOUCH_MM
from hwsched.rules.reading import lock_leaf, lock_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    part, leaf = lock_part(given, fit), lock_leaf(given)
    if part is None or part.kind != "cabinet-lock":
        return
    grip = part.number_of(GRIP_MM)
    thickness = leaf.thickness_mm if leaf is not None else None
    if grip is None or thickness is None:
        yield unknown((f"part {part.number}.grip_mm" if grip is None else "leaf.thickness_mm",), part.number)
    elif thickness > grip + TOUCH_MM:
        yield Verdict(
            f"The panel is {length(given, thickness)} thick, the bolt grips {length(given, grip)}: short by "
            f"{length(given, thickness - grip)}.",
            values={"leaf_mm": thickness, "grip_mm": grip, "short_mm": thickness - grip},
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
