"""Rule: the unit covers all that is cut out of its face for the lead."""

from collections.abc import Iterable

from hwsched.calc.opening.placement import Rect
from hwsched.rules.reading import unit_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.bodies import drill_angle_deg, slot_of
from hwsched.rules.solid.bores import angled
from hwsched.rules.solid.clearances import ON_FACE, TOUCH_MM
from hwsched.rules.solid.footprints import footprints
from hwsched.rules.wording import length
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, place = unit_part(given, fit), fit.placement
    if unit is None or place is None or place.face not in ON_FACE or unit.kind != "surface-unit":
        return
    # The plate alone: a window that reaches past it says where a hole may be, not that anything covers it.
    plate = Rect(place.x_mm, place.y_mm, place.x_mm + place.width_mm, place.y_mm + place.height_mm)
    margin = limits["margin_mm"]
    for hole in fit.holes:
        # Of what the lock needs only a reader's hole comes out under the unit: its lead goes on through it.
        if hole.face != place.face or hole.purpose not in ("cable", "channel", "function") or hole.by_template:
            continue
        # A channel begins at the bottom of its square hole, and leaves nothing on the face but that hole's slot.
        if hole.from_depth_mm > 0:
            continue
        cut = slot_of(hole)
        covers = [
            plate,
            *(each.rect for each in footprints(given, fit, place.face) if each.kind == "lock" and each.rect),
        ]
        out = min(_out(cut, cover) for cover in covers)
        if out > TOUCH_MM - margin:
            # No shift of the unit covers such a slot: what is wrong is how flat the bit lies, and that is said.
            if _longest(cut) > _longest(plate) and (flat := _flattest_deg(fit)) is not None:
                yield Verdict(
                    f"The bit would lie at {flat:.1f} degrees to the face and leave a slot "
                    f"{length(given, _longest(cut))} long; the unit is "
                    f"{length(given, _longest(plate))} long.",
                    "Take another way for the lead, or another unit: wherever this stands, it covers no slot so long.",
                    values={"short_mm": out + margin, "angle_deg": flat},
                    about=hole.name,
                )
                continue
            what = "the slot of the tilted bit" if hole.slot_mm else "its rim"
            yield Verdict(
                f"The {hole.name} is not covered: {what} stands {length(given, out + margin)} too far out from under "
                "the unit.",
                values={"short_mm": out + margin},
                about=hole.name,
            )


def _flattest_deg(fit: Fit) -> float | None:
    """Return at how many degrees to the face the flattest bit of a fit stands; none where none is tilted."""
    return min((drill_angle_deg(hole) for hole in angled(fit)), default=None)


def _longest(rect: Rect) -> float:
    return max(rect.x1 - rect.x0, rect.y1 - rect.y0)


def _out(cut: Rect, cover: Rect) -> float:
    """Return how far a cut reaches out from under a cover; negative: by how much it is covered more than just so."""
    return max(cover.x0 - cut.x0, cut.x1 - cover.x1, cover.y0 - cut.y0, cut.y1 - cover.y1)


RULE = Rule(
    id="hole-covered",
    title="Unit covers what is cut for the lead",
    discipline="holes",
    severity="error",
    basis="geometry; common practice",
    cure="Move the unit over the hole, take a larger one, or another way for the lead.",
    judge=_judge,
    slot="unit",
    limits=(
        Limit(
            "margin_mm",
            0.0,
            "By how much the unit must reach past a hole's rim or a slot's end.",
            "common practice: what is covered is not seen",
            unit="mm",
            low=0.0,
            high=50.0,
        ),
    ),
)
