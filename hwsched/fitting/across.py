"""Ways to choose from for the supply's wire across a leaf: pulled or bored inside it, or over its face.

Whether one may be taken is said by the rule `wire-across-leaf`.
"""

from dataclasses import replace

from hwsched.attributes.of_parts import OUTSIDE_DIAMETER_MM
from hwsched.fitting.candidate import fit_part, offered, with_parts
from hwsched.rules.network import across_leaf
from hwsched.rules.network.leaf_runs import cables
from hwsched.rules.practice import distance_mm
from hwsched.rules.reading import SKINNED, leaf_name, lock_leaf
from hwsched.rules.wording import length
from hwsched.values import Fit, Hole, OpeningInput, Part

_NAME = "way for the wire across the leaf"


def ways_across(given: OpeningInput, fit: Fit, wire: Part | None) -> tuple[Fit, ...]:
    """Return a partial fit with each way across the leaf that there is to choose from; as it is where none is needed.

    Parameters
    ----------
    given : OpeningInput
        The opening.
    fit : Fit
        With unit, place and what carries power over the hinges.
    wire : Part or None
        That lies in it.
    """
    leaf = lock_leaf(given)
    if not across_leaf.needed(given, fit) or leaf is None or across_leaf.standing(given, fit) is not None:
        return (fit,)
    found = []
    hole = _hole(given, fit, wire)
    if hole is not None:
        found.append(replace(fit, holes=(*fit.holes, hole)))
    width = leaf.width_mm
    for raceway in offered(given, across_leaf.THROUGH, "surface-raceway"):
        if width is not None:
            why = f"carries the supply's wire over a leaf {length(given, width)} wide"
            found.append(with_parts(fit, fit_part(given, "raceway", raceway, why, round(width / 1000, 2))))
    # Without any the rule says that there is none.
    return tuple(found) or (fit,)


def _hole(given: OpeningInput, fit: Fit, wire: Part | None) -> Hole | None:
    """Return the hole in the hinge edge by which a wire comes into the leaf: to the lock where it is bored."""
    leaf, at = lock_leaf(given), across_leaf.target(given, fit)
    if leaf is None or at is None or leaf.width_mm is None or leaf.material in (None, "glass"):
        return None
    pulled = leaf.material in SKINNED
    depth = distance_mm("raceway-edge-depth") if pulled else leaf.width_mm - at[0]
    thick = wire.number_of(OUTSIDE_DIAMETER_MM) if wire is not None else None
    narrow = distance_mm("raceway-bore")
    count = cables(given, fit, wire) if wire is not None else 1
    fits = thick is None or thick <= across_leaf.holds_mm(narrow, count) + 1e-6
    return Hole(
        _NAME,
        leaf_name(leaf),
        "hinge-edge",
        (leaf.thickness_mm or 0.0) / 2,
        at[1],
        narrow if fits else distance_mm("raceway-bore-wide"),
        depth_mm=round(max(depth, 1.0), 3),
        tool="twist-drill" if pulled else "installer-bit",
        purpose=across_leaf.THROUGH,
    )
