"""How a hole is described beside its centre: size, pilot, depth, direction."""

from typing import Final

from hwsched.quantities import LengthStyle, format_length
from hwsched.values import Hole

_STEEP_DEG = 60.0
"""Steeper than this a hole runs along the leaf, and its angle to the face is what a hand aims by."""


def size_words(hole: Hole, style: LengthStyle) -> str:
    """Say what is made: diameter of a hole, sides of a pocket, and of how many.

    Examples
    --------
    >>> print(size_words(Hole("lead", "single", "inside", 70, 1000, 12.7), "fraction"))
    Ø 1/2"
    """
    if hole.width_mm is not None and hole.height_mm is not None and hole.diameter_mm <= 0:
        text = f"{format_length(hole.width_mm, style)} × {format_length(hole.height_mm, style)}"
    else:
        text = f"Ø {format_length(hole.diameter_mm, style)}"
    return f"{hole.count} × {text}" if hole.count > 1 else text


def direction_words(hole: Hole) -> str:
    """Say how a hole runs: square, or its two angles; toward the edge means toward the lock edge.

    Examples
    --------
    >>> direction_words(Hole("lead", "single", "inside", 70, 1000, 12.7, up_deg=45, edge_deg=15))
    '45° up, 15° toward the lock edge'
    """
    words = []
    if abs(hole.up_deg) >= 0.05:
        words.append(f"{abs(hole.up_deg):.3g}° {'up' if hole.up_deg > 0 else 'down'}")
    if abs(hole.edge_deg) >= 0.05:
        words.append(f"{abs(hole.edge_deg):.3g}° toward the {'lock' if hole.edge_deg > 0 else 'hinge'} edge")
    if abs(hole.up_deg) > _STEEP_DEG:
        words.append(f"{90 - abs(hole.up_deg):.3g}° to the leaf's face")
    return ", ".join(words) or "square"


_ACROSS: Final = {
    "lock-edge": "from the inside face",
    "hinge-edge": "from the inside face",
    "edge": "from the inside face",
    "wall": "from the reader's centre",
}
"""From what the first measure counts on faces that are none of the leaf's two."""


def across_words(face: str, across_mm: float, style: LengthStyle) -> str:
    """Say where something is across its face: on the leaf's faces from the lock edge, in an edge from the inside face.

    Examples
    --------
    >>> across_words("inside", 69.85, "mm"), across_words("lock-edge", 22.2, "mm")
    ('69.9 mm from the lock edge', '22.2 mm from the inside face')
    """
    return f"{format_length(across_mm, style)} {_ACROSS.get(face, 'from the lock edge')}"


def full_words(hole: Hole, style: LengthStyle) -> str:
    """Say all that is needed at the bench, in one line."""
    words = [f"{hole.name}: {size_words(hole, style)}"]
    if hole.enlarges_mm is not None:
        words.append(f"enlarges {format_length(hole.enlarges_mm, style)}")
    if hole.pilot_mm is not None:
        words.append(f"pilot {format_length(hole.pilot_mm, style)}")
    if hole.from_depth_mm > 0:
        words.append(f"begins {format_length(hole.from_depth_mm, style)} below the face")
    words.append("through" if hole.depth_mm is None else f"{format_length(hole.depth_mm, style)} deep")
    words.append(direction_words(hole))
    if hole.by_template:
        words.append("marked from the part itself")
    return ", ".join(words)
