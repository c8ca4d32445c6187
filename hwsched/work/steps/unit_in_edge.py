"""Steps that put a unit into its pocket in the lock edge."""

from hwsched.language import phrase
from hwsched.work import cautions, tools
from hwsched.work.situation import Situation
from hwsched.work.step import StepKind
from hwsched.work.steps.unit_on_face import screws


def _in_edge(s: Situation) -> bool:
    return s.in_edge and s.has("unit")


UNIT_IN_EDGE = (
    StepKind(
        "try-housing",
        "lock edge",
        "Put the housing's electronics away. Empty, it slides into its pocket by hand, without force or play; work the "
        "pocket over until it does, then take it out.",
        when=_in_edge,
        after=("drill-bridge",),
        tools=lambda s: (tools.SCREWDRIVERS, tools.FILE),
        cautions=(cautions.STATIC,),
    ),
    StepKind(
        "connect-in-hand",
        "hand",
        "Put the electronics back. With the unit in the hand push the lead's plug in, square and to its full depth.",
        when=lambda s: _in_edge(s) and s.fit.cable is not None,
        after=("lock-in", "polarity"),
        cautions=(cautions.STATIC, cautions.COIN),
        brings="connected",
    ),
    StepKind(
        "unit-into-edge",
        "lock edge",
        lambda s: (
            phrase(
                "Slide the unit in without force, the slack of the lead{length} beside it in the pocket. Screw it down "
                "with ",
                length=phrase(", {length} to spare,", length=s.spare_lead) if s.spare_lead else "",
            )
            + ", ".join(f"{part.quantity:g} × {part.description or part.part}" for part in screws(s))
            + phrase("; its plate lies flush.")
        ),
        when=_in_edge,
        after=("try-key",),
        parts=lambda s: (*s.parts("unit", "mounting"), *screws(s)),
        tools=lambda s: tools.drivers(s, screws(s)),
        cautions=(cautions.STATIC,),
        brings="closed",
        tasks=("mount-unit-edge",),
    ),
)
