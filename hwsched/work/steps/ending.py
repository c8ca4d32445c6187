"""Steps that end the work: what is left, sealing, tests, hand-over."""

from hwsched.language import phrase
from hwsched.work import cautions, tools
from hwsched.work.situation import Situation
from hwsched.work.step import StepKind
from hwsched.work.steps.arriving import at_opening


def _test(s: Situation) -> str:
    if s.leaf is None:
        return phrase("Test everything on the test sheet.")
    if s.lock_form == "cabinet":
        return phrase("Test everything on the test sheet with the door open, then closed.")
    if s.lock_form == "gate":
        return phrase("Test everything on the test sheet with the gate open, then closed, one person on each side.")
    if s.given.opening.form == "pair":
        return phrase(
            "Test everything on the test sheet, leaf open, then both leaves closed, the inactive one bolted, with a "
            "second person inside."
        )
    return phrase("Test everything on the test sheet, leaf open, then leaf closed with a second person inside.")


def _handed(s: Situation) -> str:
    said = phrase("Fill in serial numbers, readings and what was different; sign.")
    # Where only a reader comes nothing old goes away.
    return said if s.leaf is None else f"{said} {phrase('Old parts and keys go to the owner.')}"


ENDING = (
    StepKind(
        "seal",
        lambda s: "wall" if s.leaf is None else "door",
        "Seal the joints that rain reaches, above and at the sides; leave the lower edges open, so that water gets out.",
        when=lambda s: bool(s.of_form("consumable", "sealant")),
        after=("closed",),
        parts=lambda s: s.of_form("consumable", "sealant"),
    ),
    StepKind(
        "added",
        at_opening,
        lambda s: phrase("Fit what was added by hand to this opening, as its maker says."),
        after=("seal",),
        takes_rest=True,
    ),
    StepKind(
        "test",
        at_opening,
        _test,
        after=("added",),
        tools=lambda s: (tools.METER,),
        cautions=(cautions.EGRESS,),
        readings=lambda s: (),
    ),
    StepKind(
        "hand-over",
        at_opening,
        _handed,
        after=("test",),
        turn="last",
        tasks=("clean-up",),
    ),
)
