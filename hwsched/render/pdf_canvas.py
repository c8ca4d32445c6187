"""The PDF library's canvas, quicker at what pages are made of, with the same bytes: a test holds both together.

Most of what the library does for a line of text or a circle is for what our pages never ask: text that moves on a
cursor, is shaped or set from right to left, colours in other spaces. Whatever is asked beyond that goes to the library.
"""

from collections.abc import Sequence
from functools import lru_cache
from math import cos, pi, sin
from typing import Any, Final

from reportlab.lib.rl_accel import escapePDF, fp_str
from reportlab.pdfbase.pdfmetrics import getFont
from reportlab.pdfgen.canvas import Canvas
from reportlab.pdfgen.textobject import PDFTextObject

from hwsched.render.pdf_font import PdfFont

_HALF_QUARTER: Final = 90.0 * pi / 360.0
_REACH: Final = abs(4.0 / 3.0 * (1.0 - cos(_HALF_QUARTER)) / sin(_HALF_QUARTER))
"""How far the control points of a quarter of a circle stand off its ends, over the radius."""


def _quarter(begin: float, end: float) -> tuple[float, ...]:
    """Return ends and control points of a part of the unit circle, each across and down, as the library works out."""
    c0, s0, c1, s1 = cos(begin), sin(begin), cos(end), sin(end)
    across = (c0, c0 - _REACH * s0, c1 + _REACH * s1, c1)
    down = (s0, s0 + _REACH * c0, s1 - _REACH * c1, s1)
    return tuple(each for pair in zip(across, down, strict=True) for each in pair)


_QUARTERS: Final = tuple(_quarter(n * 90.0 * pi / 180.0, (n + 1) * 90.0 * pi / 180.0) for n in range(4))


class PdfWords(PDFTextObject):  # type: ignore[misc]
    """Lines of text each of which says where it stands: no cursor is kept behind them."""

    _curSubset: int  # noqa: N815

    def textOut(self, text: str) -> None:  # noqa: N802 (the library's name)
        """Set a line at the place that was said last."""
        self._code.append(self._formatText(text))

    def _formatText(self, text: str) -> str:  # noqa: N802
        said, self._curSubset = self._canvas.coded(self._fontname, text, self._curSubset, self._fontsize, self._leading)
        return said if said is not None else str(super()._formatText(text))


@lru_cache(maxsize=20_000)
def _plain(text: str) -> str | None:
    """Return the operator that sets a text of plain letters, which are coded as they are; None for any other."""
    return f"({escapePDF(text.encode())}) Tj" if text and text.isascii() and text.isprintable() else None


class PdfCanvas(Canvas):  # type: ignore[misc]
    """As the library's."""

    def __init__(self, *given: Any, **named: Any) -> None:
        super().__init__(*given, **named)
        self._begun: dict[str, str] = {}
        """By the name of a font that has set plain letters before, by what its first subset is called."""

    def coded(self, name: str, text: str, subset: int, size: float, leading: float) -> tuple[str | None, int]:
        """Return the operators that set a text, and the subset of its font that is in force behind it.

        None, and what was in force, where only the library knows.
        """
        first = self._begun.get(name)
        if first is not None and type(text) is str and (said := _plain(text)) is not None:
            if subset == 0:
                return said, 0
            return f"{first} {_numbers(size)} Tf {_numbers(leading)} TL {said}", 0
        font = getFont(name)
        if type(font) is not PdfFont or type(text) is not str:
            return None, subset
        parts = []
        for number, coded in font.splitString(text, self._doc):
            if number != subset:
                called, subset = font.getSubsetInternalName(number, self._doc), number
                parts.append(f"{called} {_numbers(size)} Tf {_numbers(leading)} TL")
                if number == 0 and font.plain:
                    self._begun[name] = called
            parts.append(f"({escapePDF(coded)}) Tj")
        return " ".join(parts), subset

    def beginText(self, x: float = 0, y: float = 0, direction: Any = None) -> PDFTextObject:  # noqa: N802
        """Return what takes lines of text."""
        return PdfWords(self, x, y, direction=direction)

    def drawString(self, x: float, y: float, text: str, **asked: Any) -> None:  # noqa: N802
        """Set one line of text."""
        said = None
        if not asked and self.bottomup:
            said, _ = self.coded(self._fontname, text, -1, self._fontsize, self._leading)
        if said is None:
            super().drawString(x, y, text, **asked)
        else:
            self._code.append(f"BT 1 0 0 1 {fp_str(x, y)} Tm {said} T* ET")

    def circle(self, x_cen: float, y_cen: float, r: float, stroke: int = 1, fill: int = 0) -> None:
        """Draw a circle."""
        if r <= 0:
            super().circle(x_cen, y_cen, r, stroke, fill)
            return
        # In the library's own steps, so that not the last digit differs.
        left, low = x_cen - r, y_cen - r
        right, high = left + ((x_cen + r) - left), low + ((y_cen + r) - low)
        x, y, wide, tall = (left + right) / 2.0, (high + low) / 2.0, (right - left) / 2.0, (low - high) / 2.0
        add = self._code.append
        add("n")
        for place, (ax, ay, bx, by, cx, cy, dx, dy) in enumerate(_QUARTERS):
            if place == 0:
                add(f"{fp_str(x + wide * ax, y - tall * ay)} m")
            points = (
                x + wide * bx, y - tall * by, x + wide * cx, y - tall * cy, x + wide * dx, y - tall * dy,
            )  # fmt: skip
            add(f"{fp_str(*points)} c")
        self._strokeAndFill(stroke, fill)

    def setFillColorRGB(self, r: float, g: float, b: float, alpha: float | None = None) -> None:  # noqa: N802
        """Set the colour of areas and letters."""
        if alpha is not None or self._enforceColorSpace:
            super().setFillColorRGB(r, g, b, alpha)
            return
        self._fillColorObj = (r, g, b)
        self._code.append(f"{_numbers(r, g, b)} rg")

    def setStrokeColorRGB(self, r: float, g: float, b: float, alpha: float | None = None) -> None:  # noqa: N802
        """Set the colour of lines."""
        if alpha is not None or self._enforceColorSpace:
            super().setStrokeColorRGB(r, g, b, alpha)
            return
        self._strokeColorObj = (r, g, b)
        self._code.append(f"{_numbers(r, g, b)} RG")

    def setLineWidth(self, width: float) -> None:  # noqa: N802
        """Set the width of lines."""
        self._lineWidth = width
        self._code.append(f"{_numbers(width)} w")

    def setDash(self, array: Sequence[float] = (), phase: float = 0) -> None:  # noqa: N802
        """Set the dashes of lines."""
        if array or phase:
            super().setDash(array, phase)
        else:
            self._code.append("[] 0 d")


@lru_cache(maxsize=1000)
def _numbers(*numbers: float) -> str:
    """Return numbers as the library writes them; of widths and colours there are few."""
    return str(fp_str(*numbers))
