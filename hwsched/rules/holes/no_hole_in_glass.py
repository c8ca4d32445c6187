"""Rule: no hole is made in glass."""

from collections.abc import Iterable

from hwsched.rules.reading import lock_leaf
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf = lock_leaf(given)
    if leaf is None or leaf.material != "glass":
        return
    # Tempered glass is made to size first: drilled or cut afterward it bursts, so that not even a pilot may go in.
    made = [hole for hole in fit.holes if hole.face not in ("frame", "wall")]
    if made:
        count = sum(hole.count for hole in made)
        yield Verdict(
            f"{count} hole would be made in glass: {made[0].name}."
            if count == 1
            else f"{count} holes would be made in glass: {made[0].name}.",
            values={"holes": float(count)},
            about=made[0].name,
        )


RULE = Rule(
    id="no-hole-in-glass",
    title="No hole in glass",
    discipline="holes",
    severity="error",
    basis="common practice: tempered glass bursts when it is drilled",
    cure="Bond the unit to the glass and lead the cable along its surface, or mount beside the leaf.",
    judge=_judge,
    slot="unit",
    defers=True,
)
