"""Rule: a threaded cylinder does not stand farther proud of the trim than a wrench or a hand can grip."""

from collections.abc import Iterable

from hwsched.rules.reading import lock_part
from hwsched.rules.rounding import EQUAL_MM, by_rounding
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.threaded import heights_in, stack_allowance
from hwsched.rules.wording import length
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    part, stack = lock_part(given, fit), fit.stack
    if part is None or stack is None or stack.form != "threaded":
        return
    allowed = limits["projection_mm"]
    off = stack_allowance(given, part, heights_in(given, fit))
    beyond = stack.projection_mm - allowed
    if EQUAL_MM < beyond <= off.mm + EQUAL_MM:
        yield by_rounding(given, off, beyond, part.number)
    elif beyond > EQUAL_MM:
        yield Verdict(
            f"The cylinder stands {length(given, stack.projection_mm)} proud of the trim behind collar and rings; "
            f"{length(given, allowed)} is the most that should be left to a wrench.",
            values={"projection_mm": stack.projection_mm, "allowed_mm": allowed},
            about=part.number,
        )


RULE = Rule(
    id="cylinder-projection",
    title="Threaded cylinder's projection",
    discipline="lock-and-cylinder",
    severity="warning",
    basis="from memory, unverified",
    cure="Take a shorter cylinder with fewer rings, or thicker trim.",
    judge=_judge,
    slot="lock",
    limits=(
        Limit(
            "projection_mm",
            12.7,
            "How far the head may stand proud of the trim.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
