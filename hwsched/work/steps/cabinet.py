"""Steps that put a bolt into a cabinet door."""

from hwsched.work import tools
from hwsched.work.step import StepKind

CABINET = (
    StepKind(
        "cabinet-bolt-in",
        "inside",
        "Put the bolt's body through the door from the front, washer and nut over the lead from behind, the bolt to "
        "the side that locks; tighten by hand and a quarter turn.",
        when=lambda s: s.new_lock == "cabinet-lock",
        after=("lead-through",),
        parts=lambda s: s.parts("lock"),
        tools=lambda s: (tools.WRENCH,),
        brings="lock-in",
        tasks=("fit-cabinet",),
    ),
)
