"""The way of the supply's wire across the leaf: from what carries power over the hinge to the unit at the lock edge.

Here belongs what way a fit has and how long the wire in it is. Which way may be taken is said by the rule
`wire-across-leaf`, which ways there are to choose from by `hwsched.fitting.across`.
"""

from dataclasses import dataclass
from math import sqrt
from typing import Final, Literal

from hwsched.attributes.of_parts import POCKET_DEPTH_MM
from hwsched.rules.practice import distance_mm
from hwsched.rules.reading import beside_here, leafless, lock_form, lock_item, lock_leaf, on_leaf, remains, unit_part
from hwsched.rules.solid.footprints import footprints
from hwsched.values import Fit, Item, Leaf, OpeningInput

Kind = Literal["existing", "pulled", "bored", "surface"]

THROUGH: Final[Literal["raceway"]] = "raceway"
"""Purpose of the hole by which the wire comes into the leaf, and role of what carries it over its face."""
_FILL: Final = {1: 0.53, 2: 0.31}
"""Share of a raceway's section that so many cables may fill (NEC Chapter 9 Table 1, from memory, unverified)."""
_FILL_MORE: Final = 0.40
_SEE_THROUGH: Final = ("lite", "louvre")
"""Items for which the leaf is cut through: no wire passes them inside."""
_TUBULAR: Final = ("narrow-stile", "stile-and-rail")
"""Constructions in which a wire goes round the panel: by stile, rail and stile."""


@dataclass(frozen=True, slots=True)
class Across:
    """The way of a wire across a leaf."""

    kind: Kind
    wire_m: float | None
    """Of one wire, with what is left loose at its ends [m]; None while the leaf's width is unknown."""


def needed(given: OpeningInput, fit: Fit) -> bool:
    """Tell whether a supply's wire has to come across the leaf: the unit is at its lock edge, the supply off it."""
    return fit.power == "supply" and unit_part(given, fit) is not None and not leafless(given)


def standing(given: OpeningInput, fit: Fit) -> Across | None:
    """Return the way that a fit has, or that an earlier lock point's has on the same leaf; None where there is none."""
    kind = _kind(given, fit)
    if kind is None:
        kind = next(
            (way for each in beside_here(given) if each.fit is not None and (way := _kind(given, each.fit))), None
        )
    if kind is None:
        return None
    return Across(kind, wire_m(given, fit, kind))


def _kind(given: OpeningInput, fit: Fit) -> Kind | None:
    if any(part.role == THROUGH for part in fit.parts):
        return "surface"
    hole = next((hole for hole in fit.holes if hole.purpose == THROUGH), None)
    if hole is not None:
        return "bored" if (hole.depth_mm or 0.0) > distance_mm("raceway-edge-depth") else "pulled"
    leaf = lock_leaf(given)
    return "existing" if leaf is not None and leaf.raceway else None


def wire_m(given: OpeningInput, fit: Fit, kind: Kind) -> float | None:
    """Return the length of one wire across the leaf: its width, the way round a panel, and slack at both ends [m]."""
    leaf = lock_leaf(given)
    if leaf is None or leaf.width_mm is None:
        return None
    round_mm = 0.0
    if kind in ("pulled", "existing") and goes_round(given, fit):
        # Down the hinge stile to the bottom rail or channel and up again at the lock: no farther than to the floor.
        round_mm = 2 * (height_mm(given, fit) or leaf.height_mm or 0.0)
    return (leaf.width_mm + round_mm + distance_mm("wire-slack")) / 1000


def goes_round(given: OpeningInput, fit: Fit) -> bool:
    """Tell whether a panel or a lite bars the straight way, so that a wire goes by rail or end channel."""
    leaf = lock_leaf(given)
    return leaf is not None and (leaf.construction in _TUBULAR or bool(in_path(given, fit, leaf)))


def in_path(given: OpeningInput, fit: Fit, leaf: Leaf) -> tuple[Item, ...]:
    """Return the lites and louvres that a way at the lock's height meets; unknown places count as met."""
    height = height_mm(given, fit)
    off = distance_mm("raceway-off-lite")
    return tuple(
        item
        for item in given.items
        if item.kind in _SEE_THROUGH
        and remains(item)
        and on_leaf(item, leaf)
        and (
            height is None
            or item.y_mm is None
            or item.height_mm is None
            or abs(item.y_mm - height) < item.height_mm / 2 + off
        )
    )


def unplaced(items: tuple[Item, ...]) -> tuple[str, ...]:
    """Name the facts without which it is unknown whether items stand in the way."""
    names = ("y_mm", "height_mm")
    return tuple(
        dict.fromkeys(f"existing_item.{name}" for item in items for name in names if getattr(item, name) is None)
    )


def on_face_in_path(given: OpeningInput, fit: Fit, at_mm: float) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Return what stands on the inside face between unit and hinge edge at a height, and facts missing to know it."""
    place = fit.placement
    begin = place.x_mm + place.width_mm if place is not None and place.face == "inside" else 0.0
    half = distance_mm("surface-raceway-half")
    met: list[str] = []
    needs: list[str] = []
    for each in footprints(given, fit, "inside"):
        if each.rect is None:
            needs += each.needs
        elif each.rect.x1 > begin and each.rect.y0 - half < at_mm < each.rect.y1 + half:
            met.append(each.name)
    return tuple(met), tuple(dict.fromkeys(needs))


def target(given: OpeningInput, fit: Fit) -> tuple[float, float] | None:
    """Return where a way inside the leaf ends, from lock edge and floor: in the lock's pocket, else behind the unit."""
    lock, place, unit = lock_item(given), fit.placement, unit_part(given, fit)
    height = lock.cylinder_height_mm if lock is not None else None
    form = lock_form(given)
    if lock is not None and height is not None:
        # Drilled length from hinge edge to mortise pocket: leaf less case depth.
        if form in ("mortise", "euro-profile") and lock.case_depth_mm is not None:
            return lock.case_depth_mm, height
        if form == "bored" and lock.backset_mm is not None:
            return lock.backset_mm, height
    if place is None:
        return None
    if place.face == "edge":
        depth = unit.number_of(POCKET_DEPTH_MM) if unit is not None else None
        return None if depth is None else (depth, place.y_mm + place.height_mm / 2)
    return place.hole_x_mm, place.hole_y_mm


def height_mm(given: OpeningInput, fit: Fit) -> float | None:
    """Return the height of a way inside the leaf above the floor [mm]."""
    found = target(given, fit)
    return None if found is None else found[1]


def holds_mm(diameter_mm: float, cables: int) -> float:
    """Return the thickest cable of which so many fit into a round way [mm].

    Examples
    --------
    >>> round(holds_mm(9.525, 1), 2)
    6.93
    """
    return diameter_mm * sqrt(_FILL.get(cables, _FILL_MORE) / cables)
