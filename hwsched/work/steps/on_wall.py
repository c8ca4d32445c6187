"""Steps at a wall or post: the fixings of the unit, and what is left for who connects the controller."""

from typing import Final

from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.rules.practice import screw_pilot_mm, wall_fixing
from hwsched.work import cautions, tools
from hwsched.work.situation import Situation
from hwsched.work.step import StepKind, Tool
from hwsched.work.steps.arriving import at_opening

_MADE: Final = {
    "screw-and-plug": to_phrase("drill for the plugs, as deep as they are long, and push them in flush"),
    "hollow-wall-anchor": to_phrase("drill for the anchors, clear of studs, pipes and cables, and set them"),
    "machine-screw": to_phrase("punch, drill and tap the thread of the machine screws with a drop of oil, and deburr"),
    "wood-screw": to_phrase("drill the pilots"),
}
"""What is done at the wall before a fixing of some form holds."""
_TOOLS: Final = {
    "screw-and-plug": (tools.HAMMER_DRILL, tools.FINDER, tools.EXTRACTION),
    "hollow-wall-anchor": (tools.ANCHOR_BIT, tools.FINDER),
    "machine-screw": (tools.DRILL, tools.TAP, tools.OIL, tools.FILE),
    "wood-screw": (tools.DRILL,),
}
_WHO: Final = {
    "lift-contractor": to_phrase("the elevator contractor"),
    "turnstile-contractor": to_phrase("the turnstile's contractor"),
    "shop": to_phrase("our own hands licensed for it"),
}


def _form(s: Situation) -> str:
    """Return the form of what holds the unit on its wall; empty where nothing does."""
    wall = s.given.opening.wall_build
    wanted = wall_fixing(wall) if s.on_wall and wall is not None else None
    return wanted.form if wanted is not None and s.of_form("fastener", wanted.form) else ""


def _fixed(s: Situation) -> str:
    count = sum(part.quantity for part in s.of_form("fastener", _form(s)))
    return phrase_of_count(
        "Hold the unit's plate alone over the reader's hole, level. Mark the screw centre through it, put it away, "
        "{made}.",
        "Hold the unit's plate alone over the reader's hole, level. Mark the {count} screw centres through it, put it "
        "away, {made}.",
        int(count),
        made=phrase(_MADE[_form(s)]),
    )


def _fixing_tools(s: Situation) -> tuple[Tool, ...]:
    pilot = screw_pilot_mm("wood", s.unit_screw) if _form(s) == "wood-screw" else None
    bit = (tools.bit(s, "twist-drill", pilot),) if pilot is not None else ()
    return (tools.GLASSES, tools.LEVEL, *_TOOLS[_form(s)], *bit)


def _left_to_contractor(s: Situation) -> str:
    who = phrase(_WHO.get(s.given.opening.connected_by or "", to_phrase("who is responsible for the controller")))
    return phrase(
        "Touch nothing of the controller: its wire to the unit's output is connected and first tried by {who}. Mark the "
        "output's terminals for that.",
        who=who,
    )


ON_WALL = (
    StepKind(
        "wall-fixings",
        "wall",
        _fixed,
        when=lambda s: bool(_form(s)),
        after=("drill-lock",),
        tools=_fixing_tools,
        cautions=(cautions.DRILL, cautions.DUST, cautions.STATIC),
        brings="drilled",
    ),
    StepKind(
        "controller",
        at_opening,
        _left_to_contractor,
        when=lambda s: s.leaf is None and s.given.opening.controller_output not in (None, "none"),
        after=("try-key",),
        brings="closed",
    ),
)
