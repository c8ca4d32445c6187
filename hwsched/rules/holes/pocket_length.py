"""Rule: the lock edge has the clear length that an in-edge unit's pocket wants, with a bridge to the lock's own."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import POCKET_LENGTH_MM
from hwsched.rules.reading import leaf_reach_mm, leaf_span_mm, lock_leaf, unit_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import TOUCH_MM
from hwsched.rules.solid.edge import clear_edge, edge_needs
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput, Placement


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit = unit_part(given, fit)
    if unit is None or unit.kind != "edge-unit":
        return
    needed = unit.number_of(POCKET_LENGTH_MM)
    needs = edge_needs(given)
    if needed is None or needs:
        yield unknown(needs or (f"part {unit.number}.pocket_length_mm",), unit.number)
        return
    leaf, margin = lock_leaf(given), limits["edge_margin_mm"]
    span, reach = (leaf_span_mm(given, leaf), leaf_reach_mm(given, leaf)) if leaf is not None else (None, None)
    longest = clear_edge(given, limits["bridge_mm"], margin, reach)
    if longest >= needed - TOUCH_MM:
        surely = clear_edge(given, limits["bridge_mm"], margin, span) >= needed - TOUCH_MM
        # What hangs on the undercut alone is asked: whether there is such a stretch, or whether it is where it is cut.
        if span != reach and not (surely and _within(fit.placement, span, margin)):
            yield unknown(("leaf.undercut_mm",), unit.number)
    else:
        bridge = length(given, limits["bridge_mm"])
        yield Verdict(
            f"The longest clear stretch of the lock edge, {bridge} of bridge to the lock's pocket left, is "
            f"{length(given, longest)}; the unit's pocket is {length(given, needed)}: short by "
            f"{length(given, needed - longest)}.",
            values={"clear_mm": longest, "needed_mm": needed, "short_mm": needed - longest},
            about=unit.number,
        )


def _within(place: Placement | None, span: tuple[float, float] | None, margin: float) -> bool:
    """Tell whether a pocket lies in what the leaf surely covers; a place that a person chose may be anywhere."""
    if place is None or place.face != "edge" or span is None or place.source == "by-hand":
        return True
    low, high = span[0] + margin - TOUCH_MM, span[1] - margin + TOUCH_MM
    return low <= place.y_mm and place.y_mm + place.height_mm <= high


RULE = Rule(
    id="pocket-length",
    title="Clear edge for the in-edge unit",
    discipline="holes",
    severity="error",
    basis="the unit's template says how much clear edge it takes",
    cure="Take a surface unit, or clear the edge of other hardware.",
    judge=_judge,
    slot="unit",
    limits=(
        Limit(
            "bridge_mm",
            19.05,
            "Material left between the unit's pocket and the lock's.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
        Limit(
            "edge_margin_mm",
            50.8,
            "Least distance of the pocket from the leaf's top and bottom.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=1000.0,
        ),
    ),
)
