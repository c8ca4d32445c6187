"""Steps that take the old cylinder or lock off, and compare it with the new one."""

from typing import Final

from hwsched.language import phrase, to_phrase
from hwsched.work import cautions, tools
from hwsched.work.situation import Situation
from hwsched.work.step import StepKind

_BEFORE = ("wedge", "supply-off")
_OFF = ("take-off-cylinder",)


def _rim_off(s: Situation) -> str:
    if s.exit_device:
        return phrase(
            "Take off cover and exit device's head as their maker says; bar and rail stay. Unscrew the back plate, "
            "draw the old cylinder out to the key side; keep both."
        )
    return phrase(
        "Take off the rim lock's case. Unscrew the back plate, draw the old cylinder out to the key side; keep both."
    )


def _mortise_off(s: Situation) -> str:
    if s.material == "glass":
        return phrase(
            "Take off the patch's covers, loosen the set screw, unscrew the old cylinder from the key side; keep it. "
            "Loosen no screw of the clamp on the glass."
        )
    return phrase(
        "Take off the front plate, loosen the set screw, unscrew the old cylinder from the key side; keep it."
    )


_THROUGH_CASE: Final = {
    "lever": to_phrase("levers"),
    "thumb-turn": to_phrase("thumb turn"),
    "trim": to_phrase("escutcheons"),
}
"""What of the existing items stands through or over a lock's case, by its kind."""


def through_case(s: Situation) -> str:
    """Name what stands through a lock's case on its faces: what was found, and what nobody wrote down."""
    found = dict.fromkeys(item.kind for item in s.given.items if item.kind in _THROUGH_CASE)
    if s.lock is not None and s.lock.thumb_turn:
        found.setdefault("thumb-turn")
    if not found:
        return phrase("levers, turn and escutcheons")
    *before, last = (phrase(_THROUGH_CASE[kind]) for kind in found)
    return phrase("{before} and {last}", before=", ".join(before), last=last) if before else last


OLD_LOCK = (
    StepKind(
        "mortise-cylinder-off",
        "lock edge",
        _mortise_off,
        when=lambda s: s.lock_form == "mortise",
        after=_BEFORE,
        tools=lambda s: (tools.SCREWDRIVERS, tools.WRENCH),
        brings="old-off",
        tasks=_OFF,
    ),
    StepKind(
        "euro-cylinder-off",
        "lock edge",
        "Turn the key about 15° until the cam stands within the profile, take the retaining screw out of the edge, draw "
        "the old cylinder out; keep it.",
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
        "Take off the old lever or knob set, then its latch; keep them.",
        when=lambda s: s.lock_form == "bored",
        after=_BEFORE,
        tools=lambda s: (tools.SCREWDRIVERS,),
        brings="old-off",
        tasks=_OFF,
    ),
    StepKind(
        "cabinet-bolt-off",
        "inside",
        "Unscrew the old bolt from the cabinet door; keep it.",
        when=lambda s: s.lock_form == "cabinet",
        after=_BEFORE,
        tools=lambda s: (tools.SCREWDRIVERS, tools.WRENCH),
        brings="old-off",
        tasks=_OFF,
    ),
    StepKind(
        "gate-latch-off",
        "key side",
        "Unbolt the old latch from the gate; keep it.",
        when=lambda s: s.lock_form == "gate",
        after=_BEFORE,
        tools=lambda s: (tools.SCREWDRIVERS, tools.WRENCH),
        brings="old-off",
        tasks=_OFF,
    ),
    StepKind(
        "compare-cam",
        "hand",
        "Lay old and new cylinder side by side: the same cam, turning to the same side. If not, stop and report.",
        when=lambda s: s.lock_form in ("mortise", "euro-profile") and s.has("cylinder"),
        after=("mortise-cylinder-off", "euro-cylinder-off"),
        brings="old-off",
    ),
    StepKind(
        "compare-tail",
        "hand",
        "Compare the tailpieces: same section, the new one long enough before it is broken off. If not, stop and report.",
        when=lambda s: s.lock_form == "rim" and s.has("cylinder"),
        after=("rim-lock-off",),
        brings="old-off",
    ),
    StepKind(
        "case-out",
        "lock edge",
        lambda s: phrase(
            "Take off {named}, unscrew the case and draw it out before you drill.",
            named=through_case(s),
        ),
        when=lambda s: s.case_out,
        after=("old-off",),
        tools=lambda s: (tools.SCREWDRIVERS,),
        cautions=(cautions.FILL,),
        brings="bare",
    ),
)
