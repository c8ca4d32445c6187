"""What holds a lock besides its own screws: the bolts of a gate lock, and their holes through the gate."""

from collections.abc import Iterable
from dataclasses import replace
from math import inf
from typing import Final

from hwsched.attributes.of_parts import FORM, LEAF_MATERIAL, MOUNTING, SIZE
from hwsched.fitting.candidate import cheapest, fit_part, judged, with_parts
from hwsched.rules import rule_named
from hwsched.rules.practice import clearance_hole_mm, lock_fasteners
from hwsched.rules.reading import leaf_name, lock_item, lock_leaf, lock_part
from hwsched.values import Fit, FitPart, Hole, OpeningInput, Part

GATE_BOLTS: Final = rule_named("gate-bolts")
OF_BOLTS: Final = (GATE_BOLTS, rule_named("spanner-room"))
"""Rules that ask what a gate lock's bolts are, and whether they can be turned."""


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
        rules=OF_BOLTS,
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
