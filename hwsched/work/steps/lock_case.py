"""Steps that put the existing lock's case back before anything is led through it."""

from hwsched.work import tools
from hwsched.work.step import StepKind

LOCK_CASE = (
    StepKind(
        "case-back",
        "lock edge",
        "Screw the case in again with all that came off it. By hand latch and bolt run free, fully out and back.",
        when=lambda s: s.case_out,
        after=("wire-in",),
        tools=lambda s: (tools.SCREWDRIVERS,),
        brings="lock-standing",
    ),
)
