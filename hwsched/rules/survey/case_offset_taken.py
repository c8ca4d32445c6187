"""Rule: where nobody measured how far a lock's case stands off centre, it is said that centred is taken."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import THREAD_PITCH_MM
from hwsched.rules.reading import lock_item, lock_leaf, lock_part
from hwsched.rules.rounding import EQUAL_MM
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.solid.threaded import stack_limits
from hwsched.rules.wording import length
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf, lock = lock_leaf(given), lock_item(given)
    if leaf is None or lock is None or lock.lock_form not in ("mortise", "euro-profile"):
        return
    if lock.case_offset_mm is None:
        taken = "The lock's case is taken to stand in the middle of the leaf; nobody has measured whether it does."
        yield _with_room(given, fit, taken) or Verdict(taken, about="lock")


def _with_room(given: OpeningInput, fit: Fit, taken: str) -> Verdict | None:
    """Say besides within what the case may stand for the cylinder that was taken; None where nothing follows."""
    part, stack = lock_part(given, fit), fit.stack
    pitch = part.number_of(THREAD_PITCH_MM) if part is not None else None
    if part is None or stack is None or stack.form != "threaded" or stack.impossible or pitch is None:
        return None
    limits = stack_limits(given.settings)
    # A case nearer to the key face leaves the cam farther beyond its middle, by as much.
    inward = stack.turns * pitch + max(stack.gap_mm, 0.0)
    keyward = limits["turns_beyond"] * pitch + limits["tolerance_mm"] - inward
    inward = inward if inward > EQUAL_MM else 0.0
    return Verdict(
        f"{taken} {part.number} serves one that stands up to {length(given, inward)} nearer to the inside and up to "
        f"{length(given, max(keyward, 0.0))} nearer to the key side.",
        values={"inward_mm": inward, "keyward_mm": max(keyward, 0.0)},
        about="lock",
    )


RULE = Rule(
    id="case-offset-taken",
    title="Lock case taken as centred",
    discipline="survey",
    severity="note",
    basis="common practice: a case stands in the middle of the leaf unless the survey says otherwise",
    cure="Measure from both faces to the case before the box is packed; write 0 where it is centred.",
    judge=_judge,
)
