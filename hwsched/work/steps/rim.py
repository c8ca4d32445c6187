"""Steps that put a rim cylinder and the rim lock's case back."""

from hwsched.language import phrase
from hwsched.work import tools
from hwsched.work.situation import Situation
from hwsched.work.step import StepKind


def _tail(s: Situation) -> str:
    cut = s.fit.stack.cut_off_mm if s.fit.stack is not None else 0.0
    off = (
        phrase("Break {length} off the tailpiece, at its notch. ", length=s.length(cut))
        if cut
        else phrase("The tailpiece keeps its length. ")
    )
    locked = phrase(" Thread lock on the tailpiece's screws.") if s.of_form("consumable", "thread-lock") else ""
    return phrase("{off}File the burr away, it must not touch the lead.{locked}", off=off, locked=locked)


def _case_back(s: Situation) -> str:
    if s.exit_device:
        return phrase(
            "Put the exit device's head back, the tailpiece in its hub without force, no lead under its edge. Push "
            "the bar: the latch draws fully back and springs out again; nothing drags."
        )
    return phrase(
        "Put the rim lock's case back, the tailpiece in its hub without force, no lead under its edge. By hand the "
        "bolt runs fully out and back."
    )


RIM = (
    StepKind(
        "cut-tail",
        "hand",
        _tail,
        when=lambda s: s.new_lock == "rim-cylinder",
        after=("compare-tail",),
        parts=lambda s: (*s.parts("tailpiece"), *s.of_form("consumable", "thread-lock")),
        tools=lambda s: (tools.RULE, tools.PLIERS, tools.FILE),
    ),
    StepKind(
        "rim-cylinder-in",
        "key side",
        "Push the cylinder in from the key side, mark upright. Lay its own back plate on inside, the lead beside the "
        "tailpiece, not under the plate. Break its screws off to length, tighten both evenly; the tailpiece turns freely.",
        when=lambda s: s.new_lock == "rim-cylinder",
        after=("lead-through",),
        parts=lambda s: s.parts("cylinder"),
        tools=lambda s: (tools.SCREWDRIVERS, tools.PLIERS),
        brings="lock-in",
        tasks=("fit-rim",),
    ),
    StepKind(
        "rim-case-back",
        "inside",
        _case_back,
        when=lambda s: s.lock_form == "rim",
        after=("rim-cylinder-in",),
        tools=lambda s: (tools.SCREWDRIVERS,),
        brings="lock-in",
    ),
)
