"""Measures and colours of a printed page, in points: letters, leading, margins, tints.

Tints are light and letters dark enough to be told apart in black and white.
"""

from typing import Final

from hwsched.render.fonts import POINT_MM
from hwsched.render.screen import Colour, PenLook

MM: Final = 1.0 / POINT_MM

PAPERS: Final[dict[str, tuple[float, float]]] = {"letter": (612.0, 792.0), "a4": (210.0 * MM, 297.0 * MM)}
"""Width and height [pt], upright."""

MARGIN: Final = 14.0 * MM
TOP: Final = 10.0 * MM
BOTTOM: Final = 15.0 * MM

INK: Final[Colour] = (0.08, 0.10, 0.13)
SOFT: Final[Colour] = (0.33, 0.37, 0.42)
ACCENT: Final[Colour] = (0.13, 0.29, 0.27)
TINT: Final[Colour] = (0.90, 0.925, 0.915)
CAUTION_TINT: Final[Colour] = (1.0, 0.965, 0.86)
STOP_TINT: Final[Colour] = (1.0, 0.91, 0.90)
CAUTION_INK: Final[Colour] = (0.36, 0.24, 0.0)
STOP_INK: Final[Colour] = (0.55, 0.02, 0.08)
WHITE: Final[Colour] = (1.0, 1.0, 1.0)

RULE: Final = PenLook((0.62, 0.66, 0.68), 0.13)
STRONG_RULE: Final = PenLook(ACCENT, 0.5)
BOX: Final = PenLook(INK, 0.25)
LINE_TO_SIGN: Final = PenLook(INK, 0.18)
CAUTION_PEN: Final = PenLook(CAUTION_INK, 0.5)
STOP_PEN: Final = PenLook(STOP_INK, 1.0)

BODY: Final = 9.0
SMALL: Final = 7.5
TABLE: Final = 8.0
TABLE_HEAD: Final = 7.5
LEADING: Final = 1.3
"""From line to line over font size."""
HEADING_SIZES: Final = {1: 14.0, 2: 11.0, 3: 9.5}
TITLE: Final = 20.0
GAP: Final = 6.0
"""Between two blocks."""
