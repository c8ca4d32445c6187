"""Rule: unit clear of the band that the frame's stop hides, shut and as the leaf swings."""

from collections.abc import Iterable

from hwsched.calc.opening.placement import Rect
from hwsched.rules.carried import of_centre
from hwsched.rules.reading import lock_item, lock_leaf, unit_part
from hwsched.rules.rounding import apart_allowances, by_rounding, least_excuse
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import ON_FACE, TOUCH_MM, gap_mm, less, plate_sizes
from hwsched.rules.solid.footprints import stop_bands, stop_carried
from hwsched.rules.solid.housing import housing_rect
from hwsched.rules.solid.off_stop import off_stop_mm
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, leaf, place = unit_part(given, fit), lock_leaf(given), fit.placement
    if unit is None or leaf is None or unit.kind != "surface-unit":
        return
    if place is not None and place.face not in ON_FACE:
        return
    bands, needs = stop_bands(given, leaf, place.face if place is not None else "inside")
    if needs:
        yield unknown(needs, "frame stop")
        return
    if place is None or not bands:
        return
    housing = housing_rect(place, unit)

    def at(bands: tuple[Rect, ...]) -> tuple[float, float, Rect]:
        """One distance for the nearest band: a unit in a corner is one trouble, not two."""
        return max(
            ((off_stop_mm(leaf, unit, band, housing.x0, limits), gap_mm(housing, band), band) for band in bands),
            key=lambda each: each[0] - each[1],
        )

    needed, gap, nearest = at(bands)
    if gap >= needed - TOUCH_MM:
        return
    if leaf.undercut_mm is None:
        needed, gap, nearest = at(stop_bands(given, leaf, place.face, surely=True)[0])
        if gap >= needed - TOUCH_MM:
            yield unknown(("leaf.undercut_mm",), "frame stop")
            return
    axes = apart_allowances(of_centre(lock_item(given)), stop_carried(given, leaf, nearest), plate_sizes(unit))
    excuse = least_excuse(axes, lambda more: gap_mm(housing, less(nearest, more[0], more[1])) >= needed - TOUCH_MM)
    if excuse is not None:
        yield by_rounding(given, excuse, needed - gap, "frame stop")
    else:
        swings = "" if needed <= limits["clearance_mm"] else " as the leaf swings on its hinges"
        yield Verdict(
            f"The {place.face} face closes against the frame's stop; the unit comes {length(given, gap)} from the band "
            f"that the stop hides, {length(given, needed)} is needed{swings}, short by {length(given, needed - gap)}.",
            values={"gap_mm": gap, "needed_mm": needed, "short_mm": needed - gap},
            about="frame stop",
        )


RULE = Rule(
    id="frame-stop-clear",
    title="Unit clear of the frame's stop",
    discipline="placement",
    severity="error",
    basis="geometry of handing (SDI 111 chart, secondary copy) and of the leaf's swing; common practice",
    cure="Move the unit toward the hinge edge, take a narrower one, or one in the leaf's edge.",
    judge=_judge,
    slot="unit",
    limits=(
        Limit(
            "clearance_mm",
            3.175,
            "Least distance of the unit from the band that the stop hides.",
            "from memory, unverified; the usual 1/8 in gap of a leaf in its frame",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
        Limit(
            "pin_mm",
            6.35,
            "From the centre of the hinge pins to the leaf's face on which they stand.",
            "from memory, unverified, 1/4 in",
            unit="mm",
            low=0.0,
            high=60.0,
        ),
    ),
)
