"""The bundled letters: registered once for PDF, measured the same for every output.

DejaVu Sans lies in resources/fonts, so that a page does not depend on the machine it is made on. Beside it lies a
narrow font for pages at the door, which hold a quarter more at the same size; what it lacks is set wide.
"""

from functools import cache, lru_cache
from itertools import groupby
from pathlib import Path
from typing import Final

from hwsched.paths import RESOURCES
from hwsched.render.letter_widths import LetterWidths, letter_widths

REGULAR: Final = "DejaVuSans"
BOLD: Final = "DejaVuSans-Bold"
NARROW: Final = "RobotoCondensed-Regular"
NARROW_BOLD: Final = "RobotoCondensed-Bold"
CAPITAL_SHARE: Final = 0.729
"""Height of capitals over font size: the outline of H is 1493 of 2048 units high."""
NARROW_CAPITAL_SHARE: Final = 0.711
"""The same of the narrow font: 1456 of 2048 units."""
DESCENT_SHARE: Final = 0.236
"""Depth of the letters under the base line over font size (483 of 2048 units)."""
POINT_MM: Final = 25.4 / 72.0


@cache
def _register(name: str) -> None:
    # A window draws and measures without the PDF library.
    from reportlab.pdfbase import pdfmetrics  # noqa: PLC0415

    from hwsched.render.pdf_font import PdfFont  # noqa: PLC0415

    pdfmetrics.registerFont(PdfFont(name, str(_file(name))))


@cache
def _of(name: str) -> LetterWidths:
    return letter_widths(_file(name))


def _file(name: str) -> Path:
    return RESOURCES / "fonts" / f"{name}.ttf"


def register() -> None:
    """Make the usual fonts known to the PDF library; cheap when it was done before."""
    _register(REGULAR)
    _register(BOLD)


def font_name(bold: bool, narrow: bool) -> str:
    """Return the name of a font, which the PDF library knows from then on."""
    name = (NARROW_BOLD if bold else NARROW) if narrow else (BOLD if bold else REGULAR)
    _register(name)
    return name


@lru_cache(maxsize=50_000)
def narrow_runs(text: str, bold: bool = False) -> tuple[tuple[bool, str], ...]:
    """Split a text into what the narrow font has and what it lacks, each with whether it has it.

    Examples
    --------
    >>> narrow_runs("from A → B")
    ((True, 'from A '), (False, '→'), (True, ' B'))
    """
    widths = _of(NARROW_BOLD if bold else NARROW).widths
    return tuple((held, "".join(run)) for held, run in groupby(text, lambda letter: ord(letter) in widths))


@lru_cache(maxsize=100_000)
def width_per_size(text: str, bold: bool = False, narrow: bool = False) -> float:
    """Return the width of a text over the font size.

    Examples
    --------
    >>> round(width_per_size("MM"), 3)
    1.726
    """
    letters = _of(BOLD if bold else REGULAR)
    widths, default = letters.widths, letters.missing
    if narrow:
        slim = _of(NARROW_BOLD if bold else NARROW).widths
        return float(sum(slim.get(ord(c)) or widths.get(ord(c), default) for c in text)) / 1000.0
    try:
        # Nearly every text has only letters that the font has.
        return float(sum(map(widths.__getitem__, map(ord, text)))) / 1000.0
    except KeyError:
        return float(sum(widths.get(ord(letter), default) for letter in text)) / 1000.0


def size_of_letters_mm(height_mm: float, narrow: bool = False) -> float:
    """Return the font size [mm] whose capitals have a height [mm]."""
    return height_mm / (NARROW_CAPITAL_SHARE if narrow else CAPITAL_SHARE)


def text_width_mm(text: str, height_mm: float, bold: bool = False, narrow: bool = False) -> float:
    """Return the width of a text [mm] whose capitals have a height [mm]."""
    return width_per_size(text, bold, narrow) * size_of_letters_mm(height_mm, narrow)
