"""Rule: holes left over in a rated leaf are filled as the standard names."""

from collections.abc import Iterable

from hwsched.rules.reading import rated
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if not rated(given):
        return
    gone = [item for item in given.items if item.disposition in ("remove", "move") and item.face != "frame"]
    if gone:
        kinds = ", ".join(sorted({(item.kind or "item").replace("-", " ") for item in gone}))
        yield Verdict(
            f"{len(gone)} item comes off the rated leaf ({kinds}) and leaves holes."
            if len(gone) == 1
            else f"{len(gone)} items come off the rated leaf ({kinds}) and leave holes.",
            values={"items": float(len(gone))},
            about=kinds,
        )


RULE = Rule(
    id="rated-old-holes",
    title="Left-over holes in a rated leaf",
    discipline="fire-door",
    severity="warning",
    basis="NFPA 80, 5.x (2013: 5.5.7), left-over fastener holes, secondary copies",
    cure="Fill fastener holes with steel fasteners that fill them, the leaf's own material, or a listed material; a "
    "plate, caulk or body filler is no repair, and a lock bore is no fastener hole.",
    judge=_judge,
    defers=True,
)
