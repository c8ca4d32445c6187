"""Steps that put a euro-profile cylinder into its case."""

from hwsched.work import tools
from hwsched.work.step import StepKind

EURO_PROFILE = (
    StepKind(
        "euro-cylinder-in",
        "key side",
        "Push the cylinder in, its cam within the profile, until the hole for its screw stands behind the edge. Set the "
        "retaining screw by hand, tighten it only so far that the cam turns freely.",
        when=lambda s: s.new_lock == "euro-cylinder",
        after=("lead-through",),
        parts=lambda s: s.parts("cylinder"),
        tools=lambda s: (tools.SCREWDRIVERS,),
        brings="lock-in",
        tasks=("fit-euro-profile",),
    ),
)
