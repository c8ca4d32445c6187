"""Steps that bring the lead of the new cylinder or lock to where the unit comes."""

from hwsched.language import phrase, to_phrase
from hwsched.work import cautions, tools
from hwsched.work.situation import Situation
from hwsched.work.step import StepKind

_FROM = {
    "mortise-cylinder": to_phrase("the cylinder's hole"),
    "euro-cylinder": to_phrase("the cylinder's hole"),
    "rim-cylinder": to_phrase("the cylinder's hole"),
    "bored-lever-lock": to_phrase("the cross bore"),
    "gate-lock": to_phrase("the hole behind the lock"),
    "fixed-reader": to_phrase("the wall"),
}


def _through(s: Situation) -> str:
    longer = (
        phrase("Put the extension on the lead, its plug square and to full depth. ") if s.has("lead-extension") else ""
    )
    start = phrase(_FROM.get(s.new_lock, to_phrase("the lock's hole")))
    if s.on_wall:
        return phrase(
            "{longer}Draw the lead through the hole to the unit's side, the reader still in the hand.", longer=longer
        )
    if not s.inside_leaf:
        if s.new_lock == "cabinet-lock":
            return phrase(
                "{longer}Draw the lead through the hole from the front, the bolt still in the hand.", longer=longer
            )
        return phrase(
            "{longer}Draw the lead out on the inside and lay it flat along the face to where the unit comes{under}; "
            "nothing moves there.",
            longer=longer,
            under=phrase(", not pinched under the edge of the lock's cover") if s.material == "glass" else "",
        )
    goal = phrase("the unit's pocket") if s.in_edge else phrase("the access hole")
    through = phrase(" through the case") if s.cased else ""
    return phrase(
        "{longer}Push the pull wire in at {goal} until it shows at {start}. Tape the lead flat to it and draw it "
        "back{through}, the new {lock} in the hand.",
        longer=longer,
        goal=goal,
        start=start,
        through=through,
        lock=phrase("cylinder") if s.new_lock.endswith("-cylinder") else phrase("lock"),
    )


LEAD = (
    StepKind(
        "lead-through",
        lambda s: "wall" if s.on_wall else "lock edge" if s.in_edge else "inside",
        _through,
        when=lambda s: s.fit.cable is not None,
        # What is cut off a tailpiece falls and scratches: before a lead hangs beside it.
        after=("dress-head", "latch-in", "cut-tail"),
        parts=lambda s: s.parts("lead-extension"),
        tools=lambda s: (tools.PULL_WIRE, tools.TAPE) if s.inside_leaf else (tools.TAPE,),
        cautions=(cautions.LEAD,),
    ),
)
