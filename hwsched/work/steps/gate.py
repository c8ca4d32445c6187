"""Steps that put a lock onto a gate."""

from hwsched.attributes.of_parts import MOUNTING
from hwsched.language import phrase
from hwsched.rules.reading import lock_part
from hwsched.values import FitPart
from hwsched.work import tools
from hwsched.work.situation import Situation
from hwsched.work.step import StepKind


def bolts(s: Situation) -> tuple[FitPart, ...]:
    """Return the bolts that hold the lock."""
    return s.of_form("fastener", "through-bolt") if s.new_lock == "gate-lock" and s.holes("bolt") else ()


def _in(s: Situation) -> str:
    part = lock_part(s.given, s.fit)
    if part is not None and part.text_of(MOUNTING) == "weld-on":
        return phrase(
            "Weld on the lock's box with lock, lead and unit away from the gate, let it cool and paint "
            "it; then fit the lock into it."
        )
    held = ", ".join(f"{each.quantity:g} × {each.description or each.part}" for each in bolts(s))
    over = phrase(", the lead through its hole and not under the case") if s.fit.cable is not None else ""
    return phrase(
        "Bolt the lock on{part}{over}; tighten evenly. By hand the bolt runs fully into its keep and back.",
        part=phrase(" with {held}", held=held) if held else "",
        over=over,
    )


GATE = (
    StepKind(
        "gate-lock-in",
        "key side",
        _in,
        when=lambda s: s.new_lock == "gate-lock",
        after=("lead-through",),
        parts=lambda s: (*s.parts("lock"), *bolts(s)),
        tools=lambda s: (tools.WRENCH, *tools.drivers(s, bolts(s))),
        brings="lock-in",
        tasks=("fit-gate",),
    ),
)
