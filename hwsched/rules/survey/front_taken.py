"""Rule: where nobody measured a lock's front, it is said which size is taken of it beside the pocket of a unit."""

from collections.abc import Iterable

from hwsched.rules.reading import lock_item, unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.solid.edge import front_of
from hwsched.rules.wording import length
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, lock = unit_part(given, fit), lock_item(given)
    front = front_of(lock) if lock is not None and unit is not None and unit.kind == "edge-unit" else None
    if front is not None and front.taken:
        high = front.high - front.low
        yield Verdict(
            f"The lock's front is taken to be {length(given, high)} high and {length(given, front.width_mm)} wide, as "
            "usual of its form (common practice, unverified); nobody has measured it.",
            values={"high_mm": high, "wide_mm": front.width_mm},
            about="lock",
        )


RULE = Rule(
    id="front-taken",
    title="Lock front taken as usual",
    discipline="survey",
    severity="note",
    basis="86 preparation: front 8 by 1 1/4 in, read in one copy; DIN 18251: 235 by 20 mm, from memory, unverified",
    cure="Measure the front at the lock edge before the pocket is cut.",
    judge=_judge,
)
