"""Rule: where nobody measured how far a lock's case stands off centre, it is said that centred is taken."""

from collections.abc import Iterable

from hwsched.rules.reading import lock_item, lock_leaf
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf, lock = lock_leaf(given), lock_item(given)
    if leaf is None or lock is None or lock.lock_form not in ("mortise", "euro-profile"):
        return
    if lock.case_offset_mm is None:
        yield Verdict(
            "The lock's case is taken to stand in the middle of the leaf; nobody has measured whether it does.",
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
