"""Rule: the lead, with its extension, reaches the unit with the slack that handling needs."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import LEAD_MM
from hwsched.rules.reading import lock_part, unit_in_lock
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import TOUCH_MM
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    lock, cable = lock_part(given, fit), fit.cable
    if lock is None or unit_in_lock(given, fit):
        return
    if lock.number_of(LEAD_MM) is None:
        yield unknown((f"part {lock.number}.lead_mm",), lock.number)
    elif cable is not None:
        spare = cable.available_mm - cable.length_mm
        free = max(spare, 0.0) + cable.slack_mm
        if free < limits["hand_mm"] - TOUCH_MM:
            short = limits["hand_mm"] - free
            yield Verdict(
                f"{length(given, free)} of lead is left free at the unit; to plug it in before the unit closes over it "
                f"{length(given, limits['hand_mm'])} is needed, short by {length(given, short)}.",
                values={"free_mm": free, "needed_mm": limits["hand_mm"], "short_mm": short},
                about=lock.number,
            )
        if spare < limits["spare_mm"] - TOUCH_MM:
            short = limits["spare_mm"] - spare
            yield Verdict(
                f"The lead needs {length(given, cable.length_mm)} (slack {length(given, cable.slack_mm)} included) and "
                f"has {length(given, cable.available_mm)}: short by {length(given, short)}.",
                values={"needed_mm": cable.length_mm, "available_mm": cable.available_mm, "short_mm": short},
                about=lock.number,
            )


RULE = Rule(
    id="lead-reaches",
    title="Lead reaches the unit",
    discipline="cable",
    severity="error",
    basis="the catalogue's lead against the way that it takes; practice for slack; room to plug it in from memory",
    cure="Take a lead extension whose plugs mate, a part with a longer lead, or a nearer place.",
    judge=_judge,
    slot="unit",
    limits=(
        Limit(
            "spare_mm",
            0.0,
            "Lead that must be left over beyond bends and slack.",
            "common practice",
            unit="mm",
            low=0.0,
            high=3000.0,
        ),
        Limit(
            "hand_mm",
            25.4,
            "Lead, slack included, that must be free at the unit so that thumb and finger plug it in.",
            "from memory, unverified, 1 in",
            unit="mm",
            low=0.0,
            high=300.0,
        ),
    ),
)
