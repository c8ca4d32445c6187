"""The unit's slot: which control unit, where on or in the leaf, with which lead and fasteners.

Whether a candidate will do is said by the rules of the slot; where it can stand in `surface`, `in_edge`, `at_wall`.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from hwsched.fitting.at_wall import at_wall
from hwsched.fitting.candidate import (
    Judged,
    by_hand,
    fitted,
    judged,
    missing_for_better,
    numbers_in,
    offered,
    rank_of,
    with_parts,
)
from hwsched.fitting.fastening import fastening
from hwsched.fitting.in_edge import pockets
from hwsched.fitting.surface import places
from hwsched.fitting.ways import ORDER
from hwsched.rules.cavity import cavity
from hwsched.rules.placement.unit_place_known import RULE as UNIT_PLACE_KNOWN
from hwsched.rules.reading import leaf_span_mm, leafless, lock_leaf
from hwsched.rules.wording import length
from hwsched.values import Case, Fit, Part, Refusal


@dataclass(frozen=True, slots=True)
class UnitSlot:
    """All candidates of the unit's slot."""

    good: tuple[Judged, ...]
    """Best first."""
    others: tuple[Judged, ...]
    needs: tuple[str, ...]
    """Facts of the survey without which a better candidate than the good ones can be neither taken nor refused."""


def unit_slot(case: Case, base: Fit) -> UnitSlot:
    """Judge every control unit for an opening whose lock is chosen."""
    good: list[Judged] = []
    others: list[Judged] = []
    for unit in offered(case, "unit", *_kinds(case)):
        best, refused = _of_unit(case, base, unit)
        if best is not None:
            good.append(best)
        others += refused
    good.sort(key=lambda found: (*rank_of(case, found.fit), _order(found.fit), numbers_in(found.fit)))
    return UnitSlot(tuple(good), tuple(others), missing_for_better(case, good, others))


def _kinds(case: Case) -> tuple[str, ...]:
    """Return the kinds that may stand where a person placed the unit; all where nobody did."""
    if case.placed is None:
        return "surface-unit", "edge-unit"
    return ("edge-unit",) if case.placed.face == "edge" else ("surface-unit",)


def kept(case: Case, slot: UnitSlot) -> tuple[Judged, ...]:
    """Return the candidates to go on with: the good ones, or what a person chose though rules refuse it."""
    if slot.good:
        return slot.good
    if by_hand(case, "unit") or case.placed is not None:
        refused = [each for each in slot.others if each.fit.placement is not None] or list(slot.others)
        return tuple(sorted(refused, key=lambda each: (each.miss(), rank_of(case, each.fit)))[:1])
    return ()


def _of_unit(case: Case, base: Fit, unit: Part) -> tuple[Judged | None, list[Judged]]:
    """Return a unit's best place that nothing speaks against, and else what speaks against each."""
    bare = with_parts(base, fitted(case, "unit", unit, _why(case, unit)), *fastening(case, unit))
    first = judged(case, bare, "unit", unit.number, "unit")
    chosen = by_hand(case, "unit") or case.placed is not None
    if not first.good and not chosen:
        return None, [first]
    refused: list[Judged] = []
    for partial, said in _placed(case, bare, unit):
        found = judged(case, partial, "unit", unit.number, "unit", said)
        if found.good and found.fit.placement is not None:
            return found, refused
        refused.append(_without_place(found, unit, said))
    return None, refused or [_without_place(first, unit, "")]


def _without_place(found: Judged, unit: Part, said: str) -> Judged:
    """Refuse a candidate that no rule speaks against and that has no place all the same."""
    if not found.good:
        return found
    reason = f"{said}its place on the leaf cannot be worked out from the facts and the part's attributes."
    return replace(found, refusals=(Refusal(unit.number, "unit", UNIT_PLACE_KNOWN.id, reason),))


def _order(fit: Fit) -> int:
    return ORDER.get(fit.placement.pattern, 9) if fit.placement is not None else 9


def _why(case: Case, unit: Part) -> str:
    leaf = lock_leaf(case)
    if unit.kind == "edge-unit":
        return "the unit stands in the leaf's edge, beside the lock"
    housing = f"{unit.text_of('housing') or 'surface'} housing"
    if leafless(case) or leaf is None:
        return f"a {housing} behind the reader"
    if leaf.construction == "narrow-stile" and leaf.stile_mm is not None:
        return f"a {housing} for a stile of {length(case, leaf.stile_mm)}"
    return f"a {housing} on the secured side of a leaf of {(leaf.material or 'unknown material').replace('-', ' ')}"


def _placed(case: Case, bare: Fit, unit: Part) -> Iterator[tuple[Fit, str]]:
    if leafless(case):
        yield at_wall(case, bare, unit), ""
        return
    leaf, at = lock_leaf(case), cavity(case, bare)
    span = leaf_span_mm(case, leaf) if leaf is not None else None
    if leaf is None or at is None or span is None:
        return
    if not span[0] < at.y < span[1] or (leaf.width_mm is not None and at.x > leaf.width_mm):
        return
    if unit.kind == "edge-unit":
        yield from pockets(case, bare, unit, leaf, at, span)
    else:
        yield from places(case, bare, unit, leaf, at, span)
