"""Rule: holes stay clear of lites and louvres."""

from collections.abc import Iterable

from hwsched.rules.clearances import ON_FACE, TOUCH_MM
from hwsched.rules.footprints import footprints
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import length
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    holes = [hole for hole in fit.holes if hole.face in ON_FACE and not hole.by_template]
    if not holes:
        return
    for found in footprints(given, fit, holes[0].face):
        if found.kind not in ("lite", "louvre") or found.rect is None:
            continue
        for hole in holes:
            rect, r = found.rect, hole.diameter_mm / 2
            # By axis: round a corner this is less than the true distance, and so on the safe side of the glass.
            gap = max(rect.x0 - hole.x_mm, hole.x_mm - rect.x1, rect.y0 - hole.y_mm, hole.y_mm - rect.y1) - r
            if gap < limits["clearance_mm"] - TOUCH_MM:
                yield Verdict(
                    f"The hole for the {hole.name} comes {length(given, gap)} from the {found.name}; "
                    f"{length(given, limits['clearance_mm'])} is needed.",
                    values={
                        "gap_mm": gap,
                        "needed_mm": limits["clearance_mm"],
                        "short_mm": limits["clearance_mm"] - gap,
                    },
                    about=hole.name,
                )


RULE = Rule(
    id="hole-clear-of-glass",
    title="Holes clear of lites and louvres",
    discipline="holes",
    severity="error",
    basis="common practice",
    cure="Take another place for the unit.",
    judge=_judge,
    slot="unit",
    limits=(
        Limit(
            "clearance_mm",
            12.7,
            "Least distance of a hole from a lite or louvre.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
