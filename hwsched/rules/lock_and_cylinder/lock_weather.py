"""Rule: what stands in the weather on the key side of an outer opening is made for it."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import EXPOSURE
from hwsched.rules.reading import lock_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    part, exposure = lock_part(given, fit), given.opening.exposure
    if part is None or part.kind == "cabinet-lock" or exposure == "interior":
        return
    made_for = part.text_of(EXPOSURE)
    if made_for == "exterior":
        return
    if exposure is None:
        yield unknown(("opening.exposure",), part.number)
    elif made_for is None:
        yield unknown((f"part {part.number}.exposure",), part.number)
    else:
        yield Verdict("The opening is exterior; this part is made for interior use.", about=part.number)


RULE = Rule(
    id="lock-weather",
    title="Lock made for the weather",
    discipline="lock-and-cylinder",
    severity="error",
    basis="common practice; the maker's declaration",
    cure="Take the part in its exterior version.",
    judge=_judge,
    slot="lock",
)
