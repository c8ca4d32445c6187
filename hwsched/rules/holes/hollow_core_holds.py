"""Rule: in a wood leaf that is hollow between its faces screws and pockets lie in the lock block."""

from collections.abc import Iterable
from typing import Final

from hwsched.attributes.of_parts import FORM
from hwsched.calc.opening.placement import Rect
from hwsched.rules.reading import entry, lock_item, lock_leaf, unit_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import TOUCH_MM
from hwsched.rules.solid.screws import screw_places
from hwsched.rules.wording import length
from hwsched.values import Fit, FitPart, OpeningInput

_WOOD: Final = ("wood", "composite")
_HOLLOW: Final = ("honeycomb", "foam", "empty")
_BITES: Final = ("wood-screw", "sheet-metal-screw")
"""What holds by its thread alone; a bolt with a nut holds by both faces."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf, unit, place, lock = lock_leaf(given), unit_part(given, fit), fit.placement, lock_item(given)
    if leaf is None or unit is None or place is None or lock is None or lock.cylinder_height_mm is None:
        return
    if leaf.material not in _WOOD or leaf.core not in _HOLLOW:
        return
    pocket = unit.kind == "edge-unit"
    what = "The unit's pocket reaches" if pocket else "The unit's screws reach"
    bites = [part for part in fit.parts if part.role == "fastener" and _form(given, part) in _BITES]
    if not pocket and not bites:
        return
    spots = screw_places(unit, place.width_mm, place.height_mm)
    cut = (
        Rect(0.0, place.y_mm, 0.0, place.y_mm + place.height_mm)
        if pocket
        else _round(tuple((place.x_mm + x, place.y_mm + y) for x, y in spots))
    )
    half, wide = limits["block_height_mm"] / 2, limits["block_width_mm"]
    middle = lock.cylinder_height_mm
    out = max(cut.x1 - wide, middle - half - cut.y0, cut.y1 - middle - half)
    block = f"{length(given, wide)} wide and {length(given, 2 * half)} high about the lock"
    if out > TOUCH_MM:
        yield Verdict(
            f"The leaf is hollow between its faces. {what} {length(given, out)} past a usual lock block, {block}: "
            "there nothing holds but the leaf's skin.",
            values={"out_mm": out},
            about=unit.number,
        )
        return
    yield Verdict(
        f"The leaf is hollow between its faces but for its lock block, taken to be {block}: knock for it before you "
        "drill.",
        severity="note",
        about=unit.number,
    )


def _form(given: OpeningInput, fit_part: FitPart) -> str | None:
    part = entry(given, fit_part)
    return None if part is None else part.text_of(FORM)


def _round(spots: tuple[tuple[float, float], ...]) -> Rect:
    xs, ys = [x for x, _ in spots] or [0.0], [y for _, y in spots] or [0.0]
    return Rect(min(xs), min(ys), max(xs), max(ys))


RULE = Rule(
    id="hollow-core-holds",
    title="Screws in a hollow leaf stand in its lock block",
    discipline="holes",
    severity="warning",
    basis="specification practice, from memory, unverified: lock blocks 5 in wide, 18 to 24 in high",
    cure="Find the lock block, take bolts through the leaf with sleeve nuts, or a place nearer to the lock.",
    judge=_judge,
    limits=(
        Limit(
            "block_width_mm",
            127.0,
            "How far a hollow leaf's lock block reaches in from the lock edge.",
            "specification practice, from memory, unverified: 5 in",
            unit="mm",
            low=0.0,
            high=500.0,
        ),
        Limit(
            "block_height_mm",
            457.2,
            "Height of a hollow leaf's lock block, half of it above the cylinder.",
            "specification practice, from memory, unverified: 18 to 24 in",
            unit="mm",
            low=0.0,
            high=3000.0,
        ),
    ),
)
