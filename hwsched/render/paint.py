"""Drawings on paper painted onto a PDF page: strokes, circles, arcs and letters, nothing decided here."""

import math
from collections.abc import Sequence
from typing import Any, Final

from hwsched.render.fonts import BOLD, CAPITAL_SHARE, POINT_MM, REGULAR, width_per_size
from hwsched.render.lower import Bow, Disc, Letters, OnPaper, Stroke
from hwsched.render.screen import LIGHT, Colour, Look, PenLook

Canvas = Any
"""The PDF library's canvas; the library has no types."""

_MM: Final = 1.0 / POINT_MM
_NO_PEN: Final = PenLook((-1.0, -1.0, -1.0), -1.0)


class Painter:
    """Paints onto one canvas and remembers which line, fill and font are set, so that nothing is set twice."""

    __slots__ = ("_canvas", "_fill", "_font", "_look", "_pen")

    def __init__(self, canvas: Canvas, look: Look = LIGHT) -> None:
        self._canvas = canvas
        self._look = look
        self._pen: PenLook = _NO_PEN
        self._fill: Colour | None = None
        self._font: tuple[bool, float] = (False, 0.0)

    def forget(self) -> None:
        """Forget what is set; a new page starts with the library's defaults."""
        self._pen = _NO_PEN
        self._fill = None
        self._font = (False, 0.0)

    def set_pen(self, pen: PenLook) -> None:
        """Set width, dash and colour of lines."""
        held = self._pen
        if pen is held:
            return
        canvas = self._canvas
        if pen.colour != held.colour:
            canvas.setStrokeColorRGB(*pen.colour)
        if pen.width_mm != held.width_mm:
            canvas.setLineWidth(pen.width_mm * _MM)
        if pen.dash_mm != held.dash_mm:
            canvas.setDash([dash * _MM for dash in pen.dash_mm])
        self._pen = pen

    def set_fill(self, colour: Colour) -> None:
        """Set the colour of areas and letters."""
        if colour != self._fill:
            self._canvas.setFillColorRGB(*colour)
            self._fill = colour

    def set_font(self, size: float, bold: bool) -> None:
        """Set the font [points]."""
        if (bold, size) != self._font:
            self._canvas.setFont(BOLD if bold else REGULAR, size)
            self._font = (bold, size)

    def lines(self, places: Sequence[tuple[float, float, str]], size: float, bold: bool, colour: Colour) -> None:
        """Set lines of text at places [points] in one font and colour."""
        if not places:
            return
        self.set_fill(colour)
        self.set_font(size, bold)
        words = self._canvas.beginText()
        for x, y, text in places:
            words.setTextOrigin(x, y)
            words.textOut(text)
        self._canvas.drawText(words)

    def paint(self, view: OnPaper, x_mm: float, y_mm: float) -> None:
        """Paint a view with its origin at a place of the page [mm from its lower left corner]."""
        canvas, look = self._canvas, self._look
        ox, oy = x_mm * _MM, y_mm * _MM
        for shape in view.primitives:
            if isinstance(shape, Stroke):
                self._stroke(shape, ox, oy)
            elif isinstance(shape, Letters):
                self._letters(shape, ox, oy)
            elif isinstance(shape, Disc):
                colour = look.pens[shape.pen].colour if shape.fill == "ink" else look.fills[shape.fill]
                self.set_pen(look.pens[shape.pen])
                if colour is not None:
                    self.set_fill(colour)
                x, y, radius = ox + shape.x * _MM, oy + shape.y * _MM, shape.diameter * _MM / 2
                canvas.circle(x, y, radius, stroke=0 if shape.fill == "ink" else 1, fill=0 if colour is None else 1)
            elif isinstance(shape, Bow):
                self.set_pen(look.pens[shape.pen])
                x, y, radius = ox + shape.x * _MM, oy + shape.y * _MM, shape.radius * _MM
                canvas.arc(
                    x - radius, y - radius, x + radius, y + radius, shape.start_deg, shape.end_deg - shape.start_deg
                )

    def _stroke(self, shape: Stroke, ox: float, oy: float) -> None:
        canvas, look = self._canvas, self._look
        points = shape.points
        pen = look.pens[shape.pen]
        colour = pen.colour if shape.fill == "ink" else look.fills[shape.fill]
        self.set_pen(pen)
        if len(points) == 2:
            (ax, ay), (bx, by) = points
            canvas.line(ox + ax * _MM, oy + ay * _MM, ox + bx * _MM, oy + by * _MM)
            return
        path = canvas.beginPath()
        x, y = points[0]
        path.moveTo(ox + x * _MM, oy + y * _MM)
        for x, y in points[1:]:
            path.lineTo(ox + x * _MM, oy + y * _MM)
        if shape.closed:
            path.close()
        if colour is None or not shape.closed:
            canvas.drawPath(path, stroke=1, fill=0)
        else:
            self.set_fill(colour)
            canvas.drawPath(path, stroke=0 if shape.fill == "ink" else 1, fill=1)

    def _letters(self, shape: Letters, ox: float, oy: float) -> None:
        canvas = self._canvas
        bold = shape.role in self._look.bold
        self.set_fill(self._look.letters[shape.role])
        size = shape.height_mm / CAPITAL_SHARE * _MM
        self.set_font(size, bold)
        x, y = ox + shape.x * _MM, oy + shape.y * _MM
        left = 0.0
        if shape.anchor != "left":
            width = width_per_size(shape.text, bold) * size
            left = -width / 2 if shape.anchor == "centre" else -width
        if shape.angle_deg == 0.0:
            canvas.drawString(x + left, y, shape.text)
            return
        turn = math.radians(shape.angle_deg)
        cos, sin = math.cos(turn), math.sin(turn)
        words = canvas.beginText()
        words.setTextTransform(cos, sin, -sin, cos, x + left * cos, y + left * sin)
        words.textOut(shape.text)
        canvas.drawText(words)
