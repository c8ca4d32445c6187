"""Steps that put the existing lock's case back before anything is led through it."""

from hwsched.work import tools
from hwsched.work.step import StepKind

LOCK_CASE = (
    StepKind(
        "case-back",
        "lock edge",
        "Put the case back, then its screws and all that was taken off it. By hand latch and bolt run fully out and "
        "back, without drag.",
        when=lambda s: s.case_out,
        after=("wire-in",),
        tools=lambda s: (tools.SCREWDRIVERS,),
        brings="lock-standing",
    ),
)
