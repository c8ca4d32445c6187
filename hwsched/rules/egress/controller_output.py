"""Rule: what a reader at a lift or turnstile gives to the controller there, who connects it, and fire service first."""

from collections.abc import Iterable

from hwsched.rules.reading import leafless
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput

_ABOUT = "controller"
_FACTS = ("controller_output", "connected_by", "fire_recall")


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if not leafless(given):
        return
    opening, elevator = given.opening, given.opening.form == "lift"
    missing = [name for name in _FACTS if getattr(opening, name) is None]
    if missing:
        yield unknown(tuple(f"opening.{name}" for name in missing), _ABOUT)
    if opening.controller_output not in (None, "dry-contact"):
        what = "no output" if opening.controller_output == "none" else "a powered output"
        yield Verdict(f"The reader has {what}; the controller takes a dry contact.", about=_ABOUT)
    if elevator and opening.connected_by not in (None, "lift-contractor"):
        yield Verdict(
            "Only the elevator contractor connects anything to the elevator's controller; somebody else is named.",
            about=_ABOUT,
        )
    if opening.fire_recall is False:
        what = (
            "recall to the designated level (Phase I) and the car's key (Phase II) must go before the reader"
            if elevator
            else "the turnstile must open on the alarm, whatever the reader says"
        )
        yield Verdict(f"Fire service does not go before the reader: {what}.", about=_ABOUT)
    elif opening.fire_recall and elevator:
        yield Verdict(
            "The reader is a dry contact through the elevator's controller, connected by the elevator contractor "
            "and tried "
            "with him: recall (Phase I) and the car's key (Phase II) go before it.",
            about=_ABOUT,
            severity="note",
        )


RULE = Rule(
    id="controller-output",
    title="Output to the lift's or turnstile's controller",
    discipline="egress",
    severity="error",
    basis="ASME A17.1, 2.27: emergency operation and signalling, 2.27.3 firefighters' service, extracts of 2007; "
    "the wording "
    "on readers and the dry contact from memory, unverified",
    cure="Agree output, connection and trial with the contractor of the lift or turnstile before ordering.",
    judge=_judge,
    defers=True,
)
