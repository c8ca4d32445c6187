"""Rule: an ordinary drill or screwdriver has room; where it has none a long one is told of."""

from collections.abc import Iterable

from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clashes import clashes
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    # On which face a thing stands is asked where it decides: a note asks nothing.
    return (said for said in clashes(given, fit, RULE.id, limits["room_mm"]) if not said.needs)


RULE = Rule(
    id="long-tool",
    title="Where a long bit or blade is wanted",
    discipline="holes",
    severity="note",
    basis="geometry; sizes of tools and hands common practice or from memory, unverified",
    cure="Bring a long bit and a long screwdriver (6, 8 or 12 in), or take off what is in the way and put it back.",
    judge=_judge,
    limits=(
        Limit(
            "room_mm",
            0.0,
            "Room kept between drill or hand and what stands on the face.",
            "common practice, unverified",
            unit="mm",
            low=0.0,
            high=100.0,
        ),
    ),
)
