"""What holds a unit or a lock: screws for the leaf's material, pads on glass, bolts of a gate lock; their pilots."""

from collections.abc import Iterable
from dataclasses import replace
from math import inf
from typing import Final

from hwsched.attributes.of_parts import FORM, LEAF_MATERIAL, LENGTH_MM, MOUNTING, SCREW_SIZE, SCREWS, SIZE
from hwsched.fitting.candidate import cheapest, fit_part, judged, offered, with_parts
from hwsched.rules import RULES, limits_of, rule_named
from hwsched.rules.practice import clearance_hole_mm, distance_mm, lock_fasteners, screw_pilot_mm
from hwsched.rules.reading import SKINNED, entry, leaf_name, leafless, lock_item, lock_leaf, lock_part, unit_part
from hwsched.values import Fit, FitPart, Hole, OpeningInput, Part

_SCREW_LENGTH: Final = rule_named("screw-length")
GATE_BOLTS: Final = RULES[[rule.id for rule in RULES].index("gate-bolts")]

_THROUGH = ("through-bolt", "machine-screw")
"""Forms that are meant to pass the leaf."""


def fastening(given: OpeningInput, unit: Part) -> list[FitPart]:
    """Return what holds a unit on its leaf: its screws, or a pad on glass."""
    leaf = lock_leaf(given)
    material = leaf.material if leaf is not None else None
    if material is None or leafless(given):
        return []
    stock = [part for part in offered(given, "fastener", "fastener") if part.text_of(LEAF_MATERIAL) == material]
    # Glass is never drilled or cut after tempering: what stands on it is bonded.
    if material == "glass":
        pad = cheapest(given, [part for part in stock if part.text_of(FORM) == "adhesive"])
        return [] if pad is None else [fit_part(given, "fastener", pad, "glass is not drilled: the unit is bonded")]
    size, count = unit.text_of(SCREW_SIZE), unit.number_of(SCREWS)
    if not size or not count:
        return []
    right = [p for p in stock if p.text_of(SIZE) == size and p.text_of(FORM) not in ("adhesive", None)]
    thick = leaf.thickness_mm if leaf is not None else None
    # A screw that is not meant to pass must leave some of the leaf before its point, or it shows on the other face.
    most = inf if thick is None else thick - limits_of(_SCREW_LENGTH, given.settings)["left_mm"]
    short = [p for p in right if p.text_of(FORM) in _THROUGH or (p.number_of(LENGTH_MM) or 0.0) <= most]
    # Too long a screw is named all the same where there is no other: the rule on screw length then says by how much.
    screw = cheapest(given, short or right)
    if screw is None:
        return []
    reason = f"the unit takes {count:g} screws {size}; the leaf is {material.replace('-', ' ')}"
    return [fit_part(given, "fastener", screw, reason, count)]


def lock_bolts(given: OpeningInput, fit: Fit) -> list[FitPart]:
    """Return the fasteners that the lock wants besides its own: those that hold it, cheapest first.

    Where none does, the one that comes nearest: a rule then says what it lacks.
    """
    part, leaf = lock_part(given, fit), lock_leaf(given)
    if part is None or leaf is None:
        return []
    found = []
    for wanted in lock_fasteners(part.kind, part.text_of(MOUNTING) or ""):
        stock = [
            each
            for each in given.catalogue.of_kind("fastener")
            if each.text_of(FORM) == wanted.form
            and each.text_of(LEAF_MATERIAL) == leaf.material
            and not each.superseded_by
        ]
        tried = [(_against(given, fit, each), each) for each in stock]
        least = min((miss for miss, _ in tried), default=None)
        bolt = cheapest(given, [each for miss, each in tried if miss == least])
        if bolt is not None:
            found.append(fit_part(given, "fastener", bolt, wanted.reason, wanted.quantity))
    return found


def _against(given: OpeningInput, fit: Fit, bolt: Part) -> tuple[int, int, float]:
    """Tell how much speaks against a bolt: rules that refuse it, facts that it lacks, and by how much it is short."""
    alone = replace(fit, parts=tuple(part for part in fit.parts if part.role != "fastener"))
    found = judged(
        given,
        with_parts(alone, fit_part(given, "fastener", bolt, "")),
        "lock",
        bolt.number,
        "fastener",
        rules=(GATE_BOLTS,),
    )
    short = max((refusal.values.get("short_mm", inf) for refusal in found.refusals), default=0.0)
    return len(found.refusals), len(found.needs), short


def bolt_holes(given: OpeningInput, fit: Fit) -> Iterable[Hole]:
    """Yield the holes of the bolts that hold a gate lock, through the gate; the lock's case is their template."""
    part, lock, leaf = lock_part(given, fit), lock_item(given), lock_leaf(given)
    if part is None or lock is None or leaf is None or lock.backset_mm is None or lock.cylinder_height_mm is None:
        return
    for bolt in lock_bolts(given, fit):
        held = given.catalogue.get(bolt.part)
        diameter = clearance_hole_mm(held.text_of(SIZE) or "") if held is not None else None
        if diameter is None or held is None:
            continue
        yield Hole(
            f"holes for the lock's bolts {held.text_of(SIZE)}, through its case",
            leaf_name(leaf),
            "key",
            lock.backset_mm,
            lock.cylinder_height_mm,
            diameter,
            tool="twist-drill",
            jig="the lock's case as template",
            count=int(bolt.quantity),
            purpose="bolt",
            by_template=True,
        )


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
        round(place.x_mm + place.width_mm / 2, 3),
        round(place.y_mm + place.height_mm / 2, 3),
        pilot,
        depth_mm=depth,
        tool="twist-drill",
        jig="the unit's plate as template",
        order=order,
        count=int(count),
        purpose="fixing",
        by_template=True,
    )
