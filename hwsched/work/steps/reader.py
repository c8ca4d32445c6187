"""Steps that put a reader without rotation into a wall or an enclosure."""

from hwsched.work import tools
from hwsched.work.step import StepKind

READER = (
    StepKind(
        "reader-in",
        "wall",
        "Push the reader into its hole until its face lies flat, turn it upright and fasten it from behind.",
        when=lambda s: s.new_lock == "fixed-reader",
        after=("lead-through",),
        parts=lambda s: s.parts("reader"),
        tools=lambda s: (tools.SCREWDRIVERS, tools.WRENCH),
        brings="lock-in",
        tasks=("fit-reader",),
    ),
)
