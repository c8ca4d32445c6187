"""Rule: every plug meets the socket that is made for it, from the lead to the unit."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import CONNECTOR, MATES_WITH
from hwsched.rules.reading import entry, lock_part, unit_in_lock, unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    lock, unit = lock_part(given, fit), unit_part(given, fit)
    if lock is None or unit is None or unit_in_lock(given, fit):
        return
    chain = [part for fit_part in fit.parts if fit_part.role == "lead-extension" if (part := entry(given, fit_part))]
    before = lock
    for socket in (*chain, unit):
        plug, takes = before.text_of(CONNECTOR), socket.text_of(MATES_WITH)
        if plug is None or takes is None:
            missing = f"{before.number}.connector" if plug is None else f"{socket.number}.mates_with"
            yield unknown((f"part {missing}",), socket.number)
        elif plug != takes:
            yield Verdict(
                f"The plug {plug} of {before.number} does not go into it; it takes {takes}.",
                about=socket.number,
            )
        before = socket


RULE = Rule(
    id="connectors-mate",
    title="Plugs and sockets mate",
    discipline="cable",
    severity="error",
    basis="the makers' declarations in the catalogue",
    cure="Take a unit or an extension whose socket takes the plug.",
    judge=_judge,
    slot="unit",
)
