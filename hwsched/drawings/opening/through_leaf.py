"""Geometry through the leaf that edge view, section and bore detail share: thickness, axes of holes, bored bodies.

x from the lock edge toward the hinge edge, y up, z from the inside face (0) to the key face; mm.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import radians, sqrt, tan
from typing import Final

from hwsched.drawings.drawing import Hatch
from hwsched.drawings.unknown import known, size_problem
from hwsched.language import phrase
from hwsched.rules.reading import lock_leaf
from hwsched.values import Fit, Hole, Leaf, OpeningInput

Solid = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class Axis:
    """A hole's axis from its start to its end."""

    hole: Hole
    start: Solid
    end: Solid
    from_face: bool
    """Starts in a face; else below it, at the bottom of another hole."""
    into_face: bool
    """Comes out of the other face."""


_CUT: Final[Mapping[str, Hatch]] = {
    "wood": "wood",
    "mineral-core": "wood",
    "hollow-metal": "metal",
    "steel-gate": "metal",
    "aluminium": "aluminium",
    "glass": "glass",
}


def cut_of(leaf: Leaf) -> Hatch:
    """Return how a leaf is hatched where it is cut through; nothing while its material is unknown."""
    return _CUT.get(leaf.material, "other") if leaf.material else ""


def thick_leaf(given: OpeningInput) -> tuple[Leaf | None, float, tuple[str, ...]]:
    """Return the lock's leaf, its thickness [mm], and what is unknown or impossible about them."""
    leaf = lock_leaf(given)
    if leaf is None:
        return None, 0.0, (phrase("unknown: needs the leaf"),)
    problem = size_problem("leaf.thickness_mm", leaf.thickness_mm)
    return leaf, leaf.thickness_mm or 0.0, (problem,) if problem else ()


def face_axes(fit: Fit, thickness_mm: float) -> list[Axis]:
    """Return the axes of all single holes that start in a face or below it, in the order in which they are made.

    A hole that runs through ends in the other face; direction is proportional to normal + tan(up) y - tan(edge) x.
    """
    axes = []
    for hole in sorted(fit.holes, key=lambda h: h.order):
        if hole.face not in ("inside", "key") or hole.by_template or hole.count > 1 or hole.diameter_mm <= 0:
            continue
        if not (known(hole.x_mm) and known(hole.y_mm)) or abs(hole.up_deg) >= 89 or abs(hole.edge_deg) >= 89:
            continue
        up, edge = tan(radians(hole.up_deg)), -tan(radians(hole.edge_deg))
        left = thickness_mm - hole.from_depth_mm
        deep = left if hole.depth_mm is None else min(hole.depth_mm / sqrt(1 + up * up + edge * edge), left)
        sign = 1.0 if hole.face == "inside" else -1.0
        z0 = hole.from_depth_mm if hole.face == "inside" else thickness_mm - hole.from_depth_mm
        end = (hole.x_mm + edge * deep, hole.y_mm + up * deep, z0 + sign * deep)
        axes.append(Axis(hole, (hole.x_mm, hole.y_mm, z0), end, hole.from_depth_mm <= 0, deep >= left - 1e-6))
    return axes


Flat = tuple[float, float]


def bore_outline(axis: Axis, along: int) -> tuple[Flat, ...]:
    """Return the corners of a bore in a view from the side: z first, then y (along 1) or x (along 0).

    An end in a face is cut off along the face, a blind end square to the axis.
    """
    (ax, ay), (bx, by) = (axis.start[2], axis.start[along]), (axis.end[2], axis.end[along])
    length = sqrt((bx - ax) ** 2 + (by - ay) ** 2)
    if length == 0 or ax == bx:
        return ()
    half = axis.hole.diameter_mm / 2
    square = (-(by - ay) / length * half, (bx - ax) / length * half)
    level = (0.0, square[1] + square[0] ** 2 / square[1])
    sx, sy = level if axis.from_face else square
    ex, ey = level if axis.into_face else square
    return ((ax - sx, ay - sy), (bx - ex, by - ey), (bx + ex, by + ey), (ax + sx, ay + sy))
