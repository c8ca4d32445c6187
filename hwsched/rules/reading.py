"""How a case and its fit are read: which leaf carries the lock, which item is the lock, which part has which role.

Here belong answers that several rules and the fitting share. What follows from them is said by the rules.
"""

from dataclasses import replace
from typing import Final

from hwsched.attributes.of_parts import OWN_UNIT, SUPPLY_A
from hwsched.quantities.adding import added
from hwsched.values import Beside, Fit, FitPart, Item, Leaf, OpeningInput, Part
from hwsched.values import lock_points as points
from hwsched.values.lock_points import leaf_name as leaf_name
from hwsched.values.lock_points import lock_item as lock_item
from hwsched.values.lock_points import on_leaf as on_leaf

LEAFLESS: Final = ("lift", "turnstile")
"""Forms of opening that have a reader and no leaf."""
LOCK_ROLES: Final = ("cylinder", "lock", "reader")
SURVEY: Final = "survey"
"""Named in place of a part where the survey contradicts itself, and nothing is fitted."""
UNIT_KINDS: Final = ("surface-unit", "edge-unit")
KIND_OF_FORM: Final = {
    "mortise": "mortise-cylinder",
    "rim": "rim-cylinder",
    "euro-profile": "euro-cylinder",
    "bored": "bored-lever-lock",
    "cabinet": "cabinet-lock",
    "gate": "gate-lock",
    "reader": "fixed-reader",
}
"""Which part kind takes the place of which form of lock."""
CASE_IN_LEAF: Final = ("mortise", "euro-profile")
"""Forms of lock whose case stands in the leaf."""
LATCHING: Final = ("lock", "deadbolt", "exit-device", "flush-bolt")
"""Items that may hold the leaf shut."""
RELEASES: Final = ("electric-strike", "electromagnetic-lock")
"""Existing items that draw power."""
SKINNED: Final = ("hollow-metal", "aluminium", "steel-gate")
"""Leaf materials that are hollow behind a sheet: the lead runs inside, holes pass the sheet only."""
SOLID: Final = ("wood", "mineral-core", "composite")
"""Leaf materials in which every way for the lead must be drilled."""
UNDERCUT_AT_MOST_MM: Final = {"gate": 300.0}
"""Greatest distance from floor to leaf that is reckoned with while the undercut is unknown [mm]; common practice."""
_UNDERCUT_AT_MOST_MM: Final = 60.0


def leafless(given: OpeningInput) -> bool:
    """Tell whether the opening has a reader and no leaf."""
    return given.opening.form in LEAFLESS


def active_leaf(given: OpeningInput) -> Leaf | None:
    """Return the leaf that people use first: the single or the active one; None while unknown."""
    return points.active_leaf(given.leaves)


def lock_leaf(given: OpeningInput) -> Leaf | None:
    """Return the leaf of the lock point: the single or the active one, or a further lock's; None while unknown."""
    if given.point.others:
        item = lock_item(given)
        if item is not None and item.leaf is not None:
            return next((leaf for leaf in given.leaves if on_leaf(item, leaf)), None)
    return points.active_leaf(given.leaves)


def removed_lock(given: OpeningInput) -> Item | None:
    """Return the lock of the leaf that is said to come off, where the survey shows no other; else None."""
    if lock_item(given) is not None or given.point.others:
        return None
    leaf = points.active_leaf(given.leaves)
    locks = (item for item in given.items if points.is_lock(item) and item.disposition == "remove")
    return next((item for item in locks if leaf is None or on_leaf(item, leaf)), None)


def leaf_hand(given: OpeningInput) -> str | None:
    """Return the hand of the lock point's leaf: the inactive leaf of a pair is hinged on the other side (SDI 111)."""
    hand, leaf = given.opening.hand, lock_leaf(given)
    if hand is None or leaf is None or leaf.position != "inactive":
        return hand
    return f"{'R' if hand.startswith('L') else 'L'}{hand[1:]}"


def other_locks(given: OpeningInput) -> tuple[Item, ...]:
    """Return the existing locks that are converted at the opening's other lock points."""
    if not given.point.others:
        return ()
    return tuple(item for item in given.items if item.id in given.point.others)


def beside_here(given: OpeningInput) -> tuple[Beside, ...]:
    """Return the earlier lock points on the same leaf, with what was worked out for them."""
    leaf = lock_leaf(given)
    return tuple(each for each in given.beside if leaf is not None and lock_leaf(at_point(given, each)) is leaf)


def at_point(given: OpeningInput, beside: Beside) -> OpeningInput:
    """Return the case of an earlier lock point, for what is read of its facts."""
    return replace(given, point=beside.point, beside=())


def lock_form(given: OpeningInput) -> str | None:
    """Return the form of the existing lock; "reader" where the opening has no leaf."""
    item = lock_item(given)
    if item is not None and item.lock_form is not None:
        return item.lock_form
    return "reader" if leafless(given) else None


def by_cylinder(given: OpeningInput) -> bool:
    """Tell whether all is measured from a cylinder; where a whole lock or a reader comes it has a centre of its own."""
    return lock_form(given) in (None, "mortise", "euro-profile", "rim")


def rated(given: OpeningInput) -> bool | None:
    """Tell whether the opening carries a fire rating; None while unknown."""
    rating = given.opening.rating
    return None if rating is None else rating != "none"


def remains(item: Item) -> bool:
    """Tell whether an item, or what takes its place, stands there after the work; unknown counts as yes."""
    return item.disposition not in ("remove", "move")


def leaf_span_mm(given: OpeningInput, leaf: Leaf) -> tuple[float, float] | None:
    """Return lower and upper end of a leaf above the floor [mm]; None while unknown.

    While the undercut is unknown the span is what the leaf surely covers, whatever its undercut within the limit of
    its form. A cabinet door may hang anywhere, so it has no such limit.
    """
    if leaf.height_mm is None:
        return None
    if leaf.undercut_mm is not None:
        return leaf.undercut_mm, leaf.undercut_mm + leaf.height_mm
    if given.opening.form == "cabinet":
        return None
    return _undercut_at_most_mm(given), leaf.height_mm


def leaf_reach_mm(given: OpeningInput, leaf: Leaf) -> tuple[float, float] | None:
    """Return how low and how high above the floor a leaf may reach [mm]; None while unknown.

    The same as `leaf_span_mm` where the undercut is known. What is outside of that and within this is to be measured,
    never refused.
    """
    if leaf.height_mm is None or leaf.undercut_mm is not None or given.opening.form == "cabinet":
        return leaf_span_mm(given, leaf)
    return 0.0, leaf.height_mm + _undercut_at_most_mm(given)


def _undercut_at_most_mm(given: OpeningInput) -> float:
    return UNDERCUT_AT_MOST_MM.get(given.opening.form or "", _UNDERCUT_AT_MOST_MM)


def stop_side(given: OpeningInput) -> str | None:
    """Name the face that closes against the frame's stop: key for LH and RH, inside for LHR and RHR; None unknown.

    A leaf swings away from its stop; LH and RH swing away from the key side (trade convention, SDI 111).
    """
    hand = given.opening.hand
    return None if hand is None else ("key" if hand in ("LH", "RH") else "inside")


def entry(given: OpeningInput, fit_part: FitPart) -> Part | None:
    """Return the catalogue entry of a fitted part."""
    return given.catalogue.get(fit_part.part)


def in_role(given: OpeningInput, fit: Fit, *roles: str) -> Part | None:
    """Return the catalogue entry of the first part in one of these roles."""
    for fit_part in fit.parts:
        if fit_part.role in roles:
            return given.catalogue.get(fit_part.part)
    return None


def lock_part(given: OpeningInput, fit: Fit) -> Part | None:
    """Return the new cylinder, lock or reader."""
    return in_role(given, fit, *LOCK_ROLES)


def unit_part(given: OpeningInput, fit: Fit) -> Part | None:
    """Return the control unit; where the lock carries its own, the lock."""
    unit = in_role(given, fit, "unit")
    if unit is not None:
        return unit
    lock = lock_part(given, fit)
    return lock if lock is not None and lock.flag_of(OWN_UNIT) else None


def unit_in_lock(given: OpeningInput, fit: Fit) -> bool:
    """Tell whether the lock carries its own unit: then nothing is placed, no lead is led and no hole made for it."""
    lock = lock_part(given, fit)
    return lock is not None and bool(lock.flag_of(OWN_UNIT)) and fit.part("unit") is None


def supply_part(given: OpeningInput, fit: Fit) -> Part | None:
    """Return the supply that feeds the lock point: of the opening's circuit, else its own, else an earlier point's."""
    if given.supply_link is not None:
        return given.catalogue.get(given.supply_link.part) if given.supply_link.part is not None else None
    own = in_role(given, fit, "supply")
    if own is None and fit.power == "supply" and (shared := shared_supply(given)) is not None:
        return in_role(given, shared, "supply")
    return own


def shared_supply(given: OpeningInput) -> Fit | None:
    """Return the fit of the earlier lock point whose supply feeds this one too, where it has none of its own."""
    connected = (each.fit for each in given.beside if each.fit is not None and each.fit.part("supply") is not None)
    return next(connected, None)


def on_supply(given: OpeningInput, fit: Fit) -> tuple[Fit, ...]:
    """Return the fits of the opening's lock points that hang on the supply of this one, this one first."""
    shared = shared_supply(given)
    if shared is None or fit.part("supply") is not None:
        return (fit,)
    others = (each.fit for each in given.beside if each.fit is not None and each.fit.power == "supply")
    return fit, *(other for other in others if other is shared or other.part("supply") is None)


def drawn_a(given: OpeningInput, fit: Fit) -> float | None:
    """Return what the supply of the lock point has to give to all units on it [A]; None while unknown."""
    units = [unit_part(given, each) for each in on_supply(given, fit)]
    draws = [unit.number_of(SUPPLY_A) if unit is not None else None for unit in units]
    known = [each for each in draws if each is not None]
    return added(known) if len(known) == len(draws) else None


def transfers_kept(given: OpeningInput) -> tuple[Item, ...]:
    """Return the power transfers that stay and lead onto the lock point's leaf, not those on the other leaf."""
    kept = [item for item in given.items if item.kind == "power-transfer" and remains(item)]
    leaf = lock_leaf(given) if kept else None
    return tuple(item for item in kept if leaf is None or on_leaf(item, leaf))


def carries_power(given: OpeningInput) -> bool:
    """Tell whether something that stays, or an earlier lock point's transfer, carries power onto the leaf already."""
    if transfers_kept(given):
        return True
    return any(each.fit is not None and each.fit.part("power-transfer") is not None for each in beside_here(given))


def electric_release(given: OpeningInput) -> bool:
    """Tell whether something that draws power to let go stays on the opening, or is chosen for it."""
    if any(chosen.role == "strike" for chosen in given.chosen):
        return True
    return any(item.kind in RELEASES and remains(item) for item in given.items)


def part_fact(part: Part, name: str) -> str:
    """Name a missing attribute of a part, as needs name it."""
    return f"part {part.number}.{name}"


def stile_mm(leaf: Leaf) -> tuple[bool, float | None]:
    """Tell whether only the lock stile of a leaf carries hardware, and how wide it is; None while unknown."""
    has = leaf.construction in ("narrow-stile", "stile-and-rail") or leaf.material == "steel-gate"
    return has, leaf.stile_mm if has else None
