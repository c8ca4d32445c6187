"""Rule: on an egress path no key is needed from inside."""

from collections.abc import Iterable

from hwsched.rules.reading import lock_item
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    lock = lock_item(given)
    if lock is None or given.opening.egress == "none":
        return
    # A deadbolt is a deadlock, whether or not the survey names its function.
    if lock.function != "deadlock" and not (lock.kind == "deadbolt" and lock.function is None):
        return
    # Nobody is inside a cabinet, and a gate is no exit unless the survey says so.
    if given.opening.form in ("cabinet", "gate") and given.opening.egress is None:
        return
    if given.opening.egress is None or lock.thumb_turn is None:
        fact = "opening.egress" if given.opening.egress is None else "existing_item.thumb_turn"
        yield unknown((fact,), "lock")
    elif not lock.thumb_turn:
        yield Verdict(
            "A deadlock without a thumb turn stands on an egress path: from inside it needs a key.", about="lock"
        )


RULE = Rule(
    id="free-inside",
    title="No key needed from inside",
    discipline="egress",
    severity="error",
    basis="IBC 1010.2 (2021), text; NFPA 101, 7.2.1.5: readily openable from the egress side without a key",
    cure="Replace the lock by one that opens freely from inside with power on, power off and battery dead.",
    judge=_judge,
    defers=True,
)
