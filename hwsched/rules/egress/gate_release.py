"""Rule: a gate's new lock opens from the inside where people leave from there."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import FREE_INSIDE
from hwsched.rules.reading import lock_part, part_fact
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.ways_out import leaving_from, on_exit
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    part = lock_part(given, fit)
    if part is None or part.kind != "gate-lock" or not on_exit(given):
        return
    faces, free = leaving_from(given), part.flag_of(FREE_INSIDE)
    # What opened the old lock goes with it: the new one brings its own.
    if free or (faces is not None and "inside" not in faces):
        return
    if faces is None or free is None:
        needs = (("opening.egress_toward", faces), (part_fact(part, FREE_INSIDE), free))
        yield unknown(tuple(name for name, value in needs if value is None), part.number)
    else:
        yield Verdict(
            "The gate stands on an egress path, and this lock has nothing by which it opens from the inside.",
            about=part.number,
        )


RULE = Rule(
    id="gate-release",
    title="Gate lock opens from the inside on the way out",
    discipline="egress",
    severity="error",
    basis="IBC 1010.2 (2021), text; NFPA 101, 7.2.1.5: readily openable from the egress side without a key",
    cure="Take a gate lock that opens freely from the inside.",
    judge=_judge,
    slot="lock",
    defers=True,
)
