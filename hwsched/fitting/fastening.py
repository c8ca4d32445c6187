"""What holds a unit: screws for the leaf's material, pads on glass, and their pilots. Of a lock: `bolts`."""

from collections.abc import Iterable
from dataclasses import replace
from math import inf
from typing import Final

from hwsched.attributes.of_parts import FORM, LEAF_MATERIAL, LENGTH_MM, SCREW_SEAT_MM, SCREW_SIZE, SCREWS, SIZE
from hwsched.fitting.candidate import by_hand, cheapest, fit_part, offered_of, worth
from hwsched.rules import judge, limits_of, rule_named
from hwsched.rules.practice import distance_mm, screw_pilot_mm
from hwsched.rules.reading import SKINNED, entry, leafless, lock_leaf, unit_part
from hwsched.rules.solid.clearances import TOUCH_MM
from hwsched.rules.solid.screws import places_given
from hwsched.values import Fit, FitPart, Hole, OpeningInput, Part

_SCREW_LENGTH: Final = rule_named("screw-length")
_OF_SCREWS: Final = (_SCREW_LENGTH, rule_named("screw-clear"), rule_named("screw-beside-hole"))
"""What the length of a screw can mend."""

_THROUGH = ("through-bolt", "machine-screw")
"""Forms that are meant to pass the leaf."""


def fastening(given: OpeningInput, unit: Part) -> list[FitPart]:
    """Return what holds a unit on its leaf: its screws, or a pad on glass."""
    leaf = lock_leaf(given)
    material = leaf.material if leaf is not None else None
    if material is None or leafless(given):
        return []
    stock = offered_of(given, "fastener", LEAF_MATERIAL, material)
    # Glass is never drilled or cut after tempering: what stands on it is bonded.
    if material == "glass":
        pad = cheapest(given, [part for part in stock if part.text_of(FORM) == "adhesive"])
        return [] if pad is None else [fit_part(given, "fastener", pad, "glass is not drilled: the unit is bonded")]
    size, count = unit.text_of(SCREW_SIZE), unit.number_of(SCREWS)
    if not size or not count:
        return []
    right = [p for p in stock if p.text_of(SIZE) == size and _holds_in(p, unit)]
    thick = leaf.thickness_mm if leaf is not None else None
    limits, seat = limits_of(_SCREW_LENGTH, given.settings), unit.number_of(SCREW_SEAT_MM) or 0.0
    # A screw that is not meant to pass must leave some of the leaf before its point, or it shows on the other face; one
    # that is must reach its nut.
    most = inf if thick is None else thick + seat - limits["left_mm"] + TOUCH_MM
    least = 0.0 if thick is None else thick + seat - limits["sleeve_mm"] - TOUCH_MM
    passing = [p for p in right if p.text_of(FORM) in _THROUGH]
    ending = [p for p in right if p.text_of(FORM) not in _THROUGH]
    will_do = [p for p in passing if (p.number_of(LENGTH_MM) or inf) >= least]
    will_do += [p for p in ending if (p.number_of(LENGTH_MM) or 0.0) <= most]
    # What will not do is named all the same where there is no other: the rule on screw length then says by how much.
    screw = cheapest(given, will_do or right)
    return [] if screw is None else [_as_fastener(given, unit, screw, count)]


def _holds_in(screw: Part, unit: Part) -> bool:
    form = screw.text_of(FORM)
    # Nothing passes a leaf from its edge.
    return form not in ("adhesive", None) and not (unit.kind == "edge-unit" and form in _THROUGH)


def fastened(given: OpeningInput, placed: Fit) -> Fit:
    """Choose the screws of a unit again where its place is known: the longest that end before what is in the leaf."""
    unit, here = unit_part(given, placed), next((part for part in placed.parts if part.role == "fastener"), None)
    if unit is None or here is None or by_hand(given, "fastener") or placed.placement is None or leafless(given):
        return placed
    material = leaf.material if (leaf := lock_leaf(given)) is not None else None
    size = unit.text_of(SCREW_SIZE)
    stock = [
        part
        for part in offered_of(given, "fastener", LEAF_MATERIAL, material)
        if part.text_of(SIZE) == size and _holds_in(part, unit)
    ]
    if not size or not stock:
        return placed
    # Longer holds better, and among screws of one length the price decides.
    stock.sort(key=lambda part: (-(part.number_of(LENGTH_MM) or 0.0), worth(part, given.exchange), part.number))
    for screw in stock:
        tried = _with_fastener(given, placed, unit, screw)
        if _holds(given, tried):
            return tried
    # None does: what comes nearest stays, so that the rules say by how much it is too long, or too short to pass.
    return _with_fastener(given, placed, unit, stock[0]) if stock[0].text_of(FORM) in _THROUGH else tried


def _holds(given: OpeningInput, fit: Fit) -> bool:
    off = given.settings.rules_off
    return not any(
        any(True for _ in judge(rule, given, fit, settings=given.settings)) for rule in _OF_SCREWS if rule.id not in off
    )


def _with_fastener(given: OpeningInput, placed: Fit, unit: Part, screw: Part) -> Fit:
    count = unit.number_of(SCREWS) or 0.0
    parts = (_as_fastener(given, unit, screw, count) if p.role == "fastener" else p for p in placed.parts)
    return replace(placed, parts=tuple(parts))


def _as_fastener(given: OpeningInput, unit: Part, screw: Part, count: float) -> FitPart:
    leaf = lock_leaf(given)
    material = (leaf.material if leaf is not None else None) or ""
    told = places_given(unit) or count < 2 or unit.kind == "edge-unit"
    where = "" if told else "; taken to stand 6 mm inside the plate's corners"
    reason = f"the unit takes {count:g} screws {screw.text_of(SIZE)}{where}; the leaf is {material.replace('-', ' ')}"
    return fit_part(given, "fastener", screw, reason, count)


def pilots(given: OpeningInput, fit: Fit, order: int) -> Iterable[Hole]:
    """Yield the pilots of the unit's screws; the unit itself is their template."""
    unit, place, leaf = unit_part(given, fit), fit.placement, lock_leaf(given)
    if unit is None or place is None or leaf is None or leaf.material is None or place.face == "wall":
        return
    size, count = unit.text_of(SCREW_SIZE), unit.number_of(SCREWS)
    screw = next((e for p in fit.parts if p.role == "fastener" and (e := entry(given, p)) and e.text_of(SIZE)), None)
    if not size or not count or screw is None or screw.text_of(FORM) == "adhesive":
        return
    pilot = screw_pilot_mm(leaf.material, size)
    if pilot is None:
        return
    through = screw.text_of(FORM) in _THROUGH
    depth = None if through else screw.number_of(LENGTH_MM)
    if leaf.material in SKINNED and not through:
        # In a leaf of sheet and core the screw holds in the sheet: the pilot need go no farther.
        depth = distance_mm("skin-depth")
    in_edge = place.face == "edge"
    yield Hole(
        f"pilots for the unit's screws {size}, through its plate",
        place.leaf,
        "lock-edge" if in_edge else place.face,
        place.x_mm + place.width_mm / 2,
        place.y_mm + place.height_mm / 2,
        pilot,
        depth_mm=depth,
        tool="twist-drill",
        jig="the unit's plate as template",
        order=order,
        count=int(count),
        purpose="fixing",
        by_template=True,
    )
