"""Holes of a fit as the solids that `calc.bore` follows."""

from math import radians, sqrt, tan
from typing import Final

from hwsched.attributes.of_parts import DIAMETER_MM, FORM, REACH_MM
from hwsched.calc.opening.bore import BoreInput, Box, LeafSize, Rod, Vector
from hwsched.rules.solid.clearances import ON_FACE
from hwsched.values import Fit, Hole, OpeningInput

_LONG_BIT: Final = "installer-bit"


def is_long(hole: Hole) -> bool:
    """Tell whether a hole is a way across a leaf, which only a bit as long as itself goes through."""
    return hole.tool == _LONG_BIT and hole.depth_mm is not None


def angled(fit: Fit) -> list[Hole]:
    """Return the holes that start in a face and are not square to it."""
    return [
        hole
        for hole in fit.holes
        if hole.depth_mm is not None and hole.face in ON_FACE and (hole.up_deg or hole.edge_deg)
    ]


def as_bore(hole: Hole, leaf: LeafSize, target: Box | None = None) -> BoreInput:
    """Return a hole that starts in a face, or below it, as a bore; it ends where it meets its target."""
    inward = 1.0 if hole.face == "inside" else -1.0
    z = hole.from_depth_mm if hole.face == "inside" else leaf.thickness_mm - hole.from_depth_mm
    start = (hole.x_mm, hole.y_mm, z)
    if hole.from_depth_mm > 0:
        direction = (-tan(radians(hole.edge_deg)), tan(radians(hole.up_deg)), inward)
        # Below its face the start lies on no plane, so that its direction is given and no face.
        return BoreInput(
            leaf, start, hole.diameter_mm, direction=direction, depth_mm=hole.depth_mm, through=True, target=target
        )
    return BoreInput(
        leaf, start, hole.diameter_mm, hole.face, hole.up_deg, hole.edge_deg, depth_mm=hole.depth_mm, target=target
    )


def as_rod(hole: Hole, thickness_mm: float) -> Rod:
    """Return a hole that starts in a face, or below it, as the round body that it takes from the leaf."""
    inward = 1.0 if hole.face == "inside" else -1.0
    left = thickness_mm - hole.from_depth_mm
    z = hole.from_depth_mm if hole.face == "inside" else left
    across, up = -tan(radians(hole.edge_deg)), tan(radians(hole.up_deg))
    deep = left
    if hole.depth_mm is not None:
        # A depth is told along the axis; how far it goes into the leaf follows from the slope.
        deep = min(left, hole.depth_mm / sqrt(1 + across * across + up * up))
    start: Vector = (hole.x_mm, hole.y_mm, z)
    end: Vector = (hole.x_mm + across * deep, hole.y_mm + up * deep, z + inward * deep)
    return Rod(start, end, hole.diameter_mm)


def bit_mm(given: OpeningInput, hole: Hole, else_mm: float) -> float:
    """Return the longest bit of a hole's diameter that the catalogue has, else the usual long one."""
    tools = (part for part in given.catalogue.of_kind("tool") if part.text_of(FORM) == "twist-drill")
    fitting = (part for part in tools if abs((part.number_of(DIAMETER_MM) or 0.0) - hole.diameter_mm) <= 0.15)
    return max((reach for part in fitting if (reach := part.number_of(REACH_MM)) is not None), default=else_mm)
