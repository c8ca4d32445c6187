"""Rule: on an egress path no key is needed from the side from which people leave."""

from collections.abc import Iterable

from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.ways_out import SIDE, held_after, holding, is_deadlock, leaving_from
from hwsched.rules.wording import unknown
from hwsched.values import Fit, Item, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    egress, locks = given.opening.egress, holding(given)
    if not locks or egress == "none":
        return
    if egress is None:
        # Nobody is inside a cabinet, and a gate is no exit unless the survey says so.
        if given.opening.form not in ("cabinet", "gate") and any(map(is_deadlock, locks)):
            yield unknown(("opening.egress",), "lock")
        return
    faces = leaving_from(given)
    if faces is None:
        yield unknown(("opening.egress_toward",), "lock")
        return
    for lock in locks:
        for face in faces:
            held, fact = held_after(given, fit, lock, face)
            if held is None:
                yield unknown((f"existing_item.{fact}",), "lock")
            elif held:
                yield Verdict(_said(lock, face), about="lock")


def _said(lock: Item, face: str) -> str:
    if is_deadlock(lock):
        turn = " without a thumb turn" if face == "inside" else ""
        return f"A deadlock{turn} stands on an egress path: from the {SIDE[face]}, where people leave, it needs a key."
    return (
        f"People leave from the {SIDE[face]}, and a lock of the function {lock.function} can hold that side locked, "
        "whatever a note on re-entry says."
    )


RULE = Rule(
    id="free-inside",
    title="No key needed on the way out",
    discipline="egress",
    severity="error",
    basis="IBC 1010.2 (2021), text; NFPA 101, 7.2.1.5: readily openable from the egress side without a key",
    cure="Replace the lock by one that opens freely from the side where people leave, with power on, power off and "
    "battery dead, or turn its free side there.",
    judge=_judge,
    defers=True,
)
