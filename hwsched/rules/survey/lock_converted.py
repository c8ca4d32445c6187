"""Rule: the only lock of a leaf is not said to come off, where it is what is converted."""

from collections.abc import Iterable

from hwsched.rules.reading import leafless, removed_lock
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    lock = None if leafless(given) else removed_lock(given)
    if lock is not None:
        form = f" of the form {lock.lock_form}" if lock.lock_form is not None else ""
        yield Verdict(
            f"The only lock of the leaf{form} is said to be removed: nothing is left that could be converted.",
            values={"locks": 0.0},
            about="lock",
        )


RULE = Rule(
    id="lock-converted",
    title="A lock that is converted stays",
    discipline="survey",
    severity="error",
    basis="common practice: the existing lock decides the cylinder or lock that replaces it",
    cure="Say that the lock is replaced; or survey the one that stays; or choose the part by hand.",
    judge=_judge,
)
