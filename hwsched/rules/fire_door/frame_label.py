"""Rule: leaf and frame bear the same fire label; where they do not, the opening is only as good as the lesser one."""

from collections.abc import Iterable

from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.ways_out import is_door
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput

_ABOUT = "frame"


def _judge(given: OpeningInput, _fit: Fit, _limits: Limits) -> Iterable[Verdict]:
    leaf, frame = given.opening.rating, given.opening.frame_rating
    # Most lists have one rating for both: only where somebody told the frame's own there is a second one to judge.
    # A person who says that the opening is not rated has said what its frame's label counts.
    if frame is None or leaf in (frame, "none") or not is_door(given):
        return
    if leaf is None:
        yield unknown(("opening.rating",), _ABOUT)
    elif frame == "none":
        yield Verdict(
            f"The leaf is labelled {leaf} min and the frame bears no label: as a whole the opening is not rated; the "
            "work is judged by the leaf's label.",
            values={"leaf_min": float(leaf)},
            about=_ABOUT,
        )
    else:
        lesser = min(float(leaf), float(frame))
        yield Verdict(
            f"The leaf is labelled {leaf} min and the frame {frame} min: the opening is only as good as the lesser, "
            f"{lesser:g} min; the work is judged by the leaf's label.",
            values={"leaf_min": float(leaf), "frame_min": float(frame)},
            about=_ABOUT,
        )


RULE = Rule(
    id="frame-label",
    title="Fire labels of leaf and frame",
    discipline="fire-door",
    severity="warning",
    basis="NFPA 80: leaf, frame and hardware are labelled each, and make one assembly; from memory, unverified",
    cure="Report it to the owner before work starts: what is needed is said by the wall, the labels and the authority.",
    judge=_judge,
    defers=True,
)
