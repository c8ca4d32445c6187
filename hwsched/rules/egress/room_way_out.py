"""Rule: a room of which no door is said to be on an egress path has that confirmed by a person."""

from collections.abc import Iterable

from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput

_SIDE = {"room_to": "on the inside", "room_from": "on the key side"}
_NOBODY_INSIDE = ("cabinet", "gate", "lift", "turnstile")


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if given.opening.egress != "none" or given.opening.form in _NOBODY_INSIDE or not given.closed_rooms:
        return
    confirmed = given.opening.no_exit_confirmed
    if confirmed:
        return
    where = " and ".join(_SIDE[side] for side in given.closed_rooms)
    said = f"Of the room {where} every door of the survey is said to be not on an egress path"
    if confirmed is None:
        asked = unknown(("opening.no_exit_confirmed",), "egress")
        yield Verdict(
            f"{asked.message} {said}: people there may have no other way out.", about="egress", needs=asked.needs
        )
    else:
        yield Verdict(f"{said}, and a person says that this is not so.", about="egress")


RULE = Rule(
    id="room-way-out",
    title="A room has a way out",
    discipline="egress",
    severity="error",
    basis="IBC 1006.2 and NFPA 101, 7.4: every occupied room has a way out; from memory, unverified",
    cure="Correct the egress role of the room's door, or have a person who knows the room confirm that nobody "
    "needs this "
    "opening to leave.",
    judge=_judge,
    each_anew=True,
    defers=True,
)
