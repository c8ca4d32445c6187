"""Steps at the opening before anything is taken from it."""

from hwsched.language import phrase
from hwsched.work import cautions, tools
from hwsched.work.situation import Situation
from hwsched.work.step import StepKind, Where


def at_opening(s: Situation) -> Where:
    """Return where all is done that is not done at a face: at the door, or at the reader where there is none."""
    return "reader" if s.leaf is None else "door"


def _compare(s: Situation) -> str:
    if s.leaf is None:
        return phrase(
            "Compare mark and place with this packet; find out what runs behind the reader. Stop and report if "
            "anything differs."
        )
    hand = "" if s.lock_form == "cabinet" else "hand, "
    return phrase(
        "Compare mark, {hand}{thing} thickness and existing lock with this packet. Stop and report if one differs.",
        hand=hand,
        thing=s.leaf_word,
    )


def _wedge(s: Situation) -> str:
    if s.lock_form == "cabinet":
        return phrase("Open the door, clear what stands behind its lock, and hold it still.")
    if s.lock_form == "gate":
        return phrase("Open the gate and tie it so that no wind moves it.")
    return phrase("Wedge the leaf open and protect the floor under it.")


ARRIVING = (
    StepKind(
        "compare",
        at_opening,
        _compare,
        after=("ready",),
        tools=lambda s: (tools.RULE,),
        cautions=(cautions.FIRE, cautions.EGRESS, cautions.GLASS),
    ),
    StepKind(
        "try-old",
        "door",
        "Work the old lock with its key, open and closed; write down what drags or does not latch.",
        when=lambda s: s.leaf is not None and s.lock is not None,
        after=("compare",),
    ),
    StepKind(
        "supply-off",
        at_opening,
        "Switch off the output for this opening, see the power page, and tag it so that nobody switches it on.",
        # A supply of its own still lies in the box.
        when=lambda s: s.on_supply and not s.has("supply"),
        after=("compare",),
        cautions=(cautions.LOW_VOLTAGE,),
    ),
    StepKind(
        "wedge",
        "door",
        _wedge,
        when=lambda s: s.leaf is not None,
        after=("try-old",),
        turn="leaf",
        tools=lambda s: (tools.WEDGES,),
    ),
)
