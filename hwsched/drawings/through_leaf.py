"""Geometry through the leaf that edge view, section and bore detail share: thickness, axes of holes, bored bodies.

x from the lock edge toward the hinge edge, y up, z from the secured face (0) to the key face; mm.
"""

from dataclasses import dataclass
from math import radians, sqrt, tan

from hwsched.cases import Case, Fit, Hole, Leaf
from hwsched.drawings.unknown import known, size_problem
from hwsched.rules.reading import lock_leaf

Solid = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class Axis:
    """A hole's axis from its start to its end."""

    hole: Hole
    start: Solid
    end: Solid


def thick_leaf(case: Case) -> tuple[Leaf | None, float, tuple[str, ...]]:
    """Return the lock's leaf, its thickness [mm], and what is unknown or impossible about them."""
    leaf = lock_leaf(case)
    if leaf is None:
        return None, 0.0, ("unknown: needs the leaf",)
    problem = size_problem("leaf.thickness_mm", leaf.thickness_mm)
    return leaf, leaf.thickness_mm or 0.0, (problem,) if problem else ()


def face_axes(fit: Fit, thickness_mm: float) -> list[Axis]:
    """Return the axes of all single holes that start in a face, in the order in which they are made.

    A hole that runs through ends in the other face; direction is proportional to normal + tan(up) y - tan(edge) x.
    """
    axes = []
    for hole in sorted(fit.holes, key=lambda h: h.order):
        if hole.face not in ("secured", "key") or hole.by_template or hole.count > 1 or hole.diameter_mm <= 0:
            continue
        if not (known(hole.x_mm) and known(hole.y_mm)) or abs(hole.up_deg) >= 89 or abs(hole.edge_deg) >= 89:
            continue
        up, edge = tan(radians(hole.up_deg)), -tan(radians(hole.edge_deg))
        through = thickness_mm
        if hole.depth_mm is not None:
            through = min(hole.depth_mm / sqrt(1 + up * up + edge * edge), thickness_mm)
        z0, sign = (0.0, 1.0) if hole.face == "secured" else (thickness_mm, -1.0)
        end = (hole.x_mm + edge * through, hole.y_mm + up * through, z0 + sign * through)
        axes.append(Axis(hole, (hole.x_mm, hole.y_mm, z0), end))
    return axes


Flat = tuple[float, float]


def bore_outline(start: Flat, end: Flat, diameter_mm: float) -> tuple[Flat, ...]:
    """Return the four corners of a bore between two faces in a view from the side.

    Its ends lie in the faces (lines of equal first coordinate), hence the walls are cut off there and not square.
    """
    (ax, ay), (bx, by) = start, end
    if ax == bx:
        return ()
    slope = (by - ay) / (bx - ax)
    half = diameter_mm / 2 * sqrt(1 + slope * slope)
    return ((ax, ay - half), (bx, by - half), (bx, by + half), (ax, ay + half))
