"""Rule: a lever lock keeps the function of the lock that it replaces."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import FUNCTION
from hwsched.rules.reading import lock_item, lock_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    part, lock = lock_part(given, fit), lock_item(given)
    if part is None or part.kind != "bored-lever-lock":
        return
    has, was = part.text_of(FUNCTION), lock.function if lock is not None else None
    if was is None or has is None:
        yield unknown(("existing_item.function" if was is None else f"part {part.number}.function",), part.number)
    # Storeroom, classroom and passage differ in who gets out and in: a change of function is decided, not slipped in
    # with a new lock.
    elif has != was:
        yield Verdict(f"The lock has the {has} function; the opening's function is {was}.", about=part.number)


RULE = Rule(
    id="lock-function",
    title="Function of the opening kept",
    discipline="lock-and-cylinder",
    severity="error",
    basis="functions of ANSI/BHMA A156.2 and A156.13, secondary copy",
    cure="Take the lock with the opening's function, or record the change of function in the survey.",
    judge=_judge,
    slot="lock",
)
