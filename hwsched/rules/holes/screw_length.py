"""Rule: the unit's screws end inside the leaf."""

from collections.abc import Iterable

from hwsched.rules.clearances import TOUCH_MM
from hwsched.rules.reading import SOLID, entry, leafless, lock_leaf, unit_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import length, unknown
from hwsched.values import Case, Fit


def _judge(case: Case, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf, unit = lock_leaf(case), unit_part(case, fit)
    if leaf is None or leafless(case) or leaf.material not in SOLID or leaf.thickness_mm is None:
        return
    if unit is None or unit.kind == "edge-unit":  # its screws go into the edge
        return
    for fitted in fit.parts:
        part = entry(case, fitted) if fitted.role == "fastener" else None
        if part is None or part.text_of("form") not in ("wood-screw", "sheet-metal-screw"):
            continue
        long = part.number_of("length_mm")
        if long is None:
            yield unknown((f"part {part.number}.length_mm",), part.number)
            continue
        most = leaf.thickness_mm - limits["left_mm"]
        if long > most + TOUCH_MM:
            yield Verdict(
                f"The screw of {length(case, long)} comes through a leaf of {length(case, leaf.thickness_mm)}; "
                f"{length(case, most)} is the most, {length(case, long - most)} too long.",
                values={"screw_mm": long, "allowed_mm": most, "short_mm": long - most},
                about=part.number,
            )


RULE = Rule(
    id="screw-length",
    title="Screws end inside the leaf",
    discipline="holes",
    severity="error",
    basis="common practice",
    cure="Add a shorter screw of that size to the catalogue.",
    judge=_judge,
    slot="unit",
    limits=(Limit("left_mm", 3.175, "Least material left before a screw's point.", "from memory, unverified"),),
)
