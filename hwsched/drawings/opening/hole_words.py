"""How a hole is described beside its centre: size, pilot, depth, direction."""

from hwsched.language import phrase
from hwsched.quantities import LengthStyle, format_length
from hwsched.values import Hole
from hwsched.work.tools import drill_words

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
        text = f"Ø {drill_words(hole.diameter_mm, style)}"
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
        words.append(phrase("{angle:.3g}° up" if hole.up_deg > 0 else "{angle:.3g}° down", angle=abs(hole.up_deg)))
    if abs(hole.edge_deg) >= 0.05:
        words.append(
            phrase(
                "{edge_deg:.3g}° toward the {part} edge",
                edge_deg=abs(hole.edge_deg),
                part=phrase("lock" if hole.edge_deg > 0 else "hinge"),
            )
        )
    if abs(hole.up_deg) > _STEEP_DEG:
        words.append(phrase("{up_deg:.3g}° to the leaf's face", up_deg=90 - abs(hole.up_deg)))
    return ", ".join(words) or phrase("square")


def full_words(hole: Hole, style: LengthStyle) -> str:
    """Say all that is needed at the bench, in one line."""
    words = [f"{hole.name}: {size_words(hole, style)}"]
    if hole.enlarges_mm is not None:
        words.append(phrase("enlarges {size}", size=format_length(hole.enlarges_mm, style)))
    if hole.pilot_mm is not None:
        words.append(phrase("pilot {size}", size=drill_words(hole.pilot_mm, style)))
    if hole.from_depth_mm > 0:
        words.append(phrase("begins {length} below the face", length=format_length(hole.from_depth_mm, style)))
    words.append(
        phrase("through") if hole.depth_mm is None else phrase("{size} deep", size=format_length(hole.depth_mm, style))
    )
    words.append(direction_words(hole))
    if hole.by_template:
        words.append(phrase("marked from the part itself"))
    return ", ".join(words)
