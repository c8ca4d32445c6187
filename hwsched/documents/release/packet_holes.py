"""The table of holes on a packet: each by place, size, depth and direction, and what makes it."""

from typing import Final

from hwsched.documents import words
from hwsched.documents.release.packet_work import tool_word
from hwsched.drawings.opening.hole_words import direction_words
from hwsched.language import phrase
from hwsched.quantities import LengthStyle
from hwsched.render.blocks import TICK, Block, Cell, Column, Heading, Paragraph, Table
from hwsched.values import Hole
from hwsched.work.situation import Situation
from hwsched.work.tools import drill_words

_SAME_PLACE_MM: Final = 0.05
"""What a rule does not show."""


def hole_blocks(situation: Situation, style: LengthStyle) -> list[Block]:
    """Return the table of a lock point's holes, in the order in which they are made."""
    fit = situation.fit
    if not fit.holes:
        return [Heading(phrase("Holes"), 2), Paragraph(phrase("No hole is made."))]
    rows: list[tuple[Cell, ...]] = []
    # In the order of drilling: some begin at the bottom of others.
    for hole in sorted(fit.holes, key=lambda h: h.order):
        rows.append(
            (
                TICK,
                hole.order,
                hole.name + (f" ×{hole.count}" if hole.count > 1 else ""),
                hole.face,
                _across_cell(hole, style),
                _up_cell(hole, style),
                _size(hole, style),
                drill_words(hole.pilot_mm, style) if hole.pilot_mm is not None else "-",
                _depth(hole, style),
                phrase("from the pocket's end, leaning") if _is_bridge(hole) else direction_words(hole),
                ", ".join(part for part in (tool_word(hole.tool), hole.jig) if part),
            )
        )
    columns = (
        Column("", 0.3, "centre"),
        Column(phrase("No."), 0.4, "right"),
        Column(phrase("Hole"), 2.2, below=True),
        Column(phrase("Face"), 0.9, below=True),
        Column(phrase("From lock edge") if situation.leaf is not None else phrase("Across"), 1.4, large=True),
        Column(_from_what(situation), 1.3, large=True),
        Column(phrase("Dia."), 0.9, large=True),
        Column(phrase("Pilot"), 0.8, large=True),
        Column(phrase("Depth"), 1.2, large=True),
        Column(phrase("Angle"), 1.0, below=True),
        Column(phrase("Tool"), 1.8, below=True),
    )
    return [Heading(phrase("Holes"), 2), Table(columns, tuple(rows), title=phrase("Holes"))]


def _from_what(situation: Situation) -> str:
    if situation.leaf is None:
        return phrase("Above floor")
    return phrase("From cylinder") if situation.by_cylinder else phrase("From lock")


def _is_bridge(hole: Hole) -> bool:
    return hole.purpose == "channel" and hole.face == "lock-edge"


def _across_cell(hole: Hole, style: LengthStyle) -> str:
    if _is_bridge(hole):
        return "-"
    if hole.by_template:
        return phrase("through the part as template")
    if hole.face == "wall" and abs(hole.x_mm) < _SAME_PLACE_MM:
        return phrase("at its centre")
    return _across(hole, style)


def _up_cell(hole: Hole, style: LengthStyle) -> str:
    if hole.by_template:
        return "-"
    if hole.face == "wall":
        return words.length(hole.y_mm, style)
    if hole.from_cylinder_mm is None:
        # A wire's way in the hinge edge has no cylinder beside it: there one measures from the floor.
        return phrase("{length} above floor", length=words.length(hole.y_mm, style))
    return _from_cylinder(hole, style)


def _across(hole: Hole, style: LengthStyle) -> str:
    """Say where a hole's centre is across its face; only on a face of the leaf that counts from the lock edge."""
    shown = words.length(hole.x_mm, style)
    places = {
        "lock-edge": phrase(" from the inside face"),
        "hinge-edge": phrase(" from the inside face"),
        "wall": phrase(" from the reader's centre"),
    }
    return shown + places.get(hole.face, "")


def _from_cylinder(hole: Hole, style: LengthStyle) -> str:
    if hole.from_cylinder_mm is None:
        return "-"
    across, up = hole.from_cylinder_mm
    found = []
    if abs(up) > _SAME_PLACE_MM:
        found.append(f"{words.length(abs(up), style)} {'above' if up > 0 else 'below'}")
    if hole.face in ("lock-edge", "hinge-edge"):
        return ", ".join(found) or phrase("level with its centre")
    if abs(across) > _SAME_PLACE_MM:
        found.append(
            f"{words.length(abs(across), style)} {phrase('toward hinge') if across > 0 else phrase('toward edge')}"
        )
    return ", ".join(found) or phrase("at its centre")


def _size(hole: Hole, style: LengthStyle) -> str:
    if hole.width_mm is not None and hole.height_mm is not None:
        return f"{words.length(hole.width_mm, style)} × {words.length(hole.height_mm, style)}"
    enlarged = (
        phrase(", enlarges {length}", length=words.length(hole.enlarges_mm, style))
        if hole.enlarges_mm is not None
        else ""
    )
    return drill_words(hole.diameter_mm, style) + enlarged


def _depth(hole: Hole, style: LengthStyle) -> str:
    if _is_bridge(hole) and hole.depth_mm is not None:
        # Leaning, the bit has farther to go than the pockets stand apart, into a round bore the most.
        return phrase("{length} and on, until through", length=words.length(hole.depth_mm, style))
    begins = (
        phrase(", begins {length} below the face", length=words.length(hole.from_depth_mm, style))
        if hole.from_depth_mm > 0
        else ""
    )
    return ("through" if hole.depth_mm is None else words.length(hole.depth_mm, style)) + begins
