"""How a case and its fit are read: which leaf carries the lock, which item is the lock, which part has which role.

Here belong answers that several rules and the fitting share. What follows from them is said by the rules.
"""

from typing import Final

from hwsched.cases import Case, Fit, FittedPart, Item, Leaf, Part

LEAFLESS: Final = ("lift", "turnstile")
"""Forms of opening that have a reader and no leaf."""
LOCK_ROLES: Final = ("cylinder", "lock", "reader")
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
LATCHING: Final = ("lock", "deadbolt", "exit-device", "flush-bolt")
"""Items that may hold the leaf shut."""
SKINNED: Final = ("hollow-metal", "aluminium", "steel-gate")
"""Leaf materials that are hollow behind a sheet: the lead runs inside, holes pass the sheet only."""
SOLID: Final = ("wood", "mineral-core", "composite")
"""Leaf materials in which every way for the lead must be drilled."""
_LOCK_KINDS: Final = {"lock": 0, "exit-device": 1, "deadbolt": 2}
UNDERCUT_AT_MOST_MM: Final = {"gate": 300.0}
"""Greatest distance from floor to leaf that is reckoned with while the undercut is unknown [mm]; common practice."""
_UNDERCUT_AT_MOST_MM: Final = 60.0


def leafless(case: Case) -> bool:
    """Tell whether the opening has a reader and no leaf."""
    return case.opening.form in LEAFLESS


def lock_leaf(case: Case) -> Leaf | None:
    """Return the leaf that carries the lock: the single or the active one; None while unknown."""
    for leaf in case.leaves:
        if leaf.position != "inactive":
            return leaf
    return None


def leaf_name(leaf: Leaf) -> str:
    """Return how fits name a leaf: its position."""
    return leaf.position or "single"


def on_leaf(item: Item, leaf: Leaf) -> bool:
    """Tell whether an item may stand on a leaf; an item whose leaf is unknown stands on each."""
    return item.leaf is None or item.leaf == leaf_name(leaf) or (item.leaf == "single" and leaf.position is None)


def lock_item(case: Case) -> Item | None:
    """Return the existing lock that is converted: on the lock's leaf, its form known if any is, locks first."""
    leaf = lock_leaf(case)
    best: Item | None = None
    best_rank = (99, 99, 99)
    for item in case.items:
        if item.kind not in _LOCK_KINDS and item.lock_form is None:
            continue
        if item.disposition == "remove" or (leaf is not None and not on_leaf(item, leaf)):
            continue
        rank = (item.lock_form is None, _LOCK_KINDS.get(item.kind or "", 3), item.disposition != "replace")
        if rank < best_rank:
            best, best_rank = item, rank
    return best


def lock_form(case: Case) -> str | None:
    """Return the form of the existing lock; "reader" where the opening has no leaf."""
    item = lock_item(case)
    if item is not None and item.lock_form is not None:
        return item.lock_form
    return "reader" if leafless(case) else None


def rated(case: Case) -> bool | None:
    """Tell whether the opening carries a fire rating; None while unknown."""
    rating = case.opening.rating
    return None if rating is None else rating != "none"


def remains(item: Item) -> bool:
    """Tell whether an item, or what takes its place, stands there after the work; unknown counts as yes."""
    return item.disposition not in ("remove", "move")


def leaf_span_mm(case: Case, leaf: Leaf) -> tuple[float, float] | None:
    """Return lower and upper end of a leaf above the floor [mm]; None while unknown.

    While the undercut is unknown the span is what the leaf surely covers, whatever its undercut within the limit of
    its form. A cabinet door may hang anywhere, so it has no such limit.
    """
    if leaf.height_mm is None:
        return None
    if leaf.undercut_mm is not None:
        return leaf.undercut_mm, leaf.undercut_mm + leaf.height_mm
    if case.opening.form == "cabinet":
        return None
    return UNDERCUT_AT_MOST_MM.get(case.opening.form or "", _UNDERCUT_AT_MOST_MM), leaf.height_mm


def stop_side(case: Case) -> str | None:
    """Name the face that closes against the frame's stop: key for LH and RH, secured for LHR and RHR; None unknown.

    A leaf swings away from its stop; LH and RH swing away from the key side (trade convention, SDI 111).
    """
    hand = case.opening.hand
    return None if hand is None else ("key" if hand in ("LH", "RH") else "secured")


def entry(case: Case, fitted: FittedPart) -> Part | None:
    """Return the catalogue entry of a fitted part."""
    return case.catalogue.get(fitted.part)


def in_role(case: Case, fit: Fit, *roles: str) -> Part | None:
    """Return the catalogue entry of the first part in one of these roles."""
    for fitted in fit.parts:
        if fitted.role in roles:
            return case.catalogue.get(fitted.part)
    return None


def lock_part(case: Case, fit: Fit) -> Part | None:
    """Return the new cylinder, lock or reader."""
    return in_role(case, fit, *LOCK_ROLES)


def unit_part(case: Case, fit: Fit) -> Part | None:
    """Return the control unit."""
    return in_role(case, fit, "unit")


def supply_part(case: Case, fit: Fit) -> Part | None:
    """Return the supply that feeds the opening: of the circuit on which it hangs, else its own."""
    if case.feed is not None:
        return case.catalogue.get(case.feed.part) if case.feed.part is not None else None
    return in_role(case, fit, "supply")


def part_fact(part: Part, name: str) -> str:
    """Name a missing attribute of a part, as needs name it."""
    return f"part {part.number}.{name}"


def stile_mm(leaf: Leaf) -> tuple[bool, float | None]:
    """Tell whether only the lock stile of a leaf carries hardware, and how wide it is; None while unknown."""
    has = leaf.construction in ("narrow-stile", "stile-and-rail") or leaf.material == "steel-gate"
    return has, leaf.stile_mm if has else None
