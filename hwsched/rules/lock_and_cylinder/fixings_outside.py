"""Rule: what is fixed where anybody passes has fixings that a common screwdriver does not turn."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import FORM, SECURITY_DRIVE
from hwsched.rules.reading import entry, lock_part, part_fact
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput

_SET_OUTSIDE = ("gate-lock", "fixed-reader")
"""Locks and readers that are screwed on from the outside."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    outside = given.opening.exposure == "exterior" or given.opening.form in ("gate", "turnstile")
    if not outside:
        return
    lock, place = lock_part(given, fit), fit.placement
    reached = (lock is not None and lock.kind in _SET_OUTSIDE) or (place is not None and place.face in ("key", "wall"))
    if not reached:
        return
    for fit_part in fit.parts:
        part = entry(given, fit_part)
        # A bonded pad has no head that anybody could turn.
        if fit_part.role != "fastener" or part is None or part.text_of(FORM) == "adhesive":
            continue
        secure = part.flag_of(SECURITY_DRIVE)
        if secure is None:
            yield unknown((part_fact(part, SECURITY_DRIVE),), part.number)
        elif not secure:
            yield Verdict(
                "It is fixed outside with heads that a common screwdriver or spanner turns.", about=part.number
            )


RULE = Rule(
    id="fixings-outside",
    title="Fixings outside resist a screwdriver",
    discipline="lock-and-cylinder",
    severity="warning",
    basis="common practice: security drives or one-way heads where the public passes",
    cure="Take fixings with a security drive, or cover their heads.",
    judge=_judge,
)
