"""Steps that put a bored lever lock into its bores."""

from hwsched.work import tools
from hwsched.work.step import StepKind

BORED = (
    StepKind(
        "latch-in",
        "lock edge",
        "Fit the new latch into the edge bore, bevel toward the strike.",
        when=lambda s: s.new_lock == "bored-lever-lock",
        after=("wire-in",),
        tools=lambda s: (tools.SCREWDRIVERS,),
    ),
    StepKind(
        "bored-lock-in",
        "key side",
        "Fit the lever set square through its bores, so that latch and tail engage; the lead runs free of both. "
        "Tighten the two bolts evenly by hand.",
        when=lambda s: s.new_lock == "bored-lever-lock",
        after=("lead-through",),
        parts=lambda s: s.parts("lock"),
        tools=lambda s: (tools.SCREWDRIVERS,),
        brings="lock-in",
        tasks=("fit-bored",),
    ),
    StepKind(
        "try-levers",
        "door",
        "Try both levers with the leaf open: the inside one draws the latch fully back, it springs out again, and "
        "nothing rubs. Only then fit the unit.",
        when=lambda s: s.new_lock == "bored-lever-lock",
        after=("bored-lock-in",),
        brings="lock-in",
    ),
)
