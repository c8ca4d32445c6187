"""Measures and colours of a printed page, in points: letters, leading, margins, tints.

Tints are light and letters dark enough to be told apart in black and white.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Final

from hwsched.render.fonts import POINT_MM
from hwsched.render.screen import Colour, PenLook

MM: Final = 1.0 / POINT_MM

PAPERS: Final[dict[str, tuple[float, float]]] = {
    "letter": (612.0, 792.0),
    "a4": (210.0 * MM, 297.0 * MM),
    "a5": (148.0 * MM, 210.0 * MM),
}
"""Width and height [pt], upright."""

TOP: Final = 10.0 * MM

INK: Final[Colour] = (0.08, 0.10, 0.13)
SOFT: Final[Colour] = (0.33, 0.37, 0.42)
ACCENT: Final[Colour] = (0.13, 0.29, 0.27)
TINT: Final[Colour] = (0.90, 0.925, 0.915)
CAUTION_TINT: Final[Colour] = (1.0, 0.965, 0.86)
STOP_TINT: Final[Colour] = (1.0, 0.91, 0.90)
CAUTION_INK: Final[Colour] = (0.36, 0.24, 0.0)
STOP_SHADE: Final[Colour] = (0.97, 0.93, 0.93)
STOP_INK: Final[Colour] = (0.55, 0.02, 0.08)
WHITE: Final[Colour] = (1.0, 1.0, 1.0)

RULE: Final = PenLook((0.62, 0.66, 0.68), 0.13)
STRONG_RULE: Final = PenLook(ACCENT, 0.5)
BOX: Final = PenLook(INK, 0.25)
LINE_TO_SIGN: Final = PenLook(INK, 0.18)
CAUTION_PEN: Final = PenLook(CAUTION_INK, 0.5)
SCALE_BAR: Final = PenLook(INK, 0.25)
CHANGE_BAR: Final = PenLook(INK, 0.7)
STOP_PEN: Final = PenLook(STOP_INK, 1.0)

TITLE: Final = 20.0


@dataclass(frozen=True, slots=True)
class Type:
    """Sizes of what a page is set in [pt]."""

    body: float
    small: float
    table: float
    table_head: float
    large: float
    """Numbers that are drilled."""
    heads: Mapping[int, float]
    """Headings by level."""
    head: float
    """Page head: project and mark."""
    subhead: float
    leading: float
    """From line to line over font size."""
    table_leading: float
    pad: float
    """Of a table's cell, over and under its words."""
    gap: float
    """Between two blocks."""
    margin: float
    bottom: float
    letters_mm: float
    """Least height of capitals in drawings."""
    note: float
    """Notes under drawings."""
    top: float = TOP
    """From the upper edge of the paper to the head."""
    rise: float = 1.0
    """Share of a font's size between the top of a line and its base line."""
    narrow: bool = False
    """Whether it is set in narrow letters."""
    door: bool = False
    """Whether it is read at the door: tables without air, what can be run in is."""
    side: float = 2.0
    """Of a table's cell, beside its words."""
    views: float = 1.0
    """Share of their height that drawings get."""
    coarse: float = 0.0
    """By how much coarser than they ask for drawings may come out; 0: any."""
    whole: bool = True
    """Whether a paragraph is kept in one piece, and a caution with its step."""


USUAL: Final = Type(
    body=9.0, small=7.5, table=8.0, table_head=7.5, large=8.0, heads={1: 14.0, 2: 11.0, 3: 9.5}, head=9.0, subhead=7.5,
    leading=1.3, table_leading=1.25, pad=2.0, gap=6.0, margin=14.0 * MM, bottom=15.0 * MM, letters_mm=0.0, note=6.5,
)  # fmt: skip
"""Read at a desk."""
DENSE: Final = replace(USUAL, table_leading=1.18, pad=1.2, gap=4.0, narrow=True, margin=12.0 * MM, bottom=12.0 * MM)
"""The same for long lists: narrow letters, little air."""
SITE: Final = Type(
    body=11.0, small=11.0, table=11.0, table_head=11.0, large=14.0, heads={1: 16.0, 2: 12.0, 3: 11.0}, head=12.0,
    subhead=11.0, leading=1.17, table_leading=1.12, pad=1.5, gap=4.0, margin=8.0 * MM, bottom=7.0 * MM,
    # Capitals of 2.4 mm are letters of 9.3 pt.
    letters_mm=2.4, note=9.0, top=6.5 * MM, rise=0.88, narrow=True, door=True, coarse=1.0,
)  # fmt: skip
"""Read at the door, at arm's length: nothing under 11 pt, labels of drawings at 9."""
_CLOSE: Final = replace(SITE, leading=1.08, table_leading=1.06, pad=0.7, gap=2.5)
_CLOSEST: Final = replace(SITE, leading=1.05, table_leading=1.04, pad=0.5, gap=2.0)
_TIGHT: Final = replace(SITE, leading=1.02, table_leading=1.02, pad=0.3, gap=1.2, views=0.7, whole=False)
TIGHTER: Final = (
    SITE,
    replace(SITE, leading=1.12, table_leading=1.09, pad=1.0, gap=3.0),
    _CLOSE,
    replace(_CLOSE, views=0.9),
    replace(_CLOSEST, views=0.9),
    replace(_CLOSEST, views=0.85),
    replace(_CLOSEST, views=0.78),
    replace(_CLOSEST, views=0.7),
    replace(_CLOSEST, views=0.7, whole=False),
    _TIGHT,
    replace(_TIGHT, coarse=2.0),
)
"""The same, each closer than the one before, for what would begin a sheet for its last lines. Letters keep theirs."""
BEYOND: Final = 2
"""So many of them, the last, serve only where a section would else take more sheets than it may."""
