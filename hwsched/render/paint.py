"""Drawings on paper painted onto a PDF page: strokes, circles, arcs and letters, nothing decided here."""

import math
from collections.abc import Callable, Sequence
from typing import Any, Final

from hwsched.render.fonts import POINT_MM, font_name, narrow_runs, size_of_letters_mm, width_per_size
from hwsched.render.lower import Bow, Disc, Letters, OnPaper, Stroke
from hwsched.render.screen import LIGHT, Colour, Look, PenLook

Canvas = Any
"""The PDF library's canvas; the library has no types."""

_MM: Final = 1.0 / POINT_MM
_NO_PEN: Final = PenLook((-1.0, -1.0, -1.0), -1.0)


class Painter:
    """Paints onto one canvas and remembers which line, fill and font are set, so that nothing is set twice."""

    __slots__ = ("_canvas", "_fill", "_font", "_look", "_pen", "narrow")

    def __init__(self, canvas: Canvas, look: Look = LIGHT) -> None:
        self._canvas = canvas
        self._look = look
        self._pen: PenLook = _NO_PEN
        self._fill: Colour | None = None
        self._font: tuple[bool, bool, float] = (False, False, 0.0)
        self.narrow = False
        """Whether lines of text are set in the narrow font; letters of drawings never are."""

    def forget(self) -> None:
        """Forget what is set; a new page starts with the library's defaults."""
        self._pen = _NO_PEN
        self._fill = None
        self._font = (False, False, 0.0)

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

    def set_font(self, size: float, bold: bool, narrow: bool = False) -> None:
        """Set the font [points]."""
        if (bold, narrow, size) != self._font:
            self._canvas.setFont(font_name(bold, narrow), size)
            self._font = (bold, narrow, size)

    def lines(self, places: Sequence[tuple[float, float, str]], size: float, bold: bool, colour: Colour) -> None:
        """Set lines of text at places [points] in one font and colour."""
        if not places:
            return
        self.set_fill(colour)
        self.set_font(size, bold, self.narrow)
        words = self._canvas.beginText()
        lacking = []
        for x, y, text in places:
            runs = narrow_runs(text, bold) if self.narrow and not text.isascii() else ()
            if len(runs) > 1 or (runs and not runs[0][0]):
                lacking.append((x, y, runs))
                continue
            words.setTextOrigin(x, y)
            words.textOut(text)
        self._canvas.drawText(words)
        for x, y, runs in lacking:
            self._mixed(x, y, runs, size, bold)

    def _mixed(self, x: float, y: float, runs: Sequence[tuple[bool, str]], size: float, bold: bool) -> None:
        """Set a line of which the narrow font lacks some letters."""
        for held, run in runs:
            self.set_font(size, bold, held)
            self._canvas.drawString(x, y, run)
            x += width_per_size(run, bold, held) * size

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
        size = size_of_letters_mm(shape.height_mm, shape.narrow) * _MM
        x, y = ox + shape.x * _MM, oy + shape.y * _MM
        left = 0.0
        if shape.anchor != "left":
            width = width_per_size(shape.text, bold, shape.narrow) * size
            left = -width / 2 if shape.anchor == "centre" else -width
        turn = math.radians(shape.angle_deg)
        cos, sin = math.cos(turn), math.sin(turn)
        runs = (
            narrow_runs(shape.text, bold)
            if shape.narrow and not shape.text.isascii()
            else ((shape.narrow, shape.text),)
        )
        for narrow, run in runs:
            self.set_font(size, bold, narrow)
            if shape.angle_deg == 0.0:
                canvas.drawString(x + left, y, run)
            else:
                words = canvas.beginText()
                words.setTextTransform(cos, sin, -sin, cos, x + left * cos, y + left * sin)
                words.textOut(run)
                canvas.drawText(words)
            if len(runs) > 1:
                left += width_per_size(run, bold, narrow) * size


class Nowhere:
    """A canvas on which nothing is drawn: a page is only measured."""

    _pagesize: tuple[float, float] = (0.0, 0.0)

    def __getattr__(self, name: str) -> Callable[..., Any]:
        return lambda *_, **__: self


class Unpainted(Painter):
    """Paints nothing."""

    __slots__ = ()

    def __init__(self) -> None:
        super().__init__(Nowhere())

    def lines(self, places: Sequence[tuple[float, float, str]], size: float, bold: bool, colour: Colour) -> None:
        """Leave lines out."""

    def paint(self, view: OnPaper, x_mm: float, y_mm: float) -> None:
        """Leave a view out."""
