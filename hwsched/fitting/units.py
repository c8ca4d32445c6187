"""The unit's slot: which control unit, where on or in the leaf, with which lead and fasteners.

Whether a candidate will do is said by the rules of the slot; where it can stand in `surface`, `in_edge`, `at_wall`.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import islice
from typing import Final

from hwsched.attributes.of_parts import HOUSING
from hwsched.fitting.at_wall import at_wall
from hwsched.fitting.candidate import (
    Judged,
    by_hand,
    fit_part,
    judged,
    judged_on,
    missing_for_better,
    numbers_in,
    offered,
    rank_of,
    with_parts,
)
from hwsched.fitting.fastening import fastened, fastening
from hwsched.fitting.in_edge import pockets
from hwsched.fitting.slots import Slots
from hwsched.fitting.surface import finer_places, places
from hwsched.fitting.ways import ORDER
from hwsched.rules import RULES, rule_named, rules_in_slot
from hwsched.rules.reading import leaf_reach_mm, leaf_span_mm, leafless, lock_leaf
from hwsched.rules.solid.cavity import cavity
from hwsched.rules.wording import length
from hwsched.values import Fit, OpeningInput, Part, Placement, Refusal

_UNIT_PLACE_KNOWN: Final = rule_named("unit-place-known")
_OF_HOLES: Final = frozenset(
    rule.id for rule in RULES if rule.slot == "unit" and (rule.discipline == "holes" or rule.id == "spanner-room")
)
"""Rules of which another place of hole and plate may be free."""
_REST: Final = tuple(rule for rule in rules_in_slot("unit") if rule.discipline in ("fire-door", "egress"))
_ALIKE: Final = tuple(rule for rule in rules_in_slot("unit") if rule not in _REST)
"""Rules that ask neither for the label nor for the use of the door, which differ more often than its shape."""
_OF_PLACE: Final = frozenset(
    (
        *("closer-clear", "exit-device-clear", "frame-stop-clear", "glazing-clear", "item-clear", "label-clear"),
        *("lever-clear", "plate-within-leaf", "thumb-turn-clear", "trim-clear", "unit-place-known"),
        *("lock-within-leaf", "pocket-length"),
    )
)
"""Rules that ask even of a unit without a place where the lock stands, and what is round it."""
_OWN: Final = tuple(rule for rule in _ALIKE if rule.id not in _OF_PLACE)
"""Rules that say the same of a unit without a place wherever the lock stands."""
_BUT_OWN: Final = tuple(rule for rule in rules_in_slot("unit") if rule not in _OWN)


@dataclass(frozen=True, slots=True)
class UnitSlot:
    """All candidates of the unit's slot."""

    good: tuple[Judged, ...]
    """Best first."""
    others: tuple[Judged, ...]
    needs: tuple[str, ...]
    """Facts of the survey without which a better candidate than the good ones can be neither taken nor refused."""


def unit_slot(slots: Slots, base: Fit) -> UnitSlot:
    """Judge every control unit for an opening whose lock is chosen."""
    given = slots.given
    good: list[Judged] = []
    others: list[Judged] = []
    for unit in offered(given, "unit", *_kinds(given)):
        best, refused = _of_unit(slots, base, unit)
        if best is not None:
            good.append(best)
        others += refused
    # Where price and holes tie, the trade's order decides: straight behind the cylinder, above it, below it.
    good.sort(key=lambda found: (*rank_of(given, found.fit), _order(found.fit), numbers_in(found.fit)))
    return UnitSlot(tuple(good), tuple(others), missing_for_better(given, good, others))


def _kinds(given: OpeningInput) -> tuple[str, ...]:
    """Return the kinds that may stand where a person placed the unit; all where nobody did."""
    if given.placed is None:
        return "surface-unit", "edge-unit"
    return ("edge-unit",) if given.placed.face == "edge" else ("surface-unit",)


def kept(given: OpeningInput, slot: UnitSlot) -> tuple[Judged, ...]:
    """Return the candidates to go on with: the good ones, or what a person chose though rules refuse it."""
    if slot.good:
        return slot.good
    if by_hand(given, "unit") or given.placed is not None:
        refused = [each for each in slot.others if each.fit.placement is not None] or list(slot.others)
        return tuple(sorted(refused, key=lambda each: (each.miss(), rank_of(given, each.fit)))[:1])
    return ()


def _of_unit(slots: Slots, base: Fit, unit: Part) -> tuple[Judged | None, list[Judged]]:
    """Return a unit's best place that nothing speaks against, and else what speaks against each."""
    given = slots.given
    # What the unit itself is refused for no place on the leaf mends.
    own = slots.of(("unit alone", unit.number), base, lambda inner: _alone(inner.given, base, unit))
    first = judged_on(given, own, "unit", unit.number, "unit", _BUT_OWN)
    if not first.good and not _chosen(given):
        return None, [first]
    # As far as most need it, it is shared by openings that differ in what their label and their use ask only.
    alike = slots.of(("stands", unit.number), own.fit, lambda inner: _stands(inner.given, own.fit, unit))
    refused: list[Judged] = []
    for found, said in _at_places(given, own.fit, alike, unit):
        if found.good and found.fit.placement is not None:
            # Places come best first: the first that nothing speaks against is the best.
            return found, refused
        refused.append(_without_place(found, unit, said))
    if not _chosen(given) and any(_by_its_holes(each) for each in refused):
        for placed, said in _placed(given, own.fit, unit, finer=True):
            found = judged(given, fastened(given, placed), "unit", unit.number, "unit", said)
            if found.good:
                return found, refused
            if found.lacking:
                # Nothing is refused for good where another place waits for a fact only.
                refused.append(found)
    return None, refused or [_without_place(first, unit, "")]


def other_places(given: OpeningInput, base: Fit, unit: Part, placed: Placement | None) -> tuple[Judged, ...]:
    """Return the places of a unit that nothing of its slot speaks against, but for one, best of each way first.

    Among them those that wait for a fact.

    Asked only where the best place of every unit led nowhere: power or the lock's own bores may bear another one.
    """
    bare = _bare(given, base, unit)
    found: list[Judged] = []
    for finer in (False, True):
        for each, said in _placed(given, bare, unit, finer=finer):
            made = judged(given, fastened(given, each), "unit", unit.number, "unit", said)
            if not made.refusals and made.fit.placement is not None and made.fit.placement != placed:
                found.append(made)
    return tuple(found)


@dataclass(frozen=True, slots=True)
class _Stands:
    """A unit at its places as the rules judge it that ask neither for the label nor for the use of the door."""

    places: tuple[tuple[Judged, str], ...]
    """Best first, up to the one that none of them speaks against; with what is said of each."""
    more: bool
    """Whether there are more."""


def _alone(given: OpeningInput, base: Fit, unit: Part) -> Judged:
    return judged(given, _bare(given, base, unit), "unit", unit.number, "unit", rules=_OWN)


def _bare(given: OpeningInput, base: Fit, unit: Part) -> Fit:
    """Return the unit with what fastens it, without a place."""
    return with_parts(base, fit_part(given, "unit", unit, _why(given, unit)), *fastening(given, unit))


def _stands(given: OpeningInput, bare: Fit, unit: Part) -> _Stands:
    found: list[tuple[Judged, str]] = []
    for placed, said in _placed(given, bare, unit):
        each = judged(given, fastened(given, placed), "unit", unit.number, "unit", said, rules=_ALIKE)
        found.append((each, said))
        if each.good and each.fit.placement is not None:
            return _Stands(tuple(found), more=True)
    return _Stands(tuple(found), more=False)


def _at_places(given: OpeningInput, bare: Fit, alike: _Stands, unit: Part) -> Iterator[tuple[Judged, str]]:
    """Yield the unit at its places, judged by all rules."""
    for each, said in alike.places:
        yield judged_on(given, each, "unit", unit.number, "unit", _REST, said), said
    for placed, said in islice(_placed(given, bare, unit), len(alike.places), None) if alike.more else ():
        yield judged(given, fastened(given, placed), "unit", unit.number, "unit", said), said


def _chosen(given: OpeningInput) -> bool:
    return by_hand(given, "unit") or given.placed is not None


def _by_its_holes(found: Judged) -> bool:
    """Tell whether nothing but its holes and screws speaks against a place: then another one may do."""
    return bool(found.refusals) and all(each.rule in _OF_HOLES for each in found.refusals)


def _without_place(found: Judged, unit: Part, said: str) -> Judged:
    """Refuse a candidate that no rule speaks against and that has no place all the same."""
    if not found.good:
        return found
    reason = f"{said}its place on the leaf cannot be worked out from the facts and the part's attributes."
    return replace(found, refusals=(Refusal(unit.number, "unit", _UNIT_PLACE_KNOWN.id, reason),))


def _order(fit: Fit) -> int:
    return ORDER.get(fit.placement.pattern, 9) if fit.placement is not None else 9


def _why(given: OpeningInput, unit: Part) -> str:
    leaf = lock_leaf(given)
    if unit.kind == "edge-unit":
        return "the unit stands in the leaf's edge, beside the lock"
    housing = f"{unit.text_of(HOUSING) or 'surface'} housing"
    if leafless(given) or leaf is None:
        return f"a {housing} behind the reader"
    if leaf.construction == "narrow-stile" and leaf.stile_mm is not None:
        return f"a {housing} for a stile of {length(given, leaf.stile_mm)}"
    return f"a {housing} on the inside of a leaf of {(leaf.material or 'unknown material').replace('-', ' ')}"


def _placed(given: OpeningInput, bare: Fit, unit: Part, *, finer: bool = False) -> Iterator[tuple[Fit, str]]:
    """Yield the unit at its places; finer: at many of each way, where the best of it would not do."""
    if leafless(given):
        if not finer:
            yield at_wall(given, bare, unit), ""
        return
    leaf, at = lock_leaf(given), cavity(given, bare)
    span, reach = (leaf_span_mm(given, leaf), leaf_reach_mm(given, leaf)) if leaf is not None else (None, None)
    if leaf is None or at is None or span is None or reach is None:
        return
    # A lock outside its leaf is an error of the survey; a place worked out from it would be drilled.
    if not reach[0] < at.y < reach[1] or (leaf.width_mm is not None and at.x > leaf.width_mm):
        return
    if finer:
        if unit.kind != "edge-unit":
            yield from finer_places(given, bare, unit, leaf, at, span)
    elif unit.kind == "edge-unit":
        # Where the leaf may reach farther, nobody having measured its undercut, a rule asks for that.
        for each in dict.fromkeys((span, reach)):
            yield from pockets(given, bare, unit, leaf, at, each)
    else:
        yield from places(given, bare, unit, leaf, at, span)
