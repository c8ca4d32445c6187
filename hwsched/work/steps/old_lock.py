"""Steps that take the old cylinder or lock off, and compare it with the new one."""

from hwsched.language import phrase
from hwsched.work import cautions, tools
from hwsched.work.situation import Situation
from hwsched.work.step import StepKind

_BEFORE = ("wedge", "supply-off")
_OFF = ("take-off-cylinder",)


def _rim_off(s: Situation) -> str:
    if s.exit_device:
        return phrase(
            "Take off what covers the exit device's head, then the head, as its maker says; bar and rail "
            "stay. Unscrew the back plate, draw out the old cylinder to the key side and keep cylinder "
            "and plate for the owner."
        )
    return phrase(
        "Take off the rim lock's case, unscrew the back plate, draw out the old cylinder to the key "
        "side and keep cylinder and plate for the owner."
    )


OLD_LOCK = (
    StepKind(
        "mortise-cylinder-off",
        "lock edge",
        "Take off the lock's front plate where it covers the set screw, loosen the set screw, unscrew the old cylinder "
        "from the key side and keep it for the owner.",
        when=lambda s: s.lock_form == "mortise",
        after=_BEFORE,
        tools=lambda s: (tools.SCREWDRIVERS, tools.WRENCH),
        brings="old-off",
        tasks=_OFF,
    ),
    StepKind(
        "euro-cylinder-off",
        "lock edge",
        "Turn the key about 15 degrees until the cam stands within the cylinder's profile, take the retaining screw "
        "out of the edge and draw out the old cylinder; keep it for the owner.",
        when=lambda s: s.lock_form == "euro-profile",
        after=_BEFORE,
        tools=lambda s: (tools.SCREWDRIVERS,),
        brings="old-off",
        tasks=_OFF,
    ),
    StepKind(
        "rim-lock-off",
        "inside",
        _rim_off,
        when=lambda s: s.lock_form == "rim",
        after=_BEFORE,
        tools=lambda s: (tools.SCREWDRIVERS,),
        brings="old-off",
        tasks=_OFF,
    ),
    StepKind(
        "bored-lock-off",
        "inside",
        "Take off the old lever or knob set, then its latch; keep them for the owner.",
        when=lambda s: s.lock_form == "bored",
        after=_BEFORE,
        tools=lambda s: (tools.SCREWDRIVERS,),
        brings="old-off",
        tasks=_OFF,
    ),
    StepKind(
        "cabinet-bolt-off",
        "inside",
        "Unscrew the old bolt from the cabinet door and keep it for the owner.",
        when=lambda s: s.lock_form == "cabinet",
        after=_BEFORE,
        tools=lambda s: (tools.SCREWDRIVERS, tools.WRENCH),
        brings="old-off",
        tasks=_OFF,
    ),
    StepKind(
        "gate-latch-off",
        "key side",
        "Unbolt the old latch from the gate and keep it for the owner.",
        when=lambda s: s.lock_form == "gate",
        after=_BEFORE,
        tools=lambda s: (tools.SCREWDRIVERS, tools.WRENCH),
        brings="old-off",
        tasks=_OFF,
    ),
    StepKind(
        "compare-cam",
        "hand",
        "Lay old and new cylinder side by side: the cams have the same form, and turn to the same side. Stop and "
        "report if not.",
        when=lambda s: s.lock_form in ("mortise", "euro-profile") and s.has("cylinder"),
        after=("mortise-cylinder-off", "euro-cylinder-off"),
        brings="old-off",
    ),
    StepKind(
        "compare-tail",
        "hand",
        "Lay old and new tailpiece side by side: the same section, and long enough for the case before it is broken "
        "off. Stop and report if not.",
        when=lambda s: s.lock_form == "rim" and s.has("cylinder"),
        after=("rim-lock-off",),
        brings="old-off",
    ),
    StepKind(
        "case-out",
        "lock edge",
        "Take off levers, turn and escutcheons. Undo the case's screws at the edge and draw the case out: nothing is "
        "drilled against it.",
        when=lambda s: s.case_out,
        after=("old-off",),
        tools=lambda s: (tools.SCREWDRIVERS,),
        cautions=(cautions.FILL,),
        brings="bare",
    ),
)
