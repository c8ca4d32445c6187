"""Shows neutral drawings on the screen, fitted into the view, in the light or dark look."""

import math
from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import (
    QBrush,
    QColor,
    QFont,
    QFontMetricsF,
    QPainter,
    QPaintEvent,
    QPalette,
    QPen,
    QPolygonF,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from hwsched.desktop.looks.letters import BESIDE
from hwsched.desktop.looks.tokens import SPACE, TYPE, scaled, wide
from hwsched.drawings.drawing import Drawing
from hwsched.language import phrase
from hwsched.render.lower import Bow, Disc, Letters, OnPaper, Stroke, lower
from hwsched.render.screen import DARK, LIGHT, Colour, Look

_PX_PER_MM = 3.0
"""Screen pixels for one paper millimetre at 100 %: letters of 2.5 mm are then as high as ordinary screen text."""
_GAP_MM = 6.0
_BACKED = 0.82
"""How far the ground behind letters hides what is drawn under them."""


def _colour(colour: Colour) -> QColor:
    return QColor.fromRgbF(*colour)


class DrawingView(QWidget):
    """Views side by side, as large as fits, only looked at."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._drawings: tuple[Drawing, ...] = ()
        self._lowered: tuple[OnPaper, ...] = ()
        self._size = QSize()
        self._usual = 0.0
        self._empty = phrase("Choose an opening in the register.")
        self.setAccessibleName(phrase("Drawing"))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(wide(26), wide(24))

    def sizeHint(self) -> QSize:  # noqa: N802
        """Return the size it likes to have."""
        return QSize(wide(69), wide(51))

    def show_drawings(self, drawings: Sequence[Drawing], empty: str = "") -> None:
        """Show these views, or a sentence where there are none."""
        self._drawings = tuple(drawings)
        self._empty = empty or self._empty
        self._lowered = ()
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802
        """Paint."""
        dark = self.palette().color(QPalette.ColorRole.Base).lightness() < 128
        look = DARK if dark else LIGHT
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(self.rect(), _colour(look.ground))
        if not self._drawings:
            painter.setPen(_colour(look.letters["label"]))
            air = scaled(SPACE.wide)
            within = self.rect().adjusted(air, 0, -air, 0)
            painter.drawText(within, Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap, self._empty)
            painter.end()
            return
        self._fit()
        widths = [page.extent[2] - page.extent[0] for page in self._lowered]
        tall = max(page.extent[3] - page.extent[1] for page in self._lowered)
        total = sum(widths) + _GAP_MM * (len(widths) - 1)
        usual = _px_per_mm()
        shrink = min(1.0, self.width() / ((total + 2 * _GAP_MM) * usual), self.height() / ((tall + 8) * usual))
        factor = usual * shrink
        x_px = (self.width() - total * factor) / 2
        for page, width in zip(self._lowered, widths, strict=True):
            painter.save()
            top = (self.height() - (page.extent[3] - page.extent[1]) * factor) / 2
            painter.translate(x_px - page.extent[0] * factor, top + page.extent[3] * factor)
            painter.scale(factor, factor)
            paint_page(painter, page, look)
            painter.restore()
            x_px += (width + _GAP_MM) * factor
        painter.end()

    def _fit(self) -> None:
        """Find the scale at which all views fill the widget; texts keep their size, so it is found by a few tries."""
        usual = _px_per_mm()
        if self._lowered and (self._size, self._usual) == (self.size(), usual):
            return
        self._size, self._usual = self.size(), usual
        across_mm, tall = self.width() / usual - 2 * _GAP_MM, self.height() / usual - 8
        across = sum(max(d.bounds[2] - d.bounds[0], 1.0) for d in self._drawings)
        up = max(max(d.bounds[3] - d.bounds[1], 1.0) for d in self._drawings)
        scale = max(min(across_mm / across, tall / up), 1e-4)
        for _ in range(6):
            pages = tuple(lower(drawing, _scale_of(drawing, scale)) for drawing in self._drawings)
            need_w = sum(p.extent[2] - p.extent[0] for p in pages) + _GAP_MM * (len(pages) - 1)
            need_h = max(p.extent[3] - p.extent[1] for p in pages)
            if need_w <= across_mm and need_h <= tall:
                break
            scale *= max(0.5, 0.97 * min(across_mm / need_w, tall / need_h))
        self._lowered = pages


def _px_per_mm() -> float:
    """Return screen pixels for one paper millimetre at which letters are as high as text of the size in force."""
    return _PX_PER_MM * scaled(TYPE.normal) / TYPE.normal


def _scale_of(drawing: Drawing, scale: float) -> float:
    """Return the scale of a drawing among others: a schematic is set as it is, and shrunk letters and all."""
    return 1.0 if drawing.schematic else scale


def paint_page(painter: QPainter, page: OnPaper, look: Look, *, backed: bool = False) -> None:
    """Paint what was brought to paper, a painter's unit being a paper millimetre; letters may stand on a ground."""
    for shape in page.primitives:
        if isinstance(shape, Letters):
            _letters(painter, shape, look, backed)
            continue
        pen_look = look.pens[shape.pen]
        pen = QPen(_colour(pen_look.colour), pen_look.width_mm)
        if pen_look.dash_mm:
            pen.setDashPattern([dash / pen_look.width_mm for dash in pen_look.dash_mm])
        painter.setPen(pen)
        if isinstance(shape, Stroke):
            points = QPolygonF([QPointF(x, -y) for x, y in shape.points])
            if shape.closed:
                painter.setBrush(_brush(shape.fill, shape.pen, look))
                painter.drawPolygon(points)
            else:
                painter.drawPolyline(points)
        elif isinstance(shape, Disc):
            painter.setBrush(_brush(shape.fill, shape.pen, look))
            painter.drawEllipse(QPointF(shape.x, -shape.y), shape.diameter / 2, shape.diameter / 2)
        elif isinstance(shape, Bow):
            box = QRectF(shape.x - shape.radius, -shape.y - shape.radius, 2 * shape.radius, 2 * shape.radius)
            painter.drawArc(box, round(shape.start_deg * 16), round((shape.end_deg - shape.start_deg) * 16))


def _brush(fill: str, pen: str, look: Look) -> QBrush:
    if fill == "ink":
        return QBrush(_colour(look.pens[pen].colour))  # type: ignore[index]
    colour = look.fills[fill]  # type: ignore[index]
    return QBrush(Qt.BrushStyle.NoBrush) if colour is None else QBrush(_colour(colour))


def _letters(painter: QPainter, shape: Letters, look: Look, backed: bool) -> None:
    # Fonts are sized in whole pixels by Qt: letters are painted large and scaled down, so that they keep their measure.
    font = QFont(BESIDE)
    font.setPixelSize(100)
    font.setBold(shape.role in look.bold)
    metrics = QFontMetricsF(font)
    factor = shape.height_mm / metrics.capHeight()
    width = metrics.horizontalAdvance(shape.text)
    left = {"left": 0.0, "centre": -width / 2, "right": -width}[shape.anchor]
    painter.save()
    painter.translate(shape.x, -shape.y)
    if not math.isclose(shape.angle_deg, 0.0):
        painter.rotate(-shape.angle_deg)
    painter.scale(factor, factor)
    painter.setFont(font)
    if backed:
        ground = _colour(look.ground)
        ground.setAlphaF(_BACKED)
        painter.fillRect(QRectF(left - 8, -metrics.capHeight() - 16, width + 16, metrics.capHeight() + 36), ground)
    painter.setPen(_colour(look.letters[shape.role]))
    painter.drawText(QPointF(left, 0.0), shape.text)
    painter.restore()
