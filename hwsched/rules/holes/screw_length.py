"""Rule: the unit's screws end inside the leaf."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import FORM, LENGTH_MM, SCREW_SEAT_MM
from hwsched.rules.clearances import TOUCH_MM
from hwsched.rules.reading import entry, leafless, lock_leaf, unit_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf, unit = lock_leaf(given), unit_part(given, fit)
    # Through a hollow leaf too: a long screw comes out of the far sheet.
    if leaf is None or leafless(given) or leaf.thickness_mm is None:
        return
    if unit is None or unit.kind == "edge-unit":  # its screws go into the edge
        return
    for fit_part in fit.parts:
        part = entry(given, fit_part) if fit_part.role == "fastener" else None
        if part is None or part.text_of(FORM) not in ("wood-screw", "sheet-metal-screw"):
            continue
        long = part.number_of(LENGTH_MM)
        if long is None:
            yield unknown((f"part {part.number}.length_mm",), part.number)
            continue
        most = leaf.thickness_mm - limits["left_mm"] + (unit.number_of(SCREW_SEAT_MM) or 0.0)
        if long > most + TOUCH_MM:
            yield Verdict(
                f"The screw of {length(given, long)} comes through a leaf of {length(given, leaf.thickness_mm)}; "
                f"{length(given, most)} is the most, {length(given, long - most)} too long.",
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
    limits=(
        Limit(
            "left_mm",
            3.175,
            "Least material left before a screw's point.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
