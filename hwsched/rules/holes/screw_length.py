"""Rule: the unit's screws end inside the leaf, and those that are meant to pass it reach the nuts on its far side."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import FORM, LENGTH_MM, SCREW_SEAT_MM, SCREW_SIZE, SIZE
from hwsched.rules.reading import entry, leafless, lock_leaf, unit_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import TOUCH_MM
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput, Part

_ENDS_IN_LEAF = ("wood-screw", "sheet-metal-screw")
_PASSES = ("machine-screw", "through-bolt")


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf, unit = lock_leaf(given), unit_part(given, fit)
    # Through a hollow leaf too: a long screw comes out of the far sheet.
    if leaf is None or leafless(given) or leaf.thickness_mm is None:
        return
    if unit is None or unit.kind == "edge-unit":  # its screws go into the edge
        return
    for fit_part in fit.parts:
        part = entry(given, fit_part) if fit_part.role == "fastener" else None
        if part is None or not (part.text_of(FORM) in _ENDS_IN_LEAF or _passes(part, unit)):
            continue
        long = part.number_of(LENGTH_MM)
        if long is None:
            yield unknown((f"part {part.number}.length_mm",), part.number)
            continue
        seat = unit.number_of(SCREW_SEAT_MM) or 0.0
        if _passes(part, unit):
            yield from _through(given, part, long, leaf.thickness_mm + seat, limits["sleeve_mm"])
            continue
        most = leaf.thickness_mm - limits["left_mm"] + seat
        if long > most + TOUCH_MM:
            yield Verdict(
                f"The screw of {length(given, long)} comes through a leaf of {length(given, leaf.thickness_mm)}; "
                f"{length(given, most)} is the most, {length(given, long - most)} too long.",
                values={"screw_mm": long, "allowed_mm": most, "short_mm": long - most},
                about=part.number,
            )


def _passes(part: Part, unit: Part) -> bool:
    """Tell whether a fastener is one of the unit's own that passes the leaf; the bolts of a gate lock are not."""
    return part.text_of(FORM) in _PASSES and part.text_of(SIZE) == unit.text_of(SCREW_SIZE)


def _through(given: OpeningInput, part: Part, long: float, way: float, sleeve: float) -> Iterable[Verdict]:
    least = way - sleeve
    if long < least - TOUCH_MM:
        yield Verdict(
            f"The screw of {length(given, long)} has {length(given, way)} of plate and leaf to pass; a sleeve nut "
            f"comes {length(given, sleeve)} to meet it: short by {length(given, least - long)}.",
            "Add a longer screw of that size to the catalogue.",
            values={"screw_mm": long, "needed_mm": least, "short_mm": least - long},
            about=part.number,
        )


RULE = Rule(
    id="screw-length",
    title="Screws end inside the leaf, or pass it",
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
        Limit(
            "sleeve_mm",
            12.7,
            "How far a sleeve nut comes into the leaf to meet a screw that passes it.",
            "from memory, unverified, 1/2 in",
            unit="mm",
            low=0.0,
            high=100.0,
        ),
    ),
)
