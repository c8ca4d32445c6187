"""The bundled letters: registered once for PDF, measured the same for every output.

DejaVu Sans lies in resources/fonts, so that a page does not depend on the machine it is made on.
"""

from functools import cache, lru_cache
from typing import Any, Final

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from hwsched.paths import RESOURCES

REGULAR: Final = "DejaVuSans"
BOLD: Final = "DejaVuSans-Bold"
CAPITAL_SHARE: Final = 0.729
"""Height of capitals over font size: the outline of H is 1493 of 2048 units high."""
DESCENT_SHARE: Final = 0.236
"""Depth of the letters under the base line over font size (483 of 2048 units)."""
POINT_MM: Final = 25.4 / 72.0


@cache
def _face(name: str) -> Any:
    font = TTFont(name, str(RESOURCES / "fonts" / f"{name}.ttf"))
    pdfmetrics.registerFont(font)
    return font.face


def register() -> None:
    """Make both fonts known to the PDF library; cheap when it was done before."""
    _face(REGULAR)
    _face(BOLD)


@lru_cache(maxsize=100_000)
def width_per_size(text: str, bold: bool = False) -> float:
    """Return the width of a text over the font size.

    Examples
    --------
    >>> round(width_per_size("MM"), 3)
    1.726
    """
    face = _face(BOLD if bold else REGULAR)
    widths, default = face.charWidths, face.defaultWidth
    return float(sum(widths.get(ord(letter), default) for letter in text)) / 1000.0


def size_of_letters_mm(height_mm: float) -> float:
    """Return the font size [mm] whose capitals have a height [mm]."""
    return height_mm / CAPITAL_SHARE


def text_width_mm(text: str, height_mm: float, bold: bool = False) -> float:
    """Return the width of a text [mm] whose capitals have a height [mm]."""
    return width_per_size(text, bold) * height_mm / CAPITAL_SHARE
