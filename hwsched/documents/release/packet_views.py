"""Views on a packet: side by side with their notes, scale bars, the letter of the section, the legend."""

from dataclasses import replace
from typing import Final, Literal

from hwsched.drawings.drawing import Drawing
from hwsched.drawings.legend import legend
from hwsched.drawings.opening.face_ground import CONVENTION_NOTE
from hwsched.language import to_phrase
from hwsched.quantities import LengthStyle
from hwsched.render.blocks import Block, Drawings, Paragraph
from hwsched.work.situation import Situation

_FACES: Final = (to_phrase("Inside"), to_phrase("Key side"))
"""Titles of the views of the whole opening."""


_LEGEND_MM: Final = {"a5": 130.0, "a4": 193.0}
"""Room on a page at the door by its paper."""


def legend_blocks(drawings: list[Drawing], paper: str) -> list[Block]:
    """Return the legend of what some drawings use; none where nothing is drawn to scale."""
    shown = [drawing for drawing in drawings if drawing.to_scale]
    return [Drawings((legend(shown, _LEGEND_MM.get(paper, 199.0)),), height_mm=8.0)] if shown else []


def views(
    drawings: list[Drawing], height_mm: float, *, same_scale: bool, bars: Literal["", "in", "mm"] = ""
) -> list[Block]:
    """Return drawings side by side, and under them what any of them notes, once and as wide as the page."""
    notes = dict.fromkeys(note for drawing in drawings for note in drawing.notes if not _stands_elsewhere(note))
    bare = tuple(replace(drawing, notes=()) for drawing in drawings)
    paired = sum(drawing.title in _FACES for drawing in drawings)
    blocks: list[Block] = [Drawings(bare, height_mm=height_mm, same_scale=same_scale, paired=paired, bars=bars)]
    return [*blocks, Paragraph(" ".join(notes), "small")] if notes else blocks


def _stands_elsewhere(note: str) -> bool:
    """Tell whether what a drawing notes stands on the packet as a fact or in the table of holes."""
    return note == CONVENTION_NOTE or note.startswith("Leaf ") or note.endswith("marked from the part itself.")


def bar_unit(style: LengthStyle) -> Literal["in", "mm"]:
    """Return the unit of scale bars."""
    return "mm" if style == "mm" else "in"


def section_letter(situation: Situation, cut: Drawing | None) -> str:
    """Return the letter of the section; empty where none is drawn."""
    return "A" if cut is not None and cut.to_scale and not situation.in_edge else ""
