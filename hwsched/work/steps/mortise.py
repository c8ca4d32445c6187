"""Steps that put a threaded cylinder into a mortise lock's case."""

from hwsched.language import phrase
from hwsched.work import tools
from hwsched.work.situation import Situation
from hwsched.work.step import StepKind


def _dressed(s: Situation) -> str:
    pieces = s.parts("collar", "ring")
    named = ", ".join(map(s.called, pieces))
    order = phrase(", in this order") if len(pieces) > 1 else ""
    return phrase("Lead first, slide the {named} over the cylinder to its head{order}.", named=named, order=order)


def front_plate(s: Situation) -> str:
    """Name what covers a lock's set screw: on glass the lock stands in a patch between two covers."""
    return phrase("patch's covers") if s.material == "glass" else phrase("front plate")


def _in(s: Situation) -> str:
    turns = "" if s.turns is None else phrase(", about {turns} turns", turns=s.turns)
    flush = (
        phrase("its head stands flush with the collar")
        if s.has("collar")
        else phrase("its head stands as the packet says")
    )
    twist = phrase("; turn the lead along with it, its far end free") if s.fit.cable is not None else ""
    lead = phrase(", the lead flat beside it") if s.fit.cable is not None else ""
    return phrase(
        "Start the thread square, by hand, never crossed. Turn the cylinder in{turns}, until {flush}{twist}. Mark "
        "upright, cam free{lead}. Set the set screw by hand, tighten it gently, refit the {plate}.",
        turns=turns,
        flush=flush,
        twist=twist,
        lead=lead,
        plate=front_plate(s),
    )


MORTISE = (
    StepKind(
        "dress-head",
        "hand",
        _dressed,
        when=lambda s: s.new_lock in ("mortise-cylinder", "rim-cylinder") and s.has("collar", "ring"),
        after=("case-back",),
        parts=lambda s: s.parts("collar", "ring"),
    ),
    StepKind(
        "mortise-cylinder-in",
        "key side",
        _in,
        when=lambda s: s.new_lock == "mortise-cylinder",
        after=("lead-through",),
        parts=lambda s: s.parts("cylinder"),
        tools=lambda s: (tools.SCREWDRIVERS,),
        brings="lock-in",
        tasks=("fit-mortise",),
    ),
)
